//! A size that changes with the turn of the barrel as a sinusoid.

use crate::quantity::{Direction, norm};
use std::ops::{Add, Mul, Sub};

/// `constant + cosine·cos θ + sine·sin θ`, mm, for a turn θ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Wave {
    pub(super) constant: f64,
    pub(super) cosine: f64,
    pub(super) sine: f64,
}

impl Wave {
    /// The same at every turn.
    pub(super) const fn level(constant: f64) -> Self {
        Self {
            constant,
            cosine: 0.0,
            sine: 0.0,
        }
    }

    /// Its value at a turn, given by cosine and sine.
    pub(super) fn at(&self, turn: Direction) -> f64 {
        self.constant + self.cosine * turn.x + self.sine * turn.y
    }

    /// The turns at which it has a value of 0, none or two, found without an angle: the points of
    /// the unit circle on the line `cosine·x + sine·y = −constant`.
    pub(super) fn zeros(&self) -> Option<[Direction; 2]> {
        let square = self.cosine * self.cosine + self.sine * self.sine;
        let beside = square - self.constant * self.constant;
        if square == 0.0 || beside < 0.0 {
            return None;
        }
        let root = beside.sqrt();
        let turn = |root: f64| Direction {
            x: (-self.constant * self.cosine - root * self.sine) / square,
            y: (-self.constant * self.sine + root * self.cosine) / square,
        };
        Some([turn(root), turn(-root)])
    }

    /// The turn at which it is greatest, or nothing where it is level.
    pub(super) fn crest(&self) -> Option<Direction> {
        let size = norm(self.cosine, self.sine);
        (size > 0.0).then(|| Direction {
            x: self.cosine / size,
            y: self.sine / size,
        })
    }
}

impl Add for Wave {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            constant: self.constant + other.constant,
            cosine: self.cosine + other.cosine,
            sine: self.sine + other.sine,
        }
    }
}

impl Sub for Wave {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + other * -1.0
    }
}

impl Mul<f64> for Wave {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self {
            constant: self.constant * factor,
            cosine: self.cosine * factor,
            sine: self.sine * factor,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn it_is_nothing_at_its_zeros_and_no_greater_than_at_its_crest(
            constant in -5.0_f64..5.0, cosine in -5.0_f64..5.0, sine in -5.0_f64..5.0, degrees in 0.0_f64..360.0,
        ) {
            let wave = Wave { constant, cosine, sine };
            for zero in wave.zeros().into_iter().flatten() {
                prop_assert!(wave.at(zero).abs() < 1e-9, "{}", wave.at(zero));
                prop_assert!((zero.x * zero.x + zero.y * zero.y - 1.0).abs() < 1e-9);
            }
            let turn = crate::quantity::Angle::degrees(degrees).direction();
            if let Some(crest) = wave.crest() {
                prop_assert!(wave.at(turn) <= wave.at(crest) + 1e-12);
            }
        }
    }
}
