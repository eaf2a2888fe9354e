//! What every drawing keeps to, whatever is drawn on whatever sheet.

use super::*;
use crate::barrel::{Barrel, BarrelDraft};
use crate::field::Typed;
use crate::layout::{Setup, lay_out};
use crate::quantity::Angle;
use crate::rules::{Rules, RulesDraft, Spacing};
use crate::seam::Seam;
use crate::shape::Shape as BarrelShape;
use crate::slat::{Slat, SlatDraft};
use proptest::prelude::*;

mod cut;
mod good_map;
mod handles;
mod head;

fn barrel(shape: BarrelShape, size: f64, corner: f64) -> Option<Barrel> {
    let mut draft = BarrelDraft::new("", shape);
    draft.size = Typed::Number(size);
    draft.corner_radius = Typed::Number(corner);
    draft.path = "M0 3 C0 1 2 0 4 0 S8 1 8 3 L7 6 H1 Z".to_owned();
    draft.check().ok()
}

fn slat(width: f64, thickness: f64) -> Slat {
    let mut draft = SlatDraft::new("");
    draft.width = Typed::Number(width);
    draft.thickness = Typed::Number(thickness);
    draft.check().unwrap()
}

fn rules(change: impl FnOnce(&mut RulesDraft)) -> Rules {
    let mut draft = RulesDraft::new();
    change(&mut draft);
    draft.check().unwrap()
}

/// The numbers of path data.
fn numbers(path: &str) -> Vec<f64> {
    path.split(|sign: char| sign.is_ascii_uppercase() || sign == ' ')
        .filter(|number| !number.is_empty())
        .map(|number| number.parse().unwrap())
        .collect()
}

/// The straight strokes of path data that holds moves and lines only.
fn strokes(path: &str) -> Vec<[f64; 4]> {
    path.split('M')
        .flat_map(|run| {
            let points = numbers(run);
            let ends: Vec<[f64; 2]> = points.chunks(2).map(|at| [at[0], at[1]]).collect();
            let pairs = ends.windows(2);
            pairs
                .map(|pair| [pair[0][0], pair[0][1], pair[1][0], pair[1][1]])
                .collect::<Vec<_>>()
        })
        .collect()
}

/// Whether a stroke enters a rectangle by more than two pixels: its number stays readable.
fn runs_through([x1, y1, x2, y2]: [f64; 4], area: &Area) -> bool {
    let inside = |share: f64| {
        let (x, y) = (x1 + (x2 - x1) * share, y1 + (y2 - y1) * share);
        area.x + 2.0 < x
            && x < area.x + area.width - 2.0
            && area.y + 2.0 < y
            && y < area.y + area.height - 2.0
    };
    (0..=400).any(|step| inside(f64::from(step) / 400.0))
}

/// Everything a drawing promises; `driving` are the sizes that can be typed over.
fn check(drawing: &Drawing, driving: &[Size]) {
    let shown = format!("{drawing:?}");
    assert!(!shown.contains("NaN") && !shown.contains("inf"), "{shown}");
    for shape in &drawing.shapes {
        assert!(!shape.path.is_empty(), "{:?} is empty", shape.style);
    }
    let texts = || {
        drawing
            .dimensions
            .iter()
            .map(|dimension| (dimension.size, dimension.area))
    };
    for (k, (size, area)) in texts().enumerate() {
        let on_sheet = area.x >= 0.0
            && area.y >= 0.0
            && area.x + area.width <= drawing.width
            && area.y + area.height <= drawing.height;
        assert!(on_sheet, "{size:?} lies off the sheet: {area:?}");
        for (other_size, other) in texts().skip(k + 1) {
            assert!(!area.overlaps(&other), "{size:?} overlaps {other_size:?}");
        }
        for dimension in &drawing.dimensions {
            for stroke in strokes(&dimension.lines) {
                let through = runs_through(stroke, &area);
                assert!(
                    !through,
                    "a line of {:?} runs through {size:?}",
                    dimension.size
                );
            }
        }
    }
    for dimension in &drawing.dimensions {
        for path in [&dimension.lines, &dimension.arrows] {
            for at in numbers(path).chunks(2) {
                let on_sheet = (0.0..=drawing.width).contains(&at[0])
                    && (0.0..=drawing.height).contains(&at[1]);
                assert!(
                    on_sheet,
                    "a line of {:?} leaves the sheet at {at:?}",
                    dimension.size
                );
            }
        }
    }
    for (k, handle) in drawing.handles.iter().enumerate() {
        check_handle(handle, drawing);
        for other in &drawing.handles[k + 1..] {
            let clear = !handle.area.overlaps(&other.area);
            assert!(clear, "{:?} and {:?} overlap", handle.grip, other.grip);
        }
    }
    for &size in driving {
        let placed = texts().filter(|(placed, _)| *placed == size).count();
        let asked_elsewhere = drawing
            .unplaced
            .iter()
            .filter(|other| **other == size)
            .count();
        assert_eq!(placed + asked_elsewhere, 1, "{size:?}");
    }
}

/// A handle lies on the sheet, can be hit, and covers no number.
fn check_handle(handle: &Handle, drawing: &Drawing) {
    let (grip, area) = (handle.grip, handle.area);
    assert!(
        area.width >= 24.0 && area.height >= 24.0,
        "{grip:?} {area:?}"
    );
    assert!(
        area.x <= handle.x && handle.x <= area.x + area.width,
        "{grip:?} {area:?}"
    );
    assert!(
        area.x >= 0.0 && area.x + area.width <= drawing.width,
        "{grip:?} {area:?}"
    );
    assert!(
        area.y >= 0.0 && area.y + area.height <= drawing.height,
        "{grip:?} {area:?}"
    );
    for path in [
        &handle.beam,
        &handle.fixed_jaw,
        &handle.jaw,
        &handle.knurl,
        &handle.reach,
    ] {
        for at in numbers(path.trim_end_matches('Z')).chunks(2) {
            let on_sheet =
                (0.0..=drawing.width).contains(&at[0]) && (0.0..=drawing.height).contains(&at[1]);
            assert!(on_sheet, "{grip:?} leaves the sheet at {at:?}");
        }
    }
    for dimension in &drawing.dimensions {
        let clear = !area.overlaps(&dimension.area);
        assert!(
            clear,
            "{grip:?} covers {:?}: {area:?} {:?}",
            dimension.size, dimension.area
        );
    }
}

fn driving(setup: &Setup<'_>, across: u32) -> Vec<Size> {
    let mut sizes = vec![
        Size::SlatWidth,
        Size::TopThickness,
        Size::BottomThickness,
        Size::Barrel,
        Size::Lead,
    ];
    if setup.barrel.shape().has_corners() {
        sizes.push(Size::CornerRadius);
    }
    if setup.top.width() != setup.bottom.width() {
        sizes.push(Size::TopWidth);
    }
    if across > 1 {
        match setup.rules.spacing {
            crate::rules::PitchRule::Closest => sizes.push(Size::Land),
            crate::rules::PitchRule::Given(_) => sizes.push(Size::Pitch),
            crate::rules::PitchRule::Spread | crate::rules::PitchRule::OfSet(_) => {}
        }
    }
    sizes
}

fn any_sheet() -> impl Strategy<Value = Sheet> {
    let unit = prop_oneof![Just(LengthUnit::Millimetre), Just(LengthUnit::Inch)];
    (280.0_f64..1600.0, 24.0_f64..48.0, 56.0_f64..96.0, unit).prop_map(
        |(width, row, text, unit)| Sheet {
            width,
            row,
            text,
            unit,
        },
    )
}

/// Barrels from the least to the largest, sharp ones and circles among them.
fn any_barrel() -> impl Strategy<Value = Barrel> {
    let share = prop_oneof![Just(0.0), Just(1.0), 0.0_f64..1.0];
    let size = prop_oneof![3 => 6.0_f64..10.0, 1 => 3.0_f64..40.0];
    (0..BarrelShape::ALL.len(), size, share)
        .prop_filter_map("a barrel that can be made", |(shape, size, share)| {
            barrel(BarrelShape::ALL[shape], size, share * size / 2.0)
        })
}

fn any_slat() -> impl Strategy<Value = Slat> {
    let usual = (33.0_f64..80.0, 3.0_f64..7.0);
    let any = (20.0_f64..=200.0, 2.0_f64..=30.0);
    prop_oneof![3 => usual, 1 => any].prop_map(|(width, thickness)| slat(width, thickness))
}

fn any_turn() -> impl Strategy<Value = Angle> {
    let usual = prop::sample::select(vec![0.0, 30.0, 90.0, 180.0]);
    prop_oneof![usual, -360.0_f64..360.0].prop_map(Angle::degrees)
}

fn any_rules() -> impl Strategy<Value = Rules> {
    let sizes = (3.0_f64..20.0, -5.0_f64..5.0, 0.0_f64..2.0, 0.0_f64..5.0);
    (0..Spacing::ALL.len(), sizes, any::<bool>()).prop_map(
        |(spacing, (pitch, axis, land, edge), level)| {
            rules(|draft| {
                draft.spacing = Spacing::ALL[spacing];
                draft.pitch = Typed::Number(pitch);
                draft.axis_height = Typed::Number(if level { 0.0 } else { axis });
                draft.land = Typed::Number(land);
                draft.edge = Typed::Number(edge);
            })
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn every_sandwich_keeps_to_the_rules_of_drawing(
        barrel in any_barrel(), turn in any_turn(), top in any_slat(), bottom in any_slat(),
        alike in any::<bool>(), rules in any_rules(), sheet in any_sheet(),
    ) {
        let bottom = if alike { &top } else { &bottom };
        let setup = Setup { barrel: &barrel, turn, top: &top, bottom, rules: &rules };
        let layout = lay_out(&setup);
        check(&draw_sandwich(&setup, &layout, &sheet), &driving(&setup, layout.across()));
    }

    #[test]
    fn every_barrel_keeps_to_the_rules_of_drawing(barrel in any_barrel(), sheet in any_sheet()) {
        let drawing = draw_barrel(&barrel, &sheet);
        let corners = barrel.shape().has_corners().then_some(Size::CornerRadius);
        let sizes: Vec<Size> = [Size::Barrel, Size::Lead].into_iter().chain(corners).collect();
        check(&drawing, &sizes);
    }

    #[test]
    fn a_sheet_of_any_size_can_be_drawn_on(
        width in any::<f64>(), row in any::<f64>(), text in any::<f64>(),
    ) {
        let sheet = Sheet { width, row, text, unit: LengthUnit::Inch };
        let barrel = barrel(BarrelShape::Hexagonal, 7.0, 0.5).unwrap();
        let (slat, rules) = (slat(74.0, 5.0), rules(|_| ()));
        let setup = Setup { barrel: &barrel, turn: Angle::ZERO, top: &slat, bottom: &slat, rules: &rules };
        check(&draw_sandwich(&setup, &lay_out(&setup), &sheet), &[Size::SlatWidth]);
        check(&draw_barrel(&barrel, &sheet), &[Size::Barrel]);
    }
}

#[test]
fn a_gauge_at_the_edge_of_the_sheet_stays_on_it_whatever_rounding_makes_of_its_sides() {
    // A pencil wider than the slat puts the jaw as far to the right as it goes.
    let thick = barrel(BarrelShape::Round, 34.179, 0.0).unwrap();
    let slat = slat(64.14, 3.0);
    let rules = rules(|draft| {
        draft.land = Typed::Number(0.0);
        draft.edge = Typed::Number(0.0);
    });
    let setup = Setup {
        barrel: &thick,
        turn: Angle::ZERO,
        top: &slat,
        bottom: &slat,
        rules: &rules,
    };
    for step in 0..2000_u32 {
        let sheet = Sheet {
            width: 383.223_126_472_856_8 + f64::from(step) / 300.0,
            row: 37.692_941_545_044_25,
            text: 56.0,
            unit: LengthUnit::Millimetre,
        };
        check(&draw_sandwich(&setup, &lay_out(&setup), &sheet), &[]);
    }
}

/// Sizes that find no place on a sheet, for the slats and pencils of every day.
fn unplaced(shape: BarrelShape, turn: f64, sheet: Sheet) -> Vec<Size> {
    let barrel = barrel(shape, 7.3, if shape.has_corners() { 0.6 } else { 0.0 }).unwrap();
    let (slat, rules) = (slat(74.0, 5.0), rules(|_| ()));
    let setup = Setup {
        barrel: &barrel,
        turn: Angle::degrees(turn),
        top: &slat,
        bottom: &slat,
        rules: &rules,
    };
    let drawing = draw_sandwich(&setup, &lay_out(&setup), &sheet);
    [drawing.unplaced, draw_barrel(&barrel, &sheet).unplaced].concat()
}

#[test]
fn every_size_of_a_usual_layout_finds_a_place_on_phone_and_desk() {
    let sheets = [
        (360.0, 44.0, 72.0),
        (420.0, 44.0, 72.0),
        (900.0, 28.0, 64.0),
        (1600.0, 28.0, 64.0),
    ];
    for (width, row, text) in sheets {
        let unit = LengthUnit::Millimetre;
        let sheet = Sheet {
            width,
            row,
            text,
            unit,
        };
        for shape in BarrelShape::ALL {
            for seam in shape.seams() {
                let missing = unplaced(shape, seam.turn(8).in_degrees(), sheet);
                // The inscribed diameter cannot be read off an octagon that stands on a corner.
                let oblique = *seam == Seam::CornerDown;
                let expected: &[Size] = if oblique { &[Size::Barrel] } else { &[] };
                assert_eq!(missing, expected, "{seam:?} on {width} px");
            }
        }
    }
}

#[test]
fn a_pencil_turned_by_an_odd_angle_asks_for_its_size_elsewhere() {
    let sheet = Sheet {
        width: 900.0,
        row: 28.0,
        text: 64.0,
        unit: LengthUnit::Millimetre,
    };
    assert_eq!(
        unplaced(BarrelShape::Hexagonal, 17.3, sheet),
        [Size::Barrel]
    );
}

#[test]
fn the_pitch_is_shown_where_the_first_pair_has_no_room() {
    let barrel = barrel(BarrelShape::Hexagonal, 7.0, 0.5).unwrap();
    let (slat, rules) = (slat(74.0, 5.0), rules(|_| ()));
    let setup = Setup {
        barrel: &barrel,
        turn: Angle::degrees(30.0),
        top: &slat,
        bottom: &slat,
        rules: &rules,
    };
    let sheet = Sheet {
        width: 360.0,
        row: 44.0,
        text: 72.0,
        unit: LengthUnit::Millimetre,
    };
    let drawing = draw_sandwich(&setup, &lay_out(&setup), &sheet);
    let pitch = drawing
        .dimensions
        .iter()
        .find(|dimension| dimension.size == Size::Pitch);
    assert_eq!(pitch.map(|pitch| pitch.text.as_str()), Some("7.24"));
}
