//! What the next pencil costs: the answer of `thresholds`.

use app::project_file::Opened;
use solver::{Change, Field, LengthUnit, Outcome, Place, Problem, ProjectDraft, Threshold, figure};

use crate::answer::Answer;
use crate::document::{self, ThresholdsDocument};
use crate::ending::Ending;
use crate::findings::Findings;
use crate::names;
use crate::note::{Column, Note};

/// The thresholds of the layout of a project.
pub(crate) struct Listed<'a> {
    /// The project.
    pub(crate) draft: &'a ProjectDraft,
    /// The thresholds of every size.
    pub(crate) thresholds: Vec<Threshold>,
}

/// Looks for the nearest values of every size at which something changes.
///
/// # Errors
/// Everything that stands in the way of the layout, and what is wrong with the gross of a year.
pub(crate) fn list(opened: &Opened) -> Result<Listed<'_>, Findings> {
    let draft = &opened.draft;
    let year_gross = draft.search.year_gross.read(Field::YearGross);
    let placed = |problem| Problem {
        place: Place::Search,
        problem,
    };
    let thresholds = match year_gross {
        Ok(year_gross) => solver::thresholds(draft, year_gross),
        Err(problem) => {
            let mut problems = draft.check_layout().err().unwrap_or_default();
            problems.push(placed(problem));
            Err(problems)
        }
    };
    Ok(Listed {
        draft,
        thresholds: thresholds.map_err(|problems| Findings::with(opened, problems))?,
    })
}

impl Answer for Listed<'_> {
    fn text(&self, unit: LengthUnit) -> String {
        let mut note = Note::new();
        note.title(&self.draft.name);
        note.line(&format!(
            "Lengths in {}; pencils from a sandwich, money saved for a gross",
            unit.label()
        ));
        note.line("");
        let head = [
            "Size",
            "Today",
            "Step",
            "Changes at",
            "Saved",
            "What changes",
        ];
        let mut rows = vec![head.map(str::to_owned)];
        for threshold in &self.thresholds {
            let label = self.label(threshold);
            let today = figure::length(threshold.today, unit);
            let changes: Vec<&Change> =
                (threshold.down.iter().rev()).chain(&threshold.up).collect();
            if changes.is_empty() {
                let nothing = "nothing, within its range".to_owned();
                let none = String::new;
                rows.push([label, today, none(), none(), none(), nothing]);
            } else {
                for change in changes {
                    let worth = (change.worth)
                        .map_or_else(String::new, |worth| figure::money_rounded(worth.per_gross));
                    rows.push([
                        label.clone(),
                        today.clone(),
                        figure::length(change.step, unit),
                        figure::length(change.at, unit),
                        worth,
                        words(change),
                    ]);
                }
            }
        }
        let (words, figures) = (Column::Words, Column::Figures);
        note.table([words, figures, figures, figures, figures, words], &rows);
        note.finish()
    }

    fn json(&self) -> String {
        document::write(&ThresholdsDocument::from(self))
    }

    fn ending(&self) -> Ending {
        Ending::Fine
    }
}

impl Listed<'_> {
    /// The name of a size, with that of its stock where the two slats are of two stocks.
    fn label(&self, threshold: &Threshold) -> String {
        let label = threshold.input.field.spec().label;
        match threshold.input.place {
            Place::Slat(at) if self.draft.layout.top != self.draft.layout.bottom => {
                format!("{label}, {}", names::slat(self.draft, at))
            }
            _ => label.to_owned(),
        }
    }
}

/// What is different at a change.
fn words(change: &Change) -> String {
    if change.unmade {
        return "the barrel cannot be made".to_owned();
    }
    let pencils = (change.pencils_before != change.pencils_after).then(|| {
        let [before, after] = [change.pencils_before, change.pencils_after]
            .map(|pencils| figure::count(pencils.into()));
        format!("{before} → {after} pencils")
    });
    let across = (pencils.is_none() && change.across_before != change.across_after)
        .then(|| format!("{} → {} across", change.across_before, change.across_after));
    let flipped = change.flipped.iter().map(|(rule, outcome)| {
        let outcome = match outcome {
            Outcome::Failed => "fails",
            Outcome::Passed | Outcome::Noted => "passes",
        };
        format!("{} {outcome}", rule.label())
    });
    let all: Vec<String> = pencils.into_iter().chain(across).chain(flipped).collect();
    all.join(", ")
}
