//! The reader of version 5: as version 4, with the heads, the cut and the run.

use serde_json::Value;

use super::reader::{Findings, Object, object};
use super::version_2::{LINES, Lines};
use super::{CutFile, HeadFile, HeadsFile, ProjectFile, RunFile, YieldsFile, names, version_4};

/// Reads the document of a file of version 5.
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
    let file = version_4::parts(object, lines);
    ProjectFile {
        heads: object.object("heads", heads),
        cut: object.object("cut", cut),
        run: object.object("run", run),
        ..file
    }
}

fn heads(object: &mut Object<'_>) -> HeadsFile {
    HeadsFile {
        groove: object.object("groove", head),
        top: object.object("top", head),
        bottom: object.object("bottom", head),
    }
}

fn head(object: &mut Object<'_>) -> HeadFile {
    HeadFile {
        cutting_diameter_mm: object.entered("cutting_diameter_mm"),
        hook_degrees: object.entered("hook_degrees"),
        cutting_knives: object.entered("cutting_knives"),
        speed_per_minute: object.entered("speed_per_minute"),
        marked_speed_per_minute: object.entered("marked_speed_per_minute"),
    }
}

fn cut(object: &mut Object<'_>) -> CutFile {
    CutFile {
        feed_metres_per_minute: object.entered("feed_metres_per_minute"),
        overcut_mm: object.entered("overcut_mm"),
        overcut_draft_degrees: object.entered("overcut_draft_degrees"),
    }
}

fn run(object: &mut Object<'_>) -> RunFile {
    RunFile {
        gross: object.entered("gross"),
        lead_grade: object.lead_grade("lead_grade"),
        lead_tolerance_mm: object.entered("lead_tolerance_mm"),
        lead_grams_per_cm3: object.entered("lead_grams_per_cm3"),
        lead_breakage_percent: object.entered("lead_breakage_percent"),
        glue_grams_per_m2: object.entered("glue_grams_per_m2"),
        clamp_megapascals: object.entered("clamp_megapascals"),
        press_hours: object.entered("press_hours"),
        press_load: object.entered("press_load"),
        coat_solids_percent: object.entered("coat_solids_percent"),
        coat_passes: object.entered("coat_passes"),
        specific_gravity: object.entered("specific_gravity"),
        volumetric_percent: object.entered("volumetric_percent"),
        yields_percent: object.object("yields_percent", yields),
    }
}

fn yields(object: &mut Object<'_>) -> YieldsFile {
    YieldsFile {
        grooving: object.entered("grooving"),
        gluing: object.entered("gluing"),
        shaping: object.entered("shaping"),
        coating: object.entered("coating"),
        finishing: object.entered("finishing"),
    }
}
