//! A plan of cuts.

use serde::{Deserialize, Serialize};
use solver::sawing::{CutPattern, SawingData, SawingOutcome, SawingPlan, Section};

use super::whole::Whole;

/// What came out of sawing. The four cases never stand for each other. Amounts as the aim counts
/// them: hundredths of the currency, planks, or cubic millimetres.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Sawn {
    /// No plan is better.
    Proved {
        /// The plan.
        cuts: Cuts,
        /// Cases of which it is proved one by one.
        cases: Whole,
    },
    /// A plan that can be carried out; a better one is not ruled out.
    WithinGap {
        /// The plan.
        cuts: Cuts,
        /// No plan comes to less.
        bound: Whole,
    },
    /// The planks to be had do not suffice.
    Short {
        /// A plan that leaves few blanks missing.
        cuts: Cuts,
        /// No plan leaves fewer missing.
        at_least: Whole,
    },
    /// The search ended before a plan was found that makes all that is wanted; there may be one.
    NoneFound {
        /// A plan that makes part of it.
        cuts: Cuts,
        /// No plan comes to less.
        bound: Whole,
    },
}

/// How far the search has come.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SawnSoFar {
    /// Rounds of pricing.
    pub rounds: Whole,
    /// No plan comes to less; `None` while nothing is known.
    pub bound: Option<Whole>,
    /// The best plan, where it is better than the one told before.
    pub better: Option<Cuts>,
}

/// Planks to saw, and how, by places in the lists of the saw shop that was asked of.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Cuts {
    cuts: Vec<Cut>,
    cost: Whole,
}

/// Planks that are sawn alike.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Cut {
    plank: u32,
    count: Whole,
    sections: Vec<CutSection>,
}

/// Sections that are ripped alike.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CutSection {
    count: Whole,
    blanks: Vec<(u32, Whole)>,
}

impl From<&SawingPlan> for Cuts {
    fn from(plan: &SawingPlan) -> Self {
        // Places in lists of at most 200 members.
        let section = |(section, count): &(Section, u64)| CutSection {
            count: (*count).into(),
            blanks: (section.blanks.iter())
                .map(|&(blank, pieces)| (blank as u32, pieces.into()))
                .collect(),
        };
        let cut = |(pattern, count): &(CutPattern, u64)| Cut {
            plank: pattern.plank as u32,
            count: (*count).into(),
            sections: pattern.sections.iter().map(section).collect(),
        };
        Self {
            cuts: plan.cuts.iter().map(cut).collect(),
            cost: plan.cost.into(),
        }
    }
}

impl Cuts {
    /// What it comes to, as the aim counts it.
    #[must_use]
    pub const fn cost(&self) -> i64 {
        self.cost.hundredths()
    }

    /// The plan, of the data that were asked of; nothing where it names a plank or a blank that they
    /// do not have.
    #[must_use]
    pub fn plan(&self, data: &SawingData) -> Option<SawingPlan> {
        let (planks, blanks) = (data.planks().len(), data.blanks().len());
        let section = |section: &CutSection| {
            let blanks = section.blanks.iter().map(|&(blank, pieces)| {
                let blank = blank as usize;
                (blank < blanks).then(|| (blank, pieces.pieces()))
            });
            let blanks = blanks.collect::<Option<Vec<_>>>()?;
            Some((Section { blanks }, section.count.pieces()))
        };
        let cut = |cut: &Cut| {
            let plank = cut.plank as usize;
            let sections = cut.sections.iter().map(section);
            let sections = sections.collect::<Option<Vec<_>>>()?;
            (plank < planks).then(|| (CutPattern { plank, sections }, cut.count.pieces()))
        };
        Some(SawingPlan {
            cuts: self.cuts.iter().map(cut).collect::<Option<Vec<_>>>()?,
            cost: self.cost.hundredths(),
        })
    }
}

impl From<&SawingOutcome> for Sawn {
    fn from(outcome: &SawingOutcome) -> Self {
        match outcome {
            SawingOutcome::Proved { plan, proof } => Self::Proved {
                cuts: plan.into(),
                cases: (proof.certificates() as u64).into(),
            },
            SawingOutcome::WithinGap { plan, bound, .. } => Self::WithinGap {
                cuts: plan.into(),
                bound: (*bound).into(),
            },
            SawingOutcome::Short { plan, at_least, .. } => Self::Short {
                cuts: plan.into(),
                at_least: (*at_least).into(),
            },
            SawingOutcome::NoneFound { plan, bound, .. } => Self::NoneFound {
                cuts: plan.into(),
                bound: (*bound).into(),
            },
        }
    }
}
