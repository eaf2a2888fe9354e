//! Values of the decisions, mostly fractions.

use crate::order_plan::data::OrderPlanData;

use super::columns::{Column, Columns};

/// Values of the decisions, in pieces, up to the tolerance of the solver.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::order_plan) struct Point {
    /// `runs[setup][period]`, sandwiches.
    pub(in crate::order_plan) runs: Vec<Vec<f64>>,
    /// `open[setup][period]`, 0 to 1.
    pub(in crate::order_plan) open: Vec<Vec<f64>>,
    /// `has_choice[setup][period]`, whether there is anything to open.
    pub(in crate::order_plan) has_choice: Vec<Vec<bool>>,
    /// `packs[offer][period]`, by tier, with how far the tier is chosen.
    pub(in crate::order_plan) packs: Vec<Vec<Vec<OrderPoint>>>,
    /// `sawn[stock][period]`, slats.
    pub(in crate::order_plan) sawn: Vec<Vec<f64>>,
}

/// An order in one tier.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::order_plan) struct OrderPoint {
    pub(in crate::order_plan) tier: usize,
    pub(in crate::order_plan) packs: f64,
    /// 0 to 1; the packs themselves, at most 1, where there is nothing to choose.
    pub(in crate::order_plan) chosen: f64,
}

impl Point {
    pub(super) fn read(data: &OrderPlanData, columns: &Columns, values: &[f64]) -> Self {
        let value = |column: Column| values[column.index] * column.unit;
        let rows = |rows: &[Vec<Option<Column>>]| -> Vec<Vec<f64>> {
            rows.iter()
                .map(|row| row.iter().map(|at| at.map_or(0.0, value)).collect())
                .collect()
        };
        let runs = rows(&columns.runs);
        let has_choice = columns
            .open
            .iter()
            .map(|row| row.iter().map(Option::is_some).collect());
        let orders = columns.orders.iter().map(|rows| {
            rows.iter()
                .map(|orders| {
                    let read = orders.iter().map(|order| OrderPoint {
                        tier: order.tier,
                        packs: value(order.packs),
                        chosen: (order.chosen)
                            .map_or(value(order.packs).min(1.0), |(chosen, ..)| value(chosen)),
                    });
                    read.collect()
                })
                .collect()
        });
        debug_assert_eq!(columns.orders.len(), data.offers().len());
        Self {
            runs,
            open: rows(&columns.open),
            has_choice: has_choice.collect(),
            packs: orders.collect(),
            sawn: rows(&columns.sawn),
        }
    }

    /// Nothing is done.
    pub(in crate::order_plan) fn nothing(data: &OrderPlanData) -> Self {
        let rows = |lines: usize| vec![vec![0.0; data.periods()]; lines];
        let setups = data.setups().len();
        Self {
            runs: rows(setups),
            open: rows(setups),
            has_choice: vec![vec![true; data.periods()]; setups],
            packs: vec![vec![Vec::new(); data.periods()]; data.offers().len()],
            sawn: rows(data.stocks().len()),
        }
    }

    /// How many orders of a stock arrive up to a period, by how far they are chosen.
    pub(super) fn ordered_up_to(&self, data: &OrderPlanData, stock: usize, period: usize) -> f64 {
        let offers = data.offers().iter().zip(&self.packs);
        offers
            .filter(|(offer, _)| offer.stock == stock)
            .flat_map(|(offer, rows)| {
                let in_time = (period + 1).saturating_sub(offer.lead_periods);
                rows.iter().take(in_time).flatten()
            })
            .map(|order| order.chosen)
            .sum()
    }
}
