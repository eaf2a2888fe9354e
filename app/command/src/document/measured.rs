//! What `measured` prints.

use schemars::JsonSchema;
use serde::Serialize;
use solver::measured::{BadCell, Histogram, Interval, Needed, Normality, Outliers, Ratio, Untold};
use solver::{Length, LengthUnit};

use super::VERSION;
use crate::measured::{Held, Lot, Measured, Spread};

/// What `slatwright measured` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct MeasuredDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-measured"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// How often bounds made this way hold what is true of the lot, 0.5 to 0.9999.
    confidence: f64,
    /// The sign that parts the cells of a row; `null` where there is one column.
    separator: Option<char>,
    /// Whether the first row was taken for a heading.
    headed: bool,
    /// The widths; `null` where there are none.
    width: Option<MeasuredLine>,
    /// The thicknesses; `null` where there are none.
    thickness: Option<MeasuredLine>,
    /// The first cells that could not be read and were left out.
    unread: Vec<Unread>,
    /// How many more there are.
    more_unread: usize,
}

/// What the measurements of one size say.
#[derive(Debug, Serialize, JsonSchema)]
struct MeasuredLine {
    /// How many there are.
    count: usize,
    /// Their mean, mm.
    mean_mm: f64,
    /// The least, mm.
    least_mm: f64,
    /// The middle one, or the mean of the two in the middle, mm.
    median_mm: f64,
    /// The greatest, mm.
    greatest_mm: f64,
    /// How they spread; `null` where that is not seen.
    spread: Option<SpreadLine>,
    /// Why the spread is not seen; `null` where it is.
    untold: Option<UntoldWord>,
    /// Whether the lot looks normal.
    normality: NormalityLine,
    /// What lies too far out to be believed; `null` where it cannot be told.
    outliers: Option<OutliersLine>,
    /// The measurements in classes.
    histogram: HistogramLine,
    /// How they keep the agreed limits; `null` where none are agreed.
    held: Option<HeldLine>,
    /// How many more bring the mean within what was asked; `null` where nothing was, and where
    /// the spread is not seen.
    needed_for_mean: Option<NeededLine>,
    /// How many more make the bounds of the standard deviation as close as was asked; `null`
    /// where nothing was.
    needed_for_deviation: Option<NeededLine>,
}

/// How measurements spread.
#[derive(Debug, Serialize, JsonSchema)]
struct SpreadLine {
    /// Their standard deviation, mm.
    deviation_mm: f64,
    /// Bounds of the mean of the whole lot.
    mean_bounds: BoundsMm,
    /// Bounds of the standard deviation of the whole lot.
    deviation_bounds: BoundsMm,
}

/// Bounds of a length.
#[derive(Debug, Serialize, JsonSchema)]
struct BoundsMm {
    /// The lower one, mm.
    from_mm: f64,
    /// The upper one, mm.
    to_mm: f64,
}

/// Why a spread is not seen: there is one measurement, or all are the same.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum UntoldWord {
    One,
    Alike,
}

/// Whether a lot looks normal.
#[derive(Debug, Serialize, JsonSchema)]
struct NormalityLine {
    /// The verdict.
    verdict: NormalityWord,
    /// A*² of Anderson and Darling; `null` where it is not tested.
    statistic: Option<f64>,
}

/// Whether a lot looks normal: too few measurements or too coarse steps to tell; likely, doubtful
/// beyond the 5 % point, unlikely beyond the 1 % point.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum NormalityWord {
    TooFew,
    TooCoarse,
    Likely,
    Doubtful,
    Unlikely,
}

/// What lies too far out to be believed.
#[derive(Debug, Serialize, JsonSchema)]
struct OutliersLine {
    /// What is believable.
    believable: BoundsMm,
    /// Measurements below that.
    below: usize,
    /// Measurements above that.
    above: usize,
}

/// Measurements in classes of one width.
#[derive(Debug, Serialize, JsonSchema)]
struct HistogramLine {
    /// Where the first class begins, mm.
    from_mm: f64,
    /// The width of each class, mm.
    width_mm: f64,
    /// Measurements in each class.
    counts: Vec<usize>,
    /// Outliers below, which are in no class.
    below: usize,
    /// Outliers above, which are in no class.
    above: usize,
}

/// Measurements held against agreed limits.
#[derive(Debug, Serialize, JsonSchema)]
struct HeldLine {
    /// The size that was agreed, mm.
    nominal_mm: f64,
    /// The lower limit, mm; `null` where that side is free.
    lower_mm: Option<f64>,
    /// The upper limit, mm; `null` where that side is free.
    upper_mm: Option<f64>,
    /// Measurements below the lower limit.
    below: usize,
    /// Measurements above the upper limit.
    above: usize,
    /// Share of the measurements that lies outside, 0 to 1.
    counted_share: f64,
    /// Share of a normal lot that would lie outside, 0 to 1; `null` where the spread is not seen.
    expected_share: Option<f64>,
    /// Room between the limits over six standard deviations; `null` with one limit, and where the
    /// spread is not seen.
    cp: Option<RatioLine>,
    /// Room from the mean to the nearer limit over three standard deviations; `null` where the
    /// spread is not seen.
    cpk: Option<RatioLine>,
}

/// A ratio with its bounds.
#[derive(Debug, Serialize, JsonSchema)]
struct RatioLine {
    /// The ratio as measured.
    value: f64,
    /// The lower bound of that of the whole lot.
    from: f64,
    /// The upper bound of that of the whole lot.
    to: f64,
}

/// How many more measurements are needed.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum NeededLine {
    /// None: there are enough.
    Enough,
    /// So many more.
    More {
        /// How many.
        count: usize,
    },
    /// More than a million in all.
    OutOfReach,
}

/// A cell that could not be read.
#[derive(Debug, Serialize, JsonSchema)]
struct Unread {
    /// Its row, from 1.
    row: usize,
    /// Its column, from 1.
    column: usize,
    /// What stands there, shortened.
    text: String,
    /// Where it stands, what is wrong and what to try, lengths in millimetres.
    message: String,
}

impl From<&Lot> for MeasuredDocument {
    fn from(lot: &Lot) -> Self {
        let readings = &lot.readings;
        Self {
            format: "slatwright-measured",
            version: VERSION,
            confidence: lot.confidence.level(),
            separator: readings.separator,
            headed: readings.headed,
            width: lot.widths.as_ref().map(MeasuredLine::from),
            thickness: lot.thicknesses.as_ref().map(MeasuredLine::from),
            unread: readings.bad.iter().map(Unread::from).collect(),
            more_unread: readings.more_bad,
        }
    }
}

impl From<&Measured> for MeasuredLine {
    fn from(measured: &Measured) -> Self {
        let sample = &measured.sample;
        Self {
            count: sample.count(),
            mean_mm: sample.mean().in_millimetres(),
            least_mm: sample.least().in_millimetres(),
            median_mm: sample.median().in_millimetres(),
            greatest_mm: sample.greatest().in_millimetres(),
            spread: measured.spread.as_ref().ok().map(SpreadLine::from),
            untold: (measured.spread.as_ref().err()).map(|untold| match untold {
                Untold::One => UntoldWord::One,
                Untold::Alike => UntoldWord::Alike,
            }),
            normality: measured.normality.into(),
            outliers: match measured.outliers {
                Outliers::TooFew | Outliers::Alike => None,
                Outliers::Told {
                    fence,
                    below,
                    above,
                } => Some(OutliersLine {
                    believable: fence.into(),
                    below,
                    above,
                }),
            },
            histogram: HistogramLine::from(&measured.histogram),
            held: measured.held.as_ref().map(HeldLine::from),
            needed_for_mean: (measured.needed_for_mean)
                .and_then(Result::ok)
                .map(NeededLine::from),
            needed_for_deviation: measured.needed_for_deviation.map(NeededLine::from),
        }
    }
}

impl From<&Spread> for SpreadLine {
    fn from(spread: &Spread) -> Self {
        Self {
            deviation_mm: spread.deviation.in_millimetres(),
            mean_bounds: spread.mean_bounds.into(),
            deviation_bounds: spread.deviation_bounds.into(),
        }
    }
}

impl From<Interval<Length>> for BoundsMm {
    fn from(bounds: Interval<Length>) -> Self {
        Self {
            from_mm: bounds.from.in_millimetres(),
            to_mm: bounds.to.in_millimetres(),
        }
    }
}

impl From<Normality> for NormalityLine {
    fn from(normality: Normality) -> Self {
        let (verdict, statistic) = match normality {
            Normality::TooFew => (NormalityWord::TooFew, None),
            Normality::TooCoarse => (NormalityWord::TooCoarse, None),
            Normality::Likely { statistic } => (NormalityWord::Likely, Some(statistic)),
            Normality::Doubtful { statistic } => (NormalityWord::Doubtful, Some(statistic)),
            Normality::Unlikely { statistic } => (NormalityWord::Unlikely, Some(statistic)),
        };
        Self { verdict, statistic }
    }
}

impl From<&Histogram> for HistogramLine {
    fn from(histogram: &Histogram) -> Self {
        Self {
            from_mm: histogram.from().in_millimetres(),
            width_mm: histogram.width().in_millimetres(),
            counts: histogram.counts().to_vec(),
            below: histogram.below(),
            above: histogram.above(),
        }
    }
}

impl From<&Held> for HeldLine {
    fn from(held: &Held) -> Self {
        let (limits, outside) = (&held.limits, &held.outside);
        let capability = held.capability.as_ref().ok();
        Self {
            nominal_mm: limits.nominal().in_millimetres(),
            lower_mm: limits.lower().map(Length::in_millimetres),
            upper_mm: limits.upper().map(Length::in_millimetres),
            below: outside.below,
            above: outside.above,
            counted_share: outside.counted,
            expected_share: outside.expected.ok(),
            cp: capability
                .and_then(|capability| capability.cp)
                .map(RatioLine::from),
            cpk: capability.map(|capability| capability.cpk.into()),
        }
    }
}

impl From<Ratio> for RatioLine {
    fn from(ratio: Ratio) -> Self {
        Self {
            value: ratio.value,
            from: ratio.interval.from,
            to: ratio.interval.to,
        }
    }
}

impl From<Needed> for NeededLine {
    fn from(needed: Needed) -> Self {
        match needed {
            Needed::Enough => Self::Enough,
            Needed::More(count) => Self::More { count },
            Needed::OutOfReach => Self::OutOfReach,
        }
    }
}

impl From<&BadCell> for Unread {
    fn from(cell: &BadCell) -> Self {
        Self {
            row: cell.row,
            column: cell.column,
            text: cell.text.clone(),
            message: cell.message(LengthUnit::Millimetre),
        }
    }
}
