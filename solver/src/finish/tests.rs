use super::*;
use crate::barrel::BarrelDraft;
use crate::field::Typed;
use crate::shape::Shape;

pub(super) fn pencil(shape: Shape, change: impl FnOnce(&mut BarrelDraft)) -> FinishedPencil {
    let mut draft = BarrelDraft::new("", shape);
    change(&mut draft);
    let barrel = draft.check().unwrap();
    let finish = draft.finish.check(&barrel).unwrap();
    FinishedPencil::new(barrel, finish, 0.41, 1.98)
}

#[track_caller]
fn close(found: f64, expected: f64, tolerance: f64) {
    assert!(
        (found - expected).abs() <= tolerance,
        "found {found}, expected {expected}"
    );
}

#[test]
fn a_round_pencil_is_a_cylinder_and_a_cone() {
    use std::f64::consts::PI;
    let pencil = pencil(Shape::Round, |draft| {
        draft.size = Typed::Number(7.4);
        draft.coat = Typed::Number(0.1);
        draft.lead_diameter = Typed::Number(2.0);
        draft.finish.point_angle = Typed::Number(24.0);
    });
    let facts = pencil.facts();
    let slope = 1.0 / libm::tan(12.0_f64.to_radians());
    // As made: π(R² − r²)L of wood; sharpened, what lies in front of the cone z = r/tan φ is gone:
    // 2π/3·R³/tan φ of a disc of radius R.
    let (length, wood, lead) = (175.0, 3.6, 1.0);
    let made = PI * (wood * wood - lead * lead) * length;
    let gone = 2.0 * PI / 3.0 * (wood * wood * wood - lead * lead * lead) * slope;
    close(facts.made.wood.volume.in_cubic_millimetres(), made, 1e-9);
    close(
        facts.sharpened.wood.volume.in_cubic_millimetres(),
        made - gone,
        1e-9,
    );
    close(facts.made.lead.grams, PI * length * 1.98e-3, 1e-12);
    close(facts.made.balance.in_millimetres(), 87.5, 1e-11);
    // Half the mass times the square of the radius, of each cylinder less the one inside it.
    let disc = |radius: f64, density: f64| {
        density / 1000.0 * PI / 2.0 * length * radius * radius * radius * radius
    };
    let inertia =
        disc(3.7, 1.4) - disc(3.6, 1.4) + disc(3.6, 0.41) - disc(1.0, 0.41) + disc(1.0, 1.98);
    close(facts.made.inertia, inertia, 1e-9);
    close(facts.grip.in_millimetres(), PI * 7.4, 1e-12);
    assert_eq!((facts.rests, facts.rolls_at.in_degrees()), (0, 0.0));
    close(
        (facts.paint_to - facts.paint_from).in_millimetres(),
        0.0,
        1e-12,
    );
    close(facts.paint_to.in_millimetres(), 3.7 * slope, 1e-12);
    // The chord of a circle within a sagitta of 0.1 mm: 2√(2·3.7·0.1 − 0.01).
    close(
        facts.imprint.face.width().in_millimetres(),
        2.0 * 0.73_f64.sqrt(),
        1e-12,
    );
}

#[test]
fn a_sharp_prism_rolls_at_half_the_angle_of_a_face() {
    for sides in 3..12 {
        let pencil = pencil(Shape::Polygonal, |draft| {
            draft.sides = Typed::Number(f64::from(sides));
            draft.corner_radius = Typed::Number(0.0);
            draft.coat = Typed::Number(0.0);
        });
        let facts = pencil.facts();
        close(facts.rolls_at.in_degrees(), 180.0 / f64::from(sides), 1e-9);
        assert_eq!(facts.rests, sides as usize);
        close(
            facts.grip.in_millimetres(),
            pencil.finished().perimeter().in_millimetres(),
            1e-10,
        );
    }
}

#[test]
fn a_rounder_hexagon_rolls_sooner_down_to_a_circle() {
    let rolls_at = |radius: f64| {
        pencil(Shape::Hexagonal, |draft| {
            draft.corner_radius = Typed::Number(radius)
        })
        .facts()
        .rolls_at
        .in_degrees()
    };
    let slopes = [0.0, 0.5, 1.0, 2.0, 3.0, 3.5].map(rolls_at);
    assert!(
        slopes.windows(2).all(|pair| pair[0] > pair[1] + 0.01),
        "{slopes:?}"
    );
    close(slopes[0], 30.0, 1e-9);
    close(slopes[5], 0.0, 1e-6);
}

#[test]
fn an_oval_is_hardest_to_roll_from_its_wide_side() {
    // Of an ellipse of half axes a > b: h² = a²sin²φ + b²cos²φ from the wide side, h′/h is greatest
    // where tan φ = b/a, with (a² − b²)/(2ab).
    let facts = pencil(Shape::Oval, |_| {}).facts();
    assert_eq!(facts.rests, 2);
    let tangent: f64 = (25.0 - 12.25) / (2.0 * 5.0 * 3.5);
    close(
        facts.rolls_at.in_degrees(),
        libm::atan(tangent).to_degrees(),
        5e-3,
    );
}

#[test]
fn faces_are_counted_from_the_uppermost() {
    let faces = |shape: Shape, change: fn(&mut BarrelDraft)| {
        let mut draft = BarrelDraft::new("", shape);
        change(&mut draft);
        let outline = draft.check().unwrap().finished(crate::Angle::ZERO);
        Face::all(&outline, crate::Length::millimetres(0.1))
            .into_iter()
            .map(|face| (face.normal.angle().in_degrees().round(), face.is_flat))
            .collect::<Vec<_>>()
    };
    assert_eq!(
        faces(Shape::Hexagonal, |_| {}),
        [90.0, 150.0, 210.0, 270.0, 330.0, 30.0].map(|turn| (turn, true))
    );
    assert_eq!(faces(Shape::Round, |_| {}), [(90.0, false)]);
    assert_eq!(faces(Shape::Oval, |_| {}), [(90.0, false), (270.0, false)]);
    assert_eq!(faces(Shape::Flat, |_| {}).len(), 4);
    let bulged = faces(Shape::Triangular, |draft| {
        draft.face_radius = Typed::Number(20.0)
    });
    assert_eq!(bulged, [30.0, 150.0, 270.0].map(|turn| (turn, false)));
}

#[test]
fn a_flat_face_takes_an_imprint_between_its_rounded_corners() {
    let pencil = pencil(Shape::Hexagonal, |_| {});
    let imprint = pencil.imprint();
    // The core hexagon of inradius 3.5 − 0.5 has sides 2·3/√3.
    let side = 6.0 / 3.0_f64.sqrt();
    close(imprint.face.width().in_millimetres(), side, 1e-12);
    close(imprint.height.in_millimetres(), side - 0.6, 1e-12);
    close(imprint.face.middle().in_millimetres(), 0.0, 1e-12);
}

#[test]
fn a_hollow_face_takes_no_imprint() {
    let draft = |draft: &mut BarrelDraft| {
        draft.path = "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z".to_owned();
    };
    assert_eq!(
        pencil(Shape::Free, draft).imprint().height,
        crate::Length::ZERO
    );
}

#[test]
fn round_pencils_lie_in_a_tin_as_circles_do() {
    let rows = |width: f64, height: f64| {
        let facts = pencil(Shape::Round, |draft| {
            draft.size = Typed::Number(7.0);
            draft.finish.tin_width = Typed::Number(width);
            draft.finish.tin_height = Typed::Number(height);
        })
        .facts();
        (facts.straight, facts.staggered)
    };
    let (straight, staggered) = rows(35.0, 7.0);
    assert_eq!(
        (straight.pencils, straight.rows, staggered.pencils),
        (5, 1, 5)
    );
    close(straight.pitch.in_millimetres(), 7.0, 1e-9);
    // Two rows staggered are 7 + 7·√3/2 = 13.06 high, three 19.12.
    let (straight, staggered) = rows(35.0, 19.2);
    assert_eq!((straight.pencils, staggered.pencils), (10, 14));
    close(
        staggered.row_pitch.in_millimetres(),
        3.5 * 3.0_f64.sqrt(),
        1e-9,
    );
    assert_eq!(rows(6.9, 100.0).0.pencils, 0);
}

#[test]
fn hexagons_lie_in_a_tin_as_a_comb() {
    let facts = pencil(Shape::Hexagonal, |draft| {
        draft.corner_radius = Typed::Number(0.0);
        draft.finish.tin_width = Typed::Number(70.0);
        draft.finish.tin_height = Typed::Number(21.0);
    })
    .facts();
    // Corners up, ten side by side, rows 1.5 sides of 4.041 apart: 8.083 + 2·6.062 = 20.2 high.
    assert_eq!(facts.staggered.pencils, 29);
    close(
        facts.staggered.row_pitch.in_millimetres(),
        10.5 / 3.0_f64.sqrt(),
        1e-9,
    );
    close(facts.staggered.pitch.in_millimetres(), 7.0, 1e-9);
}

#[test]
fn a_tin_that_is_too_short_takes_none() {
    let facts = pencil(Shape::Round, |draft| {
        draft.finish.tin_length = Typed::Number(174.0)
    })
    .facts();
    assert_eq!((facts.straight.pencils, facts.staggered.pencils), (0, 0));
}

/// Twice the signed volume that triangles enclose, thirds of determinants; and the areas by material.
fn enclosed(surface: &Surface) -> (f64, [f64; 4]) {
    let place = |corner: u32| {
        let at = corner as usize * Surface::STRIDE;
        [0, 1, 2].map(|k| f64::from(surface.corners[at + k]))
    };
    let (mut volume, mut areas) = (0.0, [0.0; 4]);
    for triangle in surface.triangles.chunks_exact(3) {
        let [a, b, c] = [0, 1, 2].map(|k| place(triangle[k]));
        let [u, v] = [b, c].map(|end| [0, 1, 2].map(|k| end[k] - a[k]));
        let cross = [
            u[1] * v[2] - u[2] * v[1],
            u[2] * v[0] - u[0] * v[2],
            u[0] * v[1] - u[1] * v[0],
        ];
        volume += (0..3).map(|k| a[k] * cross[k]).sum::<f64>() / 6.0;
        let material = surface.corners[triangle[0] as usize * Surface::STRIDE + 6] as usize;
        areas[material] += cross.iter().map(|x| x * x).sum::<f64>().sqrt() / 2.0;
        let normal = [3, 4, 5]
            .map(|k| f64::from(surface.corners[triangle[0] as usize * Surface::STRIDE + k]));
        let outwards: f64 = (0..3).map(|k| normal[k] * cross[k]).sum();
        assert!(
            outwards >= -1e-3,
            "a triangle is turned inwards: {outwards} at {a:?} {b:?} {c:?}"
        );
    }
    (volume, areas)
}

#[test]
fn the_surface_encloses_what_is_weighed() {
    let star = "M0 3 L2 2 L3 0 L4 2 L6 3 L4 4 L3 6 L2 4 Z";
    let hooked = "M0 0 H8 V10 H3 V8.5 H6 V7 H0 Z";
    let free = |path: &'static str| {
        move |draft: &mut BarrelDraft| {
            draft.path = path.to_owned();
            draft.coat = Typed::Number(0.05);
            draft.lead_diameter = Typed::Number(0.7);
        }
    };
    let round = |_: &mut BarrelDraft| {};
    let dipped = |draft: &mut BarrelDraft| draft.finish.dip = Typed::Number(12.0);
    for pencil in [
        pencil(Shape::Round, round),
        pencil(Shape::Hexagonal, dipped),
        pencil(Shape::Triangular, |draft| {
            draft.face_radius = Typed::Number(12.0)
        }),
        pencil(Shape::Oval, round),
        pencil(Shape::Flat, dipped),
        pencil(Shape::Free, free(star)),
        pencil(Shape::Free, free(hooked)),
    ] {
        let surface = pencil.surface();
        let body = pencil.facts().sharpened;
        let volume = [body.wood, body.lead, body.coat]
            .iter()
            .map(|mass| mass.volume.in_cubic_millimetres())
            .sum::<f64>();
        let (found, areas) = enclosed(&surface);
        close(found / volume, 1.0, 1e-3);
        // The bare lead is a cone: π·r·√(r² + z²).
        let (r, z) = (
            pencil.lead_radius().in_millimetres(),
            pencil.lead_end().in_millimetres(),
        );
        let end = if pencil.dip() > crate::Length::ZERO {
            0.0
        } else {
            r * r
        };
        close(
            areas[0],
            std::f64::consts::PI * (r * (r * r + z * z).sqrt() + end),
            0.05 * areas[0],
        );
        assert!(
            surface.triangles.len() / 3 < 30_000,
            "{}",
            surface.triangles.len() / 3
        );
    }
}

#[test]
fn the_balance_moves_away_from_the_point_as_it_is_sharpened() {
    for shape in Shape::ALL {
        let facts = pencil(shape, |draft| {
            draft.path = "M0 0 H8 V6 L4 9 L0 6 Z".to_owned()
        })
        .facts();
        close(facts.made.balance.in_millimetres(), 87.5, 1e-9);
        assert!(facts.sharpened.balance > facts.made.balance, "{shape:?}");
        assert!(facts.sharpened.grams < facts.made.grams);
        assert!(facts.csv(crate::LengthUnit::Inch).lines().count() > 10);
    }
}

#[test]
fn a_point_longer_than_the_pencil_is_told_of() {
    let mut draft = BarrelDraft::new("", Shape::Oval);
    draft.size = Typed::Number(40.0);
    draft.finish.point_angle = Typed::Number(10.0);
    draft.finish.face = Typed::Number(3.0);
    let barrel = draft.check().unwrap();
    let problems = draft.finish.check(&barrel).unwrap_err();
    let fields: Vec<_> = problems.iter().map(|problem| problem.field).collect();
    assert_eq!(
        fields,
        [crate::Field::PointAngle, crate::Field::ImprintFace]
    );
    assert!(problems[0].to_string().contains("make the angle larger"));
}

#[test]
fn a_pencil_is_drawn_as_long_as_it_says() {
    let paper = |landscape| crate::Paper {
        size: crate::PaperSize::A4,
        landscape,
    };
    let draw = |pencil: &FinishedPencil, landscape| {
        let drawn = crate::draw_pencil(pencil, paper(landscape), crate::LengthUnit::Millimetre);
        let svg = drawn.drawing.to_svg("Any");
        assert!(!svg.contains("NaN") && !svg.contains("inf"), "{svg}");
        for dimension in &drawn.drawing.dimensions {
            let area = dimension.area;
            assert!(
                area.x >= 0.0 && area.x + area.width <= drawn.drawing.width,
                "{dimension:?}"
            );
            assert!(area.y >= 0.0 && area.y + area.height <= drawn.drawing.height);
        }
        drawn
    };
    let change = |draft: &mut BarrelDraft| {
        draft.finish.dip = Typed::Number(12.0);
        draft.finish.imprint = "<Made & up>".to_owned();
    };
    let drawn = draw(&pencil(Shape::Hexagonal, change), false);
    assert_eq!(drawn.scale.label(), "1:1");
    let shown = |size: crate::Size| {
        let mut found = drawn.drawing.dimensions.iter();
        found
            .find(|dimension| dimension.size == size)
            .map(|found| found.text.clone())
    };
    for (size, text) in [
        (crate::Size::PencilLength, "175.00"),
        (crate::Size::Dip, "12.00"),
        (crate::Size::BareLead, "5.66"),
        (crate::Size::PaintFrom, "18.01"),
    ] {
        assert_eq!(shown(size).as_deref(), Some(text));
    }
    let svg = drawn.drawing.to_svg("Any");
    assert!(svg.contains("&lt;Made &amp; up&gt;"));
    let long = |draft: &mut BarrelDraft| draft.length = Typed::Number(400.0);
    assert_eq!(draw(&pencil(Shape::Oval, long), true).scale.label(), "1:2");
    let hooked = |draft: &mut BarrelDraft| {
        draft.path = "M0 0 H2 A2 2 0 0 0 6 0 H8 V10 H3 V8.5 H6 V7 H0 Z".to_owned();
    };
    draw(&pencil(Shape::Free, hooked), false);
}
