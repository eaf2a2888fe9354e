//! A pattern as a column of the master problem.

use super::data::SawingData;
use super::needs::Needs;
use super::pattern::CutPattern;

/// A pattern, what it adds, and what comes of it that is of use.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Column {
    /// How the plank is sawn.
    pub(super) pattern: CutPattern,
    /// What a plank sawn like this adds to what is made small.
    pub(super) weight: i64,
    /// Kinds of blank with how many of each, no more than are of use.
    pub(super) made: Vec<(usize, u64)>,
}

impl Column {
    /// The column of a pattern, for what is needed; nothing where none of it is of use.
    pub(super) fn of(data: &SawingData, needs: &Needs, pattern: CutPattern) -> Option<Self> {
        if needs.is_out_of(pattern.plank) {
            return None;
        }
        let made: Vec<(usize, u64)> = pattern
            .made(needs.wanted.len())
            .into_iter()
            .enumerate()
            .map(|(blank, made)| (blank, made.min(needs.wanted[blank] + needs.over[blank])))
            .filter(|(_, made)| *made > 0)
            .collect();
        let weight = pattern.weight(data);
        (!made.is_empty()).then_some(Self {
            pattern,
            weight,
            made,
        })
    }
}
