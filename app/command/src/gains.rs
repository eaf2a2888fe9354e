//! The nearest changes of the barrel that gain something: the answer of `gains`.

use app::project_file::Opened;
use solver::{
    Gain, GainKind, GainLimits, GainProof, Length, LengthUnit, PAIR_STEPS, ProjectDraft, figure,
    nearest_gains,
};

use crate::answer::Answer;
use crate::arguments::AskedGains;
use crate::document::{self, GainsDocument};
use crate::ending::Ending;
use crate::findings::Findings;
use crate::names;
use crate::note::{Column, Note};

/// The nearest gains of the barrel of a project.
pub(crate) struct Gained<'a> {
    /// The project.
    pub(crate) draft: &'a ProjectDraft,
    /// How far the sizes may move.
    pub(crate) limits: GainLimits,
    /// The gains, the nearest first.
    pub(crate) gains: Vec<Gain>,
}

/// Looks for the nearest gains within the limits that are asked for.
///
/// # Errors
/// Everything that stands in the way of the layout.
pub(crate) fn find<'a>(opened: &'a Opened, asked: &AskedGains) -> Result<Gained<'a>, Findings> {
    let draft = &opened.draft;
    let [size, corner, coat] =
        [asked.size_mm, asked.corner_mm, asked.coat_mm].map(Length::millimetres);
    let limits = GainLimits { size, corner, coat };
    let gains = nearest_gains(draft, &limits, &mut |_, _| ())
        .map_err(|problems| Findings::with(opened, problems))?;
    Ok(Gained {
        draft,
        limits,
        gains,
    })
}

impl Answer for Gained<'_> {
    fn text(&self, unit: LengthUnit) -> String {
        let mut note = Note::new();
        note.title(&self.draft.name);
        note.line(&format!(
            "Lengths in {}; pencils from a sandwich, money for a gross",
            unit.label()
        ));
        note.line("");
        if self.gains.is_empty() {
            note.line("Nothing within these limits gains a pencil, or keeps the count on a cheaper stock.");
            return note.finish();
        }
        let head = [
            "Stock",
            "Change",
            "Gain",
            "Price before",
            "After",
            "How sure",
        ];
        let mut rows = vec![head.map(str::to_owned)];
        for gain in &self.gains {
            let gain = gain.rounded(self.draft, unit);
            let steps = gain.steps.iter().map(|step| {
                let [from, to] = [step.from, step.to].map(|length| figure::length(length, unit));
                format!("{} {from} → {to}", step.field.spec().label)
            });
            let words = match gain.kind {
                GainKind::MorePencils => {
                    format!("{} → {} pencils", gain.pencils_before, gain.pencils_after)
                }
                GainKind::CheaperStock => {
                    format!("{} pencils from cheaper slats", gain.pencils_after)
                }
            };
            let money = |price: Option<f64>| price.map_or_else(String::new, figure::money_rounded);
            rows.push([
                names::slat(self.draft, gain.slat),
                steps.collect::<Vec<_>>().join(", "),
                words,
                money(gain.price_before),
                money(gain.price_after),
                proof(gain.proof),
            ]);
        }
        let (words, figures) = (Column::Words, Column::Figures);
        note.table([words, words, words, figures, figures, words], &rows);
        note.finish()
    }

    fn json(&self) -> String {
        document::write(&GainsDocument::from(self))
    }

    fn ending(&self) -> Ending {
        Ending::Fine
    }
}

/// What is known of how near a change is.
fn proof(proof: GainProof) -> String {
    match proof {
        GainProof::Smallest => "proved smallest".to_owned(),
        GainProof::SmallestOfSteps => "smallest of 200 steps".to_owned(),
        GainProof::Tried => format!("tried in {PAIR_STEPS} steps either way, not proved"),
    }
}
