use super::*;
use crate::barrel::{Barrel, BarrelDraft};
use crate::field::Typed;
use crate::layout::lay_out;
use crate::quantity::Angle;
use crate::rules::{Rules, RulesDraft, Spacing};
use crate::shape::Shape;
use crate::slat::{Slat, SlatDraft};
use crate::tooling::{CutDraft, HeadDraft};
use proptest::prelude::*;

struct Case {
    barrel: Barrel,
    turn: f64,
    slat: Slat,
    rules: Rules,
    head: Head,
    cut: Cut,
}

impl Case {
    fn new(shape: Shape, turn: f64) -> Self {
        Self {
            barrel: BarrelDraft::new("", shape).check().unwrap(),
            turn,
            slat: SlatDraft::new("").check().unwrap(),
            rules: RulesDraft::new().check().unwrap(),
            head: HeadDraft::new().check().unwrap(),
            cut: CutDraft::new().check().unwrap(),
        }
    }

    fn headed(mut self, diameter: f64, hook: f64) -> Self {
        let mut draft = HeadDraft::new();
        draft.diameter = Typed::Number(diameter);
        draft.hook = Typed::Number(hook);
        self.head = draft.check().unwrap();
        self
    }

    fn knives(&self) -> Result<Vec<Knife>, Vec<KnifeProblem>> {
        let setup = Setup {
            barrel: &self.barrel,
            turn: Angle::degrees(self.turn),
            top: &self.slat,
            bottom: &self.slat,
            rules: &self.rules,
        };
        knives(&setup, &lay_out(&setup), &[self.head; 3], &self.cut)
    }

    fn layout(&self) -> Layout {
        lay_out(&Setup {
            barrel: &self.barrel,
            turn: Angle::degrees(self.turn),
            top: &self.slat,
            bottom: &self.slat,
            rules: &self.rules,
        })
    }
}

/// The textbook formula, with nothing done for its last digits.
fn textbook(head: &Head, depth: f64) -> f64 {
    let radius = head.radius().in_millimetres();
    let offset = radius * libm::sin(head.hook().in_degrees().to_radians());
    (radius * radius - offset * offset).sqrt()
        - ((radius - depth) * (radius - depth) - offset * offset).sqrt()
}

/// Points of a piece of the section, evenly along it.
fn sampled(piece: &Segment, count: u32) -> Vec<Point> {
    (0..=count)
        .map(|k| {
            let share = f64::from(k) / f64::from(count);
            match piece {
                Segment::Line(line) => Point {
                    x: line.from.x + (line.to.x - line.from.x) * share,
                    y: line.from.y + (line.to.y - line.from.y) * share,
                },
                Segment::Arc(arc) => {
                    let turn = Angle::radians(arc.sweep() * share).direction();
                    arc.centre.towards(arc.from.turned(turn), arc.radius)
                }
            }
        })
        .collect()
}

/// Edge and section of a knife run across without gaps, and every point of the one lies on the
/// other, stretched by the textbook.
fn check(knife: &Knife) {
    for pieces in [knife.edge(), knife.section()] {
        for pair in pieces.windows(2) {
            let gap = pair[0].end().distance(pair[1].start());
            assert!(gap.in_millimetres() < 1e-8, "{pair:?}");
        }
    }
    let sign = if knife.blade().cuts_downwards() {
        1.0
    } else {
        -1.0
    };
    let tip = knife.tip().in_millimetres();
    let mut deepest = 0.0_f64;
    for point in knife.section().iter().flat_map(|piece| sampled(piece, 23)) {
        let depth = (point.y - tip) * sign;
        assert!(depth > -1e-9, "{point:?} lies beyond the tip {tip}");
        deepest = deepest.max(depth);
        let expected = Point {
            x: point.x,
            y: textbook(knife.head(), depth.max(0.0)) * sign,
        };
        let near = |piece: &&Segment| {
            let (left, right) = piece.span();
            left <= point.x + 1e-3 && point.x <= right + 1e-3
        };
        let miss = knife
            .edge()
            .iter()
            .filter(near)
            .map(|piece| fit::distance(piece, expected))
            .fold(f64::INFINITY, f64::min);
        assert!(
            miss <= Knife::TOLERANCE.in_millimetres(),
            "{miss} at {point:?}"
        );
    }
    // The samples come within a few hundredths of the top of an arc.
    let above = knife.depth().in_millimetres() - deepest;
    assert!((-1e-9..0.03).contains(&above), "{above}");
    assert!(
        (knife.stretched_depth().in_millimetres()
            - textbook(knife.head(), knife.depth().in_millimetres()))
        .abs()
            < 1e-9
    );
    for point in knife.points() {
        let height = point.height.in_millimetres();
        let on_face = point.on_face.in_millimetres();
        assert!((textbook(knife.head(), height.max(0.0)) - on_face).abs() < 1e-9);
    }
}

#[test]
fn the_knives_of_every_shape_follow_the_textbook() {
    for shape in Shape::ALL {
        // A free outline starts without a path.
        for turn in [0.0, 10.0, 30.0, 55.0] {
            if shape != Shape::Free {
                let knives = Case::new(shape, turn).knives().unwrap();
                assert_eq!(knives.len(), 4, "{shape:?} at {turn}");
                knives.iter().for_each(check);
            }
        }
    }
}

#[test]
fn without_a_hook_a_knife_is_as_deep_as_its_cut() {
    let knives = Case::new(Shape::Hexagonal, 0.0).headed(125.0, 0.0).knives();
    for knife in knives.unwrap() {
        assert_eq!(knife.depth(), knife.stretched_depth());
        assert_eq!(knife.edge().len(), knife.section().len());
        check(&knife);
    }
}

#[test]
fn top_and_bottom_knife_leave_the_pencil_between_them() {
    let case = Case::new(Shape::Hexagonal, 0.0);
    let layout = case.layout();
    let knives = case.knives().unwrap();
    let extents = layout.extents();
    let depth = (extents.up + case.cut.overcut()).in_millimetres();
    assert!((knives[2].depth().in_millimetres() - depth).abs() < 1e-9);
    // The tips pass each other by twice the overcut.
    let passed = knives[3].tip() - knives[2].tip();
    assert!((passed - case.cut.overcut() * 2.0).abs() < Length::SLACK);
    // Halfway between two pencils the knife is at its tip.
    let middle = layout.grooves()[0].centre + layout.pitch() / 2.0;
    let at_tip = |piece: &&Segment| {
        let (from, to) = (piece.start(), piece.end());
        from.x <= middle.in_millimetres() && to.x >= middle.in_millimetres()
    };
    let land = knives[2].edge().iter().find(at_tip).unwrap();
    assert_eq!((land.start().y, land.end().y), (0.0, 0.0));
}

/// Height of a section where a level place lies, of the pieces that span it.
fn heights(knife: &Knife, x: f64) -> Vec<f64> {
    let spans = |piece: &&Segment| piece.start().x < x && x < piece.end().x;
    let found = knife.section().iter().filter(spans).map(|piece| {
        let points = sampled(piece, 4_000);
        let nearest = |best: Point, point: Point| {
            if (point.x - x).abs() < (best.x - x).abs() {
                point
            } else {
                best
            }
        };
        points.into_iter().reduce(nearest).unwrap().y
    });
    found.collect()
}

#[test]
fn the_land_between_lopsided_pencils_slopes_and_parts_them() {
    let mut case = Case::new(Shape::Triangular, 17.0);
    case.rules.land = Length::millimetres(0.8);
    let layout = case.layout();
    let knives = case.knives().unwrap();
    let (top, bottom) = (&knives[2], &knives[3]);
    let halves = layout.bare().halves();
    let rise = halves.left().y - halves.right().y;
    assert!(rise.abs() > 1.0, "{rise}");
    let extents = layout.extents();
    let (first, pitch) = (layout.grooves()[0].centre, layout.pitch());
    let from = (first + extents.right).in_millimetres();
    let land = layout.parting().in_millimetres();
    for k in 1..40 {
        let x = from + land * f64::from(k) / 40.0;
        for (over, under) in heights(bottom, x).iter().zip(heights(top, x)) {
            assert!(over - under > 0.1, "at {x}: {under} to {over}");
        }
    }
    // Over the pencil the top knife leaves what lies below its edge, and the bottom knife what lies
    // above: the directions of the outline tell the same from its supports alone.
    let (middle, axis) = (first + pitch, layout.groove_shape().axis_height());
    for k in 1..60 {
        let x = (middle - extents.left + extents.width() * (f64::from(k) / 60.0)).in_millimetres();
        let polygon = layout
            .bare()
            .segments()
            .iter()
            .flat_map(|side| sampled(side, 2_000));
        let near = polygon.filter(|point| (point.x + middle.in_millimetres() - x).abs() < 0.003);
        let ys: Vec<f64> = near.map(|point| point.y + axis.in_millimetres()).collect();
        let (low, high) = ys.iter().fold((f64::MAX, f64::MIN), |(low, high), y| {
            (low.min(*y), high.max(*y))
        });
        assert!((heights(top, x)[0] - high).abs() < 0.05, "at {x}: {high}");
        assert!((heights(bottom, x)[0] - low).abs() < 0.05, "at {x}: {low}");
    }
    // A steep land rubs once more lean is asked of every side.
    let told = top.rubbing().len();
    case.rules.relief = Angle::degrees(40.0);
    let steep = case.knives().unwrap();
    let lies_in_land = |(one, other): &(Point, Point)| {
        let range = from - 1e-9..=from + land + 1e-9;
        range.contains(&one.x) && range.contains(&other.x)
    };
    assert!(steep[2].rubbing().iter().any(lies_in_land));
    assert!(steep[2].rubbing().len() > told);
}

#[test]
fn the_points_of_the_first_pencil_come_again_at_the_pitch() {
    let case = Case::new(Shape::Hexagonal, 0.0);
    let pitch = case.layout().pitch();
    for knife in case.knives().unwrap() {
        let (first, all) = (knife.pencil_points(), knife.points());
        let per_pencil = first.len() - 1; // without the datum edge
        for (point, next) in first[1..].iter().zip(&all[1 + per_pencil..]) {
            assert!((next.across - point.across - pitch).abs() < Length::SLACK);
            assert!((next.on_face - point.on_face).abs() < Length::SLACK);
        }
    }
}

#[test]
fn upright_faces_are_told_and_lean_ones_are_not() {
    let upright = Case::new(Shape::Hexagonal, 30.0).knives().unwrap();
    assert_eq!(upright[2].rubbing().len(), 2);
    // The first pencil is 6.84 across flats, both upright, about the first groove.
    let first = Case::new(Shape::Hexagonal, 30.0).layout().grooves()[0].centre;
    for (from, to) in upright[2].rubbing() {
        let beside = (from.x - first.in_millimetres()).abs();
        assert!((beside - 3.42).abs() < 1e-9 && (from.x - to.x).abs() < 1e-9);
    }
    let leaning = Case::new(Shape::Hexagonal, 0.0).knives().unwrap();
    assert!(leaning[2].rubbing().is_empty());
}

#[test]
fn a_knife_deeper_than_its_head_is_refused_with_numbers() {
    // R 10 at 45°: less than 10·(1 − sin 45°) = 2.93 mm, and half a pencil is 3.57.
    let problems = Case::new(Shape::Round, 0.0)
        .headed(20.0, 45.0)
        .knives()
        .unwrap_err();
    assert_eq!(problems.len(), 2, "{problems:?}");
    let told = problems[0].to_string();
    for number in [
        "3.77\u{202f}mm",
        "10.00\u{202f}mm",
        "45.0°",
        "2.93\u{202f}mm",
    ] {
        assert!(told.contains(number), "{told}");
    }
}

#[test]
fn pencils_too_close_for_the_draft_are_refused() {
    let mut case = Case::new(Shape::Round, 0.0);
    let mut draft = CutDraft::new();
    draft.overcut = Typed::Number(1.0);
    draft.draft = Typed::Number(45.0);
    case.cut = draft.check().unwrap();
    let problems = case.knives().unwrap_err();
    assert!(
        matches!(problems[..], [KnifeProblem::LandTooNarrow { needed, .. }] if (needed.in_millimetres() - 2.0).abs() < 1e-9)
    );
}

#[test]
fn pencils_and_grooves_that_overlap_are_refused() {
    let mut case = Case::new(Shape::Round, 0.0);
    let mut rules = RulesDraft::new();
    rules.spacing = Spacing::Given;
    rules.pitch = Typed::Number(7.0);
    case.rules = rules.check().unwrap();
    let problems = case.knives().unwrap_err();
    assert!(
        matches!(problems[..], [KnifeProblem::LandTooNarrow { land, .. }] if land < Length::ZERO)
    );
}

#[test]
fn no_pencil_needs_no_knife() {
    let mut case = Case::new(Shape::Round, 0.0);
    let mut narrow = SlatDraft::new("");
    narrow.width = Typed::Number(20.0);
    case.slat = narrow.check().unwrap();
    let mut rules = RulesDraft::new();
    rules.edge = Typed::Number(8.0);
    case.rules = rules.check().unwrap();
    assert_eq!(case.knives(), Err(vec![KnifeProblem::NoPencils]));
}

#[test]
fn a_hollow_at_the_side_is_refused_and_one_on_top_is_not() {
    let drawn = |path: &str| {
        let mut draft = BarrelDraft::new("", Shape::Free);
        draft.path = path.to_owned();
        draft.size = Typed::Number(8.0);
        let mut case = Case::new(Shape::Round, 0.0);
        case.barrel = draft.check().unwrap();
        case.knives()
    };
    let problems = drawn("M0 0 H8 V2 A2 2 0 0 0 8 6 V8 H0 Z").unwrap_err();
    assert!(
        problems
            .iter()
            .any(|problem| matches!(problem, KnifeProblem::Undercut(_)))
    );
    let fluted = drawn("M0 0 H3 A1 1 0 0 0 5 0 H8 V8 H0 Z").unwrap();
    fluted.iter().for_each(check);
}

#[test]
fn an_axis_off_the_glue_plane_makes_two_different_groove_cutters() {
    let mut case = Case::new(Shape::Round, 0.0);
    let mut rules = RulesDraft::new();
    rules.axis_height = Typed::Number(0.4);
    case.rules = rules.check().unwrap();
    let knives = case.knives().unwrap();
    knives.iter().for_each(check);
    let shape = case.layout().groove_shape();
    let close = |one: Length, other: Length| assert!((one - other).abs() < Length::SLACK);
    close(knives[0].depth(), shape.top_depth());
    close(knives[1].depth(), shape.bottom_depth());
    // Sunk whole into the top slat, the bottom slat has no groove.
    rules.axis_height = Typed::Number(shape.radius().in_millimetres());
    case.rules = rules.check().unwrap();
    let blades: Vec<Blade> = case.knives().unwrap().iter().map(Knife::blade).collect();
    assert_eq!(blades, [Blade::TopGrooves, Blade::Top, Blade::Bottom]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_knife_follows_the_textbook(
        turn in 0.0_f64..360.0, sides in 3_u32..9, share in 0.0_f64..0.9,
        diameter in 60.0_f64..200.0, hook in 0.0_f64..50.0,
    ) {
        let mut draft = BarrelDraft::new("", Shape::Polygonal);
        draft.sides = Typed::Number(f64::from(sides));
        draft.corner_radius = Typed::Number(3.5 * share);
        let mut case = Case::new(Shape::Polygonal, turn).headed(diameter, hook);
        case.barrel = draft.check().unwrap();
        case.knives().into_iter().flatten().for_each(|knife| check(&knife));
    }

    #[test]
    fn no_outline_makes_it_stumble(path in crate::outline::any_path::any_curved_path(), turn in 0.0_f64..360.0) {
        let mut draft = BarrelDraft::new("", Shape::Free);
        draft.path = path;
        draft.size = Typed::Number(8.0);
        if let Ok(barrel) = draft.check() {
            let mut case = Case::new(Shape::Round, turn);
            case.barrel = barrel;
            case.knives().into_iter().flatten().for_each(|knife| check(&knife));
        }
    }
}

#[test]
fn the_outline_of_a_circle_is_stretched_with_few_arcs() {
    let knives = Case::new(Shape::Round, 0.0).knives().unwrap();
    let pencils = Case::new(Shape::Round, 0.0).layout().across() as usize;
    let arcs = knives[2].edge().len() / pencils;
    assert!((6..40).contains(&arcs), "{arcs}");
}
