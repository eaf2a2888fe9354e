use super::*;
use crate::barrel::BarrelDraft;
use crate::field::Typed;
use crate::layout::lay_out;
use crate::rules::RulesDraft;
use crate::seam::Seam;
use crate::shape::Shape;
use crate::slat::SlatDraft;
use crate::tooling::{CutDraft, HeadDraft};

fn set(
    seam: Seam,
    rules: &RulesDraft,
    top: f64,
    cut: &CutDraft,
) -> Result<Setting, Vec<KnifeProblem>> {
    let barrel = BarrelDraft::new("", Shape::Hexagonal).check().unwrap();
    let bottom = SlatDraft::new("").check().unwrap();
    let mut upper = SlatDraft::new("");
    upper.thickness = Typed::Number(top);
    let upper = upper.check().unwrap();
    let rules = rules.check().unwrap();
    let setup = Setup {
        barrel: &barrel,
        turn: barrel.turn(seam),
        top: &upper,
        bottom: &bottom,
        rules: &rules,
    };
    let heads = [HeadDraft::new().check().unwrap(); 3];
    let conditions = Conditions { moisture: 8.0 };
    set_up(
        &setup,
        &lay_out(&setup),
        &heads,
        &cut.check().unwrap(),
        conditions,
    )
}

fn close(length: Length, millimetres: f64) {
    let found = length.in_millimetres();
    assert!(
        (found - millimetres).abs() < 1e-9,
        "{found} for {millimetres}"
    );
}

#[test]
fn heights_add_up_by_hand() {
    // Bare 6.84 across flats, faces up and down; bottom slat 5, top slat 6; lead 2.2, clearance 0.05,
    // so the grooves are 1.15 deep; overcut 0.2; R 62.5.
    let setting = set(
        Seam::ThroughCorners,
        &RulesDraft::new(),
        6.0,
        &CutDraft::new(),
    )
    .unwrap();
    let [top_groove, bottom_groove, top, bottom] = setting.heights[..] else {
        panic!("four knives")
    };
    close(top_groove.tip, 6.0 - 1.15);
    close(top_groove.axis, 6.0 - 1.15 + 62.5);
    close(bottom_groove.tip, 5.0 - 1.15);
    close(bottom_groove.surface, 5.0);
    close(top.tip, 5.0 - 0.2);
    close(top.surface, 5.0 + 3.42);
    close(top.axis, 4.8 + 62.5);
    close(bottom.tip, 5.2);
    close(bottom.surface, 5.0 - 3.42);
    close(bottom.axis, 5.2 - 62.5);
    close(setting.planed, 6.84);
    close(setting.glued, 11.0);
    close(setting.top.floor, 6.0 - 1.15);
    assert_eq!(setting.moisture, 8.0);
}

#[test]
fn a_lead_over_the_glue_plane_lifts_the_shaping_heads_with_it() {
    let mut rules = RulesDraft::new();
    rules.axis_height = Typed::Number(0.3);
    let setting = set(Seam::ThroughCorners, &rules, 6.0, &CutDraft::new()).unwrap();
    close(setting.heights[2].surface, 5.0 + 0.3 + 3.42);
    close(setting.heights[3].surface, 5.0 + 0.3 - 3.42);
    close(setting.top.groove_depth, 1.45);
    close(setting.bottom.groove_depth, 0.85);
}

#[test]
fn upright_sides_coarse_marks_and_failed_checks_are_minded() {
    let mut cut = CutDraft::new();
    cut.feed = Typed::Number(60.0);
    let setting = set(Seam::ThroughFaces, &RulesDraft::new(), 6.0, &cut).unwrap();
    let rubs = |blade| Caution::Rubbing { blade, sides: 2 };
    assert!(setting.cautions.contains(&rubs(Blade::Top)));
    assert!(setting.cautions.contains(&rubs(Blade::Bottom)));
    let coarse = |caution: &&Caution| matches!(caution, Caution::CoarseMarks { .. });
    assert_eq!(setting.cautions.iter().filter(coarse).count(), 3);
    assert!(!setting.cautions.contains(&Caution::ChecksFail));
    let thin = set(Seam::ThroughCorners, &RulesDraft::new(), 3.0, &cut).unwrap();
    assert_eq!(thin.cautions[0], Caution::ChecksFail);
}

#[test]
fn every_caution_is_a_sentence() {
    let setting = set(
        Seam::ThroughFaces,
        &RulesDraft::new(),
        6.0,
        &CutDraft::new(),
    )
    .unwrap();
    for caution in setting.cautions {
        let text = caution.text();
        assert!(text.ends_with('.') && text.len() > 30, "{text}");
    }
}

#[test]
fn the_list_of_joints_has_a_row_for_each_and_as_many_cells_in_all() {
    let setting = set(
        Seam::ThroughFaces,
        &RulesDraft::new(),
        5.0,
        &CutDraft::new(),
    )
    .unwrap();
    let list = setting.knives_csv(crate::unit::LengthUnit::Inch);
    let joints: usize = setting
        .knives
        .iter()
        .map(|knife| knife.points().len())
        .sum();
    assert_eq!(list.lines().count(), 1 + joints);
    // The names of groove cutters hold a comma, so they are quoted.
    let cells = list.replace("\"Groove cutter, ", "\"Groove cutter ");
    assert!(cells.lines().all(|row| row.matches(',').count() == 5));
    assert!(list.starts_with("Knife,Joint,Across (in),"));
}
