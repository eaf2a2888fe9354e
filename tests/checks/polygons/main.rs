//! The wood balance of random sandwiches against polygon booleans of another library.
//!
//! Outlines are drawn here from their definition, each in its own way and none by the solver, with
//! a vertex every fifth of a degree of arc, on the grid of the other library, 1e-7 mm. A circle of
//! radius r lacks π·r²·Δ²/6 of area drawn that way: with r up to 5.5 mm and Δ = 0.2° less than
//! 0.0002 mm² a pencil. Ovals and drawn curves are arcs to the solver that keep within 1e-5 mm of
//! the curve, on either side of it. The tolerance of a section is 0.004 mm², of up to 20 pencils.

mod described;
mod drawing;
mod region;

use described::any_described;
use i_overlay::core::overlay_rule::OverlayRule;
use proptest::prelude::*;
use region::{Contour, Region, arc, area, combined, moved, reach, rectangle};
use solver::{Angle, Setup, Slat, Typed, WoodClass, lay_out};
use tests::shop;

/// mm².
const TOLERANCE: f64 = 0.004;

/// Sections of pencils, grooves, corners, parting, edges and faces, mm².
fn sections(setup: &Setup<'_>, outline: &Contour, centres: &[f64]) -> [f64; 6] {
    let slat = |slat: &Slat| {
        (
            slat.width().in_millimetres(),
            slat.thickness().in_millimetres(),
        )
    };
    let ((top_width, above), (bottom_width, below)) = (slat(setup.top), slat(setup.bottom));
    let slats = vec![
        rectangle(0.0, 0.0, top_width, above),
        rectangle(0.0, -below, bottom_width, 0.0),
    ];
    let axis = setup.rules.axis_height.in_millimetres();
    let groove_radius =
        (setup.barrel.lead_diameter() / 2.0 + setup.rules.clearance).in_millimetres();
    // A cutter that enters from the glue plane leaves a slot between the plane and the axis.
    let disc: Contour = arc([0.0, 0.0], groove_radius, 0.0, 360.0).collect();
    let slot = rectangle(
        -groove_radius,
        (-axis).min(0.0),
        groove_radius,
        (-axis).max(0.0),
    );

    let [left, bottom, right, top] = reach(outline);
    let boxed = rectangle(left, bottom, right, top);
    let row = |contour: &Contour| -> Region {
        centres
            .iter()
            .map(|&centre| moved(contour, centre, axis))
            .collect()
    };
    let (pencils, boxes) = (row(outline), row(&boxed));
    let grooves = combined(&row(&disc), &row(&slot), OverlayRule::Union);

    let widest = top_width.max(bottom_width);
    let band = vec![rectangle(0.0, axis + bottom, widest, axis + top)];
    let (first, last) = (centres[0] + left, centres[centres.len() - 1] + right);
    let run = vec![rectangle(first, axis + bottom, last, axis + top)];
    let beside = combined(&slats, &run, OverlayRule::Difference);
    let less = |one: &Region, other: &Region| area(&combined(one, other, OverlayRule::Difference));
    [
        less(&pencils, &grooves),
        area(&combined(&pencils, &grooves, OverlayRule::Intersect)),
        less(&boxes, &pencils),
        less(&run, &boxes),
        area(&combined(&beside, &band, OverlayRule::Intersect)),
        less(&slats, &band),
    ]
}

const CLASSES: [WoodClass; 6] = [
    WoodClass::Pencils,
    WoodClass::Grooves,
    WoodClass::Corners,
    WoodClass::Parting,
    WoodClass::Edges,
    WoodClass::Faces,
];

fn any_slat() -> impl Strategy<Value = Slat> {
    (30.0_f64..110.0, 5.0_f64..9.0).prop_map(|(width, thickness)| shop::slat(width, thickness))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn outline_areas_agree(described in any_described(), turn in -360.0_f64..360.0) {
        let Some(barrel) = described.barrel() else {
            return Err(TestCaseError::reject("the drawing crosses itself"));
        };
        let found = barrel.bare(Angle::degrees(turn)).area().in_square_millimetres();
        let expected = area(&vec![described.bare(turn)]);
        prop_assert!((found - expected).abs() < TOLERANCE, "{found}, expected {expected}");
    }

    #[test]
    fn every_section_of_the_balance_agrees(
        described in any_described(), turn in -360.0_f64..360.0, top in any_slat(), bottom in any_slat(),
        axis in -0.5_f64..0.5, land in 0.05_f64..1.0, alike in any::<bool>(),
    ) {
        let Some(barrel) = described.barrel() else {
            return Err(TestCaseError::reject("the drawing crosses itself"));
        };
        let rules = shop::rules(|rules| {
            rules.axis_height = Typed::Number(axis);
            rules.land = Typed::Number(land);
            // Only the sizes matter here: a thin wall has its sections too.
            rules.wall = Typed::Number(0.0);
            rules.eccentricity = Typed::Number(0.0);
            rules.bond = Typed::Number(0.0);
            rules.floor = Typed::Number(0.0);
        });
        let bottom = if alike { &top } else { &bottom };
        let setup = Setup { barrel: &barrel, turn: Angle::degrees(turn), top: &top, bottom, rules: &rules };
        let layout = lay_out(&setup);
        prop_assume!(layout.fits());
        let balance = layout.balance().expect("a layout that fits has its balance");
        let centres: Vec<f64> =
            layout.grooves().iter().map(|groove| groove.centre.in_millimetres()).collect();
        let outline = described.bare(turn);
        for (class, expected) in CLASSES.into_iter().zip(sections(&setup, &outline, &centres)) {
            let found = balance.section(class).expect("only the ends have none").in_square_millimetres();
            prop_assert!((found - expected).abs() < TOLERANCE, "{class:?}: {found}, expected {expected}");
        }
    }
}
