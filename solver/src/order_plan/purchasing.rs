//! Orders for slats whose use is known, in lots.

use super::data::OrderPlanData;
use super::plan::{Decisions, used};
use super::ranges::Ranges;

/// A lot: what one order brings for some periods.
#[derive(Clone, Copy, Debug)]
struct Lot {
    offer: usize,
    /// When it is ordered.
    period: usize,
    packs: u64,
    cost: f64,
}

/// Orders what each stock needs in lots that cost least one by one (Wagner & Whitin 1958, with the
/// best offer and tier for each lot); stocks for which some lot cannot be had are left without.
pub(super) fn order_in_lots(data: &OrderPlanData, ranges: &Ranges, decisions: &mut Decisions) {
    for stock in 0..data.stocks().len() {
        let mut on_hand = data.stocks()[stock].on_hand;
        let needs: Vec<u64> = used(data, &decisions.runs, stock)
            .iter()
            .map(|&used| {
                let served = used.min(on_hand);
                on_hand -= served;
                used - served
            })
            .collect();
        for lot in lots(data, ranges, stock, &needs) {
            decisions.packs[lot.offer][lot.period] += lot.packs;
        }
    }
}

fn lots(data: &OrderPlanData, ranges: &Ranges, stock: usize, needs: &[u64]) -> Vec<Lot> {
    let periods = needs.len();
    let held = data.stocks()[stock].holding as f64;
    // least[t]: cost of serving all before t, with the last lot and its first period.
    let mut least: Vec<Option<(f64, usize, Option<Lot>)>> = vec![None; periods + 1];
    least[0] = Some((0.0, 0, None));
    for start in 0..periods {
        let Some((before, ..)) = least[start] else {
            continue;
        };
        let mut slats = 0;
        let mut holding = 0.0;
        for end in start..periods {
            slats += needs[end];
            holding += needs[end] as f64 * held * (end - start) as f64;
            let lot = best_lot(data, ranges, stock, start, slats);
            if slats > 0 && lot.is_none() {
                break;
            }
            let cost = before + holding + lot.map_or(0.0, |lot| lot.cost);
            if least[end + 1].is_none_or(|(least, ..)| cost < least) {
                least[end + 1] = Some((cost, start, lot));
            }
        }
    }
    let mut lots = Vec::new();
    let mut end = periods;
    while end > 0 {
        let Some((_, start, lot)) = least[end] else {
            return Vec::new();
        };
        lots.extend(lot);
        end = start;
    }
    lots
}

/// The cheapest order that arrives in a period and brings so many slats.
fn best_lot(
    data: &OrderPlanData,
    ranges: &Ranges,
    stock: usize,
    arrival: usize,
    slats: u64,
) -> Option<Lot> {
    let mut best: Option<Lot> = None;
    let offers = data.offers().iter().enumerate();
    for (number, offer) in offers.filter(|(_, offer)| offer.stock == stock && slats > 0) {
        let Some(period) = arrival.checked_sub(offer.lead_periods) else {
            continue;
        };
        let wanted = slats.div_ceil(data.pack_slats(number));
        for range in &ranges.orders[number][period] {
            let packs = wanted.max(range.least);
            let cost = 1e3 * offer.price(packs) as f64;
            if packs <= range.most && best.is_none_or(|best| cost < best.cost) {
                best = Some(Lot {
                    offer: number,
                    period,
                    packs,
                    cost,
                });
            }
        }
    }
    best
}
