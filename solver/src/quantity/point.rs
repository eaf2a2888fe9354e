//! Points and directions in the plane of the cross-section.

use super::{Angle, Length, norm};

/// A point of the cross-section in millimetres: x across the slat, y up.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// Across the slat, mm.
    pub x: f64,
    /// Up, mm.
    pub y: f64,
}

/// A unit vector.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Direction {
    /// Share along x, −1 to 1.
    pub x: f64,
    /// Share along y, −1 to 1.
    pub y: f64,
}

impl Point {
    /// The lead axis, from which outlines are measured.
    pub const AXIS: Self = Self { x: 0.0, y: 0.0 };

    /// The point `distance` mm from here in a direction.
    #[must_use]
    pub fn towards(self, direction: Direction, distance: f64) -> Self {
        Self {
            x: self.x + direction.x * distance,
            y: self.y + direction.y * distance,
        }
    }

    /// How far this point lies from the axis in a direction, mm; negative behind the axis.
    #[must_use]
    pub fn along(self, direction: Direction) -> f64 {
        self.x * direction.x + self.y * direction.y
    }

    /// The point turned about the axis by the angle whose cosine and sine are given.
    #[must_use]
    pub fn turned(self, turn: Direction) -> Self {
        Self {
            x: self.x * turn.x - self.y * turn.y,
            y: self.x * turn.y + self.y * turn.x,
        }
    }

    /// Distance to another point.
    #[must_use]
    pub fn distance(self, other: Self) -> Length {
        Length::millimetres(norm(other.x - self.x, other.y - self.y))
    }
}

impl Direction {
    /// To the right, up, left and down.
    pub const RIGHT: Self = Self { x: 1.0, y: 0.0 };
    /// Up, towards the top slat.
    pub const UP: Self = Self { x: 0.0, y: 1.0 };
    /// To the left, towards the datum edge.
    pub const LEFT: Self = Self { x: -1.0, y: 0.0 };
    /// Down, towards the bottom slat.
    pub const DOWN: Self = Self { x: 0.0, y: -1.0 };

    /// The direction from one point to another, or nothing where they are one.
    #[must_use]
    pub fn between(from: Point, to: Point) -> Option<Self> {
        let (x, y) = (to.x - from.x, to.y - from.y);
        let size = norm(x, y);
        (size > 0.0 && size.is_finite()).then(|| Self {
            x: x / size,
            y: y / size,
        })
    }

    /// The direction a quarter turn counter-clockwise from this one.
    #[must_use]
    pub const fn quarter_turn(self) -> Self {
        Self {
            x: -self.y,
            y: self.x,
        }
    }

    /// The direction turned by the angle whose cosine and sine are given.
    #[must_use]
    pub fn turned(self, turn: Self) -> Self {
        Self {
            x: self.x * turn.x - self.y * turn.y,
            y: self.x * turn.y + self.y * turn.x,
        }
    }

    /// The direction mirrored in the x axis: the turn the other way.
    #[must_use]
    pub const fn mirrored(self) -> Self {
        Self {
            x: self.x,
            y: -self.y,
        }
    }

    /// Its angle from the x axis, 0° up to 360°.
    #[must_use]
    pub fn angle(self) -> Angle {
        let degrees = libm::atan2(self.y, self.x).to_degrees();
        // Twelfths of a turn are exact both ways; a hair beside one is one.
        let twelfth = (degrees / 30.0).round() * 30.0;
        let degrees = if (degrees - twelfth).abs() < 1e-12 {
            twelfth
        } else {
            degrees
        };
        let positive = degrees.rem_euclid(360.0);
        Angle::degrees(if positive < 360.0 { positive } else { 0.0 })
    }

    /// Sine of the angle from this direction to another, positive counter-clockwise.
    #[must_use]
    pub fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    /// Cosine of the angle to another direction.
    #[must_use]
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }
}

impl std::ops::Neg for Direction {
    type Output = Self;
    fn neg(self) -> Self {
        Self {
            x: -self.x,
            y: -self.y,
        }
    }
}
