//! One barrel on every stock.

use serde::{Deserialize, Serialize};

use crate::project_file::WayWord;

/// One barrel on the slat stocks, best first; what does not fit stands last.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Ranking {
    /// A row for each stock and way round.
    pub rows: Vec<RankedRow>,
    /// The stocks that cannot be ranked, in the order of the list.
    pub left_out: Vec<LeftOut>,
}

/// One stock with one way round.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RankedRow {
    /// The `id` of the stock.
    pub slat: u32,
    /// What the stock is called.
    pub slat_name: String,
    /// The way round.
    pub way: WayWord,
    /// The turn of the barrel from standing on a face.
    pub turn_degrees: f64,
    /// Pencils from one sandwich; 0 when a check fails.
    pub pencils: u32,
    /// Grooves that fit side by side, whatever the other checks say.
    pub across: u32,
    /// Distance between neighbouring groove centres.
    pub pitch_mm: f64,
    /// Finished wood over wood bought, 0 to 1; `None` when a check fails.
    pub yielded: Option<f64>,
    /// Wood of the slats for a gross as bought; `None` when a check fails.
    pub wood_per_gross_mm3: Option<f64>,
    /// Slats for a gross, not rounded; `None` when a check fails.
    pub slats_per_gross: Option<f64>,
    /// Price of the slats for a gross in hundredths, not rounded; `None` when a check fails.
    pub price_per_gross: Option<f64>,
    /// The first check that fails, as a statement with its name.
    pub failing: Option<String>,
}

/// A stock that cannot be ranked.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LeftOut {
    /// The `id` of the stock.
    pub slat: u32,
    /// What the stock is called.
    pub slat_name: String,
    /// Everything that is wrong with it.
    pub problems: Vec<String>,
}
