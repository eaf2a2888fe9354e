//! The shape of a project in a file: plain data, units in the names.
//!
//! These types are the file's own, so that the solver may change without the files changing.

use serde::{Deserialize, Serialize};

use super::{Entered, ShapeWord, SpacingWord, WayWord};

/// A project as version 1 of the file keeps it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ProjectFile {
    /// What it is called.
    pub name: String,
    /// The barrels.
    pub barrels: Vec<BarrelFile>,
    /// The slat stocks.
    pub slats: Vec<SlatFile>,
    /// The machining rules.
    pub rules: RulesFile,
    /// The layout that is looked at.
    pub layout: LayoutFile,
    /// The order book.
    pub orders: Vec<OrderFile>,
}

/// A barrel.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct BarrelFile {
    /// Its lasting name, told apart from those of the other barrels.
    pub id: u32,
    /// What it is called.
    pub name: String,
    /// The kind of outline.
    pub shape: ShapeWord,
    /// Finished diameter, distance across flats, or height.
    pub size_mm: Entered,
    /// Finished radius of the corners.
    pub corner_radius_mm: Entered,
    /// Coat build per side.
    pub coat_mm: Entered,
    /// Length of the pencil.
    pub length_mm: Entered,
    /// Diameter of the lead.
    pub lead_diameter_mm: Entered,
}

/// A slat stock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SlatFile {
    /// Its lasting name, told apart from those of the other stocks.
    pub id: u32,
    /// What it is called.
    pub name: String,
    /// Length along the grain.
    pub length_mm: Entered,
    /// Nominal width.
    pub width_mm: Entered,
    /// Nominal thickness.
    pub thickness_mm: Entered,
    /// What a slat may lack in width.
    pub width_tolerance_mm: Entered,
    /// What a slat may lack in thickness.
    pub thickness_tolerance_mm: Entered,
    /// Slats in a pack.
    pub pack_slats: Entered,
    /// Price of a pack in major units of the currency.
    pub pack_price: Entered,
    /// Slats on hand.
    pub on_hand_slats: Entered,
    /// Most packs that can be bought; an empty text for no limit.
    pub pack_limit: Entered,
}

/// The machining rules.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RulesFile {
    /// How the grooves are spaced.
    pub spacing: SpacingWord,
    /// The pitch, where it is given.
    pub pitch_mm: Entered,
    /// Radial clearance of the groove round the lead.
    pub clearance_mm: Entered,
    /// Height of the lead axis above the glue plane.
    pub axis_height_mm: Entered,
    /// Least wood between two pencils.
    pub land_mm: Entered,
    /// Least wood outside the outer pencils.
    pub edge_mm: Entered,
    /// Least wood taken off each outer face.
    pub planing_mm: Entered,
    /// Least wood under a groove.
    pub floor_mm: Entered,
    /// Least wall round the groove.
    pub wall_mm: Entered,
    /// How far a lead may sit off centre.
    pub eccentricity_mm: Entered,
    /// Least glued width each side of the lead.
    pub bond_mm: Entered,
    /// Least lean of a straight side from upright.
    pub relief_degrees: Entered,
}

/// The layout that is looked at.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LayoutFile {
    /// The `id` of the barrel.
    pub barrel: u32,
    /// The `id` of the slat stock above the glue plane.
    pub top: u32,
    /// The `id` of the slat stock below the glue plane.
    pub bottom: u32,
    /// How the barrel is turned.
    pub way: WayWord,
    /// The angle, where it is given.
    pub turn_degrees: Entered,
}

/// A line of the order book.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OrderFile {
    /// The `id` of the barrel ordered.
    pub barrel: u32,
    /// How many, in gross of 144.
    pub gross: Entered,
}
