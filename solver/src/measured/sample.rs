//! Measurements of one size: how many, how large, how far apart.

use super::distribution::{chi_squared_quantile, student_quantile};
use super::{Confidence, Interval};
use crate::entry::LARGEST_ENTRY;
use crate::quantity::Length;

/// Measurements of one size of a lot; one at least.
#[derive(Debug, Clone, PartialEq)]
pub struct Sample {
    /// From the least to the greatest.
    sorted: Vec<Length>,
    mean: Length,
    /// Standard deviation; 0 for one measurement.
    deviation: Length,
}

/// Why a sample does not tell how far its lot spreads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, thiserror::Error)]
pub enum Untold {
    /// There is one measurement.
    #[error("one measurement tells nothing of the spread: measure more")]
    One,
    /// All measurements are the same.
    #[error("all measurements are the same, so the spread is not seen: measure with finer steps")]
    Alike,
}

impl Sample {
    /// The sample of some measurements; nothing where there are none, or one of them is no number
    /// or not strictly between ±10¹² mm.
    ///
    /// Their order does not matter. A million take about the time of sorting them.
    ///
    /// ```
    /// use solver::{Length, measured::Sample};
    /// let widths = [74.0, 74.2, 74.1].map(Length::millimetres);
    /// let sample = Sample::new(&widths).unwrap();
    /// assert_eq!(sample.median(), Length::millimetres(74.1));
    /// assert!((sample.deviation().unwrap().in_millimetres() - 0.1).abs() < 1e-12);
    /// assert!(Sample::new(&[]).is_none());
    /// ```
    #[must_use]
    pub fn new(measurements: &[Length]) -> Option<Self> {
        let can_be = |length: &Length| length.in_millimetres().abs() < LARGEST_ENTRY;
        if !measurements.iter().all(can_be) {
            return None;
        }
        let mut sorted = measurements.to_vec();
        sorted
            .sort_unstable_by(|one, other| one.in_millimetres().total_cmp(&other.in_millimetres()));
        let middle = sorted.get(sorted.len() / 2)?.in_millimetres();
        let values = sorted.iter().map(|length| length.in_millimetres());
        let (mean, deviation) = moments(values, middle);
        Some(Self {
            sorted,
            mean: Length::millimetres(mean),
            deviation: Length::millimetres(deviation),
        })
    }

    /// How many measurements there are, at least 1.
    #[must_use]
    pub fn count(&self) -> usize {
        self.sorted.len()
    }

    /// The measurements from the least to the greatest.
    #[must_use]
    pub fn sorted(&self) -> &[Length] {
        &self.sorted
    }

    /// Their mean.
    #[must_use]
    pub const fn mean(&self) -> Length {
        self.mean
    }

    /// Their standard deviation s = √(Σ(x − mean)²/(n − 1)), an estimate of that of the lot.
    ///
    /// # Errors
    /// When there is one measurement, or all are the same.
    pub fn deviation(&self) -> Result<Length, Untold> {
        if self.count() == 1 {
            Err(Untold::One)
        } else if self.deviation > Length::ZERO {
            Ok(self.deviation)
        } else {
            Err(Untold::Alike)
        }
    }

    /// The least measurement.
    #[must_use]
    pub fn least(&self) -> Length {
        self.sorted[0]
    }

    /// The greatest measurement.
    #[must_use]
    pub fn greatest(&self) -> Length {
        self.sorted[self.count() - 1]
    }

    /// The middle measurement, or the mean of the two in the middle.
    #[must_use]
    pub fn median(&self) -> Length {
        self.quantile(0.5)
    }

    /// The measurement at a share of the way from the least to the greatest, 0 to 1, in a straight
    /// line between the two nearest: definition 7 of Hyndman and Fan, *Sample quantiles in
    /// statistical packages*, The American Statistician 50 (1996), 361–365.
    pub(super) fn quantile(&self, share: f64) -> Length {
        let place = (self.count() - 1) as f64 * share;
        let below = place.floor() as usize;
        let above = (below + 1).min(self.count() - 1);
        let (below, above) = (self.sorted[below], self.sorted[above]);
        below + (above - below) * (place - place.floor())
    }

    /// Bounds of the mean of the whole lot: mean ± t·s/√n, with the quantile t of Student's
    /// distribution with n − 1 degrees of freedom. Source: NIST/SEMATECH e-Handbook of
    /// Statistical Methods, section 1.3.5.2.
    ///
    /// For a lot that spreads normally; near enough for others from some thirty on.
    ///
    /// # Errors
    /// When the sample does not tell the spread.
    ///
    /// ```
    /// use solver::{Length, measured::{Confidence, Sample}};
    /// // n = 2: mean ± 12.706·s/√2, and s/√2 is half the difference.
    /// let sample = Sample::new(&[74.0, 74.2].map(Length::millimetres)).unwrap();
    /// let bounds = sample.mean_interval(Confidence::USUAL).unwrap();
    /// assert!((bounds.to.in_millimetres() - (74.1 + 12.706 * 0.1)).abs() < 1e-4);
    /// ```
    pub fn mean_interval(&self, confidence: Confidence) -> Result<Interval<Length>, Untold> {
        let half = mean_half_width(self.deviation()?, self.count(), confidence);
        Ok(Interval {
            from: self.mean - half,
            to: self.mean + half,
        })
    }

    /// Bounds of the standard deviation σ of the whole lot, s·√((n − 1)/χ²), with the quantiles χ²
    /// of the chi-squared distribution with n − 1 degrees of freedom on either side. Source:
    /// NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.8 solved for σ.
    ///
    /// For a lot that spreads normally; with heavier tails it is too narrow, however many are
    /// measured.
    ///
    /// # Errors
    /// When the sample does not tell the spread.
    pub fn deviation_interval(&self, confidence: Confidence) -> Result<Interval<Length>, Untold> {
        let deviation = self.deviation()?;
        let factors = deviation_factors(self.count(), confidence);
        Ok(Interval {
            from: deviation * factors.from,
            to: deviation * factors.to,
        })
    }
}

/// Half the width of the bounds of the mean, with a standard deviation and n ≥ 2 measurements.
pub(super) fn mean_half_width(deviation: Length, count: usize, confidence: Confidence) -> Length {
    let freedom = (count - 1) as f64;
    deviation * (student_quantile(confidence.tail(), freedom) / (count as f64).sqrt())
}

/// The bounds of σ over s, with n ≥ 2 measurements.
pub(super) fn deviation_factors(count: usize, confidence: Confidence) -> Interval<f64> {
    let freedom = (count - 1) as f64;
    let factor = |below| (freedom / chi_squared_quantile(below, freedom)).sqrt();
    Interval {
        from: factor(1.0 - confidence.tail()),
        to: factor(confidence.tail()),
    }
}

/// Mean and standard deviation of values round `middle`; 0 for the latter of a single one.
///
/// Two passes, the second corrected by what the first rounded off: Chan, Golub and LeVeque,
/// *Algorithms for computing the sample variance*, The American Statistician 37 (1983), 242–247.
/// Beginning from a value among them, nothing is lost where they differ in their last digits only.
fn moments(values: impl ExactSizeIterator<Item = f64> + Clone, middle: f64) -> (f64, f64) {
    let count = values.len() as f64;
    let mean = middle + total(values.clone().map(|value| value - middle)) / count;
    if count < 2.0 {
        return (mean, 0.0);
    }
    let apart = values.map(|value| value - mean);
    let rest = total(apart.clone());
    let squares = total(apart.map(|apart| apart * apart));
    let variance = (squares - rest * rest / count) / (count - 1.0);
    (mean, variance.max(0.0).sqrt())
}

/// The sum with what each addition rounds off: A. Neumaier, *Rundungsfehleranalyse einiger
/// Verfahren zur Summation endlicher Summen*, Z. angew. Math. Mech. 54 (1974), 39–51.
fn total(values: impl Iterator<Item = f64>) -> f64 {
    let (mut sum, mut lost) = (0.0_f64, 0.0);
    for value in values {
        let next = sum + value;
        lost += if sum.abs() >= value.abs() {
            (sum - next) + value
        } else {
            (value - next) + sum
        };
        sum = next;
    }
    sum + lost
}
