//! The shape of a project in a file: plain data, units in the names.
//!
//! These types are the file's own, so that the solver may change without the files changing.

use serde::Serialize;

use super::supply::SupplyFile;
use super::title_block::TitleBlockFile;
use super::{
    AimOfSawingWord, AxisWord, Entered, FinishFile, LeadGradeWord, MoistureSourceWord, PairsWord,
    ReadingWord, SawingWord, ShapeWord, SpacingWord, TurnsWord, WayWord,
};

/// A project as the newest version of the file keeps it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ProjectFile {
    /// What it is called.
    pub name: String,
    /// The barrels.
    pub barrels: Vec<BarrelFile>,
    /// The slat stocks.
    pub slats: Vec<SlatFile>,
    /// The species of wood.
    pub species: Vec<SpeciesFile>,
    /// The conditions in which the slats are grooved.
    pub conditions: ConditionsFile,
    /// The cutter sets.
    pub cutter_sets: Vec<CutterSetFile>,
    /// The machining rules.
    pub rules: RulesFile,
    /// How accurately each line of machines works.
    pub accuracies: Vec<AccuracyFile>,
    /// The layout that is looked at.
    pub layout: LayoutFile,
    /// What a search for the best layout may try.
    pub search: SearchFile,
    /// The order book.
    pub orders: Vec<OrderFile>,
    /// The saw shop.
    pub saw_shop: SawShopFile,
    /// The heads of the line.
    pub heads: HeadsFile,
    /// What is common to the heads.
    pub cut: CutFile,
    /// The run for which materials are reckoned.
    pub run: RunFile,
    /// What an order plan rests on beside all these.
    pub supply: SupplyFile,
    /// What the title block of a printed sheet tells.
    pub title_block: TitleBlockFile,
    /// The layout that was set aside to be compared with, as a project of only what it rests on;
    /// left out where none is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub set_aside: Option<Box<ProjectFile>>,
}

/// A barrel.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BarrelFile {
    /// Its lasting name, told apart from those of the other barrels.
    pub id: u32,
    /// What it is called.
    pub name: String,
    /// The kind of outline.
    pub shape: ShapeWord,
    /// Finished diameter, distance across flats, inscribed diameter, height, or width.
    pub size_mm: Entered,
    /// Sides of a polygon.
    pub sides: Entered,
    /// Finished height of an outline that is given by width and height.
    pub height_mm: Entered,
    /// Finished radius of bulging faces; an empty text where they are flat.
    pub face_radius_mm: Entered,
    /// Finished radius of the corners.
    pub corner_radius_mm: Entered,
    /// The outline that was drawn, as the data of an SVG path; an empty text where none was.
    pub path: String,
    /// Lead axis to the right of the centre of area of an outline that was drawn.
    pub axis_across_mm: Entered,
    /// Lead axis above the centre of area of an outline that was drawn.
    pub axis_up_mm: Entered,
    /// Coat build per side.
    pub coat_mm: Entered,
    /// Length of the pencil.
    pub length_mm: Entered,
    /// Diameter of the lead.
    pub lead_diameter_mm: Entered,
    /// What the finished pencil is beyond the barrel.
    pub finish: FinishFile,
}

/// A slat stock.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
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
    /// The `id` of the species; `null` for none.
    pub species: Option<u32>,
    /// Moisture content as delivered.
    pub moisture_percent: Entered,
    /// How the growth rings run.
    pub sawing: SawingWord,
    /// Slats in a pack.
    pub pack_slats: Entered,
    /// Price of a pack in major units of the currency.
    pub pack_price: Entered,
    /// Slats on hand.
    pub on_hand_slats: Entered,
    /// Most packs that can be bought; an empty text for no limit.
    pub pack_limit: Entered,
}

/// A species of wood.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SpeciesFile {
    /// Its lasting name, told apart from those of the other species.
    pub id: u32,
    /// What it is called.
    pub name: String,
    /// Radial shrinkage from green to ovendry.
    pub radial_percent: Entered,
    /// Tangential shrinkage from green to ovendry.
    pub tangential_percent: Entered,
    /// Moisture content at which shrinkage begins.
    pub fibre_saturation_percent: Entered,
}

/// The conditions in which the slats are grooved.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ConditionsFile {
    /// Where the moisture content is taken from.
    pub source: MoistureSourceWord,
    /// Moisture content of the slats, where it is given.
    pub moisture_percent: Entered,
    /// Temperature of the air.
    pub temperature_celsius: Entered,
    /// Relative humidity of the air.
    pub humidity_percent: Entered,
}

/// A cutter set.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CutterSetFile {
    /// Its lasting name, told apart from those of the other sets.
    pub id: u32,
    /// What it is called.
    pub name: String,
    /// Distance between neighbouring cutters.
    pub pitch_mm: Entered,
    /// Most grooves side by side.
    pub most: Entered,
    /// The `id` of the barrel it is ground for; `null` for any.
    pub barrel: Option<u32>,
    /// What is still to be paid for it, in major units of the currency.
    pub price: Entered,
}

/// The machining rules.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RulesFile {
    /// How the grooves are spaced.
    pub spacing: SpacingWord,
    /// The pitch, where it is given.
    pub pitch_mm: Entered,
    /// The `id` of the cutter set, where it sets the pitch; `null` for none.
    pub cutter_set: Option<u32>,
    /// Most grooves side by side; an empty text for as many as fit.
    pub most: Entered,
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
    /// Least wood cut off each end of the slat.
    pub end_trim_mm: Entered,
    /// Wood the saw takes between two pencils of one slat length.
    pub saw_kerf_mm: Entered,
    /// Share of slats thrown out.
    pub slat_rejects_percent: Entered,
    /// Share of pencils thrown out.
    pub pencil_rejects_percent: Entered,
}

/// How accurately a line of machines works.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AccuracyFile {
    /// Its lasting name, told apart from those of the other lines.
    pub id: u32,
    /// What the line is called.
    pub name: String,
    /// Place of each groove across the slat.
    pub groove_position: ErrorFile,
    /// Place of each shaping cutter across the sandwich.
    pub shaping_position: ErrorFile,
    /// Diameter of each lead.
    pub lead_diameter: ErrorFile,
    /// Groove head against the fence, common to a slat.
    pub groove_head: ErrorFile,
    /// Groove depth, common to a slat.
    pub groove_depth: ErrorFile,
    /// Width of each slat.
    pub slat_width: ErrorFile,
    /// Thickness of the bottom slat.
    pub bottom_thickness: ErrorFile,
    /// Shift of the top slat on the bottom slat at gluing.
    pub glue_shift: ErrorFile,
    /// Shaping head sideways, common to a sandwich.
    pub shaping_across: ErrorFile,
    /// Shaping head up and down, common to a sandwich.
    pub shaping_up: ErrorFile,
    /// Standard deviations that all ± limits stand for.
    pub sigmas: Entered,
    /// How far the mean width of the slats lies above nominal.
    pub width_offset_mm: Entered,
    /// How far the mean thickness of the bottom slat lies above nominal.
    pub thickness_offset_mm: Entered,
}

/// The size of one error.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ErrorFile {
    /// How large it is.
    pub size_mm: Entered,
    /// What that size is.
    pub reading: ReadingWord,
}

/// The layout that is looked at.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
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
    /// The `id` of the accuracy of the line on which it is made.
    pub accuracy: u32,
}

/// What a search for the best layout may try.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SearchFile {
    /// Which turns are tried.
    pub turns: TurnsWord,
    /// Which heights of the lead axis are tried.
    pub axis: AxisWord,
    /// Which two slats make a sandwich.
    pub pairs: PairsWord,
    /// Price of a cutter set made to measure; an empty text when none is bought.
    pub new_set_price: Entered,
    /// Pencils made in a year, in gross of 144.
    pub year_gross: Entered,
}

/// A line of the order book.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OrderFile {
    /// The `id` of the barrel ordered.
    pub barrel: u32,
    /// How many, in gross of 144.
    pub gross: Entered,
    /// The period at whose end they are due, counted from 1.
    pub due_period: Entered,
    /// Pencils of it that lie in the store.
    pub on_hand_pencils: Entered,
}

/// The saw shop: what is sawn from what.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SawShopFile {
    /// The kinds of plank.
    pub planks: Vec<PlankFile>,
    /// The kinds of blank.
    pub blanks: Vec<BlankFile>,
    /// Wood a crosscut takes.
    pub crosscut_kerf_mm: Entered,
    /// Wood a rip cut takes.
    pub rip_kerf_mm: Entered,
    /// Moisture content of the wood when it is sawn.
    pub moisture_percent: Entered,
    /// The shortest offcut that can be used again; an empty text when none is.
    pub shortest_offcut_mm: Entered,
    /// Worth of a metre of such an offcut in major units of the currency.
    pub offcut_price_per_metre: Entered,
    /// What is made as small as possible.
    pub aim: AimOfSawingWord,
}

/// A kind of plank.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlankFile {
    /// Its lasting name, told apart from those of the other planks.
    pub id: u32,
    /// What it is called.
    pub name: String,
    /// Length along the grain.
    pub length_mm: Entered,
    /// Width of the wide face.
    pub width_mm: Entered,
    /// Thickness.
    pub thickness_mm: Entered,
    /// Price of one plank in major units of the currency.
    pub price: Entered,
    /// Planks that can be had; an empty text for as many as wanted.
    pub on_hand: Entered,
    /// Wood cut off each end.
    pub end_trim_mm: Entered,
    /// Wood ripped off each edge.
    pub edge_trim_mm: Entered,
}

/// A kind of blank.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BlankFile {
    /// Its lasting name, told apart from those of the other blanks.
    pub id: u32,
    /// What it is called.
    pub name: String,
    /// The `id` of the slat stock that it becomes; `null` where the sizes are given.
    pub slat: Option<u32>,
    /// Length as sawn, where it is given.
    pub length_mm: Entered,
    /// Width as sawn, where it is given.
    pub width_mm: Entered,
    /// Thickness as sawn, where it is given.
    pub thickness_mm: Entered,
    /// What dressing takes off the length of a slat.
    pub length_dressing_mm: Entered,
    /// What dressing takes off its width.
    pub width_dressing_mm: Entered,
    /// What dressing takes off its thickness.
    pub thickness_dressing_mm: Entered,
    /// Blanks wanted.
    pub wanted: Entered,
    /// Worth of a blank beyond those wanted in major units of the currency.
    pub over_worth: Entered,
    /// How many beyond those wanted are worth that.
    pub most_over: Entered,
}

/// The heads of the line, in the order of the work.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HeadsFile {
    /// The head that grooves the slats.
    pub groove: HeadFile,
    /// The head that shapes the upper half of the pencils.
    pub top: HeadFile,
    /// The head that shapes the lower half and parts them.
    pub bottom: HeadFile,
}

/// A cutterhead.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HeadFile {
    /// Diameter of the cutting circle at the deepest cut.
    pub cutting_diameter_mm: Entered,
    /// Angle between the face of a knife and the radius to its farthest point.
    pub hook_degrees: Entered,
    /// Knives that cut.
    pub cutting_knives: Entered,
    /// Turns in a minute.
    pub speed_per_minute: Entered,
    /// The greatest turns in a minute that are marked on the head.
    pub marked_speed_per_minute: Entered,
}

/// What is common to the heads.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CutFile {
    /// How fast the wood is fed.
    pub feed_metres_per_minute: Entered,
    /// How far the shaping knives cut past the line where pencils part.
    pub overcut_mm: Entered,
    /// Lean of the sides of the overcut from upright.
    pub overcut_draft_degrees: Entered,
}

/// The run for which materials are reckoned.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RunFile {
    /// Good pencils wanted, in gross of 144.
    pub gross: Entered,
    /// The grade of the lead.
    pub lead_grade: LeadGradeWord,
    /// How far the diameter of a lead may lie from nominal, either way.
    pub lead_tolerance_mm: Entered,
    /// Density of the lead.
    pub lead_grams_per_cm3: Entered,
    /// Share of leads that break.
    pub lead_breakage_percent: Entered,
    /// Glue on a glue line.
    pub glue_grams_per_m2: Entered,
    /// Pressure on the glue line.
    pub clamp_megapascals: Entered,
    /// Hours that a load stays clamped.
    pub press_hours: Entered,
    /// Sandwiches clamped at once.
    pub press_load: Entered,
    /// Share of the volume of the liquid coat that stays.
    pub coat_solids_percent: Entered,
    /// How often a pencil is coated.
    pub coat_passes: Entered,
    /// Basic specific gravity of the wood.
    pub specific_gravity: Entered,
    /// Volumetric shrinkage of the wood from green to ovendry.
    pub volumetric_percent: Entered,
    /// Share of pieces that each stage lets through.
    pub yields_percent: YieldsFile,
}

/// Share of pieces that each stage lets through, in the order of the work.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct YieldsFile {
    /// Slats that are grooved.
    pub grooving: Entered,
    /// Sandwiches, with leads laid and glued.
    pub gluing: Entered,
    /// Pencils that are shaped.
    pub shaping: Entered,
    /// Pencils that are coated.
    pub coating: Entered,
    /// Pencils that are printed, tipped and sorted.
    pub finishing: Entered,
}
