use super::*;
use crate::barrel::BarrelDraft;
use crate::field::Typed;
use crate::quantity::Angle;
use crate::rules::{RulesDraft, Spacing};
use crate::seam::Seam;
use crate::shape::Shape;
use crate::slat::{Slat, SlatDraft};
use proptest::prelude::*;

fn slat(width: f64, thickness: f64, shortfall: f64) -> Slat {
    let mut draft = SlatDraft::new("");
    draft.width = Typed::Number(width);
    draft.thickness = Typed::Number(thickness);
    draft.width_tolerance = Typed::Number(shortfall);
    draft.check().unwrap()
}

/// Hexagons of 6.84 mm bare, corners up and down, on slats of 74 × 5.
fn hexagons(change: impl FnOnce(&mut RulesDraft)) -> LayoutParts {
    let mut rules = RulesDraft::new();
    change(&mut rules);
    LayoutParts {
        barrel: BarrelDraft::new("", Shape::Hexagonal).check().unwrap(),
        turn: Seam::ThroughFaces.turn(6),
        top: slat(74.0, 5.0, 0.0),
        bottom: slat(74.0, 5.0, 0.0),
        rules: rules.check().unwrap(),
        cutter_set: None,
    }
}

#[track_caller]
fn check(parts: &LayoutParts, from: f64, to: f64, expected: &[(f64, u32)]) {
    let steps = staircase(parts, Length::millimetres(from), Length::millimetres(to));
    let shown: Vec<(f64, u32)> = steps
        .iter()
        .map(|step| (step.from.in_millimetres(), step.pencils))
        .collect();
    let alike = |(found, expected): (&(f64, u32), &(f64, u32))| {
        found.1 == expected.1 && (found.0 - expected.0).abs() < 1e-9
    };
    assert_eq!(shown.len(), expected.len(), "{shown:?}");
    assert!(shown.iter().zip(expected).all(alike), "{shown:?}");
}

#[test]
fn each_pencil_more_takes_one_pitch() {
    let expected = [(60.0, 8), (66.76, 9), (74.0, 10), (81.24, 11)];
    check(&hexagons(|_| ()), 60.0, 82.0, &expected);
}

#[test]
fn a_range_that_starts_on_a_step_starts_with_it() {
    check(&hexagons(|_| ()), 74.0, 81.24, &[(74.0, 10), (81.24, 11)]);
}

#[test]
fn spreading_takes_no_other_width() {
    let spread = hexagons(|rules| rules.spacing = Spacing::Spread);
    check(&spread, 70.0, 80.0, &[(70.0, 9), (74.0, 10)]);
}

#[test]
fn a_shortfall_moves_every_step() {
    let mut parts = hexagons(|_| ());
    parts.top = slat(74.0, 5.0, 0.3);
    check(&parts, 70.0, 80.0, &[(70.0, 9), (74.3, 10)]);
}

#[test]
fn a_wide_edge_leaves_no_pencil_on_a_narrow_slat() {
    let wide = hexagons(|rules| rules.edge = Typed::Number(10.0));
    check(&wide, 20.0, 35.0, &[(20.0, 0), (26.84, 1), (34.08, 2)]);
}

#[test]
fn a_pitch_too_narrow_for_the_land_gives_no_second_pencil() {
    let narrow = hexagons(|rules| {
        rules.spacing = Spacing::Given;
        rules.pitch = Typed::Number(7.1);
        rules.edge = Typed::Number(8.0);
    });
    // The first takes 22.84 mm, the second 29.94 mm, but then the land is missing.
    check(&narrow, 20.0, 200.0, &[(20.0, 0), (22.84, 1), (29.94, 0)]);
}

#[test]
fn slats_too_thin_give_none_on_any_width() {
    let mut parts = hexagons(|_| ());
    parts.bottom = slat(74.0, 3.5, 0.0);
    check(&parts, 20.0, 200.0, &[(20.0, 0)]);
}

#[test]
fn a_range_outside_the_field_or_turned_round_has_no_steps() {
    check(&hexagons(|_| ()), 5.0, 19.0, &[]);
    check(&hexagons(|_| ()), 80.0, 70.0, &[]);
}

#[test]
fn a_range_that_is_no_number_is_that_of_the_field() {
    let steps = |from, to| {
        staircase(
            &hexagons(|_| ()),
            Length::millimetres(from),
            Length::millimetres(to),
        )
    };
    assert_eq!(steps(f64::NAN, f64::INFINITY), steps(20.0, 200.0));
}

/// Any set-up, with slats of any two thicknesses and shortfalls.
fn any_parts() -> impl Strategy<Value = LayoutParts> {
    let barrels =
        (0..Shape::ALL.len(), 5.0_f64..20.0, 0.0_f64..1.0).prop_map(|(shape, size, share)| {
            let mut draft = BarrelDraft::new("", Shape::ALL[shape]);
            draft.size = Typed::Number(size);
            draft.corner_radius = Typed::Number(share * size / 2.0);
            draft.check()
        });
    let rules = (0..3_usize, 5.0_f64..20.0, 0.0_f64..1.0, 0.0_f64..12.0);
    let slats = || (3.0_f64..14.0, 0.0_f64..1.0);
    (barrels, -180.0_f64..180.0, slats(), slats(), rules).prop_filter_map(
        "a barrel that can be made",
        |(barrel, turn, top, bottom, (spacing, pitch, land, edge))| {
            let mut rules = RulesDraft::new();
            rules.spacing = Spacing::ALL[spacing];
            rules.pitch = Typed::Number(pitch);
            rules.land = Typed::Number(land);
            rules.edge = Typed::Number(edge);
            Some(LayoutParts {
                barrel: barrel.ok()?,
                turn: Angle::degrees(turn),
                top: slat(74.0, top.0, top.1),
                bottom: slat(74.0, bottom.0, bottom.1),
                rules: rules.check().ok()?,
                cutter_set: None,
            })
        },
    )
}

/// The parts on slats of another width.
fn on_width(parts: &LayoutParts, width: f64) -> LayoutParts {
    let widen = |old: &Slat| {
        let shortfall = old.width() - old.guaranteed_width();
        slat(
            width,
            old.thickness().in_millimetres(),
            shortfall.in_millimetres(),
        )
    };
    LayoutParts {
        top: widen(&parts.top),
        bottom: widen(&parts.bottom),
        ..parts.clone()
    }
}

proptest! {
    #[test]
    fn the_stairs_are_what_is_laid_on_each_width(parts in any_parts(), widths in prop::collection::vec(20.0_f64..200.0, 20)) {
        let steps = staircase(&parts, Length::millimetres(20.0), Length::millimetres(200.0));
        for pair in steps.windows(2) {
            prop_assert!(pair[0].from < pair[1].from && pair[0].pencils != pair[1].pencils);
        }
        let laid = |width: f64| lay_out(&on_width(&parts, width).setup()).pencils();
        for width in widths {
            let step = steps.iter().rev().find(|step| step.from.in_millimetres() <= width).unwrap();
            // A width within rounding of a step may be laid either way.
            prop_assume!(steps.iter().all(|step| (step.from.in_millimetres() - width).abs() > 1e-8));
            prop_assert_eq!(laid(width), step.pencils, "at {}", width);
        }
        for pair in steps.windows(2) {
            let edge = pair[1].from.in_millimetres();
            prop_assert_eq!(laid(edge), pair[1].pencils, "at the step {}", edge);
            prop_assert_eq!(laid(edge - 1e-7), pair[0].pencils, "before the step {}", edge);
        }
    }
}
