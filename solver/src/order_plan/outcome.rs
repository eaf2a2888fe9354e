//! How a search ends, and how long it may take.

use super::clash::Clash;
use super::plan::OrderPlan;

/// How far the search came. The cases never stand for each other. Bounds are in the units of the aim:
/// see [`PlanAim`](super::PlanAim).
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OrderPlanOutcome {
    /// No plan is better: cheaper by a hundredth of the currency, or with less timber or fewer
    /// change-overs.
    Proved {
        /// The best plan.
        plan: Box<OrderPlan>,
        /// No plan comes to less.
        bound: i64,
    },
    /// A plan that can be carried out; a better one is not ruled out.
    WithinGap {
        /// The best plan found.
        plan: Box<OrderPlan>,
        /// No plan comes to less.
        bound: i64,
    },
    /// There is no plan.
    NoPlan {
        /// Demands and limits that clash, none of which could be left out; empty where fractions of
        /// packs and sandwiches would do and whole ones do not.
        clash: Vec<Clash>,
    },
    /// The limits were reached, or the search was stopped, before a plan was found; there may be one.
    NoneFound {
        /// No plan comes to less.
        bound: i64,
    },
}

/// When the search gives up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OrderPlanLimits {
    /// Relaxations and branches in all. The same number gives the same answer in every run.
    pub steps: u64,
    /// The search ends when the best plan is within this share of the bound, millionths of the bound.
    pub gap: u32,
}

impl Default for OrderPlanLimits {
    /// 20 000 steps, and to the proof.
    fn default() -> Self {
        Self {
            steps: 20_000,
            gap: 0,
        }
    }
}

/// What the search reports on its way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OrderPlanProgress<'a> {
    /// The best plan so far; it stood its recount.
    pub best: Option<&'a OrderPlan>,
    /// What it comes to.
    pub value: Option<i64>,
    /// No plan comes to less.
    pub bound: i64,
    /// Relaxations and branches so far.
    pub steps: u64,
}

impl OrderPlanProgress<'_> {
    /// How far the best plan is above the bound, as a share of the plan; `None` without a plan.
    ///
    /// ```
    /// use solver::order_plan::OrderPlanProgress;
    /// let progress = OrderPlanProgress { best: None, value: Some(1_000), bound: 990, steps: 1 };
    /// assert_eq!(progress.gap(), Some(0.01));
    /// ```
    #[must_use]
    pub fn gap(&self) -> Option<f64> {
        let value = self.value?;
        let over = value.saturating_sub(self.bound).max(0) as f64;
        Some(if value > 0 { over / value as f64 } else { 0.0 })
    }
}
