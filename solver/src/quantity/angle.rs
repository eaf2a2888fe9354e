//! Angles that know their exact sines.

use super::Direction;

/// An angle, counter-clockwise, kept in degrees so that thirds and quarters of a turn stay exact.
///
/// ```
/// use solver::Angle;
/// let upright = Angle::degrees(450.0).direction();
/// assert_eq!((upright.x, upright.y), (0.0, 1.0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Angle(f64);

impl Angle {
    /// No turn.
    pub const ZERO: Self = Self(0.0);

    /// From degrees.
    #[must_use]
    pub const fn degrees(value: f64) -> Self {
        Self(value)
    }

    /// From radians.
    #[must_use]
    pub fn radians(value: f64) -> Self {
        Self(value.to_degrees())
    }

    /// As degrees.
    #[must_use]
    pub const fn in_degrees(self) -> f64 {
        self.0
    }

    /// The unit vector at this angle from the x axis.
    ///
    /// Multiples of 30° give the exact 0, ½ and 1, so that a face that stands upright
    /// is upright to the last bit; every other angle goes through `libm`.
    #[must_use]
    pub fn direction(self) -> Direction {
        let turn = self.0.rem_euclid(360.0);
        let quarter = (turn / 90.0).floor();
        let (y, x) = sine_and_cosine(turn - quarter * 90.0);
        match quarter as u8 {
            0 => Direction { x, y },
            1 => Direction { x: -y, y: x },
            2 => Direction { x: -x, y: -y },
            // A turn that rounds up to a full 360° is no turn.
            3 => Direction { x: y, y: -x },
            _ => Direction { x: 1.0, y: 0.0 },
        }
    }
}

impl std::ops::Add for Angle {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl std::ops::Neg for Angle {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

/// Sine and cosine of an angle from 0° up to 90°, exact where they are rational.
fn sine_and_cosine(degrees: f64) -> (f64, f64) {
    let half_root_three = 3.0_f64.sqrt() / 2.0;
    if degrees == 0.0 {
        (0.0, 1.0)
    } else if degrees == 30.0 {
        (0.5, half_root_three)
    } else if degrees == 60.0 {
        (half_root_three, 0.5)
    } else {
        libm::sincos(degrees.to_radians())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quarters_and_sixths_of_a_turn_are_exact() {
        for (degrees, x, y) in [
            (0.0, 1.0, 0.0),
            (90.0, 0.0, 1.0),
            (180.0, -1.0, 0.0),
            (-90.0, 0.0, -1.0),
            (360.0, 1.0, 0.0),
        ] {
            let d = Angle::degrees(degrees).direction();
            assert_eq!((d.x, d.y), (x, y), "{degrees}");
        }
        assert_eq!(Angle::degrees(150.0).direction().y, 0.5);
        assert_eq!(Angle::degrees(-60.0).direction().x, 0.5);
    }

    #[test]
    fn a_turn_a_hair_below_nothing_stays_finite() {
        let d = Angle::degrees(-1e-300).direction();
        assert_eq!((d.x, d.y), (1.0, 0.0));
    }

    #[test]
    fn every_direction_has_unit_length() {
        for tenth in -7200..7200 {
            let d = Angle::degrees(f64::from(tenth) / 10.0).direction();
            assert!((d.x * d.x + d.y * d.y - 1.0).abs() < 1e-15, "{tenth}");
        }
    }
}
