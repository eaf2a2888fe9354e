//! What comes out: the plan, how good it is, or what is missing.

use super::certificate::Certificate;
use super::data::SawingData;
use super::pattern::CutPattern;
use super::proof::Proof;

/// Planks to saw, and how.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SawingPlan {
    /// Patterns with the number of planks sawn like each, in order.
    pub cuts: Vec<(CutPattern, u64)>,
    /// What is made small: see [`SawingAim`](super::SawingAim).
    pub cost: i64,
}

impl SawingPlan {
    /// From patterns in any order, some of them alike.
    pub(super) fn of(data: &SawingData, mut cuts: Vec<(CutPattern, u64)>) -> Self {
        cuts.sort();
        cuts.dedup_by(|other, one| {
            let alike = one.0 == other.0;
            if alike {
                one.1 += other.1;
            }
            alike
        });
        cuts.retain(|(_, count)| *count > 0);
        let mut plan = Self { cuts, cost: 0 };
        let planks: i64 = plan
            .cuts
            .iter()
            .map(|(pattern, count)| pattern.weight(data) * count.cast_signed())
            .sum();
        let over: i64 = plan
            .made(data)
            .iter()
            .enumerate()
            .map(|(blank, &made)| {
                let (worth, most) = data.over_worth(blank);
                let over = made.saturating_sub(data.blanks()[blank].demand).min(most);
                worth * over.cast_signed()
            })
            .sum();
        plan.cost = planks - over;
        plan
    }

    /// Planks sawn.
    #[must_use]
    pub fn planks(&self) -> u64 {
        self.cuts.iter().map(|(_, count)| count).sum()
    }

    /// How many of each kind of blank come of it, in the order of the blanks.
    #[must_use]
    pub fn made(&self, data: &SawingData) -> Vec<u64> {
        let mut made = vec![0; data.blanks().len()];
        for (pattern, count) in &self.cuts {
            for (sum, pieces) in made.iter_mut().zip(pattern.made(data.blanks().len())) {
                *sum = pieces.saturating_mul(*count).saturating_add(*sum);
            }
        }
        made
    }

    /// Blanks that are missing of each kind, in the order of the blanks.
    #[must_use]
    pub fn short(&self, data: &SawingData) -> Vec<u64> {
        let made = self.made(data);
        let pairs = data.blanks().iter().zip(made);
        pairs
            .map(|(blank, made)| blank.demand.saturating_sub(made))
            .collect()
    }
}

/// How far the search came. The cases never stand for each other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SawingOutcome {
    /// No plan costs less.
    Proved {
        /// The best plan.
        plan: SawingPlan,
        /// What proves that its cost is a bound.
        proof: Proof,
    },
    /// A plan that can be carried out; a better one is not ruled out.
    WithinGap {
        /// The best plan found.
        plan: SawingPlan,
        /// No plan costs less than this.
        bound: i64,
        /// What proves the bound.
        proof: Proof,
    },
    /// The planks on hand do not suffice.
    Short {
        /// A plan that leaves few blanks missing.
        plan: SawingPlan,
        /// No plan leaves fewer missing; equal to what the plan leaves where that is proved.
        at_least: u64,
        /// What proves that: see [`Certificate::missing`].
        certificate: Certificate,
    },
    /// The limits were reached before a plan was found that makes all that is wanted; there may be one.
    NoneFound {
        /// A plan that makes part of it.
        plan: SawingPlan,
        /// No plan costs less than this.
        bound: i64,
        /// What proves the bound.
        proof: Proof,
    },
}

/// When the search gives up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SawingLimits {
    /// Relaxations solved in all. The same number gives the same answer in every run.
    pub relaxations: u64,
}

impl Default for SawingLimits {
    /// 2 000 relaxations.
    fn default() -> Self {
        Self { relaxations: 2_000 }
    }
}

/// What the search reports on its way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SawingProgress {
    /// No plan costs less.
    pub bound: i64,
    /// The best plan so far.
    pub best: Option<SawingPlan>,
    /// Relaxations solved.
    pub relaxations: u64,
    /// Rounds of pricing in all of them.
    pub rounds: u64,
}
