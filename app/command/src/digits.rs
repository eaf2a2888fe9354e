//! Numbers with more digits than a caliper shows: errors, means and rare faults.

use solver::figure;
use solver::tolerance::Estimate;

/// A share in per cent to one in a million.
pub(crate) fn fine_share(share: f64) -> String {
    format!("{}{}%", figure::plain(share * 100.0, 4), figure::THIN_SPACE)
}

/// A mean and its standard error.
pub(crate) fn pair(estimate: Estimate, decimals: usize) -> [String; 2] {
    [estimate.mean, estimate.error].map(|number| figure::plain(number, decimals))
}

/// Decimals with which the largest standard error shows two digits, 2 to 8; 4 without any error.
pub(crate) fn decimals(estimates: impl IntoIterator<Item = Estimate>) -> usize {
    let errors = estimates.into_iter().map(|estimate| estimate.error);
    let mut scaled = errors.fold(0.0, f64::max) * 100.0;
    if scaled == 0.0 {
        return 4;
    }
    let mut decimals = 2;
    while scaled < 10.0 && decimals < 8 {
        scaled *= 10.0;
        decimals += 1;
    }
    decimals
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(errors: &[f64], expected: usize) {
        let estimates = errors.iter().map(|&error| Estimate { mean: 9.0, error });
        assert_eq!(decimals(estimates), expected);
    }

    #[test]
    fn an_error_shows_two_digits() {
        check(&[0.000_53], 5);
        check(&[0.001, 0.02], 3);
        check(&[0.4], 2);
        check(&[1e-30], 8);
    }
    #[test]
    fn without_an_error_there_are_four() {
        check(&[0.0, 0.0], 4);
        check(&[], 4);
    }
}
