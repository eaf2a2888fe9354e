//! The three sizes of space.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub};

macro_rules! scalar {
    ($(#[$doc:meta])* $name:ident, $unit:literal, $from:ident, $to:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            #[doc = concat!("From a number of ", $unit, ".")]
            #[must_use]
            pub const fn $from(value: f64) -> Self {
                Self(value)
            }

            #[doc = concat!("As a number of ", $unit, ".")]
            #[must_use]
            pub const fn $to(self) -> f64 {
                self.0
            }

            /// The smaller of the two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self {
                if self.0 <= other.0 { self } else { other }
            }

            /// The larger of the two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self {
                if self.0 >= other.0 { self } else { other }
            }

            /// The size without its sign.
            #[must_use]
            pub const fn abs(self) -> Self {
                Self(self.0.abs())
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }
        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }
        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(parts: I) -> Self {
                parts.fold(Self::ZERO, Add::add)
            }
        }
    };
}

scalar!(
    /// A length, kept in millimetres.
    ///
    /// ```
    /// use solver::Length;
    /// let slat = Length::millimetres(74.0);
    /// assert_eq!((slat - Length::millimetres(2.0)).in_millimetres(), 72.0);
    /// ```
    Length, "millimetres", millimetres, in_millimetres
);
scalar!(
    /// An area, kept in square millimetres.
    Area, "square millimetres", square_millimetres, in_square_millimetres
);
scalar!(
    /// A volume, kept in cubic millimetres.
    Volume, "cubic millimetres", cubic_millimetres, in_cubic_millimetres
);

impl Length {
    /// How far two lengths may differ and still count as the same in a comparison.
    ///
    /// A millionth of a micrometre: far below anything a shop measures, and far
    /// above the rounding that a chain of sums of millimetres gathers (about 1e-13).
    /// The only place where rounding is forgiven.
    pub const SLACK: Self = Self::millimetres(1e-9);

    /// Whether this much fits in `room`, rounding forgiven.
    ///
    /// ```
    /// use solver::Length;
    /// let third = Length::millimetres(0.1);
    /// assert!((third + third + third).fits_in(Length::millimetres(0.3)));
    /// ```
    #[must_use]
    pub fn fits_in(self, room: Self) -> bool {
        self <= room + Self::SLACK
    }

    /// How many whole times `step` goes into this length, rounding forgiven.
    ///
    /// Nothing goes into a negative length, and a step of nothing goes in no times.
    #[must_use]
    pub fn whole_steps(self, step: Self) -> u32 {
        if step <= Self::ZERO || !Self::ZERO.fits_in(self) {
            return 0;
        }
        // A float beyond u32 saturates, and NaN becomes 0: both are safe answers here.
        ((self + Self::SLACK) / step).floor() as u32
    }
}

impl Mul for Length {
    type Output = Area;
    fn mul(self, other: Self) -> Area {
        Area::square_millimetres(self.0 * other.0)
    }
}

impl Mul<Length> for Area {
    type Output = Volume;
    fn mul(self, depth: Length) -> Volume {
        Volume::cubic_millimetres(self.0 * depth.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn steps(room: f64, step: f64) -> u32 {
        Length::millimetres(room).whole_steps(Length::millimetres(step))
    }

    #[test]
    fn a_step_that_just_fits_counts() {
        assert_eq!(steps(74.0 - 2.0 - 6.84, 7.24), 9);
    }

    #[test]
    fn a_hair_less_does_not() {
        assert_eq!(steps(74.0 - 2.0 - 6.84 - 1e-6, 7.24), 8);
    }

    #[test]
    fn no_steps_in_less_than_nothing_or_of_nothing() {
        assert_eq!(steps(-1.0, 1.0), 0);
        assert_eq!(steps(1.0, 0.0), 0);
        assert_eq!(steps(f64::NAN, 1.0), 0);
    }
}
