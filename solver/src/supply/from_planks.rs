//! What sawing slats costs by a cutting plan.

use super::SawnSlatsDraft;
use crate::field::Typed;
use crate::project::{Id, ProjectDraft};
use crate::saw_shop::SawnReckoning;
use crate::sawing::{SawingData, SawingList, SawingPlan};

impl ProjectDraft {
    /// Puts down what a plan that saws the blanks of the saw shop makes of slats, and what they cost:
    /// for each slat stock that blanks become, the blanks made as the most of a period, and the price of
    /// the planks, less offcuts to keep and blanks beyond those wanted, shared out by volume. Stocks
    /// that the plan does not saw stay as they are. The number of stocks put down.
    ///
    /// The volume of a blank is that of its sawn sizes. A thousand of stock k cost
    /// 1000·C·V_k / (n_k·Σ V), where C is what the plan costs, V_k the volume of the n_k blanks that
    /// become the stock, and the sum goes over all blanks.
    pub fn take_sawn(&mut self, data: &SawingData, plan: &SawingPlan) -> usize {
        let Some(list) = SawingList::of(data, plan) else {
            return 0;
        };
        let reckoning = SawnReckoning::of(data, plan);
        let mut stocks: Vec<(Id, f64, u64)> = Vec::new();
        let mut all = 0.0;
        let lines = reckoning.blanks.iter().zip(data.blanks());
        for ((line, order), entry) in lines.zip(&self.saw_shop.blanks) {
            let [length, width, thickness] =
                [order.size.length, order.size.width, order.size.thickness];
            let volume = length as f64 * width as f64 * thickness as f64 * line.made as f64;
            all += volume;
            let Some(slat) = entry.draft.slat.filter(|_| line.made > 0) else {
                continue;
            };
            match stocks.iter_mut().find(|(other, ..)| *other == slat) {
                Some(stock) => {
                    stock.1 += volume;
                    stock.2 += line.made;
                }
                None => stocks.push((slat, volume, line.made)),
            }
        }
        // Hundredths of the currency.
        let cost = (list.cost - reckoning.offcuts - reckoning.over).max(0) as f64;
        for &(slat, volume, made) in &stocks {
            let thousand = cost * volume / all * 1_000.0 / made as f64;
            // Rounded up to a hundredth, so that the plan does not saw below its price.
            let thousand_cost = Typed::Number(thousand.ceil() / 100.0);
            let most_slats = Typed::Number(made as f64);
            let is_its = |sawn: &&mut SawnSlatsDraft| sawn.slat == slat;
            match self.supply.sawn.iter_mut().find(is_its) {
                Some(sawn) => {
                    sawn.thousand_cost = thousand_cost;
                    sawn.most_slats = most_slats;
                }
                None => self.supply.sawn.push(SawnSlatsDraft {
                    thousand_cost,
                    most_slats,
                    ..SawnSlatsDraft::new(slat)
                }),
            }
        }
        stocks.len()
    }
}
