//! Measurements so far out that they are more likely mistyped or misread than cut.

use super::{Interval, Sample};
use crate::quantity::Length;

/// Where measurements stop being believable, and how many lie beyond.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outliers {
    /// There are too few measurements to tell: fewer than [`Outliers::LEAST_COUNT`].
    TooFew,
    /// The middle half of the measurements is one and the same, so there is nothing to tell
    /// distances by.
    Alike,
    /// They can be told.
    Told {
        /// What is believable.
        fence: Interval<Length>,
        /// Measurements below the fence.
        below: usize,
        /// Measurements above the fence.
        above: usize,
    },
}

impl Outliers {
    /// The least number of measurements of which outliers are told.
    pub const LEAST_COUNT: usize = 8;
}

impl Sample {
    /// Measurements farther below the lower quartile, or above the upper one, than three times the
    /// distance of the two: *far out* in J. W. Tukey, *Exploratory Data Analysis* (1977), section
    /// 2E.
    ///
    /// Several mistyped numbers do not hide each other behind their own spread, as they do from a
    /// test by mean and standard deviation, and nothing has to be normal. Of normal lots about one
    /// in 22 shows an outlier with 8 to 10 measurements, one in 80 with 30, and one in 350 with
    /// 100 (own simulation). Nothing is taken out of the sample: look at the slat first.
    ///
    /// ```
    /// use solver::{Length, measured::{Outliers, Sample}};
    /// let widths = [74.0, 74.1, 73.9, 74.0, 74.2, 73.9, 74.1, 7.4].map(Length::millimetres);
    /// let outliers = Sample::new(&widths).unwrap().outliers();
    /// assert!(matches!(outliers, Outliers::Told { below: 1, above: 0, .. }));
    /// ```
    #[must_use]
    pub fn outliers(&self) -> Outliers {
        if self.count() < Outliers::LEAST_COUNT {
            return Outliers::TooFew;
        }
        let (lower, upper) = (self.quantile(0.25), self.quantile(0.75));
        let beyond = (upper - lower) * 3.0;
        if beyond.fits_in(Length::ZERO) {
            return Outliers::Alike;
        }
        let fence = Interval {
            from: lower - beyond,
            to: upper + beyond,
        };
        let sorted = self.sorted();
        let below = sorted.partition_point(|length| !fence.from.fits_in(*length));
        let within = sorted.partition_point(|length| length.fits_in(fence.to));
        Outliers::Told {
            fence,
            below,
            above: sorted.len() - within,
        }
    }
}
