//! The room that two slats give a barrel, and where in it the margin for error is widest.
//!
//! At a turn θ with extents u(θ), d(θ) and width w(θ), slats of thickness T and T′, a planing
//! allowance k, a floor f, a groove radius ρ and the axis at a, the margins upright are
//!
//! ```text
//! top     T − k − u − a   and   T − f − ρ − a          (both fall with a)
//! bottom  T′ − k − d + a  and   T′ − f − ρ + a         (both grow with a)
//! ```
//!
//! The least of one that falls and one that grows is greatest where they meet, or at an end of
//! the range of a. So over all a the least margin is the least of the half sums of each pair, of
//! the top ones at the least a, and of the bottom ones at the greatest a: sinusoids of θ again.
//! Across, with n pencils on the width W, an edge e and a land l, the spare width
//! `W − 2e − n·w − (n − 1)·l` is best shared evenly among the two edges and the n − 1 partings. A
//! pitch p leaves `p − w − l` at each parting and `(W − (n − 1)·p − w)/2 − e` at each edge: again one
//! margin that grows and one that falls, so that over a range of pitches, be it that of a pitch that
//! is typed or the one of a cutter set, the least margin is the least of the even share, of the
//! partings at the greatest pitch and of the edges at the least. Sinusoids all.
//!
//! The least of some sinusoids over a range is greatest at an end of the range, at a crest of one
//! of them or where two of them meet: anywhere else all that are least rise to the same side. Each of
//! these turns is the point of a circle on a line, so all are found, none is sampled past.

use super::heights::AxisRange;
use super::turns::Range;
use super::wave::Wave;
use crate::field::Field;
use crate::quantity::{Angle, Direction, Length, greater, lesser};
use crate::rules::Rules;
use crate::slat::Slat;

/// The pitches that may be laid, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Pitches {
    least: f64,
    most: f64,
}

/// How a pencil lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lie {
    /// The turn from the drawn one.
    pub(super) turn: Angle,
    /// The least of all margins, mm.
    pub(super) margin: f64,
    /// The lead axis above the glue plane, mm.
    pub(super) axis_height: f64,
    /// The width of the wood, mm.
    pub(super) width: f64,
}

/// Two slats with what the rules leave of them.
#[derive(Debug, Clone, Copy)]
pub(super) struct Room {
    /// Between the edge allowances, mm.
    across: f64,
    land: f64,
    /// The part of the top slat that the pencil may take, and the margin of its floor at a level axis.
    top: f64,
    top_floor: f64,
    bottom: f64,
    bottom_floor: f64,
}

impl Pitches {
    /// That of a cutter set.
    pub(super) const fn only(pitch: Length) -> Self {
        Self {
            least: pitch.in_millimetres(),
            most: pitch.in_millimetres(),
        }
    }

    /// Those that can be typed.
    pub(super) const fn typed() -> Self {
        let field = Field::Pitch.spec();
        Self {
            least: field.least,
            most: field.most,
        }
    }

    fn nearest(self, pitch: f64) -> f64 {
        pitch.min(self.most).max(self.least)
    }
}

impl Room {
    pub(super) fn new(top: &Slat, bottom: &Slat, groove: Length, rules: &Rules) -> Self {
        let width = top.guaranteed_width().min(bottom.guaranteed_width());
        let (upper, lower) = (top.guaranteed_thickness(), bottom.guaranteed_thickness());
        Self {
            across: (width - rules.edge * 2.0).in_millimetres(),
            land: rules.land.in_millimetres(),
            top: (upper - rules.planing).in_millimetres(),
            top_floor: (upper - rules.floor - groove).in_millimetres(),
            bottom: (lower - rules.planing).in_millimetres(),
            bottom_floor: (lower - rules.floor - groove).in_millimetres(),
        }
    }

    /// The margins upright over a range of turns, at the best height of the axis.
    fn upright(&self, range: &Range) -> [Wave; 6] {
        let level = Wave::level;
        let top = level(self.top) - range.up;
        let bottom = level(self.bottom) - range.down;
        let AxisRange { least, most } = range.axis;
        [
            (top + bottom) * 0.5,
            (top + level(self.bottom_floor)) * 0.5,
            (bottom + level(self.top_floor)) * 0.5,
            top - level(least),
            bottom + level(most),
            level(self.floors(range.axis)),
        ]
    }

    /// The margin of the floors at the best height of the axis: no turn changes it.
    fn floors(&self, axis: AxisRange) -> f64 {
        let middle = (self.top_floor + self.bottom_floor) / 2.0;
        let ends = lesser(self.top_floor - axis.least, self.bottom_floor + axis.most);
        lesser(middle, ends)
    }

    /// No margin upright is wider than this over a range of turns, mm.
    fn bound_upright(&self, range: &Range) -> f64 {
        let AxisRange { least, most } = range.axis;
        let (top, bottom) = (self.top - range.least.up, self.bottom - range.least.down);
        [
            (self.top + self.bottom - range.least.height) / 2.0,
            (top + self.bottom_floor) / 2.0,
            (bottom + self.top_floor) / 2.0,
            top - least,
            bottom + most,
            self.floors(range.axis),
        ]
        .into_iter()
        .fold(f64::INFINITY, lesser)
    }

    /// The narrowest that the wood can lie in this room, mm; nothing where it is too thin. The
    /// ranges come by their least width.
    pub(super) fn narrowest(&self, ranges: &[Range]) -> Option<f64> {
        let mut best: Option<f64> = None;
        for range in ranges {
            // From here on none is narrower.
            if best.is_some_and(|best| range.least.width >= best) {
                break;
            }
            if self.bound_upright(range) < -SLACK {
                continue;
            }
            let upright = self
                .upright(range)
                .map(|margin| margin + Wave::level(FORGIVEN));
            let mut look = |turn: Direction| {
                let width = range.width.at(turn);
                let is_narrower = best.is_none_or(|best| width < best);
                if is_narrower && least(&upright, turn) >= FORGIVEN - SLACK {
                    best = Some(width);
                }
            };
            look(range.first);
            look(range.last);
            // Between its ends the width of a range is least where it dips or where room runs out.
            let trough = range.width.crest().map(|crest| -crest);
            let ends = upright.iter().filter_map(Wave::zeros).flatten();
            ends.chain(trough)
                .filter(|turn| range.holds(*turn))
                .for_each(&mut look);
        }
        best
    }

    /// How so many pencils lie at the narrowest width, as close as the pitches allow: with the widest
    /// margin upright of all turns that are as narrow, a usual one where there is one. The ranges come
    /// by their least width.
    pub(super) fn tightest(
        &self,
        ranges: &[Range],
        narrowest: f64,
        count: u32,
        pitches: Pitches,
    ) -> Option<Lie> {
        let within = narrowest + SLACK;
        let mut best: Option<(f64, bool, Direction, &Range)> = None;
        for range in ranges {
            if range.least.width > within {
                break;
            }
            let upright = self.upright(range);
            let mut look = |turn: Direction, is_usual: bool| {
                let margin = least(&upright, turn);
                if range.width.at(turn) > within || margin < -SLACK {
                    return;
                }
                let is_better = best.is_none_or(|(widest, usual, ..)| {
                    margin > widest + SLACK || (margin >= widest - SLACK && is_usual && !usual)
                });
                if is_better {
                    best = Some((margin, is_usual, turn, range));
                }
            };
            look(range.first, range.usual[0].is_some());
            look(range.last, range.usual[1].is_some());
            let trough = range.width.crest().map(|crest| -crest);
            let ends = upright
                .iter()
                .map(|margin| *margin + Wave::level(FORGIVEN))
                .filter_map(|margin| margin.zeros())
                .flatten();
            ends.chain(trough)
                .filter(|turn| range.holds(*turn))
                .for_each(|turn| look(turn, false));
        }
        best.map(|(upright, _, turn, range)| {
            let width = range.width.at(turn);
            let pitch = self.closest(width, pitches);
            let gaps = f64::from(count.saturating_sub(1));
            let edge = (self.across - gaps * pitch - width) / 2.0;
            let parting = if count > 1 {
                pitch - width - self.land
            } else {
                f64::INFINITY
            };
            self.lie(lesser(upright, lesser(edge, parting)), turn, range)
        })
    }

    /// The closest pitch of pencils of a width, mm.
    pub(super) fn closest(&self, width: f64, pitches: Pitches) -> f64 {
        pitches.nearest(width + self.land)
    }

    /// The widest margin upright over all turns, mm.
    pub(super) fn widest_upright(&self, ranges: &[Range]) -> Option<f64> {
        // The ends of the ranges come near to it; then only few ranges can be better.
        let at_ends = ranges.iter().map(|range| {
            let upright = self.upright(range);
            greater(least(&upright, range.first), least(&upright, range.last))
        });
        let best = at_ends.reduce(greater)?;
        let inside = ranges
            .iter()
            .filter(|range| self.bound_upright(range) > best)
            .map(|range| {
                let upright = self.upright(range);
                peaks(&upright, range).fold(best, |best, turn| greater(best, least(&upright, turn)))
            });
        Some(inside.fold(best, greater))
    }

    /// How many lie side by side, of a width, mm.
    pub(super) fn most_across(&self, width: f64, pitches: Pitches) -> u32 {
        let room = Length::millimetres(self.across - width);
        let closest = width + self.land;
        if !Length::ZERO.fits_in(room) {
            0
        } else if Length::millimetres(closest).fits_in(Length::millimetres(pitches.most)) {
            room.whole_steps(Length::millimetres(pitches.nearest(closest))) + 1
        } else {
            1
        }
    }

    /// The spare width of so many pencils, mm, shared evenly among edges and partings.
    fn share(&self, width: f64, count: u32) -> f64 {
        let count = f64::from(count);
        (self.across - count * width - (count - 1.0) * self.land) / (count + 1.0)
    }

    /// Nothing across can be better than this with so many pencils, mm.
    pub(super) fn bound_across(&self, width: f64, count: u32, pitches: Pitches) -> f64 {
        let share = self.share(width, count);
        if count < 2 {
            return share;
        }
        let edge = (self.across - (f64::from(count) - 1.0) * pitches.least - width) / 2.0;
        let parting = pitches.most - width - self.land;
        lesser(share, lesser(edge, parting))
    }

    /// The margins across over a range of turns, at the best pitch, with how many of them count.
    fn across(&self, range: &Range, count: u32, pitches: Pitches) -> ([Wave; 3], usize) {
        let (number, level) = (f64::from(count), Wave::level);
        let spare = level(self.across - (number - 1.0) * self.land) - range.width * number;
        let mut margins = [spare * (1.0 / (number + 1.0)); 3];
        let mut many = 1;
        if count < 2 {
            return (margins, many);
        }
        // An even share makes a pitch of w + l + s = (W − 2e + w + 2l)/(n + 1), which grows with w
        // to (W − 2e + l)/n where nothing is spare. Only beyond the pitches the rest counts.
        let closest = (self.across + range.least.width + 2.0 * self.land) / (number + 1.0);
        let farthest = (self.across + self.land) / number;
        if closest < pitches.least {
            let edges = level(self.across - (number - 1.0) * pitches.least) - range.width;
            margins[many] = edges * 0.5;
            many += 1;
        }
        if farthest > pitches.most {
            margins[many] = level(pitches.most - self.land) - range.width;
            many += 1;
        }
        (margins, many)
    }

    /// The pitch with which so many pencils of a width have the widest margin across, mm; the closest
    /// one for a single pencil.
    pub(super) fn pitch(&self, width: f64, count: u32, pitches: Pitches) -> f64 {
        let spare = if count < 2 {
            0.0
        } else {
            self.share(width, count).max(0.0)
        };
        pitches.nearest(width + self.land + spare)
    }

    /// Where so many pencils lie with the widest margin; nothing where none is as wide as `floor`,
    /// mm. A higher floor leaves less to look at.
    pub(super) fn best(
        &self,
        ranges: &[Range],
        count: u32,
        pitches: Pitches,
        floor: f64,
    ) -> Option<Lie> {
        let bound = |range: &Range| {
            let across = self.bound_across(range.least.width, count, pitches);
            lesser(across, self.bound_upright(range))
        };
        let within = ranges.iter().map(|range| (bound(range), range));
        // What ties with the floor is left to the caller.
        let within = within.filter(|(bound, _)| *bound >= floor - SLACK);
        self.widest(within, |range| self.across(range, count, pitches))
    }

    /// The turn at which the least margin is widest, with margins across that depend on the range.
    /// Each range comes with a margin that it does not exceed.
    fn widest<'a>(
        &self,
        ranges: impl Iterator<Item = (f64, &'a Range)>,
        across: impl Fn(&Range) -> ([Wave; 3], usize),
    ) -> Option<Lie> {
        let mut best: Option<(f64, Direction, &Range)> = None;
        let mut best_usual = None;
        for (bound, range) in ranges {
            let beaten = best.is_some_and(|(widest, ..)| bound <= widest + SLACK);
            if beaten && range.usual == [None, None] {
                continue;
            }
            let upright = self.upright(range);
            let (across, many) = across(range);
            let mut margins = [Wave::level(0.0); 9];
            margins[..6].copy_from_slice(&upright);
            margins[6..6 + many].copy_from_slice(&across[..many]);
            let margins = &margins[..6 + many];
            let look = |best: &mut Option<(f64, Direction, _)>, turn: Direction| {
                let margin = least(margins, turn);
                if best.is_none_or(|(widest, ..)| margin > widest + SLACK) {
                    *best = Some((margin, turn, range));
                }
            };
            for (turn, usual) in [range.first, range.last].into_iter().zip(range.usual) {
                look(&mut best, turn);
                if usual.is_some() {
                    look(&mut best_usual, turn);
                }
            }
            peaks(margins, range).for_each(|turn| look(&mut best, turn));
        }
        // Of turns that are as good, a usual one is taken, otherwise the first that was looked at.
        let as_good = |usual: &(f64, Direction, &Range)| {
            best.is_none_or(|(widest, ..)| usual.0 + SLACK >= widest)
        };
        best_usual
            .filter(as_good)
            .or(best)
            .map(|(margin, direction, range)| self.lie(margin, direction, range))
    }

    fn lie(&self, margin: f64, direction: Direction, range: &Range) -> Lie {
        let [first, last] = range.usual;
        let turn = if direction == range.first {
            first.unwrap_or(range.from)
        } else if direction == range.last {
            last.unwrap_or(range.to)
        } else {
            direction.angle()
        };
        let top = (self.top - range.up.at(direction)).min(self.top_floor);
        let bottom = (self.bottom - range.down.at(direction)).min(self.bottom_floor);
        // As near to the glue plane as the margin allows.
        let AxisRange { least, most } = range.axis;
        let lowest = least.max(margin - bottom);
        let highest = most.min(top - margin);
        Lie {
            turn,
            margin,
            axis_height: if least == most {
                least
            } else if lowest > highest {
                f64::midpoint(lowest, highest)
            } else {
                0.0_f64.max(lowest).min(highest)
            },
            width: range.width.at(direction),
        }
    }
}

/// What a margin may lack and still count, mm, but for a thousandth that is left to rounding: where no
/// margin is left over but by this, only there room runs out.
const FORGIVEN: f64 = SLACK * 0.999;

/// Margins nearer than this are the same, mm.
pub(super) const SLACK: f64 = Length::SLACK.in_millimetres();

/// The turns within a range at which the least of some margins can be greatest: crests of one, and
/// where two of them meet.
fn peaks(margins: &[Wave], range: &Range) -> impl Iterator<Item = Direction> {
    margins.iter().enumerate().flat_map(|(k, one)| {
        let meetings = margins[k + 1..]
            .iter()
            .filter_map(|other| (*one - *other).zeros());
        meetings
            .flatten()
            .chain(one.crest())
            .filter(|turn| range.holds(*turn))
    })
}

fn least(margins: &[Wave], turn: Direction) -> f64 {
    margins
        .iter()
        .map(|margin| margin.at(turn))
        .fold(f64::INFINITY, lesser)
}
