//! The turns of a barrel, cut into ranges over which its extents are plain sinusoids.

use super::wave::Wave;
use crate::layout;
use crate::outline::{Outline, Reach, Segment};
use crate::quantity::{Angle, Direction, Length, Point, lesser, norm};
use crate::sequence::in_order;

/// A range of turns, possibly of one turn only.
#[derive(Debug, Clone, Copy)]
pub(super) struct Range {
    /// The first turn, from the drawn one.
    pub(super) from: Angle,
    /// The last turn, at most half a turn on.
    pub(super) to: Angle,
    pub(super) first: Direction,
    pub(super) last: Direction,
    /// Whether the first and the last turn are usual ones.
    pub(super) usual: [bool; 2],
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

/// What has to hold of the outline at a turn, whatever the slats.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wants {
    /// The least lean of a straight side from upright.
    pub(super) relief: Angle,
    /// The glue line beside the lead, where it may be too short at some turn.
    pub(super) glue_line: Option<GlueLine>,
}

/// How far the glue must reach beside the lead axis, and how high above it: half a groove and the
/// least bond width, on the glue plane.
#[derive(Debug, Clone, Copy)]
pub(super) struct GlueLine {
    pub(super) reach: Length,
    pub(super) level: Length,
}

/// The ranges of turns at which the wood can be shaped and the seam holds.
///
/// Ends of ranges are all turns at which
/// - another corner becomes the farthest to the left, right, up or down ([`Outline::reaches`]),
/// - a straight side comes to lean as much as the relief asks,
/// - a hollow comes to face the side, or no longer does,
/// - an end of the glue line comes to lie on the outline, or a hollow to touch the glue plane,
///
/// so that between two of them nothing of this changes: what holds in the middle holds throughout,
/// and it is asked of the same checks that a layout is held against.
pub(super) fn ranges(wood: &Outline, choice: &Choice<'_>, wants: &Wants) -> Vec<Range> {
    let allowed = |turn: Angle| {
        let lying = wood.turned(turn.direction());
        lying.undercut().is_none()
            && layout::relief_holds(&lying, wants.relief)
            && wants.glue_line.is_none_or(|glue| {
                layout::glue_reach(&lying, glue.level)
                    .is_some_and(|reach| glue.reach.fits_in(reach))
            })
    };
    let (period, usual) = match *choice {
        Choice::These(turns) => (0.0, turns),
        Choice::Every { period, usual } => (period, usual),
    };
    let reaches = Sorted::new(wood.reaches(), usual);
    let single = |turn: Angle| reaches.range(turn, turn);
    if period <= 0.0 {
        return usual
            .iter()
            .copied()
            .filter(|turn| allowed(*turn))
            .map(single)
            .collect();
    }
    let mut ends = reaches.ends();
    ends.extend(relief_ends(wood, wants.relief));
    ends.extend(
        wood.unshapeable_turns()
            .into_iter()
            .flat_map(|(from, to)| [from, to]),
    );
    ends.extend(
        wants
            .glue_line
            .iter()
            .flat_map(|glue| glue_ends(wood, *glue)),
    );
    ends.extend(usual.iter().map(|turn| turn.in_degrees()));
    let ends = sorted_within(ends, period);
    let open: Vec<Option<Angle>> = ends
        .windows(2)
        .map(|pair| Angle::degrees(f64::midpoint(pair[0], pair[1])))
        .map(|middle| allowed(middle).then_some(middle))
        .collect();
    let mut ranges = Vec::new();
    for (k, after) in open.iter().enumerate() {
        let before = open[(k + open.len() - 1) % open.len()];
        let (from, to) = (Angle::degrees(ends[k]), Angle::degrees(ends[k + 1]));
        if let Some(middle) = *after {
            ranges.push(reaches.range(
                last_allowed(middle, from, &allowed),
                last_allowed(middle, to, &allowed),
            ));
        } else if before.is_none() && allowed(from) {
            // A turn between two ranges that are closed may hold by itself.
            ranges.push(single(from));
        }
    }
    ranges
}

/// The last allowed turn from one that is allowed towards the end of its range: mostly that end.
///
/// What the middle keeps only as rounding is forgiven, the end may fail by a hair more; and where a
/// hollow just touches the glue plane, the end itself fails.
fn last_allowed(middle: Angle, end: Angle, allowed: impl Fn(Angle) -> bool) -> Angle {
    /// Halvings of a range: of 360 degrees 1e-10 is left.
    const HALVINGS: u32 = 42;
    if allowed(end) {
        return end;
    }
    let (mut within, mut beyond) = (middle, end);
    for _ in 0..HALVINGS {
        let next = Angle::degrees(f64::midpoint(within.in_degrees(), beyond.in_degrees()));
        if allowed(next) {
            within = next;
        } else {
            beyond = next;
        }
    }
    within
}

/// Corners by the angle at which they begin to reach farthest.
struct Sorted<'a> {
    corners: Vec<(f64, Reach)>,
    usual: &'a [Angle],
}

impl<'a> Sorted<'a> {
    fn new(reaches: Vec<Reach>, usual: &'a [Angle]) -> Self {
        let corners: Vec<(f64, Reach)> = reaches
            .into_iter()
            .map(|reach| (reach.from.angle().in_degrees(), reach))
            .collect();
        Self {
            corners: in_order(corners, |one, other| one.0.total_cmp(&other.0)),
            usual,
        }
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

    fn range(&self, from: Angle, to: Angle) -> Range {
        let middle = f64::midpoint(from.in_degrees(), to.in_degrees());
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
            usual: [from, to].map(|turn| self.usual.contains(&turn)),
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

/// Turns at which an end of the glue line may come to lie inside or outside the wood.
fn glue_ends(wood: &Outline, glue: GlueLine) -> Vec<f64> {
    let (across, level) = (glue.reach.in_millimetres(), glue.level.in_millimetres());
    let mut ends = Vec::new();
    // While the outline turns, the ends of the glue line run round it on a circle.
    let circle = Length::millimetres(norm(across, level));
    let places = wood.crossings_with_circle(circle);
    for side in [across, -across] {
        let own = libm::atan2(level, side).to_degrees();
        ends.extend(places.iter().map(|place| own - place.in_degrees()));
    }
    if wood.is_convex() {
        return ends;
    }
    // A hollow or a corner that comes to touch the glue plane may cut the glue line in two.
    for segment in wood.segments() {
        let mut heights = vec![(segment.start(), 0.0)];
        if let Segment::Arc(arc) = segment {
            heights.extend([(arc.centre, arc.radius), (arc.centre, -arc.radius)]);
        }
        for (centre, radius) in heights {
            let height = Wave {
                constant: radius - level,
                cosine: centre.y,
                sine: centre.x,
            };
            let zeros = height.zeros().into_iter().flatten();
            ends.extend(zeros.map(|turn| turn.angle().in_degrees()));
        }
    }
    ends
}

/// The ends within a period, in order, each once, with 0 and the period itself.
fn sorted_within(ends: Vec<f64>, period: f64) -> Vec<f64> {
    /// Turns nearer than this are one, degrees.
    const SAME: f64 = 1e-10;
    let mut within: Vec<f64> = ends.into_iter().map(|end| end.rem_euclid(period)).collect();
    within.extend([0.0, period]);
    within.sort_by(f64::total_cmp);
    let mut kept: Vec<f64> = Vec::with_capacity(within.len());
    for end in within {
        match kept.last_mut() {
            Some(last) if end - *last < SAME => {
                // Of two that are one, the rounder number stays: the usual turns are such.
                if end.fract() == 0.0 || end == period {
                    *last = end;
                }
            }
            _ => kept.push(end),
        }
    }
    kept
}
