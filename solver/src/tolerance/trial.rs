//! A layout made with an accuracy, over and over.

use super::scale::Scale;
use super::tally::{Fault, Faults, Tally};
use super::throw::Throw;
use super::wall::WallRule;
use super::ziggurat::Ziggurat;
use crate::accuracy::{Accuracy, Offsets, Term};
use crate::layout::{Layout, Setup};
use crate::quantity::{Length, Point};
use std::ops::Range;

/// Sandwiches of one block, the piece of work that is shared out and counted together.
pub const BLOCK: u64 = 1024;

/// Pencils of the first sandwiches whose lead centres are kept.
const CENTRES: usize = 400;

/// A layout made with an accuracy.
///
/// The slats have the nominal sizes that they have at the groove head, with the measured offsets of
/// the accuracy; the grooves lie where the layout puts them, counting on the guaranteed width.
#[derive(Debug, Clone, PartialEq)]
pub struct Trial {
    pub(super) accuracy: Accuracy,
    pub(super) row: Row,
    pub(super) scale: Scale,
    pub(super) wall: WallRule,
    /// Reach of the bare outline from the lead axis to the left and to the right, mm.
    pub(super) left: f64,
    pub(super) right: f64,
    /// Mean widths at the groove head, mm.
    pub(super) bottom_width: f64,
    pub(super) top_width: f64,
    /// Mean diameter of the lead, mm.
    pub(super) lead: f64,
    /// Diameter of the whole groove, mm.
    pub(super) groove: f64,
    /// The eccentricity limit, mm.
    pub(super) limit: f64,
}

/// Where the pencils lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Row {
    pub(super) count: usize,
    /// Place of the first pencil from the datum edge, mm.
    pub(super) first: f64,
    /// Distance to the next, mm.
    pub(super) pitch: f64,
}

impl Row {
    pub(super) fn last(&self) -> f64 {
        self.first + self.pitch * self.count.saturating_sub(1) as f64
    }
}

impl Trial {
    /// A layout of a setup, made with an accuracy.
    ///
    /// ```
    /// use solver::tolerance::Trial;
    /// use solver::{AccuracyDraft, BarrelDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, lay_out};
    /// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
    /// let slat = SlatDraft::new("74 × 5").check().unwrap();
    /// let rules = RulesDraft::new().check().unwrap();
    /// let turn = barrel.turn(Seam::ThroughFaces);
    /// let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
    /// let accuracy = AccuracyDraft::new("Line 1").check().unwrap();
    /// let trial = Trial::new(&setup, &lay_out(&setup), &accuracy);
    /// // 20 480 sandwiches of ten: nearly all are good, and the error is told.
    /// let good = trial.simulate(1, 0..20, &mut |_| true).good();
    /// assert!(good.mean > 9.9 && good.mean < 10.0 && good.error < 0.01);
    /// ```
    #[must_use]
    pub fn new(setup: &Setup<'_>, layout: &Layout, accuracy: &Accuracy) -> Self {
        let groove = layout.groove_shape().radius();
        let extents = layout.extents();
        let Offsets {
            top_width,
            bottom_width,
            ..
        } = accuracy.offsets();
        let first = layout.grooves().first();
        Self {
            row: Row {
                count: layout.grooves().len(),
                first: first.map_or(0.0, |groove| groove.centre.in_millimetres()),
                pitch: layout.pitch().in_millimetres(),
            },
            scale: Scale::new(accuracy),
            accuracy: accuracy.clone(),
            wall: WallRule::new(layout.bare(), groove, setup.rules.wall),
            left: extents.left.in_millimetres(),
            right: extents.right.in_millimetres(),
            bottom_width: (setup.bottom.grooved_width() + bottom_width).in_millimetres(),
            top_width: (setup.top.grooved_width() + top_width).in_millimetres(),
            lead: setup.barrel.lead_diameter().in_millimetres(),
            groove: (groove * 2.0).in_millimetres(),
            limit: setup.rules.eccentricity.in_millimetres(),
        }
    }

    /// Pencils side by side in a sandwich.
    #[must_use]
    pub const fn across(&self) -> usize {
        self.row.count
    }

    /// The same layout made with one error halved.
    pub(super) fn halved(&self, term: Term) -> Self {
        let accuracy = self.accuracy.clone().halved(term);
        Self {
            scale: Scale::new(&accuracy),
            accuracy,
            ..self.clone()
        }
    }

    /// Makes sandwiches by the dice of a seed: those of the blocks in a range.
    ///
    /// Each sandwich has random numbers of its own, from the seed and its number, and counts are
    /// whole numbers. So the result does not depend on how the blocks are shared among workers,
    /// nor on the order in which their tallies are [merged](Tally::merge). After each block,
    /// `each` hears the tally so far; the work ends when it answers `false`.
    ///
    /// Where no pencil fits across, every sandwich has none.
    pub fn simulate(
        &self,
        seed: u64,
        blocks: Range<u64>,
        each: &mut dyn FnMut(&Tally) -> bool,
    ) -> Tally {
        let ziggurat = Ziggurat::new();
        let mut throw = Throw::new(self.row.count);
        let mut tally = Tally::new(self.row.count);
        let mut faults = vec![Faults::NONE; self.row.count];
        for block in blocks {
            let first = block.wrapping_mul(BLOCK);
            for step in 0..BLOCK {
                throw.again(&ziggurat, seed, first.wrapping_add(step));
                self.judge(&throw, &mut faults);
                tally.count(&faults);
                // Whole sandwiches of the first block only, so that the order of merging is free.
                let before = step as usize * self.row.count;
                if block == 0 && before < CENTRES {
                    let centres = (0..self.row.count).map(|k| self.centre(&throw, k));
                    tally.centres.extend(centres.take(CENTRES - before));
                }
            }
            if !each(&tally) {
                break;
            }
        }
        tally
    }

    /// Where the lead of a pencil lies in it.
    fn centre(&self, throw: &Throw, k: usize) -> Point {
        let (scale, common) = (&self.scale, &throw.common);
        let own = throw.pencils.get(k).map_or(0.0, |own| own.off_cutter);
        Point {
            x: own * scale.off_cutter
                + common.heads_middle * scale.heads_middle
                + common.shift * scale.shift / 2.0
                - common.shaping * scale.shaping,
            y: scale.upright.mean + common.upright * scale.upright.deviation,
        }
    }

    /// The faults of each pencil of a sandwich; `faults` holds one for each.
    ///
    /// A throw may be of more pencils than the row has: the first ones count.
    pub(super) fn judge(&self, throw: &Throw, faults: &mut [Faults]) {
        let (scale, common) = (&self.scale, &throw.common);
        let slack = Length::SLACK.in_millimetres();
        let shift = common.shift * scale.shift;
        let shaping = common.shaping * scale.shaping;
        let across = common.heads_middle * scale.heads_middle + shift / 2.0 - shaping;
        let apart = common.heads_apart * scale.heads_apart + shift;
        let y = scale.upright.mean + common.upright * scale.upright.deviation;
        let limit = self.limit + slack;
        let square_left = limit * limit - y * y;
        let sideways = self.groove - self.lead + slack;
        let upright = sideways + common.depths * scale.depths;
        let last = self.row.count.saturating_sub(1);

        for ((k, own), found) in throw.pencils.iter().enumerate().zip(faults.iter_mut()) {
            let x = own.off_cutter * scale.off_cutter + across;
            let lead = own.lead * scale.lead;
            let u = own.grooves_apart * scale.grooves_apart + apart;
            let mut faults = Faults::NONE;
            faults.set(Fault::Eccentric, x * x > square_left);
            faults.set(Fault::ThinWall, !self.wall.holds(Point { x, y }));
            faults.set(
                Fault::TightGroove,
                lead + u.abs() > sideways || lead > upright,
            );
            if k == 0 || k == last {
                let left = if k == 0 {
                    common.first_cutter
                } else {
                    common.last_cutter
                };
                let cutter =
                    own.off_cutter * scale.cutter_of_off + left * scale.cutter_left + shaping;
                let at_datum = self.row.first + cutter - self.left + slack;
                let at_far = self.row.last() + cutter + self.right - slack;
                let over_datum = k == 0 && (at_datum < 0.0 || at_datum < shift);
                let over_far = k == last
                    && (at_far > self.bottom_width + common.bottom_width * scale.width
                        || at_far > self.top_width + common.top_width * scale.width + shift);
                faults.set(Fault::Incomplete, over_datum || over_far);
            }
            *found = faults;
        }
    }
}
