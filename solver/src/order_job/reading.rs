//! What a search found, for those who buy and run.

use super::clash::ClashLine;
use super::job::OrderJob;
use super::reckoning::OrderReckoning;
use super::slack::SlackLine;
use super::worth::WorthLine;
use crate::figure;
use crate::order_plan::{OrderPlan, OrderPlanOutcome, PlanAim, worths};
use crate::unit::LengthUnit;

/// How far the search came. The cases never stand for each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OrderEnd {
    /// No plan is better.
    Proved,
    /// A better plan is not ruled out.
    WithinGap,
    /// There is no plan.
    NoPlan,
    /// The limits were reached before a plan was found; there may be one.
    NoneFound,
}

/// What a search found.
#[derive(Debug, Clone, PartialEq)]
pub struct OrderAnswer {
    /// How far the search came.
    pub end: OrderEnd,
    /// What is made small; the value and the bound are counted in it.
    pub aim: PlanAim,
    /// What the plan comes to: thousandths of a hundredth of the currency, cubic millimetres, or
    /// change-overs.
    pub value: Option<i64>,
    /// No plan comes to less; none where there is none.
    pub bound: Option<i64>,
    /// What could be saved at most, over what the plan comes to; none without a plan.
    pub gap: Option<f64>,
    /// The plan itself, to be counted once more.
    pub plan: Option<OrderPlan>,
    /// What the plan comes to.
    pub reckoning: Option<OrderReckoning>,
    /// What a little more of a limit, or less of a demand, would save; only what would save anything.
    pub worths: Vec<WorthLine>,
    /// What the limits of offers that are ordered by leave.
    pub slack: Vec<SlackLine>,
    /// What clashes where there is no plan; empty where fractions of packs and sandwiches would do and
    /// whole ones do not.
    pub clashes: Vec<ClashLine>,
}

impl OrderJob {
    /// What a plan of [`Self::data`] comes to.
    ///
    /// # Panics
    /// When the plan is of other data.
    #[must_use]
    pub fn reckon(&self, plan: &OrderPlan) -> OrderReckoning {
        OrderReckoning::of(self, plan)
    }

    /// An outcome of [`Self::data`] in the words of the shop.
    ///
    /// # Panics
    /// When the outcome is that of other data.
    #[must_use]
    pub fn read(&self, outcome: &OrderPlanOutcome) -> OrderAnswer {
        let (end, plan, bound) = match outcome {
            OrderPlanOutcome::Proved { plan, bound } => {
                (OrderEnd::Proved, Some(plan), Some(*bound))
            }
            OrderPlanOutcome::WithinGap { plan, bound } => {
                (OrderEnd::WithinGap, Some(plan), Some(*bound))
            }
            OrderPlanOutcome::NoPlan { .. } => (OrderEnd::NoPlan, None, None),
            OrderPlanOutcome::NoneFound { bound } => (OrderEnd::NoneFound, None, Some(*bound)),
        };
        let aim = self.data.aim();
        let told = plan.map(|plan| (plan, worths(&self.data, plan)));
        let value = plan.map(|plan| plan.value(aim));
        let clashes = match outcome {
            OrderPlanOutcome::NoPlan { clash } => clash.as_slice(),
            _ => &[],
        };
        OrderAnswer {
            end,
            aim,
            value,
            bound,
            gap: value.zip(bound).map(|(value, bound)| gap(value, bound)),
            plan: plan.map(|plan| plan.as_ref().clone()),
            reckoning: plan.map(|plan| OrderReckoning::of(self, plan)),
            worths: told
                .as_ref()
                .map_or_else(Vec::new, |(_, worths)| WorthLine::of(self, worths)),
            slack: told
                .as_ref()
                .map_or_else(Vec::new, |(plan, worths)| SlackLine::of(self, plan, worths)),
            clashes: clashes
                .iter()
                .map(|clash| ClashLine::of(self, clash))
                .collect(),
        }
    }
}

/// What could be saved at most, over what a plan comes to; 0 for a plan that comes to nothing.
pub(super) fn gap(value: i64, bound: i64) -> f64 {
    if value > 0 {
        value.saturating_sub(bound).max(0) as f64 / value as f64
    } else {
        0.0
    }
}

impl PlanAim {
    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Cost => "Least cost",
            Self::Timber => "Least timber",
            Self::Changeovers => "Fewest change-overs",
        }
    }

    /// An amount in the units of the aim, as it is shown.
    ///
    /// ```
    /// use solver::LengthUnit;
    /// use solver::order_plan::PlanAim;
    /// let shown = PlanAim::Changeovers.shown(7, LengthUnit::Millimetre);
    /// assert_eq!(shown, "7 change-overs");
    /// ```
    #[must_use]
    pub fn shown(self, amount: i64, unit: LengthUnit) -> String {
        match self {
            Self::Cost => figure::money_rounded(super::reckoning::hundredths(amount)),
            Self::Timber => figure::timber(amount as f64, unit),
            Self::Changeovers if amount == 1 => "1 change-over".to_owned(),
            Self::Changeovers => format!("{} change-overs", figure::count(amount.unsigned_abs())),
        }
    }
}
