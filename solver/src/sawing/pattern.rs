//! How one plank is sawn: sections crosscut from it, blanks ripped from each section.

use super::data::SawingData;

/// A section: blanks of one length side by side.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Section {
    /// Kinds of blank with how many of each, by their number.
    pub blanks: Vec<(usize, u64)>,
}

/// How a plank of one kind is sawn.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CutPattern {
    /// The kind of plank.
    pub plank: usize,
    /// Sections with how many of each, in order.
    pub sections: Vec<(Section, u64)>,
}

impl CutPattern {
    /// From sections in any order, some of them alike or empty.
    pub(super) fn of(plank: usize, sections: Vec<(Section, u64)>) -> Self {
        let mut pattern = Self {
            plank,
            sections: Vec::new(),
        };
        for (section, count) in sections {
            pattern.add(section, count);
        }
        pattern.sections.sort();
        pattern
    }

    fn add(&mut self, section: Section, count: u64) {
        if count == 0 || section.blanks.is_empty() {
            return;
        }
        match self
            .sections
            .iter_mut()
            .find(|(known, _)| *known == section)
        {
            Some((_, known)) => *known += count,
            None => self.sections.push((section, count)),
        }
    }

    /// How many of each kind of blank come of it, in the order of the blanks.
    #[must_use]
    pub fn made(&self, blanks: usize) -> Vec<u64> {
        let mut made = vec![0; blanks];
        for (section, count) in &self.sections {
            for &(blank, pieces) in &section.blanks {
                made[blank] += count * pieces;
            }
        }
        made
    }

    /// Length that is left at the end of the plank when all sections are cut off, before the end
    /// trim; 0 when the last cut runs out of the wood. Micrometres.
    #[must_use]
    pub fn offcut(&self, data: &SawingData) -> i64 {
        let board = &data.boards()[self.plank];
        let taken: i64 = self
            .sections
            .iter()
            .map(|(section, count)| section.taken(data) * count.cast_signed())
            .sum();
        (board.length - data.draft().crosscut_kerf - taken).max(0)
    }

    /// What a plank sawn like this adds to what is made small.
    #[must_use]
    pub fn weight(&self, data: &SawingData) -> i64 {
        data.weight(self.plank) - data.offcut_worth(self.offcut(data))
    }
}

impl Section {
    /// Length of the blanks and a kerf.
    fn taken(&self, data: &SawingData) -> i64 {
        self.blanks.first().map_or(0, |&(blank, _)| {
            data.blanks()[blank].size.length + data.draft().crosscut_kerf
        })
    }
}
