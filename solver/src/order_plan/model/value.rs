//! What a plan comes to, as expressions of the variables.

use good_lp::Expression;

use crate::order_plan::data::OrderPlanData;
use crate::order_plan::draft::PlanAim;

use super::columns::{Columns, unit_for};
use super::formulation::add;

impl Columns {
    /// Units of an aim in one unit of the model: the dearest single thing stays below ten thousand.
    pub(super) fn unit_of(&self, data: &OrderPlanData, aim: PlanAim) -> f64 {
        let most = match aim {
            PlanAim::Changeovers => 1.0,
            PlanAim::Timber => {
                let packs = (0..data.offers().len()).map(|offer| data.pack_volume(offer));
                packs.max().unwrap_or(0) as f64
            }
            PlanAim::Cost => {
                let setups = (0..data.setups().len()).flat_map(|setup| {
                    let changing = (0..data.periods()).map(move |period| {
                        let (cost, machine) = data.changeover_parts(setup, period);
                        (cost + machine) as f64
                    });
                    changing.chain([data.run_cost(setup) as f64 * self.batch])
                });
                let offers = data.offers().iter().flat_map(|offer| {
                    (0..offer.tiers.len()).map(|tier| {
                        let (base, each) = offer.line(tier);
                        1e3 * base.abs().max(each) as f64
                    })
                });
                setups.chain(offers).fold(1.0, f64::max)
            }
        };
        unit_for(most)
    }

    pub(super) fn value(&self, data: &OrderPlanData, aim: PlanAim, unit: f64) -> Expression {
        match aim {
            PlanAim::Cost => self.cost(data, unit),
            PlanAim::Timber => self.timber(data, unit, |_| 1.0),
            PlanAim::Changeovers => {
                let mut sum = Expression::from(0.0);
                for &open in self.open.iter().flatten() {
                    add(&mut sum, 1.0 / unit, open);
                }
                sum
            }
        }
    }

    /// Thousandths of a hundredth, in the units of the model.
    fn cost(&self, data: &OrderPlanData, unit: f64) -> Expression {
        let mut cost = Expression::from(0.0);
        for setup in 0..data.setups().len() {
            let sandwich = data.run_cost(setup) as f64 / unit;
            for period in 0..data.periods() {
                let (change, machine) = data.changeover_parts(setup, period);
                add(&mut cost, sandwich, self.runs[setup][period]);
                let change = (change + machine) as f64 / unit;
                add(&mut cost, change, self.open[setup][period]);
            }
        }
        for (offer, rows) in data.offers().iter().zip(&self.orders) {
            for order in rows.iter().flatten() {
                let (base, each) = offer.line(order.tier);
                add(&mut cost, 1e3 * each as f64 / unit, Some(order.packs));
                let chosen = order.chosen.map(|(chosen, ..)| chosen);
                add(&mut cost, 1e3 * base as f64 / unit, chosen);
            }
        }
        for (stock, line) in data.stocks().iter().enumerate() {
            let sawn = line.sawing.map_or(0, |sawing| sawing.thousand_cost);
            for period in 0..data.periods() {
                add(&mut cost, sawn as f64 / unit, self.sawn[stock][period]);
                let held = line.holding as f64 / unit;
                add(&mut cost, held, self.slat_store[stock][period]);
            }
        }
        for (line, store) in data.pencils().iter().zip(&self.pencil_store) {
            for &store in store {
                add(&mut cost, line.holding as f64 / unit, store);
            }
        }
        cost
    }

    /// Cubic millimetres in the units of the model, weighted by whether they are certified.
    pub(super) fn timber(
        &self,
        data: &OrderPlanData,
        unit: f64,
        weight: impl Fn(bool) -> f64,
    ) -> Expression {
        let mut volume = Expression::from(0.0);
        for (number, offer) in data.offers().iter().enumerate() {
            let pack = data.pack_volume(number) as f64 * weight(offer.certified) / unit;
            for order in self.orders[number].iter().flatten() {
                add(&mut volume, pack, Some(order.packs));
            }
        }
        for (line, sawn) in data.stocks().iter().zip(&self.sawn) {
            let is_certified = line.sawing.is_some_and(|sawing| sawing.certified);
            let slat = f64::from(line.cubic_millimetres) * weight(is_certified) / unit;
            for &sawn in sawn {
                add(&mut volume, slat, sawn);
            }
        }
        volume
    }
}
