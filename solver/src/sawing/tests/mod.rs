//! Plans against every plan there is, and any input.

mod anything;
mod knapsacks;
mod trying_all;

use super::*;

/// Sizes in millimetres.
fn size(length: i64, width: i64, thickness: i64) -> Dimensions {
    Dimensions {
        length: length * 1000,
        width: width * 1000,
        thickness: thickness * 1000,
    }
}

fn plank(size: Dimensions, price: i64, on_hand: Option<u64>) -> PlankStock {
    PlankStock {
        size,
        end_trim: 0,
        edge_trim: 0,
        price,
        on_hand,
    }
}

fn blank(size: Dimensions, demand: u64) -> BlankOrder {
    BlankOrder {
        size,
        demand,
        over_worth: 0,
        most_over: 0,
    }
}

fn run(data: &SawingData) -> SawingOutcome {
    saw(data, &SawingLimits { relaxations: 200 }, &mut |_| true).unwrap()
}

#[test]
fn two_stages_of_a_small_shop() {
    // By hand: a plank of 1000 × 100 holds two sections of 480 with a cut of 4 between them, and a
    // section 9 blanks of 9.5 with cuts of 1.5 between them: 9·9.5 + 8·1.5 = 97.5. So 18 a plank, and
    // 40 blanks take three.
    let data = SawingDraft {
        planks: vec![plank(size(1000, 100, 80), 500, None)],
        blanks: vec![BlankOrder {
            size: Dimensions {
                length: 480_000,
                width: 76_000,
                thickness: 9_500,
            },
            ..blank(size(1, 1, 1), 40)
        }],
        crosscut_kerf: 4_000,
        rip_kerf: 1_500,
        offcuts: None,
        aim: SawingAim::Cost,
    };
    let data = data.check().unwrap();
    let SawingOutcome::Proved { plan, proof } = run(&data) else {
        panic!("proved");
    };
    assert_eq!((plan.cost, plan.planks()), (1_500, 3));
    assert_eq!(proof.bound(&data), Some(1_500));
    assert!(plan.made(&data)[0] >= 40);
}

#[test]
fn planks_on_hand_that_do_not_suffice_are_told_with_what_is_missing() {
    let draft = |on_hand| SawingDraft {
        planks: vec![plank(size(1000, 10, 10), 100, Some(on_hand))],
        blanks: vec![blank(size(300, 10, 10), 7), blank(size(500, 10, 10), 2)],
        crosscut_kerf: 0,
        rip_kerf: 0,
        offcuts: None,
        aim: SawingAim::Cost,
    };
    let data = draft(4).check().unwrap();
    let outcome = run(&data);
    assert!(
        matches!(&outcome, SawingOutcome::Proved { plan, .. } if plan.planks() == 4),
        "{outcome:?}"
    );
    // Three planks hold nine of the short blanks, of which seven are wanted; so at least one is missing.
    let data = draft(3).check().unwrap();
    let SawingOutcome::Short {
        plan,
        at_least,
        certificate,
    } = run(&data)
    else {
        panic!("short");
    };
    let missing: u64 = plan.short(&data).iter().sum();
    assert_eq!((missing, at_least), (1, 1));
    assert_eq!(certificate.missing(&data), Some(1));
}

#[test]
fn offcuts_and_blanks_beyond_the_demand_are_worth_what_was_said() {
    let draft = |offcut, over_worth| SawingDraft {
        planks: vec![plank(size(1000, 10, 10), 100, None)],
        blanks: vec![BlankOrder {
            over_worth,
            most_over: 1,
            ..blank(size(300, 10, 10), 2)
        }],
        crosscut_kerf: 0,
        rip_kerf: 0,
        offcuts: Some(OffcutWorth {
            shortest: 200_000,
            metre: offcut,
        }),
        aim: SawingAim::Cost,
    };
    // Two blanks leave 400 mm, worth 20; a third one is worth 15 or 25, and leaves nothing.
    for (over_worth, cost, made) in [(15, 80, 2), (25, 75, 3)] {
        let data = draft(50, over_worth).check().unwrap();
        let (SawingOutcome::Proved { plan, .. } | SawingOutcome::WithinGap { plan, .. }) =
            run(&data)
        else {
            panic!("a plan");
        };
        assert_eq!((plan.cost, plan.made(&data)[0]), (cost, made));
    }
    let dear = draft(101, 0).check().unwrap_err();
    assert_eq!(dear, [SawingProblem::DearOffcut { plank: 0 }]);
}

#[test]
fn what_is_wrong_is_told_all_at_once() {
    let draft = SawingDraft {
        planks: vec![PlankStock {
            end_trim: 500_000,
            price: -1,
            ..plank(size(1000, 10, 10), 0, Some(MOST_PIECES + 1))
        }],
        blanks: vec![
            blank(size(0, 10, 10), 1),
            blank(size(1, 1, 1), MOST_DEMAND + 1),
        ],
        crosscut_kerf: -1,
        rip_kerf: MOST_KERF + 1,
        offcuts: None,
        aim: SawingAim::Cost,
    };
    let told: Vec<String> = draft
        .check()
        .unwrap_err()
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(told.len(), 7, "{told:?}");
    for words in [
        "the price must be from 0 to 1 000 000; it is -0.01",
        "a kerf must be from 0 to 50 mm; it is 50.001 mm",
    ] {
        assert!(
            told.iter().any(|problem| problem.contains(words)),
            "{words}: {told:?}"
        );
    }
    let unfit = SawingDraft {
        planks: vec![plank(size(1000, 100, 50), 1, None)],
        blanks: vec![blank(size(900, 60, 20), 1), blank(size(900, 50, 20), 1)],
        crosscut_kerf: 0,
        rip_kerf: 0,
        offcuts: None,
        aim: SawingAim::Cost,
    };
    let problems = unfit.check().unwrap_err();
    assert_eq!(
        problems[0].to_string(),
        "blank 1 fits no plank: it takes one of at least 900 × 20 × 60 mm between the trims"
    );
    assert_eq!(problems.len(), 1);
}

#[test]
fn ten_million_blanks_take_no_longer_than_ten() {
    let pieces: Vec<(i64, u64)> = (0..10).map(|at| (1_371 - 97 * at, MOST_DEMAND)).collect();
    let data = SawingDraft::along(5_600, 3, &pieces).check().unwrap();
    match run(&data) {
        SawingOutcome::Proved { .. } => {}
        SawingOutcome::WithinGap { plan, bound, .. } => assert!(plan.cost - bound <= 1),
        outcome => panic!("{outcome:?}"),
    }
}

#[test]
fn stopping_keeps_the_best_plan_and_a_bound_that_holds() {
    let pieces = [
        (1380, 22),
        (1520, 25),
        (1560, 12),
        (1710, 14),
        (1820, 18),
        (1880, 18),
        (1930, 20),
    ];
    let data = SawingDraft::along(5_600, 0, &pieces).check().unwrap();
    let SawingOutcome::Proved { plan: best, .. } = run(&data) else {
        panic!("proved");
    };
    let stopped = saw(&data, &SawingLimits::default(), &mut |_| false).unwrap();
    let (SawingOutcome::Proved { plan, proof } | SawingOutcome::WithinGap { plan, proof, .. }) =
        stopped
    else {
        panic!("a plan");
    };
    assert!(proof.bound(&data).unwrap() <= best.cost && best.cost <= plan.cost);
}

#[test]
fn nothing_wanted_takes_no_plank() {
    let data = SawingDraft::along(100, 1, &[(45, 0)]).check().unwrap();
    let SawingOutcome::Proved { plan, .. } = run(&data) else {
        panic!("proved");
    };
    assert_eq!((plan.planks(), plan.cost), (0, 0));
}
