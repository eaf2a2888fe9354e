//! How large the sums of errors are that a sandwich is thrown from.

use super::normal::Normal;
use crate::accuracy::{Accuracy, Term};

/// Standard deviations of the sums in which the errors enter, mm.
///
/// Errors that only ever enter as one sum are thrown as that sum; a sum of independent normal
/// numbers is normal with the sum of the variances. Half the sum and the difference of two
/// independent numbers of one deviation σ are independent of each other, with the deviations
/// σ/√2 and √2·σ, so
///
/// - (g_b + g_t)/2 and g_t − g_b, (f_b + f_t)/2 and f_t − f_b, (p_t − p_b)/2 and p_t + p_b are
///   pairs of independent numbers;
/// - t + (p_t − p_b)/2 − Y is one number, for its parts enter nothing else;
/// - a = (g_b + g_t)/2 − s is one number for an inner pencil. An outer pencil asks for s as well:
///   given a, it is normal with the mean −a·σ_s²/σ_a² and the variance σ_s²·(σ_g²/2)/σ_a².
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Scale {
    /// a = (g_b + g_t)/2 − s.
    pub(super) off_cutter: f64,
    /// What one standard deviation of a says of s.
    pub(super) cutter_of_off: f64,
    /// What is left of s when a is known.
    pub(super) cutter_left: f64,
    /// g_t − g_b.
    pub(super) grooves_apart: f64,
    /// d.
    pub(super) lead: f64,
    /// (f_b + f_t)/2.
    pub(super) heads_middle: f64,
    /// f_t − f_b.
    pub(super) heads_apart: f64,
    /// h.
    pub(super) shift: f64,
    /// X.
    pub(super) shaping: f64,
    /// s.
    pub(super) cutter: f64,
    /// e_y = t + (p_t − p_b)/2 − Y, with its mean.
    pub(super) upright: Normal,
    /// p_t + p_b.
    pub(super) depths: f64,
    /// w.
    pub(super) width: f64,
}

impl Scale {
    pub(super) fn new(accuracy: &Accuracy) -> Self {
        let [
            groove,
            cutter,
            lead,
            head,
            depth,
            width,
            thickness,
            shift,
            across,
            up,
        ] = Term::ALL.map(|term| accuracy.deviation(term).in_millimetres());
        let root = std::f64::consts::SQRT_2;
        let off_cutter = norm([groove / root, cutter, 0.0]);
        // Without errors nothing is known of nothing.
        let share = if off_cutter > 0.0 {
            cutter / off_cutter
        } else {
            0.0
        };
        let offset = accuracy.offsets().bottom_thickness.in_millimetres();
        Self {
            off_cutter,
            cutter_of_off: -share * cutter,
            cutter_left: share * groove / root,
            grooves_apart: groove * root,
            lead,
            heads_middle: head / root,
            heads_apart: head * root,
            shift,
            shaping: across,
            cutter,
            upright: Normal::new(offset, norm([thickness, depth / root, up])),
            depths: depth * root,
            width,
        }
    }

    /// e_x of any pencil.
    pub(super) fn across(&self) -> Normal {
        let without = self.across_without_shift();
        Normal::new(0.0, norm([without.deviation, self.shift / 2.0, 0.0]))
    }

    /// e_x without its part h/2 of the shift of the slats.
    pub(super) fn across_without_shift(&self) -> Normal {
        let parts = [self.off_cutter, self.heads_middle, self.shaping];
        Normal::new(0.0, norm(parts))
    }

    /// x_t − x_b without the shift h of the slats.
    pub(super) fn apart_without_shift(&self) -> Normal {
        Normal::new(0.0, norm([self.grooves_apart, self.heads_apart, 0.0]))
    }
}

/// The deviation of a sum of independent numbers.
pub(super) fn norm(parts: [f64; 3]) -> f64 {
    let [one, two, three] = parts;
    (one * one + two * two + three * three).sqrt()
}
