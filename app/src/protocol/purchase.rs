//! What to buy and to run.

use serde::{Deserialize, Serialize};

use super::whole::Whole;
use crate::project_file::WayWord;

/// What came out of a purchase. The four cases never stand for each other.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Purchase {
    /// No plan costs less.
    Cheapest {
        /// What to buy and to run.
        list: PurchaseList,
        /// Whether no plan of this cost takes fewer slats either.
        fewest_slats: bool,
    },
    /// A plan that can be carried out; a cheaper one is not ruled out.
    WithinGap {
        /// What to buy and to run.
        list: PurchaseList,
        /// No plan costs less than this, in hundredths.
        bound: Whole,
        /// What could be saved at most, over the cost: above 0, at most 1.
        gap: f64,
    },
    /// The time ran out before any plan was found; there may be one.
    NoneFound {
        /// No plan costs less than this, in hundredths.
        bound: Whole,
    },
    /// No plan fills the book.
    Impossible {
        /// Why, in sentences that name barrels and stocks.
        obstacles: Vec<String>,
    },
}

/// What to buy and to run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PurchaseList {
    /// The stocks that are bought or used, in the order of the project.
    pub stocks: Vec<StockLine>,
    /// What is made from what, in the order of the book, then of the stocks.
    pub runs: Vec<RunLine>,
    /// The sums.
    pub totals: Totals,
}

/// One stock that is bought or used.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StockLine {
    /// The `id` of the stock.
    pub slat: u32,
    /// What the stock is called.
    pub slat_name: String,
    /// Packs to buy.
    pub packs: Whole,
    /// Slats in those packs.
    pub slats_bought: Whole,
    /// Price of those packs, in hundredths.
    pub cost: Whole,
    /// Slats that the runs take.
    pub slats_used: Whole,
    /// Of these, taken from what was on hand.
    pub slats_from_hand: Whole,
    /// Slats in store when the runs are done.
    pub slats_left: Whole,
}

/// One order made from one stock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RunLine {
    /// The line of the order book, counted from 0.
    pub order: u32,
    /// The `id` of the barrel.
    pub barrel: u32,
    /// What the barrel is called.
    pub barrel_name: String,
    /// The `id` of the stock.
    pub slat: u32,
    /// What the stock is called.
    pub slat_name: String,
    /// The way round that gives the most pencils.
    pub way: WayWord,
    /// Pencils from one sandwich.
    pub pencils_per_sandwich: u32,
    /// Sandwiches to glue.
    pub sandwiches: Whole,
    /// Pencils from those sandwiches, before any are thrown out.
    pub pencils: Whole,
}

/// The sums of a purchase.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Totals {
    /// Price of all packs, in hundredths.
    pub cost: Whole,
    /// Slats in all packs.
    pub slats_bought: Whole,
    /// Slats that the runs take.
    pub slats_used: Whole,
    /// Wood of the slats bought.
    pub wood_bought_mm3: f64,
    /// Pencils ordered.
    pub pencils_ordered: Whole,
    /// Good pencils beyond the orders, to be expected.
    pub pencils_over: Whole,
    /// Cost over the gross ordered, in hundredths, not rounded; `None` when none is ordered.
    pub cost_per_gross: Option<f64>,
}
