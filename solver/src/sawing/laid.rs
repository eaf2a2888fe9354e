//! A pattern laid on its plank: how much of the wood each cut takes, and what is left.
//!
//! Along the plank, between its end trims, lie the sections with a crosscut after each; across a
//! section, between the edge trims, lie its blanks with a rip cut after each. A cut after the last
//! piece is made only where there is wood left to part from it, and where that is less than a kerf,
//! the cut takes all of it: it runs out of the wood. So for n pieces of sizes s, a kerf k and room S
//!
//! ```text
//! cuts = min(n·k, S − Σ s)        left = S − Σ s − cuts
//! ```
//!
//! which needs Σ s + (n − 1)·k ≤ S. The trims include cuts of their own. (Derived here from the two
//! stages of sawing; that the last cut may run out of the wood is *common practice, no source*.)

use super::data::{Dimensions, PlankStock, SawingData};
use super::pattern::{CutPattern, Section};
use crate::sequence::in_order;

/// A plank with what it is sawn into. All sizes are micrometres.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LaidPlank {
    plank: usize,
    stock: PlankStock,
    sections: Vec<LaidSection>,
    crosscuts: Share,
    crosscut_kerf: i64,
    rip_kerf: i64,
    keeps_offcut: bool,
}

/// Sections of a plank that are ripped alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LaidSection {
    count: u64,
    length: i64,
    strips: Vec<LaidStrips>,
    rips: Share,
}

/// Blanks of one kind side by side in a section.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LaidStrips {
    /// Which blank.
    pub blank: usize,
    /// How many of them.
    pub pieces: u64,
    /// Its size.
    pub size: Dimensions,
}

/// What pieces leave of the room they are cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Share {
    /// Taken by the cuts.
    cuts: i64,
    /// Left at the end.
    left: i64,
}

impl Share {
    /// For pieces with their numbers; nothing where they do not fit.
    fn of(pieces: impl Iterator<Item = (i64, u64)>, kerf: i64, room: i64) -> Option<Self> {
        let (mut taken, mut kerfs) = (0_i64, 0_i64);
        for (size, count) in pieces {
            let count = i64::try_from(count).ok()?;
            taken = taken.checked_add(size.checked_mul(count)?)?;
            kerfs = kerfs.checked_add(kerf.checked_mul(count)?)?;
        }
        let rest = room.checked_sub(taken)?;
        let fits = rest >= 0 && kerfs.checked_sub(kerf)? <= rest;
        let cuts = kerfs.min(rest);
        fits.then_some(Self {
            cuts,
            left: rest - cuts,
        })
    }
}

impl CutPattern {
    /// Lays the pattern on its plank: the longest sections first, and in each the thickest blanks
    /// first. Sections without blanks are left out.
    ///
    /// Nothing where the plank cannot be sawn like this: a number stands for no plank or no blank, a
    /// section holds blanks of different lengths, the plank is thinner than a blank is wide, or the
    /// pieces do not fit between the trims.
    ///
    /// ```
    /// use solver::sawing::{CutPattern, SawingDraft, Section};
    /// let data = SawingDraft::along(1_000, 4, &[(300, 5), (395, 1)]).check().unwrap();
    /// let section = |blank| Section { blanks: vec![(blank, 1)] };
    /// let pattern = |count| CutPattern { plank: 0, sections: vec![(section(0), count), (section(1), 1)] };
    /// // 395 + 2·300 + 2·4 is more than 1000.
    /// assert!(pattern(2).laid(&data).is_none());
    /// let laid = pattern(1).laid(&data).unwrap();
    /// assert_eq!(laid.sections()[0].length(), 395);
    /// assert_eq!((laid.crosscuts(), laid.offcut()), (8, 297));
    /// ```
    #[must_use]
    pub fn laid(&self, data: &SawingData) -> Option<LaidPlank> {
        let stock = *data.planks().get(self.plank)?;
        let draft = data.draft();
        let sections: Option<Vec<LaidSection>> = self
            .sections
            .iter()
            .filter(|(section, count)| *count > 0 && !section.is_empty())
            .map(|(section, count)| section.laid(*count, &stock, data))
            .collect();
        let sections = in_order(sections?, |one, other| other.length.cmp(&one.length));
        let pieces = sections
            .iter()
            .map(|section| (section.length, section.count));
        let room = stock.size.length - 2 * stock.end_trim;
        let crosscuts = Share::of(pieces, draft.crosscut_kerf, room)?;
        let shortest = draft.offcuts.map(|worth| worth.shortest);
        Some(LaidPlank {
            plank: self.plank,
            stock,
            sections,
            crosscuts,
            crosscut_kerf: draft.crosscut_kerf,
            rip_kerf: draft.rip_kerf,
            keeps_offcut: shortest.is_some_and(|shortest| crosscuts.left >= shortest),
        })
    }
}

impl Section {
    fn is_empty(&self) -> bool {
        self.blanks.iter().all(|(_, pieces)| *pieces == 0)
    }

    fn laid(&self, count: u64, stock: &PlankStock, data: &SawingData) -> Option<LaidSection> {
        let strips: Option<Vec<LaidStrips>> = self
            .blanks
            .iter()
            .filter(|(_, pieces)| *pieces > 0)
            .map(|&(blank, pieces)| {
                let size = data.blanks().get(blank)?.size;
                Some(LaidStrips {
                    blank,
                    pieces,
                    size,
                })
            })
            .collect();
        let strips = in_order(strips?, |one, other| {
            other.size.thickness.cmp(&one.size.thickness)
        });
        let length = strips.first()?.size.length;
        let fits = strips
            .iter()
            .all(|strip| strip.size.length == length && strip.size.width <= stock.size.thickness);
        let pieces = strips
            .iter()
            .map(|strip| (strip.size.thickness, strip.pieces));
        let room = stock.size.width - 2 * stock.edge_trim;
        let rips = Share::of(pieces, data.draft().rip_kerf, room)?;
        fits.then_some(LaidSection {
            count,
            length,
            strips,
            rips,
        })
    }
}

impl LaidPlank {
    /// The kind of plank.
    #[must_use]
    pub const fn plank(&self) -> usize {
        self.plank
    }

    /// The plank as bought, with its trims.
    #[must_use]
    pub const fn stock(&self) -> &PlankStock {
        &self.stock
    }

    /// The sections, those ripped alike together, in the order in which they are cut off.
    #[must_use]
    pub fn sections(&self) -> &[LaidSection] {
        &self.sections
    }

    /// Length that the crosscuts take together.
    #[must_use]
    pub const fn crosscuts(&self) -> i64 {
        self.crosscuts.cuts
    }

    /// Length that one crosscut takes where it does not run out of the wood.
    #[must_use]
    pub const fn crosscut_kerf(&self) -> i64 {
        self.crosscut_kerf
    }

    /// Width that one rip cut takes where it does not run out of the wood.
    #[must_use]
    pub const fn rip_kerf(&self) -> i64 {
        self.rip_kerf
    }

    /// Length left before the end trim; 0 when the last cut runs out of the wood.
    #[must_use]
    pub const fn offcut(&self) -> i64 {
        self.crosscuts.left
    }

    /// Whether that is at least the shortest offcut that can be used again. Where nothing is said
    /// about offcuts, none can.
    #[must_use]
    pub const fn keeps_offcut(&self) -> bool {
        self.keeps_offcut
    }
}

impl LaidSection {
    /// How many of them lie in a plank, at least 1.
    #[must_use]
    pub const fn count(&self) -> u64 {
        self.count
    }

    /// Length along the plank.
    #[must_use]
    pub const fn length(&self) -> i64 {
        self.length
    }

    /// What one is ripped into, the thickest blanks first.
    #[must_use]
    pub fn strips(&self) -> &[LaidStrips] {
        &self.strips
    }

    /// Width that the rip cuts of one take together.
    #[must_use]
    pub const fn rips(&self) -> i64 {
        self.rips.cuts
    }

    /// Width left of one before the edge trim; 0 when the last cut runs out of the wood.
    #[must_use]
    pub const fn left(&self) -> i64 {
        self.rips.left
    }
}

#[cfg(test)]
mod tests {
    use super::super::data::SawingDraft;
    use super::*;

    /// Cuts and rest of so many pieces of 10 with a kerf of 3 in a room.
    #[track_caller]
    fn check(count: u64, room: i64, expected: Option<(i64, i64)>) {
        let share = Share::of([(10, count)].into_iter(), 3, room);
        assert_eq!(share.map(|share| (share.cuts, share.left)), expected);
    }

    // By hand, from the formula of the module.
    #[test]
    fn pieces_that_leave_nothing_take_one_cut_less() {
        check(2, 23, Some((3, 0)));
    }
    #[test]
    fn the_last_cut_runs_out_of_the_wood() {
        check(2, 25, Some((5, 0)));
    }
    #[test]
    fn the_last_cut_is_whole() {
        check(2, 26, Some((6, 0)));
    }
    #[test]
    fn more_than_a_kerf_is_left() {
        check(2, 27, Some((6, 1)));
    }
    #[test]
    fn a_hair_too_short() {
        check(2, 22, None);
    }
    #[test]
    fn nothing_cut_leaves_all() {
        check(0, 7, Some((0, 7)));
    }
    #[test]
    fn more_than_can_be_counted_does_not_fit() {
        check(u64::MAX, 22, None);
        check(u64::MAX / 4, 22, None);
    }

    #[test]
    fn what_lies_on_no_plank_is_refused() {
        let mut draft = SawingDraft::along(100, 0, &[(30, 1), (40, 1)]);
        draft.planks[0].size.thickness = 5;
        draft.blanks[1].size.width = 5;
        let data = draft.check().unwrap();
        let laid = |plank, blanks: &[(usize, u64)]| {
            let section = Section {
                blanks: blanks.to_vec(),
            };
            let sections = vec![(section, 1)];
            CutPattern { plank, sections }.laid(&data).is_some()
        };
        assert!(laid(0, &[(0, 1)]) && laid(0, &[(1, 1)]) && laid(0, &[]));
        assert!(!laid(1, &[(0, 1)]), "no such plank");
        assert!(!laid(0, &[(2, 1)]), "no such blank");
        assert!(!laid(0, &[(0, 1), (1, 1)]), "two lengths in a section");
        assert!(!laid(0, &[(0, 2)]), "too wide together");
    }
}
