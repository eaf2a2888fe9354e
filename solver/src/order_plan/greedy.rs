//! A first plan without a solver: each pencil by the set-up that seems cheapest for it, in lots.

use super::data::OrderPlanData;
use super::plan::{Decisions, OrderPlan};
use super::ranges::Ranges;
use super::rounding::complete;

/// A plan that serves one pencil after the other, in lots of one or more periods that cost least by
/// themselves (Wagner & Whitin 1958), and then buys the slats; `None` where that fails. Limits are not
/// looked at but those of orders.
pub(super) fn greedy_plan(data: &OrderPlanData, ranges: &Ranges) -> Option<OrderPlan> {
    let slat_costs: Vec<Option<f64>> = (0..data.stocks().len())
        .map(|stock| cheapest_slat(data, stock))
        .collect();
    let mut decisions = Decisions::none(data);
    for pencil in 0..data.pencils().len() {
        let due: Vec<u64> = (0..data.periods()).map(|at| data.net(pencil, at)).collect();
        if due.iter().all(|&due| due == 0) {
            continue;
        }
        let mut best: Option<(f64, usize, Vec<u64>)> = None;
        for setup in 0..data.setups().len() {
            let good = data.good_pencils(setup).iter();
            let Some(&(_, good)) = good.clone().find(|(of, good)| *of == pencil && *good > 0)
            else {
                continue;
            };
            let line = &data.setups()[setup];
            let slats = slat_costs[line.bottom].zip(slat_costs[line.top]);
            let Some(slats) = slats.map(|(bottom, top)| bottom + top) else {
                continue;
            };
            let each = (data.run_cost(setup) as f64 + slats) * 1e6 / good as f64;
            let held = data.pencils()[pencil].holding as f64;
            let lots = Lots {
                due: &due,
                each,
                held,
            };
            let opens = |period: usize| {
                let (change, machine) = data.changeover_parts(setup, period);
                let can = ranges.runs[setup][period] > 0;
                can.then_some((change + machine) as f64)
            };
            if let Some((cost, lots)) = lots.cheapest(&opens)
                && best.as_ref().is_none_or(|(least, ..)| cost < *least)
            {
                let runs = lots.iter().zip(&ranges.runs[setup]).map(|(&lot, &most)| {
                    OrderPlanData::sandwiches_for(good, lot)
                        .unwrap_or(0)
                        .min(most)
                });
                best = Some((cost, setup, runs.collect()));
            }
        }
        let (_, setup, runs) = best?;
        for (sum, run) in decisions.runs[setup].iter_mut().zip(runs) {
            *sum += run;
        }
    }
    complete(data, ranges, decisions, true)
}

/// Least cost of a slat at a full pack, thousandths of a hundredth; nothing where it cannot be had.
fn cheapest_slat(data: &OrderPlanData, stock: usize) -> Option<f64> {
    let line = &data.stocks()[stock];
    let offers = data.offers().iter().enumerate();
    let bought = offers
        .filter(|(_, offer)| offer.stock == stock)
        .flat_map(|(number, offer)| {
            let pack = data.pack_slats(number) as f64;
            offer
                .tiers
                .iter()
                .map(move |tier| 1e3 * tier.pack_price as f64 / pack)
        });
    let sawn = line.sawing.map(|sawing| sawing.thousand_cost as f64);
    let stored = (line.on_hand > 0).then_some(0.0);
    let costs = bought.chain(sawn).chain(stored);
    costs.reduce(f64::min)
}

/// Lots of one pencil by itself.
struct Lots<'a> {
    due: &'a [u64],
    /// Cost of a pencil.
    each: f64,
    /// Cost of holding one for a period.
    held: f64,
}

impl Lots<'_> {
    /// The lots of least cost; nothing where some period cannot be served.
    fn cheapest(&self, opens: &dyn Fn(usize) -> Option<f64>) -> Option<(f64, Vec<u64>)> {
        let periods = self.due.len();
        // least[t]: cost of serving all before t, and where its last lot is made.
        let mut least: Vec<Option<(f64, usize)>> = vec![None; periods + 1];
        least[0] = Some((0.0, 0));
        for start in 0..periods {
            let Some((before, _)) = least[start] else {
                continue;
            };
            let mut lot = 0.0;
            for end in start..periods {
                let due = self.due[end] as f64;
                lot += due * (self.each + self.held * (end - start) as f64);
                let open = if lot > 0.0 { opens(start) } else { Some(0.0) };
                let Some(open) = open else {
                    continue;
                };
                let cost = before + open + lot;
                if least[end + 1].is_none_or(|(least, _)| cost < least) {
                    least[end + 1] = Some((cost, start));
                }
            }
        }
        let (cost, _) = least[periods]?;
        let mut lots = vec![0; periods];
        let mut end = periods;
        while end > 0 {
            let (_, start) = least[end]?;
            lots[start] = self.due[start..end].iter().sum();
            end = start;
        }
        Some((cost, lots))
    }
}
