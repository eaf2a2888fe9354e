//! The layout of the project: the answer of `layout`.

use app::project_file::Opened;
use solver::{
    Angle, GrossNeeds, Id, Layout, Length, LengthUnit, Outcome, ProjectDraft, Way, WoodClass,
    figure, lay_out,
};

use crate::answer::Answer;
use crate::document::{self, LayoutDocument};
use crate::ending::Ending;
use crate::findings::Findings;
use crate::note::{Column, Note};

/// A layout with the names of its parts.
pub(crate) struct Laid {
    /// What the parts are called.
    pub(crate) names: Names,
    /// How the barrel is turned.
    pub(crate) way: Way,
    /// The same as an angle.
    pub(crate) turn: Angle,
    /// The layout.
    pub(crate) layout: Layout,
    /// What a gross takes, where every check passes.
    pub(crate) needs: Option<GrossNeeds>,
}

/// The project and the parts of its layout, each with its lasting name and what it is called.
pub(crate) struct Names {
    pub(crate) project: String,
    pub(crate) barrel: (Id, String),
    pub(crate) top: (Id, String),
    pub(crate) bottom: (Id, String),
}

/// Lays the barrel of the layout on its slats.
///
/// # Errors
/// Everything that stands in the way of the layout; the rest of the project may be wrong.
pub(crate) fn lay(opened: &Opened) -> Result<Laid, Findings> {
    let draft = &opened.draft;
    let parts = (draft.check_layout()).map_err(|problems| Findings::with(opened, problems))?;
    let layout = lay_out(&parts.setup());
    Ok(Laid {
        names: Names::of(draft),
        way: draft.layout_way(),
        turn: parts.turn,
        needs: GrossNeeds::of(&parts.setup(), &layout),
        layout,
    })
}

impl Names {
    /// The names of a project; what is not in it is called nothing.
    pub(crate) fn of(draft: &ProjectDraft) -> Self {
        let slat = |id: Id| {
            let name = draft.slat_place(id).map(|at| &draft.slats[at].draft.name);
            (id, name.cloned().unwrap_or_default())
        };
        let barrel = draft.barrel_place(draft.layout.barrel);
        let barrel = barrel.map(|at| draft.barrels[at].draft.name.clone());
        Self {
            project: draft.name.clone(),
            barrel: (draft.layout.barrel, barrel.unwrap_or_default()),
            top: slat(draft.layout.top),
            bottom: slat(draft.layout.bottom),
        }
    }
}

impl Answer for Laid {
    fn text(&self, unit: LengthUnit) -> String {
        let mut note = Note::new();
        note.title(&self.names.project);
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

impl Laid {
    fn head(&self, note: &mut Note, unit: LengthUnit) {
        let (layout, shape) = (&self.layout, self.layout.groove_shape());
        let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
        let turn = figure::angle(self.turn.in_degrees());
        let pencils = figure::count(layout.pencils().into());
        let (across, lengths) = (layout.across(), layout.lengths());
        let rows = [
            ("Barrel", self.names.barrel.1.clone()),
            ("Way", format!("{}, {turn}", self.way.label())),
            ("Top slat", self.names.top.1.clone()),
            ("Bottom slat", self.names.bottom.1.clone()),
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

    fn grooves(&self, note: &mut Note, unit: LengthUnit) {
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

    fn checks(&self, note: &mut Note, unit: LengthUnit) {
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
        let rows = [
            ("Slats", figure::plain(needs.slats, 1)),
            (
                "Wood",
                figure::timber(needs.wood.in_cubic_millimetres(), unit),
            ),
            ("Price", figure::money_rounded(needs.price)),
        ];
        let rows = rows.map(|(name, value)| [name.to_owned(), value]);
        note.table([Column::Words, Column::Words], &rows);
    }
}
