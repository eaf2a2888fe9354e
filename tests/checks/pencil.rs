//! The finished pencil against closed forms, handbook densities and integrals taken another way.

use proptest::prelude::*;
use solver::wood::density;
use solver::{
    Angle, Barrel, BarrelDraft, FinishedPencil, Outline, PencilFacts, Segment, Shape, Surface,
    Typed,
};
use tests::shop;

/// Densities of wood and lead, g/cm³: incense-cedar at 12 % (see below), and HB lead (a supplier's data
/// sheet gives 720 g a gross of 2.2 mm; density computed).
const WOOD: f64 = 0.411;
const LEAD: f64 = 1.98;

fn finished(
    shape: Shape,
    size: f64,
    corner: f64,
    change: impl FnOnce(&mut BarrelDraft),
) -> FinishedPencil {
    let mut draft = shop::barrel_draft(shape, size, corner);
    change(&mut draft);
    let barrel: Barrel = draft
        .check()
        .expect("the cases name barrels that can be made");
    let finish = draft
        .finish
        .check(&barrel)
        .expect("the cases name finishes that go with them");
    FinishedPencil::new(barrel, finish, WOOD, LEAD)
}

#[track_caller]
fn close(found: f64, expected: f64, tolerance: f64) {
    let missed = (found - expected).abs();
    assert!(
        missed <= tolerance,
        "found {found}, expected {expected}, missed by {missed}"
    );
}

/// From across corners and across flats, which differ by 2/√3: the cone meets a corner that much
/// farther from the tip, over tan φ (a cone cut by a plane beside its axis; closed form).
#[test]
fn the_scallops_of_a_hexagon_are_as_deep_as_corners_stand_out() {
    for angle in [18.0, 22.0, 30.0, 60.0] {
        let facts = finished(Shape::Hexagonal, 7.0, 0.0, |draft| {
            draft.finish.point_angle = Typed::Number(angle);
        })
        .facts();
        let tangent = libm::tan((angle / 2.0_f64).to_radians());
        let depth = (8.082_903_768_654_761 - 7.0) / 2.0 / tangent;
        close(
            (facts.paint_to - facts.paint_from).in_millimetres(),
            depth,
            1e-11,
        );
        close(facts.lead_end.in_millimetres(), 1.1 / tangent, 1e-11);
    }
}

/// Polar moment of a regular polygon of n sides s: n·s⁴/96·cot(π/n)·(3·cot²(π/n) + 1), twice that
/// about a line through the centre (mechanics handbooks, from memory; s⁴/6 of a square); area n·s²/4·cot(π/n).
#[test]
fn a_regular_prism_has_the_inertia_of_the_handbook() {
    use std::f64::consts::{FRAC_PI_2, PI};
    for sides in 3..=12_u32 {
        let facts = finished(Shape::Polygonal, 7.0, 0.0, |draft| {
            draft.sides = Typed::Number(f64::from(sides));
            draft.coat = Typed::Number(0.0);
        })
        .facts();
        let n = f64::from(sides);
        let cotangent = 1.0 / libm::tan(PI / n);
        let side = 7.0 / cotangent;
        let polar =
            n * libm::pow(side, 4.0) / 96.0 * cotangent * (3.0 * cotangent * cotangent + 1.0);
        let area = n * side * side / 4.0 * cotangent;
        let bore = FRAC_PI_2 * libm::pow(1.1, 4.0);
        let inertia = 175.0 / 1000.0 * ((polar - bore) * WOOD + bore * LEAD);
        close(facts.made.inertia, inertia, 1e-9);
        let volume = (area - PI * 1.21) * 175.0;
        close(facts.made.wood.volume.in_cubic_millimetres(), volume, 1e-8);
        close(facts.rolls_at.in_degrees(), 180.0 / n, 1e-9);
    }
}

/// Density of incense-cedar at 12 %: 411.0 kg/m³ (USDA Forest Products Laboratory, *Wood Handbook*,
/// FPL-GTR-190, tables 4-3 and 5-3, the latter recalled).
#[test]
fn a_cedar_pencil_weighs_what_the_handbook_makes_of_its_volume() {
    close(density(0.35, 7.7, 12.0) / 1000.0, WOOD, 5e-5);
    let facts = finished(Shape::Hexagonal, 7.0, 0.5, |draft| {
        draft.coat = Typed::Number(0.0)
    })
    .facts();
    // A(core) + P(core)·r + π·r² (Steiner) of a hexagon of 7 mm rounded with 0.5: 42.3546175450505 mm².
    let wood = (42.354_617_545_050_5 - std::f64::consts::PI * 1.21) * 0.175 * WOOD;
    close(facts.made.wood.grams, wood, 1e-9);
    // A lead of 720 g a gross.
    close(
        facts.made.lead.grams,
        std::f64::consts::PI * 1.21 * 0.175 * LEAD,
        1e-12,
    );
    // Perimeter of the rounded hexagon, which its hull is: 23.92620234441632 mm.
    close(facts.grip.in_millimetres(), 23.926_202_344_416_32, 1e-10);
}

/// A hexagon that is rounded lies between the hexagon and the circle of its face distance.
#[test]
fn a_rounded_hexagon_lies_between_hexagon_and_circle() {
    let facts = |corner: f64| finished(Shape::Hexagonal, 7.0, corner, |_| {}).facts();
    let [sharp, rounded, round] = [0.0, 1.5, 3.5].map(facts);
    let between = |of: fn(&PencilFacts) -> f64| {
        let [sharp, rounded, round] = [&sharp, &rounded, &round].map(of);
        assert!(
            sharp > rounded && rounded > round,
            "{sharp} {rounded} {round}"
        );
    };
    between(|facts| facts.made.grams);
    between(|facts| facts.made.inertia);
    between(|facts| facts.rolls_at.in_degrees());
    between(|facts| facts.paint_to.in_millimetres());
    between(|facts| facts.grip.in_millimetres());
    let circle = finished(Shape::Round, 7.0, 0.0, |_| {}).facts();
    close(round.made.inertia, circle.made.inertia, 1e-9);
}

/// Circles in rows: straight ones of one diameter, staggered ones √3/2 of it apart (geometry).
#[test]
fn circles_lie_in_a_tin_as_in_the_plane() {
    for (width, height, straight, staggered) in [
        (70.0, 7.0, 10, 10),
        (70.0, 13.1, 10, 19),
        (73.5, 13.1, 10, 20),
        (70.0, 14.0, 20, 19),
        (35.0, 37.4, 25, 27),
    ] {
        let facts = finished(Shape::Round, 7.0, 0.0, |draft| {
            draft.finish.tin_width = Typed::Number(width);
            draft.finish.tin_height = Typed::Number(height);
        })
        .facts();
        let found = (facts.straight.pencils, facts.staggered.pencils);
        assert_eq!(found, (straight, staggered), "{width} × {height}");
    }
}

/// Whether a point lies inside an outline: by the crossings of a ray, which shares nothing with the
/// integrals along its boundary.
fn is_inside(outline: &Outline, x: f64, y: f64) -> bool {
    let crossings = outline.segments().iter().map(|segment| match segment {
        Segment::Line(line) => {
            let (from, to) = (line.from, line.to);
            let crosses = (from.y > y) != (to.y > y);
            let at = || from.x + (y - from.y) / (to.y - from.y) * (to.x - from.x);
            usize::from(crosses && at() > x)
        }
        Segment::Arc(arc) => {
            // As chords short enough for the tolerance of the check.
            let points: Vec<_> = (0..=16)
                .map(|k| {
                    let turned = Angle::radians(arc.sweep() * f64::from(k) / 16.0).direction();
                    arc.centre.towards(arc.from.turned(turned), arc.radius)
                })
                .collect();
            let chord = |pair: &[solver::Point]| {
                let (from, to) = (pair[0], pair[1]);
                let crosses = (from.y > y) != (to.y > y);
                usize::from(
                    crosses && from.x + (y - from.y) / (to.y - from.y) * (to.x - from.x) > x,
                )
            };
            points.windows(2).map(chord).sum()
        }
    });
    crossings.sum::<usize>() % 2 == 1
}

/// Volume and centre of mass of a sharpened pencil by adding up columns over a grid.
#[test]
fn a_sharpened_pencil_is_the_sum_of_its_columns() {
    let fluted =
        |draft: &mut BarrelDraft| draft.path = "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z".to_owned();
    for (shape, change) in [
        (Shape::Hexagonal, (|_| ()) as fn(&mut BarrelDraft)),
        (Shape::Triangular, |_| ()),
        (Shape::Free, fluted),
    ] {
        let pencil = finished(shape, 8.0, 1.0, change);
        let facts = pencil.facts();
        let (outline, bare) = {
            // Turned, so that no side runs along the grid.
            let (barrel, turn) = (pencil.barrel(), Angle::degrees(17.3));
            (barrel.finished(turn), barrel.bare(turn))
        };
        let slope = 1.0 / libm::tan(pencil.half_angle().in_degrees().to_radians());
        let coat = pencil.densities().coat;
        let (mut mass, mut along, mut inertia) = (0.0, 0.0, 0.0);
        let step = 0.05;
        for i in -160..160 {
            for k in -160..160 {
                let (x, y) = ((f64::from(i) + 0.5) * step, (f64::from(k) + 0.5) * step);
                if !is_inside(&outline, x, y) {
                    continue;
                }
                let r = (x * x + y * y).sqrt();
                let density = if r < 1.1 {
                    LEAD
                } else if is_inside(&bare, x, y) {
                    WOOD
                } else {
                    coat
                };
                let from = r * slope;
                let column = density / 1000.0 * step * step * (175.0 - from);
                mass += column;
                along += column * (175.0 + from) / 2.0;
                inertia += column * r * r;
            }
        }
        close(facts.sharpened.grams / mass, 1.0, 3e-3);
        close(facts.sharpened.balance.in_millimetres(), along / mass, 0.02);
        close(facts.sharpened.inertia / inertia, 1.0, 5e-3);
    }
}

/// Volume that the triangles of a surface enclose, by tetrahedra from the origin (Gauss).
fn enclosed(surface: &Surface) -> f64 {
    let place = |corner: u32| {
        let at = corner as usize * Surface::STRIDE;
        [0, 1, 2].map(|k| f64::from(surface.corners[at + k]))
    };
    let volume = |triangle: &[u32]| {
        let [a, b, c] = [0, 1, 2].map(|k| place(triangle[k]));
        let cross = [
            b[1] * c[2] - b[2] * c[1],
            b[2] * c[0] - b[0] * c[2],
            b[0] * c[1] - b[1] * c[0],
        ];
        (a[0] * cross[0] + a[1] * cross[1] + a[2] * cross[2]) / 6.0
    };
    surface.triangles.chunks_exact(3).map(volume).sum()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// As it is made, every section is alike, so the centre of mass lies halfway; and the surface
    /// encloses what the integrals weigh.
    #[test]
    fn any_pencil_balances_halfway_and_fills_its_surface(
        shape in prop::sample::select(Shape::ALL.to_vec()),
        size in 6.0_f64..10.0,
        corner in 0.0_f64..1.5,
        angle in 14.0_f64..70.0,
        dip in 0.0_f64..20.0,
    ) {
        let pencil = finished(shape, size, corner, |draft| {
            draft.path = "M0 0 L4 -1 L8 0 V6 Q4 8 0 6 Z".to_owned();
            draft.height = Typed::Number(size * 0.8);
            draft.finish.point_angle = Typed::Number(angle);
            draft.finish.dip = Typed::Number(dip);
        });
        let facts = pencil.facts();
        prop_assert!((facts.made.balance.in_millimetres() - 87.5).abs() < 1e-9);
        prop_assert!(facts.sharpened.balance > facts.made.balance);
        let body = &facts.sharpened;
        let volume = [body.wood, body.lead, body.coat].map(|part| part.volume.in_cubic_millimetres());
        let share = enclosed(&pencil.surface()) / volume.iter().sum::<f64>();
        prop_assert!((share - 1.0).abs() < 1e-3, "{}", share);
        prop_assert!(facts.rolls_at.in_degrees() < 90.0 && facts.grip >= pencil.barrel().size());
    }
}
