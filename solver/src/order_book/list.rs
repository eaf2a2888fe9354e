//! A purchase as a timber buyer reads it: every sum and ratio is made here.

use crate::quantity::Volume;
use crate::seam::Seam;

/// What a purchase comes to. The cases of the outcome never stand for each other.
#[derive(Debug, Clone, PartialEq)]
pub enum Purchase {
    /// No plan costs less.
    Cheapest {
        /// What to buy and to run.
        list: PurchaseList,
        /// Whether no plan of this cost takes fewer slats either, as far as that was proved.
        fewest_slats: bool,
    },
    /// A plan that can be carried out; a cheaper one is not ruled out.
    WithinGap {
        /// What to buy and to run.
        list: PurchaseList,
        /// No plan costs less than this, in hundredths of the currency.
        bound: i64,
        /// What could be saved at most, over the cost: (cost − bound) / cost, above 0, at most 1.
        gap: f64,
    },
    /// The limits were reached before any plan was found; there may be one.
    NoneFound {
        /// No plan costs less than this, in hundredths of the currency.
        bound: i64,
    },
    /// No plan fills the book.
    Impossible {
        /// Why, in sentences that name barrels and stocks.
        obstacles: Vec<String>,
    },
}

/// What to buy and to run.
#[derive(Debug, Clone, PartialEq)]
pub struct PurchaseList {
    /// The stocks that are bought or used, in the order of the project.
    pub stocks: Vec<StockLine>,
    /// What is made from what, in the order of the book, then of the stocks.
    pub runs: Vec<RunLine>,
    /// The sums.
    pub totals: Totals,
}

/// One stock that is bought or used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StockLine {
    /// The stock, by its place in the project.
    pub stock: usize,
    /// Packs to buy.
    pub packs: u64,
    /// Slats in those packs.
    pub slats_bought: u64,
    /// Price of those packs, in hundredths of the currency.
    pub cost: i64,
    /// Slats that the runs take, two a sandwich.
    pub slats_used: u64,
    /// Of these, taken from what was on hand, which goes first.
    pub slats_from_hand: u64,
    /// Slats in store when the runs are done: on hand and bought, less used.
    pub slats_left: u64,
}

/// One order made from one stock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RunLine {
    /// The order, by its place in the book.
    pub order: usize,
    /// Its barrel, by its place in the project.
    pub barrel: usize,
    /// The stock, by its place in the project.
    pub stock: usize,
    /// The way round.
    pub seam: Seam,
    /// Pencils from one sandwich.
    pub pencils_per_sandwich: u32,
    /// Sandwiches to glue.
    pub sandwiches: u64,
    /// Pencils from those sandwiches, before any are thrown out.
    pub pencils: u64,
}

/// The sums of a purchase.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Totals {
    /// Price of all packs, in hundredths of the currency.
    pub cost: i64,
    /// Slats in all packs.
    pub slats_bought: u64,
    /// Slats that the runs take.
    pub slats_used: u64,
    /// Wood of the slats bought.
    pub wood_bought: Volume,
    /// Pencils ordered.
    pub pencils_ordered: u64,
    /// Good pencils beyond the orders, to be expected.
    pub pencils_over: u64,
    /// Cost over the gross ordered, in hundredths, not rounded; `None` when none is ordered.
    pub cost_per_gross: Option<f64>,
}
