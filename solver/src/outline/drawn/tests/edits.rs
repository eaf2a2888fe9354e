//! What an edit does, and what it leaves alone.

use super::super::{Arm, Edit, Joint, Snap, Stretch, StretchKind, Symmetry};
use super::*;
use crate::outline::any_path::any_curved_path;
use crate::unit::LengthUnit;
use proptest::prelude::*;

fn close(one: Point, other: Point) -> bool {
    one.distance(other).in_millimetres() < 1e-9
}

#[test]
fn a_node_put_on_a_stretch_leaves_the_curve_as_it_was() {
    for text in EVERY_KIND {
        let before = path(text);
        let expected = measures(&before);
        for stretch in 0..before.nodes().len() {
            let mut after = before.clone();
            let added = after.add_node(stretch, 0.3).unwrap();
            assert_eq!(added, stretch + 1);
            assert!(close(
                after.nodes()[added].at,
                before.along(stretch, 0.3).unwrap()
            ));
            let (area, girth) = measures(&after);
            // Curves and ellipses are fitted with arcs anew, within a millionth of their width.
            assert!((area - expected.0).abs() < 2e-4, "{text}, {stretch}");
            assert!((girth - expected.1).abs() < 2e-4, "{text}, {stretch}");
            assert!(after.remove_node(added));
            let same_kind = |(one, other): (&Node, &Node)| one.onward.kind() == other.onward.kind();
            assert!(
                after.nodes().iter().zip(before.nodes()).all(same_kind),
                "{text}"
            );
        }
    }
}

#[test]
fn the_last_two_nodes_stay() {
    let mut circle = path("M0 5 A5 5 0 0 1 10 5 A5 5 0 0 1 0 5 Z");
    assert!(!circle.remove_node(0) && !circle.remove_node(7));
    assert_eq!(circle.nodes().len(), 2);
    assert_eq!(circle.add_node(5, 0.5), None);
    assert_eq!(circle.add_node(0, f64::NAN), None);
    assert_eq!(circle.add_node(0, 1.0), None);
}

#[test]
fn a_quarter_circle_taken_out_of_four_leaves_the_circle() {
    let outline = crate::outline::Outline::round(Length::millimetres(3.5));
    let mut circle = DrawnPath::of_outline(&outline);
    assert!(circle.remove_node(1));
    let (area, _) = measures(&circle);
    assert!((area - std::f64::consts::PI * 12.25).abs() < 1e-6, "{area}");
}

#[test]
fn a_curve_becomes_the_arc_it_came_from() {
    // The cubic of a quarter turn lies within 0.03 % of the circle.
    let outline = crate::outline::Outline::round(Length::millimetres(3.5));
    let mut circle = DrawnPath::of_outline(&outline);
    let start = circle.clone();
    circle.bend(0, StretchKind::Curve);
    assert_eq!(circle.joint(0), Joint::Smooth);
    assert_eq!(circle.joint(1), Joint::Smooth);
    circle.bend(0, StretchKind::Arc);
    let (Stretch::Arc(one), Stretch::Arc(other)) =
        (start.nodes()[0].onward, circle.nodes()[0].onward)
    else {
        panic!("both are arcs");
    };
    assert!((one.radii.0 - other.radii.0).abs() < 2e-3);
    assert_eq!((one.left, one.long), (other.left, other.long));
}

#[test]
fn a_line_bulges_outwards_as_an_arc() {
    let mut square = path("M-4 4 H4 V-4 H-4 Z");
    let (before, _) = measures(&square);
    square.bend(1, StretchKind::Arc);
    let (after, _) = measures(&square);
    // A segment of a sixth of a turn of radius 8: r²(π/3 − sin 60°)/2.
    let segment = 32.0 * (std::f64::consts::PI / 3.0 - 0.75_f64.sqrt());
    assert!((after - before - segment).abs() < 1e-9);
}

#[test]
fn a_stretch_that_is_pulled_passes_the_point() {
    let to = point(5.0, 0.5);
    for kind in StretchKind::ALL {
        let mut square = path("M-4 4 H4 V-4 H-4 Z");
        square.bend(1, kind);
        square.pull(1, to);
        let there = square.along(1, 0.5).unwrap();
        // The middle of an arc lies on its circle, and that of a curve in the place itself.
        match square.nodes()[1].onward {
            Stretch::Arc(arc) => {
                let centre = point(there.x - arc.radii.0, 0.0);
                let away = centre.distance(to).in_millimetres();
                assert!((away - arc.radii.0).abs() < 1e-9, "{away}");
            }
            _ => assert!(close(there, to)),
        }
    }
    let mut square = path("M-4 4 H4 V-4 H-4 Z");
    square.pull(1, point(4.0, 1.0));
    assert_eq!(square.nodes()[1].onward, Stretch::Line);
}

#[test]
fn smooth_joints_stay_so_while_an_arm_moves_and_corners_do_not() {
    let mut square = centred("M0 0 H8 V8 H0 Z");
    assert_eq!(square.joint(1), Joint::Corner);
    square.join(1, Joint::Smooth);
    assert_eq!(square.joint(1), Joint::Smooth);
    let opposite = square.arm(1, Arm::Leaving).unwrap();
    square.shift_arm(1, Arm::Arriving, point(2.0, 7.0));
    assert_eq!(square.joint(1), Joint::Smooth);
    assert!(!close(square.arm(1, Arm::Leaving).unwrap(), opposite));
    square.join(1, Joint::Corner);
    assert_eq!(square.joint(1), Joint::Corner);
    let opposite = square.arm(1, Arm::Leaving).unwrap();
    square.shift_arm(1, Arm::Arriving, point(2.0, 7.0));
    assert_eq!(square.arm(1, Arm::Leaving).unwrap(), opposite);
}

#[test]
fn points_snap_to_nodes_to_axes_and_to_the_grid() {
    let snap = |unit, fine, reach| Snap { unit, fine, reach };
    let coarse = snap(LengthUnit::Millimetre, false, 0.1);
    let others = [point(1.234, 3.0), point(1.3, -3.0)];
    assert_eq!(coarse.place(point(1.26, 0.07), &others), point(1.234, 0.0));
    assert_eq!(coarse.place(point(-2.02, 9.98), &others), point(-2.0, 10.0));
    assert_eq!(
        snap(LengthUnit::Millimetre, true, 0.0).on_grid(-1.2345),
        -1.23
    );
    // 9/64 in, to the last bit.
    assert_eq!(snap(LengthUnit::Inch, false, 0.0).on_grid(3.6), 3.571_875);
    assert_eq!(coarse.on_grid(f64::NAN), 0.0);
    assert!(coarse.on_grid(f64::INFINITY).is_finite());
}

#[test]
fn what_is_not_there_is_left_alone() {
    let square = centred("M0 0 H8 V8 H0 Z");
    for symmetry in Symmetry::ALL {
        let square = square.made(symmetry);
        for edit in [
            Edit::ShiftNode(99, point(1.0, 1.0)),
            Edit::ShiftArm(0, Arm::Leaving, point(1.0, 1.0)),
            Edit::AddNode(99, 0.5),
            Edit::RemoveNode(99),
            Edit::Bend(99, StretchKind::Arc),
            Edit::Pull(99, point(1.0, 1.0)),
            Edit::Join(99, Joint::Smooth),
        ] {
            let after = square.edited(edit, symmetry);
            assert_eq!(
                after.nodes().len(),
                square.nodes().len(),
                "{edit:?} {symmetry:?}"
            );
            assert!(after.is(symmetry), "{edit:?} {symmetry:?}");
        }
    }
}

fn edits() -> impl Strategy<Value = Edit> {
    let place = (-6.0_f64..6.0, -6.0_f64..6.0).prop_map(|(x, y)| point(x, y));
    let arm = prop::sample::select(vec![Arm::Arriving, Arm::Leaving]);
    prop_oneof![
        4 => (0..12_usize, place.clone()).prop_map(|(node, to)| Edit::ShiftNode(node, to)),
        4 => (0..12_usize, arm, place).prop_map(|(node, arm, to)| Edit::ShiftArm(node, arm, to)),
        2 => (0..12_usize, 0.01_f64..0.99).prop_map(|(at, share)| Edit::AddNode(at, share)),
        1 => (0..12_usize).prop_map(Edit::RemoveNode),
        2 => (0..12_usize, prop::sample::select(StretchKind::ALL.to_vec())).prop_map(|(at, kind)| Edit::Bend(at, kind)),
        2 => (0..12_usize, -6.0_f64..6.0, -6.0_f64..6.0).prop_map(|(at, x, y)| Edit::Pull(at, point(x, y))),
        2 => (0..12_usize, prop::sample::select(Joint::ALL.to_vec())).prop_map(|(at, joint)| Edit::Join(at, joint)),
    ]
}

proptest! {
    #[test]
    fn symmetric_paths_stay_symmetric_and_written_whatever_is_done_to_them(
        start in prop_oneof![any_curved_path(), prop::sample::select(EVERY_KIND.map(str::to_owned).to_vec())],
        symmetry in prop::sample::select(Symmetry::ALL.to_vec()),
        edits in prop::collection::vec(edits(), 1..6),
    ) {
        let mut path = centred(&start).made(symmetry);
        prop_assume!(path.is(symmetry));
        for edit in edits {
            path = path.edited(edit, symmetry);
            prop_assert!(path.is(symmetry), "{:?} after {:?}: {}", symmetry, edit, path.text());
            // Of lines and arcs between two nodes in one place nothing is written.
            if let Some(again) = DrawnPath::read(&path.text()) {
                prop_assert!(again == path || again.nodes().len() < path.nodes().len());
            }
        }
    }

    #[test]
    fn a_moved_node_stands_where_it_is_put(
        start in any_curved_path(), node in 0..6_usize, x in -6.0_f64..6.0, y in -6.0_f64..6.0,
    ) {
        let before = path(&start);
        prop_assume!(node < before.nodes().len());
        let after = before.edited(Edit::ShiftNode(node, point(x, y)), Symmetry::Free);
        prop_assert_eq!(after.nodes()[node].at, point(x, y));
        // And nothing but its arms has moved with it.
        for (k, (one, other)) in before.nodes().iter().zip(after.nodes()).enumerate() {
            prop_assert!(k == node || one.at == other.at);
        }
    }
}
