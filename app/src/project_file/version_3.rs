//! The reader of version 3: as version 2, with the accuracy of lines of machines and the layout that
//! was set aside.

use serde_json::Value;

use super::reader::{Findings, Object, object};
use super::version_2::{LINES, Lines};
use super::{AccuracyFile, ErrorFile, LayoutFile, ProjectFile, names, version_1, version_2};

/// Reads the document of a file of version 3.
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
    let file = version_2::parts(object, layout, lines);
    ProjectFile {
        accuracies: object.list("accuracies", accuracy),
        ..file
    }
}

fn layout(object: &mut Object<'_>) -> LayoutFile {
    LayoutFile {
        accuracy: object.id("accuracy"),
        ..version_1::layout(object)
    }
}

fn accuracy(object: &mut Object<'_>) -> AccuracyFile {
    AccuracyFile {
        id: object.id("id"),
        name: object.text("name"),
        groove_position: object.object("groove_position", error),
        shaping_position: object.object("shaping_position", error),
        lead_diameter: object.object("lead_diameter", error),
        groove_head: object.object("groove_head", error),
        groove_depth: object.object("groove_depth", error),
        slat_width: object.object("slat_width", error),
        bottom_thickness: object.object("bottom_thickness", error),
        glue_shift: object.object("glue_shift", error),
        shaping_across: object.object("shaping_across", error),
        shaping_up: object.object("shaping_up", error),
        sigmas: object.entered("sigmas"),
        width_offset_mm: object.entered("width_offset_mm"),
        thickness_offset_mm: object.entered("thickness_offset_mm"),
    }
}

fn error(object: &mut Object<'_>) -> ErrorFile {
    ErrorFile {
        size_mm: object.entered("size_mm"),
        reading: object.word("reading"),
    }
}
