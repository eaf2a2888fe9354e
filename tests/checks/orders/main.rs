//! Order plans against published lots and price breaks, and a general solver.

mod books;
mod examples;

use solver::order_plan::{
    OrderPlan, OrderPlanDraft, OrderPlanLimits, OrderPlanOutcome, plan_orders, verify,
};

/// The plan, recounted, and the bound; whether it is proved. Nothing where there is no plan.
fn planned(draft: OrderPlanDraft, steps: u64) -> Option<(OrderPlan, i64, bool)> {
    let data = draft.check().expect("a book in the ranges");
    let limits = OrderPlanLimits { steps, gap: 0 };
    let outcome = plan_orders(&data, &limits, &mut |_| true).expect("a plan that adds up");
    let is_proved = matches!(outcome, OrderPlanOutcome::Proved { .. });
    match outcome {
        OrderPlanOutcome::Proved { plan, bound } | OrderPlanOutcome::WithinGap { plan, bound } => {
            verify(data.draft(), &plan).expect("a plan that adds up");
            assert!(bound <= plan.value(data.aim()));
            Some((*plan, bound, is_proved))
        }
        OrderPlanOutcome::NoPlan { .. } => None,
        outcome @ OrderPlanOutcome::NoneFound { .. } => panic!("no plan found: {outcome:?}"),
    }
}
