//! Plans shops of two stages, thirty kinds of blank from three kinds of plank, and tells how far from the
//! bound the plan is after one second, and at the end.
//!
//! ```text
//! shops [first seed] [last seed] [scale]
//! ```

#![expect(clippy::print_stdout, reason = "it reports to whoever runs it")]

use std::time::Instant;

use solver::sawing::{SawingLimits, SawingOutcome, SawingPlan, saw};
use tests::shop_of_two_stages;

/// How far above the bound, in percent of the cost.
fn gap(cost: i64, bound: i64) -> f64 {
    (cost - bound) as f64 / cost as f64 * 100.0
}

fn main() {
    let mut words = std::env::args().skip(1).map(|word| word.parse().ok());
    let mut number = |first| words.next().flatten().unwrap_or(first);
    let (first, last, scale) = (number(1), number(20), number(1));
    for seed in first..=last {
        let draft = shop_of_two_stages(seed, scale);
        let Ok(data) = draft.check() else { continue };
        let begun = Instant::now();
        let mut after_one = None;
        let outcome = saw(&data, &SawingLimits::default(), &mut |state| {
            let seconds = begun.elapsed().as_secs_f64();
            if seconds > 1.0
                && after_one.is_none()
                && let Some(SawingPlan { cost, .. }) = state.best
            {
                after_one = Some(gap(cost, state.bound));
            }
            seconds < 10.0
        });
        let seconds = begun.elapsed().as_secs_f64();
        let (plan, bound) = match outcome {
            Ok(SawingOutcome::Proved { plan, .. }) => (plan.clone(), plan.cost),
            Ok(SawingOutcome::WithinGap { plan, bound, .. }) => (plan, bound),
            _ => continue,
        };
        let end = gap(plan.cost, bound);
        println!(
            "seed {seed:3}: {:5} planks, gap {:.4} % after 1 s, {end:.4} % after {seconds:.2} s",
            plan.planks(),
            after_one.unwrap_or(end)
        );
    }
}
