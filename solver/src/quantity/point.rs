//! Points and directions in the plane of the cross-section.

use super::Length;

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

    /// Distance to another point.
    #[must_use]
    pub fn distance(self, other: Self) -> Length {
        Length::millimetres(libm::hypot(other.x - self.x, other.y - self.y))
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

    /// The direction a quarter turn counter-clockwise from this one.
    #[must_use]
    pub const fn quarter_turn(self) -> Self {
        Self {
            x: -self.y,
            y: self.x,
        }
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
