use super::super::data::{BlankOrder, OffcutWorth, PlankStock, SawingAim, SawingDraft};
use super::super::pattern::{CutPattern, Section};
use super::*;
use proptest::prelude::*;

const fn size(length: i64, width: i64, thickness: i64) -> Dimensions {
    Dimensions {
        length,
        width,
        thickness,
    }
}

fn plank(size: Dimensions, end_trim: i64, edge_trim: i64) -> PlankStock {
    PlankStock {
        size,
        end_trim,
        edge_trim,
        price: 1_000,
        on_hand: None,
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

/// A plan of one pattern.
fn plan(planks: u64, sections: &[(&[(usize, u64)], u64)]) -> SawingPlan {
    let sections = sections
        .iter()
        .map(|&(blanks, count)| {
            (
                Section {
                    blanks: blanks.to_vec(),
                },
                count,
            )
        })
        .collect();
    SawingPlan {
        cuts: vec![(CutPattern { plank: 0, sections }, planks)],
        cost: 0,
    }
}

/// A plank of 2 m × 100 mm × 30 mm with 10 mm and 2 mm of trim, and blanks of 185 × 27 × 6 mm.
fn draft(offcuts: Option<OffcutWorth>) -> SawingDraft {
    SawingDraft {
        planks: vec![plank(size(2_000_000, 100_000, 30_000), 10_000, 2_000)],
        blanks: vec![blank(size(185_000, 27_000, 6_000), 200)],
        crosscut_kerf: 4_000,
        rip_kerf: 2_000,
        offcuts,
        aim: SawingAim::Planks,
    }
}

/// Parts of the example in cubic millimetres, in the order of the balance.
#[track_caller]
fn check(draft: SawingDraft, plan: &SawingPlan, expected: [i128; 10]) {
    let balance = SawingBalance::of(&draft.check().unwrap(), plan).unwrap();
    let parts = SawnClass::ALL.map(|class| {
        let part = balance.cubic_micrometres(class);
        assert_eq!(part % 1_000_000_000, 0, "{class:?}");
        part / 1_000_000_000
    });
    assert_eq!(parts, expected);
}

// By hand. Across, 96 mm hold twelve blanks and twelve cuts: 12·6 + 12·2 = 96. Along, 1980 mm hold
// ten sections and ten cuts: 1850 + 40 = 1890, and 90 are left. Two planks of 6 000 000 mm³ each.
#[test]
fn two_planks_by_hand() {
    let expected = [
        200 * 185 * 27 * 6,
        40 * 185 * 27 * 6,
        240 * 185 * 6 * 3,
        2 * 10 * 185 * 24 * 30,
        0,
        2 * 40 * 96 * 30,
        0,
        2 * 90 * 96 * 30,
        2 * 20 * 100 * 30,
        2 * 1980 * 4 * 30,
    ];
    assert_eq!(expected.iter().sum::<i128>(), 2 * 6_000_000);
    check(draft(None), &plan(2, &[(&[(0, 12)], 10)]), expected);
}

#[test]
fn an_offcut_of_the_shortest_length_is_kept_and_a_shorter_one_is_not() {
    let offcut = 90 * 96 * 30;
    for (shortest, kept) in [(90_000, offcut), (90_001, 0)] {
        let data = draft(Some(OffcutWorth { shortest, metre: 0 }))
            .check()
            .unwrap();
        let balance = SawingBalance::of(&data, &plan(1, &[(&[(0, 12)], 10)])).unwrap();
        let volume = |class| balance.volume(class).in_cubic_millimetres();
        assert_eq!(volume(SawnClass::KeptOffcuts), f64::from(kept));
        assert_eq!(volume(SawnClass::ShortOffcuts), f64::from(offcut - kept));
    }
}

// By hand: eleven blanks leave 96 − 11·8 = 8 mm across; of a blank less in demand one is beyond.
#[test]
fn what_is_left_across_a_section_is_no_kerf() {
    let mut draft = draft(None);
    draft.blanks[0].demand = 10;
    let expected = [
        10 * 185 * 27 * 6,
        185 * 27 * 6,
        11 * 185 * 6 * 3,
        185 * 22 * 30,
        185 * 8 * 30,
        4 * 96 * 30,
        0,
        (1980 - 189) * 96 * 30,
        20 * 100 * 30,
        1980 * 4 * 30,
    ];
    check(draft, &plan(1, &[(&[(0, 11)], 1)]), expected);
}

// By hand: 1980 − 1850 = 130 mm are there for ten cuts. Of 4 mm they take 40; of 13 mm, all of it;
// of 14 mm, nine take 126, and the tenth finds 4.
#[test]
fn a_cut_that_runs_out_of_the_wood_is_kerf() {
    for (kerf, chips) in [(4_000, 40), (13_000, 130), (14_000, 130)] {
        let mut draft = draft(None);
        draft.crosscut_kerf = kerf;
        let data = draft.check().unwrap();
        let balance = SawingBalance::of(&data, &plan(1, &[(&[(0, 12)], 10)])).unwrap();
        let volume = |class| balance.volume(class).in_cubic_millimetres();
        assert_eq!(volume(SawnClass::CrosscutKerfs), f64::from(chips * 96 * 30));
        assert_eq!(
            volume(SawnClass::ShortOffcuts),
            f64::from((130 - chips) * 96 * 30)
        );
    }
}

#[test]
fn no_plank_yields_nothing() {
    let data = draft(None).check().unwrap();
    let plan = SawingPlan {
        cuts: Vec::new(),
        cost: 0,
    };
    let balance = SawingBalance::of(&data, &plan).unwrap();
    assert_eq!((balance.yielded(), balance.planks()), (0.0, Volume::ZERO));
}

#[test]
fn more_wood_than_can_be_counted_has_no_balance() {
    let mut draft = draft(None);
    draft.planks[0].size = size(30_000_000, 2_000_000, 500_000);
    let data = draft.check().unwrap();
    assert!(SawingBalance::of(&data, &plan(u64::MAX, &[(&[(0, 1)], 1)])).is_none());
    assert!(SawingBalance::of(&data, &plan(1_000_000_000, &[(&[(0, 1)], 1)])).is_some());
}

/// What every cubic micrometre of a small plank comes to, one after the other, as the saws pass:
/// parts of the waste, and pieces of each blank. Nothing where a piece finds no wood.
fn sawn(draft: &SawingDraft, pattern: &CutPattern) -> Option<([i128; 10], Vec<u64>)> {
    let stock = &draft.planks[pattern.plank];
    let (
        Dimensions {
            length,
            width,
            thickness,
        },
        mut parts,
    ) = (stock.size, [0; 10]);
    let mut pieces = vec![0; draft.blanks.len()];
    let mut slices: Vec<Option<(&Section, i64)>> = Vec::new();
    let ends = length - 2 * stock.end_trim;
    for (section, count) in &pattern.sections {
        let Some(&(first, _)) = section.blanks.iter().find(|(_, pieces)| *pieces > 0) else {
            continue;
        };
        for _ in 0..*count {
            let long = draft.blanks[first].size.length;
            slices.extend((0..long).map(|_| Some((section, long))));
            if slices.len() as i64 > ends {
                return None;
            }
            for _ in 0..draft.crosscut_kerf {
                slices.push(None);
            }
            pieces.iter_mut().enumerate().for_each(|(blank, made)| {
                *made += section
                    .blanks
                    .iter()
                    .filter(|(of, _)| *of == blank)
                    .map(|(_, pieces)| pieces)
                    .sum::<u64>();
            });
        }
    }
    for x in 0..length {
        for y in 0..width {
            let along = x - stock.end_trim;
            let across = y - stock.edge_trim;
            let class = if along < 0 || along >= ends {
                SawnClass::EndTrims
            } else if across < 0 || across >= width - 2 * stock.edge_trim {
                SawnClass::EdgeTrims
            } else {
                let rest = ends - (slices.len() as i64).min(ends);
                match slices.get(along as usize) {
                    None if draft.offcuts.is_some_and(|worth| worth.shortest <= rest) => {
                        SawnClass::KeptOffcuts
                    }
                    None => SawnClass::ShortOffcuts,
                    Some(None) => SawnClass::CrosscutKerfs,
                    Some(Some((section, long))) => {
                        let mut columns: Vec<Option<usize>> = Vec::new();
                        for &(blank, pieces) in &section.blanks {
                            for _ in 0..pieces {
                                let of = &draft.blanks[blank].size;
                                columns.extend((0..of.thickness).map(|_| Some(blank)));
                                let fits = columns.len() as i64 <= width - 2 * stock.edge_trim
                                    && of.width <= thickness
                                    && of.length == *long;
                                if !fits {
                                    return None;
                                }
                                columns.extend((0..draft.rip_kerf).map(|_| None));
                            }
                        }
                        match columns.get(across as usize) {
                            None => SawnClass::RipWaste,
                            Some(None) => SawnClass::RipKerfs,
                            Some(Some(blank)) => {
                                let over = thickness - draft.blanks[*blank].size.width;
                                parts[SawnClass::ThicknessLost as usize] += i128::from(over);
                                continue;
                            }
                        }
                    }
                }
            };
            parts[class as usize] += i128::from(thickness);
        }
    }
    Some((parts, pieces))
}

fn any_draft() -> impl Strategy<Value = SawingDraft> {
    let any_size = |length: i64, width: i64, thickness: i64| {
        (1..=length, 1..=width, 1..=thickness)
            .prop_map(|(length, width, thickness)| size(length, width, thickness))
    };
    let planks = (any_size(40, 24, 6), 0..4_i64, 0..3_i64)
        .prop_map(|(size, end_trim, edge_trim)| plank(size, end_trim, edge_trim));
    let blanks = (any_size(9, 4, 5), 0..20_u64).prop_map(|(size, demand)| blank(size, demand));
    let offcuts =
        prop::option::of((1..15_i64).prop_map(|shortest| OffcutWorth { shortest, metre: 1 }));
    let lists = (
        prop::collection::vec(planks, 1..3),
        prop::collection::vec(blanks, 1..4),
    );
    (lists, 0..4_i64, 0..3_i64, offcuts).prop_map(
        |((planks, blanks), crosscut_kerf, rip_kerf, offcuts)| SawingDraft {
            planks,
            blanks,
            crosscut_kerf,
            rip_kerf,
            offcuts,
            aim: SawingAim::Cost,
        },
    )
}

/// Planks, blanks and patterns of them; not all of these fit.
fn any_case() -> impl Strategy<Value = (SawingDraft, Vec<(CutPattern, u64)>)> {
    let one = (0..3_usize, 0..4_u64).prop_map(|piece| vec![piece]);
    let more = prop::collection::vec((0..3_usize, 0..3_u64), 0..3);
    let section = (prop_oneof![3 => one, 1 => more], 0..4_u64)
        .prop_map(|(blanks, count)| (Section { blanks }, count));
    let pattern = (0..2_usize, prop::collection::vec(section, 0..4), 0..5_u64)
        .prop_map(|(plank, sections, planks)| (CutPattern { plank, sections }, planks));
    let cuts = prop::collection::vec(pattern, 0..3);
    (any_draft(), cuts).prop_map(|(draft, mut cuts)| {
        for (pattern, _) in &mut cuts {
            pattern.plank %= draft.planks.len();
            let sections = pattern.sections.iter_mut();
            for (blank, _) in sections.flat_map(|(section, _)| &mut section.blanks) {
                *blank %= draft.blanks.len();
            }
        }
        (draft, cuts)
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    /// Against sawing the planks cube by cube.
    #[test]
    fn every_cube_of_the_planks_is_in_one_class((draft, cuts) in any_case()) {
        let Ok(data) = draft.clone().check() else { return Ok(()) };
        let sawn: Option<Vec<_>> = cuts.iter().map(|(pattern, _)| sawn(&draft, pattern)).collect();
        let balance = SawingBalance::of(&data, &SawingPlan { cuts: cuts.clone(), cost: 0 });
        prop_assert_eq!(balance.is_some(), sawn.is_some());
        let (Some(balance), Some(sawn)) = (balance, sawn) else { return Ok(()) };
        let mut parts = [0; 10];
        let mut pieces = vec![0; draft.blanks.len()];
        for ((waste, made), (_, planks)) in sawn.iter().zip(&cuts) {
            parts.iter_mut().zip(waste).for_each(|(sum, part)| *sum += part * i128::from(*planks));
            pieces.iter_mut().zip(made).for_each(|(sum, made)| *sum += made * planks);
        }
        for (order, made) in draft.blanks.iter().zip(pieces) {
            let one = i128::from(order.size.length * order.size.width * order.size.thickness);
            parts[SawnClass::WantedBlanks as usize] += one * i128::from(made.min(order.demand));
            parts[SawnClass::BlanksBeyond as usize] += one * i128::from(made.saturating_sub(order.demand));
        }
        for class in SawnClass::ALL {
            prop_assert_eq!(balance.cubic_micrometres(class), parts[class as usize], "{:?}", class);
        }
        let sum: i128 = SawnClass::ALL.iter().map(|class| balance.cubic_micrometres(*class)).sum();
        prop_assert_eq!(sum, balance.planks_in_cubic_micrometres());
        prop_assert!((0.0..=1.0).contains(&balance.yielded()));
    }

    /// The offcut that planning counts with is the one that is laid.
    #[test]
    fn offcuts_are_those_that_planning_counts_with((draft, cuts) in any_case()) {
        let Ok(data) = draft.check() else { return Ok(()) };
        for (mut pattern, _) in cuts {
            // Planning makes no empty sections.
            pattern.sections.iter_mut().for_each(|(section, _)| section.blanks.retain(|(_, pieces)| *pieces > 0));
            pattern.sections.retain(|(section, _)| !section.blanks.is_empty());
            if let Some(laid) = pattern.laid(&data) {
                prop_assert_eq!(laid.offcut(), pattern.offcut(&data));
            }
        }
    }
}
