//! Shops of two stages, thirty kinds of blank from three kinds of plank: no outside source. The bound is
//! that of a certificate, which is priced anew; the gap is what was asked for.

use solver::sawing::{SawingLimits, SawingOutcome, saw};
use tests::shop_of_two_stages;

/// How far the plan is above the bound, in parts of the bound, after so many relaxations.
fn gap(seed: u64, scale: u64) -> f64 {
    let draft = shop_of_two_stages(seed, scale);
    let data = draft.check().expect("a sound shop");
    let limits = SawingLimits { relaxations: 400 };
    let outcome = saw(&data, &limits, &mut |_| true).expect("a sound plan");
    let (SawingOutcome::Proved { plan, proof } | SawingOutcome::WithinGap { plan, proof, .. }) =
        outcome
    else {
        panic!("a plan");
    };
    let bound = proof.bound(&data).expect("a sound proof");
    (plan.cost - bound) as f64 / bound as f64
}

#[test]
fn most_plans_come_within_a_thousandth_of_the_bound() {
    let gaps: Vec<f64> = (1..=5).map(|seed| gap(seed, 1)).collect();
    let near = gaps.iter().filter(|gap| **gap <= 0.001).count();
    let all_near = gaps.iter().all(|gap| *gap <= 0.002);
    // 4 of 5, and 1 and 2 proved, when this was written.
    assert!(near >= 4 && all_near, "{gaps:?}");
}

#[test]
fn ten_times_as_many_blanks_come_nearer() {
    let gap = gap(1, 10);
    assert!(gap <= 0.000_3, "{gap}");
}
