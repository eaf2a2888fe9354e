//! Errors of the machines, and how many good pencils they leave.
//!
//! Cross-section axes: x across the slat from the datum edge, y up, glue plane at y = 0. All
//! errors are independent and normal, in mm, with mean 0 but where a mean was measured.
//!
//! ```text
//! each          g     place of a groove of a slat, x            one for each groove of each slat
//!               s     place of a shaping cutter, x              one for each pencil
//!               d     lead diameter, with its mean
//! a slat        f     groove head against the fence, x          one for the top, one for the bottom
//!               p     groove depth, deeper above 0              one for the top, one for the bottom
//!               w     slat width, with its mean                 one for the top, one for the bottom
//!               t     thickness of the bottom slat over nominal, with its mean
//! a sandwich    h     shift of the top slat on the bottom slat, x
//!               X, Y  shaping head sideways and up
//! ```
//!
//! The grooves of a pencil lie at x_b = g_b + f_b in the bottom slat and x_t = g_t + f_t + h in the
//! top slat, as seen from their place on the bottom slat, whose datum edge runs on the fence. The
//! lead lies in the middle of its two half grooves, the pencil where the shaping head cuts it:
//!
//! - e_x = (x_b + x_t)/2 − (s + X);
//! - e_y = t + (p_t − p_b)/2 − Y. The sandwich lies on the outer face of the bottom slat, so a
//!   thicker bottom slat lifts the glue plane, and the lead with it, towards a head that stays
//!   where it is. A deeper top groove raises the roof of the lead's place by p_t, a deeper bottom
//!   groove lowers its floor by p_b; the middle moves by half of each. A higher head cuts a
//!   higher pencil, in which the lead lies lower.
//!
//! A pencil is good where none of these [`Fault`]s is found:
//!
//! 1. *Eccentric*: √(e_x² + e_y²) is more than the eccentricity limit.
//! 2. *Thin wall*: somewhere the bare outline is nearer to the displaced lead axis than the groove
//!    radius ρ and the least wall.
//! 3. *Tight groove*: the half grooves do not let the lead in. Shifted by u = x_t − x_b, the lower
//!    half disc ends at ρ − |u|/2 from the middle on one side and the upper one on the other, so
//!    the largest circle between them has the diameter 2ρ − |u|; upright, floor and roof are
//!    2ρ + p_t + p_b apart. The lead must pass each: d ≤ 2ρ − |u| and d ≤ 2ρ + p_t + p_b.
//!    Shallow by v = −(p_t + p_b) > 0 and shifted at once, the largest circle is 2ρ − √(u² + v²);
//!    the two rules each by itself let through a little more.
//! 4. *Incomplete*: an outer pencil reaches over an edge of either slat. With the reach l to the
//!    left and r to the right, the first pencil with its place at c₁ needs c₁ + s + X − l ≥ 0 and
//!    ≥ h, the last one c_n + s + X + r ≤ W_b and ≤ W_t + h, with the actual widths W of the
//!    slats at the groove head. A single pencil is both.
//!
//! The chance of one fault at one pencil is an integral ([`Prospect`]), and where the wall follows
//! from the eccentricity so is the chance of a good one, and with it the expected number of good
//! ones. Errors that are common to the sandwich make its pencils fail together, so how the number of
//! good pencils of a sandwich is distributed is found by throwing dice ([`Trial::simulate`]), which come out the same on every machine. Where a
//! slat length gives several pencils, each cross-section counts once.

mod chance;
mod choice;
mod generator;
mod goodness;
mod normal;
mod paired;
mod price;
mod prospect;
mod scale;
mod share;
mod table;
mod tally;
mod throw;
mod trial;
mod wall;
mod ziggurat;

pub(crate) use goodness::{Edges, Goodness};

pub use choice::{Choice, Choices, Varied, choices};
pub use price::{gross_price, worth_of_more};
pub use prospect::{FaceChance, PositionChance, Prospect};
pub use share::Shares;
pub use tally::{Estimate, Fault, Tally};
pub use trial::{BLOCK, Trial};

#[cfg(test)]
mod tests;
