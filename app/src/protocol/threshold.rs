//! Where the next pencil is won or lost.

use serde::{Deserialize, Serialize};

/// An input of the layout with the nearest values at which something changes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ThresholdRow {
    /// Where the input stands.
    pub input: InputAddress,
    /// What stands there today, mm.
    pub today_mm: f64,
    /// Changes below today's value, the nearest first.
    pub down: Vec<ChangeLine>,
    /// Changes above today's value, the nearest first.
    pub up: Vec<ChangeLine>,
}

/// Where an input of the layout stands in the project.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct InputAddress {
    /// What it belongs to.
    pub owner: OwnerWord,
    /// Its place in [`solver::Field::ALL`]: page and worker are of one build.
    pub field: u32,
}

/// What an input belongs to, by its `id`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum OwnerWord {
    /// A slat stock.
    Slat(u32),
    /// The machining rules.
    Rules,
    /// A cutter set.
    CutterSet(u32),
    /// The barrel.
    Barrel(u32),
}

/// What is different from today at a value of an input.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ChangeLine {
    /// The first value at which it is so, mm.
    pub at_mm: f64,
    /// That value as it is shown, mm: rounded away from today's where the same is true there.
    pub shown_mm: f64,
    /// Pencils from one sandwich today; 0 where a check fails.
    pub pencils_before: u32,
    /// Pencils from one sandwich there.
    pub pencils_after: u32,
    /// Grooves side by side today, whatever the checks say.
    pub across_before: u32,
    /// Grooves side by side there.
    pub across_after: u32,
    /// The checks that pass there and not today, by name.
    pub mended: Vec<String>,
    /// The checks that fail there and not today, by name.
    pub broken: Vec<String>,
    /// Whether the barrel cannot be made there.
    pub unmade: bool,
    /// Price of slats saved for a gross in hundredths, below 0 where it costs more.
    pub saved_per_gross: Option<f64>,
    /// The same for the gross of a year.
    pub saved_per_year: Option<f64>,
}
