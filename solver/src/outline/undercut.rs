//! What two level cutterheads cannot reach.
//!
//! The upper head cuts what is seen from above, the lower one what is seen from below. So the
//! outline must be one piece over every x: run through from its leftmost to its rightmost point it
//! may never turn back. Where it does, wood lies over a hollow that no head reaches.

use super::{HAIR, Outline, Segment};
use crate::quantity::{Direction, Length, Point, greater};

/// A place that no level head reaches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Undercut {
    /// Where it is deepest, from the lead axis.
    pub at: Point,
    /// How far the wood hangs over there, across the slat.
    pub depth: Length,
}

impl Outline {
    /// The deepest undercut, or nothing where two level heads reach everything.
    ///
    /// ```
    /// use solver::{Length, Outline};
    /// let size = Length::millimetres(8.0);
    /// let flute_on_top = "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z";
    /// let flute_at_side = "M0 0 H8 V2 A2 2 0 0 0 8 6 V8 H0 Z";
    /// let drawn = |path| Outline::from_path(path, size, Length::ZERO, Length::ZERO).unwrap();
    /// assert_eq!(drawn(flute_on_top).undercut(), None);
    /// assert!((drawn(flute_at_side).undercut().unwrap().depth.in_millimetres() - 2.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn undercut(&self) -> Option<Undercut> {
        if self.is_convex() {
            return None;
        }
        // Counter-clockwise from the leftmost point, the lower side runs to the right and the upper one back.
        let points = self.turning_points();
        let leftmost = place_of(&points, |one, other| one.x < other.x);
        let rightmost = place_of(&points, |one, other| one.x > other.x);
        let lower = run(&points, leftmost, rightmost);
        let upper = run(&points, rightmost, leftmost);
        let mirrored = |point: &Point| Point {
            x: -point.x,
            y: point.y,
        };
        let back = deepest(lower);
        let forth = deepest(upper.map(|point| mirrored(&point))).map(|undercut| Undercut {
            at: mirrored(&undercut.at),
            ..undercut
        });
        [back, forth]
            .into_iter()
            .flatten()
            .reduce(|one, other| if other.depth > one.depth { other } else { one })
    }

    /// Every joint, and the points of the arcs where the curve stands upright, in order.
    fn turning_points(&self) -> Vec<Point> {
        let mut points = Vec::with_capacity(2 * self.segments.len());
        for segment in &self.segments {
            points.push(segment.start());
            if let Segment::Arc(arc) = segment {
                let upright = arc.passed([Direction::LEFT, Direction::RIGHT]);
                let upright = upright.into_iter();
                points.extend(upright.map(|normal| arc.centre.towards(normal, arc.radius)));
            }
        }
        points
    }

    /// The turns about the axis, each from less to more, in which a hollow faces the side and
    /// cannot be shaped; angles in degrees from the drawn turn, 0 up to 360, the second one from
    /// the first up to 360 more.
    ///
    /// A hollow whose normals run through level, to the left or to the right, is passed by the curve
    /// three times over some x, and once otherwise.
    pub(crate) fn unshapeable_turns(&self) -> Vec<(f64, f64)> {
        /// The sine of a bend that hides no more than 1e-11 mm of a side of ten millimetres.
        const BEND: f64 = 1e-12;
        let arcs = self.segments.iter().filter_map(|segment| match segment {
            Segment::Arc(arc) if arc.is_hollow() => Some((arc.to, arc.from)),
            _ => None,
        });
        let corners = self
            .corners()
            // A cusp may be one too: its normals are opposite.
            .filter(|(last, next)| {
                last.cross(*next) < -BEND || (last.cross(*next) <= HAIR && last.dot(*next) < 0.0)
            })
            .map(|(last, next)| (next, last));
        arcs.chain(corners)
            .flat_map(|(first, last)| {
                let width = libm::atan2(first.cross(last), first.dot(last)).to_degrees();
                [Direction::RIGHT, Direction::LEFT].map(|side| {
                    // The turn that brings the last normal of the hollow to this side.
                    let from = (side.angle() + -last.angle())
                        .in_degrees()
                        .rem_euclid(360.0);
                    (from, from + width)
                })
            })
            .collect()
    }
}

/// The place of the extreme point; of equals the first.
fn place_of(points: &[Point], beats: impl Fn(&Point, &Point) -> bool) -> usize {
    (1..points.len()).fold(0, |best, k| {
        if beats(&points[k], &points[best]) {
            k
        } else {
            best
        }
    })
}

/// The points from one place to another, round the end of the list.
fn run(points: &[Point], from: usize, to: usize) -> impl Iterator<Item = Point> {
    let count = (to + points.len() - from) % points.len() + 1;
    (0..count).map(move |k| points[(from + k) % points.len()])
}

/// The farthest that points turn back on their way to the right.
fn deepest(points: impl Iterator<Item = Point>) -> Option<Undercut> {
    let mut reached = f64::NEG_INFINITY;
    let mut worst: Option<Undercut> = None;
    for point in points {
        reached = greater(reached, point.x);
        let depth = Length::millimetres(reached - point.x);
        if depth > Length::SLACK && worst.is_none_or(|undercut| depth > undercut.depth) {
            worst = Some(Undercut { at: point, depth });
        }
    }
    worst
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Angle;
    use proptest::prelude::*;

    fn fluted() -> Outline {
        let path = "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z";
        Outline::from_path(path, Length::millimetres(8.0), Length::ZERO, Length::ZERO).unwrap()
    }

    #[test]
    fn a_convex_outline_has_no_undercut() {
        let triangle = Outline::regular(3, Length::millimetres(3.0), Length::ZERO, Angle::ZERO);
        assert_eq!(triangle.undercut(), None);
        assert!(triangle.unshapeable_turns().is_empty());
    }

    proptest! {
        #[test]
        fn the_turns_that_cannot_be_shaped_are_those_with_an_undercut(degrees in 0.0_f64..360.0) {
            let outline = fluted();
            let turns = outline.unshapeable_turns();
            let inside = |from: f64, to: f64, turn: f64| turn > from + 1e-6 && turn < to - 1e-6;
            let near = turns.iter().any(|&(from, to)| {
                [from, to].iter().any(|end| ((degrees - end + 180.0).rem_euclid(360.0) - 180.0).abs() < 1e-3)
            });
            prop_assume!(!near);
            let refused = turns.iter().any(|&(from, to)| inside(from, to, degrees) || inside(from, to, degrees + 360.0));
            let turned = outline.turned(Angle::degrees(degrees).direction());
            prop_assert_eq!(refused, turned.undercut().is_some());
        }
    }
}
