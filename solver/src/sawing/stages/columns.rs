//! Ways to crosscut a plank, and ways to rip a section.

use super::super::data::SawingData;

/// A way to crosscut a kind of plank.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Crosscut {
    /// The kind of plank.
    pub(super) plank: usize,
    /// Sections of each length it can be cut into, in the order of the strips of its board.
    pub(super) sections: Vec<u64>,
}

impl Crosscut {
    /// What a plank crosscut like this adds to what is made small.
    pub(super) fn weight(&self, data: &SawingData) -> i64 {
        let board = &data.boards()[self.plank];
        let sections = board.strips.iter().zip(&self.sections);
        let taken: i64 = sections
            .map(|(strip, &count)| strip.length * count.cast_signed())
            .sum();
        let free = (board.length - data.draft().crosscut_kerf - taken).max(0);
        data.weight(self.plank) - data.offcut_worth(free)
    }
}

/// A way to rip a section.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Rip {
    /// The kind of plank the section is of.
    pub(super) plank: usize,
    /// Its length, as a strip of the board of that plank.
    pub(super) strip: usize,
    /// Kinds of blank with how many of each.
    pub(super) blanks: Vec<(usize, u64)>,
}

/// Ways that are known.
#[derive(Clone, Debug, Default)]
pub(super) struct Ways {
    pub(super) crosscuts: Vec<Crosscut>,
    pub(super) rips: Vec<Rip>,
}
