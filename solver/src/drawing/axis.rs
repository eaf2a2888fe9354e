//! The axes of a chart: where a value lies, and which values have a tick.

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
        let ends = [self.from, self.to].map(|end| end / millimetres);
        self.ticks(millimetres, -5, &|decimals| {
            let widest = ends.map(|end| text_width(&figure::plain(end, decimals)));
            widest[0].max(widest[1]) + 2.0 * GAP
        })
    }

    /// The numbers that have a level line on an upright axis, as close as they find room.
    pub(super) fn levels(&self) -> Vec<(f64, String)> {
        self.ticks(1.0, -5, &|_| LINE)
    }

    /// The counts that have a level line on an upright axis, as close as they find room.
    pub(super) fn counts(&self) -> Vec<(f64, String)> {
        self.ticks(1.0, 0, &|_| LINE)
    }

    /// The counts that have a tick on a level axis, as close as their numbers find room.
    pub(super) fn counts_across(&self) -> Vec<(f64, String)> {
        let room = text_width(&figure::plain(self.to, 0));
        self.ticks(1.0, 0, &|_| room)
    }

    /// Ticks at the multiples of a round step, as close as a number of so many decimals finds
    /// `room`, px. The numbers are those of a unit of a `size`; the step is at least ten to the
    /// `least_power`.
    fn ticks(
        &self,
        size: f64,
        least_power: i32,
        room: &dyn Fn(usize) -> f64,
    ) -> Vec<(f64, String)> {
        let pixels = ((self.end - self.start) / (self.to - self.from)).abs() * size;
        let fits = |&(step, decimals): &(f64, usize)| step * pixels >= room(decimals);
        let Some((step, decimals)) = steps(least_power).find(fits) else {
            return Vec::new();
        };
        let least = (self.from / size / step).ceil() as i64;
        let most = (self.to / size / step).floor() as i64;
        (least..=most)
            .map(|k| {
                let value = k as f64 * step;
                (value * size, figure::plain(value, decimals))
            })
            .collect()
    }
}

/// Round steps, 1, 2 and 5 times a power of ten from the one given to the twelfth, with the
/// decimals that their multiples need.
pub(super) fn steps(least_power: i32) -> impl Iterator<Item = (f64, usize)> {
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

/// What the axes show: one text over the upright axis, one under the level one, which runs from
/// `left` to `right` at `bottom`, px.
pub(super) fn titles(
    (left, right): (f64, f64),
    bottom: f64,
    above: &str,
    below: String,
) -> Vec<Label> {
    let above = Label {
        x: GAP + text_width(above) / 2.0,
        y: GAP + LINE / 2.0,
        text: above.to_owned(),
    };
    let below = Label {
        x: f64::midpoint(left, right),
        y: bottom + 2.0 * LINE + GAP,
        text: below,
    };
    vec![above, below]
}

/// Height of a chart of two axes on a sheet of a width, px, without what stands over and under it.
pub(super) fn height_on(width: f64) -> f64 {
    within(width * 0.4, 160.0, 320.0)
}

/// Height under a level axis with its numbers and its title, px.
pub(super) const UNDER_AXIS: f64 = 2.5 * LINE + 2.0 * GAP;

/// The box of a label, px.
pub(super) fn area(label: &Label) -> Area {
    let width = text_width(&label.text);
    Area {
        x: label.x - width / 2.0,
        y: label.y - LINE / 2.0,
        width,
        height: LINE,
    }
}

/// A label moved sideways onto a sheet of a width, a pixel from its edge.
pub(super) fn on_sheet(label: Label, width: f64) -> Label {
    let half = text_width(&label.text) / 2.0 + 1.0;
    Label {
        x: within(label.x, half, width - half),
        ..label
    }
}

/// Labels without those that would crowd: each in its order is kept where it covers neither one
/// kept before nor what is `taken` already.
pub(super) fn thinned(labels: Vec<Label>, order: &[usize], taken: &[Area]) -> Vec<Label> {
    let mut taken = taken.to_vec();
    let mut kept = vec![false; labels.len()];
    for &k in order {
        let (Some(label), Some(kept)) = (labels.get(k), kept.get_mut(k)) else {
            continue;
        };
        let area = area(label);
        if !*kept && !taken.iter().any(|other| other.overlaps(&area)) {
            *kept = true;
            taken.push(area);
        }
    }
    let labels = labels.into_iter().zip(kept);
    labels
        .filter_map(|(label, kept)| kept.then_some(label))
        .collect()
}

/// An order in which labels of one row at equal distances are dropped evenly: some first, then
/// those in round steps of their number that find room.
pub(super) fn evenly(labels: &[Label], first: &[usize]) -> Vec<usize> {
    let distance = match labels {
        [one, other, ..] => other.x - one.x,
        _ => f64::INFINITY,
    };
    let widths = labels.iter().map(|label| text_width(&label.text));
    let widest = widths.fold(0.0, f64::max);
    let step = steps(0).find(|(step, _)| step * distance >= widest);
    let step = step.map_or(usize::MAX, |(step, _)| step as usize);
    let in_step = (0..labels.len()).filter(|k| (k + 1).is_multiple_of(step));
    first.iter().copied().chain(in_step).collect()
}
