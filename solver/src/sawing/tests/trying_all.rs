//! Small shops against every plan there is, by rules written once more: n pieces take n − 1 kerfs.

use std::collections::HashMap;

use super::*;
use proptest::prelude::*;

/// All that can come of one plank, no more than wanted, with the least it adds.
fn ways(draft: &SawingDraft, plank: usize) -> HashMap<Vec<u64>, i64> {
    let stock = &draft.planks[plank];
    let width = stock.size.width - 2 * stock.edge_trim;
    let mut sections: Vec<(i64, Vec<u64>)> = Vec::new();
    let most: Vec<u64> = draft
        .blanks
        .iter()
        .map(|blank| blank.demand + blank.most_over)
        .collect();
    let lengths: Vec<i64> = draft.blanks.iter().map(|blank| blank.size.length).collect();
    let mut counts = vec![0; most.len()];
    loop {
        let held: Vec<usize> = (0..counts.len()).filter(|&at| counts[at] > 0).collect();
        let pieces: u64 = counts.iter().sum();
        if let Some(&first) = held.first() {
            let across: i64 = held
                .iter()
                .map(|&at| counts[at].cast_signed() * draft.blanks[at].size.thickness)
                .sum();
            let alike = held.iter().all(|&at| {
                lengths[at] == lengths[first] && draft.blanks[at].size.width <= stock.size.thickness
            });
            if alike && across + (pieces.cast_signed() - 1) * draft.rip_kerf <= width {
                sections.push((lengths[first], counts.clone()));
            }
        }
        let Some(at) = (0..counts.len()).find(|&at| counts[at] < most[at]) else {
            break;
        };
        counts[at] += 1;
        counts[..at].fill(0);
    }
    let mut found = HashMap::new();
    let length = stock.size.length - 2 * stock.end_trim;
    grow(
        draft,
        plank,
        &sections,
        &most,
        length,
        0,
        0,
        &mut vec![0; most.len()],
        &mut found,
    );
    found
}

#[expect(
    clippy::too_many_arguments,
    reason = "a recursion that carries its state"
)]
fn grow(
    draft: &SawingDraft,
    plank: usize,
    sections: &[(i64, Vec<u64>)],
    most: &[u64],
    length: i64,
    used: i64,
    cut: i64,
    made: &mut Vec<u64>,
    found: &mut HashMap<Vec<u64>, i64>,
) {
    if cut > 0 {
        let left = (length - used - cut * draft.crosscut_kerf).max(0);
        let stock = &draft.planks[plank];
        let weight = match draft.aim {
            SawingAim::Cost => {
                stock.price
                    - draft.offcuts.map_or(0, |worth| {
                        if left < worth.shortest {
                            0
                        } else {
                            left * worth.metre / 1_000_000
                        }
                    })
            }
            SawingAim::Planks => 1,
            SawingAim::Volume => {
                stock.size.length * stock.size.width * stock.size.thickness / 1_000_000_000
            }
        };
        let known = found.entry(made.clone()).or_insert(weight);
        *known = weight.min(*known);
    }
    for (at, (section, counts)) in sections.iter().enumerate() {
        let more = made
            .iter()
            .zip(counts)
            .zip(most)
            .all(|((made, count), most)| made + count <= *most);
        if more && used + section + cut * draft.crosscut_kerf <= length {
            made.iter_mut()
                .zip(counts)
                .for_each(|(made, count)| *made += count);
            grow(
                draft,
                plank,
                &sections[at..],
                most,
                length,
                used + section,
                cut + 1,
                made,
                found,
            );
            made.iter_mut()
                .zip(counts)
                .for_each(|(made, count)| *made -= count);
        }
    }
}

/// What is made so far, and planks left.
type State = (Vec<u64>, Vec<Option<u64>>);

/// The least cost from a state to the end, and the fewest missing.
fn least(
    draft: &SawingDraft,
    ways: &[HashMap<Vec<u64>, i64>],
    state: State,
    known: &mut HashMap<State, (u64, i64)>,
) -> (u64, i64) {
    if let Some(&best) = known.get(&state) {
        return best;
    }
    let (made, planks) = &state;
    let pairs = || draft.blanks.iter().zip(made);
    let missing: u64 = pairs()
        .map(|(blank, made)| blank.demand.saturating_sub(*made))
        .sum();
    let worth: i64 = pairs()
        .map(|(blank, made)| {
            made.saturating_sub(blank.demand)
                .min(blank.most_over)
                .cast_signed()
                * blank.over_worth
        })
        .sum();
    let mut best = (
        missing,
        if draft.aim == SawingAim::Cost {
            -worth
        } else {
            0
        },
    );
    for (plank, found) in ways.iter().enumerate() {
        if planks[plank] == Some(0) {
            continue;
        }
        for (pieces, weight) in found {
            let more: Vec<u64> = made
                .iter()
                .zip(pieces)
                .zip(&draft.blanks)
                .map(|((made, pieces), blank)| (made + pieces).min(blank.demand + blank.most_over))
                .collect();
            if more == *made {
                continue;
            }
            let mut left = planks.clone();
            left[plank] = left[plank].map(|left| left - 1);
            let (missing, cost) = least(draft, ways, (more, left), known);
            best = best.min((missing, cost + weight));
        }
    }
    known.insert(state, best);
    best
}

fn shop() -> impl Strategy<Value = SawingDraft> {
    let planks = prop::collection::vec(
        (
            20_i64..60,
            6_i64..20,
            4_i64..8,
            10_i64..40,
            prop::option::of(0_u64..4),
        ),
        1..3,
    );
    let blanks = prop::collection::vec(
        (0_usize..3, 2_i64..5, 2_i64..9, 0_u64..3, 0_i64..6, 0_u64..2),
        1..5,
    );
    (
        planks,
        blanks,
        0_i64..3,
        0_i64..2,
        prop::option::of((1_i64..20, 0_i64..150)),
        0_usize..3,
    )
        .prop_map(
            |(planks, blanks, crosscut_kerf, rip_kerf, offcuts, aim)| SawingDraft {
                planks: planks
                    .into_iter()
                    .map(|(length, width, thickness, price, on_hand)| PlankStock {
                        end_trim: 500,
                        ..plank(size(length, width, thickness), price, on_hand)
                    })
                    .collect(),
                blanks: blanks
                    .into_iter()
                    .map(
                        |(length, width, thickness, demand, over_worth, most_over)| BlankOrder {
                            over_worth,
                            most_over,
                            ..blank(size([9, 13, 17][length], width, thickness), demand)
                        },
                    )
                    .collect(),
                crosscut_kerf: crosscut_kerf * 1000,
                rip_kerf: rip_kerf * 1000,
                offcuts: offcuts.map(|(shortest, metre)| OffcutWorth {
                    shortest: shortest * 1000,
                    metre,
                }),
                aim: SawingAim::ALL[aim],
            },
        )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn no_plan_is_better_than_a_proved_one_or_than_a_bound(draft in shop()) {
        let Ok(data) = draft.clone().check() else { return Ok(()) };
        let ways: Vec<_> = (0..draft.planks.len()).map(|plank| ways(&draft, plank)).collect();
        let start = (vec![0; draft.blanks.len()], draft.planks.iter().map(|plank| plank.on_hand).collect());
        let (missing, cost) = least(&draft, &ways, start, &mut HashMap::new());
        match run(&data) {
            SawingOutcome::Proved { plan, proof } => {
                prop_assert_eq!((missing, cost), (0, plan.cost));
                prop_assert_eq!(proof.bound(&data), Some(cost));
            }
            SawingOutcome::WithinGap { plan, bound, proof } => {
                prop_assert_eq!(missing, 0);
                prop_assert!(bound <= cost && cost <= plan.cost && bound < plan.cost);
                prop_assert!(proof.bound(&data).unwrap() >= bound);
            }
            SawingOutcome::Short { plan, at_least, .. } => {
                prop_assert!(at_least > 0 && at_least <= missing);
                prop_assert!(missing <= plan.short(&data).iter().sum());
            }
            SawingOutcome::NoneFound { plan, bound, .. } => {
                prop_assert!(plan.short(&data).iter().sum::<u64>() > 0);
                prop_assert!(missing > 0 || bound <= cost);
            }
        }
    }
}
