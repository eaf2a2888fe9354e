//! What a plan costs, kind by kind, until all is paid.

#[cfg(test)]
mod tests;

use super::Sheet;
use super::axis::{Axis, GAP, LINE, text_width};
use super::bars::{BarChart, over};
use super::path::Path;
use crate::figure;
use crate::order_job::PlanTotals;

/// A cost is drawn at least so wide, px, so that it can be seen at all.
const LEAST_WIDTH: f64 = 1.0;

/// Draws the costs of a plan for a sheet: a bar for each kind, beginning where the one above it ends,
/// and one for all. What chips bring goes back to the left.
///
/// ```
/// use solver::{LengthUnit, PlanTotals, Sheet, Volume, draw_costs};
/// let totals = PlanTotals {
///     total: 500_00.0, gross: 0.0, costs: [400_00.0, 0.0, 0.0, 150_00.0, 0.0, 0.0, -50_00.0],
///     timber: Volume::cubic_millimetres(0.0), sandwiches: 0, hours: 0.0, changeovers: 0, packs: 0, sawn: 0,
/// };
/// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let chart = draw_costs(&totals, &sheet);
/// assert_eq!(chart.description, "Slats bought 400.00, Machine time 150.00, Chips sold −50.00; 500.00 in all.");
/// ```
#[must_use]
pub fn draw_costs(totals: &PlanTotals, sheet: &Sheet) -> BarChart {
    let sheet = sheet.usable();
    let costs: Vec<(&str, f64)> = totals
        .costs()
        .map(|cost| (cost.label, cost.amount))
        .collect();
    // From where to where each bar goes.
    let mut paid = 0.0;
    let mut spans: Vec<(String, [f64; 2])> = costs
        .iter()
        .map(|&(label, amount)| {
            let from = paid;
            paid += amount;
            (told(label, amount), [from, paid])
        })
        .collect();
    spans.push((told("All", totals.total), [0.0, totals.total]));
    let ends = || spans.iter().flat_map(|(_, span)| *span);
    let across = Axis {
        from: ends().fold(0.0, f64::min),
        to: ends().fold(0.0, f64::max).max(1.0),
        start: GAP,
        end: sheet.width - GAP,
    };
    let mut labels = Vec::new();
    let (mut axes, mut bars, mut light) = (Path::new(), Path::new(), Path::new());
    let mut y = GAP;
    let last = spans.len() - 1;
    for (place, (text, [from, to])) in spans.iter().enumerate() {
        let (one, other) = (across.at(*from), across.at(*to));
        let left = one.min(other);
        let right = one.max(other).max(left + LEAST_WIDTH);
        // Beside the bar where there is room, so that no line goes through the words; else over it.
        let half = text_width(text) / 2.0 + GAP;
        let beside = [left - half, right + half]
            .into_iter()
            .find(|x| (half..=sheet.width - half).contains(x));
        let top = if beside.is_some() { y } else { y + LINE };
        let bottom = top + LINE;
        let x = beside.unwrap_or(f64::midpoint(left, right));
        let line = if beside.is_some() { top } else { y };
        labels.push(over((x, line + LINE / 2.0), text, sheet.width));
        if place > 0 && beside.is_some() {
            // From where the one above ends; all ends where the last one does.
            let at = if place < last { one } else { other };
            axes = axes.run(&[(at, y - GAP), (at, y)]);
        }
        let corners = [(left, top), (right, top), (right, bottom), (left, bottom)];
        if to < from {
            light = light.polygon(&corners);
        } else {
            bars = bars.polygon(&corners);
        }
        y = bottom + GAP;
    }
    BarChart {
        width: sheet.width,
        height: y,
        axes: axes.done(),
        bars: bars.done(),
        light: light.done(),
        labels,
        description: described(&costs, totals.total),
    }
}

fn told(label: &str, amount: f64) -> String {
    format!("{label} {}", figure::money_rounded(amount))
}

/// The chart in words.
fn described(costs: &[(&str, f64)], total: f64) -> String {
    let parts: Vec<String> = costs
        .iter()
        .map(|&(label, amount)| told(label, amount))
        .collect();
    let all = figure::money_rounded(total);
    match parts.as_slice() {
        [] => "The plan costs nothing.".to_owned(),
        parts => format!("{}; {all} in all.", parts.join(", ")),
    }
}
