//! What a mixture is asked for, in units in which no weight is above 1.

use super::super::data::SawingData;
use super::super::needs::Needs;
use super::columns::{Crosscut, Rip};

/// What a mixture is asked for.
#[derive(Clone, Copy, Debug)]
pub(super) struct Problem<'a> {
    pub(super) data: &'a SawingData,
    pub(super) needs: &'a Needs,
    /// The weight that counts as 1: that of the plank that weighs most.
    pub(super) unit: f64,
    /// The number of pieces that counts as 1: the most wanted of one kind.
    pub(super) pieces: f64,
}

/// What a missing blank costs, in dearest planks: more than any blank.
const SHORT: f64 = 10.0;
/// What a section that is not needed is worth, in parts of what it costs: so little that the cost
/// decides, and of mixtures that cost the same the one with most to spare is found.
const SPARE: f64 = 1e-4;

impl<'a> Problem<'a> {
    pub(super) fn new(data: &'a SawingData, needs: &'a Needs) -> Self {
        let planks = 0..data.planks().len();
        let dearest = planks.map(|plank| data.weight(plank)).max().unwrap_or(0);
        let wanted = needs.wanted.iter().max().copied().unwrap_or(0);
        Self {
            data,
            needs,
            unit: dearest.max(1) as f64,
            pieces: wanted.max(1) as f64,
        }
    }

    /// So many pieces, as the master counts them.
    pub(super) fn count(&self, pieces: u64) -> f64 {
        pieces as f64 / self.pieces
    }

    /// Weight of a plank.
    pub(super) fn plank(&self, plank: usize) -> f64 {
        self.data.weight(plank) as f64 / self.unit
    }

    /// Weight of a plank that is crosscut, less the worth of its offcut.
    pub(super) fn crosscut(&self, way: &Crosscut) -> f64 {
        way.weight(self.data) as f64 / self.unit
    }

    /// Worth of a blank beyond the demand.
    pub(super) fn over_worth(&self, blank: usize) -> f64 {
        self.data.over_worth(blank).0 as f64 / self.unit
    }

    /// What a missing blank costs.
    pub(super) const fn short(&self) -> f64 {
        SHORT
    }

    /// What a section that is not needed is worth.
    pub(super) fn spare(&self, plank: usize, strip: usize) -> f64 {
        let board = &self.data.boards()[plank];
        let all = board.length / board.strips[strip].length;
        SPARE * self.plank(plank) / all as f64
    }

    /// The ways to crosscut a plank into one length, and to rip a section into one kind of blank: with
    /// these every value is bounded.
    pub(super) fn first_ways(&self) -> (Vec<Crosscut>, Vec<Rip>) {
        let most = self.needs.most();
        let mut crosscuts = Vec::new();
        let mut rips = Vec::new();
        for (plank, board) in self.data.boards().iter().enumerate() {
            if self.needs.is_out_of(plank) {
                continue;
            }
            for (strip, lane) in board.strips.iter().enumerate() {
                let mut sections = vec![0; board.strips.len()];
                sections[strip] = (board.length / lane.length).unsigned_abs();
                crosscuts.push(Crosscut { plank, sections });
                for slice in &lane.slices {
                    let fit = (board.width / slice.take).unsigned_abs();
                    let count = fit.min(most[slice.blank]);
                    if count > 0 {
                        rips.push(Rip {
                            plank,
                            strip,
                            blanks: vec![(slice.blank, count)],
                        });
                    }
                }
            }
        }
        (crosscuts, rips)
    }
}
