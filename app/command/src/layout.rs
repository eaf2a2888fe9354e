//! The layout of the project: the answer of `layout`.

use app::project_file::Opened;
use solver::{
    Angle, GrossNeeds, Layout, Length, LengthUnit, Outcome, ProjectDraft, WoodClass, figure,
    lay_out,
};

use crate::answer::Answer;
use crate::document::{self, LayoutDocument};
use crate::ending::Ending;
use crate::findings::Findings;
use crate::names;
use crate::note::{Column, Note};

/// A layout, with the project it was made of.
pub(crate) struct Laid<'a> {
    /// The project.
    pub(crate) draft: &'a ProjectDraft,
    /// The place of the barrel in the project.
    pub(crate) barrel: usize,
    /// The place of the stock above the glue plane.
    pub(crate) top: usize,
    /// The place of the stock below the glue plane.
    pub(crate) bottom: usize,
    /// The turn of the barrel.
    pub(crate) turn: Angle,
    /// The layout.
    pub(crate) layout: Layout,
    /// What a gross takes, where every check passes.
    pub(crate) needs: Option<GrossNeeds>,
    /// The name of the cutter set that spaces the grooves, where one does.
    pub(crate) cutter_set: Option<String>,
}

/// Lays the barrel of the layout on its slats.
///
/// # Errors
/// Everything that stands in the way of the layout; the rest of the project may be wrong.
pub(crate) fn lay(opened: &Opened) -> Result<Laid<'_>, Findings> {
    let draft = &opened.draft;
    let parts = (draft.check_layout()).map_err(|problems| Findings::with(opened, problems))?;
    let barrel = draft.barrel_place(draft.layout.barrel);
    let [top, bottom] = [draft.layout.top, draft.layout.bottom].map(|id| draft.slat_place(id));
    let (Some(barrel), Some(top), Some(bottom)) = (barrel, top, bottom) else {
        return Err(Findings::with(opened, Vec::new()));
    };
    let layout = lay_out(&parts.setup());
    Ok(Laid {
        draft,
        barrel,
        top,
        bottom,
        turn: parts.turn,
        needs: GrossNeeds::of(&parts.setup(), &layout),
        layout,
        cutter_set: parts.cutter_set,
    })
}

impl Answer for Laid<'_> {
    fn text(&self, unit: LengthUnit) -> String {
        let mut note = Note::new();
        note.title(&self.draft.name);
        self.head(&mut note, unit);
        self.grooves(&mut note, unit);
        self.checks(&mut note, unit);
        self.wood(&mut note, unit);
        self.gross(&mut note, unit);
        note.finish()
    }

    fn json(&self) -> String {
        document::write(&LayoutDocument::from(self))
    }

    fn ending(&self) -> Ending {
        if self.layout.fits() {
            Ending::Fine
        } else {
            Ending::NothingFits
        }
    }
}

impl Laid<'_> {
    /// What is laid on what, with its sizes.
    pub(crate) fn head(&self, note: &mut Note, unit: LengthUnit) {
        let (layout, shape) = (&self.layout, self.layout.groove_shape());
        let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
        let turn = figure::angle(self.turn.in_degrees());
        let pencils = figure::count(layout.pencils().into());
        let (across, lengths) = (layout.across(), layout.lengths());
        let rows = [
            ("Barrel", names::barrel(self.draft, self.barrel)),
            (
                "Way",
                format!("{}, {turn}", self.draft.layout_way().label()),
            ),
            ("Top slat", names::slat(self.draft, self.top)),
            ("Bottom slat", names::slat(self.draft, self.bottom)),
            (
                "Pencils",
                format!("{pencils} from a sandwich; {across} across, {lengths} along"),
            ),
            ("Pitch", length(layout.pitch())),
            ("Parting", length(layout.parting())),
            ("Datum edge", length(layout.datum_edge())),
            ("Far edge", length(layout.far_edge())),
            ("Groove radius", length(shape.radius())),
            ("Depth, top", length(shape.top_depth())),
            ("Depth, bottom", length(shape.bottom_depth())),
        ];
        let rows = rows.map(|(name, value)| [name.to_owned(), value]);
        note.table([Column::Words, Column::Words], &rows);
    }

    /// The groove table.
    pub(crate) fn grooves(&self, note: &mut Note, unit: LengthUnit) {
        if self.layout.grooves().is_empty() {
            return;
        }
        note.title(&format!(
            "Groove centres from the datum edge, {}",
            unit.label()
        ));
        let rows: Vec<[String; 2]> = (self.layout.grooves().iter())
            .map(|groove| {
                let centre = figure::length(groove.centre.in_millimetres(), unit);
                [figure::count(groove.number.into()), centre]
            })
            .collect();
        note.table([Column::Figures; 2], &rows);
    }

    /// Every check with its margin.
    pub(crate) fn checks(&self, note: &mut Note, unit: LengthUnit) {
        note.title("Checks");
        let rows: Vec<[String; 3]> = (self.layout.checks().iter())
            .map(|check| {
                let outcome = match check.outcome {
                    Outcome::Passed => "pass",
                    Outcome::Noted => "note",
                    Outcome::Failed => "FAIL",
                };
                let (rule, statement) = (check.rule.label(), check.statement(unit));
                [outcome.to_owned(), rule.to_owned(), statement]
            })
            .collect();
        note.table([Column::Words; 3], &rows);
    }

    fn wood(&self, note: &mut Note, unit: LengthUnit) {
        let Some(balance) = self.layout.balance() else {
            return;
        };
        note.title(&format!("Wood of one sandwich, {}", unit.volume_label()));
        let volume = |volume: solver::Volume| figure::volume(volume.in_cubic_millimetres(), unit);
        let class = |class: WoodClass| {
            let share = figure::ratio(balance.share(class));
            [
                class.label().to_owned(),
                volume(balance.volume(class)),
                share,
            ]
        };
        let all = [
            "Bought".to_owned(),
            volume(balance.bought()),
            figure::ratio(1.0),
        ];
        let rows: Vec<[String; 3]> = WoodClass::ALL.into_iter().map(class).chain([all]).collect();
        note.table([Column::Words, Column::Figures, Column::Figures], &rows);
    }

    fn gross(&self, note: &mut Note, unit: LengthUnit) {
        let Some(needs) = &self.needs else {
            return;
        };
        note.title("For a gross of good pencils");
        let volume = figure::volume(needs.wood.in_cubic_millimetres(), unit);
        let volume = format!("{volume}{}{}", figure::THIN_SPACE, unit.volume_label());
        let rows = [
            ("Slats", figure::plain(needs.slats, 1)),
            ("Wood", volume),
            ("Price", figure::money_rounded(needs.price)),
        ];
        let rows = rows.map(|(name, value)| [name.to_owned(), value]);
        note.table([Column::Words, Column::Words], &rows);
    }
}
