//! Planks sawn into blanks against worked examples, a general solver, and planks that were cut up.

mod examples;
mod planted;
mod shops;
mod stages;

use solver::sawing::{SawingData, SawingLimits, SawingOutcome, SawingPlan, saw, verify};

/// The plan and the bound, recounted; whether they meet.
fn solved(data: &SawingData, relaxations: u64) -> (SawingPlan, i64, bool) {
    let outcome =
        saw(data, &SawingLimits { relaxations }, &mut |_| true).expect("a plan that adds up");
    let (plan, proof) = match outcome {
        SawingOutcome::Proved { plan, proof } | SawingOutcome::WithinGap { plan, proof, .. } => {
            (plan, proof)
        }
        outcome => panic!("no plan: {outcome:?}"),
    };
    verify(data, &plan).expect("a plan that adds up");
    assert!(plan.short(data).iter().all(|&missing| missing == 0));
    let bound = proof.bound(data).expect("a proof that holds");
    assert!(bound <= plan.cost);
    let meets = bound == plan.cost;
    (plan, bound, meets)
}
