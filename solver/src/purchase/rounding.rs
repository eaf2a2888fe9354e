//! Whole sandwiches near fractional ones, within the slats of fixed packs.

use super::data::PurchaseData;
use crate::sequence::places_in_order;

/// Rounds runs down, then fills what is missing from the slats left over.
///
/// The caps are those of `packs`. Returns `None` when this simple repair leaves an order short;
/// that does not prove that there are no such runs.
pub(super) fn whole_runs(
    data: &PurchaseData,
    packs: &[u64],
    runs: &[Vec<f64>],
) -> Option<Vec<Vec<u64>>> {
    let stocks = data.stocks().len();
    let mut left: Vec<u64> = (0..stocks)
        .map(|stock| data.sandwiches_from(stock, packs[stock]))
        .collect();
    let mut whole = Vec::with_capacity(runs.len());
    let mut short = Vec::with_capacity(runs.len());
    for (order, row) in runs.iter().enumerate() {
        let mut missing = data.orders()[order].pencils;
        let mut whole_row = vec![0; stocks];
        for (stock, &run) in row.iter().enumerate() {
            let yields = data.pencils_per_sandwich(order, stock);
            if yields == 0 {
                continue;
            }
            let run = nearly_floor(run)
                .min(left[stock])
                .min(missing.div_ceil(yields));
            whole_row[stock] = run;
            left[stock] -= run;
            missing = missing.saturating_sub(run * yields);
        }
        whole.push(whole_row);
        short.push(missing);
    }
    // The order that has the fewest spare sandwiches to choose from goes first.
    let spare = |order: usize| {
        let usable = |&stock: &usize| data.pencils_per_sandwich(order, stock) > 0;
        (0..stocks)
            .filter(usable)
            .map(|stock| left[stock])
            .sum::<u64>()
    };
    let sequence = places_in_order(runs.len(), &|one, other| spare(one).cmp(&spare(other)));
    for order in sequence {
        while short[order] > 0 {
            let stock = best_spare(data, order, short[order], &left)?;
            let yields = data.pencils_per_sandwich(order, stock);
            let run = (short[order] / yields).max(1).min(left[stock]);
            whole[order][stock] += run;
            left[stock] -= run;
            short[order] = short[order].saturating_sub(run * yields);
        }
    }
    Some(whole)
}

/// The stock whose next sandwich gives the most of the missing pencils and wastes the fewest.
fn best_spare(data: &PurchaseData, order: usize, short: u64, left: &[u64]) -> Option<usize> {
    let spare = (0..left.len())
        .filter(|&stock| left[stock] > 0 && data.pencils_per_sandwich(order, stock) > 0);
    spare.min_by_key(|&stock| {
        let yields = data.pencils_per_sandwich(order, stock);
        (std::cmp::Reverse(yields.min(short)), yields)
    })
}

/// The whole number below, but the one just above when only solver noise keeps it away.
fn nearly_floor(run: f64) -> u64 {
    const NOISE: f64 = 1e-6;
    // A negative or undefined run becomes 0, as the cast saturates.
    (run + NOISE).floor() as u64
}
