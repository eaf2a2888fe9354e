//! Paths to texts and back, read by general libraries too, and outlines of every kind to paths.

use super::*;
use crate::barrel::BarrelDraft;
use crate::field::Typed;
use crate::outline::any_path::any_curved_path;
use crate::outline::{Arc, Outline, Segment};
use crate::quantity::Angle;
use crate::shape::Shape;
use kurbo::Shape as _;
use proptest::prelude::*;
use std::f64::consts::PI;

/// Area and girth as the library kurbo finds them from the text (its own reader of path data, Green's
/// theorem for Bézier curves, arcs approximated).
fn by_kurbo(text: &str) -> (f64, f64) {
    let path = kurbo::BezPath::from_svg(text).unwrap();
    (path.area().abs(), path.perimeter(1e-9))
}

#[test]
fn every_kind_of_stretch_comes_back_from_its_text_to_the_last_bit() {
    for text in EVERY_KIND {
        let path = path(text);
        assert_eq!(super::path(&path.text()), path, "{text}");
        let outline = |text: &str| {
            Outline::from_path(text, Length::millimetres(7.3), Length::ZERO, Length::ZERO).unwrap()
        };
        assert_eq!(outline(&path.text()), outline(text), "{text}");
    }
}

#[test]
fn a_written_path_means_the_same_to_another_reader() {
    for text in EVERY_KIND {
        let (area, girth) = measures(&path(text));
        let (other_area, other_girth) = by_kurbo(&path(text).text());
        // Its arcs are approximated to a tenth of a unit of its own choice, about 1e-3 of the area.
        assert!(
            (area - other_area).abs() < 2e-2,
            "{text}: {area} {other_area}"
        );
        assert!(
            (girth - other_girth).abs() < 2e-2,
            "{text}: {girth} {other_girth}"
        );
    }
}

#[test]
fn an_open_path_is_closed_by_a_line() {
    let path = path("M0 0 H8 V8");
    assert_eq!(path.text(), "M0 0 L8 0 L8 8 Z");
    assert_eq!(DrawnPath::read("M0 0 Z"), None);
    assert_eq!(DrawnPath::read("nothing"), None);
    assert_eq!(DrawnPath::read(""), None);
}

/// The area of an outline after it has become a path.
fn converted(outline: &Outline) -> (f64, f64) {
    measures(&DrawnPath::of_outline(outline))
}

#[test]
fn outlines_keep_their_closed_forms_as_paths() {
    let mm = Length::millimetres;
    let close = |(area, girth): (f64, f64), expected: (f64, f64)| {
        assert!(
            (area - expected.0).abs() < 1e-9,
            "area {area}, not {}",
            expected.0
        );
        assert!(
            (girth - expected.1).abs() < 1e-9,
            "girth {girth}, not {}",
            expected.1
        );
    };
    // A circle: πr², 2πr.
    close(converted(&Outline::round(mm(3.5))), (PI * 12.25, 7.0 * PI));
    // Steiner's formula for a rounded hexagon of 7 across flats: the core's area + its girth·r + πr².
    let root = 3.0_f64.sqrt();
    for radius in [0.0, 0.5, 1.0, 3.5] {
        let core = 3.5 - radius;
        let (area, girth) = (2.0 * root * core * core, 4.0 * root * core);
        let expected = (
            area + girth * radius + PI * radius * radius,
            girth + 2.0 * PI * radius,
        );
        let outline = Outline::regular(6, mm(3.5), mm(radius), Angle::ZERO);
        close(converted(&outline), expected);
    }
    // A rectangle with rounded corners: (4 − π)r² and (8 − 2π)r less.
    let flat = Outline::flat(mm(12.0), mm(7.0), mm(2.0));
    close(
        converted(&flat),
        (84.0 - (4.0 - PI) * 4.0, 38.0 - (8.0 - 2.0 * PI) * 2.0),
    );
}

#[test]
fn an_ellipse_is_four_arcs_of_its_area() {
    // πab; the outline follows an ellipse within a millionth of its width.
    let path = DrawnPath::ellipse(Length::millimetres(9.0), Length::millimetres(6.0));
    let (area, _) = measures(&path);
    assert!((area - PI * 4.5 * 3.0).abs() < 1e-4, "{area}");
    assert_eq!(path.nodes().len(), 4);
}

fn drafts() -> impl Strategy<Value = BarrelDraft> {
    let shapes = [
        Shape::Round,
        Shape::Hexagonal,
        Shape::Triangular,
        Shape::Polygonal,
        Shape::Oval,
        Shape::Flat,
    ];
    (
        prop::sample::select(shapes.to_vec()),
        5.0_f64..14.0,
        0.0_f64..0.45,
        3..9_u32,
        prop_oneof![Just(None), (10.0_f64..60.0).prop_map(Some)],
    )
        .prop_map(|(shape, size, share, sides, face)| {
            let mut draft = BarrelDraft::new("", shape);
            draft.size = Typed::Number(size);
            draft.height = Typed::Number(size * 0.8);
            draft.corner_radius = Typed::Number(share * size * 0.8);
            draft.sides = Typed::Number(f64::from(sides));
            if let Some(face) = face {
                draft.face_radius = Typed::Number(face + size);
            }
            draft
        })
}

proptest! {
    #[test]
    fn any_curved_path_comes_back_from_its_text(text in any_curved_path()) {
        let path = path(&text);
        prop_assert_eq!(&super::path(&path.text()), &path);
    }

    /// Every kind of barrel, made a free outline: the same extents, area, girth and place of the axis.
    #[test]
    fn a_barrel_is_the_same_as_a_free_outline(draft in drafts()) {
        let before = draft.check().unwrap();
        let mut free = draft.clone();
        free.draw(&draft.drawn_path().unwrap());
        prop_assert_eq!(free.shape, Shape::Free);
        let after = free.check().unwrap();
        let (one, other) = (before.finished(Angle::ZERO), after.finished(Angle::ZERO));
        // An oval is made of other arcs within a millionth of its width.
        let miss = if draft.shape == Shape::Oval { 1e-4 } else { 1e-7 };
        let area = (one.area() - other.area()).in_square_millimetres();
        prop_assert!(area.abs() < miss * 10.0, "{}", area);
        let girth = (one.perimeter() - other.perimeter()).in_millimetres();
        prop_assert!(girth.abs() < miss * 10.0, "{}", girth);
        let (one, other) = (one.extents(), other.extents());
        for (one, other) in [(one.left, other.left), (one.right, other.right), (one.up, other.up), (one.down, other.down)] {
            prop_assert!((one - other).abs().in_millimetres() < miss, "{:?} {:?}", one, other);
        }
        let again = free.drawn_path().unwrap();
        let mut twice = free.clone();
        twice.draw(&again);
        prop_assert_eq!(twice, free);
    }

    #[test]
    fn arcs_that_become_nodes_are_those_of_the_outline(radius in 0.2_f64..5.0, from in 0.0_f64..360.0) {
        let normal = |degrees: f64| Angle::degrees(degrees).direction();
        let arc = Segment::Arc(Arc { centre: Point::AXIS, radius, from: normal(from), to: normal(from + 180.0) });
        let outline = Outline { segments: vec![arc, arc.turned(normal(180.0))] };
        let (area, girth) = converted(&outline);
        prop_assert!((area - PI * radius * radius).abs() < 1e-9);
        prop_assert!((girth - 2.0 * PI * radius).abs() < 1e-9);
    }
}
