//! The reader of version 1, of which layout and orders have stayed as they were.
//!
//! A file of version 1 knows no species, no cutter sets and no search; what it does not know is
//! as in a new project.

use serde_json::Value;
use solver::{
    AccuracyDraft, BarrelDraft, ConditionsDraft, CutDraft, Entry, HeadDraft, Id, OrderDraft,
    RulesDraft, RunDraft, SawShopDraft, SearchDraft, Shape, SlatDraft, SupplyDraft, TitleBlock,
};

use crate::demo::FIRST_LINE;

use super::draft::{
    accuracy_file, barrel_file, conditions_file, order_file, rules_file, saw_shop_file,
    search_file, slat_file,
};
use super::machines::{cut_file, heads_file, run_file};
use super::names;
use super::reader::{Findings, Object, object};
use super::supply::supply_file;
use super::title_block::title_block_file;
use super::{AccuracyFile, BarrelFile, LayoutFile, OrderFile, ProjectFile, RulesFile, SlatFile};

/// Reads the document of a file of version 1.
pub(super) fn read(document: &Value, findings: &mut Findings) -> ProjectFile {
    let file = object(String::new(), document, findings, project);
    names::check(&file, findings);
    file
}

fn project(object: &mut Object<'_>) -> ProjectFile {
    object.pass_over("format");
    object.pass_over("version");
    ProjectFile {
        name: object.text("name"),
        barrels: object.list("barrels", barrel),
        slats: object.list("slats", slat),
        species: Vec::new(),
        conditions: conditions_file(&ConditionsDraft::new()),
        cutter_sets: Vec::new(),
        rules: object.object("rules", rules),
        accuracies: first_accuracies(),
        layout: object.object("layout", layout),
        search: search_file(&SearchDraft::new()),
        orders: object.list("orders", order),
        saw_shop: saw_shop_file(&SawShopDraft::new()),
        heads: heads_file(&[const { HeadDraft::new() }; 3]),
        cut: cut_file(&CutDraft::new()),
        run: run_file(&RunDraft::new()),
        supply: supply_file(&SupplyDraft::new()),
        title_block: title_block_file(&TitleBlock::new()),
        set_aside: None,
    }
}

fn barrel(object: &mut Object<'_>) -> BarrelFile {
    let new = barrel_file(&new_entry(BarrelDraft::new("", Shape::Round)));
    BarrelFile {
        id: object.id("id"),
        name: object.text("name"),
        shape: object.word("shape"),
        size_mm: object.entered("size_mm"),
        corner_radius_mm: object.entered("corner_radius_mm"),
        coat_mm: object.entered("coat_mm"),
        length_mm: object.entered("length_mm"),
        lead_diameter_mm: object.entered("lead_diameter_mm"),
        ..new
    }
}

fn slat(object: &mut Object<'_>) -> SlatFile {
    let new = slat_file(&new_entry(SlatDraft::new("")));
    SlatFile {
        id: object.id("id"),
        name: object.text("name"),
        length_mm: object.entered("length_mm"),
        width_mm: object.entered("width_mm"),
        thickness_mm: object.entered("thickness_mm"),
        width_tolerance_mm: object.entered("width_tolerance_mm"),
        thickness_tolerance_mm: object.entered("thickness_tolerance_mm"),
        pack_slats: object.entered("pack_slats"),
        pack_price: object.entered("pack_price"),
        on_hand_slats: object.entered("on_hand_slats"),
        pack_limit: object.entered("pack_limit"),
        ..new
    }
}

fn rules(object: &mut Object<'_>) -> RulesFile {
    RulesFile {
        spacing: object.word("spacing"),
        pitch_mm: object.entered("pitch_mm"),
        clearance_mm: object.entered("clearance_mm"),
        axis_height_mm: object.entered("axis_height_mm"),
        land_mm: object.entered("land_mm"),
        edge_mm: object.entered("edge_mm"),
        planing_mm: object.entered("planing_mm"),
        floor_mm: object.entered("floor_mm"),
        wall_mm: object.entered("wall_mm"),
        eccentricity_mm: object.entered("eccentricity_mm"),
        bond_mm: object.entered("bond_mm"),
        relief_degrees: object.entered("relief_degrees"),
        ..rules_file(&RulesDraft::new())
    }
}

/// A member of a list whose name is still to be read.
fn new_entry<T>(draft: T) -> Entry<T> {
    Entry { id: Id(0), draft }
}

/// The layout, as far as every version knows it.
pub(super) fn layout(object: &mut Object<'_>) -> LayoutFile {
    LayoutFile {
        barrel: object.id("barrel"),
        top: object.id("top"),
        bottom: object.id("bottom"),
        way: object.word("way"),
        turn_degrees: object.entered("turn_degrees"),
        accuracy: FIRST_ACCURACY,
    }
}

/// The lasting name of the line of machines that a file has which does not know of any.
pub(super) const FIRST_ACCURACY: u32 = 1;

/// The lines of machines of a file which does not know of any.
pub(super) fn first_accuracies() -> Vec<AccuracyFile> {
    let entry = Entry {
        id: Id(FIRST_ACCURACY),
        draft: AccuracyDraft::new(FIRST_LINE),
    };
    vec![accuracy_file(&entry)]
}

/// A line of the order book, as far as every version knows it.
pub(super) fn order(object: &mut Object<'_>) -> OrderFile {
    let barrel = object.id("barrel");
    OrderFile {
        gross: object.entered("gross"),
        ..order_file(&OrderDraft::new(Id(barrel)))
    }
}
