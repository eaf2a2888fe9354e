//! The axes of a chart: where a value lies, and which values have a tick.

#[cfg(test)]
use super::{Area, Label};
use crate::figure;
use crate::unit::LengthUnit;

/// Space round a chart and beside texts, px.
pub(super) const GAP: f64 = 6.0;
/// Height of a line of text, px.
pub(super) const LINE: f64 = 18.0;
/// Length of a tick, px.
pub(super) const TICK: f64 = 4.0;
/// Size of the letters that room is kept for, px; smaller ones are as good.
const EM: f64 = 13.0;

/// One axis: values from `from` to `to`, drawn from `start` to `end`, px.
pub(super) struct Axis {
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) start: f64,
    pub(super) end: f64,
}

impl Axis {
    /// Where a value lies, px; a value beyond the axis lies at its end.
    pub(super) fn at(&self, value: f64) -> f64 {
        let share = (value - self.from) / (self.to - self.from);
        self.start + (self.end - self.start) * within(share, 0.0, 1.0)
    }

    /// The lengths that have a tick, mm, with their numbers, as close as these find room.
    pub(super) fn lengths(&self, unit: LengthUnit) -> Vec<(f64, String)> {
        let millimetres = unit.millimetres();
        let pixels = (self.end - self.start) / (self.to - self.from) * millimetres;
        let (from, to) = (self.from / millimetres, self.to / millimetres);
        let fits = |&(step, decimals): &(f64, usize)| {
            let widest = [from, to].map(|end| text_width(&figure::plain(end, decimals)));
            step * pixels >= widest[0].max(widest[1]) + 2.0 * GAP
        };
        let Some((step, decimals)) = steps(-5).find(fits) else {
            return Vec::new();
        };
        let least = (from / step).ceil() as i64;
        let most = (to / step).floor() as i64;
        (least..=most)
            .map(|k| {
                let value = k as f64 * step;
                (value * millimetres, figure::plain(value, decimals))
            })
            .collect()
    }

    /// The counts from 0 that have a level line, as close as their numbers find room.
    pub(super) fn counts(&self, most: u64) -> Vec<(f64, String)> {
        let pixels = (self.start - self.end).abs() / (self.to - self.from);
        let Some((step, _)) = steps(0).find(|(step, _)| step * pixels >= LINE) else {
            return Vec::new();
        };
        let step = step as u64;
        (0..=most / step)
            .map(|k| ((k * step) as f64, figure::count(k * step)))
            .collect()
    }
}

/// Round steps, 1, 2 and 5 times a power of ten from the one given to the twelfth, with the
/// decimals that their multiples need.
fn steps(least_power: i32) -> impl Iterator<Item = (f64, usize)> {
    (least_power..=12).flat_map(|power| {
        let ten = (0..power.unsigned_abs()).fold(1.0, |ten, _| ten * 10.0);
        [1.0, 2.0, 5.0].map(|digit| {
            if power < 0 {
                (digit / ten, power.unsigned_abs() as usize)
            } else {
                (digit * ten, 0)
            }
        })
    })
}

/// A number kept between two bounds; one that is none becomes the lower bound.
pub(super) fn within(value: f64, least: f64, most: f64) -> f64 {
    value.max(least).min(most)
}

/// Room for a text, px: an upper bound of the widths of letters in the typeface of the page,
/// and in others as far as that can be said. Derived from its table of advance widths.
pub(super) fn text_width(text: &str) -> f64 {
    let ems = |letter: char| match letter {
        ' ' | '!' | '\'' | '(' | ')' | ',' | '-' | '.' | ':' | ';' | 'I' | 'f' | 'i' | 'j'
        | 'l' | 'r' | 't' | '|' => 0.45,
        '#' | '%' | '@' | 'M' | 'N' | 'O' | 'Q' | 'W' | 'm' | 'w' | '~' | '^' => 1.0,
        letter if letter.is_ascii() => 0.7,
        _ => 1.05,
    };
    text.chars().map(ems).sum::<f64>() * EM
}

/// The box of a label, px.
#[cfg(test)]
pub(super) fn area(label: &Label) -> Area {
    let width = text_width(&label.text);
    Area {
        x: label.x - width / 2.0,
        y: label.y - LINE / 2.0,
        width,
        height: LINE,
    }
}
