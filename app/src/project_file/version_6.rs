//! The reader of version 6: as version 5, with how pencils are finished, what an order plan rests on,
//! when orders are due, and what a title block tells.

use serde_json::Value;

use super::reader::{Findings, Object, object};
use super::version_2::{self, Lines};
use super::{
    BarrelFile, FinishFile, OfferFile, OrderFile, PeriodFile, ProjectFile, SawnSlatsFile,
    SupplyFile, TierFile, TitleBlockFile, names, version_1, version_5,
};

/// Reads the document of a file of version 6.
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
    let file = version_5::parts(object, Lines { barrel, order });
    ProjectFile {
        supply: object.object("supply", supply),
        title_block: object.object("title_block", title_block),
        ..file
    }
}

pub(super) fn barrel(object: &mut Object<'_>) -> BarrelFile {
    BarrelFile {
        finish: object.object("finish", finish),
        ..version_2::barrel(object)
    }
}

fn finish(object: &mut Object<'_>) -> FinishFile {
    FinishFile {
        point_degrees: object.entered("point_degrees"),
        coat_colour: object.colour("coat_colour"),
        coat_grams_per_cm3: object.entered("coat_grams_per_cm3"),
        lead_colour: object.colour("lead_colour"),
        dip_mm: object.entered("dip_mm"),
        dip_colour: object.colour("dip_colour"),
        imprint: object.text("imprint"),
        imprint_face: object.entered("imprint_face"),
        imprint_margin_mm: object.entered("imprint_margin_mm"),
        imprint_end_mm: object.entered("imprint_end_mm"),
        face_fall_mm: object.entered("face_fall_mm"),
        tin_width_mm: object.entered("tin_width_mm"),
        tin_height_mm: object.entered("tin_height_mm"),
        tin_length_mm: object.entered("tin_length_mm"),
    }
}

fn order(object: &mut Object<'_>) -> OrderFile {
    OrderFile {
        due_period: object.entered("due_period"),
        on_hand_pencils: object.entered("on_hand_pencils"),
        ..version_1::order(object)
    }
}

fn title_block(object: &mut Object<'_>) -> TitleBlockFile {
    TitleBlockFile {
        owner: object.text("owner"),
        number: object.text("number"),
        title: object.text("title"),
        created_by: object.text("created_by"),
        approved_by: object.text("approved_by"),
        date_of_issue: object.text("date_of_issue"),
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
        chips_tonne_price: object.entered("chips_tonne_price"),
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
