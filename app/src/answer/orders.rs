//! The plan that fills the order book, and what beside it is worth knowing.

mod sheet;

use solver::order_plan::{OrderPlan, OrderPlanLimits, OrderPlanProgress};
use solver::{Length, LengthUnit, OrderAnswer, OrderJob, ProjectDraft};

use super::sparing::Sparing;
use super::wording::sentence;
use crate::protocol::{JobId, OrdersSoFar, PlanSheet, PlannedOrders, Reply, Whole};

/// How long the orders are planned again with something else in the place of one thing.
const AGAIN: OrderPlanLimits = OrderPlanLimits {
    steps: 3_000,
    gap: 0,
};

/// How much wider slats are asked about, mm.
const WIDER: f64 = 1.0;

/// Plans the orders. Every better plan is told as it is found, so that stopping keeps it.
pub(super) fn plan(
    job: JobId,
    draft: &ProjectDraft,
    unit: LengthUnit,
    tell: &mut dyn FnMut(Reply),
) -> Reply {
    let orders = match check(job, draft, unit) {
        Ok(orders) => orders,
        Err(refused) => return *refused,
    };
    let mut sparing = Sparing::default();
    let mut told = None;
    let mut hear = |progress: &OrderPlanProgress<'_>| {
        let is_better = progress.best.is_some() && told != progress.value;
        if sparing.tells_next() || is_better {
            told = progress.value;
            let better = progress.best.filter(|_| is_better);
            let so_far = Box::new(so_far(&orders, progress, better));
            tell(Reply::Planning { job, so_far });
        }
        true
    };
    match orders.answer(&OrderPlanLimits::default(), &mut hear) {
        Ok(answer) => Reply::Planned {
            job,
            planned: Box::new(planned(&orders, &answer, unit)),
        },
        Err(fault) => Reply::Fault {
            job: Some(job),
            reason: format!(
                "The plan did not stand its recount, so it is not shown ({fault}). \
                 Change an order a little and try again"
            ),
        },
    }
}

/// The prices at which stocks that a plan does not buy begin to pay.
pub(super) fn paying_prices(
    job: JobId,
    draft: &ProjectDraft,
    unit: LengthUnit,
    cost: Whole,
    stocks: &[u32],
) -> Reply {
    let orders = match check(job, draft, unit) {
        Ok(orders) => orders,
        Err(refused) => return *refused,
    };
    let price = |&stock: &u32| orders.paying_price(stock as usize, cost.hundredths(), &AGAIN);
    let lines = stocks.iter().map(|stock| price(stock).sentence()).collect();
    Reply::Told { job, lines }
}

/// What slats one millimetre wider would save, stock by stock.
pub(super) fn wider_slats(
    job: JobId,
    draft: &ProjectDraft,
    unit: LengthUnit,
    now: [Whole; 2],
    stocks: &[u32],
) -> Reply {
    if let Err(refused) = check(job, draft, unit) {
        return *refused;
    }
    let (now, by) = (now.map(Whole::hundredths), Length::millimetres(WIDER));
    let wider = |&stock: &u32| draft.with_wider_slats(stock as usize, by, now, &AGAIN);
    let lines = stocks.iter().filter_map(wider);
    Reply::Told {
        job,
        lines: lines.map(|line| line.sentence(unit)).collect(),
    }
}

/// What can be planned, or the reply that says what is wrong.
fn check(job: JobId, draft: &ProjectDraft, unit: LengthUnit) -> Result<OrderJob, Box<Reply>> {
    draft.check_order_plan().map_err(|problems| {
        let told = |problem| sentence(problem, draft, unit);
        let problems = problems.iter().map(told).collect();
        Box::new(Reply::Refused { job, problems })
    })
}

fn so_far(
    orders: &OrderJob,
    progress: &OrderPlanProgress<'_>,
    better: Option<&OrderPlan>,
) -> OrdersSoFar {
    OrdersSoFar {
        aim: orders.data().aim().into(),
        // Before the first relaxation nothing is known of a bound.
        bound: (progress.bound > 0).then(|| progress.bound.into()),
        value: progress.value.map(Into::into),
        steps: progress.steps.into(),
        better: better.map(|plan| PlanSheet::of(orders, plan)),
    }
}

fn planned(orders: &OrderJob, answer: &OrderAnswer, unit: LengthUnit) -> PlannedOrders {
    let worths = answer.worths.iter();
    PlannedOrders {
        end: answer.end.into(),
        aim: answer.aim.into(),
        value: answer.value.map(Into::into),
        bound: answer.bound.map(Into::into),
        sheet: (answer.plan.as_ref()).map(|plan| PlanSheet::of(orders, plan)),
        worths: worths
            .map(|worth| worth.sentence(answer.aim, unit))
            .collect(),
        slack: answer.slack.iter().map(|line| line.sentence()).collect(),
        clashes: (answer.clashes.iter())
            .map(|clash| clash.sentence(unit))
            .collect(),
    }
}
