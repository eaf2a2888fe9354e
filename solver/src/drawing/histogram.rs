//! Measurements in classes as bars, with the agreed limits and the normal curve.

#[cfg(test)]
mod tests;

use super::axis::{Axis, GAP, LINE, TICK, UNDER_AXIS, height_on, text_width, titles, within};
use super::flags;
use super::path::Path;
use super::{Label, Sheet};
use crate::figure;
use crate::measured::{Histogram, Limits, Sample};
use crate::quantity::Length;
use crate::unit::LengthUnit;

/// A histogram that is ready to be shown, in pixels, y down.
#[derive(Debug, Clone, PartialEq)]
pub struct HistogramChart {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// Level lines at the numbers of measurements, SVG path data.
    pub grid: String,
    /// The two axes with the ticks of the length, SVG path data.
    pub axes: String,
    /// A bar for each class that holds something, SVG path data, to be filled.
    pub bars: String,
    /// What a normal lot would give, SVG path data; empty where that cannot be told.
    pub curve: String,
    /// The nominal size and the agreed limits, from the left; those too far off are left out.
    pub limits: Vec<LimitLine>,
    /// Numbers at the axes and what the axes show.
    pub labels: Vec<Label>,
    /// The chart in words.
    pub description: String,
}

/// A size that was agreed, as an upright line.
#[derive(Debug, Clone, PartialEq)]
pub struct LimitLine {
    /// Which one it is.
    pub side: LimitSide,
    /// The line, SVG path data.
    pub line: String,
    /// What it is called, with its size; nothing where that finds no place.
    pub label: Option<Label>,
}

/// Which of the agreed sizes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LimitSide {
    /// The least.
    Lower,
    /// The one that was ordered.
    Nominal,
    /// The greatest.
    Upper,
}

impl LimitSide {
    /// The word for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Lower => "Lower limit",
            Self::Nominal => "Nominal",
            Self::Upper => "Upper limit",
        }
    }
}

/// The shortest range that is drawn, mm.
const LEAST_RANGE: f64 = 0.02;
/// Limits farther from the bars than so many times their range are left out, or the bars would
/// not be seen.
const FARTHEST: f64 = 10.0;
/// Distance between points of the curve, px.
const CURVE_STEP: f64 = 2.0;

/// Draws the classes of a sample for a sheet, with the limits, if there are some. `size` says what
/// was measured, like `Width`.
///
/// The curve shows what a normal lot with the mean and the standard deviation of the sample would
/// give in classes of this width.
///
/// ```
/// use solver::measured::Sample;
/// use solver::{Length, LengthUnit, Sheet, draw_histogram};
/// let widths = [74.0, 74.1, 74.1, 74.1, 74.2].map(Length::millimetres);
/// let sample = Sample::new(&widths).unwrap();
/// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let chart = draw_histogram(&sample, None, "Width", &sheet);
/// assert_eq!(chart.bars.matches('Z').count(), 3);
/// assert!(chart.description.starts_with("Width: 5 measurements from 74.00\u{202f}mm to 74.20\u{202f}mm"));
/// ```
#[must_use]
pub fn draw_histogram(
    sample: &Sample,
    limits: Option<&Limits>,
    size: &str,
    sheet: &Sheet,
) -> HistogramChart {
    let sheet = sheet.usable();
    let classes = sample.histogram();
    let agreed = agreed(limits);
    let range = drawn(&classes, &agreed);
    let expected = sample.expected_in_class(classes.width());
    // The curve stands highest over the mean.
    let peak = expected.as_ref().map_or(0.0, |count| count(sample.mean()));
    let fullest = classes.counts().iter().copied().max().unwrap_or(0);
    let most = (fullest as f64).max(peak).max(1.0);
    let ends = [range.0, range.1].map(|end| text_width(&figure::length(end, sheet.unit)));
    let half = ends[0].max(ends[1]) / 2.0;
    let across = Axis {
        from: range.0,
        to: range.1,
        start: GAP + half.max(text_width(&figure::count(most as u64)) + GAP),
        end: sheet.width - GAP - half,
    };

    // Over the bars stands what they count, and under that the limits, as many rows as needed.
    let drawn: Vec<(LimitSide, f64)> = agreed
        .into_iter()
        .map(|(side, length)| (side, length.in_millimetres()))
        .filter(|(_, length)| (range.0..=range.1).contains(length))
        .collect();
    let poles: Vec<(f64, String)> = drawn
        .iter()
        .map(|&(side, length)| {
            let text = format!("{} {}", side.label(), figure::length(length, sheet.unit));
            (across.at(length), text)
        })
        .collect();
    let (top, flags) = flags::raise(&poles, sheet.width);
    let bottom = top + height_on(sheet.width);
    let up = Axis {
        from: 0.0,
        to: most,
        start: bottom,
        end: top,
    };
    let limit_lines = drawn
        .iter()
        .zip(&poles)
        .zip(flags)
        .map(|((&(side, _), (x, _)), (tip, label))| LimitLine {
            side,
            line: Path::new().run(&[(*x, bottom), (*x, tip)]).done(),
            label,
        })
        .collect();

    let span = (across.start, across.end);
    let measured = format!("{size}, {}", sheet.unit.label());
    let mut labels = titles(span, bottom, "Measurements", measured);
    let mut axes = Path::new().run(&[(span.0, top), (span.0, bottom), (span.1, bottom)]);
    for (length, text) in across.lengths(sheet.unit) {
        let x = across.at(length);
        axes = axes.run(&[(x, bottom), (x, bottom + TICK)]);
        // Below the 0 of the other axis. Numbers of more decimals than usual may be too long for
        // the ends.
        let y = bottom + LINE + 1.0;
        let half = text_width(&text) / 2.0;
        if x >= half && x + half <= sheet.width {
            labels.push(Label { x, y, text });
        }
    }
    let mut grid = Path::new();
    for (count, text) in up.counts() {
        let y = up.at(count);
        grid = grid.run(&[(span.0, y), (span.1, y)]);
        let x = span.0 - GAP - text_width(&text) / 2.0;
        labels.push(Label { x, y, text });
    }
    HistogramChart {
        width: sheet.width,
        height: bottom + UNDER_AXIS,
        grid: grid.done(),
        axes: axes.done(),
        bars: bars(&classes, &across, &up),
        curve: expected.map_or_else(String::new, |count| curve(count, &across, &up)),
        limits: limit_lines,
        labels,
        description: describe(sample, &classes, limits, size, sheet.unit),
    }
}

/// The sizes that were agreed, from the least to the greatest.
fn agreed(limits: Option<&Limits>) -> Vec<(LimitSide, Length)> {
    let Some(limits) = limits else {
        return Vec::new();
    };
    let mut agreed = vec![(LimitSide::Nominal, limits.nominal())];
    agreed.extend(limits.lower().map(|lower| (LimitSide::Lower, lower)));
    agreed.extend(limits.upper().map(|upper| (LimitSide::Upper, upper)));
    agreed.sort_by(|one, other| one.1.in_millimetres().total_cmp(&other.1.in_millimetres()));
    agreed
}

/// The range that is drawn, mm: the classes and what was agreed near them.
fn drawn(classes: &Histogram, agreed: &[(LimitSide, Length)]) -> (f64, f64) {
    let (from, to) = (classes.from(), classes.to());
    let reach = (to - from) * FARTHEST;
    let near = agreed
        .iter()
        .map(|(_, length)| *length)
        .filter(|&length| from - reach <= length && length <= to + reach);
    let (mut from, mut to) = (from, to);
    for length in near {
        from = from.min(length);
        to = to.max(length);
    }
    let (from, to) = (from.in_millimetres(), to.in_millimetres());
    // Far from 0 a range has to be told from a rounding.
    let least = LEAST_RANGE.max(from.abs().max(to.abs()) * 1e-9);
    let margin = ((least - (to - from)) / 2.0).max(0.0) + (to - from) * 0.02;
    (from - margin, to + margin)
}

fn bars(classes: &Histogram, across: &Axis, up: &Axis) -> String {
    let mut path = Path::new();
    let mut left = classes.from();
    for (k, &count) in (1..).zip(classes.counts()) {
        let right = classes.from() + classes.width() * f64::from(k);
        if count > 0 {
            let [x1, x2] = [left, right].map(|edge| across.at(edge.in_millimetres()));
            let y = up.at(count as f64);
            path = path.polygon(&[(x1, up.start), (x1, y), (x2, y), (x2, up.start)]);
        }
        left = right;
    }
    path.done()
}

fn curve(expected: impl Fn(Length) -> f64, across: &Axis, up: &Axis) -> String {
    let pieces = ((across.end - across.start) / CURVE_STEP).ceil() as u32;
    let points: Vec<(f64, f64)> = (0..=pieces)
        .map(|k| {
            let share = f64::from(k) / f64::from(pieces);
            let length = across.from + (across.to - across.from) * share;
            let count = expected(Length::millimetres(length));
            (across.at(length), up.at(within(count, 0.0, up.to)))
        })
        .collect();
    Path::new().run(&points).done()
}

/// The chart in words.
fn describe(
    sample: &Sample,
    classes: &Histogram,
    limits: Option<&Limits>,
    size: &str,
    unit: LengthUnit,
) -> String {
    let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
    // Classes may be finer than what is shown of a length, and begin between two steps.
    let fine = |length: Length| {
        let decimals = match unit {
            LengthUnit::Millimetre => 3,
            LengthUnit::Inch => 4,
        };
        let number = figure::plain(length.in_millimetres() / unit.millimetres(), decimals);
        format!("{number}{}{}", figure::THIN_SPACE, unit.label())
    };
    let count = |pieces: usize| figure::count(pieces as u64);
    let noun = if sample.count() == 1 {
        "measurement"
    } else {
        "measurements"
    };
    let mut text = format!(
        "{size}: {} {noun} from {} to {}, in classes of {}.",
        count(sample.count()),
        length(sample.least()),
        length(sample.greatest()),
        fine(classes.width()),
    );
    let fullest = (0..)
        .zip(classes.counts())
        .max_by_key(|(k, count)| (**count, -*k));
    if let Some((k, &most)) = fullest {
        let from = classes.from() + classes.width() * k as f64;
        text += &format!(
            " The fullest class, {} to {}, holds {}.",
            fine(from),
            fine(from + classes.width()),
            count(most)
        );
    }
    for (beyond, where_to) in [(classes.below(), "below"), (classes.above(), "above")] {
        if beyond > 0 {
            text += &format!(" Far {where_to} the classes: {}.", count(beyond));
        }
    }
    if let Some(limits) = limits {
        let outside = sample.outside(limits);
        text += &format!(" Nominal {}.", length(limits.nominal()));
        if let Some(lower) = limits.lower() {
            let below = count(outside.below);
            text += &format!(" Below the lower limit {}: {below}.", length(lower));
        }
        if let Some(upper) = limits.upper() {
            let above = count(outside.above);
            text += &format!(" Above the upper limit {}: {above}.", length(upper));
        }
    }
    text
}
