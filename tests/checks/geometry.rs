//! Outlines against closed forms and printed tables.
//!
//! Where no other source stands beside a value it was computed from the formula named there,
//! with 25 digits or more.

use proptest::prelude::*;
use solver::{Angle, Barrel, Direction, Length, Outline, Shape, Typed};
use std::f64::consts::PI;
use tests::shop;

/// A few times the rounding of a chain of sums of millimetres.
const ROUNDING: f64 = 1e-12;

fn near(found: f64, expected: f64, tolerance: f64, what: &str) {
    let miss = (found - expected).abs();
    assert!(
        miss <= tolerance,
        "{what}: found {found}, expected {expected}, off by {miss:e}"
    );
}

fn area(outline: &Outline) -> f64 {
    outline.area().in_square_millimetres()
}

fn perimeter(outline: &Outline) -> f64 {
    outline.perimeter().in_millimetres()
}

/// Width between two parallel jaws whose normal points at an angle from the x axis, degrees.
fn width(outline: &Outline, degrees: f64) -> f64 {
    let reach = |degrees: f64| outline.support(Angle::degrees(degrees).direction());
    (reach(degrees) + reach(degrees + 180.0)).in_millimetres()
}

/// The same width, read from the ranges of directions in which one corner reaches farthest.
fn width_by_reaches(outline: &Outline, degrees: f64) -> f64 {
    let reaches = outline.reaches();
    let farthest = |direction: Direction| {
        let reach = reaches
            .iter()
            .find(|reach| turn_between(reach.from, direction) <= turn_between(reach.from, reach.to))
            .expect("the ranges leave no gap");
        reach.centre.x * direction.x + reach.centre.y * direction.y + reach.radius
    };
    let jaw = |degrees: f64| farthest(Angle::degrees(degrees).direction());
    jaw(degrees) + jaw(degrees + 180.0)
}

/// Counter-clockwise from one direction to another, radians from a hair below 0 up to a turn.
fn turn_between(from: Direction, to: Direction) -> f64 {
    let turn = libm::atan2(from.cross(to), from.dot(to));
    if turn < -1e-12 { turn + 2.0 * PI } else { turn }
}

fn hexagon(across_flats: f64, corner: f64) -> Outline {
    let (inradius, corner) = (across_flats / 2.0, Length::millimetres(corner));
    Outline::regular(6, Length::millimetres(inradius), corner, Angle::ZERO)
}

/// A regular polygon of side 1: its inradius is 1 / (2 tan(π/n)).
fn unit_polygon(sides: u32) -> Outline {
    let half = Angle::degrees(180.0 / f64::from(sides)).direction();
    let inradius = Length::millimetres(half.x / half.y / 2.0);
    Outline::regular(sides, inradius, Length::ZERO, Angle::ZERO)
}

#[test]
fn hexagon_area_and_width_across_corners() {
    // Area (√3/2)·AF², across corners (2/√3)·AF.
    for (across_flats, expected_area, across_corners) in [
        (6.9, 41.23146947417712, 7.967433714816836),
        (7.0, 42.43524478543749, 8.082903768654761),
        (7.2, 44.8947569321853, 8.31384387633061),
        (7.5, 48.71392896287467, 8.660254037844386),
    ] {
        let sharp = hexagon(across_flats, 0.0);
        let what = format!("hexagon {across_flats} across flats");
        near(area(&sharp), expected_area, ROUNDING * 50.0, &what);
        near(width(&sharp, 0.0), across_corners, ROUNDING, &what);
        near(width(&sharp, 90.0), across_flats, ROUNDING, &what);
    }
}

#[test]
fn hexagon_width_in_any_direction() {
    // AF / cos 30° · cos(30° − θ) at θ from a face normal.
    for (turn, expected) in [
        (0.0, 7.0),
        (5.0, 7.325598627399694),
        (10.0, 7.595445025927488),
        (15.0, 7.807485501552874),
        (20.0, 7.960106298222803),
        (25.0, 8.052145879519662),
        (30.0, 8.082903768654761),
    ] {
        let sharp = hexagon(7.0, 0.0);
        near(width(&sharp, 90.0 + turn), expected, ROUNDING, "one way");
        near(width(&sharp, 90.0 - turn), expected, ROUNDING, "the other");
        // The other way round: turned under jaws that stay level.
        let inradius = Length::millimetres(3.5);
        let turned = Outline::regular(6, inradius, Length::ZERO, Angle::degrees(turn));
        let height = turned.extents().height().in_millimetres();
        near(height, expected, ROUNDING, "turned");
        for degrees in [90.0 + turn, 90.0 - turn, 150.0 + turn] {
            let found = width_by_reaches(&sharp, degrees);
            near(found, expected, ROUNDING, "by reaches");
        }
    }
}

#[test]
fn regular_polygons_of_side_one() {
    // Area, least and greatest width.
    for (sides, expected_area, least, greatest) in [
        (3, 0.4330127018922193, 0.8660254037844386, 1.0),
        (4, 1.0, 1.0, std::f64::consts::SQRT_2),
        (5, 1.720477400588967, 1.5388417685876268, 1.618033988749895),
        (6, 2.598076211353316, 1.7320508075688772, 2.0),
        (8, 4.82842712474619, 2.414213562373095, 2.613125929752753),
    ] {
        let polygon = unit_polygon(sides);
        let what = format!("{sides} sides");
        near(area(&polygon), expected_area, ROUNDING, &what);
        near(perimeter(&polygon), f64::from(sides), ROUNDING, &what);
        // Every extreme width of these lies at a multiple of a tenth of a degree.
        let widths = || (0..1800).map(|tenth| width(&polygon, f64::from(tenth) / 10.0));
        near(widths().fold(f64::MAX, f64::min), least, ROUNDING, &what);
        near(widths().fold(0.0, f64::max), greatest, ROUNDING, &what);
    }
}

#[test]
fn polygonal_barrels_have_the_area_of_their_polygon() {
    // n·ρ²·tan(π/n) with the inradius ρ = 3.5.
    for sides in [3, 4, 5, 6, 8, 12, 24] {
        let barrel = shop::changed_barrel(Shape::Polygonal, 7.0, 0.0, |draft| {
            draft.sides = Typed::Number(f64::from(sides));
            draft.coat = Typed::Number(0.0);
        });
        let number = f64::from(sides);
        let expected = number * 3.5 * 3.5 * libm::tan(PI / number);
        let what = format!("{sides} sides");
        near(area(&barrel.bare(Angle::ZERO)), expected, 1e-11, &what);
        near(barrel.period().in_degrees(), 360.0 / number, 0.0, &what);
    }
}

/// A triangle as wide as it is high from every side, without a coat.
fn constant_width(width: f64, corner: f64) -> Outline {
    let barrel = shop::changed_barrel(Shape::Triangular, width, corner, |draft| {
        draft.face_radius = Typed::Number(width - corner);
        draft.coat = Typed::Number(0.0);
    });
    barrel.bare(Angle::degrees(17.3))
}

#[test]
fn the_reuleaux_triangle_is_as_wide_from_every_side() {
    // Of width 1: area ½(π − √3), the least of its width (Blaschke and Lebesgue), and girth π.
    let outline = constant_width(7.0, 0.0);
    near(area(&outline), 49.0 * 0.704770923010458, 1e-12, "area");
    near(perimeter(&outline), 7.0 * PI, 1e-12, "girth");
    for tenth in 0..3600 {
        let degrees = f64::from(tenth) / 10.0;
        let what = format!("{degrees}°");
        near(width(&outline, degrees), 7.0, ROUNDING * 10.0, &what);
        let by_reaches = width_by_reaches(&outline, degrees);
        near(by_reaches, 7.0, ROUNDING * 10.0, &what);
    }
}

#[test]
fn rounded_triangles_of_constant_width_follow_barbier_and_steiner() {
    // Barbier: the girth is π·w whatever the corners. Steiner: of width w = w₀ + 2r, the area is
    // that of the sharp one of width w₀ grown by r, ½(π − √3)·w₀² + π·w₀·r + π·r².
    for corner in [0.2, 0.5, 1.2, 3.0] {
        let outline = constant_width(7.0, corner);
        let core = 7.0 - 2.0 * corner;
        let expected = 0.704770923010458 * core * core + PI * core * corner + PI * corner * corner;
        let what = format!("corners of {corner}");
        near(area(&outline), expected, 1e-11, &what);
        near(perimeter(&outline), 7.0 * PI, 1e-11, &what);
    }
}

#[test]
fn rounded_outlines_follow_steiner() {
    // A core grown by r: A = A₀ + P₀·r + π·r², P = P₀ + 2π·r.
    let rounded = hexagon(7.0, 0.5);
    near(area(&rounded), 42.3546175450505, ROUNDING * 50.0, "r 0.5");
    near(perimeter(&rounded), 23.92620234441632, 1e-11, "r 0.5");
    near(area(&hexagon(7.0, 1.0)), 42.11273582388953, 1e-10, "r 1");

    let (inradius, corner) = (Length::millimetres(3.5), Length::millimetres(0.35));
    let octagon = Outline::regular(8, inradius, corner, Angle::ZERO);
    near(area(&octagon), 40.57184492150243, 1e-10, "octagon");
    near(perimeter(&octagon), 23.075478401116847, 1e-11, "octagon");
}

/// A sharp hexagon, 7 across flats, under a coat.
fn coated(coat: f64) -> Barrel {
    shop::changed_barrel(Shape::Hexagonal, 7.0, 0.0, |draft| {
        draft.coat = Typed::Number(coat);
    })
}

#[test]
fn the_wood_under_a_coat_is_the_inset_outline() {
    // A hexagon moved in by t is one of AF − 2t: (√3/2)·(AF − 2t)².
    for (coat, expected) in [(1.0, 21.650635094610966), (0.25, 36.589573309892536)] {
        let bare = coated(coat).bare(Angle::ZERO);
        near(area(&bare), expected, 1e-11, &format!("inset {coat}"));
        // The same by offsetting the curve, whatever it is: corners to a micrometre's thousandth.
        let inner = hexagon(7.0, 0.0).inset(Length::millimetres(coat));
        let inner = inner.expect("the coat leaves wood in one piece");
        near(area(&inner), expected, 1e-8, &format!("offset by {coat}"));
    }
}

#[test]
fn every_face_moves_in_by_the_coat() {
    let barrel = shop::barrel(Shape::Triangular, 7.6, 1.2);
    let (finished, bare) = (barrel.finished(Angle::ZERO), barrel.bare(Angle::ZERO));
    for tenth in 0..3600 {
        let direction = Angle::degrees(f64::from(tenth) / 10.0).direction();
        let coat = finished.support(direction) - bare.support(direction);
        near(coat.in_millimetres(), 0.08, ROUNDING, &format!("{tenth}"));
    }
}

#[test]
fn the_mean_width_is_the_perimeter_over_pi() {
    // Cauchy: for every convex outline. The mean is taken over 36 000 directions; the kinks of
    // the width at its narrowest directions leave an error below 1e-8 of it.
    let mean = |outline: &Outline| {
        let steps = 36_000;
        let sum: f64 = (0..steps)
            .map(|step| width(outline, (f64::from(step) + 0.5) / 200.0))
            .sum();
        sum / f64::from(steps)
    };
    near(mean(&unit_polygon(3)), 0.954929658551372, 1e-8, "triangle");
    near(mean(&unit_polygon(6)), 1.909859317102744, 1e-8, "hexagon");
    for (sides, corner) in [(3, 0.4), (5, 0.1), (6, 0.5), (8, 1.3)] {
        let (inradius, corner) = (Length::millimetres(3.5), Length::millimetres(corner));
        let outline = Outline::regular(sides, inradius, corner, Angle::degrees(17.3));
        let expected = perimeter(&outline) / std::f64::consts::PI;
        near(mean(&outline), expected, 1e-7, &format!("{sides} sides"));
    }
}

/// A convex barrel of any kind, turned, and without its coat.
fn any_convex() -> impl Strategy<Value = Outline> {
    let shapes = [
        Shape::Round,
        Shape::Hexagonal,
        Shape::Triangular,
        Shape::Polygonal,
        Shape::Oval,
        Shape::Flat,
    ];
    let sizes = (6.0_f64..12.0, 0.0_f64..0.9, 0.5_f64..1.5, 0.0_f64..0.2);
    let own = (3_u32..=24, prop::option::of(0.0_f64..40.0));
    let shape = prop::sample::select(shapes.to_vec());
    (shape, sizes, own, -360.0_f64..360.0).prop_map(
        |(shape, (size, share, aspect, coat), (sides, more), turn)| {
            let corner = share * size.min(size * aspect) / 2.0;
            let barrel = shop::changed_barrel(shape, size, corner, |draft| {
                draft.height = Typed::Number(size * aspect);
                draft.sides = Typed::Number(f64::from(sides));
                draft.face_radius =
                    more.map_or(Typed::empty(), |more| Typed::Number(size - corner + more));
                draft.coat = Typed::Number(coat);
                draft.lead_diameter = Typed::Number(0.5);
            });
            barrel.bare(Angle::degrees(turn))
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_support_of_any_convex_outline_adds_up_to_its_girth(outline in any_convex()) {
        // Cauchy: the girth is the integral of the support over all directions. Over a range in
        // which one corner (c, r) reaches farthest, ∫ c·d + r = c × (d₂ − d₁) turned back a
        // quarter, + r·(θ₂ − θ₁).
        let girth: f64 = outline
            .reaches()
            .iter()
            .map(|reach| {
                let (x, y) = (reach.to.x - reach.from.x, reach.to.y - reach.from.y);
                reach.centre.x * y - reach.centre.y * x
                    + reach.radius * turn_between(reach.from, reach.to)
            })
            .sum();
        let found = perimeter(&outline);
        // An oval is a chain of hundreds of arcs, its joints smooth to 1e-9.
        prop_assert!((found - girth).abs() < 1e-7, "{found}, by the support {girth}");
        // Once more from the support in 1440 directions; the kinks leave an error below 1e-4.
        let sampled: f64 = (0..1440)
            .map(|step| Angle::degrees((f64::from(step) + 0.5) / 4.0).direction())
            .map(|direction| outline.support(direction).in_millimetres() * 2.0 * PI / 1440.0)
            .sum();
        prop_assert!((found - sampled).abs() < 1e-3, "{found}, sampled {sampled}");
    }
}
