//! A first plan without a solver: each order in turn takes the slats that cost it least.

use super::data::PurchaseData;
use crate::sequence::places_in_order;

/// Runs shared out order by order, and the pencils that are then missing.
#[derive(Clone, Debug)]
pub(super) struct Sharing {
    /// `runs[order][stock]`, sandwiches.
    pub(super) runs: Vec<Vec<u64>>,
    /// Pencils missing of each order.
    pub(super) short: Vec<u64>,
}

impl Sharing {
    /// Whether every order is filled.
    pub(super) fn fills_the_book(&self) -> bool {
        self.short.iter().all(|&short| short == 0)
    }
}

/// Shares out the slats in several sequences of the orders: those with the fewest stocks first,
/// the largest first, and as they stand.
pub(super) fn sharings(data: &PurchaseData) -> Vec<Sharing> {
    let as_listed: Vec<usize> = (0..data.orders().len()).collect();
    let stocks = 0..data.stocks().len();
    let choices = |&order: &usize| {
        stocks
            .clone()
            .filter(|&stock| data.pencils_per_sandwich(order, stock) > 0)
            .count()
    };
    let orders = data.orders();
    let scarce_first = places_in_order(orders.len(), &|one, other| {
        choices(&one).cmp(&choices(&other))
    });
    let large_first = places_in_order(orders.len(), &|one, other| {
        orders[other].pencils.cmp(&orders[one].pencils)
    });
    [scarce_first, large_first, as_listed]
        .iter()
        .map(|sequence| share_out(data, sequence))
        .collect()
}

fn share_out(data: &PurchaseData, sequence: &[usize]) -> Sharing {
    let stocks = data.stocks().len();
    let mut sharing = Sharing {
        runs: vec![vec![0; stocks]; data.orders().len()],
        short: data.orders().iter().map(|order| order.pencils).collect(),
    };
    let mut used = vec![0_u64; stocks];
    for &order in sequence {
        while sharing.short[order] > 0 {
            let offers = (0..stocks).filter_map(|stock| {
                Offer::of(data, order, stock, sharing.short[order], used[stock])
            });
            let Some(offer) = offers.min_by(Offer::compare) else {
                break;
            };
            sharing.runs[order][offer.stock] += offer.sandwiches;
            used[offer.stock] += offer.sandwiches;
            sharing.short[order] -= offer.pencils;
        }
    }
    sharing
}

/// What one stock could do for the rest of an order.
struct Offer {
    stock: usize,
    sandwiches: u64,
    pencils: u64,
    cost: u128,
}

impl Offer {
    fn of(data: &PurchaseData, order: usize, stock: usize, short: u64, used: u64) -> Option<Self> {
        let yields = data.pencils_per_sandwich(order, stock);
        let left = data
            .sandwiches_from(stock, data.useful_packs(stock))
            .saturating_sub(used);
        if yields == 0 || left == 0 {
            return None;
        }
        let sandwiches = short.div_ceil(yields).min(left);
        let packs = data.packs_for(stock, used + sandwiches) - data.packs_for(stock, used);
        let cost = u128::from(packs) * u128::from(data.stocks()[stock].pack_price.unsigned_abs());
        Some(Self {
            stock,
            sandwiches,
            pencils: short.min(sandwiches * yields),
            cost,
        })
    }

    /// Least cost per pencil first, then the most pencils; the earlier stock wins a tie.
    fn compare(&self, other: &Self) -> std::cmp::Ordering {
        let own = self.cost * u128::from(other.pencils);
        let others = other.cost * u128::from(self.pencils);
        own.cmp(&others).then(other.pencils.cmp(&self.pencils))
    }
}
