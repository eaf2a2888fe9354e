//! Sections crosscut from the planks of one kind: a plan along the length of the planks.

use super::super::data::{BlankOrder, Dimensions, PlankStock, SawingAim, SawingData, SawingDraft};
use super::super::needs::Needs;
use super::super::plan::{SawingLimits, SawingOutcome, SawingPlan};
use super::super::proof::Proof;
use super::super::search::saw;
use super::columns::Crosscut;

/// What comes of it.
pub(super) enum Crosscuts {
    /// How the planks are crosscut.
    Found(Vec<(Crosscut, u64)>),
    /// There are too many sections: with this part of a plank for a section of each length, no plank
    /// holds more than 1.
    TooMany {
        /// By strip of the board.
        parts: Vec<f64>,
    },
    /// No plan was found; there may be one.
    NotFound,
}

/// Relaxations for one plan.
const RELAXATIONS: u64 = 60;

/// Cuts so many sections of each length from no more than so many planks of a kind.
pub(super) fn crosscut(data: &SawingData, plank: usize, wanted: &[u64], planks: u64) -> Crosscuts {
    let board = &data.boards()[plank];
    let strips: Vec<usize> = (0..wanted.len()).filter(|&at| wanted[at] > 0).collect();
    if strips.is_empty() {
        return Crosscuts::Found(Vec::new());
    }
    let size = |length| Dimensions {
        length,
        width: 1,
        thickness: 1,
    };
    let blanks = strips.iter().map(|&strip| BlankOrder {
        size: size(board.strips[strip].length),
        demand: wanted[strip],
        over_worth: 0,
        most_over: 0,
    });
    let along = SawingDraft {
        planks: vec![PlankStock {
            size: size(board.length),
            end_trim: 0,
            edge_trim: 0,
            price: 1,
            on_hand: None,
        }],
        blanks: blanks.collect(),
        crosscut_kerf: 0,
        rip_kerf: 0,
        offcuts: None,
        aim: SawingAim::Planks,
    };
    let Ok(along) = along.check() else {
        return Crosscuts::NotFound;
    };
    let enough = planks.cast_signed();
    let suffices = |plan: &SawingPlan| plan.cost <= enough;
    let limits = SawingLimits {
        relaxations: RELAXATIONS,
    };
    let outcome = saw(&along, &limits, &mut |state| {
        state.bound <= enough && !state.best.as_ref().is_some_and(suffices)
    });
    let (Ok(SawingOutcome::Proved { plan, proof })
    | Ok(SawingOutcome::WithinGap { plan, proof, .. })) = outcome
    else {
        return Crosscuts::NotFound;
    };
    if suffices(&plan) {
        return Crosscuts::Found(ways(&plan, plank, &strips, wanted.len()));
    }
    match &proof {
        Proof::Certified(certificate) if certificate.bound(&along, &Needs::of(&along)) > enough => {
            let mut parts = vec![0.0; wanted.len()];
            for (&strip, &value) in strips.iter().zip(&certificate.values) {
                parts[strip] = value as f64 / certificate.scale as f64;
            }
            Crosscuts::TooMany { parts }
        }
        _ => Crosscuts::NotFound,
    }
}

fn ways(plan: &SawingPlan, plank: usize, strips: &[usize], lengths: usize) -> Vec<(Crosscut, u64)> {
    let cuts = plan.cuts.iter();
    cuts.map(|(pattern, count)| {
        let mut sections = vec![0; lengths];
        for (&strip, made) in strips.iter().zip(pattern.made(strips.len())) {
            sections[strip] = made;
        }
        (Crosscut { plank, sections }, *count)
    })
    .collect()
}
