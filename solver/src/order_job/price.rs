//! The price at which a slat stock that is not bought begins to pay.

use super::job::OrderJob;
use crate::figure;
use crate::order_plan::{OrderPlanLimits, break_even};

/// The price at which a stock pays beside a plan. Prices are hundredths of the currency for a thousand
/// slats.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PayingPrice {
    /// What the stock is called.
    pub stock: String,
    /// At this price a plan that buys it costs no more; none where no such plan was found.
    pub pays_at: Option<i64>,
    /// The least at which it is offered now, all tiers taken, without what orders cost beside.
    pub offered_at: Option<i64>,
}

impl OrderJob {
    /// The stocks that are offered and that a plan does not buy, by their places.
    #[must_use]
    pub fn unbought(&self, packs: &[Vec<u64>]) -> Vec<usize> {
        let is_bought = |stock: usize| {
            let offers = self.data.offers().iter().zip(packs);
            let mut bought = offers.filter(|(offer, _)| offer.stock == stock);
            bought.any(|(_, packs)| packs.iter().any(|&packs| packs > 0))
        };
        let stocks = 0..self.stocks.len();
        let offered = stocks.filter(|&stock| self.offered_at(stock).is_some());
        offered.filter(|&stock| !is_bought(stock)).collect()
    }

    /// The stocks of which a plan runs any slats, by their places.
    #[must_use]
    pub fn run_stocks(&self, runs: &[Vec<u64>]) -> Vec<usize> {
        let runs = || self.setups.iter().zip(runs);
        let is_run = |&stock: &usize| {
            runs().any(|(setup, row)| {
                (setup.bottom == stock || setup.top == stock) && row.iter().any(|&run| run > 0)
            })
        };
        (0..self.stocks.len()).filter(is_run).collect()
    }

    /// The price at which a stock pays beside a plan that costs so much, in thousandths of a hundredth:
    /// see [`break_even`](crate::order_plan::break_even).
    #[must_use]
    pub fn paying_price(&self, stock: usize, cost: i64, limits: &OrderPlanLimits) -> PayingPrice {
        PayingPrice {
            stock: self.stocks.get(stock).cloned().unwrap_or_default(),
            pays_at: break_even(&self.data, cost, stock, limits),
            offered_at: self.offered_at(stock),
        }
    }

    /// The least for a thousand slats of a stock, rounded up.
    fn offered_at(&self, stock: usize) -> Option<i64> {
        let offers = self.data.offers().iter();
        let offers = offers.filter(|offer| offer.stock == stock);
        let prices = offers.flat_map(|offer| {
            let slats = i64::from(offer.pack_slats.max(1));
            let thousand = move |price: i64| (price * 1_000 + slats - 1) / slats;
            (offer.tiers.iter()).map(move |tier| thousand(tier.pack_price))
        });
        prices.min()
    }
}

impl PayingPrice {
    /// All of it in a sentence.
    ///
    /// ```
    /// use solver::PayingPrice;
    /// let price = PayingPrice { stock: "Thin".to_owned(), pays_at: Some(15_020), offered_at: Some(17_167) };
    /// assert_eq!(
    ///     price.sentence(),
    ///     "Thin pays at 150.20 a thousand, where an order costs nothing beside; it is offered from 171.67"
    /// );
    /// ```
    #[must_use]
    pub fn sentence(&self) -> String {
        let stock = &self.stock;
        let offered = self.offered_at.map(figure::money);
        let offered =
            offered.map_or_else(String::new, |price| format!("; it is offered from {price}"));
        match self.pays_at {
            Some(price) => format!(
                "{stock} pays at {} a thousand, where an order costs nothing beside{offered}",
                figure::money(price)
            ),
            None => format!("{stock}: no plan was found that buys it and costs no more{offered}"),
        }
    }
}
