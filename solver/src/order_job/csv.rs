//! The purchase list as CSV text.

use super::reckoning::{OrderReckoning, SlatOrder};
use crate::csv::{Table, money, text};

impl OrderReckoning {
    /// What to order from whom and when: a row for each order, in the order of
    /// [`OrderReckoning::orders`]. Money is in the currency of the prices, to a hundredth; cells are
    /// written as in the lists of sawing.
    #[must_use]
    pub fn purchase_csv(&self) -> String {
        let mut table = Table::headed(
            &[
                "Order in",
                "Supplier",
                "Slat stock",
                "Packs",
                "Slats",
                "Price holds from packs",
                "Price of the last pack (currency)",
                "Cost of the order (currency)",
                "Price (currency)",
                "Comes in",
                "Certified",
            ]
            .map(str::to_owned),
        );
        for order in &self.orders {
            table.row(&row(order));
        }
        table.done()
    }
}

fn row(order: &SlatOrder) -> [String; 11] {
    [
        text(&order.ordered),
        text(&order.supplier),
        text(&order.stock),
        order.packs.to_string(),
        order.slats.to_string(),
        order.from_packs.to_string(),
        money(order.pack_price),
        money(order.order_cost),
        money(order.price),
        order.comes.as_deref().map_or_else(String::new, text),
        if order.is_certified { "yes" } else { "no" }.to_owned(),
    ]
}
