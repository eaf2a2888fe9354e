//! Dimensions on one side of a view: nearest first, stepping outwards until nothing overlaps.
//!
//! After ISO 129-1: dimension lines stay outside the part, text is read from the bottom of
//! the sheet, arrows turn outwards where they have no room between the extension lines.

use super::path::Path;
use super::{Area, Dimension, Sheet, Size};

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
    /// Where it measures from and to along the side, px.
    pub(super) from: f64,
    pub(super) to: f64,
    /// What its lines lead to.
    pub(super) target: Target,
}

/// What the lines of a dimension lead to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Target {
    /// Two extension lines that begin this far inside the edge of the part, px.
    Inside(f64),
    /// A leader to a point of the sheet, px.
    Point(f64, f64),
}

/// The dimensions on one side.
#[derive(Debug)]
pub(super) struct Band {
    side: Side,
    /// How far texts may reach along the side, px.
    limits: (f64, f64),
    /// Room for a text along and across the side, px.
    text: (f64, f64),
    rows: Vec<Placed>,
}

#[derive(Debug)]
struct Placed {
    wanted: Wanted,
    row: usize,
    /// Centre of the text along the side, px.
    centre: f64,
}

/// Space between the part and the first row, and between a text and its neighbours, px.
const GAP: f64 = 6.0;
/// Length of an arrow, px.
const ARROW: f64 = 7.0;
/// Rows that are tried before a dimension is dropped.
const MOST_ROWS: usize = 4;

impl Band {
    pub(super) fn new(side: Side, limits: (f64, f64), sheet: &Sheet) -> Self {
        let text = match side {
            Side::Above | Side::Below => (sheet.text, sheet.row),
            Side::Left | Side::Right => (sheet.row, sheet.text),
        };
        Self {
            side,
            limits,
            text,
            rows: Vec::new(),
        }
    }

    /// Finds a place; says no when there is none.
    pub(super) fn place(&mut self, wanted: Wanted) -> bool {
        let (from, to) = (wanted.from.min(wanted.to), wanted.from.max(wanted.to));
        let beyond = self.text.0 / 2.0 + GAP;
        let centres = [(from + to) / 2.0, to + beyond, from - beyond];
        let wanted = Wanted { from, to, ..wanted };
        for row in 0..MOST_ROWS {
            for centre in centres {
                if self.is_free(&wanted, row, centre) {
                    self.rows.push(Placed {
                        wanted,
                        row,
                        centre,
                    });
                    return true;
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
            .map(|placed| self.span(placed.centre).1)
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

    /// Where a text begins and ends along the side.
    fn span(&self, centre: f64) -> (f64, f64) {
        (centre - self.text.0 / 2.0, centre + self.text.0 / 2.0)
    }

    fn is_free(&self, wanted: &Wanted, row: usize, centre: f64) -> bool {
        let text = self.span(centre);
        if text.0 < self.limits.0 || text.1 > self.limits.1 {
            return false;
        }
        let whole = (wanted.from.min(text.0), wanted.to.max(text.1));
        self.rows.iter().all(|other| {
            let theirs = self.span(other.centre);
            let their_whole = (
                other.wanted.from.min(theirs.0),
                other.wanted.to.max(theirs.1),
            );
            let crosses =
                |x: f64, text: (f64, f64)| text.0 - GAP / 2.0 < x && x < text.1 + GAP / 2.0;
            match row.cmp(&other.row) {
                // Lines of a chain may meet in a point; a text keeps clear of both.
                std::cmp::Ordering::Equal => {
                    let lines_clear = wanted.to <= other.wanted.from + 0.01
                        || other.wanted.to <= wanted.from + 0.01;
                    let texts_clear = text.1 + GAP <= theirs.0 || theirs.1 + GAP <= text.0;
                    let mixed_clear = (text.1 <= other.wanted.from || other.wanted.to <= text.0)
                        && (theirs.1 <= wanted.from || wanted.to <= theirs.0);
                    lines_clear && texts_clear && mixed_clear
                }
                // The extension lines of the outer one pass the row of the inner one.
                std::cmp::Ordering::Greater => {
                    !crosses(wanted.from, theirs)
                        && !crosses(wanted.to, theirs)
                        && !within(whole, their_whole)
                }
                std::cmp::Ordering::Less => {
                    !crosses(other.wanted.from, text)
                        && !crosses(other.wanted.to, text)
                        && !within(their_whole, whole)
                }
            }
        })
    }

    fn dimension(&self, placed: &Placed, edge: f64) -> Dimension {
        let Placed {
            wanted,
            row,
            centre,
        } = placed;
        let outwards = match self.side {
            Side::Above | Side::Left => -1.0,
            Side::Below | Side::Right => 1.0,
        };
        let near = edge + outwards * (GAP + *row as f64 * self.step());
        let text = self.span(*centre);
        let (lines, arrows) = match wanted.target {
            Target::Inside(depth) => {
                self.linear(wanted, text, near, edge - outwards * depth, outwards)
            }
            Target::Point(x, y) => leader((x, y), self.on_sheet(*centre, near)),
        };
        // A number stands a hair off its line.
        let across = near.min(near + outwards * self.text.1) + 3.0 * outwards;
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
        wanted: &Wanted,
        text: (f64, f64),
        line: f64,
        root: f64,
        outwards: f64,
    ) -> (String, String) {
        let mut lines = Path::new();
        for end in [wanted.from, wanted.to] {
            let (start, stop) = (root + outwards * 2.0, line + outwards * 3.0);
            lines = lines.run(&[self.on_sheet(end, start), self.on_sheet(end, stop)]);
        }
        let inside = wanted.to - wanted.from >= 2.5 * ARROW;
        let tail = if inside { 0.0 } else { 2.0 * ARROW };
        // A text beside its arrows stands on the line drawn on.
        let start = if text.1 < wanted.from {
            text.0
        } else {
            wanted.from - tail
        };
        let stop = if text.0 > wanted.to {
            text.1
        } else {
            wanted.to + tail
        };
        lines = lines.run(&[self.on_sheet(start, line), self.on_sheet(stop, line)]);
        let mut arrows = Path::new();
        for (tip, inwards) in [(wanted.from, 1.0), (wanted.to, -1.0)] {
            let foot = tip
                + if inside {
                    inwards * ARROW
                } else {
                    -inwards * ARROW
                };
            arrows = arrows.polygon(&[
                self.on_sheet(tip, line),
                self.on_sheet(foot, line - ARROW / 6.0),
                self.on_sheet(foot, line + ARROW / 6.0),
            ]);
        }
        (lines.done(), arrows.done())
    }
}

/// A straight leader from a text to a point, with its arrow.
fn leader(tip: (f64, f64), text: (f64, f64)) -> (String, String) {
    let (run, rise) = (text.0 - tip.0, text.1 - tip.1);
    let length = libm::hypot(run, rise).max(1.0);
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
