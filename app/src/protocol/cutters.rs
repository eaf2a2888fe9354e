//! What cutter sets serve, and what one more would save.

use serde::{Deserialize, Serialize};

use super::whole::Whole;

/// Which cutter sets make which barrels, and the new one that saves most.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CutterPlan {
    /// A row for each barrel, in the order of the list.
    pub barrels: Vec<ServedBarrel>,
    /// The set that saves most over the order book, and where none saves anything the one that newly
    /// serves most of it; none where no set does either.
    pub best: Option<NewCutterSet>,
}

/// A barrel, and what makes it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ServedBarrel {
    /// The `id` of the barrel.
    pub barrel: u32,
    /// What it is called.
    pub name: String,
    /// Gross of it in the order book.
    pub gross: f64,
    /// The sets that make it, the one with the cheapest slats first.
    pub sets: Vec<ServingSet>,
}

/// A set that makes a barrel, in the way that is cheapest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ServingSet {
    /// What the set is called.
    pub name: String,
    /// What is still to be paid for it, in hundredths of the currency; 0 where it is owned.
    pub price: Whole,
    /// The stock of both slats.
    pub stock: String,
    /// Pencils of one sandwich.
    pub pencils: u32,
    /// Price of the slats of a gross, in hundredths, not rounded.
    pub gross_cost: f64,
}

/// One more set.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct NewCutterSet {
    /// What it is.
    pub kind: NewSetKind,
    /// Its price, in hundredths of the currency.
    pub price: Whole,
    /// What it saves each time the order book is made, in hundredths, not rounded; 0 where it only
    /// makes what no owned set makes.
    pub saving: f64,
    /// How many times the order book must be made until it has paid for itself.
    pub books_to_pay_back: Option<f64>,
    /// Gross of the order book that no owned set makes and this one would.
    pub newly_served: f64,
}

/// Where a set is to be had.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum NewSetKind {
    /// It stands in the list.
    Offered {
        /// What it is called.
        name: String,
    },
    /// It is ground to measure.
    MadeToMeasure {
        /// What the barrel is called that it is for.
        barrel: String,
        /// The closest pitch at which it saves so much.
        pitch_mm: f64,
        /// The largest one.
        widest_mm: f64,
        /// Grooves side by side.
        most: u32,
    },
}
