//! Where handles stand, and what becomes of a size when they are moved.

use super::*;

/// The layout of every day on a desk, with its handles.
fn drawing(unit: LengthUnit, change: impl FnOnce(&mut RulesDraft)) -> Drawing {
    let barrel = barrel(BarrelShape::Hexagonal, 7.0, 0.5).unwrap();
    let (slat, rules) = (slat(74.0, 5.0), rules(change));
    let setup = Setup {
        barrel: &barrel,
        turn: Angle::degrees(30.0),
        top: &slat,
        bottom: &slat,
        rules: &rules,
    };
    let sheet = Sheet {
        width: 900.0,
        row: 26.0,
        text: 66.0,
        unit,
    };
    draw_sandwich(&setup, &lay_out(&setup), &sheet)
}

fn handles(unit: LengthUnit) -> Vec<Handle> {
    drawing(unit, |_| ()).handles
}

fn pitch(unit: LengthUnit, value: f64) -> Handle {
    let given = |draft: &mut RulesDraft| {
        draft.spacing = Spacing::Given;
        draft.pitch = Typed::Number(value);
    };
    drawing(unit, given).handles.remove(0)
}

/// The value after a shift of so many millimetres at the scale of the view.
fn moved(handle: &Handle, mm: f64) -> f64 {
    handle.moved(mm * handle.scale).in_millimetres()
}

#[test]
fn a_sandwich_has_a_handle_for_the_pitch_and_one_for_the_edge() {
    let handles = handles(LengthUnit::Millimetre);
    let grips: Vec<_> = handles.iter().map(|handle| handle.grip).collect();
    assert_eq!(grips, [Grip::Pitch, Grip::Edge]);
    let values: Vec<_> = handles
        .iter()
        .map(|handle| handle.value.in_millimetres())
        .collect();
    assert_eq!(values, [7.24, 1.0]);
}

#[test]
fn the_pitch_is_held_at_the_second_groove_and_the_edge_at_its_line() {
    let drawing = drawing(LengthUnit::Millimetre, |draft| {
        draft.edge = Typed::Number(2.0);
    });
    let second = drawing
        .labels
        .iter()
        .find(|label| label.text == "2")
        .unwrap();
    assert!((drawing.handles[0].x - second.x).abs() < 1e-9);
    // The fixed jaw stands at the datum edge; the first pencil touches the line of the other.
    let edge = &drawing.handles[1];
    let datum = numbers(edge.fixed_jaw.trim_end_matches('Z'))[0];
    assert!((edge.x - datum - 2.0 * edge.scale).abs() < 0.01);
    assert!((numbers(&edge.reach)[0] - edge.x).abs() < 0.01);
}

#[test]
fn a_handle_moves_by_hundredths_of_a_millimetre() {
    let handle = pitch(LengthUnit::Millimetre, 7.5);
    for (mm, expected) in [
        (0.5, 8.0),
        (-0.5, 7.0),
        (0.014, 7.51),
        (0.016, 7.52),
        (1.0 / 3.0, 7.83),
    ] {
        assert_eq!(moved(&handle, mm), expected, "by {mm}");
    }
}

#[test]
fn a_handle_moves_by_thousandths_of_an_inch_where_those_are_shown() {
    // 0.3 in; what comes out is what would come of typing the number, to the last bit.
    let handle = pitch(LengthUnit::Inch, 7.62);
    for (inches, typed) in [(0.001, "0.301"), (-0.0104, "0.290"), (0.0296, "0.330")] {
        let expected = Typed::new(typed, crate::Field::Pitch, LengthUnit::Inch);
        assert_eq!(
            Typed::Number(moved(&handle, inches * 25.4)),
            expected,
            "by {inches}"
        );
    }
}

#[test]
fn a_number_with_more_digits_stays_until_the_handle_has_moved() {
    let handle = pitch(LengthUnit::Millimetre, 7.4444);
    assert_eq!(moved(&handle, 0.0), 7.4444);
    assert_eq!(moved(&handle, 0.0049), 7.4444);
    assert_eq!(moved(&handle, -0.01), 7.43);
    assert_eq!(moved(&handle, f64::NAN), 7.4444);
}

#[test]
fn a_handle_stops_at_the_ends_of_its_range() {
    for unit in [LengthUnit::Millimetre, LengthUnit::Inch] {
        for handle in handles(unit) {
            for far in [1e3, 1e300, f64::INFINITY] {
                assert_eq!(
                    handle.moved(far * handle.scale),
                    handle.most(),
                    "{:?}",
                    handle.grip
                );
                assert_eq!(
                    handle.moved(-far * handle.scale),
                    handle.least(),
                    "{:?}",
                    handle.grip
                );
            }
        }
    }
}

#[test]
fn keys_move_by_even_steps_of_either_unit() {
    let steps = [
        (Stride::Fine, 1),
        (Stride::Fine, -2),
        (Stride::Coarse, 1),
        (Stride::Page, -1),
    ];
    let stepped = |unit, start| {
        let handle = pitch(unit, start);
        steps.map(|(stride, times)| {
            let value = handle.stepped(stride, times).in_millimetres();
            crate::figure::length(value, unit)
        })
    };
    assert_eq!(
        stepped(LengthUnit::Millimetre, 7.5),
        ["7.55", "7.40", "8.00", "6.50"]
    );
    assert_eq!(
        stepped(LengthUnit::Inch, 7.62),
        ["0.302", "0.296", "0.320", "0.260"]
    );
}

proptest! {
    #[test]
    fn a_held_jaw_stays_under_the_hand(px in -40.0_f64..300.0) {
        let start = pitch(LengthUnit::Millimetre, 7.5);
        let value = start.moved(px);
        let now = pitch(LengthUnit::Millimetre, value.in_millimetres());
        let held = now.held(&start, value);
        // To half a hundredth of a millimetre, which is less than a tenth of a px here.
        prop_assert!((held.x - start.x - px).abs() < 0.1, "{} for {px}", held.x - start.x);
        prop_assert_eq!(held.value, value);
        prop_assert_eq!(held.y, now.y);
    }
}
