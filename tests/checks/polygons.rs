//! The wood balance of random sandwiches against polygon booleans of another library.
//!
//! Outlines are drawn here from their definition (a core polygon grown by a disc, under a coat),
//! with a vertex every fifth of a degree of arc, on the grid of the other library, 1e-7 mm. A
//! circle of radius r lacks π·r²·Δ²/6 of area drawn that way: with r up to 5.5 mm and Δ = 0.2°
//! less than 0.0002 mm² a pencil. The tolerance of a section is 0.004 mm², of up to 20 pencils.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::single::SingleFloatOverlay;
use proptest::prelude::*;
use solver::{Angle, Barrel, Setup, Shape, Slat, Typed, WoodClass, lay_out};
use tests::shop;

/// mm².
const TOLERANCE: f64 = 0.004;

/// A closed line of points, mm.
type Contour = Vec<[f64; 2]>;
/// Contours, the outer ones counter-clockwise and their holes clockwise.
type Region = Vec<Contour>;

fn combined(one: &Region, other: &Region, rule: OverlayRule) -> Region {
    let shapes = one.overlay(other, rule, FillRule::NonZero);
    shapes.into_iter().flatten().collect()
}

fn area(region: &Region) -> f64 {
    let twice = |contour: &Contour| {
        (0..contour.len())
            .map(|k| {
                let ([x, y], [next_x, next_y]) = (contour[k], contour[(k + 1) % contour.len()]);
                x * next_y - next_x * y
            })
            .sum::<f64>()
    };
    region.iter().map(twice).sum::<f64>() / 2.0
}

fn rectangle(left: f64, bottom: f64, right: f64, top: f64) -> Contour {
    vec![[left, bottom], [right, bottom], [right, top], [left, top]]
}

fn moved(contour: &Contour, x: f64, y: f64) -> Contour {
    contour
        .iter()
        .map(|point| [point[0] + x, point[1] + y])
        .collect()
}

/// Points of a circle from one angle to another, degrees.
fn arc(centre: [f64; 2], radius: f64, from: f64, to: f64) -> impl Iterator<Item = [f64; 2]> {
    let steps = ((to - from) * 5.0).ceil().max(1.0);
    (0..=steps as u32).map(move |step| {
        let angle = (from + (to - from) * f64::from(step) / steps).to_radians();
        let (sine, cosine) = libm::sincos(angle);
        [centre[0] + radius * cosine, centre[1] + radius * sine]
    })
}

/// The wood of a barrel round its lead axis, moved in by the coat.
fn bare(barrel: &Barrel, turn: Angle) -> Contour {
    let size = barrel.size().in_millimetres();
    let corner = barrel.corner_radius().in_millimetres();
    let coat = barrel.coat().in_millimetres();
    let (sides, inradius) = match barrel.shape() {
        Shape::Round => return arc([0.0, 0.0], size / 2.0 - coat, 0.0, 360.0).collect(),
        Shape::Hexagonal => (6, size / 2.0),
        // A triangle of inradius ρ is 3ρ high, less r for the rounding of its upper corner.
        Shape::Triangular => (3, (size + corner) / 3.0),
    };
    let corner_under_coat = (corner - coat).max(0.0);
    let half = 180.0 / f64::from(sides);
    let reach = (inradius - coat - corner_under_coat) / libm::cos(half.to_radians());
    (0..sides)
        .flat_map(|side| {
            let middle = turn.in_degrees() - 90.0 + half * (2.0 * f64::from(side) + 1.0);
            let (sine, cosine) = libm::sincos(middle.to_radians());
            let centre = [reach * cosine, reach * sine];
            arc(centre, corner_under_coat, middle - half, middle + half)
        })
        .collect()
}

/// How far a contour reaches: left, bottom, right, top.
fn reach(contour: &Contour) -> [f64; 4] {
    let each = |axis: usize| contour.iter().map(move |point| point[axis]);
    [
        each(0).fold(f64::MAX, f64::min),
        each(1).fold(f64::MAX, f64::min),
        each(0).fold(f64::MIN, f64::max),
        each(1).fold(f64::MIN, f64::max),
    ]
}

/// Sections of pencils, grooves, corners, parting, edges and faces, mm².
fn sections(setup: &Setup<'_>, centres: &[f64]) -> [f64; 6] {
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

    let outline = bare(setup.barrel, setup.turn);
    let [left, bottom, right, top] = reach(&outline);
    let boxed = rectangle(left, bottom, right, top);
    let row = |contour: &Contour| -> Region {
        centres
            .iter()
            .map(|&centre| moved(contour, centre, axis))
            .collect()
    };
    let (pencils, boxes) = (row(&outline), row(&boxed));
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

fn any_barrel() -> impl Strategy<Value = Barrel> {
    let sizes = (5.5_f64..11.0, 0.0_f64..0.9, 0.0_f64..0.2, 1.0_f64..2.4);
    (0..Shape::ALL.len(), sizes).prop_map(|(shape, (size, share, coat, lead))| {
        let corner = share * size / 3.0;
        shop::changed_barrel(Shape::ALL[shape], size, corner, |draft| {
            draft.coat = Typed::Number(coat);
            draft.lead_diameter = Typed::Number(lead);
        })
    })
}

fn any_slat() -> impl Strategy<Value = Slat> {
    (30.0_f64..110.0, 5.0_f64..9.0).prop_map(|(width, thickness)| shop::slat(width, thickness))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn outline_areas_agree(barrel in any_barrel(), turn in -360.0_f64..360.0) {
        let turn = Angle::degrees(turn);
        let found = barrel.bare(turn).area().in_square_millimetres();
        let expected = area(&vec![bare(&barrel, turn)]);
        prop_assert!((found - expected).abs() < TOLERANCE, "{found}, expected {expected}");
    }

    #[test]
    fn every_section_of_the_balance_agrees(
        barrel in any_barrel(), turn in -360.0_f64..360.0, top in any_slat(), bottom in any_slat(),
        axis in -0.5_f64..0.5, land in 0.05_f64..1.0, alike in any::<bool>(),
    ) {
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
        for (class, expected) in CLASSES.into_iter().zip(sections(&setup, &centres)) {
            let found = balance.section(class).expect("only the ends have none").in_square_millimetres();
            prop_assert!((found - expected).abs() < TOLERANCE, "{class:?}: {found}, expected {expected}");
        }
    }
}
