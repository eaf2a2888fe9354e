//! The turns of a barrel, cut into ranges over which its extents are plain sinusoids.

use super::heights::{self, AxisRange, Heights};
use super::wave::Wave;
use crate::layout;
use crate::outline::{Outline, Reach, Segment};
use crate::quantity::{Angle, Direction, Point, lesser};
use crate::sequence::in_order;

/// A range of turns, possibly of one turn only.
#[derive(Debug, Clone, Copy)]
pub(super) struct Range {
    /// The first turn, from the drawn one.
    pub(super) from: Angle,
    /// The last turn, at most a quarter turn on.
    pub(super) to: Angle,
    pub(super) first: Direction,
    pub(super) last: Direction,
    /// The usual turns that show the same outline as the first and the last turn.
    pub(super) usual: [Option<Angle>; 2],
    /// The heights of the lead axis that hold at every turn of it.
    pub(super) axis: AxisRange,
    /// How far the wood reaches up from the lead axis.
    pub(super) up: Wave,
    /// How far it reaches down.
    pub(super) down: Wave,
    /// How wide it is.
    pub(super) width: Wave,
    /// What is reached up, down, across and from bottom to top at every turn of the range, at
    /// least; rounding counted.
    pub(super) least: Least,
}

/// The least of the extents over a range of turns, mm.
#[derive(Debug, Clone, Copy)]
pub(super) struct Least {
    pub(super) up: f64,
    pub(super) down: f64,
    pub(super) width: f64,
    pub(super) height: f64,
}

impl Least {
    const NONE: Self = Self {
        up: 0.0,
        down: 0.0,
        width: 0.0,
        height: 0.0,
    };

    fn of(range: &Range) -> Self {
        Self {
            up: range.least(range.up),
            down: range.least(range.down),
            width: range.least(range.width),
            height: range.least(range.up + range.down),
        }
    }
}

impl Range {
    /// The least value over the range, less what a turn that is held by a hair may be below it.
    fn least(&self, wave: Wave) -> f64 {
        /// Far above the rounding of extents of some ten millimetres.
        const HAIR: f64 = 1e-10;
        let trough = wave.crest().map(|crest| -crest);
        let inside = trough.filter(|turn| self.holds(*turn));
        let ends = lesser(wave.at(self.first), wave.at(self.last));
        inside.map_or(ends, |turn| lesser(ends, wave.at(turn))) - HAIR
    }

    /// Whether a turn lies in it, a hair forgiven.
    pub(super) fn holds(&self, turn: Direction) -> bool {
        /// The sine of a turn that makes no difference.
        const HAIR: f64 = 1e-13;
        self.first.cross(turn) >= -HAIR
            && turn.cross(self.last) >= -HAIR
            && turn.dot(self.first) > -HAIR
    }
}

/// The turns that are searched.
pub(super) enum Choice<'a> {
    /// These turns only.
    These(&'a [Angle]),
    /// Every turn from 0 up to a period of the outline. The usual turns are ends of ranges, so that
    /// they are looked at themselves; they alone where there is no period, as of a circle.
    Every { period: f64, usual: &'a [Angle] },
}

/// The ranges of turns at which the wood can be shaped and the seam holds, each with heights of the
/// axis; a turn may lie in several, with other heights.
///
/// Ends of ranges are all turns at which
/// - another corner becomes the farthest to the left, right, up or down ([`Outline::reaches`]),
/// - a straight side comes to lean as much as the relief asks,
/// - a hollow comes to face the side, or no longer does,
/// - the heights of the axis that hold may change in another way ([`Heights::ends`]),
///
/// so that between two of them nothing of this changes: what holds in the middle holds throughout,
/// and it is asked of the same checks that a layout is held against.
pub(super) fn ranges(
    wood: &Outline,
    choice: &Choice<'_>,
    relief: Angle,
    heights: &Heights<'_>,
) -> Vec<Range> {
    let shaped = |turn: Angle| {
        let lying = wood.turned(turn.direction());
        lying.undercut().is_none() && layout::relief_holds(&lying, relief)
    };
    let (period, usual) = match *choice {
        Choice::These(turns) => (0.0, turns),
        Choice::Every { period, usual } => (period, usual),
    };
    let reaches = Sorted::new(wood.reaches(), Usual::new(usual, period));
    let singles = |turn: Angle, axes: Vec<AxisRange>| {
        let axes = if shaped(turn) { axes } else { Vec::new() };
        axes.into_iter().map(move |axis| (turn, turn, axis))
    };
    if period <= 0.0 {
        return usual
            .iter()
            .flat_map(|turn| singles(*turn, heights.at(*turn, true)))
            .map(|(from, to, axis)| reaches.range(from, to, axis))
            .collect();
    }
    let mut ends = reaches.ends();
    ends.extend(relief_ends(wood, relief));
    ends.extend(
        wood.unshapeable_turns()
            .into_iter()
            .flat_map(|(from, to)| [from, to]),
    );
    ends.extend(heights.ends(reaches.corners()));
    let ends: Vec<(Angle, Vec<AxisRange>)> = reaches
        .usual
        .among(ends)
        .into_iter()
        .map(Angle::degrees)
        .map(|turn| {
            let is_usual = reaches.usual.like(turn).is_some();
            (turn, heights.at(turn, is_usual))
        })
        .collect();
    let open: Vec<Vec<AxisRange>> = ends
        .windows(2)
        .map(|pair| {
            let ((from, at_from), (to, at_to)) = (&pair[0], &pair[1]);
            if shaped(heights::middle(*from, *to)) {
                heights.throughout((*from, at_from), (*to, at_to))
            } else {
                Vec::new()
            }
        })
        .collect();
    let mut ranges = Vec::new();
    for (k, after) in open.iter().enumerate() {
        let before = &open[(k + open.len() - 1) % open.len()];
        let (from, at_from) = &ends[k];
        // What holds at a turn but not beside it may hold by itself.
        let mut alone = at_from.clone();
        alone.retain(|axis| {
            !before
                .iter()
                .chain(after)
                .any(|beside| beside.contains(axis))
        });
        if !alone.is_empty() {
            ranges.extend(singles(*from, alone));
        }
        let middle = heights::middle(*from, ends[k + 1].0);
        ranges.extend(after.iter().map(|axis| {
            let holds = |turn: Angle| shaped(turn) && heights.hold_at(turn, *axis);
            let [from, to] = [*from, ends[k + 1].0].map(|end| last_held(middle, end, holds));
            (from, to, *axis)
        }));
    }
    ranges
        .into_iter()
        .map(|(from, to, axis)| reaches.range(from, to, axis))
        .collect()
}

/// The last turn that holds, from one that does towards the end of its range: mostly that end.
///
/// What the middle keeps only because rounding is forgiven, the end may fail by a hair more; and where
/// a hollow just touches the glue plane, the end itself fails.
fn last_held(middle: Angle, end: Angle, holds: impl Fn(Angle) -> bool) -> Angle {
    /// Halvings of a range: of 90 degrees 1e-10 is left.
    const HALVINGS: u32 = 40;
    if holds(end) {
        return end;
    }
    let (mut within, mut beyond) = (middle, end);
    for _ in 0..HALVINGS {
        let next = heights::middle(within, beyond);
        if holds(next) {
            within = next;
        } else {
            beyond = next;
        }
    }
    within
}

/// Corners by the angle at which they begin to reach farthest.
struct Sorted {
    corners: Vec<(f64, Reach)>,
    usual: Usual,
}

impl Sorted {
    fn new(reaches: Vec<Reach>, usual: Usual) -> Self {
        let corners: Vec<(f64, Reach)> = reaches
            .into_iter()
            .map(|reach| (reach.from.angle().in_degrees(), reach))
            .collect();
        Self {
            corners: in_order(corners, |one, other| one.0.total_cmp(&other.0)),
            usual,
        }
    }

    fn corners(&self) -> impl Iterator<Item = &Reach> {
        self.corners.iter().map(|(_, reach)| reach)
    }

    /// The turns at which a corner becomes the farthest on one of the four sides, degrees.
    fn ends(&self) -> Vec<f64> {
        let sides = [0.0, 90.0, 180.0, 270.0];
        self.corners
            .iter()
            .flat_map(|(from, _)| sides.map(|side| side - from))
            .collect()
    }

    /// The corner that reaches farthest in a direction of the drawn outline, by centre and radius;
    /// a point on the axis where there is none.
    fn towards(&self, degrees: f64) -> (Point, f64) {
        let degrees = degrees.rem_euclid(360.0);
        let after = self.corners.partition_point(|(from, _)| *from <= degrees);
        // Before the first corner of the list the last one still reaches farthest.
        let farthest = self.corners[..after].last().or(self.corners.last());
        farthest.map_or((Point::AXIS, 0.0), |(_, reach)| {
            (reach.centre, reach.radius)
        })
    }

    fn range(&self, from: Angle, to: Angle, axis: AxisRange) -> Range {
        let middle = heights::middle(from, to).in_degrees();
        // Turning the outline by θ shows on a side what lies θ before it on the drawn one.
        let corner = |side: f64| self.towards(side - middle);
        let wave = |(centre, radius): (Point, f64), across: f64, up: f64| Wave {
            constant: radius,
            cosine: centre.x * across + centre.y * up,
            sine: centre.x * up - centre.y * across,
        };
        let mut range = Range {
            from,
            to,
            first: from.direction(),
            last: to.direction(),
            usual: [from, to].map(|turn| self.usual.like(turn)),
            axis,
            up: wave(corner(90.0), 0.0, 1.0),
            down: wave(corner(270.0), 0.0, -1.0),
            width: wave(corner(0.0), 1.0, 0.0) + wave(corner(180.0), -1.0, 0.0),
            least: Least::NONE,
        };
        range.least = Least::of(&range);
        range
    }
}

/// Turns at which a straight side leans just as much as is asked.
fn relief_ends(wood: &Outline, relief: Angle) -> Vec<f64> {
    if relief <= Angle::ZERO {
        return Vec::new();
    }
    let relief = relief.in_degrees();
    let sides = wood.segments().iter().filter_map(|segment| match segment {
        Segment::Line(line) => Some(line.normal.angle().in_degrees()),
        Segment::Arc(_) => None,
    });
    sides
        .flat_map(|normal| {
            [-relief, relief, 180.0 - relief, 180.0 + relief].map(|level| level - normal)
        })
        .collect()
}

/// The usual turns, each with what it is within the period, degrees.
struct Usual {
    turns: Vec<(f64, Angle)>,
    period: f64,
}

impl Usual {
    /// Turns nearer than this are one, degrees.
    const SAME: f64 = 1e-10;

    fn new(turns: &[Angle], period: f64) -> Self {
        let fold = |turn: &Angle| (folded(turn.in_degrees(), period), *turn);
        Self {
            turns: turns.iter().map(fold).collect(),
            period,
        }
    }

    /// The usual turn that shows the same outline as another.
    fn like(&self, turn: Angle) -> Option<Angle> {
        let folded = folded(turn.in_degrees(), self.period);
        let mut turns = self.turns.iter();
        let same = turns.find(|(usual, _)| (usual - folded).abs() < Self::SAME);
        same.map(|(_, turn)| *turn)
    }

    /// Ends of ranges and the usual turns within the period, in order, each once, with 0 and the
    /// period itself.
    fn among(&self, ends: Vec<f64>) -> Vec<f64> {
        let usual = self.turns.iter().map(|(folded, _)| *folded);
        let is_usual = |end: f64| usual.clone().any(|usual| usual == end);
        let ends = ends.into_iter().map(|end| end.rem_euclid(self.period));
        let mut within: Vec<f64> = ends.chain(usual.clone()).collect();
        within.extend([0.0, self.period]);
        within.sort_by(f64::total_cmp);
        let mut kept: Vec<f64> = Vec::with_capacity(within.len());
        for end in within {
            match kept.last_mut() {
                Some(last) if end - *last < Self::SAME => {
                    // Of two that are one, the usual one stays, and the period as the last.
                    if is_usual(end) || end == self.period {
                        *last = end;
                    }
                }
                _ => kept.push(end),
            }
        }
        kept
    }
}

/// What a turn is within a period, 0 rather than a hair less than the period; degrees.
fn folded(degrees: f64, period: f64) -> f64 {
    if period <= 0.0 {
        return degrees;
    }
    let within = degrees.rem_euclid(period);
    if period - within < Usual::SAME {
        0.0
    } else {
        within
    }
}
