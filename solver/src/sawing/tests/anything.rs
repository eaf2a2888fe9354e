//! Any numbers: an answer or problems, and never a panic.

use super::*;
use proptest::prelude::*;

fn any_size() -> impl Strategy<Value = Dimensions> {
    let number = prop_oneof![
        1_i64..2_000,
        1_i64..MOST_LENGTH,
        any::<i64>(),
        Just(0),
        Just(MOST_LENGTH)
    ];
    (number.clone(), number.clone(), number).prop_map(|(length, width, thickness)| Dimensions {
        length,
        width,
        thickness,
    })
}

proptest! {
    #[test]
    fn numbers_that_may_be_anything_are_told_or_planned(
        planks in prop::collection::vec((any_size(), any::<i64>(), any::<i64>(), any::<i64>(), any::<Option<u64>>()), 0..4),
        blanks in prop::collection::vec((any_size(), any::<u64>(), any::<i64>(), any::<u64>()), 0..5),
        kerfs in (any::<i64>(), -1_i64..60_000),
        offcuts in prop::option::of((any::<i64>(), any::<i64>())),
    ) {
        let draft = SawingDraft {
            planks: planks.into_iter().map(|(size, end_trim, edge_trim, price, on_hand)| PlankStock { size, end_trim, edge_trim, price, on_hand }).collect(),
            blanks: blanks.into_iter().map(|(size, demand, over_worth, most_over)| BlankOrder { size, demand, over_worth, most_over }).collect(),
            crosscut_kerf: kerfs.0,
            rip_kerf: kerfs.1,
            offcuts: offcuts.map(|(shortest, metre)| OffcutWorth { shortest, metre }),
            aim: SawingAim::Cost,
        };
        if let Ok(data) = draft.check() {
            run(&data);
        }
    }

    #[test]
    fn numbers_within_their_ranges_are_planned(
        planks in prop::collection::vec((1_i64..MOST_LENGTH, 1_i64..MOST_WIDTH, 1_i64..MOST_THICKNESS, 0_i64..MOST_PRICE, prop::option::of(0_u64..MOST_PIECES)), 1..4),
        blanks in prop::collection::vec((0_i64..1000, 0_i64..1000, 0_i64..1000, prop_oneof![0_u64..50, 0..MOST_DEMAND], 0_i64..MOST_PRICE, 0_u64..MOST_DEMAND), 0..5),
        kerfs in (0_i64..MOST_KERF, 0_i64..MOST_KERF),
    ) {
        let (length, width, thickness, ..) = planks[0];
        let part = |whole: i64, thousandths: i64| (whole * thousandths / 1000).max(1);
        let draft = SawingDraft {
            planks: planks.iter().map(|&(length, width, thickness, price, on_hand)| plank(Dimensions { length, width, thickness }, price, on_hand)).collect(),
            blanks: blanks.into_iter().map(|(along, across, through, demand, over_worth, most_over)| BlankOrder {
                size: Dimensions { length: part(length, along), width: part(thickness, through).min(MOST_WIDTH), thickness: part(width, across).min(MOST_THICKNESS) },
                demand,
                over_worth,
                most_over,
            }).collect(),
            crosscut_kerf: kerfs.0,
            rip_kerf: kerfs.1,
            offcuts: None,
            aim: SawingAim::Cost,
        };
        if let Ok(data) = draft.check() {
            saw(&data, &SawingLimits { relaxations: 3 }, &mut |_| true).unwrap();
        }
    }
}
