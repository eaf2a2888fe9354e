//! What stands in the stores at the end of each period.

#[cfg(test)]
mod tests;

use super::Sheet;
use super::axis::{Axis, GAP, LINE, evenly, thinned};
use super::bars::{BarChart, over};
use super::path::Path;
use crate::figure;
use crate::sequence::in_order;

/// Height of the bars of a row, px.
const ROW: f64 = 36.0;
/// Width of a bar, as a share of the distance between periods.
const BAR: f64 = 0.6;
/// What stands there at all is at least so high, px.
const LEAST_HEIGHT: f64 = 1.0;
/// Rows that are drawn; the table beside the chart has all.
const MOST_ROWS: usize = 12;

/// One kind of slat or pencil, and what stands of it at the end of each period: what is kept for later
/// periods, and what the plan has no use for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StoreRow {
    /// What it is called.
    pub name: String,
    /// Kept, and over, by period.
    pub stands: Vec<[u64; 2]>,
}

impl StoreRow {
    /// What stands in a period, all together.
    fn all(&self, period: usize) -> u64 {
        let pieces = self.stands.get(period).copied().unwrap_or_default();
        pieces[0].saturating_add(pieces[1])
    }

    fn most(&self) -> u64 {
        let periods = 0..self.stands.len();
        periods.map(|period| self.all(period)).max().unwrap_or(0)
    }
}

/// Draws stores for a sheet: a row for each kind of which anything is ever stored, at one scale, a bar
/// for each period; what the plan has no use for stands lightly on what is kept. Of more than twelve
/// rows the fullest are drawn, in their order.
///
/// ```
/// use solver::{LengthUnit, Sheet, StoreRow, draw_stores};
/// let row = StoreRow { name: "74 × 5".to_owned(), stands: vec![[1_200, 0], [0, 120]] };
/// let periods = ["March".to_owned(), "April".to_owned()];
/// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let chart = draw_stores(&[row], &periods, &sheet);
/// assert_eq!(chart.description, "74 × 5: 1\u{202f}200 at the end of March, 120 at the end of April.");
/// ```
#[must_use]
pub fn draw_stores(rows: &[StoreRow], periods: &[String], sheet: &Sheet) -> BarChart {
    let sheet = sheet.usable();
    let fullest = rows.iter().map(StoreRow::most).max().unwrap_or(0);
    let shown = fullest_rows(rows);
    let step = (sheet.width - 2.0 * GAP) / periods.len().max(1) as f64;
    let middle = |period: usize| GAP + (period as f64 + 0.5) * step;
    let half = step * BAR / 2.0;
    let (mut axes, mut bars, mut light) = (Path::new(), Path::new(), Path::new());
    let mut labels = Vec::new();
    let mut y = GAP;
    for row in shown.iter().map(|&place| &rows[place]) {
        labels.push(over(
            (sheet.width / 2.0, y + LINE / 2.0),
            &row.name,
            sheet.width,
        ));
        // Under the name there is room for the number over the fullest bar.
        let (top, bottom) = (y + 2.0 * LINE, y + 2.0 * LINE + ROW);
        let up = Axis {
            from: 0.0,
            to: fullest.max(1) as f64,
            start: bottom,
            end: top,
        };
        let mut numbers = Vec::new();
        for (period, &[kept, more]) in row.stands.iter().enumerate().take(periods.len()) {
            let x = middle(period);
            let column = |path: Path, from: u64, pieces: u64| {
                if pieces == 0 {
                    return path;
                }
                let low = up.at(from as f64);
                let high = up.at(from.saturating_add(pieces) as f64);
                let high = high.min(low - LEAST_HEIGHT);
                let (left, right) = (x - half, x + half);
                path.polygon(&[(left, low), (left, high), (right, high), (right, low)])
            };
            bars = column(bars, 0, kept);
            light = column(light, kept, more);
            let high = up.at(row.all(period) as f64).min(bottom - LEAST_HEIGHT);
            let text = figure::count(row.all(period));
            numbers.push(over((x, high - LINE / 2.0), &text, sheet.width));
        }
        let order = evenly(&numbers, &[]);
        labels.extend(thinned(numbers, &order, &[]));
        axes = axes.run(&[(GAP, bottom), (sheet.width - GAP, bottom)]);
        y = bottom + GAP;
    }
    let names: Vec<_> = (periods.iter().enumerate())
        .map(|(period, name)| over((middle(period), y + LINE / 2.0), name, sheet.width))
        .collect();
    let all: Vec<usize> = (0..names.len()).collect();
    labels.extend(thinned(names, &all, &[]));
    BarChart {
        width: sheet.width,
        height: y + LINE + GAP,
        axes: axes.done(),
        bars: bars.done(),
        light: light.done(),
        labels,
        description: described(rows, &shown, periods),
    }
}

/// The places of the rows that are drawn.
fn fullest_rows(rows: &[StoreRow]) -> Vec<usize> {
    let stored = (0..rows.len()).filter(|&place| rows[place].most() > 0);
    let mut places = in_order(stored.collect(), |one: &usize, other| {
        rows[*other].most().cmp(&rows[*one].most())
    });
    places.truncate(MOST_ROWS);
    in_order(places, |one, other| one.cmp(other))
}

/// The chart in words.
fn described(rows: &[StoreRow], shown: &[usize], periods: &[String]) -> String {
    let told = |row: &StoreRow| {
        let parts = periods.iter().enumerate();
        let parts = parts.filter(|(period, _)| row.all(*period) > 0);
        let parts: Vec<String> = parts
            .map(|(period, name)| {
                format!("{} at the end of {name}", figure::count(row.all(period)))
            })
            .collect();
        format!("{}: {}", row.name, parts.join(", "))
    };
    let lines: Vec<String> = shown.iter().map(|&place| told(&rows[place])).collect();
    match lines.as_slice() {
        [] => "Nothing is left in the store at the end of any period.".to_owned(),
        lines => format!("{}.", lines.join("; ")),
    }
}
