//! A spoilt plan is caught, and the fault named.

use super::*;

fn plan_of_ten_pencils() -> (PurchaseData, PurchasePlan) {
    let data = draft(&[10], &[(4, 300, 1, Some(2)), (2, 1, 0, None)], &[&[5, 0]]);
    let plan = PurchasePlan {
        runs: vec![vec![2, 0]],
        packs: vec![1, 0],
        cost: 300,
        slats_used: 4,
    };
    (data.check().expect("fine"), plan)
}

#[track_caller]
fn check_fault(spoil: impl FnOnce(&mut PurchasePlan), expected: &str) {
    let (data, mut plan) = plan_of_ten_pencils();
    assert_eq!(verify(&data, &plan), Ok(()));
    spoil(&mut plan);
    assert_eq!(
        verify(&data, &plan)
            .expect_err("the plan is spoilt")
            .to_string(),
        expected
    );
}

#[test]
fn a_missing_pencil_is_found() {
    check_fault(|plan| plan.runs[0][0] = 1, "order 1 gets 5 of 10 pencils");
}
#[test]
fn a_slat_used_twice_is_found() {
    check_fault(
        |plan| plan.packs[0] = 0,
        "slat stock 1 gives 1 slats, the plan uses 4",
    );
}
#[test]
fn a_passed_limit_is_found() {
    check_fault(
        |plan| plan.packs[0] = 3,
        "slat stock 1 is limited to 2 packs, the plan buys 3",
    );
}
#[test]
fn a_wrong_stock_is_found() {
    check_fault(
        |plan| plan.runs[0][1] = 1,
        "order 1 cannot be made from slat stock 2",
    );
}
#[test]
fn a_wrong_cost_is_found() {
    check_fault(
        |plan| plan.cost = 299,
        "the packs cost 300 hundredths, the plan states 299",
    );
}
#[test]
fn a_wrong_count_of_slats_is_found() {
    check_fault(
        |plan| plan.slats_used = 5,
        "the runs take 4 slats, the plan states 5",
    );
}
#[test]
fn another_shape_is_found() {
    check_fault(
        |plan| plan.packs.clear(),
        "the plan does not fit 1 orders and 2 slat stocks",
    );
}
#[test]
fn huge_numbers_do_not_overflow() {
    check_fault(
        |plan| plan.runs[0][0] = u64::MAX,
        "slat stock 1 gives 5 slats, the plan uses 36893488147419103230",
    );
}
