//! Any draft at all is planned or refused, and the outcome holds together.

use proptest::prelude::*;

use super::*;

fn extreme(ordinary: u64, most: u64) -> impl Strategy<Value = u64> {
    prop_oneof![4 => 0..=ordinary, 1 => Just(0), 1 => Just(most), 1 => 0..=most, 1 => Just(most + 1)]
}

fn stock() -> impl Strategy<Value = SlatStock> {
    let limit = proptest::option::of(extreme(20, u64::from(u32::MAX) - 1));
    let pack_slats = extreme(50, u64::from(MOST_PACK_SLATS));
    let price = extreme(5_000, MOST_PACK_PRICE as u64);
    (pack_slats, price, extreme(100, MOST_ON_HAND), limit).prop_map(
        |(pack, price, on_hand, limit)| SlatStock {
            pack_slats: pack as u32,
            pack_price: price as i64,
            on_hand,
            pack_limit: limit.map(|limit| limit as u32),
        },
    )
}

fn book() -> impl Strategy<Value = PurchaseDraft> {
    (0_usize..6, 0_usize..6).prop_flat_map(|(orders, stocks)| {
        let pencils = extreme(2_000, MOST_PENCILS).prop_map(|pencils| PencilOrder { pencils });
        let yields = extreme(10, u64::from(MOST_YIELD)).prop_map(|yields| yields as u32);
        let row = proptest::collection::vec(yields, stocks);
        let lists = (
            proptest::collection::vec(pencils, orders),
            proptest::collection::vec(stock(), stocks),
            proptest::collection::vec(row, orders),
        );
        lists.prop_map(|(orders, stocks, yields)| PurchaseDraft {
            orders,
            stocks,
            yields,
        })
    })
}

/// Brings every number into its range, so that the search is reached as well.
fn tamed(mut book: PurchaseDraft) -> PurchaseDraft {
    let share = MOST_PENCILS / 6;
    book.orders
        .iter_mut()
        .for_each(|order| order.pencils = order.pencils.min(share));
    for stock in &mut book.stocks {
        stock.pack_slats = stock.pack_slats.clamp(1, MOST_PACK_SLATS);
        stock.pack_price = stock.pack_price.min(MOST_PACK_PRICE);
        stock.on_hand = stock.on_hand.min(MOST_ON_HAND);
    }
    book.yields
        .iter_mut()
        .flatten()
        .for_each(|yields| *yields = (*yields).min(MOST_YIELD));
    book
}

proptest! {
    #[test]
    fn any_draft_is_planned_or_refused(book in book()) {
        let limits = PurchaseLimits { time: None, nodes: 60 };
        if let Ok(data) = book.clone().check() {
            plan(&data, &limits, &mut |_| {}).expect("recounted");
        }
        let data = tamed(book).check().expect("every number is in its range now");
        let mut bounds = vec![0];
        let outcome = plan(&data, &limits, &mut |step| {
            if let Progress::Bound { bound, .. } = step { bounds.push(bound) }
        }).expect("recounted");
        prop_assert!(bounds.is_sorted(), "{bounds:?}");
        match outcome {
            PurchaseOutcome::Proved { plan, .. } => prop_assert!(bounds.iter().all(|&bound| bound <= plan.cost)),
            PurchaseOutcome::WithinGap { plan, bound } => prop_assert!(bound < plan.cost),
            PurchaseOutcome::NoneFound { bound } => prop_assert!(bound >= 0),
            PurchaseOutcome::Impossible { obstacles } => prop_assert!(!obstacles.is_empty()),
        }
    }
}
