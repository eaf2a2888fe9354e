//! Fillings against all fillings.

use super::super::knapsack::{Piece, fill};
use proptest::prelude::*;

/// The most worth, by trying every number of every piece.
fn by_trying(length: i64, pieces: &[Piece], rest: &dyn Fn(i64) -> i64) -> i64 {
    let Some((piece, others)) = pieces.split_first() else {
        return rest(length);
    };
    (0..=piece.most)
        .map(u64::cast_signed)
        .take_while(|count| count * piece.take <= length)
        .map(|count| count * piece.value + by_trying(length - count * piece.take, others, rest))
        .max()
        .unwrap()
}

proptest! {
    #[test]
    fn no_filling_is_worth_more(
        length in 0_i64..60,
        pieces in prop::collection::vec((1_i64..25, 0_i64..30, 0_u64..6), 0..6),
        rate in 0_i64..3,
    ) {
        let pieces: Vec<Piece> = pieces.into_iter().map(|(take, value, most)| Piece { take, value, most }).collect();
        let rest = |free: i64| if free < 10 { 0 } else { free * rate / 2 };
        let worth: Option<&dyn Fn(i64) -> i64> = if rate > 0 { Some(&rest) } else { None };
        let fillings = fill(length, &pieces, worth, 5);
        prop_assert_eq!(fillings[0].value, by_trying(length, &pieces, &rest));
        for filling in fillings {
            let pairs = || filling.counts.iter().zip(&pieces);
            let used: i64 = pairs().map(|(count, piece)| count.cast_signed() * piece.take).sum();
            let value: i64 = pairs().map(|(count, piece)| count.cast_signed() * piece.value).sum();
            prop_assert!(used <= length && pairs().all(|(count, piece)| *count <= piece.most));
            prop_assert_eq!(filling.value, value + if rate > 0 { rest(length - used) } else { 0 });
        }
    }
}
