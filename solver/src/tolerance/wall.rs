//! The wall round a lead that lies off its place.

use super::normal::Normal;
use crate::outline::{Arc, Outline, Segment};
use crate::quantity::{Direction, Length, Point};

/// What is asked of the wall all round.
///
/// With the lead axis displaced to p, the groove of radius ρ and the least wall w, every point of
/// the outline must lie at least ρ + w from p, and p inside the outline. The distance to a piece
/// is that to its foot where p lies beside it, and to its nearer end elsewhere. On which side of
/// the outline p lies is told by the nearest point q: outside where (p − q) · n > 0 with the
/// outward normal n there, at a joint the sum of the two normals (J. A. Bærentzen and H. Aanæs,
/// "Signed distance computation using the angle weighted pseudonormal", 2005).
#[derive(Debug, Clone, PartialEq)]
pub(super) struct WallRule {
    pieces: Vec<Piece>,
    /// Distance that is asked between lead axis and outline, mm; rounding forgiven.
    asked: f64,
    /// Square of the displacement that is safe whatever its direction, mm².
    safe_square: f64,
}

#[derive(Debug, Clone, PartialEq)]
struct Piece {
    segment: Segment,
    start: Point,
    /// Sum of the two outward normals at the start.
    joint: Point,
}

/// The nearest point so far: its squared distance, and how far p lies outwards of it.
#[derive(Clone, Copy)]
struct Nearest {
    square: f64,
    outwards: f64,
}

impl WallRule {
    pub(super) fn new(outline: &Outline, radius: Length, wall: Length) -> Self {
        let segments = outline.segments();
        let before = segments
            .iter()
            .cycle()
            .skip(segments.len().saturating_sub(1));
        let piece = |(segment, before): (&Segment, &Segment)| {
            let (last, first) = (before.last_normal(), segment.first_normal());
            Piece {
                segment: *segment,
                start: segment.start(),
                joint: Point {
                    x: last.x + first.x,
                    y: last.y + first.y,
                },
            }
        };
        let asked = (radius + wall - Length::SLACK).in_millimetres();
        let room = outline.least_distance().in_millimetres() - asked;
        Self {
            pieces: segments.iter().zip(before).map(piece).collect(),
            asked,
            safe_square: if room > 0.0 { room * room } else { -1.0 },
        }
    }

    /// Whether every lead displaced by no more than this has its wall.
    pub(super) fn holds_within(&self, displacement: f64) -> bool {
        displacement * displacement <= self.safe_square
    }

    /// Whether the wall holds for a lead displaced to a point.
    pub(super) fn holds(&self, lead: Point) -> bool {
        if lead.x * lead.x + lead.y * lead.y <= self.safe_square {
            return true;
        }
        let mut nearest = Nearest {
            square: f64::INFINITY,
            outwards: 0.0,
        };
        let least = self.asked * self.asked.max(0.0);
        for piece in &self.pieces {
            nearest.take(lead, piece.start, piece.joint);
            match piece.segment {
                Segment::Line(line) => {
                    let along = line.normal.quarter_turn();
                    let behind = relative(lead, line.from);
                    if behind.along(along) > 0.0 && relative(lead, line.to).along(along) < 0.0 {
                        let outwards = behind.along(line.normal);
                        nearest.foot(outwards.abs(), outwards);
                    }
                }
                Segment::Arc(arc) => {
                    // From the centre of an arc every point of it is as near.
                    let middle = if arc.is_hollow() { -arc.from } else { arc.from };
                    let beside = Direction::between(arc.centre, lead).unwrap_or(middle);
                    let normal = if arc.is_hollow() { -beside } else { beside };
                    if arc.faces(normal) {
                        let beyond = relative(lead, arc.centre).along(beside) - arc.radius.abs();
                        let outwards = if arc.is_hollow() { -beyond } else { beyond };
                        nearest.foot(beyond.abs(), outwards);
                    }
                }
            }
            // Too near on either side.
            if nearest.square < least {
                return false;
            }
        }
        nearest.outwards <= 0.0
    }

    /// Each flat face, with how far a lead in the middle may move towards it.
    pub(super) fn faces(&self) -> impl Iterator<Item = (Direction, f64)> {
        self.pieces.iter().filter_map(|piece| match piece.segment {
            Segment::Line(line) => Some((line.normal, line.from.along(line.normal) - self.asked)),
            Segment::Arc(_) => None,
        })
    }

    /// The direction in which the wall is most at risk: the one of the [`Self::sides`] whose room
    /// is the fewest standard deviations.
    pub(super) fn weakest(&self, across: Normal, upright: Normal) -> Option<Direction> {
        let sigmas = |direction: Direction, room: f64| {
            let spread = towards(direction, across, upright);
            let left = room - spread.mean;
            if spread.deviation > 0.0 {
                left / spread.deviation
            } else {
                f64::INFINITY.copysign(left)
            }
        };
        self.sides()
            .map(|(direction, room)| (sigmas(direction, room), room, direction))
            .min_by(|one, other| one.0.total_cmp(&other.0).then(one.1.total_cmp(&other.1)))
            .map(|(_, _, direction)| direction)
    }

    /// Directions in which a wall may be weak, each with how far a lead in the middle may move: the
    /// flat faces; of a bulging arc its ends, its nearest point, and where it faces along the axes,
    /// in which the spread is greatest and least; of a hollow one its nearest point.
    fn sides(&self) -> impl Iterator<Item = (Direction, f64)> {
        let of_arc = |arc: Arc| {
            let outwards = Direction::between(Point::AXIS, arc.centre);
            let normals = if arc.is_hollow() {
                vec![outwards.unwrap_or(arc.from), arc.from, arc.to]
            } else {
                let near = outwards.map_or(arc.from, |outwards| -outwards);
                let axes = [
                    Direction::RIGHT,
                    Direction::UP,
                    Direction::LEFT,
                    Direction::DOWN,
                ];
                [near, arc.from, arc.to].into_iter().chain(axes).collect()
            };
            normals.into_iter().filter_map(move |normal| {
                let point = arc.centre.towards(normal, arc.radius);
                let direction = if arc.is_hollow() {
                    Direction::between(Point::AXIS, point)?
                } else {
                    normal
                };
                arc.faces(normal)
                    .then(|| (direction, point.along(direction)))
            })
        };
        let arcs = self.pieces.iter().filter_map(|piece| match piece.segment {
            Segment::Line(_) => None,
            Segment::Arc(arc) => Some(arc),
        });
        let arcs = arcs.flat_map(of_arc);
        self.faces()
            .chain(arcs.map(|(direction, reach)| (direction, reach - self.asked)))
    }
}

impl Nearest {
    /// An end of a piece.
    fn take(&mut self, lead: Point, end: Point, joint: Point) {
        let from = relative(lead, end);
        let square = from.x * from.x + from.y * from.y;
        if square < self.square {
            let outwards = from.x * joint.x + from.y * joint.y;
            *self = Self { square, outwards };
        }
    }

    /// A foot within a piece.
    fn foot(&mut self, distance: f64, outwards: f64) {
        let square = distance * distance;
        if square < self.square {
            *self = Self { square, outwards };
        }
    }
}

/// The displacement towards a direction: n · e with the mean n · μ and the variance nx²σx² + ny²σy².
pub(super) fn towards(direction: Direction, across: Normal, upright: Normal) -> Normal {
    let (x, y) = (
        direction.x * across.deviation,
        direction.y * upright.deviation,
    );
    Normal::new(
        direction.x * across.mean + direction.y * upright.mean,
        (x * x + y * y).sqrt(),
    )
}

fn relative(point: Point, from: Point) -> Point {
    Point {
        x: point.x - from.x,
        y: point.y - from.y,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::barrel::BarrelDraft;
    use crate::field::Typed;
    use crate::quantity::Angle;
    use crate::shape::Shape;
    use proptest::prelude::*;

    /// A barrel of about 7 mm, as wood; free outlines have a flute on each side.
    fn wood(shape: Shape, turn: f64) -> Outline {
        let mut draft = BarrelDraft::new("", shape);
        draft.size = Typed::Number(7.2);
        draft.height = Typed::Number(6.0);
        draft.path = "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z".to_owned();
        draft.check().unwrap().bare(Angle::degrees(turn))
    }

    fn rule(outline: &Outline, asked: f64) -> WallRule {
        WallRule::new(outline, Length::ZERO, Length::millimetres(asked))
    }

    fn at(x: f64, y: f64) -> Point {
        Point { x, y }
    }

    #[test]
    fn a_hexagon_allows_as_much_as_its_faces() {
        let hexagon = Outline::regular(6, Length::millimetres(3.5), Length::ZERO, Angle::ZERO);
        let rule = rule(&hexagon, 3.0);
        assert!(rule.holds(at(0.0, 0.5)) && !rule.holds(at(0.0, 0.501)));
        // Towards a corner 0.5 mm off the two faces beside it: 0.5 / cos 30°.
        let most = 1.0 / 3.0_f64.sqrt();
        assert!(rule.holds(at(most, 0.0)) && !rule.holds(at(most + 1e-6, 0.0)));
    }

    #[test]
    fn a_lead_outside_has_no_wall_however_far() {
        for shape in Shape::ALL {
            let rule = rule(&wood(shape, 17.0), 1.0);
            for degrees in 0..36 {
                let away = Angle::degrees(f64::from(degrees) * 10.0).direction();
                assert!(
                    !rule.holds(Point::AXIS.towards(away, 30.0)),
                    "{shape:?} {degrees}"
                );
            }
        }
    }

    #[test]
    fn an_asked_wall_that_is_just_there_holds() {
        let hexagon = Outline::regular(6, Length::millimetres(3.42), Length::ZERO, Angle::ZERO);
        let rule = WallRule::new(
            &hexagon,
            Length::millimetres(1.15),
            Length::millimetres(2.27),
        );
        assert!(rule.holds(Point::AXIS));
        assert!(
            !WallRule::new(
                &hexagon,
                Length::millimetres(1.16),
                Length::millimetres(2.27)
            )
            .holds(Point::AXIS)
        );
    }

    #[test]
    fn the_weakest_side_is_the_one_with_the_larger_spread() {
        let hexagon = Outline::regular(6, Length::millimetres(3.5), Length::ZERO, Angle::ZERO);
        let rule = rule(&hexagon, 3.0);
        let small = Normal::new(0.0, 0.01);
        let upright = rule.weakest(small, Normal::new(0.0, 0.1)).unwrap();
        assert_eq!(upright.y.abs(), 1.0);
        let across = rule.weakest(Normal::new(0.0, 0.1), small).unwrap();
        assert!((across.x.abs() - 0.75_f64.sqrt()).abs() < 1e-12);
        let round = WallRule::new(
            &Outline::round(Length::millimetres(7.0)),
            Length::ZERO,
            Length::ZERO,
        );
        let upright = round.weakest(small, Normal::new(0.0, 0.1)).unwrap();
        assert_eq!((upright.x, upright.y.abs()), (0.0, 1.0));
        let none = Normal::new(0.0, 0.0);
        assert!(round.weakest(none, none).is_some());
    }

    #[test]
    fn the_weakest_side_of_a_fluted_barrel_is_the_flute() {
        // A flute of 2 mm radius from above comes nearer to the middle than the faces do.
        let rule = rule(&wood(Shape::Free, 0.0), 0.5);
        let even = Normal::new(0.0, 0.1);
        let weakest = rule.weakest(even, even).unwrap();
        let room = |direction: Direction| {
            let holds =
                |step: &u32| rule.holds(Point::AXIS.towards(direction, f64::from(*step) * 1e-3));
            (0..4000).take_while(holds).count()
        };
        let least = (0..360)
            .map(|degrees| room(Angle::degrees(f64::from(degrees)).direction()))
            .min();
        assert!(least.is_some_and(|least| room(weakest) <= least + 1));
    }

    /// Whether a point lies inside, by counting the points of a fine polygon to its right, and
    /// its distance to that polygon.
    fn polygon(outline: &Outline) -> Vec<Point> {
        let mut points = Vec::new();
        for segment in outline.segments() {
            match segment {
                Segment::Line(line) => points.push(line.from),
                Segment::Arc(arc) => points.extend((0..400).map(|step| {
                    let turn = Angle::radians(arc.sweep() * f64::from(step) / 400.0).direction();
                    arc.centre.towards(arc.from.turned(turn), arc.radius)
                })),
            }
        }
        points
    }

    fn signed_distance(points: &[Point], lead: Point) -> f64 {
        let (mut inside, mut least) = (false, f64::INFINITY);
        let next = points.iter().cycle().skip(1);
        for (from, to) in points.iter().zip(next) {
            if (from.y > lead.y) != (to.y > lead.y) {
                let cut = from.x + (lead.y - from.y) / (to.y - from.y) * (to.x - from.x);
                inside ^= cut > lead.x;
            }
            let (run, rise) = (to.x - from.x, to.y - from.y);
            let share = ((lead.x - from.x) * run + (lead.y - from.y) * rise)
                / (run * run + rise * rise).max(f64::MIN_POSITIVE);
            let share = share.clamp(0.0, 1.0);
            let nearest = at(from.x + share * run, from.y + share * rise);
            least = least.min(nearest.distance(lead).in_millimetres());
        }
        if inside { least } else { -least }
    }

    proptest! {
        #[test]
        fn it_is_the_distance_to_a_fine_polygon(
            kind in 0..Shape::ALL.len(), turn in 0.0_f64..360.0, asked in 0.1_f64..3.0,
            x in -5.0_f64..5.0, y in -5.0_f64..5.0,
        ) {
            let outline = wood(Shape::ALL[kind], turn);
            let distance = signed_distance(&polygon(&outline), at(x, y));
            // The polygon cuts corners of its arcs by less than this.
            prop_assume!((distance - asked).abs() > 1e-3);
            prop_assert_eq!(rule(&outline, asked).holds(at(x, y)), distance > asked);
        }
    }
}
