//! Measurements counted in classes of one width.

use super::{Outliers, Sample};
use crate::quantity::Length;
use std::f64::consts::PI;

/// The width of the only class where all measurements are the same: what a caliper shows.
const CALIPER_STEP: Length = Length::millimetres(0.01);

/// Measurements counted in classes of one width, from the least to the greatest.
#[derive(Debug, Clone, PartialEq)]
pub struct Histogram {
    from: Length,
    width: Length,
    counts: Vec<usize>,
    below: usize,
    above: usize,
}

impl Histogram {
    /// The most classes.
    pub const MOST_CLASSES: usize = 80;

    /// Where the first class begins.
    #[must_use]
    pub const fn from(&self) -> Length {
        self.from
    }

    /// Where the last class ends.
    #[must_use]
    pub fn to(&self) -> Length {
        self.from + self.width * self.counts.len() as f64
    }

    /// The width of each class, above 0.
    #[must_use]
    pub const fn width(&self) -> Length {
        self.width
    }

    /// How many measurements lie in each class, one class at least.
    #[must_use]
    pub fn counts(&self) -> &[usize] {
        &self.counts
    }

    /// Measurements far below the first class.
    #[must_use]
    pub const fn below(&self) -> usize {
        self.below
    }

    /// Measurements far above the last class.
    #[must_use]
    pub const fn above(&self) -> usize {
        self.above
    }
}

impl Sample {
    /// The measurements in classes.
    ///
    /// The width of a class is 2·(Q₃ − Q₁)/∛n with the quartiles Q (D. Freedman and P. Diaconis,
    /// *On the histogram as a density estimator: L₂ theory*, Z. Wahrscheinlichkeitstheorie verw.
    /// Gebiete 57 (1981), 453–476); where these are the same, the range over log₂ n + 1 classes
    /// (H. A. Sturges, Journal of the American Statistical Association 21 (1926), 65–66). It is
    /// then rounded up to whole steps of the measurements, and the classes begin half a step
    /// below the least: otherwise one class would hold more steps of the caliper than the next,
    /// and a comb be seen that is not in the wood. At most [`Histogram::MOST_CLASSES`].
    ///
    /// [Outliers](Self::outliers) are counted beside the classes, so that one mistyped number does
    /// not press all others into one class.
    ///
    /// ```
    /// use solver::{Length, measured::Sample};
    /// let widths = [74.0, 74.1, 74.1, 74.1, 74.2].map(Length::millimetres);
    /// let histogram = Sample::new(&widths).unwrap().histogram();
    /// assert_eq!(histogram.counts(), [1, 3, 1]);
    /// assert!((histogram.from().in_millimetres() - 73.95).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn histogram(&self) -> Histogram {
        let sorted = self.sorted();
        let (below, above) = match self.outliers() {
            Outliers::Told { below, above, .. } => (below, above),
            Outliers::TooFew | Outliers::Alike => (0, 0),
        };
        // Half of the measurements lie from quartile to quartile, so some are shown.
        let shown = &sorted[below..sorted.len() - above];
        let least = shown[0];
        let range = shown[shown.len() - 1] - least;
        let Some(step) = common_step(shown) else {
            return Histogram {
                from: least - CALIPER_STEP * 0.5,
                width: CALIPER_STEP,
                counts: vec![shown.len()],
                below,
                above,
            };
        };
        let count = self.count() as f64;
        let quartiles = self.quantile(0.75) - self.quantile(0.25);
        let wanted = if quartiles > Length::SLACK {
            quartiles * (2.0 / libm::cbrt(count))
        } else {
            range / (libm::log2(count) + 1.0)
        };
        // One class more than the range holds, as it begins half a step early.
        let least_width = range / (Histogram::MOST_CLASSES - 1) as f64;
        let width = step * (wanted.max(least_width) / step - 1e-9).ceil().max(1.0);
        let from = least - step * 0.5;
        let class = |length: Length| ((length - from) / width).floor() as usize;
        let mut counts = vec![0; class(shown[shown.len() - 1]) + 1];
        for length in shown {
            counts[class(*length)] += 1;
        }
        Histogram {
            from,
            width,
            counts,
            below,
            above,
        }
    }

    /// How many measurements a normal lot with this mean and standard deviation would have in a
    /// narrow class round a place, n·(width/s)·φ((place − mean)/s); nothing where the spread is not
    /// told, or a class is wider than two standard deviations and so not narrow.
    pub(crate) fn expected_in_class(&self, width: Length) -> Option<impl Fn(Length) -> f64> {
        const WIDEST: f64 = 2.0;
        let deviation = self.deviation().ok()?;
        let (count, share) = (self.count() as f64, width / deviation);
        let (mean, peak) = (self.mean(), count * share / (2.0 * PI).sqrt());
        (share <= WIDEST).then_some(move |place: Length| {
            let z = (place - mean) / deviation;
            peak * libm::exp(-z * z / 2.0)
        })
    }
}

/// The largest step of which all distances from the least measurement are whole multiples, to a
/// nanometre; nothing where all are the same.
fn common_step(sorted: &[Length]) -> Option<Length> {
    const NANOMETRES: f64 = 1e6;
    let mut step = 0;
    for length in sorted {
        let distance = (*length - sorted[0]).in_millimetres() * NANOMETRES;
        step = greatest_common_divisor(step, distance.round() as u64);
        if step == 1 {
            break;
        }
    }
    (step > 0).then(|| Length::millimetres(step as f64 / NANOMETRES))
}

/// The largest number that divides both, by Euclid's algorithm; the other one where one is 0.
fn greatest_common_divisor(mut one: u64, mut other: u64) -> u64 {
    while other > 0 {
        (one, other) = (other, one % other);
    }
    one
}
