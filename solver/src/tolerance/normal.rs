//! The normal distribution: chances of intervals, and expected values.

use crate::quadrature;
use crate::quantity::Length;
use std::f64::consts::{FRAC_1_SQRT_2, TAU};

/// A normally distributed size in mm; with a deviation of 0 it is its mean for certain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Normal {
    pub(super) mean: f64,
    /// Standard deviation, at least 0.
    pub(super) deviation: f64,
}

/// Where a function of a normal size changes: the place, and over which distance.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bend {
    pub(super) place: f64,
    pub(super) width: f64,
}

/// Places of breaks from a mean or a bend, in deviations; beyond the last there is less than 1e-14.
const GRID: [f64; 9] = [-8.0, -6.0, -4.0, -2.0, 0.0, 2.0, 4.0, 6.0, 8.0];

impl Normal {
    pub(super) const fn new(mean: f64, deviation: f64) -> Self {
        Self { mean, deviation }
    }

    /// The chance of at most a limit.
    pub(super) fn at_most(self, limit: f64) -> f64 {
        self.between(f64::NEG_INFINITY, limit)
    }

    /// The chance of at least a limit.
    pub(super) fn at_least(self, limit: f64) -> f64 {
        self.between(limit, f64::INFINITY)
    }

    /// The chance of an interval, with about 14 digits however small it is.
    pub(super) fn between(self, low: f64, high: f64) -> f64 {
        let Self { mean, deviation } = self;
        if deviation == 0.0 {
            let slack = Length::SLACK.in_millimetres();
            let inside = low <= high && low - slack <= mean && mean <= high + slack;
            return if inside { 1.0 } else { 0.0 };
        }
        standard_between((low - mean) / deviation, (high - mean) / deviation)
    }

    /// The chance of more than a limit, rounding forgiven where nothing varies.
    pub(super) fn exceeds(self, limit: f64) -> f64 {
        if self.deviation == 0.0 {
            let slack = Length::SLACK.in_millimetres();
            return if self.mean > limit + slack { 1.0 } else { 0.0 };
        }
        self.at_least(limit)
    }

    /// The expected value of a function from 0 to 1 that is smooth between its breaks, over no more
    /// than four deviations at a time.
    pub(super) fn expected_between(
        self,
        mut breaks: Vec<f64>,
        value: &mut dyn FnMut(f64) -> f64,
    ) -> f64 {
        let Self { mean, deviation } = self;
        if deviation == 0.0 {
            return value(mean);
        }
        for place in &mut breaks {
            *place = (*place - mean) / deviation;
        }
        breaks.extend([-4.0, 0.0, 4.0]);
        quadrature::pieces(-8.0, 8.0, breaks, |z| {
            density(z) * value(mean + deviation * z)
        })
    }

    /// The expected value of a function from 0 to 1, to about 1e-12 where each of its bends is
    /// named and it is smooth beside them.
    pub(super) fn expected(self, bends: &[Bend], mut value: impl FnMut(f64) -> f64) -> f64 {
        let Self { mean, deviation } = self;
        if deviation == 0.0 {
            return value(mean);
        }
        let breaks = bends
            .iter()
            .flat_map(|bend| GRID.map(|step| (bend.place + step * bend.width - mean) / deviation));
        let [from, .., to] = GRID;
        quadrature::pieces(from, to, GRID.into_iter().chain(breaks), |z| {
            density(z) * value(mean + deviation * z)
        })
    }
}

/// The density of the standard normal distribution.
pub(super) fn density(z: f64) -> f64 {
    libm::exp(-0.5 * z * z) / TAU.sqrt()
}

/// The chance that a standard normal number lies between two.
///
/// Where both lie on one side, the chance is the difference of two tails; where those are nearly
/// alike, it is the integral of the density, which loses nothing.
fn standard_between(low: f64, high: f64) -> f64 {
    if low >= high {
        return 0.0;
    }
    if high <= 0.0 {
        return standard_between(-high, -low);
    }
    if low < 0.0 {
        return 0.5 * (libm::erf(high * FRAC_1_SQRT_2) - libm::erf(low * FRAC_1_SQRT_2));
    }
    if (high - low) * (1.0 + low) < 0.25 {
        return quadrature::piece(low, high, density);
    }
    0.5 * (libm::erfc(low * FRAC_1_SQRT_2) - libm::erfc(high * FRAC_1_SQRT_2))
}

#[cfg(test)]
mod tests {
    use super::*;

    const STANDARD: Normal = Normal::new(0.0, 1.0);

    #[test]
    fn upper_tails_are_those_of_the_tables() {
        // Q(1) to Q(4), to 15 digits.
        let tails = [
            0.158_655_253_931_457,
            0.022_750_131_948_179_2,
            0.001_349_898_031_630_09,
            3.167_124_183_311_99e-5,
        ];
        for (z, tail) in (1..).map(f64::from).zip(tails) {
            assert!((STANDARD.at_least(z) / tail - 1.0).abs() < 1e-14, "{z}");
            assert!((STANDARD.at_most(-z) / tail - 1.0).abs() < 1e-14, "{z}");
        }
    }

    #[test]
    fn narrow_intervals_far_out_keep_their_digits() {
        // φ(z)·w to first order, with the slope and curvature of the density beside.
        for z in [0.0, 3.0, 20.0, 37.0] {
            let width = 1e-7;
            let found = STANDARD.between(z, z + width);
            let factor = 1.0 - z * width / 2.0 + (z * z - 1.0) * width * width / 6.0;
            assert!(
                (found / (density(z) * width * factor) - 1.0).abs() < 1e-7,
                "{z}"
            );
            let parts = STANDARD.between(z, z + 0.2) + STANDARD.between(z + 0.2, z + 1.0);
            assert!(
                (parts / STANDARD.between(z, z + 1.0) - 1.0).abs() < 1e-12,
                "{z}"
            );
        }
    }

    #[test]
    fn without_deviation_the_mean_is_certain() {
        let certain = Normal::new(0.3, 0.0);
        assert_eq!(certain.between(0.1 + 0.2, 1.0), 1.0);
        assert_eq!(certain.at_most(0.29), 0.0);
        assert_eq!(certain.expected(&[], |x| x), 0.3);
    }

    #[test]
    fn expected_values_of_a_step_are_chances() {
        let normal = Normal::new(0.2, 0.05);
        for place in [0.0, 0.1, 0.2, 0.23] {
            let bend = Bend { place, width: 0.0 };
            let found = normal.expected(&[bend], |x| if x > place { 1.0 } else { 0.0 });
            assert!((found - normal.at_least(place)).abs() < 1e-14);
        }
    }

    #[test]
    fn an_expected_chance_is_that_of_the_sum() {
        // P(A ≤ B) with both normal is P(A − B ≤ 0), however unlike they are.
        let one = Normal::new(0.01, 0.03);
        for deviation in [1e-9, 1e-4, 0.02, 5.0] {
            let bend = Bend {
                place: 0.0,
                width: deviation,
            };
            let found = one.expected(&[bend], |x| Normal::new(0.0, deviation).at_least(x));
            let both = (0.03_f64 * 0.03 + deviation * deviation).sqrt();
            let exact = Normal::new(0.01, both).at_most(0.0);
            assert!(
                (found - exact).abs() < 1e-12,
                "{deviation}: {found} for {exact}"
            );
        }
    }
}
