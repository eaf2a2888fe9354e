use super::super::axis::area;
use super::*;
use crate::barrel::BarrelDraft;
use crate::field::Typed;
use crate::layout::lay_out;
use crate::quantity::{Angle, norm};
use crate::rules::RulesDraft;
use crate::shape::Shape as BarrelShape;
use crate::slat::SlatDraft;
use proptest::prelude::*;

/// A drawing of a usual pencil of a shape, with an eccentricity limit in mm.
fn scatter(shape: BarrelShape, limit: f64, centres: &[(f64, f64)], sheet: &Sheet) -> Drawing {
    let mut barrel = BarrelDraft::new("", shape);
    barrel.path = "M0 3 C0 1 2 0 4 0 S8 1 8 3 L7 6 H1 Z".to_owned();
    let barrel = barrel.check().unwrap();
    let slat = SlatDraft::new("").check().unwrap();
    let mut rules = RulesDraft::new();
    rules.eccentricity = Typed::Number(limit);
    let rules = rules.check().unwrap();
    let setup = Setup {
        barrel: &barrel,
        turn: Angle::degrees(30.0),
        top: &slat,
        bottom: &slat,
        rules: &rules,
    };
    let centres: Vec<Point> = centres.iter().map(|&(x, y)| Point { x, y }).collect();
    draw_scatter(&setup, &lay_out(&setup), &centres, sheet)
}

fn sheet(width: f64, unit: LengthUnit) -> Sheet {
    Sheet {
        width,
        row: 28.0,
        text: 64.0,
        unit,
    }
}

/// The numbers of path data.
fn numbers(path: &str) -> Vec<f64> {
    path.split(|sign: char| sign.is_ascii_uppercase() || sign == ' ')
        .filter(|number| !number.is_empty())
        .map(|number| number.parse().unwrap())
        .collect()
}

fn path(drawing: &Drawing, style: Style) -> &str {
    let shape = drawing.shapes.iter().find(|shape| shape.style == style);
    shape.map_or("", |shape| shape.path.as_str())
}

/// Middle and radius of each circle that a path begins with: two half turns from its right end.
fn circles(path: &str, count: usize) -> Vec<(f64, f64, f64)> {
    let circles = path.split('Z').take(count).map(numbers);
    circles
        .map(|circle| (circle[0] - circle[2], circle[1], circle[2]))
        .collect()
}

/// The middles of crosses of two strokes.
fn crosses(path: &str) -> Vec<(f64, f64)> {
    let points = numbers(path);
    let crosses = points.chunks(8);
    crosses
        .map(|at| (f64::midpoint(at[0], at[2]), f64::midpoint(at[1], at[3])))
        .collect()
}

/// Everything a drawing promises.
fn check(drawing: &Drawing) {
    let shown = format!("{drawing:?}");
    assert!(!shown.contains("NaN") && !shown.contains("inf"), "{shown}");
    for (k, label) in drawing.labels.iter().enumerate() {
        let box_of_it = area(label);
        let on_sheet = box_of_it.x >= 0.0
            && box_of_it.y >= 0.0
            && box_of_it.x + box_of_it.width <= drawing.width
            && box_of_it.y + box_of_it.height <= drawing.height;
        assert!(on_sheet, "{label:?} leaves the sheet");
        for other in &drawing.labels[k + 1..] {
            assert!(!box_of_it.overlaps(&area(other)), "{label:?} {other:?}");
        }
    }
    let frames = circles(path(drawing, Style::Detail), 2);
    let [small, large] = frames[..] else {
        panic!("{frames:?}");
    };
    let lowest_text = drawing.labels.iter().skip(1).map(|label| area(label).y);
    assert!(lowest_text.fold(f64::MAX, f64::min) > large.1 + large.2);
    assert!(area(&drawing.labels[0]).y + LINE < large.1 - large.2);
    for (x, y, radius) in [small, large] {
        assert!(x - radius >= 0.0 && x + radius <= drawing.width);
        assert!(y - radius >= 0.0 && y + radius <= drawing.height);
    }
    assert!(small.0 + small.2 < large.0 - large.2, "{small:?} {large:?}");
    for style in [Style::CentredLead, Style::StrayLead] {
        for (x, y) in crosses(path(drawing, style)) {
            assert!(norm(x - large.0, y - large.1) <= large.2, "{x} {y}");
        }
    }
    for style in [Style::Centre, Style::ScaleBar] {
        for at in numbers(path(drawing, style)).chunks(2) {
            assert!((0.0..=drawing.width).contains(&at[0]), "{style:?} {at:?}");
            assert!((0.0..=drawing.height).contains(&at[1]), "{style:?} {at:?}");
        }
    }
}

const CENTRES: [(f64, f64); 5] = [
    (0.0, 0.0),
    (0.1, -0.05),
    (-0.18, 0.24),
    (0.3, 0.1),
    (-0.32, 0.0),
];

#[test]
fn centres_read_back_at_the_scale_of_the_bar() {
    for (unit, millimetres) in [(LengthUnit::Millimetre, 1.0), (LengthUnit::Inch, 25.4)] {
        let drawing = scatter(BarrelShape::Hexagonal, 0.3, &CENTRES, &sheet(900.0, unit));
        check(&drawing);
        let bar = numbers(path(&drawing, Style::ScaleBar));
        let text = drawing.labels[1].text.replace(unit.label(), "");
        let length: f64 = text.trim().parse().unwrap();
        let scale = (bar[2] - bar[0]) / (length * millimetres);
        let (x, y, radius) = circles(path(&drawing, Style::Limit), 1)[0];
        assert!((radius / scale - 0.3).abs() < 1e-3, "{radius} at {scale}");
        let mut found = crosses(path(&drawing, Style::CentredLead));
        assert_eq!(found.len(), 3);
        found.extend(crosses(path(&drawing, Style::StrayLead)));
        for (found, (right, up)) in found.iter().zip(CENTRES) {
            let (x, y) = ((found.0 - x) / scale, (y - found.1) / scale);
            assert!((x - right).abs() < 1e-3 && (y - up).abs() < 1e-3, "{x} {y}");
        }
    }
}

#[test]
fn the_detail_is_as_many_times_larger_as_is_written_over_it() {
    let sheet = sheet(900.0, LengthUnit::Millimetre);
    let drawing = scatter(BarrelShape::Round, 0.3, &CENTRES, &sheet);
    let [small, large] = circles(path(&drawing, Style::Detail), 2)[..] else {
        panic!();
    };
    let (_, _, outline) = circles(path(&drawing, Style::Pencil), 1)[0];
    let (_, _, limit) = circles(path(&drawing, Style::Limit), 1)[0];
    // A round pencil of 7.3 mm has a bare radius of 3.57 mm under its coat of 0.08 mm.
    let factor = (limit / 0.3) / (outline / 3.57);
    assert!((factor - large.2 / small.2).abs() < 0.02, "{factor}");
    let text = format!("Lead centres, {factor:.0} times enlarged");
    assert_eq!(drawing.labels[0].text, text);
}

#[test]
fn two_lines_touch_both_circles() {
    let sheet = sheet(500.0, LengthUnit::Millimetre);
    let drawing = scatter(BarrelShape::Hexagonal, 0.3, &CENTRES, &sheet);
    let frames = path(&drawing, Style::Detail);
    let [small, large] = circles(frames, 2)[..] else {
        panic!();
    };
    for line in frames.split('M').skip(3).map(numbers) {
        let (run, rise) = (line[2] - line[0], line[3] - line[1]);
        for ((x, y, radius), end) in [(small, &line[..2]), (large, &line[2..])] {
            let (right, down) = (end[0] - x, end[1] - y);
            assert!((norm(right, down) - radius).abs() < 0.02);
            // A tangent is square to the radius where it touches.
            let cosine = (right * run + down * rise) / norm(right, down) / norm(run, rise);
            assert!(cosine.abs() < 2e-3, "{cosine}");
        }
    }
}

#[test]
fn the_drawing_is_told_in_words() {
    let told = |centres: &[(f64, f64)], limit| {
        let sheet = sheet(900.0, LengthUnit::Millimetre);
        let drawing = scatter(BarrelShape::Hexagonal, limit, centres, &sheet);
        check(&drawing);
        let words = drawing.description.replace(figure::THIN_SPACE, " ");
        words.split_once(". ").unwrap().1.to_owned()
    };
    assert_eq!(told(&[], 0.3), "No lead has been laid yet.");
    assert_eq!(
        told(&CENTRES, 0.3),
        "2 of 5 leads lie more than 0.30 mm off centre."
    );
    assert_eq!(
        told(&[(9.0, 0.0), (f64::NAN, 0.0), (f64::INFINITY, 0.0)], 2.0),
        "3 of 3 leads lie more than 2.00 mm off centre, 3 outside the detail."
    );
    assert_eq!(
        told(&[(0.0, 0.0)], 0.0),
        "0 of 1 leads lie more than 0.00 mm off centre."
    );
}

proptest! {
    #[test]
    fn every_scatter_keeps_to_the_rules_of_drawing(
        shape in 0..BarrelShape::ALL.len(), limit in 0.0_f64..=2.0, spread in 0.0_f64..2.0,
        centres in prop::collection::vec((-1.0_f64..1.0, -1.0_f64..1.0), 0..50),
        odd in any::<(f64, f64)>(), width in 280.0_f64..1200.0, inch in any::<bool>(),
    ) {
        let unit = if inch { LengthUnit::Inch } else { LengthUnit::Millimetre };
        let mut centres: Vec<(f64, f64)> =
            centres.into_iter().map(|(x, y)| (x * spread, y * spread)).collect();
        let sheet = sheet(width, unit);
        check(&scatter(BarrelShape::ALL[shape], limit, &centres, &sheet));
        centres.push(odd);
        check(&scatter(BarrelShape::ALL[shape], limit, &centres, &sheet));
    }
}
