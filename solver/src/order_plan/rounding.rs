//! From fractions to a plan that can be carried out: whole sandwiches, whole packs.

use super::certifying::certified;
use super::data::OrderPlanData;
use super::levelling::level;
use super::model::Point;
use super::plan::{Decisions, OrderPlan, arriving, made, used};
use super::purchasing::order_in_lots;
use super::ranges::Ranges;

/// A fraction this near to a whole number is one.
const ROUGH: f64 = 1e-6;

/// Rounds up what is run, adds what rounding lost, leaves away what is too much, and buys what then
/// is missing where it costs least; `None` where that fails. Limits are not looked at but those of
/// orders and the certified share.
pub(super) fn whole_plan(
    data: &OrderPlanData,
    ranges: &Ranges,
    point: &Point,
) -> Option<OrderPlan> {
    let up = |value: f64| (value - ROUGH).ceil().max(0.0) as u64;
    let rows = |rows: &[Vec<f64>]| -> Vec<Vec<u64>> {
        rows.iter()
            .map(|row| row.iter().map(|&value| up(value)).collect())
            .collect()
    };
    let mut decisions = Decisions {
        runs: rows(&point.runs),
        sawn: rows(&point.sawn),
        ..Decisions::none(data)
    };
    for (number, orders) in point.packs.iter().enumerate() {
        for (period, tiers) in orders.iter().enumerate() {
            let most = tiers.iter().max_by(|one, other| {
                let weight = (one.chosen, one.packs);
                let against = (other.chosen, other.packs);
                weight
                    .partial_cmp(&against)
                    .unwrap_or(std::cmp::Ordering::Equal)
            });
            let packs = up(tiers.iter().map(|order| order.packs).sum());
            let range = most.and_then(|order| {
                let ranges = ranges.orders[number][period].iter();
                ranges.clone().find(|range| range.tier == order.tier)
            });
            if let Some(range) = range.filter(|_| packs > 0) {
                decisions.packs[number][period] = packs.clamp(range.least, range.most);
            }
        }
    }
    let in_lots = Decisions {
        packs: Decisions::none(data).packs,
        ..decisions.clone()
    };
    let plans = [
        complete(data, ranges, decisions, false),
        complete(data, ranges, in_lots, true),
    ];
    let plans = plans.into_iter().flatten();
    let least = |plan: &OrderPlan| plan.value(data.aim());
    if data.draft().least_certified == 0 {
        return plans.min_by_key(least);
    }
    let plans: Vec<OrderPlan> = plans.collect();
    let kept = plans.iter().cloned();
    let kept = kept.filter_map(|plan| certified(data, ranges, plan));
    // Where none keeps the share, the recount says so.
    kept.min_by_key(least)
        .or_else(|| plans.into_iter().min_by_key(least))
}

/// The plan of a point in which all is whole; `None` where something is missing.
pub(super) fn exact_plan(data: &OrderPlanData, point: &Point) -> Option<OrderPlan> {
    let near = |value: f64| value.round().max(0.0) as u64;
    let rows = |rows: &[Vec<f64>]| -> Vec<Vec<u64>> {
        rows.iter()
            .map(|row| row.iter().map(|&value| near(value)).collect())
            .collect()
    };
    let packs = point.packs.iter().map(|orders| {
        orders
            .iter()
            .map(|tiers| near(tiers.iter().map(|order| order.packs).sum()))
            .collect()
    });
    let decisions = Decisions {
        runs: rows(&point.runs),
        packs: packs.collect(),
        sawn: rows(&point.sawn),
    };
    OrderPlan::of(data, decisions)
}

/// Makes a plan of decisions that miss a little or are too much; orders are made anew in lots where
/// that is wished.
pub(super) fn complete(
    data: &OrderPlanData,
    ranges: &Ranges,
    mut decisions: Decisions,
    in_lots: bool,
) -> Option<OrderPlan> {
    fill_pencils(data, ranges, &mut decisions)?;
    trim_runs(data, &mut decisions);
    level(data, ranges, &mut decisions);
    // A run that is parted may lose a pencil, as what is made in a period is counted down.
    fill_pencils(data, ranges, &mut decisions)?;
    if in_lots {
        order_in_lots(data, ranges, &mut decisions);
    }
    for stock in 0..data.stocks().len() {
        fill_slats(data, ranges, &mut decisions, stock)?;
        trim_orders(data, &mut decisions, stock);
    }
    OrderPlan::of(data, decisions)
}

/// First period by whose end something is missing, and how much.
fn first_lack(on_hand: u64, added: &[u64], taken: &[u64]) -> Option<(usize, u64)> {
    let mut there = on_hand;
    for (period, (added, &taken)) in added.iter().zip(taken).enumerate() {
        there += added;
        if there < taken {
            return Some((period, taken - there));
        }
        there -= taken;
    }
    None
}

/// Adds sandwiches until nothing due is missing: to runs that are made rather than to others, late
/// rather than early.
fn fill_pencils(data: &OrderPlanData, ranges: &Ranges, decisions: &mut Decisions) -> Option<()> {
    for pencil in 0..data.pencils().len() {
        let due: Vec<u64> = (0..data.periods()).map(|at| data.net(pencil, at)).collect();
        while let Some((lack_at, lack)) = first_lack(0, &made(data, &decisions.runs, pencil), &due)
        {
            let mut best: Option<(bool, i64, usize, usize, u64)> = None;
            for setup in 0..data.setups().len() {
                let good = data.good_pencils(setup).iter();
                let Some(&(_, good)) = good.clone().find(|(of, good)| *of == pencil && *good > 0)
                else {
                    continue;
                };
                let wanted = OrderPlanData::sandwiches_for(good, lack)?;
                for period in (0..=lack_at).rev() {
                    let run = decisions.runs[setup][period];
                    let room = ranges.runs[setup][period].saturating_sub(run);
                    let added = wanted.min(room);
                    let cost = data.run_cost(setup).saturating_mul(1_000_000) / good.cast_signed();
                    let rank = (run == 0, cost);
                    if added > 0 && best.is_none_or(|best| rank < (best.0, best.1)) {
                        best = Some((rank.0, rank.1, setup, period, added));
                    }
                }
            }
            let (_, _, setup, period, added) = best?;
            decisions.runs[setup][period] += added;
        }
    }
    Some(())
}

/// Leaves away sandwiches that nothing due needs, of the dearest set-ups first.
fn trim_runs(data: &OrderPlanData, decisions: &mut Decisions) {
    let mut setups: Vec<usize> = (0..data.setups().len()).collect();
    setups.sort_by_key(|&setup| std::cmp::Reverse(data.run_cost(setup)));
    for setup in setups {
        for period in (0..data.periods()).rev() {
            let run = decisions.runs[setup][period];
            if run == 0 {
                continue;
            }
            // Fewest sandwiches that still do, by halving.
            let (mut least, mut most) = (0, run);
            while least < most {
                let middle = u64::midpoint(least, most);
                decisions.runs[setup][period] = middle;
                if serves(data, decisions, setup) {
                    most = middle;
                } else {
                    least = middle + 1;
                }
            }
            decisions.runs[setup][period] = most;
        }
    }
}

/// Whether nothing due is missing of the pencils of a set-up.
fn serves(data: &OrderPlanData, decisions: &Decisions, setup: usize) -> bool {
    data.good_pencils(setup).iter().all(|&(pencil, _)| {
        let due: Vec<u64> = (0..data.periods()).map(|at| data.net(pencil, at)).collect();
        first_lack(0, &made(data, &decisions.runs, pencil), &due).is_none()
    })
}

/// Orders or saws slats until none is missing, where one more costs least.
fn fill_slats(
    data: &OrderPlanData,
    ranges: &Ranges,
    decisions: &mut Decisions,
    stock: usize,
) -> Option<()> {
    let line = &data.stocks()[stock];
    let taken = used(data, &decisions.runs, stock);
    loop {
        let there = arriving(data, &decisions.packs, &decisions.sawn, stock);
        let Some((lack_at, lack)) = first_lack(line.on_hand, &there, &taken) else {
            return Some(());
        };
        // Cost of a slat that is used, in millionths of a thousandth: a pack may hold too many.
        let mut best: Option<(i128, Step)> = None;
        let mut offer_step = |cost: i128, slats: u64, step: Step| {
            let each = cost * 1_000_000 / i128::from(slats.min(lack).max(1));
            if slats > 0 && best.as_ref().is_none_or(|(least, _)| each < *least) {
                best = Some((each, step));
            }
        };
        for (number, offer) in data.offers().iter().enumerate() {
            if offer.stock != stock {
                continue;
            }
            for period in 0..(lack_at + 1).saturating_sub(offer.lead_periods) {
                let before = decisions.packs[number][period];
                let ordered: u64 = decisions.packs[number].iter().sum();
                let pack = data.pack_slats(number);
                let allowed = offer.most_packs_in_all.map_or(u64::MAX, u64::from);
                for range in &ranges.orders[number][period] {
                    let wanted = before + lack.div_ceil(pack);
                    let packs = wanted.clamp(range.least, range.most);
                    if packs > before && ordered - before + packs <= allowed {
                        let cost = i128::from(offer.price(packs) - offer.price(before));
                        let waits = lack_at - period - offer.lead_periods;
                        let held = i128::from(line.holding) * waits as i128;
                        let cost = 1_000 * cost + held * i128::from(lack);
                        let step = Step::Order(number, period, packs);
                        offer_step(cost, (packs - before) * pack, step);
                    }
                }
            }
        }
        if let Some(sawing) = line.sawing {
            for period in 0..=lack_at {
                let room = sawing.most_slats - decisions.sawn[stock][period].min(sawing.most_slats);
                let slats = room.min(lack);
                let held = i128::from(line.holding) * (lack_at - period) as i128;
                let each = i128::from(sawing.thousand_cost) + held;
                offer_step(each * i128::from(slats), slats, Step::Saw(period, slats));
            }
        }
        match best?.1 {
            Step::Order(number, period, packs) => decisions.packs[number][period] = packs,
            Step::Saw(period, slats) => decisions.sawn[stock][period] += slats,
        }
    }
}

enum Step {
    /// So many packs of an offer in a period.
    Order(usize, usize, u64),
    /// So many slats more in a period.
    Saw(usize, u64),
}

/// Saws and orders less where nothing is missing then and it costs less.
fn trim_orders(data: &OrderPlanData, decisions: &mut Decisions, stock: usize) {
    let on_hand = data.stocks()[stock].on_hand;
    let taken = used(data, &decisions.runs, stock);
    let suffices = |decisions: &Decisions| {
        let there = arriving(data, &decisions.packs, &decisions.sawn, stock);
        first_lack(on_hand, &there, &taken).is_none()
    };
    for period in (0..data.periods()).rev() {
        let (mut least, mut most) = (0, decisions.sawn[stock][period]);
        while least < most {
            let middle = u64::midpoint(least, most);
            decisions.sawn[stock][period] = middle;
            if suffices(decisions) {
                most = middle;
            } else {
                least = middle + 1;
            }
        }
        decisions.sawn[stock][period] = most;
    }
    for (number, offer) in data.offers().iter().enumerate() {
        if offer.stock != stock {
            continue;
        }
        for period in (0..data.periods()).rev() {
            let packs = decisions.packs[number][period];
            if packs == 0 {
                continue;
            }
            let pack = data.pack_slats(number);
            let mut cheapest = packs;
            // Any number below that still does; few are tried, as little was rounded up.
            let fewer = (packs.saturating_sub(2 + 1_000 / pack)..packs)
                .rev()
                .chain([0]);
            for fewer in fewer.filter(|&fewer| fewer == 0 || fewer >= u64::from(offer.least_packs))
            {
                decisions.packs[number][period] = fewer;
                if !suffices(decisions) {
                    continue;
                }
                if offer.price(fewer) < offer.price(cheapest) {
                    cheapest = fewer;
                }
            }
            decisions.packs[number][period] = cheapest;
        }
    }
}
