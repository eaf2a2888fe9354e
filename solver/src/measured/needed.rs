//! How many more slats to measure before the answer is as sharp as it is wanted.

use super::sample::{deviation_factors, mean_half_width};
use super::{Confidence, Sample, Untold};
use crate::quantity::Length;

/// How many more measurements are needed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Needed {
    /// None: there are enough.
    Enough,
    /// So many more.
    More(usize),
    /// More than [`Needed::MOST`] in all.
    OutOfReach,
}

impl Needed {
    /// The most measurements that are looked at, in all.
    pub const MOST: usize = 1_000_000;

    /// The half width within which the mean of a lot of slats is wanted: a tenth of what a caliper of
    /// 0.1 mm shows; common practice, no source.
    pub const WANTED_OF_MEAN: Length = Length::millimetres(0.01);

    /// From the number that is enough, if any, and the number there are.
    fn from(enough: Option<usize>, there: usize) -> Self {
        match enough {
            None => Self::OutOfReach,
            Some(enough) if enough <= there => Self::Enough,
            Some(enough) => Self::More(enough - there),
        }
    }
}

impl Sample {
    /// How many more measurements bring the mean of the lot within ± a half width: the least n
    /// with t·s/√n ≤ half width, as in [`mean_interval`](Self::mean_interval), with the s of this
    /// sample.
    ///
    /// # Errors
    /// When the sample does not tell the spread.
    ///
    /// ```
    /// use solver::{Length, measured::{Confidence, Needed, Sample}};
    /// let mm = Length::millimetres;
    /// let sample = Sample::new(&[73.9, 74.0, 74.1].map(mm)).unwrap();
    /// // s = 0.1: with 18, t = 2.110 gives 0.0497; with 17, t = 2.120 gives 0.0514.
    /// let needed = sample.needed_for_mean(mm(0.05), Confidence::USUAL);
    /// assert_eq!(needed, Ok(Needed::More(15)));
    /// ```
    pub fn needed_for_mean(
        &self,
        half_width: Length,
        confidence: Confidence,
    ) -> Result<Needed, Untold> {
        let deviation = self.deviation()?;
        let enough = least_count(self.count(), |count| {
            mean_half_width(deviation, count, confidence) <= half_width
        });
        Ok(Needed::from(enough, self.count()))
    }

    /// How many more measurements make the bounds of σ as close as a share of s: the least n with
    /// √((n − 1)/χ²ₗ) − √((n − 1)/χ²ᵤ) ≤ width, as in
    /// [`deviation_interval`](Self::deviation_interval). One measurement is enough to ask.
    ///
    /// ```
    /// use solver::{Length, measured::{Confidence, Needed, Sample}};
    /// let sample = Sample::new(&[Length::millimetres(74.0)]).unwrap();
    /// // With 23 measurements from 0.773 to 1.415 times s, with 22 from 0.769 to 1.429.
    /// let needed = sample.needed_for_deviation(0.65, Confidence::USUAL);
    /// assert_eq!(needed, Needed::More(22));
    /// ```
    #[must_use]
    pub fn needed_for_deviation(&self, width: f64, confidence: Confidence) -> Needed {
        let enough = least_count(self.count(), |count| {
            let factors = deviation_factors(count, confidence);
            factors.to - factors.from <= width
        });
        Needed::from(enough, self.count())
    }
}

/// The least count from 2 to [`Needed::MOST`] that is enough, found by doubling and halving from
/// `start`; no smaller one than `start` where that is enough.
fn least_count(start: usize, is_enough: impl Fn(usize) -> bool) -> Option<usize> {
    let (mut short, mut enough) = (1, start.clamp(2, Needed::MOST));
    while !is_enough(enough) {
        if enough == Needed::MOST {
            return None;
        }
        short = enough;
        enough = (enough * 2).min(Needed::MOST);
    }
    if enough <= start {
        return Some(start);
    }
    while enough - short > 1 {
        let middle = usize::midpoint(short, enough);
        if is_enough(middle) {
            enough = middle;
        } else {
            short = middle;
        }
    }
    Some(enough)
}
