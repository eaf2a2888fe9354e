//! The support of an outline as a function of the direction, piece by piece.
//!
//! Only the convex hull decides how far an outline reaches. Over a range of directions it is
//! one rounded corner or one sharp one that reaches farthest, at `c·d + r` in the direction d,
//! with the centre c and the radius r (0 for a sharp corner). So turned by θ, an extent is a
//! sinusoid `c₁ cos θ + c₂ sin θ + r` between breakpoints, and nothing of it is lost.

use super::{HAIR, Outline, Segment};
use crate::quantity::{Direction, Length, Point};

/// A range of directions in which one corner reaches farthest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    /// Centre of the corner, from the lead axis.
    pub centre: Point,
    /// Radius of the corner, mm; 0 where it is sharp.
    pub radius: f64,
    /// The first direction of the range, counter-clockwise.
    pub from: Direction,
    /// The last direction of the range.
    pub to: Direction,
}

impl Outline {
    /// The ranges of directions, counter-clockwise and without gap, once round.
    ///
    /// ```
    /// use solver::{Angle, Length, Outline};
    /// let hexagon = Outline::regular(6, Length::millimetres(3.5), Length::millimetres(0.5), Angle::ZERO);
    /// let reaches = hexagon.reaches();
    /// assert_eq!(reaches.len(), 6);
    /// assert!(reaches.iter().all(|reach| reach.radius == 0.5));
    /// ```
    #[must_use]
    pub fn reaches(&self) -> Vec<Reach> {
        if self.is_convex() {
            self.corners_in_order()
        } else {
            self.hull()
        }
    }

    /// Arcs, and the corners between segments that do not join smoothly.
    fn corners_in_order(&self) -> Vec<Reach> {
        let mut reaches = Vec::with_capacity(self.segments.len());
        for (segment, (last, next)) in self.segments.iter().zip(self.corners()) {
            if let Segment::Arc(arc) = segment {
                reaches.push(Reach {
                    centre: arc.centre,
                    radius: arc.radius,
                    from: arc.from,
                    to: arc.to,
                });
            }
            if last.cross(next) > HAIR {
                reaches.push(Reach {
                    centre: segment.end(),
                    radius: 0.0,
                    from: last,
                    to: next,
                });
            }
        }
        reaches
    }

    /// The hull of an outline with hollows, by turning a line round it.
    ///
    /// From the corner that reaches farthest, the line turns until another corner reaches as
    /// far; it rests on that one next.
    fn hull(&self) -> Vec<Reach> {
        let corners = self.candidates();
        let start = Direction::RIGHT;
        let mut at = farthest(&corners, start);
        let mut direction = start;
        let mut turned = 0.0;
        let mut reaches = Vec::new();
        // Each corner comes up a few times at most; the bound only guards against rounding.
        for _ in 0..4 * corners.len() + 8 {
            let current = &corners[at];
            let (step, next) = current.next(&corners, at, direction);
            let last = turned + step >= std::f64::consts::TAU;
            let to = match next {
                Some((_, to)) if !last => to,
                _ => start,
            };
            if step > HAIR {
                reaches.push(Reach {
                    centre: current.centre,
                    radius: current.radius,
                    from: direction,
                    to,
                });
            }
            turned += step;
            let Some((next, to)) = next.filter(|_| !last) else {
                break;
            };
            (at, direction) = (next, to);
        }
        reaches
    }

    fn candidates(&self) -> Vec<Corner> {
        let mut corners = Vec::with_capacity(2 * self.segments.len());
        for segment in &self.segments {
            corners.push(Corner {
                centre: segment.start(),
                radius: 0.0,
                range: None,
            });
            if let Segment::Arc(arc) = segment
                && !arc.is_hollow()
            {
                corners.push(Corner {
                    centre: arc.centre,
                    radius: arc.radius,
                    range: Some((arc.from, arc.to)),
                });
            }
        }
        corners
    }
}

/// A point that may be on the hull, or an arc with the directions it faces.
struct Corner {
    centre: Point,
    radius: f64,
    range: Option<(Direction, Direction)>,
}

impl Corner {
    fn reach(&self, direction: Direction) -> f64 {
        self.centre.along(direction) + self.radius
    }

    /// Its last point, counter-clockwise.
    fn last(&self) -> Point {
        self.range
            .map_or(self.centre, |(_, to)| self.centre.towards(to, self.radius))
    }

    fn faces(&self, direction: Direction) -> bool {
        self.range
            .is_none_or(|(from, to)| from.cross(direction) >= -HAIR && direction.cross(to) >= -HAIR)
    }

    /// How far the line turns on this corner, in radians, and the corner it meets then.
    fn next(
        &self,
        corners: &[Self],
        own: usize,
        direction: Direction,
    ) -> (f64, Option<(usize, Direction)>) {
        let turn = |to: Direction| {
            let angle = libm::atan2(direction.cross(to), direction.dot(to));
            if angle < -HAIR {
                angle + std::f64::consts::TAU
            } else {
                angle.max(0.0)
            }
        };
        let mut best: (f64, Option<(usize, Direction)>) = (std::f64::consts::TAU, None);
        let mut ahead = 0.0;
        for (k, other) in corners.iter().enumerate().filter(|(k, _)| *k != own) {
            let Some(to) = self.overtaken_by(other).filter(|to| other.faces(*to)) else {
                continue;
            };
            let angle = turn(to);
            // Of corners on one line the farthest ahead is met last, and is the one to go on with.
            let distance =
                (other.centre.x - self.centre.x) * -to.y + (other.centre.y - self.centre.y) * to.x;
            let sooner = angle < best.0 - HAIR;
            if sooner || (angle < best.0 + HAIR && distance > ahead) {
                best = (angle, Some((k, to)));
                ahead = distance;
            }
        }
        // An arc hands over to its end where it turns no further.
        if let Some((_, to)) = self.range
            && turn(to) < best.0 - HAIR
        {
            let end = self.centre.towards(to, self.radius);
            let nearest = (0..corners.len())
                .filter(|k| corners[*k].radius == 0.0)
                .min_by(|one, other| {
                    let off = |k: usize| corners[k].centre.distance(end).in_millimetres();
                    off(*one).total_cmp(&off(*other))
                });
            best = (turn(to), nearest.map(|k| (k, to)));
        }
        best
    }

    /// The direction in which another corner begins to reach farther than this one.
    fn overtaken_by(&self, other: &Self) -> Option<Direction> {
        // The line rolls from the first point of an arc onto the arc.
        if let Some((from, _)) = other.range
            && self.range.is_none()
            && self
                .centre
                .distance(other.centre.towards(from, other.radius))
                <= Length::SLACK
        {
            return Some(from);
        }
        let (x, y) = (
            other.centre.x - self.centre.x,
            other.centre.y - self.centre.y,
        );
        let square = x * x + y * y;
        let ahead = self.radius - other.radius;
        // A point and the arc it lies on: they hand over at the ends of the arc, see above.
        let away = self.centre.distance(other.centre).in_millimetres();
        let radius = self.radius.max(other.radius);
        if self.range.is_some() != other.range.is_some()
            && (away - radius).abs() <= Length::SLACK.in_millimetres()
        {
            return None;
        }
        let beside = square - ahead * ahead;
        if square < 1e-18 || beside < 0.0 {
            return None;
        }
        // Solves (x, y)·d = ahead with the reach of the other growing faster.
        let beside = beside.sqrt();
        Some(Direction {
            x: (ahead * x + beside * y) / square,
            y: (ahead * y - beside * x) / square,
        })
    }
}

fn farthest(corners: &[Corner], direction: Direction) -> usize {
    let beyond = direction.quarter_turn();
    (0..corners.len())
        .filter(|k| corners[*k].faces(direction))
        .max_by(|one, other| {
            let (one, other) = (&corners[*one], &corners[*other]);
            let difference = one.reach(direction) - other.reach(direction);
            if difference.abs() < 1e-12 {
                // Of two that reach as far, the one that goes on farther.
                one.last()
                    .along(beyond)
                    .total_cmp(&other.last().along(beyond))
            } else {
                difference.total_cmp(&0.0)
            }
        })
        .unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Angle;
    use proptest::prelude::*;

    fn reach(outline: &Outline, direction: Direction) -> f64 {
        let reaches = outline.reaches();
        let ahead = |from: Direction, to: Direction| {
            let angle = libm::atan2(from.cross(to), from.dot(to));
            if angle < -1e-6 {
                angle + std::f64::consts::TAU
            } else {
                angle
            }
        };
        let faces =
            |reach: &&Reach| ahead(reach.from, direction) <= ahead(reach.from, reach.to) + 1e-6;
        let best = reaches.iter().filter(faces);
        best.map(|reach| reach.centre.along(direction) + reach.radius)
            .fold(f64::NEG_INFINITY, f64::max)
    }

    fn check(outline: &Outline) {
        for degree in 0..720 {
            let direction = Angle::degrees(f64::from(degree) / 2.0).direction();
            let (found, expected) = (
                reach(outline, direction),
                outline.support(direction).in_millimetres(),
            );
            assert!(
                (found - expected).abs() < 1e-9,
                "{degree}: {found}, {expected}"
            );
        }
        let turned: f64 = outline
            .reaches()
            .iter()
            .map(|reach| {
                let angle = libm::atan2(reach.from.cross(reach.to), reach.from.dot(reach.to));
                if angle < 0.0 {
                    angle + std::f64::consts::TAU
                } else {
                    angle
                }
            })
            .sum();
        assert!((turned - std::f64::consts::TAU).abs() < 1e-6, "{turned}");
    }

    #[test]
    fn a_fluted_block_reaches_as_far_as_its_hull() {
        for path in [
            "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z",
            "M0 0 H8 V2 A2 2 0 0 0 8 6 V8 H0 Z",
            "M0 0 A3 3 0 0 1 6 0 A1 1 0 0 0 8 0 A3 3 0 0 1 14 0 V9 H0 Z",
            "M0 0 L4 1 L8 0 L7 4 L8 8 L4 7 L0 8 L1 4 Z",
            "M0 3 A4 4 0 0 1 8 3 A9 9 0 0 0 7 6 L1 6 A9 9 0 0 0 0 3 Z",
            "M0 3 A4 4 0 0 1 8 3 Q6 5 7 6 Q4 5 1 6 Q2 4 0 3 Z",
        ] {
            check(
                &Outline::from_path(path, Length::millimetres(8.0), Length::ZERO, Length::ZERO)
                    .unwrap(),
            );
        }
    }

    proptest! {
        #[test]
        fn any_outline_reaches_as_far_as_its_support(
            radii in prop::collection::vec((1.0_f64..6.0, 0_u8..4), 3..9), turn in 0.0_f64..360.0,
        ) {
            let step = 360.0 / radii.len() as f64;
            let place = |k: usize| {
                let direction = Angle::degrees(turn + step * k as f64).direction();
                let radius = radii[k % radii.len()].0;
                (direction.x * radius, direction.y * radius)
            };
            let (x, y) = place(0);
            let mut path = format!("M{x} {y}");
            for (k, (radius, kind)) in radii.iter().enumerate() {
                let (x, y) = place(k + 1);
                path += &match kind {
                    0 => format!("L{x} {y}"),
                    1 => format!("A{} {} 0 0 0 {x} {y}", 2.0 * radius, 2.0 * radius),
                    2 => format!("A{} {} 0 0 1 {x} {y}", 3.0 * radius, 3.0 * radius),
                    _ => format!("Q0.3 0.2 {x} {y}"),
                };
            }
            // Paths that cross themselves are no outlines.
            if let Ok(outline) = Outline::from_path(&(path + "Z"), Length::millimetres(8.0), Length::ZERO, Length::ZERO) {
                check(&outline);
            }
        }

        #[test]
        fn regular_outlines_reach_as_far_as_their_support(
            sides in 3_u32..9, share in 0.0_f64..1.0, turn in 0.0_f64..360.0,
        ) {
            check(&Outline::regular(sides, Length::millimetres(3.5), Length::millimetres(3.5 * share), Angle::degrees(turn)));
        }
    }
}
