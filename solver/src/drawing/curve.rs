//! Expected good pencils against how many are laid side by side, or against their pitch.

#[cfg(test)]
mod tests;

use super::axis::{Axis, GAP, LINE, TICK, UNDER_AXIS, height_on, text_width, titles, within};
use super::flags;
use super::path::Path;
use super::{Label, Sheet};
use crate::field::Field;
use crate::figure;
use crate::tolerance::{Choice, Choices, Varied};
use crate::unit::LengthUnit;

/// A curve that is ready to be shown, in pixels, y down.
#[derive(Debug, Clone, PartialEq)]
pub struct CurveChart {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// Level lines at the numbers of good pencils, SVG path data.
    pub grid: String,
    /// The two axes with the ticks of the level one, SVG path data.
    pub axes: String,
    /// The line that joins the points, SVG path data; empty where there are fewer than two.
    pub line: String,
    /// Two standard errors up and down from each point, SVG path data.
    pub errors: String,
    /// A small diamond for each choice, SVG path data, to be filled.
    pub points: String,
    /// The best choice and the one that is laid, from the left.
    pub picks: Vec<PickMark>,
    /// Numbers at the axes and what the axes show.
    pub labels: Vec<Label>,
    /// The chart in words.
    pub description: String,
}

/// A choice that is pointed out.
#[derive(Debug, Clone, PartialEq)]
pub struct PickMark {
    /// Which one it is.
    pub pick: Pick,
    /// Where it stands on the curve, px.
    pub at: (f64, f64),
    /// The pole from the axis up to its name, SVG path data.
    pub pole: String,
    /// What it is called, with its count or pitch; nothing where that finds no place.
    pub label: Option<Label>,
}

/// Why a choice is pointed out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Pick {
    /// It has the most good pencils.
    Best,
    /// It is the layout that is looked at.
    Laid,
}

impl Pick {
    /// The word for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Best => "Best",
            Self::Laid => "Laid",
        }
    }
}

/// The shortest range of pitches that is drawn, mm.
const LEAST_PITCHES: f64 = 0.02;
/// The shortest range of good pencils that is drawn.
const LEAST_GOOD: f64 = 0.02;
/// Numbers beyond this are drawn as this.
const MOST: f64 = 1e6;
/// Space beyond the outermost points, as a share of the range.
const BEYOND: f64 = 0.04;
/// Half the size of a point, and of the ends of its error, px.
const POINT: f64 = 3.0;

/// Draws choices for a sheet: the expected good pencils of a sandwich against what was `varied`,
/// each with two standard errors up and down.
///
/// The upright axis begins where the curve needs it, for what tells one pitch from another is
/// a small part of all.
///
/// ```
/// use solver::tolerance::{Varied, choices};
/// use solver::{AccuracyDraft, BarrelDraft, LengthUnit, RulesDraft, Seam, Setup, Shape, Sheet};
/// use solver::{Pick, SlatDraft, draw_curve};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let rules = RulesDraft::new().check().unwrap();
/// let turn = barrel.turn(Seam::ThroughFaces);
/// let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
/// let accuracy = AccuracyDraft::new("Line 1").check().unwrap();
/// let counts = choices(&setup, &accuracy, Varied::Count, 1, 0..2, &mut |_| true);
/// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let chart = draw_curve(&counts, Varied::Count, &sheet);
/// assert_eq!(chart.points.matches('Z').count(), 10);
/// assert_eq!(chart.picks[0].pick, Pick::Best);
/// assert!(chart.description.contains("Best: 10"));
/// ```
#[must_use]
pub fn draw_curve(choices: &Choices, varied: Varied, sheet: &Sheet) -> CurveChart {
    let sheet = sheet.usable();
    let list = &choices.list;
    let (along, good) = ranges(list, varied);
    let height = height_on(sheet.width);
    // Where the chart begins is known when its names stand, and those stand by its left end.
    let up = Axis {
        from: good.0,
        to: good.1,
        start: height,
        end: 0.0,
    };
    let levels = up.levels();
    let widest = levels.iter().map(|(_, text)| text_width(text));
    let half_number = text_width(&figure::length(along.1, sheet.unit)) / 2.0;
    let across = Axis {
        from: along.0,
        to: along.1,
        start: (GAP + half_number).max(GAP + widest.fold(0.0, f64::max) + GAP),
        end: sheet.width - GAP - half_number,
    };
    let x = |choice: &Choice| across.at(place(choice, varied));
    let picked = picked(choices);
    let poles: Vec<(f64, String)> = picked
        .iter()
        .map(|(pick, choice)| {
            let name = format!("{}: {}", pick.label(), named(choice, varied, sheet.unit));
            (x(choice), name)
        })
        .collect();
    let (top, flags) = flags::raise(&poles, sheet.width);
    let bottom = top + height;
    let y = |good: f64| top + up.at(good);

    let points: Vec<(f64, f64)> = list
        .iter()
        .map(|choice| (x(choice), y(choice.good.mean)))
        .collect();
    let mut errors = Path::new();
    let mut diamonds = Path::new();
    for (choice, &(x, middle)) in list.iter().zip(&points) {
        let [low, high] = [-2.0, 2.0].map(|times| y(choice.good.mean + times * choice.good.error));
        let (left, right) = (x - POINT, x + POINT);
        errors = errors
            .run(&[(x, low), (x, high)])
            .run(&[(left, low), (right, low)])
            .run(&[(left, high), (right, high)]);
        diamonds = diamonds.polygon(&[
            (left, middle),
            (x, middle + POINT),
            (right, middle),
            (x, middle - POINT),
        ]);
    }
    let picks = picked
        .iter()
        .zip(flags)
        .map(|((pick, choice), (tip, label))| PickMark {
            pick: *pick,
            at: (x(choice), y(choice.good.mean)),
            pole: Path::new()
                .run(&[(x(choice), bottom), (x(choice), tip)])
                .done(),
            label,
        });

    let span = (across.start, across.end);
    let below = match varied {
        Varied::Count => "Pencils side by side".to_owned(),
        Varied::Pitch => format!("{}, {}", Field::Pitch.spec().label, sheet.unit.label()),
    };
    let mut labels = titles(span, bottom, "Good pencils of a sandwich", below);
    let mut axes = Path::new().run(&[(span.0, top), (span.0, bottom), (span.1, bottom)]);
    let ticks = match varied {
        Varied::Count => across.counts_across(),
        Varied::Pitch => across.lengths(sheet.unit),
    };
    for (value, text) in ticks {
        let x = across.at(value);
        axes = axes.run(&[(x, bottom), (x, bottom + TICK)]);
        // Below the lowest number of the other axis.
        let y = bottom + LINE + 1.0;
        let half = text_width(&text) / 2.0;
        if x >= half && x + half <= sheet.width {
            labels.push(Label { x, y, text });
        }
    }
    let mut grid = Path::new();
    for (good, text) in levels {
        let y = y(good);
        grid = grid.run(&[(span.0, y), (span.1, y)]);
        let x = span.0 - GAP - text_width(&text) / 2.0;
        labels.push(Label { x, y, text });
    }
    CurveChart {
        width: sheet.width,
        height: bottom + UNDER_AXIS,
        grid: grid.done(),
        axes: axes.done(),
        line: match points[..] {
            [] | [_] => String::new(),
            _ => Path::new().run(&points).done(),
        },
        errors: errors.done(),
        points: diamonds.done(),
        picks: picks.collect(),
        labels,
        description: describe(choices, varied, sheet.unit),
    }
}

/// Where a choice stands along the level axis: its count, or its pitch in mm.
fn place(choice: &Choice, varied: Varied) -> f64 {
    let place = match varied {
        Varied::Count => f64::from(choice.across),
        Varied::Pitch => choice.pitch.in_millimetres(),
    };
    within(place, 0.0, MOST)
}

/// The count or the pitch of a choice.
fn named(choice: &Choice, varied: Varied, unit: LengthUnit) -> String {
    match varied {
        Varied::Count => figure::count(u64::from(choice.across)),
        Varied::Pitch => figure::length(choice.pitch.in_millimetres(), unit),
    }
}

/// What the axes show: counts or pitches, and good pencils.
fn ranges(list: &[Choice], varied: Varied) -> ((f64, f64), (f64, f64)) {
    let around = |values: &mut dyn Iterator<Item = f64>, least: f64| {
        let (mut from, mut to) = (f64::MAX, 0.0);
        for value in values {
            let value = within(value, 0.0, MOST);
            (from, to) = (value.min(from), value.max(to));
        }
        let from = from.min(to);
        let margin = ((least - (to - from)) / 2.0).max((to - from) * BEYOND);
        (from - margin, to + margin)
    };
    let least = match varied {
        Varied::Count => 1.0,
        Varied::Pitch => LEAST_PITCHES,
    };
    let ends = list
        .iter()
        .flat_map(|choice| [-2.0, 2.0].map(|times| choice.good.mean + times * choice.good.error));
    (
        around(&mut list.iter().map(|choice| place(choice, varied)), least),
        around(&mut { ends }, LEAST_GOOD),
    )
}

/// The choices that are pointed out, from the left.
fn picked(choices: &Choices) -> Vec<(Pick, &Choice)> {
    let picks = [(Pick::Best, choices.best), (Pick::Laid, choices.laid)];
    let mut picked: Vec<(Pick, &Choice)> = picks
        .into_iter()
        .filter_map(|(pick, place)| Some((pick, choices.list.get(place?)?)))
        .collect();
    if choices.laid < choices.best {
        picked.reverse();
    }
    picked
}

/// The chart in words.
fn describe(choices: &Choices, varied: Varied, unit: LengthUnit) -> String {
    let list = &choices.list;
    let name = |choice: &Choice| match varied {
        Varied::Count => named(choice, varied, unit),
        Varied::Pitch => figure::length_with_unit(choice.pitch.in_millimetres(), unit),
    };
    let (Some(first), Some(last)) = (list.first(), list.last()) else {
        return "Not one pencil fits on these slats.".to_owned();
    };
    let against = match varied {
        Varied::Count => "how many are laid side by side",
        Varied::Pitch => "their pitch",
    };
    let mut text = format!(
        "Expected good pencils of a sandwich against {against}, {} to {}.",
        name(first),
        name(last)
    );
    for (pick, choice) in picked(choices) {
        let (label, good) = (pick.label(), figure::plain(choice.good.mean, 2));
        text += &format!(" {label}: {}, with {good} good.", name(choice));
    }
    let others = (0..)
        .zip(list)
        .filter(|(k, choice)| Some(*k) != choices.best && choice.ties());
    let ties: Vec<String> = others.map(|(_, choice)| name(choice)).collect();
    if !ties.is_empty() {
        text += &format!(" The dice do not tell the best from {}.", ties.join(", "));
    }
    text
}
