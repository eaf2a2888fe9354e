//! What sections take of a plank.

use super::super::super::data::SawingData;
use super::super::super::needs::Needs;
use super::super::mixture::{Mixture, best_crosscuts, fraction, whole_numbers};
use super::super::problem::Problem;

/// A part of a plank for a section of each length, such that no plank holds more than 1.
pub(super) struct Load {
    /// The kind of plank.
    pub(super) plank: usize,
    /// By strip of its board.
    pub(super) parts: Vec<f64>,
    /// What a plank too many counts.
    pub(super) weight: f64,
}

impl Load {
    /// What is known at first of the planks that are used: first the worths of the sections, one for
    /// each kind of plank, then their lengths.
    pub(super) fn all(
        data: &SawingData,
        needs: &Needs,
        mixture: &Mixture,
        planks: &[u64],
    ) -> Vec<Self> {
        let problem = Problem::new(data, needs);
        let used = || (0..planks.len()).filter(|&plank| planks[plank] > 0);
        let by_worth = used().map(|plank| {
            let worths = &mixture.worths[plank];
            let best = best_crosscuts(&problem, plank, &whole_numbers(worths), 1);
            let most = fraction(best.first().map_or(1, |filling| filling.value).max(1));
            Self {
                plank,
                parts: worths.iter().map(|worth| worth / most).collect(),
                weight: most,
            }
        });
        let by_length = used().map(|plank| {
            let board = &data.boards()[plank];
            let strips = board.strips.iter();
            let parts = strips.map(|strip| strip.length as f64 / board.length as f64);
            Self::of(data, plank, parts.collect())
        });
        by_worth.chain(by_length).collect()
    }

    pub(super) fn of(data: &SawingData, plank: usize, parts: Vec<f64>) -> Self {
        let dearest = data.boards().len();
        let dearest = (0..dearest).map(|plank| data.weight(plank)).max();
        let weight = data.weight(plank) as f64 / dearest.unwrap_or(1).max(1) as f64;
        Self {
            plank,
            parts,
            weight,
        }
    }
}
