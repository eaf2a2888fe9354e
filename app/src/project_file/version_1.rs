//! The reader of version 1.

use std::collections::BTreeMap;

use serde_json::Value;

use super::reader::{Findings, Object, object};
use super::{BarrelFile, FileCause, LayoutFile, OrderFile, ProjectFile, RulesFile, SlatFile};

/// Reads the document of a file of version 1.
pub(super) fn read(document: &Value, findings: &mut Findings) -> ProjectFile {
    let file = object(String::new(), document, findings, project);
    let barrels: Vec<u32> = file.barrels.iter().map(|barrel| barrel.id).collect();
    let slats: Vec<u32> = file.slats.iter().map(|slat| slat.id).collect();
    // With a problem noted, an id may be a stand-in, of which nothing should be said.
    if findings.problems.is_empty() {
        refuse_repeated("barrels", &barrels, findings);
        refuse_repeated("slats", &slats, findings);
        note_unknown(&file, &barrels, &slats, findings);
    }
    file
}

fn project(object: &mut Object<'_>) -> ProjectFile {
    object.pass_over("format");
    object.pass_over("version");
    ProjectFile {
        name: object.text("name"),
        barrels: object.list("barrels", barrel),
        slats: object.list("slats", slat),
        rules: object.object("rules", rules),
        layout: object.object("layout", layout),
        orders: object.list("orders", order),
    }
}

fn barrel(object: &mut Object<'_>) -> BarrelFile {
    BarrelFile {
        id: object.id("id"),
        name: object.text("name"),
        shape: object.word("shape"),
        size_mm: object.entered("size_mm"),
        corner_radius_mm: object.entered("corner_radius_mm"),
        coat_mm: object.entered("coat_mm"),
        length_mm: object.entered("length_mm"),
        lead_diameter_mm: object.entered("lead_diameter_mm"),
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
        pack_slats: object.entered("pack_slats"),
        pack_price: object.entered("pack_price"),
        on_hand_slats: object.entered("on_hand_slats"),
        pack_limit: object.entered("pack_limit"),
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
    }
}

fn layout(object: &mut Object<'_>) -> LayoutFile {
    LayoutFile {
        barrel: object.id("barrel"),
        top: object.id("top"),
        bottom: object.id("bottom"),
        way: object.word("way"),
        turn_degrees: object.entered("turn_degrees"),
    }
}

fn order(object: &mut Object<'_>) -> OrderFile {
    OrderFile {
        barrel: object.id("barrel"),
        gross: object.entered("gross"),
    }
}

fn refuse_repeated(list: &str, ids: &[u32], findings: &mut Findings) {
    let mut places = BTreeMap::new();
    for (place, &id) in ids.iter().enumerate() {
        let first = *places.entry(id).or_insert(place);
        if first < place {
            let first = format!("{list}[{first}]");
            let cause = FileCause::RepeatedId { id, first };
            findings.refuse(format!("{list}[{place}].id"), cause);
        }
    }
}

/// A barrel or a stock that was taken out of the project leaves its name behind in the layout and
/// in the orders. The page shows that and lets another be chosen, so the file must open.
fn note_unknown(file: &ProjectFile, barrels: &[u32], slats: &[u32], findings: &mut Findings) {
    let mut note = |path: String, what, id: u32, known: &[u32]| {
        if !known.contains(&id) {
            findings.note(path, FileCause::UnknownId { id, what });
        }
    };
    let layout = &file.layout;
    note("layout.barrel".into(), "barrel", layout.barrel, barrels);
    note("layout.top".into(), "slat stock", layout.top, slats);
    note("layout.bottom".into(), "slat stock", layout.bottom, slats);
    for (place, order) in file.orders.iter().enumerate() {
        let path = format!("orders[{place}].barrel");
        note(path, "barrel", order.barrel, barrels);
    }
}
