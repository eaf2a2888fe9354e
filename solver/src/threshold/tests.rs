//! Thresholds against formulas worked out by hand, and against laying out in between.

mod any_project;
mod checks;
mod counts;
mod gains;
mod rise_and_fall;

use super::*;
use crate::barrel::BarrelDraft;
use crate::field::{Field, Typed};
use crate::project::{Entry, Id, LayoutDraft, Way};
use crate::rules::RulesDraft;
use crate::seam::Seam;
use crate::search_rules::SearchDraft;
use crate::shape::Shape;
use crate::slat::SlatDraft;
use crate::wood::ConditionsDraft;

/// One barrel on one stock of 74 × 5, 100.00 a pack of 600; a second stock lies beside it.
fn project(shape: Shape, seam: Seam) -> ProjectDraft {
    let entry = |id, name| Entry {
        id: Id(id),
        draft: SlatDraft::new(name),
    };
    ProjectDraft {
        name: String::new(),
        barrels: vec![Entry {
            id: Id(7),
            draft: BarrelDraft::new("", shape),
        }],
        slats: vec![entry(3, "other"), entry(4, "usual")],
        rules: RulesDraft::new(),
        layout: LayoutDraft {
            barrel: Id(7),
            top: Id(4),
            bottom: Id(4),
            way: Way::Usual(seam),
            turn: Typed::Number(0.0),
            accuracy: Id(0),
        },
        orders: Vec::new(),
        species: Vec::new(),
        conditions: ConditionsDraft::new(),
        cutter_sets: Vec::new(),
        search: SearchDraft::new(),
        saw_shop: crate::SawShopDraft::new(),
        heads: [const { crate::HeadDraft::new() }; 3],
        cut: crate::CutDraft::new(),
        run: crate::RunDraft::new(),
        supply: crate::SupplyDraft::new(),
        title_block: crate::TitleBlock::new(),
        set_aside: None,
        accuracies: Vec::new(),
    }
}

/// Hexagons of 7.0 mm, corners 0.5, coat 0.08, corners up and down: ten on 74 mm with nothing
/// to spare.
fn hexagons() -> ProjectDraft {
    project(Shape::Hexagonal, Seam::ThroughFaces)
}

fn row(project: &ProjectDraft, field: Field) -> Threshold {
    thresholds(project, 1000.0)
        .unwrap()
        .into_iter()
        .find(|row| row.input.field == field)
        .unwrap()
}

/// A change of the count.
#[track_caller]
fn count(change: &Change, at: f64, pencils: (u32, u32)) {
    assert!((change.at - at).abs() < 2e-7, "at {}, not {at}", change.at);
    assert_eq!((change.across_before, change.across_after), pencils);
    assert!(change.flipped.is_empty(), "{:?}", change.flipped);
}

/// A change of one check.
#[track_caller]
fn flip(change: &Change, at: f64, rule: Rule, outcome: Outcome) {
    assert!((change.at - at).abs() < 2e-7, "at {}, not {at}", change.at);
    assert_eq!(change.flipped, [(rule, outcome)]);
}

#[test]
fn a_pencil_more_saves_its_share_of_the_slats() {
    // 100.00 for 600 slats; 288 slats of a gross over ten and over eleven.
    let up = row(&hexagons(), Field::SlatWidth).up[0].worth.unwrap();
    let per_gross = 288.0 * 10_000.0 / 600.0 * (1.0 / 10.0 - 1.0 / 11.0);
    assert!((up.per_gross - per_gross).abs() < 1e-9, "{}", up.per_gross);
    assert!((up.per_year - 1000.0 * per_gross).abs() < 1e-6);
    assert!(
        row(&hexagons(), Field::SlatWidth).down[0]
            .worth
            .unwrap()
            .per_gross
            < 0.0
    );
}

#[test]
fn each_slat_of_a_pair_has_its_own_price() {
    let mut project = hexagons();
    project.layout.bottom = Id(3);
    project.slats[0].draft.pack_price = Typed::Number(300.0);
    let worth = row(&project, Field::AcrossFlats).up[0].worth.unwrap();
    let per_gross = 144.0 * 40_000.0 / 600.0 * (1.0 / 10.0 - 1.0 / 9.0);
    assert!(
        (worth.per_gross - per_gross).abs() < 1e-9,
        "{}",
        worth.per_gross
    );
}

#[test]
fn a_layout_that_cannot_be_laid_out_today_is_refused() {
    let mut project = hexagons();
    project.rules.land = Typed::Text("wide".into());
    project.barrels[0].draft.coat = Typed::Number(-1.0);
    assert_eq!(
        thresholds(&project, 1.0).unwrap_err(),
        project.check_layout().unwrap_err()
    );
    project = hexagons();
    project.slats.clear();
    assert_eq!(thresholds(&project, 1.0), Err(Vec::new()));
}

/// A block of 8 mm with a knob of 1 mm at the end of a neck 0.4 mm thick.
const KNOB: &str = "M0 0 H8 V3.8 H8.6 V3.5 H9.6 V4.5 H8.6 V4.2 H8 V8 H0 Z";

/// A horseshoe that is open below.
const HORSESHOE: &str = "M0 0 H3 V8 H9 V0 H12 V12 H0 Z";
