//! Charts of bars: what they consist of, and texts that are kept short enough for a sheet.

use super::Label;
use super::axis::{GAP, on_sheet, text_width};

/// Bars that are ready to be shown, in pixels, y down.
#[derive(Debug, Clone, PartialEq)]
pub struct BarChart {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// Lines that the bars stand on or hang together by, SVG path data.
    pub axes: String,
    /// The bars, SVG path data, to be filled.
    pub bars: String,
    /// Bars of what counts less, SVG path data, to be filled more lightly.
    pub light: String,
    /// Short texts.
    pub labels: Vec<Label>,
    /// The chart in words.
    pub description: String,
}

/// A text over a place, moved so that it stands on the sheet, and cut where it is wider than that.
pub(super) fn over((x, y): (f64, f64), text: &str, width: f64) -> Label {
    let text = cut(text, width - 2.0 * GAP);
    on_sheet(Label { x, y, text }, width)
}

/// A text that is no wider than there is room.
fn cut(text: &str, room: f64) -> String {
    if text_width(text) <= room {
        return text.to_owned();
    }
    let mut cut = String::new();
    for letter in text.chars() {
        let longer = format!("{cut}{letter}…");
        if text_width(&longer) > room {
            break;
        }
        cut.push(letter);
    }
    cut + "…"
}
