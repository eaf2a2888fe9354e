//! How many pencils lie in a tin, in straight and in staggered rows.

use crate::barrel::Barrel;
use crate::outline::Outline;
use crate::quantity::{Angle, Direction, Length, greater, lesser};

/// The inner sizes of a tin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tin {
    /// Across the pencils.
    pub width: Length,
    /// Upright.
    pub height: Length,
    /// Along the pencils.
    pub length: Length,
}

/// Rows of pencils in a tin, all turned alike; as many as are found, not the most there can be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TinRows {
    /// Pencils in all rows.
    pub pencils: u32,
    /// Rows, one on the other.
    pub rows: u32,
    /// Pencils in the lowest row.
    pub in_row: u32,
    /// From a pencil to the next in its row.
    pub pitch: Length,
    /// From a row to the next.
    pub row_pitch: Length,
    /// The turn of the pencils.
    pub turn: Angle,
}

impl Tin {
    /// Pencils in straight rows, each on the one below it, and in staggered rows, each half a pitch
    /// beside the one below it. The barrel is laid in each of its usual ways, and the way that takes
    /// most is kept. Where the tin is shorter than the pencil, none lies in it.
    pub(super) fn rows(&self, barrel: &Barrel) -> [TinRows; 2] {
        let mut best: [Option<TinRows>; 2] = [None, None];
        for turn in barrel.usual_turns() {
            let pair = Pair(barrel.finished(turn));
            for (best, stagger) in best.iter_mut().zip([0.0, 0.5]) {
                let mut rows = self.rows_of(&pair, stagger, turn);
                if !barrel.length().fits_in(self.length) {
                    rows.pencils = 0;
                }
                if best.is_none_or(|best| rows.pencils > best.pencils) {
                    *best = Some(rows);
                }
            }
        }
        best.map(|best| {
            best.unwrap_or_else(|| {
                let pair = Pair(barrel.finished(Angle::ZERO));
                TinRows {
                    pencils: 0,
                    ..self.rows_of(&pair, 0.0, Angle::ZERO)
                }
            })
        })
    }

    fn rows_of(&self, pair: &Pair, stagger: f64, turn: Angle) -> TinRows {
        let extents = pair.0.extents();
        let pitch = pair.beside();
        let row_pitch = pair.above(pitch, stagger);
        let in_row_of = |room: Length| match extents.width().fits_in(room) {
            true => 1 + (room - extents.width()).whole_steps(pitch),
            false => 0,
        };
        let in_row = in_row_of(self.width);
        let in_next = in_row_of(self.width - pitch * stagger);
        let rows = match extents.height().fits_in(self.height) {
            true => 1 + (self.height - extents.height()).whole_steps(row_pitch),
            false => 0,
        };
        TinRows {
            pencils: rows.div_ceil(2) * in_row + rows / 2 * in_next,
            rows,
            in_row,
            pitch,
            row_pitch,
            turn,
        }
    }
}

/// Two outlines of one shape and turn that lie side by side, by the hull of what they are.
///
/// They just touch where one lies beside the other by a point of the edge of the difference body,
/// whose support is the width w(d) = h(d) + h(−d). Its edge lies nearest in a direction u where
/// w(d)/(u·d) is least (R. Schneider, *Convex Bodies: The Brunn–Minkowski Theory*, section 1.7, from
/// memory).
struct Pair(Outline);

/// Steps of a search that each leave 0.62 of what is searched: 70 leave less than a rounding error.
const STEPS: u32 = 70;

impl Pair {
    fn width(&self, direction: Direction) -> f64 {
        (self.0.support(direction) + self.0.support(-direction)).in_millimetres()
    }

    /// From one to the next at the same height: the longest level chord of the hull.
    fn beside(&self) -> Length {
        Length::millimetres(least(|degrees| {
            let direction = Angle::degrees(degrees).direction();
            self.width(direction) / direction.x
        }))
    }

    /// From one row to the next, which lies a share of the pitch beside it: as high as the highest that
    /// keeps one clear of all those below.
    fn above(&self, pitch: Length, stagger: f64) -> Length {
        let pitch = pitch.in_millimetres();
        let widest = self.width(Direction::RIGHT);
        let mut height = 0.0;
        for k in [-2.0, -1.0, 0.0, 1.0, 2.0] {
            let across = (k + stagger) * pitch;
            if across.abs() < widest {
                let clear = least(|degrees| {
                    let direction = Angle::degrees(degrees + 90.0).direction();
                    (self.width(direction) - direction.x * across) / direction.y
                });
                height = greater(height, clear);
            }
        }
        Length::millimetres(height)
    }
}

/// The least value between −90° and 90° of a function that falls and then rises, by golden sections
/// (J. Kiefer, “Sequential minimax search for a maximum”, Proceedings of the American Mathematical
/// Society 4, 1953). Both that are asked for are convex in the tangent of the angle.
fn least(value: impl Fn(f64) -> f64) -> f64 {
    let share = (5.0_f64.sqrt() - 1.0) / 2.0;
    let (mut from, mut to) = (-89.999, 89.999);
    let mut inner = [to - share * (to - from), from + share * (to - from)];
    let mut values = inner.map(&value);
    // The ends of usual outlines lie at right angles, which are exact.
    let mut least = value(0.0);
    for _ in 0..STEPS {
        least = lesser(least, lesser(values[0], values[1]));
        if values[0] <= values[1] {
            to = inner[1];
            inner = [to - share * (to - from), inner[0]];
            values = [value(inner[0]), values[0]];
        } else {
            from = inner[0];
            inner = [inner[1], from + share * (to - from)];
            values = [values[1], value(inner[1])];
        }
    }
    least
}
