use super::super::balance::SawingBalance;
use super::super::data::SawingDraft;
use super::super::pattern::{CutPattern, Section};
use super::super::plan::SawingLimits;
use super::super::{SawingOutcome, saw};
use super::*;

/// Whole lengths of a plank, each a section of one blank.
fn pattern(plank: usize, pieces: &[(usize, u64)]) -> CutPattern {
    let sections = pieces
        .iter()
        .map(|&(blank, count)| {
            let blanks = vec![(blank, 1)];
            (Section { blanks }, count)
        })
        .collect();
    CutPattern { plank, sections }
}

fn two_planks() -> SawingData {
    let mut draft = SawingDraft::along(100, 0, &[(45, 10), (30, 9), (14, 6)]);
    let mut longer = draft.planks[0];
    longer.size.length = 120;
    longer.price = 7;
    draft.planks.push(longer);
    draft.check().unwrap()
}

#[test]
fn the_most_used_pattern_comes_first_then_the_earlier_plank() {
    let cuts = vec![
        (pattern(1, &[(0, 1), (1, 2)]), 2),
        (pattern(0, &[(0, 2)]), 2),
        (pattern(1, &[(2, 3)]), 0),
        (pattern(0, &[(2, 1), (1, 2)]), 3),
    ];
    let list = SawingList::of(&two_planks(), &SawingPlan { cuts, cost: 0 }).unwrap();
    let order: Vec<(usize, u64, u64)> = list
        .cuts
        .iter()
        .map(|line| (line.cut, line.planks, line.planks_so_far))
        .collect();
    assert_eq!(order, [(3, 3, 3), (1, 2, 5), (0, 2, 7)]);
    let lengths: Vec<i64> = list.cuts[0]
        .laid
        .sections()
        .iter()
        .map(|section| section.length())
        .collect();
    assert_eq!(lengths, [30, 14]);
    // By hand: 3·2 of 9, then 2·2 more are one too many; 2·2 and 2 of 10.
    let thirties: Vec<BlankLine> = list
        .cuts
        .iter()
        .flat_map(|line| line.blanks.iter().copied())
        .filter(|line| line.blank == 1)
        .collect();
    let line = |made, so_far, to_make| BlankLine {
        blank: 1,
        made,
        so_far,
        to_make,
    };
    assert_eq!(thirties, [line(6, 6, 3), line(4, 10, 0)]);
    assert_eq!(
        list.cuts[2].blanks[0],
        BlankLine {
            blank: 0,
            made: 2,
            so_far: 6,
            to_make: 4
        }
    );
    let bill = |plank, planks, price, cost| BillLine {
        plank,
        planks,
        price,
        cost,
    };
    assert_eq!(list.bill, [bill(0, 5, 1, 5), bill(1, 2, 7, 14)]);
    assert_eq!((list.planks, list.cost), (7, 19));
}

#[test]
fn sums_beyond_what_is_counted_are_refused() {
    let plan = |planks| SawingPlan {
        cuts: vec![(pattern(0, &[(2, 7)]), planks)],
        cost: 0,
    };
    assert!(SawingList::of(&two_planks(), &plan(u64::MAX)).is_none());
    assert!(SawingList::of(&two_planks(), &plan(u64::MAX / 8)).is_some());
    assert!(SawingBalance::of(&two_planks(), &plan(u64::MAX)).is_some());
}

// Chvátal, Linear Programming (1983), chapter 13.
#[test]
fn after_the_last_pattern_of_a_whole_plan_nothing_is_to_make() {
    let draft = SawingDraft::along(100, 0, &[(45, 97), (36, 610), (31, 395), (14, 211)]);
    let data = draft.check().unwrap();
    let outcome = saw(&data, &SawingLimits::default(), &mut |_| true).unwrap();
    let SawingOutcome::Proved { plan, .. } = outcome else {
        panic!("453 is proved")
    };
    let list = SawingList::of(&data, &plan).unwrap();
    assert_eq!(list.planks, 453);
    assert!(
        list.cuts
            .windows(2)
            .all(|pair| pair[0].planks >= pair[1].planks)
    );
    for (blank, made) in plan.made(&data).into_iter().enumerate() {
        let lines = || {
            list.cuts
                .iter()
                .flat_map(|line| &line.blanks)
                .filter(|line| line.blank == blank)
        };
        let last = lines().next_back().unwrap();
        assert_eq!((last.so_far, last.to_make), (made, 0));
        assert_eq!(lines().map(|line| line.made).sum::<u64>(), made);
    }
}
