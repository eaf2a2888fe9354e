//! The sections of one length.

use super::super::super::data::SawingData;
use super::super::super::needs::Needs;
use super::super::mixture::{Mixture, best_rips, fraction, whole_numbers};

/// The sections of one length.
pub(in crate::sawing::stages) struct Group {
    /// Their length, a kerf included.
    pub(in crate::sawing::stages) length: i64,
    /// Kinds of plank they may be of, with the strip of its board.
    pub(in crate::sawing::stages) places: Vec<(usize, usize)>,
    /// Numbers of sections that may just suffice, in the order of the places, those with least to
    /// spare first.
    pub(in crate::sawing::stages) candidates: Vec<Vec<u64>>,
}

/// Numbers of sections of one length that are worth less than this do not suffice.
pub(in crate::sawing::stages) struct Floor {
    /// Worth of a section, by place.
    pub(in crate::sawing::stages) worths: Vec<f64>,
    /// Of all.
    pub(in crate::sawing::stages) least: f64,
}

/// How far from the mixture numbers of sections are tried.
const REACH: u64 = 30;
/// Candidates of one length.
const CANDIDATES: usize = 400;
/// Parts of the whole that rounding may lose.
const ROUGH: f64 = 1e-10;

impl Floor {
    fn worth(&self, sections: &[u64]) -> f64 {
        let sections = self.worths.iter().zip(sections);
        sections.map(|(worth, &count)| worth * count as f64).sum()
    }

    pub(super) fn holds(&self, sections: &[u64]) -> bool {
        self.worth(sections) >= self.least * (1.0 - ROUGH)
    }
}

impl Group {
    /// One for each length of which blanks are wanted.
    pub(super) fn all(
        data: &SawingData,
        needs: &Needs,
        mixture: &Mixture,
        planks: &[u64],
    ) -> Vec<Self> {
        let mut lengths: Vec<i64> = (data.blanks().iter().zip(&needs.wanted))
            .filter(|(_, wanted)| **wanted > 0)
            .map(|(blank, _)| blank.size.length + data.draft().crosscut_kerf)
            .collect();
        lengths.sort_unstable();
        lengths.dedup();
        let lengths = lengths.into_iter();
        lengths
            .map(|length| Self::of(data, needs, mixture, planks, length))
            .collect()
    }

    fn of(
        data: &SawingData,
        needs: &Needs,
        mixture: &Mixture,
        planks: &[u64],
        length: i64,
    ) -> Self {
        let values = whole_numbers(&mixture.values);
        let most = needs.most();
        let mut floor = Floor {
            worths: Vec::new(),
            least: 0.0,
        };
        for (blank, order) in data.blanks().iter().enumerate() {
            if order.size.length + data.draft().crosscut_kerf == length {
                floor.least += fraction(values[blank]) * needs.wanted[blank] as f64;
            }
        }
        let mut places = Vec::new();
        let mut mixed = Vec::new();
        for (plank, board) in data.boards().iter().enumerate() {
            for (strip, lane) in board.strips.iter().enumerate() {
                if lane.length == length && planks[plank] > 0 {
                    let best = best_rips(board, lane, &values, &most, 1);
                    let worth = best.first().map_or(0, |filling| filling.value);
                    floor.worths.push(fraction(worth));
                    mixed.push(mixture.sections[plank][strip]);
                    places.push((plank, strip));
                }
            }
        }
        Self {
            length,
            places,
            candidates: candidates(&floor, &mixed),
        }
    }
}

/// Numbers of sections near those of the mixture that just suffice. Of the three kinds of plank that
/// have most, two are varied and the first makes up; the others are rounded.
fn candidates(floor: &Floor, mixed: &[f64]) -> Vec<Vec<u64>> {
    let mut order: Vec<usize> = (0..mixed.len())
        .filter(|&at| floor.worths[at] > 0.0)
        .collect();
    order.sort_by(|&one, &other| mixed[other].total_cmp(&mixed[one]));
    let Some((&last, varied)) = order.split_first() else {
        return Vec::new();
    };
    let base: Vec<u64> = mixed.iter().map(|mixed| mixed.round() as u64).collect();
    let around = |at: Option<&usize>| {
        at.map_or(0..=0, |&at| {
            base[at].saturating_sub(REACH)..=base[at] + REACH
        })
    };
    let mut found: Vec<(f64, Vec<u64>)> = Vec::new();
    for one in around(varied.first()) {
        for other in around(varied.get(1)) {
            let mut sections = base.clone();
            let counts = [(last, 0)].into_iter();
            let counts = counts.chain(varied.iter().copied().zip([one, other]));
            for (at, count) in counts {
                sections[at] = count;
            }
            let missing = floor.least * (1.0 - ROUGH) - floor.worth(&sections);
            sections[last] = (missing / floor.worths[last]).ceil().max(0.0) as u64;
            found.push((floor.worth(&sections), sections));
        }
    }
    found.sort_by(|one, other| one.0.total_cmp(&other.0).then_with(|| one.1.cmp(&other.1)));
    found.dedup();
    found.truncate(CANDIDATES);
    found.into_iter().map(|(_, sections)| sections).collect()
}
