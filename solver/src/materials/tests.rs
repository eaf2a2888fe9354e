use super::*;
use crate::barrel::BarrelDraft;
use crate::field::{Field, Typed};
use crate::layout::{Layout, Setup, WoodClass, lay_out};
use crate::rules::RulesDraft;
use crate::seam::Seam;
use crate::shape::Shape;
use crate::slat::SlatDraft;
use crate::wood::Conditions;
use proptest::prelude::*;

/// What a run takes of round pencils, nine or ten of a sandwich of 74 × 5.
fn needs(run: &RunDraft) -> (RunNeeds, Layout) {
    let barrel = BarrelDraft::new("", Shape::Round).check().unwrap();
    let slat = SlatDraft::new("").check().unwrap();
    let rules = RulesDraft::new().check().unwrap();
    let setup = Setup {
        barrel: &barrel,
        turn: barrel.turn(Seam::AnyWay),
        top: &slat,
        bottom: &slat,
        rules: &rules,
    };
    let layout = lay_out(&setup);
    let conditions = Conditions { moisture: 12.0 };
    let run = run.check().unwrap();
    let needs = run_needs(&setup, &layout, &run, conditions).unwrap();
    (needs, layout)
}

#[test]
fn every_bad_field_is_reported_at_once() {
    let mut draft = RunDraft::new();
    draft.gross = Typed::Number(-1.0);
    draft.glue_spread = Typed::Number(0.0);
    draft.press_load = Typed::Number(0.0);
    draft.coat_solids = Typed::Text("thin".into());
    draft.yields[4] = Typed::Number(100.5);
    let problems = draft.check().unwrap_err();
    let fields: Vec<_> = problems
        .iter()
        .map(|problem| (problem.problem.field, problem.stage))
        .collect();
    assert_eq!(
        fields,
        [
            (Field::RunGross, None),
            (Field::GlueSpread, None),
            (Field::PressLoad, None),
            (Field::CoatSolids, None),
            (Field::StageYield, Some(Stage::Finishing))
        ]
    );
}

#[test]
fn without_rejects_every_pencil_laid_is_one_wanted() {
    let mut draft = RunDraft::new();
    draft.yields = [const { Typed::Number(100.0) }; 5];
    draft.lead_breakage = Typed::Number(0.0);
    draft.gross = Typed::Number(10.0);
    let (needs, layout) = needs(&draft);
    let each = u64::from(layout.pencils());
    assert_eq!(needs.sandwiches, 1440_u64.div_ceil(each));
    assert_eq!(needs.leads.bought, needs.sandwiches * each);
    assert_eq!(needs.wood.slats, 2 * needs.sandwiches);
}

#[test]
fn nothing_wanted_takes_nothing() {
    let mut draft = RunDraft::new();
    draft.gross = Typed::Number(0.0);
    let (needs, _) = needs(&draft);
    assert_eq!(
        (needs.sandwiches, needs.leads.bought, needs.clamp.loads),
        (0, 0, 0)
    );
    assert_eq!((needs.glue.mass, needs.coat.litres), (0.0, 0.0));
}

#[test]
fn the_coat_of_a_round_pencil_is_a_ring() {
    // ⌀7.3 over a coat of 0.08: π·(3.65² − 3.57²)·length / 0.4, of each pencil.
    let (needs, _) = needs(&RunDraft::new());
    let ring = std::f64::consts::PI * (3.65 * 3.65 - 3.57 * 3.57);
    let length = needs.leads.length.in_millimetres();
    let gross = ring * length / 0.4 / 1e6 * 144.0;
    assert!((needs.coat.gross - gross).abs() < 1e-9);
    assert!((needs.coat.pass.in_millimetres() - 0.016).abs() < 1e-12);
}

#[test]
fn a_layout_that_does_not_fit_takes_nothing_at_all() {
    let barrel = BarrelDraft::new("", Shape::Round).check().unwrap();
    let mut thin = SlatDraft::new("");
    thin.thickness = Typed::Number(2.0);
    let thin = thin.check().unwrap();
    let rules = RulesDraft::new().check().unwrap();
    let setup = Setup {
        barrel: &barrel,
        turn: barrel.turn(Seam::AnyWay),
        top: &thin,
        bottom: &thin,
        rules: &rules,
    };
    let run = RunDraft::new().check().unwrap();
    let conditions = Conditions { moisture: 8.0 };
    assert_eq!(run_needs(&setup, &lay_out(&setup), &run, conditions), None);
}

#[test]
fn chips_and_strips_are_those_of_the_balance() {
    let mut draft = RunDraft::new();
    draft.yields = [const { Typed::Number(100.0) }; 5];
    let (needs, layout) = needs(&draft);
    let balance = layout.balance().unwrap();
    let pencils = balance.volume(WoodClass::Pencils) * needs.sandwiches as f64;
    let all = needs.wood.chips + needs.wood.strips + pencils;
    let bought = balance.bought() * needs.sandwiches as f64;
    assert!((all / bought - 1.0).abs() < 1e-12);
    let kilograms = bought.in_cubic_millimetres() / 1e9 * needs.wood.density;
    assert!((needs.wood.mass / kilograms - 1.0).abs() < 1e-12);
}

#[test]
fn grades_run_from_soft_to_hard() {
    let labels: Vec<&str> = LeadGrade::all().map(LeadGrade::label).collect();
    assert_eq!(labels.len(), 21);
    assert_eq!((labels[0], labels[9], labels[20]), ("9B", "HB", "Coloured"));
    for pair in LeadGrade::all().take(20).collect::<Vec<_>>().windows(2) {
        // The harder, the stronger.
        if let (Some(soft), Some(hard)) = (pair[0].least_strength(), pair[1].least_strength()) {
            assert!(soft <= hard);
        }
    }
}

proptest! {
    #[test]
    fn every_stage_is_given_just_enough(
        gross in 0.0_f64..2_000.0, yields in prop::array::uniform5(1.0_f64..=100.0),
    ) {
        let mut draft = RunDraft::new();
        draft.gross = Typed::Number(gross);
        draft.yields = yields.map(Typed::Number);
        let (needs, layout) = needs(&draft);
        let mut next = needs.pencils;
        for count in needs.stages.iter().rev() {
            let share = yields[count.stage as usize] / 100.0;
            prop_assert!(count.taken as f64 * share >= count.needed as f64 * (1.0 - 1e-8));
            // One piece less would not do, or one sandwich less, or one slat of each side.
            let step = match count.stage {
                Stage::Shaping => u64::from(layout.pencils()),
                Stage::Grooving => 2,
                _ => 1,
            };
            if count.taken >= step {
                prop_assert!(((count.taken - step) as f64) * share < count.needed as f64);
            }
            let expected = match count.stage {
                Stage::Gluing => next.div_ceil(u64::from(layout.pencils())),
                Stage::Grooving => next * 2,
                _ => next,
            };
            prop_assert_eq!(count.needed, expected);
            next = count.taken;
        }
    }
}
