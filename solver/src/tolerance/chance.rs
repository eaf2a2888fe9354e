//! The chance that a lead lies within the eccentricity limit.

use super::normal::{Normal, density};
use crate::quadrature;
use crate::quantity::Length;

/// Beyond so many standard deviations chances are below the least number there is.
const FARTHEST: f64 = 39.0;

/// The chance that √(x² + y²) ≤ R for independent normal x and y.
///
/// With x the one of the smaller deviation σx, z = (x − μx)/σx and the half chord h = √(R² − x²),
///
/// P = ∫ φ(z) · P(−h ≤ y ≤ h) dz,
///
/// taken over both halves of the circle by the Gauss–Legendre rule of 16 points on pieces of at
/// most one standard deviation of x, and of y as h passes it, or half of one far out. Near the end of a half, where
/// h has a root, the integral runs over t = √((R − x)/σx) instead, in which h is smooth; the
/// half chord comes from the distance to the end, so that nothing cancels. A deviation of 0 is
/// the one value, and needs no integral. Relative error below 1e-9 down to chances of 1e-290,
/// for any ratio of the deviations; derived.
pub(super) fn within_circle(across: Normal, upright: Normal, limit: f64) -> f64 {
    let (x, y) = if across.deviation <= upright.deviation {
        (across, upright)
    } else {
        (upright, across)
    };
    if x.deviation == 0.0 {
        // A point for certain is held against the limit like any other size, rounding forgiven.
        if y.deviation == 0.0 {
            let slack = Length::SLACK.in_millimetres();
            return if libm::hypot(x.mean, y.mean) <= limit + slack {
                1.0
            } else {
                0.0
            };
        }
        let square = (limit - x.mean) * (limit + x.mean);
        return if square > 0.0 {
            within_chord(y, square.sqrt())
        } else {
            0.0
        };
    }
    let mirrored = Normal::new(-x.mean, x.deviation);
    // Rounding may lift a certainty above 1.
    (half(x, y, limit) + half(mirrored, y, limit)).min(1.0)
}

fn within_chord(y: Normal, half_chord: f64) -> f64 {
    y.between(-half_chord, half_chord)
}

/// The part of the chance with x from 0 to R.
fn half(x: Normal, y: Normal, limit: f64) -> f64 {
    let Normal { mean, deviation } = x;
    let (farthest, step) = reach(x, y, limit);
    let steps = |from: f64, to: f64| {
        let count = ((to - from) / step) as u32;
        (0..=count).map(move |k| from + f64::from(k) * step)
    };
    let first = (-mean / deviation).max(-farthest);
    let last = (limit - mean) / deviation;
    // The part next to the end, at most four standard deviations of it.
    let near = (limit / deviation).min(4.0);
    let heights = || {
        steps(-10.0, farthest)
            .map(|u| y.mean.abs() - u * y.deviation)
            .filter(|h| 0.0 < *h && *h < limit)
            .map(|h| (h, ((limit - h) * (limit + h)).sqrt()))
    };

    let breaks = heights().map(|(_, across)| (across - mean) / deviation);
    let grid = steps(-farthest, farthest);
    let inner = quadrature::pieces(
        first,
        (last - near).min(farthest),
        grid.clone().chain(breaks),
        |z| {
            let (short, long) = (
                (limit - mean) - deviation * z,
                (limit + mean) + deviation * z,
            );
            density(z) * within_chord(y, (short * long).max(0.0).sqrt())
        },
    );

    if last - near > farthest {
        return inner;
    }
    let breaks = heights().map(|(h, across)| h / (deviation * (limit + across)).sqrt());
    let grid = grid.map(|z| (last - z).max(0.0).sqrt());
    let outer = quadrature::pieces(0.0, near.sqrt(), grid.chain(breaks), |t| {
        let short = deviation * t * t;
        let half_chord = (short * (2.0 * limit - short)).max(0.0).sqrt();
        2.0 * t * density(last - t * t) * within_chord(y, half_chord)
    });
    inner + outer
}

/// How many standard deviations are looked at, and the longest piece of them. Where the mean lies
/// well inside, the chance is no small number and what is farther than ten of them adds nothing to
/// it; elsewhere all there is to find may lie far out, where the density falls steeply.
fn reach(x: Normal, y: Normal, limit: f64) -> (f64, f64) {
    let square = (limit - x.mean) * (limit + x.mean);
    if square > 0.0 && within_chord(y, square.sqrt()) > 1e-6 {
        (10.0, 1.0)
    } else {
        (FARTHEST, 0.5)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn chance(across: (f64, f64), upright: (f64, f64), limit: f64) -> f64 {
        within_circle(
            Normal::new(across.0, across.1),
            Normal::new(upright.0, upright.1),
            limit,
        )
    }

    fn close(found: f64, expected: f64) {
        assert!(
            (found / expected - 1.0).abs() < 1e-9,
            "found {found:e}, expected {expected:e}"
        );
    }

    #[test]
    fn equal_deviations_round_the_axis_are_those_of_rayleigh() {
        // P = 1 − exp(−R²/2σ²), closed form.
        for deviation in [1e-4, 0.03, 0.1, 0.3, 2.0, 1e3, 1e6] {
            let half_square = 0.3 * 0.3 / (2.0 * deviation * deviation);
            close(
                chance((0.0, deviation), (0.0, deviation), 0.3),
                -libm::expm1(-half_square),
            );
        }
    }

    #[test]
    fn any_means_and_deviations_are_as_computed_with_fifty_digits() {
        // ∫ φ((R sin θ − μx)/σx)/σx · R cos θ · P(|y| ≤ R cos θ) dθ in arithmetic of 50 digits.
        let table = [
            ((0.0, 0.03), (0.0, 0.06), 0.999_999_333_768_908_3),
            ((0.05, 0.08), (0.02, 0.08), 0.997_280_898_293_820_2),
            ((0.1, 0.1), (0.0, 0.1), 0.956_284_028_421_364_3),
            ((0.0, 1e-4), (0.1, 0.2), 0.818_594_589_456_883_8),
            ((0.5, 0.02), (0.0, 0.02), 5.884_927_328_112_497e-24),
            ((0.9, 0.03), (0.4, 0.05), 1.604_007_710_380_358_4e-101),
            ((0.0, 0.001), (0.29, 0.1), 0.539_821_219_511_876_8),
            ((0.299, 0.001), (0.01, 0.1), 0.172_264_231_636_466),
            ((0.0, 3.0), (0.0, 5.0), 0.002_994_906_413_460_617_6),
            ((0.299_99, 1e-5), (0.0, 1e-3), 0.792_510_411_706_153_6),
            ((1.2, 0.03), (0.0, 0.5), 1.694_962_563_614_540_3e-199),
            ((0.0, 0.02), (1.3, 0.03), 4.029_308_956_139_599e-244),
        ];
        for (across, upright, expected) in table {
            close(chance(across, upright, 0.3), expected);
        }
    }

    #[test]
    fn one_certain_side_leaves_the_normal_distribution() {
        let exact = |half: f64| Normal::new(0.1, 0.2).between(-half, half);
        close(chance((0.0, 0.0), (0.1, 0.2), 0.3), exact(0.3));
        close(chance((0.1, 0.2), (0.18, 0.0), 0.3), exact(0.24));
        assert_eq!(chance((0.31, 0.0), (0.0, 0.1), 0.3), 0.0);
    }

    #[test]
    fn without_errors_all_is_certain() {
        assert_eq!(chance((0.18, 0.0), (0.24, 0.0), 0.3), 1.0);
        assert_eq!(chance((0.18, 0.0), (0.2401, 0.0), 0.3), 0.0);
        assert_eq!(chance((0.0, 0.0), (0.0, 0.0), 0.0), 1.0);
    }

    #[test]
    fn a_tiny_deviation_tends_to_none_at_all() {
        for tiny in [1e-6, 1e-9, 1e-12, 1e-100, 1e-300] {
            for (mean, off) in [(0.0, 0.0), (0.1, 0.05), (0.02, 0.25)] {
                let expected = chance((mean, 0.0), (off, 0.04), 0.3);
                // The bend of the chord adds to second order only.
                let found = chance((mean, tiny), (off, 0.04), 0.3);
                assert!((found / expected - 1.0).abs() < 1e-9, "{tiny}: {found}");
            }
        }
    }

    proptest! {
        #[test]
        fn a_larger_limit_gives_more_and_a_larger_spread_less(
            across in 0.0_f64..0.5, upright in 0.0_f64..0.5, limit in 0.0_f64..2.0, more in 1.0_f64..2.0,
        ) {
            let base = chance((0.0, across), (0.0, upright), limit);
            prop_assert!((0.0..=1.0).contains(&base));
            let hair = 1e-12;
            prop_assert!(chance((0.0, across), (0.0, upright), limit * more) >= base - hair);
            prop_assert!(chance((0.0, across * more), (0.0, upright), limit) <= base + hair);
            prop_assert!(chance((0.0, across), (0.0, upright * more), limit) <= base + hair);
        }

        #[test]
        fn it_is_the_same_mirrored_and_with_the_axes_exchanged(
            across in 0.0_f64..0.5, upright in 0.0_f64..0.5, off in -1.0_f64..1.0, limit in 0.0_f64..2.0,
        ) {
            let base = chance((off, across), (0.1, upright), limit);
            for other in [
                chance((-off, across), (-0.1, upright), limit),
                chance((0.1, upright), (off, across), limit),
            ] {
                prop_assert!((other - base).abs() <= 1e-12 * base, "{other} for {base}");
            }
        }

        #[test]
        fn off_centre_is_worse(off in 0.0_f64..1.0, deviation in 0.001_f64..0.5) {
            let base = chance((0.0, deviation), (0.0, deviation), 0.3);
            prop_assert!(chance((off, deviation), (0.0, deviation), 0.3) <= base + 1e-12);
        }

        #[test]
        fn any_size_gives_a_chance(
            across in 0.0_f64..50.0, upright in 0.0_f64..50.0, off in -50.0_f64..50.0,
            up in -50.0_f64..50.0, limit in 0.0_f64..2.0,
        ) {
            let found = chance((off, across), (up, upright), limit);
            prop_assert!((0.0..=1.0).contains(&found));
        }
    }
}
