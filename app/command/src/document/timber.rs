//! What `timber` prints, and reads when it counts a plan once more.

mod proof;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use solver::SawnReckoning;
use solver::sawing::{
    Certificate, CutPattern, Proof, SawingAim, SawingBalance, SawingOutcome, SawingPlan, SawnClass,
    Section,
};

use proof::{CertificatePart, ProofPart};

use crate::timber::{Recounted, Sawn};

/// The version of what `timber` prints; in the first a proof was nested as deep as its cases.
const VERSION: u32 = 2;

/// What `slatwright timber` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct TimberDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-timber"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the project is called.
    project: String,
    /// How far the search came.
    outcome: OutcomeWord,
    /// What is made small; amounts are counted in it.
    aim: AimWord,
    /// No plan comes to less, in hundredths of the currency, planks or cubic millimetres; `null` where
    /// blanks are missing.
    bound: Option<i64>,
    /// No plan leaves fewer blanks missing; 0 where none need be.
    least_missing: u64,
    /// Every kind of blank, in the order of the project.
    blanks: Vec<BlankLine>,
    /// Where the wood goes; the classes add up to the planks.
    wood: Vec<WoodLine>,
    /// The plan and what proves its bound.
    #[serde(flatten)]
    sawn: Option<SawnPart>,
}

/// How far the search came.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum OutcomeWord {
    /// No plan is better.
    Proved,
    /// A better plan is not ruled out.
    WithinGap,
    /// The planks on hand do not suffice.
    Short,
    /// No plan was found that makes all blanks; there may be one.
    NoneFound,
    /// The plan did not stand its recount.
    Fault,
}

/// What is made small.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum AimWord {
    /// Price of the planks less the worth of offcuts and of blanks beyond those wanted, hundredths of
    /// the currency.
    Cost,
    /// Planks.
    Planks,
    /// Volume of the planks, cubic millimetres.
    Volume,
}

/// A kind of blank.
#[derive(Debug, Serialize, JsonSchema)]
struct BlankLine {
    /// What it is called.
    name: String,
    /// Blanks wanted.
    wanted: u64,
    /// Blanks that come of the plan.
    made: u64,
}

/// A part of the wood of the planks.
#[derive(Debug, Serialize, JsonSchema)]
struct WoodLine {
    /// What becomes of it.
    class: &'static str,
    /// Volume, cubic millimetres.
    volume_mm3: f64,
    /// Share of the planks, 0 to 1.
    share: f64,
}

/// A plan, and what proves its bound. It is read again by `timber --recount`.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
pub(crate) struct SawnPart {
    /// What the plan comes to, in hundredths of the currency, planks or cubic millimetres.
    amount: i64,
    /// Planks that are sawn alike.
    patterns: Vec<PatternPart>,
    /// What proves the bound; `null` where blanks are missing.
    proof: Option<ProofPart>,
    /// What proves that blanks must be missing; `null` where none need be.
    missing: Option<CertificatePart>,
}

/// Planks that are sawn alike.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
struct PatternPart {
    /// Place of the plank in the list of the project, from 0.
    plank: usize,
    /// How many are sawn like this.
    planks: u64,
    /// What each is crosscut into.
    sections: Vec<SectionPart>,
}

/// Sections that are ripped alike.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
struct SectionPart {
    /// How many.
    sections: u64,
    /// What each is ripped into.
    blanks: Vec<PiecesPart>,
}

/// Blanks of a section.
#[derive(Debug, Serialize, Deserialize, JsonSchema)]
struct PiecesPart {
    /// Place of the blank in the list of the project, from 0.
    blank: usize,
    /// How many.
    pieces: u64,
}

/// What `slatwright timber --recount` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct RecountDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-timber-recount"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = super::VERSION))]
    version: u32,
    /// How the plan fails its recount; `null` where it adds up.
    fault: Option<String>,
    /// Blanks that the plan leaves missing.
    missing: u64,
    /// What the plan comes to.
    amount: i64,
    /// No plan comes to less; `null` where the proof does not hold or there is none.
    bound: Option<i64>,
    /// No plan leaves fewer blanks missing; `null` where nothing proves that.
    least_missing: Option<i64>,
    /// Whether the plan is proved best.
    best: bool,
}

impl From<&Sawn<'_>> for TimberDocument {
    fn from(sawn: &Sawn<'_>) -> Self {
        let (outcome, bound, least_missing, proof, missing) = match &sawn.outcome {
            Ok(SawingOutcome::Proved { plan, proof }) => {
                (OutcomeWord::Proved, Some(plan.cost), 0, Some(proof), None)
            }
            Ok(SawingOutcome::WithinGap { bound, proof, .. }) => {
                (OutcomeWord::WithinGap, Some(*bound), 0, Some(proof), None)
            }
            Ok(SawingOutcome::Short {
                at_least,
                certificate,
                ..
            }) => (OutcomeWord::Short, None, *at_least, None, Some(certificate)),
            Ok(SawingOutcome::NoneFound { bound, proof, .. }) => {
                (OutcomeWord::NoneFound, Some(*bound), 0, Some(proof), None)
            }
            Err(_) => (OutcomeWord::Fault, None, 0, None, None),
        };
        let plan = sawn.plan();
        let reckoning = plan.map(|plan| SawnReckoning::of(&sawn.data, plan).blanks);
        let balance = plan.and_then(|plan| SawingBalance::of(&sawn.data, plan));
        Self {
            format: "slatwright-timber",
            version: VERSION,
            project: sawn.draft.name.clone(),
            outcome,
            aim: match sawn.data.draft().aim {
                SawingAim::Cost => AimWord::Cost,
                SawingAim::Planks => AimWord::Planks,
                SawingAim::Volume => AimWord::Volume,
            },
            bound,
            least_missing,
            blanks: (reckoning.unwrap_or_default().into_iter().enumerate())
                .map(|(blank, line)| BlankLine {
                    name: sawn.names().blank(blank),
                    wanted: line.wanted,
                    made: line.made,
                })
                .collect(),
            wood: balance.map_or_else(Vec::new, |balance| {
                let line = |class: SawnClass| WoodLine {
                    class: class.label(),
                    volume_mm3: balance.volume(class).in_cubic_millimetres(),
                    share: balance.share(class),
                };
                SawnClass::ALL.map(line).into()
            }),
            sawn: plan.map(|plan| SawnPart {
                amount: plan.cost,
                patterns: plan.cuts.iter().map(Into::into).collect(),
                proof: proof.map(Into::into),
                missing: missing.map(Into::into),
            }),
        }
    }
}

impl From<&Recounted> for RecountDocument {
    fn from(recounted: &Recounted) -> Self {
        Self {
            format: "slatwright-timber-recount",
            version: super::VERSION,
            fault: recounted.fault.map(|fault| fault.to_string()),
            missing: recounted.missing,
            amount: recounted.amount,
            bound: recounted.bound,
            least_missing: recounted.least_missing,
            best: recounted.is_best(),
        }
    }
}

impl From<&(CutPattern, u64)> for PatternPart {
    fn from((pattern, planks): &(CutPattern, u64)) -> Self {
        let section = |(section, sections): &(Section, u64)| SectionPart {
            sections: *sections,
            blanks: (section.blanks.iter())
                .map(|&(blank, pieces)| PiecesPart { blank, pieces })
                .collect(),
        };
        Self {
            plank: pattern.plank,
            planks: *planks,
            sections: pattern.sections.iter().map(section).collect(),
        }
    }
}

impl SawnPart {
    /// The plan, as it is told.
    pub(crate) fn plan(&self) -> SawingPlan {
        let section = |part: &SectionPart| {
            let blanks = part
                .blanks
                .iter()
                .map(|held| (held.blank, held.pieces))
                .collect();
            (Section { blanks }, part.sections)
        };
        let cut = |part: &PatternPart| {
            let sections = part.sections.iter().map(section).collect();
            (
                CutPattern {
                    plank: part.plank,
                    sections,
                },
                part.planks,
            )
        };
        SawingPlan {
            cuts: self.patterns.iter().map(cut).collect(),
            cost: self.amount,
        }
    }

    /// What proves the bound, where it can be read.
    pub(crate) fn proof(&self) -> Option<Proof> {
        self.proof.as_ref().and_then(ProofPart::proof)
    }

    /// What proves that blanks must be missing, where it can be read.
    pub(crate) fn certificate_of_missing(&self) -> Option<Certificate> {
        self.missing.as_ref().and_then(CertificatePart::certificate)
    }
}
