//! Tails and quantiles of the normal, Student's t and the chi-squared distribution.
//!
//! Everything goes through `libm`, so that native and wasm agree to the last bit. The libraries
//! looked at have no upper tail of the chi-squared distribution, or a loop without an end.

use std::f64::consts::FRAC_1_SQRT_2;

/// Terms of a series or steps of a continued fraction: several times what a million degrees of
/// freedom take, which is a few times their square root.
const MOST_STEPS: u32 = 50_000;

/// The share of a normal distribution more than `z` standard deviations above its mean,
/// Q(z) = erfc(z/√2)/2.
pub(super) fn normal_above(z: f64) -> f64 {
    libm::erfc(z * FRAC_1_SQRT_2) / 2.0
}

/// How many standard deviations above the mean a share `tail` of a normal distribution begins,
/// 0 < tail ≤ 1/2.
pub(super) fn normal_quantile(tail: f64) -> f64 {
    root(normal_above, tail, 0.0, 40.0)
}

/// How far above 0 a share `tail` of Student's t distribution begins, 0 < tail ≤ 1/2.
pub(super) fn student_quantile(tail: f64, freedom: f64) -> f64 {
    let above = |t| student_above(t, freedom);
    // Its tails are heavier than the normal ones.
    let least = normal_quantile(tail);
    let mut most = least.max(1.0);
    while above(most) > tail && most < 1e300 {
        most *= 2.0;
    }
    root(above, tail, least, most)
}

/// Up to where a share `below` of the chi-squared distribution lies, 0 < below < 1.
pub(super) fn chi_squared_quantile(below: f64, freedom: f64) -> f64 {
    // Whichever tail is the smaller one is known the better.
    let (tail, is_lower) = if below <= 0.5 {
        (below, true)
    } else {
        (1.0 - below, false)
    };
    let exceeds = |x: f64| {
        let (lower, upper) = chi_squared_tails(x, freedom);
        if is_lower { tail - lower } else { upper - tail }
    };
    let mut most = freedom + 1.0;
    while exceeds(most) > 0.0 && most < 1e300 {
        most += 8.0 * freedom.sqrt() + 8.0;
    }
    root(exceeds, 0.0, 0.0, most)
}

/// The share of Student's t distribution above `t` ≥ 0, with ν degrees of freedom:
/// I(ν/(ν + t²); ν/2, 1/2) / 2 (DLMF 8.17).
fn student_above(t: f64, freedom: f64) -> f64 {
    let square = t * t / freedom;
    incomplete_beta(
        freedom / 2.0,
        0.5,
        1.0 / (1.0 + square),
        square / (1.0 + square),
    ) / 2.0
}

/// The shares of the chi-squared distribution below and above `x`, with ν degrees of freedom:
/// P(ν/2, x/2) and Q(ν/2, x/2).
fn chi_squared_tails(x: f64, freedom: f64) -> (f64, f64) {
    incomplete_gamma(freedom / 2.0, x / 2.0)
}

/// The regularised incomplete gamma functions P(a, x) and Q(a, x), a > 0.
///
/// Below a + 1 by the series P = xᵃe⁻ˣ/Γ(a + 1)·Σ xᵏ/((a + 1)…(a + k)) (DLMF 8.7.1), from there
/// on by the continued fraction of Q (DLMF 8.9.2), taken with the recurrence of Lentz as it
/// stands in Thompson and Barnett, J. Comput. Phys. 64 (1986), 490–509.
fn incomplete_gamma(a: f64, x: f64) -> (f64, f64) {
    if x <= 0.0 {
        return (0.0, 1.0);
    }
    let front = libm::exp(a * libm::log(x) - x - libm::lgamma(a));
    if x < a + 1.0 {
        let (mut term, mut sum) = (1.0 / a, 1.0 / a);
        for k in 1..MOST_STEPS {
            term *= x / (a + f64::from(k));
            sum += term;
            if term <= sum * f64::EPSILON {
                break;
            }
        }
        let lower = (front * sum).min(1.0);
        (lower, 1.0 - lower)
    } else {
        let level = |k: f64| (k * (a - k), x + 2.0 * k + 1.0 - a);
        let upper = (front / continued_fraction(x + 1.0 - a, level)).min(1.0);
        (1.0 - upper, upper)
    }
}

/// The regularised incomplete beta function I(x; a, b), with y = 1 − x given beside x, as it may
/// be known far better than the difference tells.
///
/// By the continued fraction DLMF 8.17.22, on the side where it converges fast:
/// x < (a + 1)/(a + b + 2), else 1 − I(y; b, a).
fn incomplete_beta(a: f64, b: f64, x: f64, y: f64) -> f64 {
    if x > (a + 1.0) / (a + b + 2.0) {
        return 1.0 - incomplete_beta_directly(b, a, y, x);
    }
    incomplete_beta_directly(a, b, x, y)
}

fn incomplete_beta_directly(a: f64, b: f64, x: f64, y: f64) -> f64 {
    if x <= 0.0 {
        return 0.0;
    }
    // The logarithm of a number near 1 is taken from what it lacks.
    let log = |one: f64, other: f64| {
        if one > 0.5 {
            libm::log1p(-other)
        } else {
            libm::log(one)
        }
    };
    let front = libm::exp(
        libm::lgamma(a + b) - libm::lgamma(a) - libm::lgamma(b) + a * log(x, y) + b * log(y, x),
    ) / a;
    let level = |k: f64| {
        let half = (k / 2.0).floor();
        let numerator = if k % 2.0 == 0.0 {
            half * (b - half) * x / ((a + k - 1.0) * (a + k))
        } else {
            -(a + half) * (a + b + half) * x / ((a + k - 1.0) * (a + k))
        };
        (numerator, 1.0)
    };
    front / continued_fraction(1.0, level)
}

/// The continued fraction b₀ + a₁/(b₁ + a₂/(b₂ + …)) with (aₖ, bₖ) from `level`.
fn continued_fraction(first: f64, level: impl Fn(f64) -> (f64, f64)) -> f64 {
    /// Stands for a divisor of 0.
    const TINY: f64 = 1e-300;
    let apart = |value: f64| if value.abs() < TINY { TINY } else { value };
    let mut fraction = apart(first);
    let (mut upper, mut lower) = (fraction, 0.0);
    for k in 1..MOST_STEPS {
        let (numerator, denominator) = level(f64::from(k));
        lower = 1.0 / apart(denominator + numerator * lower);
        upper = apart(denominator + numerator / upper);
        let change = upper * lower;
        fraction *= change;
        if (change - 1.0).abs() <= f64::EPSILON {
            break;
        }
    }
    fraction
}

/// Where a function that falls from `from` to `to` has a value: halved until the ends meet.
fn root(falling: impl Fn(f64) -> f64, value: f64, mut from: f64, mut to: f64) -> f64 {
    /// Ends this close, as a share of the place, have met: nobody reads that many digits.
    const MET: f64 = 1e-13;
    /// Enough to come from 1e300 down to the smallest number.
    const MOST_HALVINGS: u32 = 2200;
    for _ in 0..MOST_HALVINGS {
        let middle = f64::midpoint(from, to);
        if to - from <= MET * middle.abs() || middle <= from || middle >= to {
            break;
        }
        if falling(middle) > value {
            from = middle;
        } else {
            to = middle;
        }
    }
    f64::midpoint(from, to)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn close(found: f64, expected: f64, share: f64) {
        assert!(
            (found / expected - 1.0).abs() <= share,
            "{found} for {expected}"
        );
    }

    #[test]
    fn upper_tails_of_the_normal_distribution() {
        // Reference values to 15 digits, computed in 25-digit arithmetic.
        let table = [
            (1.0, 0.158_655_253_931_457),
            (2.0, 0.022_750_131_948_179_2),
            (3.0, 0.001_349_898_031_630_09),
            (4.0, 3.167_124_183_311_99e-5),
        ];
        for (z, tail) in table {
            close(normal_above(z), tail, 1e-13);
            close(normal_quantile(tail), z, 1e-12);
        }
    }

    #[test]
    fn student_with_one_and_two_degrees_of_freedom_is_elementary() {
        // With ν = 1 the tail is atan(1/t)/π, with ν = 2 it is (1 − t/√(2 + t²))/2.
        for t in [0.001, 0.3, 1.0, 6.0, 1000.0] {
            close(
                student_above(t, 1.0),
                libm::atan(1.0 / t) / std::f64::consts::PI,
                1e-12,
            );
            let root = (2.0 + t * t).sqrt();
            // (1 − t/root)/2 without the cancellation.
            close(student_above(t, 2.0), 1.0 / (root * (root + t)), 1e-12);
        }
    }

    #[test]
    fn chi_squared_with_two_degrees_of_freedom_is_exponential() {
        for x in [1e-6, 0.1, 2.0, 5.0, 50.0, 600.0] {
            let (lower, upper) = chi_squared_tails(x, 2.0);
            close(lower, -libm::expm1(-x / 2.0), 1e-12);
            close(upper, libm::exp(-x / 2.0), 1e-12);
        }
    }

    #[test]
    fn quantiles_lead_back_to_their_tails() {
        for freedom in [1.0, 2.0, 7.0, 30.0, 999.0, 123_456.0, 999_999.0] {
            for tail in [1e-7, 0.0005, 0.025, 0.2, 0.5] {
                let t = student_quantile(tail, freedom);
                if t > 1e-9 {
                    close(student_above(t, freedom), tail, 1e-9);
                }
                close(
                    chi_squared_tails(chi_squared_quantile(tail, freedom), freedom).0,
                    tail,
                    1e-8,
                );
                close(
                    chi_squared_tails(chi_squared_quantile(1.0 - tail, freedom), freedom).1,
                    tail,
                    1e-8,
                );
            }
        }
    }
}
