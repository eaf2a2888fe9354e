//! What `thresholds` prints.

use schemars::JsonSchema;
use serde::Serialize;
use solver::{Change, Threshold};

use super::words::{OutcomeWord, RuleWord};
use super::{Saved, VERSION};
use crate::path;
use crate::thresholds::Listed;

/// What `slatwright thresholds` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct ThresholdsDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-thresholds"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the project is called.
    project: String,
    /// The sizes of the layout: slats, rules, barrel.
    sizes: Vec<Size>,
}

/// A size of the layout, with the nearest values at which something changes.
#[derive(Debug, Serialize, JsonSchema)]
struct Size {
    /// Where it stands in the project file, like `slats[2].width_mm`.
    path: String,
    /// What it is called.
    label: &'static str,
    /// What stands there, mm.
    today_mm: f64,
    /// Changes below that, the nearest first.
    below: Vec<ChangeLine>,
    /// Changes above that, the nearest first.
    above: Vec<ChangeLine>,
}

/// What is different at a value.
#[derive(Debug, Serialize, JsonSchema)]
struct ChangeLine {
    /// The first value at which it is so, mm.
    at_mm: f64,
    /// How far that is from today's value, mm; negative below it.
    step_mm: f64,
    /// Grooves side by side today, whatever the checks say.
    across_before: u32,
    /// Grooves side by side there; 0 where the barrel cannot be made.
    across_after: u32,
    /// Pencils from one sandwich today; 0 where a check fails.
    pencils_before: u32,
    /// Pencils from one sandwich there; 0 where a check fails or the barrel cannot be made.
    pencils_after: u32,
    /// Checks that come out otherwise there.
    flipped: Vec<Flipped>,
    /// Whether the barrel cannot be made there.
    unmade: bool,
    /// Price of slats saved, negative where it costs more; `null` where no pencil is made today
    /// or there.
    saved: Option<Saved>,
}

/// A check that comes out otherwise.
#[derive(Debug, Serialize, JsonSchema)]
struct Flipped {
    /// The rule.
    rule: RuleWord,
    /// How it comes out there.
    outcome: OutcomeWord,
}

impl From<&Listed<'_>> for ThresholdsDocument {
    fn from(listed: &Listed<'_>) -> Self {
        Self {
            format: "slatwright-thresholds",
            version: VERSION,
            project: listed.draft.name.clone(),
            sizes: listed.thresholds.iter().map(Size::from).collect(),
        }
    }
}

impl From<&Threshold> for Size {
    fn from(threshold: &Threshold) -> Self {
        let changes = |changes: &[Change]| changes.iter().map(ChangeLine::from).collect();
        Self {
            path: path::of_field(threshold.input.place, threshold.input.field),
            label: threshold.input.field.spec().label,
            today_mm: threshold.today,
            below: changes(&threshold.down),
            above: changes(&threshold.up),
        }
    }
}

impl From<&Change> for ChangeLine {
    fn from(change: &Change) -> Self {
        let flipped = change.flipped.iter().map(|&(rule, outcome)| Flipped {
            rule: rule.into(),
            outcome: outcome.into(),
        });
        Self {
            at_mm: change.at,
            step_mm: change.step,
            across_before: change.across_before,
            across_after: change.across_after,
            pencils_before: change.pencils_before,
            pencils_after: change.pencils_after,
            flipped: flipped.collect(),
            unmade: change.unmade,
            saved: change.worth.map(Saved::from),
        }
    }
}
