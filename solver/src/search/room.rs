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
//! `W − 2e − n·w − (n − 1)·l` is best shared evenly among the two edges and the n − 1 partings; a
//! cutter set with a pitch of its own leaves `p − w − l` at each parting and
//! `(W − (n − 1)·p − w)/2 − e` at each edge. Sinusoids all.
//!
//! The least of some sinusoids over a range is greatest at an end of the range, at a crest of one
//! of them or where two of them meet: anywhere else all that are least rise to the same side. Each of
//! these turns is the point of a circle on a line, so all are found, none is sampled past.

use super::heights::AxisRange;
use super::turns::Range;
use super::wave::Wave;
use crate::quantity::{Angle, Direction, Length, greater, lesser};
use crate::rules::Rules;
use crate::slat::Slat;

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
            let upright = self.upright(range);
            let mut look = |turn: Direction| {
                let width = range.width.at(turn);
                if best.is_none_or(|best| width < best) && least(&upright, turn) >= -SLACK {
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
    pub(super) fn most_across(&self, width: f64, pitch: Option<f64>) -> u32 {
        let room = Length::millimetres(self.across - width);
        let closest = width + self.land;
        if !Length::ZERO.fits_in(room) {
            return 0;
        }
        let single = || 1;
        match pitch {
            Some(pitch) if !Length::millimetres(closest).fits_in(Length::millimetres(pitch)) => {
                single()
            }
            _ => room.whole_steps(Length::millimetres(pitch.unwrap_or(closest))) + 1,
        }
    }

    /// Nothing across can be better than this with so many pencils, mm.
    pub(super) fn bound_across(&self, width: f64, count: u32, pitch: Option<f64>) -> f64 {
        let count = f64::from(count);
        match pitch {
            None => (self.across - count * width - (count - 1.0) * self.land) / (count + 1.0),
            Some(pitch) => {
                let edge = (self.across - (count - 1.0) * pitch - width) / 2.0;
                if count > 1.0 {
                    lesser(edge, pitch - width - self.land)
                } else {
                    edge
                }
            }
        }
    }

    /// Where so many pencils lie with the widest margin; nothing where none is as wide as `floor`,
    /// mm. A higher floor leaves less to look at.
    pub(super) fn best(
        &self,
        ranges: &[Range],
        count: u32,
        pitch: Option<f64>,
        floor: f64,
    ) -> Option<Lie> {
        let number = f64::from(count);
        let bound = |range: &Range| {
            let across = self.bound_across(range.least.width, count, pitch);
            lesser(across, self.bound_upright(range))
        };
        let within = ranges.iter().map(|range| (bound(range), range));
        // What ties with the floor is left to the caller.
        let within = within.filter(|(bound, _)| *bound >= floor - SLACK);
        self.widest(within, |range| {
            let level = Wave::level;
            match pitch {
                None => {
                    let spare =
                        level(self.across - (number - 1.0) * self.land) - range.width * number;
                    ([spare * (1.0 / (number + 1.0)); 2], 1)
                }
                Some(pitch) => {
                    let edge = (level(self.across - (number - 1.0) * pitch) - range.width) * 0.5;
                    let parting = level(pitch - self.land) - range.width;
                    ([edge, parting], if count > 1 { 2 } else { 1 })
                }
            }
        })
    }

    /// The turn at which the least margin is widest, with margins across that depend on the range.
    /// Each range comes with a margin that it does not exceed.
    fn widest<'a>(
        &self,
        ranges: impl Iterator<Item = (f64, &'a Range)>,
        across: impl Fn(&Range) -> ([Wave; 2], usize),
    ) -> Option<Lie> {
        let mut best: Option<(f64, Direction, &Range)> = None;
        let mut best_usual = None;
        for (bound, range) in ranges {
            let beaten = best.is_some_and(|(widest, ..)| bound <= widest + SLACK);
            if beaten && !range.usual.contains(&true) {
                continue;
            }
            let upright = self.upright(range);
            let (across, many) = across(range);
            let mut margins = [Wave::level(0.0); 8];
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
                if usual {
                    look(&mut best_usual, turn);
                }
            }
            peaks(margins, range).for_each(|turn| look(&mut best, turn));
        }
        // Of turns that are as good, a usual one is taken, otherwise the smallest.
        let as_good = |usual: &(f64, Direction, &Range)| {
            best.is_none_or(|(widest, ..)| usual.0 + SLACK >= widest)
        };
        best_usual
            .filter(as_good)
            .or(best)
            .map(|(margin, direction, range)| self.lie(margin, direction, range))
    }

    fn lie(&self, margin: f64, direction: Direction, range: &Range) -> Lie {
        let turn = if direction == range.first {
            range.from
        } else if direction == range.last {
            range.to
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
