//! Pencils across against slat width as stairs, with a flag for each stock.

#[cfg(test)]
mod tests;

use super::axis::{Axis, GAP, LINE, TICK, UNDER_AXIS, height_on, text_width, titles, within};
use super::flags;
use super::path::Path;
use super::{Label, Sheet};
use crate::field::Field;
use crate::figure;
use crate::quantity::Length;
use crate::staircase::Step;
use crate::unit::LengthUnit;

/// A chart that is ready to be shown, in pixels, y down.
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// Level lines at the numbers of pencils, SVG path data.
    pub grid: String,
    /// The two axes with the ticks of the width, SVG path data.
    pub axes: String,
    /// The stairs, SVG path data; empty where there is no step in the range.
    pub stairs: String,
    /// Numbers at the axes and what the axes show.
    pub labels: Vec<Label>,
    /// The stocks in the range, the narrowest first.
    pub markers: Vec<Marker>,
    /// The chart in words, with every stock in the range.
    pub description: String,
}

/// The stocks of one width on the stairs.
#[derive(Debug, Clone, PartialEq)]
pub struct Marker {
    /// Their width.
    pub width: Length,
    /// What they are called.
    pub names: Vec<String>,
    /// Pencils from a sandwich of this width.
    pub pencils: u32,
    /// Where the width stands on the stairs, px.
    pub at: (f64, f64),
    /// The pole from the axis up to the name, SVG path data.
    pub pole: String,
    /// The names, shortened where they have no room; nothing where even that finds no place.
    pub label: Option<Label>,
}

/// The shortest range that is drawn, mm.
const LEAST_RANGE: f64 = 1.0;

/// Draws the stairs of a range of widths for a sheet, with a flag at each width of `today`, the
/// stocks there are and what they are called. Stocks out of the range are left out.
///
/// The range is kept within that of [`Field::SlatWidth`], and at least a millimetre is drawn.
///
/// ```
/// use solver::{Length, LengthUnit, Sheet, Step, draw_stairs};
/// let step = |from, pencils| Step { from: Length::millimetres(from), pencils };
/// let steps = [step(70.0, 9), step(74.0, 10), step(81.24, 11)];
/// let today = [(Length::millimetres(74.0), "Seven-ply".to_owned())];
/// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let chart = draw_stairs(&steps, (Length::millimetres(70.0), Length::millimetres(85.0)), &today, &sheet);
/// assert_eq!(chart.markers[0].pencils, 10);
/// assert!(chart.description.contains("11 from 81.24\u{202f}mm"));
/// ```
#[must_use]
pub fn draw_stairs(
    steps: &[Step],
    range: (Length, Length),
    today: &[(Length, String)],
    sheet: &Sheet,
) -> Chart {
    let sheet = sheet.usable();
    let range = drawn(range);
    let most = steps.iter().map(|step| step.pencils).max().unwrap_or(0);
    let most = most.max(1);
    // Room for the counts beside the upright axis, and for half a width under its foot.
    let half = |length| text_width(&figure::length(length, sheet.unit)) / 2.0;
    let counts = text_width(&figure::count(u64::from(most))) + GAP;
    let left = GAP + counts.max(half(range.0)).max(half(range.1));
    let right = sheet.width - GAP - half(range.1);
    let across = Axis {
        from: range.0,
        to: range.1,
        start: left,
        end: right,
    };

    // Over the stairs stands what they count, and under that the flags, as many rows as needed.
    let mut markers = markers(steps, range, today);
    let poles: Vec<(f64, String)> = markers
        .iter()
        .map(|marker| {
            let x = across.at(marker.width.in_millimetres());
            (x, marker.names.join(", "))
        })
        .collect();
    let (top, flags) = flags::raise(&poles, sheet.width);
    let bottom = top + height_on(sheet.width);
    let up = Axis {
        from: 0.0,
        to: f64::from(most),
        start: bottom,
        end: top,
    };
    for ((marker, (x, _)), (tip, label)) in markers.iter_mut().zip(poles).zip(flags) {
        marker.at = (x, up.at(f64::from(marker.pencils)));
        marker.pole = Path::new().run(&[(x, bottom), (x, tip)]).done();
        marker.label = label;
    }

    let (mut axes, mut grid) = (
        Path::new().run(&[(left, top), (left, bottom), (right, bottom)]),
        Path::new(),
    );
    let width = format!("{}, {}", Field::SlatWidth.spec().label, sheet.unit.label());
    let mut labels = titles((left, right), bottom, "Pencils", width);
    for (value, text) in across.lengths(sheet.unit) {
        let x = across.at(value);
        axes = axes.run(&[(x, bottom), (x, bottom + TICK)]);
        // A line lower than the 0 beside the corner.
        let y = bottom + LINE + 2.0;
        labels.push(Label { x, y, text });
    }
    for (value, text) in up.counts() {
        let y = up.at(value);
        if value > 0.0 {
            grid = grid.run(&[(left, y), (right, y)]);
        }
        let x = left - GAP - text_width(&text) / 2.0;
        labels.push(Label { x, y, text });
    }
    Chart {
        width: sheet.width,
        height: bottom + UNDER_AXIS,
        grid: grid.done(),
        axes: axes.done(),
        stairs: tread(steps, &across, &up),
        labels,
        description: describe(steps, range, &markers, sheet.unit),
        markers,
    }
}

/// The stairs as a line: along each step and up or down to the next.
fn tread(steps: &[Step], across: &Axis, up: &Axis) -> String {
    let ends = steps.iter().skip(1).map(|step| step.from.in_millimetres());
    let points: Vec<(f64, f64)> = steps
        .iter()
        .zip(ends.chain([across.to]))
        .flat_map(|(step, end)| {
            let y = up.at(f64::from(step.pencils));
            [step.from.in_millimetres(), end].map(|width| (across.at(width), y))
        })
        .collect();
    Path::new().run(&points).done()
}

/// The stocks within the range, those of one width together, without their places.
fn markers(steps: &[Step], range: (f64, f64), today: &[(Length, String)]) -> Vec<Marker> {
    let mut stocks: Vec<&(Length, String)> = today
        .iter()
        .filter(|(width, _)| (range.0..=range.1).contains(&width.in_millimetres()))
        .collect();
    stocks.sort_by(|one, other| one.0.in_millimetres().total_cmp(&other.0.in_millimetres()));
    let mut markers: Vec<Marker> = Vec::new();
    for (width, name) in stocks {
        match markers.last_mut() {
            Some(last) if width.fits_in(last.width) => last.names.push(name.clone()),
            _ => markers.push(Marker {
                width: *width,
                names: vec![name.clone()],
                pencils: pencils_on(steps, *width),
                at: (0.0, 0.0),
                pole: String::new(),
                label: None,
            }),
        }
    }
    markers
}

/// Pencils from a sandwich of a width; none before the first step.
fn pencils_on(steps: &[Step], width: Length) -> u32 {
    let reached = steps.iter().rev().find(|step| step.from.fits_in(width));
    reached.map_or(0, |step| step.pencils)
}

/// The range that is drawn, mm.
fn drawn(range: (Length, Length)) -> (f64, f64) {
    let spec = Field::SlatWidth.spec();
    let (from, to) = (range.0.in_millimetres(), range.1.in_millimetres());
    let from = within(from, spec.least, spec.most - LEAST_RANGE);
    (from, within(to, from + LEAST_RANGE, spec.most))
}

/// The chart in words.
fn describe(steps: &[Step], range: (f64, f64), markers: &[Marker], unit: LengthUnit) -> String {
    let length = |width: f64| figure::length_with_unit(width, unit);
    let counts: Vec<String> = steps
        .iter()
        .map(|step| {
            let pencils = figure::count(u64::from(step.pencils));
            format!("{pencils} from {}", length(step.from.in_millimetres()))
        })
        .collect();
    let stocks: String = markers
        .iter()
        .map(|marker| {
            let pencils = figure::count(u64::from(marker.pencils));
            let width = length(marker.width.in_millimetres());
            format!(" {}, {width} wide: {pencils}.", marker.names.join(", "))
        })
        .collect();
    format!(
        "Pencils from a sandwich against slat width, {} to {}: {}.{stocks}",
        length(range.0),
        length(range.1),
        if counts.is_empty() {
            "none".to_owned()
        } else {
            counts.join(", ")
        }
    )
}
