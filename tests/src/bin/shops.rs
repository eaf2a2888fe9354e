//! Times shops of two stages: thirty kinds of blank from three kinds of plank, seeded.
//!
//! ```text
//! shops [first seed] [last seed] [scale]   ──▶   a row for each: planks, cost, bound, gap, seconds, relaxations
//! ```

#![expect(
    clippy::print_stdout,
    reason = "the answers are for a program that reads them"
)]

use std::time::Instant;

use solver::sawing::{SawingLimits, SawingOutcome, saw};
use tests::shop_of_two_stages;

fn main() {
    let mut seeds = std::env::args()
        .skip(1)
        .filter_map(|word| word.parse().ok());
    let first: u64 = seeds.next().unwrap_or(1);
    let last = seeds.next().unwrap_or(first + 19);
    let scale = seeds.next().unwrap_or(1);
    for seed in first..=last {
        let data = shop_of_two_stages(seed, scale)
            .check()
            .expect("a shop within its ranges");
        let begun = Instant::now();
        let mut relaxations = 0;
        let mut last = (None, 0);
        let mut marks = [1.0, 10.0].iter().peekable();
        let outcome = saw(&data, &SawingLimits::default(), &mut |state| {
            relaxations = state.relaxations;
            let cost = state.best.as_ref().map(|b| b.cost);
            if std::env::var("LOUD").is_ok() && (cost, state.bound) != last {
                last = (cost, state.bound);
                println!(
                    "      {:.3} s {} relax: {cost:?} bound {}",
                    begun.elapsed().as_secs_f64(),
                    state.relaxations,
                    state.bound
                );
            }
            let seconds = begun.elapsed().as_secs_f64();
            if marks.next_if(|&&mark| seconds > mark).is_some()
                && let Some(best) = &state.best
            {
                let gap = (best.cost - state.bound) as f64 / best.cost as f64 * 100.0;
                println!("    after {seconds:.2} s: gap {gap:.4} %");
            }
            seconds < 12.0
        });
        let seconds = begun.elapsed().as_secs_f64();
        let (plan, bound) = match outcome.expect("a sound plan") {
            SawingOutcome::Proved { plan, .. } => (plan.clone(), plan.cost),
            SawingOutcome::WithinGap { plan, bound, .. } => (plan, bound),
            SawingOutcome::Short { .. } | SawingOutcome::NoneFound { .. } => continue,
        };
        let gap = (plan.cost - bound) as f64 / plan.cost as f64 * 100.0;
        println!(
            "{seed:3}  {:5} planks  cost {:8} bound {bound:8}  gap {gap:.4} %  {seconds:7.3} s  {relaxations} relaxations",
            plan.planks(),
            plan.cost
        );
    }
}
