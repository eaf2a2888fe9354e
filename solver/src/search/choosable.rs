//! What may be chosen, before it is laid.

use super::room::{Pitches, Room};
use crate::quantity::lesser;

/// A pair of slats with a cutter set, and the most pencils it gives.
#[derive(Debug, Clone, Copy)]
pub(super) struct Choosable {
    pub(super) top: usize,
    pub(super) bottom: usize,
    /// The place of the set; the number of sets for a new one.
    pub(super) set: usize,
    pub(super) most: u32,
    /// Pencils in the length of the slats.
    pub(super) lengths: u32,
    /// Narrowest width at which the pencil fits, mm.
    pub(super) narrowest: f64,
    /// Widest margin upright, mm.
    pub(super) upright: f64,
    /// Wood of a sandwich over the good pencils of one groove row, times a gross, mm³.
    pub(super) wood: f64,
    pub(super) money: f64,
    /// The same price over the pencils of one row, with none of them thrown out.
    pub(super) money_good: f64,
    pub(super) fee: f64,
}

impl Choosable {
    pub(super) const fn pair(&self) -> (usize, usize) {
        (self.top, self.bottom)
    }

    pub(super) fn wood_with(&self, across: u32) -> f64 {
        self.wood / f64::from(across)
    }

    pub(super) fn money_with(&self, across: u32) -> f64 {
        self.money / f64::from(across) + self.fee
    }

    /// With so many good pencils side by side.
    pub(super) fn money_for_good(&self, good: f64) -> f64 {
        self.money_good / good + self.fee
    }

    /// No margin with so many pencils is wider than this, mm.
    pub(super) fn bound(&self, room: &Room, across: u32, pitches: Pitches) -> f64 {
        lesser(
            room.bound_across(self.narrowest, across, pitches),
            self.upright,
        )
    }
}
