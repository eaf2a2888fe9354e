//! The two kinds of piece an outline is made of, kept exact.

use crate::quantity::{Direction, Point};

/// One piece of an outline, run through counter-clockwise.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Segment {
    /// A straight side.
    Line(Line),
    /// A rounded corner, or the whole of a round outline in halves.
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

/// A circular arc of at most half a turn, bulging outwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arc {
    /// Centre of the circle.
    pub centre: Point,
    /// Radius, mm.
    pub radius: f64,
    /// Outward normal where it starts.
    pub from: Direction,
    /// Outward normal where it ends.
    pub to: Direction,
}

impl Arc {
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

    /// The angle it turns through, in radians, above 0 and up to π.
    #[must_use]
    pub fn sweep(&self) -> f64 {
        let turn = libm::atan2(self.from.cross(self.to), self.from.dot(self.to));
        if turn > 0.0 {
            turn
        } else {
            turn + std::f64::consts::TAU
        }
    }

    /// The point halfway along.
    #[must_use]
    pub fn middle(&self) -> Point {
        let (x, y) = (self.from.x + self.to.x, self.from.y + self.to.y);
        let size = libm::hypot(x, y);
        // The two ends of half a turn point opposite ways: the middle is a quarter on.
        let normal = if size < 1e-9 {
            self.from.quarter_turn()
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
        self.from.cross(direction) >= HAIR && direction.cross(self.to) >= HAIR
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
}
