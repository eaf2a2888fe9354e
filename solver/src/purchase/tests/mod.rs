//! Hand-made tables; brute force, recounts and arbitrary drafts beside them.

mod anything;
mod recount;
mod trying_all;

use super::*;

/// `(pack_slats, pack_price, on_hand, pack_limit)`.
type StockRow = (u32, i64, u64, Option<u32>);

fn draft(orders: &[u64], stocks: &[StockRow], yields: &[&[u32]]) -> PurchaseDraft {
    let stock = |&(pack_slats, pack_price, on_hand, pack_limit): &StockRow| SlatStock {
        pack_slats,
        pack_price,
        on_hand,
        pack_limit,
    };
    PurchaseDraft {
        orders: orders
            .iter()
            .map(|&pencils| PencilOrder { pencils })
            .collect(),
        stocks: stocks.iter().map(stock).collect(),
        yields: yields.iter().map(|row| row.to_vec()).collect(),
    }
}

fn outcome_of(draft: PurchaseDraft) -> PurchaseOutcome {
    let data = draft.check().expect("the table is within the ranges");
    plan(&data, &PurchaseLimits::default(), &mut |_| {}).expect("every plan stands its recount")
}

/// Proved cost, packs and slats, or the outcome as it prints.
fn told(outcome: &PurchaseOutcome) -> String {
    match outcome {
        PurchaseOutcome::Proved { plan, fewest_slats } => {
            let few = if *fewest_slats { "fewest" } else { "some" };
            format!("{} {:?} {few} {}", plan.cost, plan.packs, plan.slats_used)
        }
        PurchaseOutcome::WithinGap { plan, bound } => format!("{} over {bound}", plan.cost),
        PurchaseOutcome::NoneFound { bound } => format!("none over {bound}"),
        PurchaseOutcome::Impossible { obstacles } => obstacles
            .iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
            .join("; "),
    }
}

#[track_caller]
fn check(orders: &[u64], stocks: &[StockRow], yields: &[&[u32]], expected: &str) {
    assert_eq!(told(&outcome_of(draft(orders, stocks, yields))), expected);
}

// Sources of the rows below: own cases, derived by hand.

#[test]
fn an_empty_book_needs_nothing() {
    check(&[], &[], &[], "0 [] fewest 0");
    check(&[], &[(10, 5, 0, None)], &[], "0 [0] fewest 0");
}

#[test]
fn a_line_of_no_pencils_needs_nothing() {
    check(&[0], &[(10, 5, 0, None)], &[&[0]], "0 [0] fewest 0");
    check(
        &[0, 9],
        &[(10, 5, 0, None)],
        &[&[9], &[9]],
        "5 [1] fewest 2",
    );
}

#[test]
fn slats_on_hand_are_used_first() {
    check(&[90], &[(10, 500, 20, None)], &[&[9]], "0 [0] fewest 20");
    check(&[91], &[(10, 500, 20, None)], &[&[9]], "500 [1] fewest 22");
}

#[test]
fn an_odd_slat_makes_no_sandwich() {
    check(&[9], &[(3, 7, 1, None)], &[&[9]], "7 [1] fewest 2");
    check(&[18], &[(3, 7, 0, None)], &[&[9]], "14 [2] fewest 4");
}

#[test]
fn one_gross_in_the_cheaper_packs() {
    // ⌈144 / 9⌉ = 16 sandwiches, 32 slats: 4 packs at 3.00 or 1 pack at 11.00.
    check(
        &[144],
        &[(10, 300, 0, None), (50, 1100, 0, None)],
        &[&[9, 9]],
        "1100 [0, 1] fewest 32",
    );
}

#[test]
fn a_limit_sends_the_rest_to_the_dearer_stock() {
    // 10 sandwiches: 5 from one cheap pack of 10 slats, 5 from the dear one.
    check(
        &[90],
        &[(10, 100, 0, Some(1)), (10, 900, 0, None)],
        &[&[9, 9]],
        "1000 [1, 1] fewest 20",
    );
}

#[test]
fn two_orders_share_a_pack() {
    // 3 + 2 sandwiches fill one pack of ten slats.
    check(
        &[27, 16],
        &[(10, 400, 0, None), (4, 300, 0, None)],
        &[&[9, 8], &[8, 8]],
        "400 [1, 0] fewest 10",
    );
}

#[test]
fn a_better_yield_is_worth_a_dearer_pack() {
    // 100 pencils: 13 sandwiches of 8 take 26 slats, three packs; 10 of 10 take 20, two packs.
    check(
        &[100],
        &[(10, 500, 0, None), (10, 700, 0, None)],
        &[&[8, 10]],
        "1400 [0, 2] fewest 20",
    );
}

#[test]
fn at_equal_cost_fewer_slats_are_used() {
    check(
        &[40],
        &[(10, 500, 0, None), (10, 500, 0, None)],
        &[&[8, 10]],
        "500 [0, 1] fewest 8",
    );
}

#[test]
fn at_equal_cost_and_slats_the_first_stock_wins() {
    check(
        &[40],
        &[(10, 500, 0, None), (10, 500, 0, None)],
        &[&[10, 10]],
        "500 [1, 0] fewest 8",
    );
}

#[test]
fn free_packs_are_free() {
    check(&[100], &[(10, 0, 0, None)], &[&[10]], "0 [2] fewest 20");
}

#[test]
fn fractional_runs_would_promise_too_much() {
    // Two orders of 5 pencils, 10 a sandwich: half a sandwich each is one pack, whole runs two.
    check(
        &[5, 5],
        &[(2, 100, 0, None)],
        &[&[10], &[10]],
        "200 [2] fewest 4",
    );
}

#[test]
fn a_pencil_no_slat_can_make() {
    check(
        &[10, 20],
        &[(10, 100, 0, None)],
        &[&[0], &[0]],
        "order 1 cannot be made from any slat stock; order 2 cannot be made from any slat stock",
    );
}

#[test]
fn an_order_without_any_stock_listed() {
    check(
        &[10],
        &[],
        &[&[]],
        "order 1 cannot be made from any slat stock",
    );
}

#[test]
fn too_few_slats_for_one_order() {
    // One pack and four slats on hand: seven sandwiches, 63 pencils.
    check(
        &[100],
        &[(10, 100, 4, Some(1))],
        &[&[9]],
        "order 1 is short by 37 pencils: all slats to be had give 63",
    );
}

#[test]
fn two_orders_compete_for_the_slats() {
    // Five sandwiches of 9; the orders need three each, the last one missing has 9 pencils.
    let outcome = outcome_of(draft(&[27, 27], &[(10, 100, 0, Some(1))], &[&[9], &[9]]));
    let PurchaseOutcome::Impossible { obstacles } = outcome else {
        panic!("{outcome:?}")
    };
    let [Obstacle::Competing { short, at_least }] = &obstacles[..] else {
        panic!("{obstacles:?}")
    };
    assert_eq!((short.iter().sum::<u64>(), *at_least), (9, 9));
}

#[test]
fn without_branches_the_quick_plan_and_a_bound_remain() {
    let draft = draft(
        &[500, 700, 900],
        &[(7, 301, 3, None), (11, 437, 0, Some(9)), (13, 571, 5, None)],
        &[&[7, 8, 9], &[8, 9, 9], &[9, 8, 10]],
    );
    let data = draft.check().expect("within the ranges");
    let limits = PurchaseLimits {
        time: None,
        nodes: 0,
    };
    let outcome = plan(&data, &limits, &mut |_| {}).expect("recounted");
    let PurchaseOutcome::WithinGap { plan: quick, bound } = outcome else {
        panic!("{outcome:?}")
    };
    let outcome = plan(&data, &PurchaseLimits::default(), &mut |_| {}).expect("recounted");
    let PurchaseOutcome::Proved { plan: best, .. } = outcome else {
        panic!("{outcome:?}")
    };
    assert!(
        bound <= best.cost && best.cost <= quick.cost,
        "{bound} {} {}",
        best.cost,
        quick.cost
    );
}

#[test]
fn without_time_the_quick_plan_remains() {
    let draft = draft(
        &[144],
        &[(10, 300, 0, None), (50, 1100, 0, None)],
        &[&[9, 9]],
    );
    let limits = PurchaseLimits {
        time: Some(std::time::Duration::ZERO),
        ..PurchaseLimits::default()
    };
    let data = draft.check().expect("within the ranges");
    let outcome = plan(&data, &limits, &mut |_| {}).expect("recounted");
    assert_eq!(told(&outcome), "1100 over 0");
}

#[test]
fn without_time_competing_orders_are_left_undecided() {
    // Five sandwiches are wanted and four can be had; to say so takes the solver.
    let rows = [(2, 10, 0, Some(2)), (2, 90, 0, Some(2))];
    let yields: [&[u32]; 2] = [&[9, 9], &[9, 9]];
    let data = draft(&[27, 18], &rows, &yields)
        .check()
        .expect("within the ranges");
    let limits = PurchaseLimits {
        time: Some(std::time::Duration::ZERO),
        ..PurchaseLimits::default()
    };
    let outcome = plan(&data, &limits, &mut |_| {}).expect("recounted");
    assert_eq!(told(&outcome), "none over 0");
}

#[test]
fn progress_tells_the_phases_in_order() {
    let draft = draft(
        &[144],
        &[(10, 300, 0, None), (50, 1100, 0, None)],
        &[&[9, 9]],
    );
    let mut heard = Vec::new();
    plan(
        &draft.check().expect("fine"),
        &PurchaseLimits::default(),
        &mut |step| heard.push(step),
    )
    .expect("recounted");
    assert!(
        matches!(heard[0], Progress::FirstPlan { cost: Some(1100) }),
        "{heard:?}"
    );
    assert!(
        heard
            .iter()
            .any(|step| matches!(step, Progress::Bound { bound: 1100, .. })),
        "{heard:?}"
    );
    assert!(
        matches!(heard.last(), Some(Progress::FewerSlats { cost: 1100 })),
        "{heard:?}"
    );
}

#[test]
fn every_broken_rule_is_named_at_once() {
    let draft = draft(
        &[1_000_000_000],
        &[(0, 1_000_000_000_000, u64::MAX, None)],
        &[&[9, 2000], &[]],
    );
    let problems = draft.check().expect_err("all of it is out of range");
    assert_eq!(problems.len(), 8, "{problems:#?}");
}

#[test]
fn the_largest_book_allowed_is_planned() {
    let stock = (MOST_PACK_SLATS, MOST_PACK_PRICE, 0, None);
    let single = (1, MOST_PACK_PRICE, 1, None);
    let outcome = outcome_of(draft(&[MOST_PENCILS], &[stock, single], &[&[1, 1]]));
    // 10⁸ sandwiches take 200 packs of 10⁶ slats.
    let expected = 200 * MOST_PACK_PRICE;
    let PurchaseOutcome::Proved { plan, .. } = outcome else {
        panic!("{outcome:?}")
    };
    assert_eq!(plan.cost, expected);
}
