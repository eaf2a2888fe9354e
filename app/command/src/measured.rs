//! What measured slats say of their lot: the answer of `measured`.

mod against;
mod text;

pub(crate) use against::Against;

use solver::measured::{
    Capability, Confidence, Histogram, Interval, Limits, Needed, Normality, Outliers, Outside,
    Readings, Sample, Untold, read,
};
use solver::{Length, LengthUnit};

use crate::answer::Answer;
use crate::arguments::Side;
use crate::document::{self, MeasuredDocument};
use crate::ending::Ending;
use crate::findings::{Findings, Told};

/// What measurements say.
pub(crate) struct Lot {
    /// How the file was read, with the cells that could not be.
    pub(crate) readings: Readings,
    /// How sure the bounds are.
    pub(crate) confidence: Confidence,
    /// The widths, where there are any.
    pub(crate) widths: Option<Measured>,
    /// The thicknesses, where there are any.
    pub(crate) thicknesses: Option<Measured>,
}

/// What the measurements of one size say.
pub(crate) struct Measured {
    /// The measurements.
    pub(crate) sample: Sample,
    /// How they spread, or why that is not seen.
    pub(crate) spread: Result<Spread, Untold>,
    /// Whether the lot looks normal.
    pub(crate) normality: Normality,
    /// What lies too far out to be believed.
    pub(crate) outliers: Outliers,
    /// The measurements in classes.
    pub(crate) histogram: Histogram,
    /// How they keep the agreed limits, where some are agreed.
    pub(crate) held: Option<Held>,
    /// How many more bring the mean within what was asked, where it was.
    pub(crate) needed_for_mean: Option<Result<Needed, Untold>>,
    /// How many more make the bounds of the standard deviation as close as was asked, where it was.
    pub(crate) needed_for_deviation: Option<Needed>,
}

/// How measurements spread, with bounds of what is true of the whole lot.
pub(crate) struct Spread {
    /// Their standard deviation.
    pub(crate) deviation: Length,
    /// Bounds of the mean.
    pub(crate) mean_bounds: Interval<Length>,
    /// Bounds of the standard deviation.
    pub(crate) deviation_bounds: Interval<Length>,
}

/// Measurements held against agreed limits.
pub(crate) struct Held {
    /// The limits.
    pub(crate) limits: Limits,
    /// What lies outside.
    pub(crate) outside: Outside,
    /// How much room the spread has, or why that is not seen.
    pub(crate) capability: Result<Capability, Untold>,
}

/// Reads measurements and tells what they say, with lengths in a unit where none is given.
///
/// # Errors
/// When there is nothing that can be read, and when limits are agreed of a size that was not
/// measured.
pub(crate) fn tell(text: &str, unit: LengthUnit, against: Against) -> Result<Lot, Findings> {
    let problem = |words| Findings::unopened(vec![Told::plain(words)]);
    let readings = read(text, unit).map_err(|error| problem(error.to_string()))?;
    let measured = |side, lengths: &[Length]| {
        Sample::new(lengths).map(|sample| Measured::new(sample, side, against))
    };
    let lot = Lot {
        confidence: against.confidence,
        widths: measured(Side::Width, &readings.widths),
        thicknesses: measured(Side::Thickness, &readings.thicknesses),
        readings,
    };
    let (size, is_there) = match against.of {
        Side::Width => ("width", lot.widths.is_some()),
        Side::Thickness => ("thickness", lot.thicknesses.is_some()),
    };
    if against.limits.is_some() && !is_there {
        let mut findings = problem(format!("there is no {size} to hold against the limits"));
        let bad = lot.readings.bad.iter().map(|cell| cell.message(unit));
        findings.problems.extend(bad.map(Told::plain));
        return Err(findings);
    }
    Ok(lot)
}

impl Measured {
    fn new(sample: Sample, side: Side, against: Against) -> Self {
        let confidence = against.confidence;
        let limits = against.limits.filter(|_| side == against.of);
        let needed_for_mean =
            (against.mean_within).map(|within| sample.needed_for_mean(within, confidence));
        let needed_for_deviation =
            (against.deviation_within).map(|share| sample.needed_for_deviation(share, confidence));
        Self {
            spread: Spread::of(&sample, confidence),
            normality: sample.normality(),
            outliers: sample.outliers(),
            histogram: sample.histogram(),
            held: limits.map(|limits| Held {
                limits,
                outside: sample.outside(&limits),
                capability: sample.capability(&limits, confidence),
            }),
            needed_for_mean,
            needed_for_deviation,
            sample,
        }
    }
}

impl Spread {
    fn of(sample: &Sample, confidence: Confidence) -> Result<Self, Untold> {
        Ok(Self {
            deviation: sample.deviation()?,
            mean_bounds: sample.mean_interval(confidence)?,
            deviation_bounds: sample.deviation_interval(confidence)?,
        })
    }
}

impl Answer for Lot {
    fn text(&self, unit: LengthUnit) -> String {
        text::of(self, unit)
    }

    fn json(&self) -> String {
        document::write(&MeasuredDocument::from(self))
    }

    fn ending(&self) -> Ending {
        if self.readings.bad.is_empty() {
            Ending::Fine
        } else {
            Ending::Problems
        }
    }
}
