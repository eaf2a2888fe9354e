//! Whether a lot keeps agreed limits: what lies outside, and how much room the spread has.

use super::distribution::{chi_squared_quantile, normal_above, normal_quantile};
use super::{Confidence, Interval, Limits, Sample, Untold};

/// How the spread of a lot compares with agreed limits.
///
/// Reckoned with the standard deviation of the whole sample, so what some standards call
/// performance, Pp and Ppk.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Capability {
    /// Cp, the room between the limits over six standard deviations; none with one limit.
    pub cp: Option<Ratio>,
    /// Cpk, the room from the mean to the nearer limit over three standard deviations.
    pub cpk: Ratio,
}

/// A ratio with its bounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ratio {
    /// The ratio as the sample has it.
    pub value: f64,
    /// Bounds of that of the whole lot.
    pub interval: Interval<f64>,
}

/// What lies outside agreed limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outside {
    /// Measurements below the lower limit.
    pub below: usize,
    /// Measurements above the upper limit.
    pub above: usize,
    /// The measurements outside, as a share of all.
    pub counted: f64,
    /// The share of a normal lot with the mean and the standard deviation of the sample that lies
    /// outside, or why it cannot be told.
    pub expected: Result<f64, Untold>,
}

impl Sample {
    /// Cp = (U − L)/(6s) and Cpk = min(U − mean, mean − L)/(3s) with the agreed limits L and U, and
    /// bounds of both for a normal lot:
    ///
    /// - Cp·√(χ²/(n − 1)), with the quantiles χ² of n − 1 degrees of freedom on either side, exact
    ///   (NIST/SEMATECH e-Handbook of Statistical Methods, section 6.1.6);
    /// - Cpk ± z·√(1/(9n) + Cpk²/(2(n − 1))), with the normal quantile z, near enough from n = 25
    ///   on (A. F. Bissell, *How reliable is your capability index?*, Applied Statistics 39 (1990),
    ///   331–340).
    ///
    /// # Errors
    /// When the sample does not tell the spread.
    ///
    /// ```
    /// use solver::{Length, measured::{Confidence, Limits, Sample}};
    /// let mm = Length::millimetres;
    /// let sample = Sample::new(&[73.9, 74.0, 74.1].map(mm)).unwrap();
    /// let limits = Limits::new(mm(74.0), Some(mm(-0.3)), Some(mm(0.6))).unwrap();
    /// let capability = sample.capability(&limits, Confidence::USUAL).unwrap();
    /// assert!((capability.cp.unwrap().value - 1.5).abs() < 1e-9); // 0.9 / 0.6
    /// assert!((capability.cpk.value - 1.0).abs() < 1e-9); // 0.3 / 0.3
    /// ```
    pub fn capability(
        &self,
        limits: &Limits,
        confidence: Confidence,
    ) -> Result<Capability, Untold> {
        let deviation = self.deviation()?;
        let freedom = (self.count() - 1) as f64;
        let cp = limits.lower().zip(limits.upper()).map(|(lower, upper)| {
            let value = (upper - lower) / (deviation * 6.0);
            let bound = |below| value * (chi_squared_quantile(below, freedom) / freedom).sqrt();
            Ratio {
                value,
                interval: Interval {
                    from: bound(confidence.tail()),
                    to: bound(1.0 - confidence.tail()),
                },
            }
        });
        let rooms = [
            limits.lower().map(|lower| self.mean() - lower),
            limits.upper().map(|upper| upper - self.mean()),
        ];
        let nearer = rooms
            .into_iter()
            .flatten()
            .map(|room| room / (deviation * 3.0))
            .fold(f64::INFINITY, f64::min);
        let variance = 1.0 / (9.0 * self.count() as f64) + nearer * nearer / (2.0 * freedom);
        let half = normal_quantile(confidence.tail()) * variance.sqrt();
        Ok(Capability {
            cp,
            cpk: Ratio {
                value: nearer,
                interval: Interval {
                    from: nearer - half,
                    to: nearer + half,
                },
            },
        })
    }

    /// What lies outside agreed limits, as counted, and as a normal lot would have it:
    /// Q((mean − L)/s) + Q((U − mean)/s) with the upper tail Q of the normal distribution.
    ///
    /// A measurement on a limit lies within.
    ///
    /// ```
    /// use solver::{Length, measured::{Limits, Sample}};
    /// let mm = Length::millimetres;
    /// let sample = Sample::new(&[73.7, 74.0, 74.0, 74.2].map(mm)).unwrap();
    /// let limits = Limits::new(mm(74.0), Some(mm(-0.2)), Some(mm(0.2))).unwrap();
    /// let outside = sample.outside(&limits);
    /// assert_eq!((outside.below, outside.above, outside.counted), (1, 0, 0.25));
    /// ```
    #[must_use]
    pub fn outside(&self, limits: &Limits) -> Outside {
        let sorted = self.sorted();
        let below = limits.lower().map_or(0, |lower| {
            sorted.partition_point(|length| !lower.fits_in(*length))
        });
        let within = limits.upper().map_or(sorted.len(), |upper| {
            sorted.partition_point(|length| length.fits_in(upper))
        });
        let above = sorted.len() - within;
        let expected = self.deviation().map(|deviation| {
            let lower = limits.lower().map(|lower| self.mean() - lower);
            let upper = limits.upper().map(|upper| upper - self.mean());
            let tails = [lower, upper].into_iter().flatten();
            tails.map(|room| normal_above(room / deviation)).sum()
        });
        Outside {
            below,
            above,
            counted: (below + above) as f64 / sorted.len() as f64,
            expected,
        }
    }
}
