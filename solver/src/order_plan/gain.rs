//! What counts as better.

use super::data::OrderPlanData;
use super::draft::PlanAim;

/// Whether no plan can be better.
pub(super) fn is_settled(data: &OrderPlanData, value: i64, bound: i64) -> bool {
    value - bound < least_gain(data)
}

/// Least by which a better plan must be better: a hundredth of the currency, a slat, a change-over.
pub(super) fn least_gain(data: &OrderPlanData) -> i64 {
    match data.aim() {
        PlanAim::Cost => step(data).max(1_000),
        PlanAim::Timber | PlanAim::Changeovers => step(data),
    }
}

/// A number of which every value of the aim is a multiple.
pub(super) fn step(data: &OrderPlanData) -> i64 {
    let amounts: Vec<i64> = match data.aim() {
        PlanAim::Changeovers => vec![1],
        PlanAim::Timber => {
            let packs = (0..data.offers().len()).map(|offer| data.pack_volume(offer));
            let sawn = data.stocks().iter().filter(|line| line.sawing.is_some());
            packs
                .chain(sawn.map(|line| i64::from(line.cubic_millimetres)))
                .collect()
        }
        PlanAim::Cost => {
            let mut amounts = Vec::new();
            for setup in 0..data.setups().len() {
                amounts.push(data.run_cost(setup));
                for period in 0..data.periods() {
                    let (change, machine) = data.changeover_parts(setup, period);
                    amounts.push(change + machine);
                }
            }
            for offer in data.offers() {
                amounts.push(1_000 * offer.order_cost);
                amounts.extend(offer.tiers.iter().map(|tier| 1_000 * tier.pack_price));
            }
            for line in data.stocks() {
                amounts.push(line.holding);
                amounts.extend(line.sawing.map(|sawing| sawing.thousand_cost));
            }
            amounts.extend(data.pencils().iter().map(|line| line.holding));
            amounts
        }
    };
    amounts.into_iter().fold(0, greatest_common_divisor).max(1)
}

fn greatest_common_divisor(a: i64, b: i64) -> i64 {
    if b == 0 {
        a
    } else {
        greatest_common_divisor(b, a % b)
    }
}
