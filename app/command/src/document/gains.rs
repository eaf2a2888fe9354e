//! What `gains` prints.

use schemars::JsonSchema;
use serde::Serialize;
use solver::{Gain, GainKind, GainProof, ProjectDraft};

use super::{Named, VERSION};
use crate::gains::Gained;
use crate::path;
use solver::Place;

/// What `slatwright gains` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct GainsDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-gains"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the project is called.
    project: String,
    /// How far the size of the barrel may move either way, mm.
    size_limit_mm: f64,
    /// How far its corner radius may move either way, mm.
    corner_limit_mm: f64,
    /// How far its coat may move either way, mm.
    coat_limit_mm: f64,
    /// The changes, the nearest first: at most one for each stock and kind of gain.
    gains: Vec<GainLine>,
}

/// A change of the barrel, and what it brings.
#[derive(Debug, Serialize, JsonSchema)]
struct GainLine {
    /// What is gained.
    kind: KindWord,
    /// The stock on which it is.
    slat: Named,
    /// How the pencils lie.
    way: &'static str,
    /// One size of the barrel, or two together.
    steps: Vec<Step>,
    /// The shares of their limits that the steps take, added.
    distance: f64,
    /// Pencils from a sandwich today, of that stock or of the one that a cheaper one stands in for.
    pencils_before: u32,
    /// Pencils from a sandwich of that stock after the change.
    pencils_after: u32,
    /// Price of the slats of a gross today, in hundredths of the currency; `null` where none is made.
    price_before_hundredths: Option<f64>,
    /// Price of the slats of a gross after the change.
    price_after_hundredths: Option<f64>,
    /// What is known of how near it is.
    proof: ProofWord,
}

/// A size that changes.
#[derive(Debug, Serialize, JsonSchema)]
struct Step {
    /// Where it stands in the project file.
    path: String,
    /// What stands there today, mm.
    from_mm: f64,
    /// What is to stand there, mm.
    to_mm: f64,
}

/// What is gained.
#[derive(Debug, Clone, Copy, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum KindWord {
    /// More pencils from a sandwich of a stock.
    MorePencils,
    /// As many pencils as today from slats that cost less.
    CheaperStock,
}

/// What is known of how near a change is.
#[derive(Debug, Clone, Copy, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum ProofWord {
    /// No smaller change of this size alone will do.
    Smallest,
    /// The first of a free outline that lasts for more than a two-hundredth of its limit.
    SmallestOfSteps,
    /// Two sizes, the second tried in steps: a nearer pair may lie between them.
    Tried,
}

impl From<&Gained<'_>> for GainsDocument {
    fn from(gained: &Gained<'_>) -> Self {
        let limits = &gained.limits;
        let lines = gained.gains.iter();
        Self {
            format: "slatwright-gains",
            version: VERSION,
            project: gained.draft.name.clone(),
            size_limit_mm: limits.size.in_millimetres(),
            corner_limit_mm: limits.corner.in_millimetres(),
            coat_limit_mm: limits.coat.in_millimetres(),
            gains: lines
                .filter_map(|gain| GainLine::new(gain, gained.draft))
                .collect(),
        }
    }
}

impl GainLine {
    fn new(gain: &Gain, draft: &ProjectDraft) -> Option<Self> {
        let barrel = draft.barrel_place(draft.layout.barrel)?;
        let steps = gain.steps.iter().map(|step| Step {
            path: path::of_field(Place::Barrel(barrel), step.field),
            from_mm: step.from,
            to_mm: step.to,
        });
        Some(Self {
            kind: match gain.kind {
                GainKind::MorePencils => KindWord::MorePencils,
                GainKind::CheaperStock => KindWord::CheaperStock,
            },
            slat: Named::of(draft.slats.get(gain.slat)?, |slat| &slat.name),
            way: gain.way.label(),
            steps: steps.collect(),
            distance: gain.distance,
            pencils_before: gain.pencils_before,
            pencils_after: gain.pencils_after,
            price_before_hundredths: gain.price_before,
            price_after_hundredths: gain.price_after,
            proof: match gain.proof {
                GainProof::Smallest => ProofWord::Smallest,
                GainProof::SmallestOfSteps => ProofWord::SmallestOfSteps,
                GainProof::Tried => ProofWord::Tried,
            },
        })
    }
}
