//! Heads, cuts and runs that hold anything, on layouts of any project.

use crate::project::{any_project, any_typed};
use crate::{UNITS, drawn, readable};
use proptest::prelude::*;
use solver::{
    Conditions, CutDraft, CutterQuestion, CutterSet, FieldProblem, HeadDraft, HeadKind, Layout,
    LeadGrade, LengthUnit, Paper, PaperSize, PitchRule, Rules, RunDraft, Setup, Shape, Slat,
    TrueSize, draw_gauge, draw_head, draw_knife, draw_to_scale, lay_out, plan_cutters, run_needs,
    set_up,
};
use tests::shop;

fn any_head() -> impl Strategy<Value = HeadDraft> {
    prop::array::uniform5(any_typed()).prop_map(|[diameter, hook, knives, speed, marked]| {
        HeadDraft {
            diameter,
            hook,
            knives,
            speed,
            marked,
        }
    })
}

fn any_cut() -> impl Strategy<Value = CutDraft> {
    prop::array::uniform3(any_typed()).prop_map(|[feed, overcut, draft]| CutDraft {
        feed,
        overcut,
        draft,
    })
}

fn told(problems: &[FieldProblem]) -> Result<(), TestCaseError> {
    prop_assert!(!problems.is_empty());
    for problem in problems {
        for unit in UNITS {
            prop_assert!(readable(&problem.message(unit)));
        }
    }
    Ok(())
}

/// Everything that is made for the machine is readable, or refused in words.
fn leaves_the_office(
    setup: &Setup<'_>,
    layout: &Layout,
    head: &HeadDraft,
    cut: &CutDraft,
    name: &str,
) -> Result<(), TestCaseError> {
    let conditions = Conditions { moisture: 8.0 };
    match (head.check(), cut.check()) {
        (Ok(head), Ok(cut)) => match set_up(setup, layout, &[head; 3], &cut, conditions) {
            Ok(setting) => {
                let shown = format!("{setting:?}");
                prop_assert!(readable(&shown), "{}", shown);
                for height in &setting.heights {
                    for unit in UNITS {
                        if let Some(head) = draw_head(&setting, height.blade, unit) {
                            drawn(&head)?;
                        }
                    }
                    let tip = solver::figure::length_to_set(
                        height.tip.in_millimetres(),
                        LengthUnit::Inch,
                    );
                    prop_assert!(readable(&tip), "{}", tip);
                }
                for knife in &setting.knives {
                    let file = TrueSize::of_knife(knife, name);
                    prop_assert!(!file.to_svg().contains("NaN"));
                    prop_assert!(file.to_dxf().is_ascii());
                    let paper = Paper {
                        size: PaperSize::A4,
                        landscape: true,
                    };
                    if let Ok(knife) = draw_knife(knife, paper, LengthUnit::Inch) {
                        drawn(&knife.drawing)?;
                    }
                }
            }
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                for problem in problems {
                    prop_assert!(readable(&problem.to_string()), "{}", problem);
                }
            }
        },
        (head, cut) => {
            head.err().iter().try_for_each(|problems| told(problems))?;
            cut.err().iter().try_for_each(|problems| told(problems))?;
        }
    }
    for size in PaperSize::ALL {
        let paper = Paper {
            size,
            landscape: false,
        };
        for unit in UNITS {
            match draw_to_scale(setup, layout, paper, unit) {
                Ok(section) => drawn(&section.drawing)?,
                Err(problem) => prop_assert!(readable(&problem.message(unit))),
            }
            match draw_gauge(setup, layout, paper, unit) {
                Ok(gauge) => drawn(&gauge)?,
                Err(problem) => prop_assert!(readable(&problem.message(unit))),
            }
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn any_project_leaves_the_office_or_is_refused(
        project in any_project(), head in any_head(), cut in any_cut(), name in "\\PC{0,20}",
    ) {
        if let Ok(parts) = project.check_layout() {
            let setup = parts.setup();
            leaves_the_office(&setup, &lay_out(&setup), &head, &cut, &name)?;
            leaves_the_office(&setup, &lay_out(&setup), &HeadDraft::new(), &cut, &name)?;
        }
    }

    #[test]
    fn any_project_is_set_up_and_its_cutters_planned_or_it_is_refused(draft in any_project()) {
        let (parts, run, plan) = (draft.check_setting(), draft.check_run(), draft.plan_cutters());
        if draft.check().is_ok() {
            let missing = draft.barrel_place(draft.layout.barrel).is_none()
                || draft.slat_place(draft.layout.top).is_none()
                || draft.slat_place(draft.layout.bottom).is_none();
            prop_assert!((missing || parts.is_ok()) && run.is_ok() && plan.is_ok());
        }
        let found = [parts.err(), run.err(), plan.err()];
        for problem in found.iter().flatten().flatten() {
            prop_assert!(!problem.problem.message(LengthUnit::Inch).is_empty());
        }
    }

    #[test]
    fn any_shape_at_any_turn_has_knives_or_is_refused(
        shape in prop::sample::select(vec![Shape::Round, Shape::Hexagonal, Shape::Triangular, Shape::Oval, Shape::Flat]),
        size in 4.0_f64..14.0, turn in -360.0_f64..360.0, pitch in 3.0_f64..20.0, axis in -1.5_f64..1.5,
        diameter in 20.0_f64..300.0, hook in 0.0_f64..89.0,
    ) {
        let barrel = shop::barrel(shape, size, size / 20.0);
        let slat: Slat = shop::slat(74.0, 5.0);
        let rules = Rules {
            spacing: PitchRule::Given(solver::Length::millimetres(pitch)),
            axis_height: solver::Length::millimetres(axis),
            ..shop::rules(|_| ())
        };
        let setup = Setup { barrel: &barrel, turn: solver::Angle::degrees(turn), top: &slat, bottom: &slat, rules: &rules };
        let mut head = HeadDraft::new();
        head.diameter = solver::Typed::Number(diameter);
        head.hook = solver::Typed::Number(hook);
        leaves_the_office(&setup, &lay_out(&setup), &head, &CutDraft::new(), "")?;
    }

    #[test]
    fn any_run_is_reckoned_or_refused(typed in prop::array::uniform12(any_typed()), yields in prop::array::uniform5(any_typed())) {
        let [gross, lead_tolerance, lead_density, lead_breakage, glue_spread, clamp_pressure, press_hours, press_load, coat_solids, coat_passes, specific_gravity, volumetric_shrinkage] = typed;
        let draft = RunDraft {
            gross, grade: LeadGrade::HB, lead_tolerance, lead_density, lead_breakage, glue_spread, clamp_pressure,
            press_hours, press_load, coat_solids, coat_passes, specific_gravity, volumetric_shrinkage, yields,
        };
        let barrel = shop::barrel(Shape::Hexagonal, 7.0, 0.5);
        let (slat, rules) = (shop::slat(74.0, 5.0), shop::rules(|_| ()));
        let setup = Setup { barrel: &barrel, turn: solver::Angle::ZERO, top: &slat, bottom: &slat, rules: &rules };
        match draft.check() {
            Ok(run) => {
                let needs = run_needs(&setup, &lay_out(&setup), &run, Conditions { moisture: 8.0 });
                let shown = format!("{needs:?}");
                prop_assert!(readable(&shown), "{}", shown);
            }
            Err(problems) => {
                let problems: Vec<_> = problems.into_iter().map(|problem| problem.problem).collect();
                told(&problems)?;
            }
        }
    }

    #[test]
    fn any_order_book_has_a_plan_of_cutters(draft in any_project(), price in prop::option::of(0_i64..1_000_000)) {
        if let Ok(project) = draft.check() {
            let sets: Vec<CutterSet> = draft.cutter_sets.iter().filter_map(|set| set.draft.check().ok()).collect();
            let barrels: Vec<_> = draft.barrels.iter().map(|barrel| barrel.id).collect();
            let question = CutterQuestion { project: &project, barrels: &barrels, sets: &sets, new_price: price };
            let plan = plan_cutters(&question);
            prop_assert_eq!(plan.orders.len(), project.orders.len());
            prop_assert!(plan.proposals.iter().all(|proposal| proposal.saving >= 0.0));
        }
    }
}

#[test]
fn the_heads_come_in_the_order_of_the_work() {
    let places: Vec<usize> = HeadKind::ALL.iter().map(|kind| *kind as usize).collect();
    assert_eq!(places, [0, 1, 2]);
}
