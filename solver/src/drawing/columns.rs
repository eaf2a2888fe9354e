//! Sandwiches by how many good pencils they gave, as columns.

#[cfg(test)]
mod tests;

use super::axis::{Axis, GAP, LINE, TICK, UNDER_AXIS, on_sheet, text_width, thinned, titles};
use super::path::Path;
use super::{Area, Label, Sheet};
use crate::figure;

/// Columns that are ready to be shown, in pixels, y down.
#[derive(Debug, Clone, PartialEq)]
pub struct ColumnChart {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// The level axis with its ticks, SVG path data.
    pub axes: String,
    /// A column for each count that was found, SVG path data, to be filled.
    pub columns: String,
    /// Shares over the columns, counts under them, and what both are.
    pub labels: Vec<Label>,
    /// The chart in words.
    pub description: String,
}

/// Least and greatest height of the columns, px.
const HEIGHTS: (f64, f64) = (120.0, 240.0);
/// Counts that are shown at least, where there are so many.
const LEAST_COLUMNS: usize = 5;
/// Width of a column, as a share of the distance between columns: on a phone, the share of one
/// stands beside its higher neighbour.
const COLUMN: f64 = 0.5;
/// What was found at all stands at least so high, px.
const LEAST_HEIGHT: f64 = 1.0;
/// Paths are written to this, px: texts keep so much further away.
const WRITTEN_TO: f64 = 0.01;

/// Draws for a sheet how many of all sandwiches gave no, one, two … good pencils.
///
/// The counts run from the least that was found to the most that there can be. Over each column
/// stands its share, per cent; where shares crowd, that of the fullest column stays, and the others
/// from the right.
///
/// ```
/// use solver::{LengthUnit, Sheet, draw_columns};
/// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let chart = draw_columns(&[0, 0, 0, 0, 0, 0, 0, 0, 5, 61, 934], &sheet);
/// assert_eq!(chart.columns.matches('Z').count(), 3);
/// assert!(chart.labels.iter().any(|label| label.text == "93.4"));
/// ```
#[must_use]
pub fn draw_columns(counts: &[u64], sheet: &Sheet) -> ColumnChart {
    let sheet = sheet.usable();
    let most = counts.len().saturating_sub(1);
    let found = counts.iter().position(|&count| count > 0);
    let least = found.unwrap_or(most);
    let least = least.min((most + 1).saturating_sub(LEAST_COLUMNS));
    let half_number = text_width(&figure::count(most as u64)) / 2.0;
    let across = Axis {
        from: least as f64 - 0.5,
        to: most as f64 + 0.5,
        start: GAP + half_number,
        end: sheet.width - GAP - half_number,
    };
    let fullest = counts.iter().copied().max().unwrap_or(0);
    // Under the title there is room for the share of the fullest column.
    let top = 2.0 * (GAP + LINE);
    let bottom = top + (sheet.width * 0.3).clamp(HEIGHTS.0, HEIGHTS.1);
    let up = Axis {
        from: 0.0,
        to: fullest.max(1) as f64,
        start: bottom,
        end: top,
    };
    let total = counts.iter().map(|&count| count as f64).sum::<f64>();
    let half = (across.end - across.start) / (across.to - across.from) * COLUMN / 2.0;

    let mut columns = Path::new();
    let mut areas = Vec::new();
    let mut shares = Vec::new();
    for (good, &count) in counts.iter().enumerate().filter(|(_, count)| **count > 0) {
        let x = across.at(good as f64);
        let y = up.at(count as f64).min(bottom - LEAST_HEIGHT);
        let (left, right) = (x - half, x + half);
        columns = columns.polygon(&[(left, bottom), (left, y), (right, y), (right, bottom)]);
        areas.push(Area {
            x: left - WRITTEN_TO,
            y,
            width: 2.0 * (half + WRITTEN_TO),
            height: bottom - y,
        });
        let text = share(count, total);
        let y = y - LINE / 2.0 - 1.0;
        shares.push(on_sheet(Label { x, y, text }, sheet.width));
    }
    let highest = (0..areas.len()).min_by(|&one, &other| areas[one].y.total_cmp(&areas[other].y));
    let order: Vec<usize> = highest.into_iter().chain((0..areas.len()).rev()).collect();
    let span = (across.start, across.end);
    let below = "Good pencils of a sandwich".to_owned();
    let mut labels = titles(span, bottom, "Sandwiches, %", below);
    labels.extend(thinned(shares, &order, &areas));
    let mut axes = Path::new().run(&[(span.0, bottom), (span.1, bottom)]);
    for (good, text) in across.counts_across() {
        let x = across.at(good);
        axes = axes.run(&[(x, bottom), (x, bottom + TICK)]);
        let y = bottom + LINE;
        labels.push(Label { x, y, text });
    }
    ColumnChart {
        width: sheet.width,
        height: bottom + UNDER_AXIS,
        axes: axes.done(),
        columns: columns.done(),
        labels,
        description: describe(counts, total),
    }
}

/// The share of a count that was found, per cent.
fn share(count: u64, total: f64) -> String {
    let percent = count as f64 / total * 100.0;
    if percent < 0.05 {
        "<0.1".to_owned()
    } else {
        figure::plain(percent, 1)
    }
}

/// The chart in words.
fn describe(counts: &[u64], total: f64) -> String {
    let found = counts.iter().enumerate().rev();
    let found: Vec<String> = found
        .filter(|(_, count)| **count > 0)
        .map(|(good, &count)| {
            let percent = format!("{}{}%", share(count, total), figure::THIN_SPACE);
            format!("{percent} gave {}", figure::count(good as u64))
        })
        .collect();
    if found.is_empty() {
        return "No sandwich has been made yet.".to_owned();
    }
    format!(
        "Good pencils of {} sandwiches: {}.",
        figure::plain(total, 0),
        found.join(", ")
    )
}
