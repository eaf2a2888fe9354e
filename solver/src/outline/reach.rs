//! The support of an outline as a function of the direction, piece by piece.
//!
//! Only the convex hull decides how far an outline reaches. Over a range of directions it is
//! one rounded corner or one sharp one that reaches farthest, at `c·d + r` in the direction d,
//! with the centre c and the radius r (0 for a sharp corner). So turned by θ, an extent is a
//! sinusoid `c₁ cos θ + c₂ sin θ + r` between breakpoints, and nothing of it is lost.

use super::{HAIR, Outline, Segment};
use crate::quantity::{Direction, Point};

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
        if self.is_convex() && !self.has_bent_side() {
            self.corners_in_order()
        } else {
            self.hull()
        }
    }

    /// Whether two straight sides join all but smoothly. Beside an arc such a corner may be left
    /// out, as the arc reaches just as far; between two sides nothing else does.
    fn has_bent_side(&self) -> bool {
        let next = self.segments.iter().cycle().skip(1);
        self.segments.iter().zip(next).any(|pair| match pair {
            (Segment::Line(one), Segment::Line(other)) => {
                one.normal.cross(other.normal).abs() <= HAIR
            }
            _ => false,
        })
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
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::outline::any_path::any_curved_path;
    use crate::quantity::{Angle, Length};
    use proptest::prelude::*;

    /// How far the corner of the range that holds a direction reaches, mm.
    fn reach(reaches: &[Reach], direction: Direction) -> f64 {
        let held = reaches
            .iter()
            .find(|reach| turn(reach.from, direction) <= turn(reach.from, reach.to));
        let reach = held.expect("the ranges leave no gap");
        reach.centre.along(direction) + reach.radius
    }

    /// Counter-clockwise from one direction to another, radians from a hair below 0 up to a turn.
    fn turn(from: Direction, to: Direction) -> f64 {
        let angle = libm::atan2(from.cross(to), from.dot(to));
        if angle < -1e-8 {
            angle + std::f64::consts::TAU
        } else {
            angle
        }
    }

    /// The ranges leave no gap and do not overlap, and each reaches as far as the outline: at its
    /// ends, in its middle and in 720 directions.
    fn check(outline: &Outline) {
        let reaches = outline.reaches();
        let supports = |reach: f64, direction: Direction| {
            let expected = outline.support(direction).in_millimetres();
            assert!(
                (reach - expected).abs() < 1e-10,
                "{direction:?}: {reach}, {expected}"
            );
        };
        for half_degree in 0..720 {
            let direction = Angle::degrees(f64::from(half_degree) / 2.0).direction();
            supports(reach(&reaches, direction), direction);
        }
        let mut turned = 0.0;
        for (one, next) in reaches.iter().zip(reaches.iter().cycle().skip(1)) {
            let width = turn(one.from, one.to);
            let middle = one.from.turned(Angle::radians(width / 2.0).direction());
            for direction in [one.from, middle, one.to] {
                supports(one.centre.along(direction) + one.radius, direction);
            }
            // Smooth joints of a chain of arcs are smooth to 1e-9.
            let gap = turn(one.to, next.from);
            assert!(gap.abs() <= 1e-9, "a gap of {gap} after {one:?}");
            turned += width;
        }
        assert!((turned - std::f64::consts::TAU).abs() < 1e-6, "{turned}");
    }

    fn drawn(path: &str, width: f64) -> Option<Outline> {
        let width = Length::millimetres(width);
        Outline::from_path(path, width, Length::ZERO, Length::ZERO).ok()
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
            check(&drawn(path, 8.0).unwrap());
        }
    }

    #[test]
    fn curves_that_join_smoothly_reach_as_far_as_their_hull() {
        for path in [
            "M5 2 C 4 0 0 1 1 5 C 2 8 4 9 5 9 C 6 9 8 8 9 5 C 10 1 6 0 5 2 Z",
            "M9 5 A3.02 3.17 0 0 1 5 9 Q1.714 8.286 1 5 A2.24 5.5 0 0 1 5 1 Q8.286 1.714 9 5Z",
            "M4 8 C 0 5 0 0 4 2 C 8 0 8 5 4 8 Z",
        ] {
            for width in [7.0, 10.0] {
                let outline = drawn(path, width).unwrap();
                check(&outline);
                for coat in [0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08] {
                    check(&outline.inset(Length::millimetres(coat)).unwrap());
                }
            }
        }
    }

    #[test]
    fn a_heart_of_two_half_circles_reaches_over_its_cusp() {
        let heart = drawn("M4 2 A1 1 0 0 0 2 2 A1 1 0 0 0 0 2 L2 5 Z", 8.0).unwrap();
        assert!(!heart.is_convex());
        check(&heart);
    }

    #[test]
    fn sides_that_are_bent_by_a_hair_reach_as_far_as_their_corners() {
        for bend in [-4e-9, -1e-9, 0.0, 1e-9, 4e-9] {
            let path = format!("M0 0 L4 {} L8 0 V8 H0 Z", -bend);
            check(&drawn(&path, 8.0).unwrap());
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(400))]

        #[test]
        fn any_curved_outline_reaches_as_far_as_its_support(
            path in any_curved_path(), width in 4.0_f64..12.0, coat in prop::option::of(0.005_f64..0.1),
        ) {
            if let Some(outline) = drawn(&path, width) {
                check(&outline);
                // Some fall apart when they are inset.
                let inset = coat.and_then(|coat| outline.inset(Length::millimetres(coat)));
                inset.iter().for_each(check);
            }
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
            if let Some(outline) = drawn(&(path + "Z"), 8.0) {
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
