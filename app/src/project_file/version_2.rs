//! The reader of version 2: barrels of any outline, species, cutter sets, rejects and the search.

use serde_json::Value;
use solver::{CutDraft, FinishDraft, HeadDraft, RunDraft, SawShopDraft, SupplyDraft, TitleBlock};

use super::draft::saw_shop_file;
use super::finish::finish_file;
use super::machines::{cut_file, heads_file, run_file};
use super::reader::{Findings, Object, object};
use super::supply::supply_file;
use super::title_block::title_block_file;
use super::version_1::{first_accuracies, layout, order};
use super::{
    BarrelFile, ConditionsFile, CutterSetFile, LayoutFile, MOST_PATH_CHARACTERS, OrderFile,
    ProjectFile, RulesFile, SearchFile, SlatFile, SpeciesFile, names,
};

/// Reads the document of a file of version 2.
pub(super) fn read(document: &Value, findings: &mut Findings) -> ProjectFile {
    let file = object(String::new(), document, findings, project);
    names::check(&file, findings);
    file
}

fn project(object: &mut Object<'_>) -> ProjectFile {
    object.pass_over("format");
    object.pass_over("version");
    parts(object, layout, LINES)
}

/// The readers of what stands in lists of which later versions know more.
#[derive(Clone, Copy)]
pub(super) struct Lines {
    pub(super) barrel: fn(&mut Object<'_>) -> BarrelFile,
    pub(super) order: fn(&mut Object<'_>) -> OrderFile,
}

/// Those of versions 2 to 5.
pub(super) const LINES: Lines = Lines { barrel, order };

/// What later versions have as well, with the layout, barrels and orders as they know them.
pub(super) fn parts(
    object: &mut Object<'_>,
    layout: impl FnOnce(&mut Object<'_>) -> LayoutFile,
    lines: Lines,
) -> ProjectFile {
    ProjectFile {
        name: object.text("name"),
        barrels: object.list("barrels", lines.barrel),
        slats: object.list("slats", slat),
        species: object.list("species", species),
        conditions: object.object("conditions", conditions),
        cutter_sets: object.list("cutter_sets", cutter_set),
        rules: object.object("rules", rules),
        accuracies: first_accuracies(),
        layout: object.object("layout", layout),
        search: object.object("search", search),
        orders: object.list("orders", lines.order),
        saw_shop: saw_shop_file(&SawShopDraft::new()),
        heads: heads_file(&[const { HeadDraft::new() }; 3]),
        cut: cut_file(&CutDraft::new()),
        run: run_file(&RunDraft::new()),
        supply: supply_file(&SupplyDraft::new()),
        title_block: title_block_file(&TitleBlock::new()),
        set_aside: None,
    }
}

pub(super) fn barrel(object: &mut Object<'_>) -> BarrelFile {
    BarrelFile {
        id: object.id("id"),
        name: object.text("name"),
        shape: object.word("shape"),
        size_mm: object.entered("size_mm"),
        sides: object.entered("sides"),
        height_mm: object.entered("height_mm"),
        face_radius_mm: object.entered("face_radius_mm"),
        corner_radius_mm: object.entered("corner_radius_mm"),
        path: object.long_text("path", MOST_PATH_CHARACTERS),
        axis_across_mm: object.entered("axis_across_mm"),
        axis_up_mm: object.entered("axis_up_mm"),
        coat_mm: object.entered("coat_mm"),
        length_mm: object.entered("length_mm"),
        lead_diameter_mm: object.entered("lead_diameter_mm"),
        finish: finish_file(&FinishDraft::new()),
    }
}

fn slat(object: &mut Object<'_>) -> SlatFile {
    SlatFile {
        id: object.id("id"),
        name: object.text("name"),
        length_mm: object.entered("length_mm"),
        width_mm: object.entered("width_mm"),
        thickness_mm: object.entered("thickness_mm"),
        width_tolerance_mm: object.entered("width_tolerance_mm"),
        thickness_tolerance_mm: object.entered("thickness_tolerance_mm"),
        species: object.optional_id("species"),
        moisture_percent: object.entered("moisture_percent"),
        sawing: object.word("sawing"),
        pack_slats: object.entered("pack_slats"),
        pack_price: object.entered("pack_price"),
        on_hand_slats: object.entered("on_hand_slats"),
        pack_limit: object.entered("pack_limit"),
    }
}

fn species(object: &mut Object<'_>) -> SpeciesFile {
    SpeciesFile {
        id: object.id("id"),
        name: object.text("name"),
        radial_percent: object.entered("radial_percent"),
        tangential_percent: object.entered("tangential_percent"),
        fibre_saturation_percent: object.entered("fibre_saturation_percent"),
    }
}

fn conditions(object: &mut Object<'_>) -> ConditionsFile {
    ConditionsFile {
        source: object.word("source"),
        moisture_percent: object.entered("moisture_percent"),
        temperature_celsius: object.entered("temperature_celsius"),
        humidity_percent: object.entered("humidity_percent"),
    }
}

fn cutter_set(object: &mut Object<'_>) -> CutterSetFile {
    CutterSetFile {
        id: object.id("id"),
        name: object.text("name"),
        pitch_mm: object.entered("pitch_mm"),
        most: object.entered("most"),
        barrel: object.optional_id("barrel"),
        price: object.entered("price"),
    }
}

fn rules(object: &mut Object<'_>) -> RulesFile {
    RulesFile {
        spacing: object.word("spacing"),
        pitch_mm: object.entered("pitch_mm"),
        cutter_set: object.optional_id("cutter_set"),
        most: object.entered("most"),
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
        end_trim_mm: object.entered("end_trim_mm"),
        saw_kerf_mm: object.entered("saw_kerf_mm"),
        slat_rejects_percent: object.entered("slat_rejects_percent"),
        pencil_rejects_percent: object.entered("pencil_rejects_percent"),
    }
}

fn search(object: &mut Object<'_>) -> SearchFile {
    SearchFile {
        turns: object.word("turns"),
        axis: object.word("axis"),
        pairs: object.word("pairs"),
        new_set_price: object.entered("new_set_price"),
        year_gross: object.entered("year_gross"),
    }
}
