//! The two kinds of piece an outline is made of, kept exact.

use crate::quantity::{Direction, Point, greater, lesser, norm};
use crate::sequence::in_order;
use std::f64::consts::{FRAC_PI_2, TAU};

/// One piece of an outline, run through counter-clockwise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Segment {
    /// A straight side.
    Line(Line),
    /// A rounded corner, a bulged face, a flute, or the whole of a round outline in halves.
    Arc(Arc),
}

/// A straight side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Where it starts.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
    /// The outward normal; kept, so that an upright side is upright to the last bit.
    pub normal: Direction,
}

/// A circular arc of at most half a turn.
///
/// A point of it lies at `centre + radius · normal`. The radius is above 0 where the arc
/// bulges outwards, and below 0 where it is hollow: then its outward normals point to its
/// centre and turn clockwise. So one formula serves both.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arc {
    /// Centre of the circle.
    pub centre: Point,
    /// Radius, mm; below 0 where the arc is hollow.
    pub radius: f64,
    /// Outward normal where it starts.
    pub from: Direction,
    /// Outward normal where it ends.
    pub to: Direction,
}

impl Arc {
    /// Those of some normals that the arc has, in the order in which they are passed: the one
    /// nearer to the start first.
    pub(crate) fn passed(&self, normals: [Direction; 2]) -> Vec<Direction> {
        let had = normals.into_iter().filter(|normal| self.faces(*normal));
        in_order(had.collect(), |one, other| {
            other.dot(self.from).total_cmp(&one.dot(self.from))
        })
    }

    /// The first point.
    #[must_use]
    pub fn start(&self) -> Point {
        self.centre.towards(self.from, self.radius)
    }

    /// The last point.
    #[must_use]
    pub fn end(&self) -> Point {
        self.centre.towards(self.to, self.radius)
    }

    /// Whether it bulges inwards.
    #[must_use]
    pub fn is_hollow(&self) -> bool {
        self.radius < 0.0
    }

    /// The angle its normal turns through, in radians: from 0 up to π, or down to −π where it
    /// is hollow. Where both ends are one it is 0.
    #[must_use]
    pub fn sweep(&self) -> f64 {
        let turn = libm::atan2(self.from.cross(self.to), self.from.dot(self.to));
        let forward = if self.is_hollow() { -turn } else { turn };
        // Rounding takes a turn that is all but none below 0, and half a turn below −π.
        let sweep = if forward < -FRAC_PI_2 {
            forward + TAU
        } else {
            greater(forward, 0.0)
        };
        if self.is_hollow() { -sweep } else { sweep }
    }

    /// The point halfway along.
    #[must_use]
    pub fn middle(&self) -> Point {
        let (x, y) = (self.from.x + self.to.x, self.from.y + self.to.y);
        let size = norm(x, y);
        // The two ends of half a turn point opposite ways: the middle is a quarter on.
        let normal = if size < 1e-9 {
            let quarter = self.from.quarter_turn();
            if self.is_hollow() { -quarter } else { quarter }
        } else {
            Direction {
                x: x / size,
                y: y / size,
            }
        };
        self.centre.towards(normal, self.radius)
    }

    /// Whether the arc has a point with this outward normal.
    ///
    /// An arc takes in a hair more than its ends, so that no direction falls between two
    /// neighbours; a support or a crossing read there is off by less than 1e-12 of the radius.
    #[must_use]
    pub fn faces(&self, direction: Direction) -> bool {
        const HAIR: f64 = -1e-12;
        let (first, last) = if self.is_hollow() {
            (self.to, self.from)
        } else {
            (self.from, self.to)
        };
        // Where the arc hardly turns, its opposite lies between its ends too, on the far side.
        first.cross(direction) >= HAIR
            && direction.cross(last) >= HAIR
            && direction.dot(first) + direction.dot(last) >= HAIR
    }
}

impl Segment {
    /// The first point.
    #[must_use]
    pub fn start(&self) -> Point {
        match self {
            Self::Line(line) => line.from,
            Self::Arc(arc) => arc.start(),
        }
    }

    /// The last point.
    #[must_use]
    pub fn end(&self) -> Point {
        match self {
            Self::Line(line) => line.to,
            Self::Arc(arc) => arc.end(),
        }
    }

    /// Whether it is a hollow arc.
    #[must_use]
    pub fn is_hollow(&self) -> bool {
        matches!(self, Self::Arc(arc) if arc.is_hollow())
    }

    /// The outward normal where it starts.
    #[must_use]
    pub const fn first_normal(&self) -> Direction {
        match self {
            Self::Line(line) => line.normal,
            Self::Arc(arc) => arc.from,
        }
    }

    /// The outward normal where it ends.
    #[must_use]
    pub const fn last_normal(&self) -> Direction {
        match self {
            Self::Line(line) => line.normal,
            Self::Arc(arc) => arc.to,
        }
    }

    /// The same piece, run through the other way.
    #[must_use]
    pub fn reversed(&self) -> Self {
        match *self {
            Self::Line(Line { from, to, normal }) => Self::Line(Line {
                from: to,
                to: from,
                normal: -normal,
            }),
            Self::Arc(Arc {
                centre,
                radius,
                from,
                to,
            }) => Self::Arc(Arc {
                centre,
                radius: -radius,
                from: -to,
                to: -from,
            }),
        }
    }

    /// The same piece, turned about the axis by the angle whose cosine and sine are given.
    #[must_use]
    pub fn turned(&self, turn: Direction) -> Self {
        match *self {
            Self::Line(Line { from, to, normal }) => Self::Line(Line {
                from: from.turned(turn),
                to: to.turned(turn),
                normal: normal.turned(turn),
            }),
            Self::Arc(Arc {
                centre,
                radius,
                from,
                to,
            }) => Self::Arc(Arc {
                centre: centre.turned(turn),
                radius,
                from: from.turned(turn),
                to: to.turned(turn),
            }),
        }
    }
}

impl Segment {
    /// A straight side between two points, or nothing where they are one.
    pub(crate) fn line(from: Point, to: Point) -> Option<Self> {
        let along = Direction::between(from, to)?;
        let normal = -along.quarter_turn();
        Some(Self::Line(Line { from, to, normal }))
    }

    /// The arc that leaves a point in a direction and ends in another point, a line where that
    /// lies straight ahead; nothing where the points are one or the arc would pass half a turn.
    pub(super) fn leaving(from: Point, tangent: Direction, to: Point) -> Option<Self> {
        /// A bend of less is a line, as a share of its length.
        const STRAIGHT: f64 = 1e-9;
        let (x, y) = (to.x - from.x, to.y - from.y);
        let square = x * x + y * y;
        let (ahead, beside) = (
            x * tangent.x + y * tangent.y,
            x * -tangent.y + y * tangent.x,
        );
        if square == 0.0 || ahead < 0.0 {
            return None;
        }
        if beside.abs() <= STRAIGHT * square.sqrt() {
            return Self::line(from, to);
        }
        // Positive where the curve turns left, which is where it bulges outwards.
        let radius = square / (2.0 * beside);
        let normal = -tangent.quarter_turn();
        let centre = from.towards(normal, -radius);
        let last = Direction::between(centre, to)?;
        Some(Self::Arc(Arc {
            centre,
            radius,
            from: normal,
            to: if radius < 0.0 { -last } else { last },
        }))
    }
}

impl Segment {
    /// From its leftmost to its rightmost x.
    pub(crate) fn span(&self) -> (f64, f64) {
        let (start, end) = (self.start().x, self.end().x);
        let (mut left, mut right) = (lesser(start, end), greater(start, end));
        if let Self::Arc(arc) = self {
            for normal in [Direction::LEFT, Direction::RIGHT] {
                if arc.faces(normal) {
                    let x = arc.centre.towards(normal, arc.radius).x;
                    (left, right) = (lesser(left, x), greater(right, x));
                }
            }
        }
        (left, right)
    }

    /// The piece mirrored in the upright line through the axis, run through counter-clockwise again.
    pub(super) fn mirrored(&self) -> Self {
        let over = |point: Point| Point {
            x: -point.x,
            y: point.y,
        };
        let across = |normal: Direction| Direction {
            x: -normal.x,
            y: normal.y,
        };
        match *self {
            Self::Line(Line { from, to, normal }) => Self::Line(Line {
                from: over(to),
                to: over(from),
                normal: across(normal),
            }),
            Self::Arc(arc) => Self::Arc(Arc {
                centre: over(arc.centre),
                from: across(arc.to),
                to: across(arc.from),
                ..arc
            }),
        }
    }

    /// The same piece, larger by a factor above 0.
    pub(super) fn scaled(&self, factor: f64) -> Self {
        let scale = |point: Point| Point {
            x: point.x * factor,
            y: point.y * factor,
        };
        match *self {
            Self::Line(Line { from, to, normal }) => Self::Line(Line {
                from: scale(from),
                to: scale(to),
                normal,
            }),
            Self::Arc(arc) => Self::Arc(Arc {
                centre: scale(arc.centre),
                radius: arc.radius * factor,
                ..arc
            }),
        }
    }

    /// The same piece, moved, mm.
    pub(crate) fn moved(&self, x: f64, y: f64) -> Self {
        let shift = |point: Point| Point {
            x: point.x + x,
            y: point.y + y,
        };
        match *self {
            Self::Line(Line { from, to, normal }) => Self::Line(Line {
                from: shift(from),
                to: shift(to),
                normal,
            }),
            Self::Arc(arc) => Self::Arc(Arc {
                centre: shift(arc.centre),
                ..arc
            }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Angle;
    use proptest::prelude::*;
    use std::f64::consts::PI;

    fn arc(radius: f64, start: f64, sweep: f64) -> Arc {
        let normal = |degrees: f64| Angle::degrees(degrees).direction();
        Arc {
            centre: Point::AXIS,
            radius,
            from: normal(start),
            to: normal(start + sweep * radius.signum()),
        }
    }

    proptest! {
        #[test]
        fn an_arc_whose_ends_are_one_is_neither_a_whole_turn_nor_seen_from_behind(
            start in -360.0_f64..360.0, radius in prop_oneof![Just(-2.0), Just(2.0)],
            sweep in prop_oneof![Just(0.0), Just(1e-14), Just(-1e-14)],
        ) {
            let arc = arc(radius, start, sweep);
            prop_assert!(arc.sweep().abs() < 1e-12, "{}", arc.sweep());
            prop_assert!(arc.faces(arc.from));
            prop_assert!(!arc.faces(-arc.from));
        }

        #[test]
        fn an_arc_turns_up_to_half_a_turn_and_faces_what_lies_between_its_ends(
            start in -360.0_f64..360.0, radius in prop_oneof![Just(-2.0), Just(2.0)],
            sweep in prop_oneof![Just(180.0), 0.001_f64..180.0], share in 0.0_f64..=1.0,
        ) {
            let arc = arc(radius, start, sweep);
            let expected = sweep / 180.0 * PI * radius.signum();
            prop_assert!((arc.sweep() - expected).abs() < 1e-12, "{}", arc.sweep());
            let between = start + sweep * share * radius.signum();
            prop_assert!(arc.faces(Angle::degrees(between).direction()));
            let behind = start + (sweep / 2.0 + 180.0) * radius.signum();
            prop_assert!(!arc.faces(Angle::degrees(behind).direction()));
        }
    }
}
