//! The nearest changes of a barrel that gain something.

use serde::{Deserialize, Serialize};

use crate::project_file::WayWord;

/// A change of the barrel, and what it brings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct GainRow {
    /// Whether it is as many pencils from a cheaper stock; otherwise it is more from this one.
    pub cheaper: bool,
    /// The stock, by its `id`.
    pub slat: u32,
    /// What it is called.
    pub slat_name: String,
    /// The way round.
    pub way: WayWord,
    /// The sizes that change.
    pub steps: Vec<GainStepRow>,
    /// Pencils from a sandwich today.
    pub pencils_before: u32,
    /// Pencils from a sandwich after the change.
    pub pencils_after: u32,
    /// Price of the slats of a gross today, in hundredths; nothing where none is made.
    pub price_before: Option<f64>,
    /// Price of the slats of a gross after the change.
    pub price_after: Option<f64>,
    /// What is known of how near it is, in words.
    pub proof: String,
}

/// A size of the barrel that changes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct GainStepRow {
    /// Its place in [`solver::Field::ALL`]: page and worker are of one build.
    pub field: u32,
    /// What stands there today, mm.
    pub from_mm: f64,
    /// What is to stand there, mm.
    pub to_mm: f64,
}
