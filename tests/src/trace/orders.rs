//! Order plans of invented books, with every step on the way.

use solver::order_plan::{OrderPlanLimits, OrderPlanOutcome, plan_orders, worths};

use super::Trace;
use crate::orders::{BookSize, order_book};

const BOOKS: [BookSize; 3] = [
    BookSize {
        setups: 12,
        stocks: 3,
        periods: 1,
    },
    BookSize {
        setups: 8,
        stocks: 2,
        periods: 4,
    },
    BookSize {
        setups: 20,
        stocks: 3,
        periods: 6,
    },
];
/// Few enough to be quick in a browser.
const LIMITS: OrderPlanLimits = OrderPlanLimits { steps: 300, gap: 0 };

impl Trace {
    pub(super) fn orders(&mut self) {
        for (seed, size) in (1..=12).zip(BOOKS.into_iter().cycle()) {
            let data = match order_book(seed, size).check() {
                Ok(data) => data,
                Err(problems) => {
                    self.line("orders", &format!("{problems:?}"));
                    continue;
                }
            };
            let mut steps = Vec::new();
            let outcome = plan_orders(&data, &LIMITS, &mut |progress| {
                steps.push((progress.value, progress.bound, progress.steps));
                true
            });
            if let Ok(
                OrderPlanOutcome::Proved { plan, .. } | OrderPlanOutcome::WithinGap { plan, .. },
            ) = &outcome
            {
                self.line("worths", &format!("{:?}", worths(&data, plan)));
            }
            self.line("orders", &format!("{outcome:?} {steps:?}"));
        }
    }
}
