//! Sections of one length ripped into blanks: a plan along the width of the planks.

use super::super::data::{BlankOrder, Dimensions, PlankStock, SawingAim, SawingData, SawingDraft};
use super::super::needs::Needs;
use super::super::plan::{SawingLimits, SawingOutcome, SawingPlan};
use super::super::search::saw;
use super::columns::Rip;
use super::whole::{Floor, Group};

/// Sections with how they are ripped.
pub(super) type Ripped = Vec<(Rip, u64)>;

/// What comes of it.
pub(super) enum Rips {
    /// How the sections are ripped.
    Found(Ripped),
    /// The sections do not suffice, and what proves it.
    TooFew(Floor),
    /// No plan was found; there may be one.
    NotFound,
}

/// Relaxations for one plan.
const RELAXATIONS: u64 = 60;

/// Rips the sections of one length, so many of each kind of plank as a candidate has.
pub(super) fn rip(data: &SawingData, needs: &Needs, group: &Group, candidate: usize) -> Rips {
    let sections = group.places.iter().zip(&group.candidates[candidate]);
    let planks = sections.map(|(&(plank, _), &count)| PlankStock {
        size: Dimensions {
            length: data.boards()[plank].width,
            width: 1,
            thickness: data.planks()[plank].size.thickness,
        },
        end_trim: 0,
        edge_trim: 0,
        price: data.boards()[plank].width,
        on_hand: Some(count),
    });
    let kerf = data.draft().crosscut_kerf;
    let kinds: Vec<usize> = (0..needs.wanted.len())
        .filter(|&at| data.blanks()[at].size.length + kerf == group.length)
        .filter(|&at| needs.wanted[at] > 0)
        .collect();
    let blanks = kinds.iter().map(|&at| BlankOrder {
        size: Dimensions {
            length: data.blanks()[at].size.thickness + data.draft().rip_kerf,
            width: data.blanks()[at].size.width,
            thickness: 1,
        },
        demand: needs.wanted[at],
        over_worth: 0,
        most_over: 0,
    });
    let across = SawingDraft {
        planks: planks.collect(),
        blanks: blanks.collect(),
        crosscut_kerf: 0,
        rip_kerf: 0,
        offcuts: None,
        aim: SawingAim::Cost,
    };
    let Ok(across) = across.check() else {
        return Rips::NotFound;
    };
    let limits = SawingLimits {
        relaxations: RELAXATIONS,
    };
    match saw(&across, &limits, &mut |state| state.best.is_none()) {
        Ok(SawingOutcome::Proved { plan, .. } | SawingOutcome::WithinGap { plan, .. }) => {
            Rips::Found(ripped(&plan, group, &kinds))
        }
        Ok(SawingOutcome::Short { certificate, .. }) => {
            let scale = certificate.scale as f64;
            let worths = certificate.tolls.iter();
            let values = across.blanks().iter().zip(&certificate.values);
            Rips::TooFew(Floor {
                worths: worths.map(|&toll| toll as f64 / scale).collect(),
                least: values
                    .map(|(blank, &value)| blank.demand as f64 * value as f64 / scale)
                    .sum(),
            })
        }
        _ => Rips::NotFound,
    }
}

fn ripped(plan: &SawingPlan, group: &Group, kinds: &[usize]) -> Ripped {
    let cuts = plan.cuts.iter();
    cuts.map(|(pattern, count)| {
        let (plank, strip) = group.places[pattern.plank];
        let made = kinds.iter().copied().zip(pattern.made(kinds.len()));
        let blanks = made.filter(|(_, made)| *made > 0).collect();
        let rip = Rip {
            plank,
            strip,
            blanks,
        };
        (rip, *count)
    })
    .collect()
}
