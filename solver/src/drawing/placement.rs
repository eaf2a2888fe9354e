//! Dimensions on one side of a view: nearest first, stepping outwards until nothing overlaps.
//!
//! After ISO 129-1: dimension lines stay outside the part, text is read from the bottom of
//! the sheet, arrows turn outwards where they have no room between the extension lines.

use super::path::Path;
use super::{Area, Dimension, Edge, Sheet, Size};
use crate::quantity::norm;
use std::cmp::Ordering;

/// The side of a view on which dimensions stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Above,
    Below,
    Left,
    Right,
}

/// A dimension that looks for its place.
#[derive(Debug, Clone)]
pub(super) struct Wanted {
    pub(super) size: Size,
    pub(super) driving: bool,
    pub(super) sign: &'static str,
    pub(super) text: String,
    /// Where it can be measured, the best first.
    pub(super) spots: Vec<Spot>,
}

/// Where a size can be measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Spot {
    /// Between two places along the side, by extension lines.
    Between(End, End),
    /// At a point of the sheet, px, by a leader.
    At(f64, f64),
}

/// One end of a measured distance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct End {
    /// Where it lies along the side, px.
    pub(super) along: f64,
    /// How far inside the edge of the part its extension line begins, px.
    pub(super) inside: f64,
}

/// The dimensions on one side.
#[derive(Debug)]
pub(super) struct Band {
    side: Side,
    /// How far texts may reach along the side, px.
    limits: (f64, f64),
    /// Room for a text along and across the side, px.
    text: (f64, f64),
    /// Rows that are tried before a dimension is dropped.
    most_rows: usize,
    rows: Vec<Placed>,
}

#[derive(Debug)]
struct Placed {
    wanted: Wanted,
    spot: Spot,
    row: usize,
    /// Where the text begins and ends along the side, px.
    text: (f64, f64),
}

/// How far a text may reach past the corner of a view, px: clear of the lines on the next side.
pub(super) const CORNER: f64 = 3.0;
/// How far from the part the texts of the first row begin, px.
pub(super) const CLEAR: f64 = GAP + LIFT;
/// Space between the part and the first row, and between a text and its neighbours, px.
const GAP: f64 = 6.0;
/// How far a number stands off its line, px.
const LIFT: f64 = 3.0;
/// Length of an arrow, px.
const ARROW: f64 = 7.0;
/// An arrow shorter than this is not seen as one, px.
const LEAST_ARROW: f64 = 4.0;
/// Rows above or below a view, which grows with them.
const MOST_ROWS: usize = 4;
/// How far from its ends a leader meets the edge of a text, px.
const LANDING: f64 = 8.0;

impl End {
    /// An end whose extension line begins at the edge of the part.
    pub(super) const fn at_edge(along: f64) -> Self {
        Self { along, inside: 0.0 }
    }
}

impl Spot {
    /// Two ends in the order they lie along the side.
    pub(super) fn between(one: End, other: End) -> Self {
        if one.along <= other.along {
            Self::Between(one, other)
        } else {
            Self::Between(other, one)
        }
    }

    /// Centres for the text, the best first.
    fn centres(self, side: Side, (width, limits): (f64, (f64, f64))) -> Vec<f64> {
        let beyond = width / 2.0 + GAP;
        match self {
            Self::Between(from, to) => {
                let middle = f64::midpoint(from.along, to.along);
                let (least, most) = (limits.0 + width / 2.0, limits.1 - width / 2.0);
                let kept = middle.max(least).min(most);
                vec![middle, kept, to.along + beyond, from.along - beyond]
            }
            Self::At(x, y) => {
                let tip = side.along(x, y);
                [0.0, 1.0, -1.0, 2.0, -2.0, 3.0, -3.0]
                    .map(|steps| tip + steps * beyond)
                    .to_vec()
            }
        }
    }

    /// What its lines take up along the side on their way to a text.
    fn reach(self, side: Side, text: (f64, f64)) -> (f64, f64) {
        match self {
            Self::Between(from, to) => (from.along, to.along),
            Self::At(x, y) => {
                let tip = side.along(x, y);
                let landing = landing(tip, text);
                (tip.min(landing), tip.max(landing))
            }
        }
    }

    /// What its dimension line takes up in its own row, with the arrows that stand outside.
    fn drawn(self, reach: (f64, f64)) -> (f64, f64) {
        match self {
            Self::Between(..) => {
                let (_, tail) = arrow(reach.0, reach.1);
                (reach.0 - tail, reach.1 + tail)
            }
            Self::At(..) => reach,
        }
    }

    /// Whether its lines cross a text that stands between them and the part.
    fn crosses(self, reach: (f64, f64), text: (f64, f64)) -> bool {
        let (start, stop) = (text.0 - GAP / 2.0, text.1 + GAP / 2.0);
        match self {
            Self::Between(..) => [reach.0, reach.1]
                .into_iter()
                .any(|line| start < line && line < stop),
            Self::At(..) => reach.0 < stop && start < reach.1,
        }
    }
}

impl Side {
    /// The edge of a text on this side that faces the part.
    const fn near_edge(self) -> Edge {
        match self {
            Self::Above => Edge::Bottom,
            Self::Below => Edge::Top,
            Self::Left => Edge::Right,
            Self::Right => Edge::Left,
        }
    }

    /// The place along this side of a point of the sheet.
    const fn along(self, x: f64, y: f64) -> f64 {
        match self {
            Self::Above | Self::Below => x,
            Self::Left | Self::Right => y,
        }
    }
}

impl Band {
    /// A side of a view, with how far texts may reach along it. `room` is what the sheet has
    /// across it; above and below a view the sheet grows instead.
    pub(super) fn new(side: Side, limits: (f64, f64), room: f64, sheet: &Sheet) -> Self {
        let text = match side {
            Side::Above | Side::Below => (sheet.text, sheet.row),
            Side::Left | Side::Right => (sheet.row, sheet.text),
        };
        let rows = (room - CLEAR + GAP) / (text.1 + GAP);
        Self {
            side,
            limits,
            text,
            // A float below 0 becomes 0.
            most_rows: (rows.floor() as usize).min(MOST_ROWS),
            rows: Vec::new(),
        }
    }

    /// Finds a place, as near to the part as can be; says no when there is none.
    pub(super) fn place(&mut self, wanted: Wanted) -> bool {
        for row in 0..self.most_rows {
            for &spot in &wanted.spots {
                for centre in spot.centres(self.side, (self.text.0, self.limits)) {
                    let text = (centre - self.text.0 / 2.0, centre + self.text.0 / 2.0);
                    if self.is_free(spot, row, text) {
                        self.rows.push(Placed {
                            wanted,
                            spot,
                            row,
                            text,
                        });
                        return true;
                    }
                }
            }
        }
        false
    }

    /// How far the band reaches from the part, px.
    pub(super) fn depth(&self) -> f64 {
        self.rows
            .iter()
            .map(|placed| placed.row + 1)
            .max()
            .map_or(0.0, |rows| GAP + rows as f64 * self.step())
    }

    /// Where the texts of a band beside a view end, px down the sheet.
    pub(super) fn end(&self) -> f64 {
        self.rows
            .iter()
            .map(|placed| placed.text.1)
            .fold(0.0, f64::max)
    }

    /// The dimensions in the order they were placed; the part ends at `edge`, px across the side.
    pub(super) fn dimensions(&self, edge: f64) -> Vec<Dimension> {
        self.rows
            .iter()
            .map(|placed| self.dimension(placed, edge))
            .collect()
    }

    /// Distance from row to row.
    fn step(&self) -> f64 {
        self.text.1 + GAP
    }

    fn is_free(&self, spot: Spot, row: usize, text: (f64, f64)) -> bool {
        if text.0 < self.limits.0 || text.1 > self.limits.1 {
            return false;
        }
        let reach = spot.reach(self.side, text);
        self.rows.iter().all(|other| {
            let theirs = other.spot.reach(self.side, other.text);
            match row.cmp(&other.row) {
                // Lines of a chain may meet in a point; a text keeps clear of both.
                Ordering::Equal => {
                    let lines = reach.1 <= theirs.0 + 0.01 || theirs.1 <= reach.0 + 0.01;
                    let texts = text.1 + GAP <= other.text.0 || other.text.1 + GAP <= text.0;
                    let mixed = apart(text, other.spot.drawn(theirs))
                        && apart(other.text, spot.drawn(reach));
                    lines && texts && mixed
                }
                // The lines of the outer one pass the row of the inner one.
                Ordering::Greater => {
                    let (whole, their_whole) = (hull(reach, text), hull(theirs, other.text));
                    !spot.crosses(reach, other.text) && !within(whole, their_whole)
                }
                Ordering::Less => {
                    let (whole, their_whole) = (hull(reach, text), hull(theirs, other.text));
                    !other.spot.crosses(theirs, text) && !within(their_whole, whole)
                }
            }
        })
    }

    fn dimension(&self, placed: &Placed, edge: f64) -> Dimension {
        let Placed {
            wanted,
            spot,
            row,
            text,
        } = placed;
        let outwards = match self.side {
            Side::Above | Side::Left => -1.0,
            Side::Below | Side::Right => 1.0,
        };
        let near = edge + outwards * (GAP + *row as f64 * self.step());
        let (lines, arrows) = match *spot {
            Spot::Between(from, to) => self.linear((from, to), *text, near, (edge, outwards)),
            Spot::At(x, y) => {
                let landing = landing(self.side.along(x, y), *text);
                leader((x, y), self.on_sheet(landing, near + outwards * LIFT))
            }
        };
        let across = near.min(near + outwards * self.text.1) + LIFT * outwards;
        let ((x, y), (width, height)) = (
            self.on_sheet(text.0, across),
            self.on_sheet(self.text.0, self.text.1),
        );
        Dimension {
            size: wanted.size,
            driving: wanted.driving,
            sign: wanted.sign,
            text: wanted.text.clone(),
            lines,
            arrows,
            area: Area {
                x,
                y,
                width,
                height,
            },
            near: self.side.near_edge(),
        }
    }

    /// A place from its distances along and across the side.
    fn on_sheet(&self, along: f64, across: f64) -> (f64, f64) {
        match self.side {
            Side::Above | Side::Below => (along, across),
            Side::Left | Side::Right => (across, along),
        }
    }

    /// Two extension lines and the dimension line between them, with its arrows.
    fn linear(
        &self,
        (from, to): (End, End),
        text: (f64, f64),
        line: f64,
        (edge, outwards): (f64, f64),
    ) -> (String, String) {
        let mut lines = Path::new();
        for end in [from, to] {
            let (start, stop) = (edge + outwards * (2.0 - end.inside), line + outwards * 3.0);
            lines = lines.run(&[
                self.on_sheet(end.along, start),
                self.on_sheet(end.along, stop),
            ]);
        }
        let (arrow, tail) = arrow(from.along, to.along);
        // A text beside its arrows stands on the line drawn on.
        let start = (from.along - tail).min(if text.1 < from.along {
            text.0
        } else {
            f64::MAX
        });
        let stop = (to.along + tail).max(if text.0 > to.along { text.1 } else { f64::MIN });
        lines = lines.run(&[self.on_sheet(start, line), self.on_sheet(stop, line)]);
        let mut arrows = Path::new();
        for (tip, inwards) in [(from.along, 1.0), (to.along, -1.0)] {
            let foot = tip + if tail == 0.0 { inwards } else { -inwards } * arrow;
            arrows = arrows.polygon(&[
                self.on_sheet(tip, line),
                self.on_sheet(foot, line - arrow / 6.0),
                self.on_sheet(foot, line + arrow / 6.0),
            ]);
        }
        (lines.done(), arrows.done())
    }
}

/// The length of the arrows between two places, and how far the line is drawn on for them:
/// they shrink a little before they turn outwards.
fn arrow(from: f64, to: f64) -> (f64, f64) {
    let length = ((to - from) / 2.2).min(ARROW);
    if length < LEAST_ARROW {
        (ARROW, ARROW + 1.0)
    } else {
        (length, 0.0)
    }
}

/// Where a leader meets the edge of its text: as straight out as can be.
fn landing(tip: f64, text: (f64, f64)) -> f64 {
    tip.max(text.0 + LANDING).min(text.1 - LANDING)
}

/// Whether two intervals share no more than an end.
fn apart(one: (f64, f64), other: (f64, f64)) -> bool {
    one.1 <= other.0 || other.1 <= one.0
}

/// The least interval that holds both.
fn hull(one: (f64, f64), other: (f64, f64)) -> (f64, f64) {
    (one.0.min(other.0), one.1.max(other.1))
}

/// A straight leader from a text to a point, with its arrow.
fn leader(tip: (f64, f64), text: (f64, f64)) -> (String, String) {
    let (run, rise) = (text.0 - tip.0, text.1 - tip.1);
    let length = norm(run, rise).max(1.0);
    let (run, rise) = (run / length * ARROW, rise / length * ARROW);
    let foot = (tip.0 + run, tip.1 + rise);
    let arrow = Path::new().polygon(&[
        tip,
        (foot.0 - rise / 6.0, foot.1 + run / 6.0),
        (foot.0 + rise / 6.0, foot.1 - run / 6.0),
    ]);
    (Path::new().run(&[tip, text]).done(), arrow.done())
}

/// Whether the outer dimension is the shorter one, wholly inside the span of the inner one:
/// its extension lines would cut the inner dimension line.
fn within(outer: (f64, f64), inner: (f64, f64)) -> bool {
    inner.0 < outer.0 && outer.1 < inner.1
}
