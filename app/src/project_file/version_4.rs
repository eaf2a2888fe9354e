//! The reader of version 4: as version 3, with the saw shop.

use serde_json::Value;

use super::reader::{Findings, Object, object};
use super::version_2::{LINES, Lines};
use super::{BlankFile, PlankFile, ProjectFile, SawShopFile, names, version_3};

/// Reads the document of a file of version 4.
pub(super) fn read(document: &Value, findings: &mut Findings) -> ProjectFile {
    let file = object(String::new(), document, findings, project);
    names::check(&file, findings);
    file
}

fn project(object: &mut Object<'_>) -> ProjectFile {
    object.pass_over("format");
    object.pass_over("version");
    let file = parts(object, LINES);
    let aside = object.optional_object("set_aside", |object| parts(object, LINES));
    ProjectFile {
        set_aside: aside.map(Box::new),
        ..file
    }
}

/// A project without what was set aside, which may itself be one that was; with the lists of
/// barrels and orders as later versions know them.
pub(super) fn parts(object: &mut Object<'_>, lines: Lines) -> ProjectFile {
    let file = version_3::parts(object, lines);
    ProjectFile {
        saw_shop: object.object("saw_shop", saw_shop),
        ..file
    }
}

fn saw_shop(object: &mut Object<'_>) -> SawShopFile {
    SawShopFile {
        planks: object.list("planks", plank),
        blanks: object.list("blanks", blank),
        crosscut_kerf_mm: object.entered("crosscut_kerf_mm"),
        rip_kerf_mm: object.entered("rip_kerf_mm"),
        moisture_percent: object.entered("moisture_percent"),
        shortest_offcut_mm: object.entered("shortest_offcut_mm"),
        offcut_price_per_metre: object.entered("offcut_price_per_metre"),
        aim: object.word("aim"),
    }
}

fn plank(object: &mut Object<'_>) -> PlankFile {
    PlankFile {
        id: object.id("id"),
        name: object.text("name"),
        length_mm: object.entered("length_mm"),
        width_mm: object.entered("width_mm"),
        thickness_mm: object.entered("thickness_mm"),
        price: object.entered("price"),
        on_hand: object.entered("on_hand"),
        end_trim_mm: object.entered("end_trim_mm"),
        edge_trim_mm: object.entered("edge_trim_mm"),
    }
}

fn blank(object: &mut Object<'_>) -> BlankFile {
    BlankFile {
        id: object.id("id"),
        name: object.text("name"),
        slat: object.optional_id("slat"),
        length_mm: object.entered("length_mm"),
        width_mm: object.entered("width_mm"),
        thickness_mm: object.entered("thickness_mm"),
        length_dressing_mm: object.entered("length_dressing_mm"),
        width_dressing_mm: object.entered("width_dressing_mm"),
        thickness_dressing_mm: object.entered("thickness_dressing_mm"),
        wanted: object.entered("wanted"),
        over_worth: object.entered("over_worth"),
        most_over: object.entered("most_over"),
    }
}
