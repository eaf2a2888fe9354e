//! Handles of every kind of barrel.

use super::*;
use crate::outline::Outline;
use crate::unit::LengthUnit;
use proptest::prelude::*;

/// A snap that rounds far below what is asked here.
const FINE: Snap = Snap {
    unit: LengthUnit::Millimetre,
    fine: true,
    reach: 0.0,
};

const REGULAR: [Shape; 6] = [
    Shape::Round,
    Shape::Hexagonal,
    Shape::Triangular,
    Shape::Polygonal,
    Shape::Oval,
    Shape::Flat,
];

fn drafts() -> impl Strategy<Value = BarrelDraft> {
    (
        prop::sample::select(REGULAR.to_vec()),
        600..1400_u32,
        0..300_u32,
        3..9_u32,
        prop_oneof![Just(None), (0..3000_u32).prop_map(Some)],
    )
        .prop_map(|(shape, size, corner, sides, face)| {
            let hundredths = |number: u32| Typed::Number(f64::from(number) / 100.0);
            let mut draft = BarrelDraft::new("", shape);
            draft.size = hundredths(size);
            draft.height = hundredths(size - 30);
            draft.corner_radius = hundredths(corner.min(size / 2 - 20));
            draft.sides = Typed::Number(f64::from(sides));
            draft.coat = Typed::Number(0.1);
            draft.lead_diameter = Typed::Number(2.0);
            if let Some(face) = face {
                draft.face_radius = hundredths(face + size);
            }
            draft
        })
}

/// The draft with another value in the field of a handle.
fn put(draft: &BarrelDraft, handle: &SizeHandle, value: Option<Length>) -> BarrelDraft {
    let mut draft = draft.clone();
    let typed = SizeHandle::typed(value);
    match handle.field {
        Field::CornerRadius => draft.corner_radius = typed,
        Field::BarrelHeight => draft.height = typed,
        Field::FaceRadius => draft.face_radius = typed,
        Field::Coat => draft.coat = typed,
        Field::LeadDiameter => draft.lead_diameter = typed,
        _ => draft.size = typed,
    }
    draft
}

/// How far a point lies from an outline, by rays: the crossing of its circle round the axis nearest by.
fn off(outline: &Outline, point: Point) -> f64 {
    let radius = Point::AXIS.distance(point);
    let Some(there) = Direction::between(Point::AXIS, point) else {
        return f64::INFINITY;
    };
    let places = outline.crossings_with_circle(radius).into_iter();
    let crossing = places
        .map(|angle| {
            let place = Point::AXIS.towards(angle.direction(), radius.in_millimetres());
            place.distance(point).in_millimetres()
        })
        .fold(f64::INFINITY, f64::min);
    // A point where the outline only touches that circle.
    let support = (outline.support(there) - radius).abs().in_millimetres();
    crossing.min(support)
}

proptest! {
    /// Every handle stands on what it sets: on the outline, on the edge of the wood or of the lead.
    #[test]
    fn a_handle_stands_on_the_line_it_sets(draft in drafts()) {
        let barrel = draft.check().unwrap();
        let handles = draft.handles();
        prop_assert!(handles.len() >= 3);
        for handle in handles {
            let miss = match handle.field {
                Field::Coat => off(&barrel.bare(Angle::ZERO), handle.at),
                Field::LeadDiameter => (Point::AXIS.distance(handle.at).in_millimetres() - 1.0).abs(),
                _ => off(&barrel.finished(Angle::ZERO), handle.at),
            };
            prop_assert!(miss < 2e-4, "{:?} lies {} beside", handle, miss);
        }
    }

    /// Where it stands it gives the size there is; and where it stands with another size, that one.
    #[test]
    fn a_moved_handle_gives_the_size_that_brings_it_there(draft in drafts(), steps in -40_i32..40) {
        for handle in draft.handles() {
            let here = handle.value_at(handle.at, &FINE);
            let exact = |one: Option<Length>, other: Option<Length>| match (one, other) {
                (Some(one), Some(other)) => {
                    let most = if handle.field == Field::FaceRadius { 0.02 } else { 0.0051 };
                    (one - other).abs().in_millimetres() < most
                }
                (one, other) => one == other,
            };
            prop_assert!(exact(here, handle.value), "{:?} gives {:?}", handle, here);
            let Some(wanted) = handle.stepped(steps, &FINE) else { continue };
            let moved = put(&draft, &handle, Some(wanted));
            let handles = moved.handles();
            let Some(there) = handles.iter().find(|other| other.field == handle.field) else { continue };
            let found = handle.value_at(there.at, &FINE);
            prop_assert!(exact(found, Some(wanted)), "{:?} to {:?} gives {:?}", handle, wanted, found);
        }
    }

    #[test]
    fn any_place_of_the_pointer_gives_a_size_within_the_range(
        draft in drafts(), x in any::<f64>(), y in any::<f64>(), near in any::<bool>(), fine in any::<bool>(),
        inches in any::<bool>(),
    ) {
        let point = if near { Point { x: x % 12.0, y: y % 12.0 } } else { Point { x, y } };
        let unit = if inches { LengthUnit::Inch } else { LengthUnit::Millimetre };
        let snap = Snap { unit, fine, reach: 0.0 };
        for handle in draft.handles() {
            for value in [handle.value_at(point, &snap), handle.stepped(1000, &snap), handle.stepped(-1000, &snap)] {
                let Some(value) = value else {
                    prop_assert_eq!(handle.field, Field::FaceRadius);
                    continue;
                };
                prop_assert!(value >= handle.range.0 && value <= handle.range.1, "{:?}: {:?}", handle, value);
            }
        }
    }
}

#[test]
fn values_are_those_of_the_grid() {
    let draft = BarrelDraft::new("", Shape::Round);
    let handles = draft.handles();
    let at = |fine, unit, x: f64| {
        let snap = Snap {
            unit,
            fine,
            reach: 0.0,
        };
        let value = handles[0].value_at(Point { x, y: 2.0 }, &snap).unwrap();
        value.in_millimetres()
    };
    assert_eq!(at(false, LengthUnit::Millimetre, 3.5123), 7.0);
    assert_eq!(at(true, LengthUnit::Millimetre, 3.5123), 7.02);
    // 18/64 in and 0.277 in.
    assert_eq!(at(false, LengthUnit::Inch, 3.5123), 7.143_75);
    assert_eq!(at(true, LengthUnit::Inch, 3.5123), 7.0358);
}

#[test]
fn a_bulged_face_that_is_pushed_in_becomes_flat() {
    let mut draft = BarrelDraft::new("", Shape::Triangular);
    draft.face_radius = Typed::Number(20.0);
    let handles = draft.handles();
    let face = handles
        .iter()
        .find(|handle| handle.field == Field::FaceRadius)
        .unwrap();
    let flat = face.value_at(Point::AXIS, &FINE);
    assert_eq!((flat, SizeHandle::typed(flat)), (None, Typed::empty()));
    let round = face.value_at(Point { x: 0.0, y: -9.0 }, &FINE).unwrap();
    assert_eq!(round, face.range.0);
}

#[test]
fn what_cannot_be_made_has_no_handles() {
    let mut draft = BarrelDraft::new("", Shape::Hexagonal);
    draft.coat = Typed::Text("thick".to_owned());
    assert_eq!(draft.handles(), Vec::new());
}
