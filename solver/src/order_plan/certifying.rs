//! Plans that keep the least certified share, from plans that do not.

use super::check::MOST_PRICE;
use super::data::OrderPlanData;
use super::greedy::greedy_plan;
use super::plan::{Decisions, OrderPlan};
use super::ranges::Ranges;

/// Exchanges of an offer for another, one after the other.
const MOST_EXCHANGES: usize = 100;

/// An order of uncertified packs in part given up for certified ones of the same stock, that come no
/// later.
#[derive(Clone, Copy)]
struct Exchange {
    from: (usize, usize, u64),
    to: (usize, usize, u64),
    /// Cost over the certified volume that is won.
    each: f64,
}

/// A quick plan of certified wood alone; `None` where no share is asked for, or that fails.
pub(super) fn certified_plan(data: &OrderPlanData) -> Option<OrderPlan> {
    if data.draft().least_certified == 0 {
        return None;
    }
    let mut draft = data.draft().clone();
    for offer in draft.offers.iter_mut().filter(|offer| !offer.certified) {
        // None of it can be had, and nothing is planned with its prices.
        offer.most_packs = 0;
        for tier in &mut offer.tiers {
            tier.pack_price = MOST_PRICE;
        }
    }
    for line in &mut draft.stocks {
        line.sawing = line.sawing.filter(|sawing| sawing.certified);
    }
    let data = OrderPlanData::new(draft);
    greedy_plan(&data, &Ranges::new(&data))
}

/// The plan, with certified packs in the place of others until their share is kept, where that costs
/// least by itself; `None` where exchanges alone do not suffice.
pub(super) fn certified(
    data: &OrderPlanData,
    ranges: &Ranges,
    plan: OrderPlan,
) -> Option<OrderPlan> {
    let mut decisions = Decisions {
        runs: plan.runs.clone(),
        packs: plan.packs.clone(),
        sawn: plan.sawn.clone(),
    };
    let mut short = lack(data, &decisions);
    if short <= 0 {
        return Some(plan);
    }
    for _ in 0..MOST_EXCHANGES {
        let Exchange { from, to, .. } = cheapest(data, ranges, &decisions, short)?;
        decisions.packs[from.0][from.1] = from.2;
        decisions.packs[to.0][to.1] = to.2;
        short = lack(data, &decisions);
        if short <= 0 {
            return OrderPlan::of(data, decisions);
        }
    }
    None
}

/// Certified volume that is missing, cubic millimetres.
fn lack(data: &OrderPlanData, decisions: &Decisions) -> i128 {
    let (mut all, mut certified) = (0, 0);
    let mut add = |pieces: u64, volume: i64, is_certified: bool| {
        let volume = i128::from(pieces) * i128::from(volume);
        all += volume;
        certified += if is_certified { volume } else { 0 };
    };
    for (number, offer) in data.offers().iter().enumerate() {
        let packs = decisions.packs[number].iter().sum();
        add(packs, data.pack_volume(number), offer.certified);
    }
    for (line, sawn) in data.stocks().iter().zip(&decisions.sawn) {
        let is_certified = line.sawing.is_some_and(|sawing| sawing.certified);
        let volume = i64::from(line.cubic_millimetres);
        add(sawn.iter().sum(), volume, is_certified);
    }
    let wanted = all * i128::from(data.draft().least_certified);
    (wanted - certified * 1_000_000 + 999_999).div_euclid(1_000_000)
}

/// The exchange that costs least for what it wins, of so much as is missing.
fn cheapest(
    data: &OrderPlanData,
    ranges: &Ranges,
    decisions: &Decisions,
    short: i128,
) -> Option<Exchange> {
    let mut best: Option<Exchange> = None;
    let offers = || data.offers().iter().enumerate();
    for (out, given_up) in offers().filter(|(_, offer)| !offer.certified) {
        let volume = i128::from(data.pack_volume(out)).max(1);
        for (period, &packs) in decisions.packs[out].iter().enumerate() {
            let wanted = u64::try_from((short + volume - 1) / volume).unwrap_or(u64::MAX);
            let mut left = packs.saturating_sub(wanted);
            if left < u64::from(given_up.least_packs) {
                left = 0;
            }
            if packs == 0 {
                continue;
            }
            let slats = (packs - left) * data.pack_slats(out);
            let saved = given_up.price(packs) - given_up.price(left);
            let same = |offer: &super::Offer| offer.certified && offer.stock == given_up.stock;
            for (into, taken) in offers().filter(|(_, offer)| same(offer)) {
                let Some(at) = (period + given_up.lead_periods).checked_sub(taken.lead_periods)
                else {
                    continue;
                };
                let Some(&before) = decisions.packs[into].get(at) else {
                    continue;
                };
                let more = before + slats.div_ceil(data.pack_slats(into));
                let in_all: u64 = decisions.packs[into].iter().sum::<u64>() - before;
                let allowed = taken.most_packs_in_all.map_or(u64::MAX, u64::from);
                let mut tiers = ranges.orders[into][at].iter();
                let packs_then = tiers.find_map(|range| {
                    let packs = more.max(range.least);
                    (packs <= range.most && in_all + packs <= allowed).then_some(packs)
                });
                let Some(packs_then) = packs_then else {
                    continue;
                };
                let cost = taken.price(packs_then) - taken.price(before) - saved;
                let won = data.pack_volume(into) as f64 * (packs_then - before) as f64;
                let exchange = Exchange {
                    from: (out, period, left),
                    to: (into, at, packs_then),
                    each: cost as f64 / won.max(1.0),
                };
                if best.is_none_or(|best| exchange.each < best.each) {
                    best = Some(exchange);
                }
            }
        }
    }
    best
}
