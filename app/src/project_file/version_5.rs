//! The reader of version 5: as version 4, with the heads, the cut, the run, what an order plan rests
//! on, and when orders are due.

use serde_json::Value;

use super::reader::{Findings, Object, object};
use super::{
    CutFile, HeadFile, HeadsFile, OfferFile, OrderFile, PeriodFile, ProjectFile, RunFile,
    SawnSlatsFile, SupplyFile, TierFile, YieldsFile, names, version_1, version_4,
};

/// Reads the document of a file of version 5.
pub(super) fn read(document: &Value, findings: &mut Findings) -> ProjectFile {
    let file = object(String::new(), document, findings, project);
    names::check(&file, findings);
    file
}

fn project(object: &mut Object<'_>) -> ProjectFile {
    object.pass_over("format");
    object.pass_over("version");
    let file = parts(object);
    ProjectFile {
        set_aside: object.optional_object("set_aside", parts).map(Box::new),
        ..file
    }
}

/// A project without what was set aside, which may itself be one that was.
fn parts(object: &mut Object<'_>) -> ProjectFile {
    let file = version_4::parts(object, order);
    ProjectFile {
        heads: object.object("heads", heads),
        cut: object.object("cut", cut),
        run: object.object("run", run),
        supply: object.object("supply", supply),
        ..file
    }
}

fn order(object: &mut Object<'_>) -> OrderFile {
    OrderFile {
        due_period: object.entered("due_period"),
        ..version_1::order(object)
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

fn supply(object: &mut Object<'_>) -> SupplyFile {
    SupplyFile {
        periods: object.list("periods", period),
        offers: object.list("offers", offer),
        sawn_slats: object.list("sawn_slats", sawn_slats),
        machine_hour_price: object.entered("machine_hour_price"),
        sandwich_seconds: object.entered("sandwich_seconds"),
        changeover_cost: object.entered("changeover_cost"),
        changeover_minutes: object.entered("changeover_minutes"),
        thousand_pencils_holding: object.entered("thousand_pencils_holding"),
        thousand_slats_holding: object.entered("thousand_slats_holding"),
        thousand_leads_price: object.entered("thousand_leads_price"),
        thousand_sandwiches_glue_price: object.entered("thousand_sandwiches_glue_price"),
        thousand_pencils_coat_price: object.entered("thousand_pencils_coat_price"),
        least_certified_percent: object.entered("least_certified_percent"),
        most_pencils_stored: object.entered("most_pencils_stored"),
        most_slats_stored: object.entered("most_slats_stored"),
        aim: object.word("aim"),
        most_cost: object.entered("most_cost"),
        most_timber_m3: object.entered("most_timber_m3"),
        most_changeovers: object.entered("most_changeovers"),
    }
}

fn period(object: &mut Object<'_>) -> PeriodFile {
    PeriodFile {
        name: object.text("name"),
        machine_hours: object.entered("machine_hours"),
    }
}

fn offer(object: &mut Object<'_>) -> OfferFile {
    OfferFile {
        id: object.id("id"),
        supplier: object.text("supplier"),
        slat: object.id("slat"),
        pack_slats: object.entered("pack_slats"),
        tiers: object.list("tiers", tier),
        pricing: object.word("pricing"),
        order_cost: object.entered("order_cost"),
        least_packs: object.entered("least_packs"),
        most_packs: object.entered("most_packs"),
        pack_limit: object.entered("pack_limit"),
        lead_periods: object.entered("lead_periods"),
        certified: object.truth("certified"),
    }
}

fn tier(object: &mut Object<'_>) -> TierFile {
    TierFile {
        from_packs: object.entered("from_packs"),
        pack_price: object.entered("pack_price"),
    }
}

fn sawn_slats(object: &mut Object<'_>) -> SawnSlatsFile {
    SawnSlatsFile {
        slat: object.id("slat"),
        thousand_cost: object.entered("thousand_cost"),
        most_slats: object.entered("most_slats"),
        certified: object.truth("certified"),
    }
}
