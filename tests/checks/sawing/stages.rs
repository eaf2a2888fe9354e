//! Shops of two stages, thirty kinds of blank from three kinds of plank: no outside source. The bound is
//! that of a certificate, which is priced anew; the gap is what was asked for.

use solver::sawing::{SawingLimits, SawingOutcome, saw};
use tests::shop_of_two_stages;

#[test]
fn plans_come_within_a_thousandth_of_the_bound() {
    for seed in 1..=3 {
        let data = shop_of_two_stages(seed, 1).check().expect("a sound shop");
        let limits = SawingLimits { relaxations: 400 };
        let outcome = saw(&data, &limits, &mut |_| true).expect("a sound plan");
        let (cost, bound) = match outcome {
            SawingOutcome::Proved { plan, proof } => (plan.cost, proof.bound(&data)),
            SawingOutcome::WithinGap { plan, proof, .. } => (plan.cost, proof.bound(&data)),
            outcome => panic!("{outcome:?}"),
        };
        let bound = bound.expect("a sound proof");
        assert!((cost - bound) * 1000 <= bound, "{seed}: {cost}, {bound}");
    }
}

#[test]
fn ten_times_as_much_comes_ten_times_as_near() {
    let data = shop_of_two_stages(1, 10).check().expect("a sound shop");
    let limits = SawingLimits { relaxations: 400 };
    let outcome = saw(&data, &limits, &mut |_| true).expect("a sound plan");
    let (SawingOutcome::Proved { plan, proof } | SawingOutcome::WithinGap { plan, proof, .. }) =
        outcome
    else {
        panic!("a plan");
    };
    let bound = proof.bound(&data).expect("a sound proof");
    assert!(
        (plan.cost - bound) * 10_000 <= bound,
        "{} {bound}",
        plan.cost
    );
}
