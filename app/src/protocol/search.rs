//! What a search found.

use serde::{Deserialize, Serialize};

use super::ranking::LeftOut;
use super::whole::Whole;
use super::words::GoalWord;
use crate::project_file::WayWord;

/// What a search found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Searched {
    /// The first of those that are best under each goal; then the layouts of which none has both
    /// less wood and a wider margin, least wood first; then those as good as the first; each once.
    pub rows: Vec<FoundRow>,
    /// Layouts that are as good as some of the rows, left out as there are too many to show.
    pub more: u32,
    /// Layouts that did not come out as found when they were laid out once more, and are left out.
    /// There should be none.
    pub unconfirmed: u32,
    /// Why nothing is told of good pencils, when nothing is.
    pub without_good: Option<String>,
    /// Pairs of slats with cutter sets that were compared.
    pub compared: Whole,
    /// The stocks that could not be searched, in the order of the list.
    pub left_out: Vec<LeftOut>,
    /// The cutter sets that could not be searched, each with what is wrong with it.
    pub sets_left_out: Vec<String>,
    /// Why nothing fits, when nothing does.
    pub obstacle: Option<String>,
}

/// A layout that was found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FoundRow {
    /// The `id` of the stock above the glue plane.
    pub top: u32,
    /// What that stock is called.
    pub top_name: String,
    /// The `id` of the stock below the glue plane.
    pub bottom: u32,
    /// What that stock is called.
    pub bottom_name: String,
    /// The `id` of the cutter set; none for a new one.
    pub set: Option<u32>,
    /// What the cutter set is called; none for a new one.
    pub set_name: Option<String>,
    /// The way round: a usual one, or turned by the angle.
    pub way: WayWord,
    /// The turn of the barrel from standing on a face.
    pub turn_degrees: f64,
    /// Height of the lead axis above the glue plane.
    pub axis_height_mm: f64,
    /// Distance between neighbouring groove centres.
    pub pitch_mm: f64,
    /// Pencils side by side.
    pub across: u32,
    /// Pencils from one sandwich.
    pub pencils: u32,
    /// How far every size may be off at once: the least margin of edge, land, thicknesses and
    /// floors.
    pub margin_mm: f64,
    /// Wood bought for a gross of good pencils.
    pub wood_per_gross_mm3: f64,
    /// Price of that wood and share of the cutter set in hundredths, not rounded.
    pub money_per_gross: f64,
    /// Pencils of one sandwich that are expected to be good; none where no errors are known.
    pub good: Option<f64>,
    /// Price of the wood of a gross of those and share of the cutter set in hundredths; none where
    /// no pencil is good.
    pub money_per_good_gross: Option<f64>,
    /// The goals under which no other is better.
    pub best_under: Vec<GoalWord>,
    /// Whether none has both less wood and a wider margin.
    pub on_frontier: bool,
}
