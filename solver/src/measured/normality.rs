//! Whether measurements look like those of a lot that spreads normally.

use super::Sample;
use super::distribution::normal_above;
use crate::quantity::Length;

/// Whether a sample looks normal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Normality {
    /// There are too few measurements to tell: fewer than [`Normality::LEAST_COUNT`].
    TooFew,
    /// The steps of the caliper are so coarse that the test would see them and not the lot.
    TooCoarse,
    /// Nothing speaks against it; A*² lies below its 5 % point.
    Likely {
        /// A*², no unit.
        statistic: f64,
    },
    /// A normal lot gives such measurements less often than once in 20 times; A*² lies between
    /// its 5 % and 1 % points.
    Doubtful {
        /// A*², no unit.
        statistic: f64,
    },
    /// A normal lot gives such measurements less often than once in 100 times; A*² lies above its
    /// 1 % point.
    Unlikely {
        /// A*², no unit.
        statistic: f64,
    },
}

impl Normality {
    /// The least number of measurements that are tested.
    pub const LEAST_COUNT: usize = 8;
    /// The 5 % point of A*²: M. A. Stephens, *EDF statistics for goodness of fit*, Journal of the
    /// American Statistical Association 69 (1974), 730–737, as printed in the NIST/SEMATECH
    /// e-Handbook of Statistical Methods, section 1.3.5.14 (from memory).
    pub const FIVE_PER_CENT: f64 = 0.752;
    /// Its 1 % point.
    pub const ONE_PER_CENT: f64 = 1.035;

    /// What is to be thought of the shares outside the limits that rest on a normal lot.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::TooFew => "Too few measurements to tell whether the lot spreads normally",
            Self::TooCoarse => {
                "The steps of the measurements are too coarse to tell whether the lot spreads normally"
            }
            Self::Likely { .. } => "Nothing speaks against a normal spread",
            Self::Doubtful { .. } => {
                "A normal spread is doubtful: take shares far out in the tails with care"
            }
            Self::Unlikely { .. } => {
                "The lot does not spread normally: trust the count, not the share reckoned from mean and standard deviation"
            }
        }
    }
}

impl Sample {
    /// The test of Anderson and Darling for a normal lot of unknown mean and standard deviation.
    ///
    /// With z = (x − mean)/s of the measurements from the least to the greatest, and the normal
    /// distribution Φ, A² = −n − Σ(2i − 1)·(ln Φ(zᵢ) + ln(1 − Φ(zₙ₊₁₋ᵢ)))/n, and
    /// A*² = A²·(1 + 0.75/n + 2.25/n²): R. B. D'Agostino and M. A. Stephens, *Goodness-of-Fit
    /// Techniques* (1986), table 4.7, valid from n = 8 on (from memory).
    ///
    /// A caliper reads in steps h, and with many measurements the bare test would see nothing but
    /// the steps: of normal lots it refuses every one with h = 0.2·s and n = 500. So measurements
    /// that are the same are spread evenly over their cell, half way to the neighbours. That keeps
    /// the wrong alarms at 5 % or below as long as n·(h/s)⁴ ≤ 500 and five different values are
    /// there (own simulation), and beyond that nothing is told.
    ///
    /// With many thousands the test sees departures that no shop minds.
    #[must_use]
    pub fn normality(&self) -> Normality {
        const LEAST_DIFFERENT: usize = 5;
        const COARSEST: f64 = 500.0;
        if self.count() < Normality::LEAST_COUNT {
            return Normality::TooFew;
        }
        let Ok(deviation) = self.deviation() else {
            return Normality::TooCoarse;
        };
        let cells = Cell::all(self.sorted());
        let step = usual_step(&cells) / deviation;
        if cells.len() < LEAST_DIFFERENT
            || self.count() as f64 * step * step * step * step > COARSEST
        {
            return Normality::TooCoarse;
        }
        let statistic = self.anderson_darling(&cells, deviation);
        if statistic < Normality::FIVE_PER_CENT {
            Normality::Likely { statistic }
        } else if statistic < Normality::ONE_PER_CENT {
            Normality::Doubtful { statistic }
        } else {
            Normality::Unlikely { statistic }
        }
    }

    fn anderson_darling(&self, cells: &[Cell], deviation: Length) -> f64 {
        let count = self.count() as f64;
        let (mut sum, mut before) = (0.0, 0.0);
        for z in cells.iter().flat_map(Cell::spread) {
            let z = (z - self.mean()) / deviation;
            let (lower, upper) = log_tails(z);
            // The lower tail of the i-th from below counts 2i − 1 times, its upper tail as often
            // as that of the i-th from above.
            sum += (2.0 * before + 1.0) * lower + (2.0 * (count - before) - 1.0) * upper;
            before += 1.0;
        }
        let square = -count - sum / count;
        square * (1.0 + 0.75 / count + 2.25 / (count * count))
    }
}

/// The logarithms of both normal tails at z.
fn log_tails(z: f64) -> (f64, f64) {
    // Beyond 38 standard deviations a tail is less than the smallest number.
    let tail = normal_above(z.abs()).max(f64::MIN_POSITIVE);
    let (small, large) = (libm::log(tail), libm::log1p(-tail));
    if z < 0.0 {
        (small, large)
    } else {
        (large, small)
    }
}

/// Measurements that are the same.
#[derive(Debug, Clone, Copy)]
struct Cell {
    value: Length,
    count: usize,
    /// Half way to the next different measurement below, and above.
    below: Length,
    above: Length,
}

impl Cell {
    /// The cells of measurements from the least to the greatest.
    fn all(sorted: &[Length]) -> Vec<Self> {
        let mut cells: Vec<Self> = Vec::new();
        for run in sorted.chunk_by(|one, other| other.fits_in(*one)) {
            let value = run[0];
            let below = cells.last_mut().map(|last| {
                last.above = (value - last.value) * 0.5;
                last.above
            });
            cells.push(Self {
                value,
                count: run.len(),
                below: below.unwrap_or_default(),
                above: Length::ZERO,
            });
        }
        // The outermost cells reach as far out as they do inwards.
        if let Some(first) = cells.first_mut() {
            first.below = first.above;
        }
        if let Some(last) = cells.last_mut() {
            last.above = last.below;
        }
        cells
    }

    /// Its measurements, spread evenly over it; a single one stays.
    fn spread(&self) -> impl Iterator<Item = Length> {
        let Self {
            value,
            count,
            below,
            above,
        } = *self;
        (0..count).map(move |k| {
            if count == 1 {
                value
            } else {
                value - below + (below + above) * ((k as f64 + 0.5) / count as f64)
            }
        })
    }
}

/// The middle one of the steps from each cell to the next; 0 where there is only one cell.
fn usual_step(cells: &[Cell]) -> Length {
    let mut steps: Vec<f64> = cells
        .windows(2)
        .map(|pair| (pair[1].value - pair[0].value).in_millimetres())
        .collect();
    steps.sort_unstable_by(f64::total_cmp);
    Length::millimetres(steps.get(steps.len() / 2).copied().unwrap_or(0.0))
}
