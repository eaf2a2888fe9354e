//! Whole numbers of sections for whole numbers of planks.
//!
//! For each length there are numbers of sections, from planks of each kind, that just suffice for its
//! blanks: the candidates. One is chosen for each length so that no kind of plank is overloaded. That
//! the planks can be crosscut so and the sections ripped so is then found out by plans along one
//! length; where they cannot, what proves it keeps the like from being chosen again.

mod choice;
mod group;
mod load;

use super::super::data::SawingData;
use super::super::needs::Needs;
use super::columns::Crosscut;
use super::crosscutting::{Crosscuts, crosscut};
use super::mixture::Mixture;
use super::ripping::{Ripped, Rips, rip};
use choice::{Chance, choose};
pub(super) use group::{Floor, Group};
use load::Load;

/// How planks are crosscut, and their sections ripped.
pub(super) struct Found {
    pub(super) planks: Vec<(Crosscut, u64)>,
    pub(super) ripped: Ripped,
}

/// What goes on from one look to the next.
#[derive(Default)]
pub(super) struct Looking {
    /// Whether anything was looked for.
    pub(super) is_begun: bool,
    chance: Chance,
}

/// Choices that are tried.
const TRIALS: u32 = 12;
/// Pairs of candidates weighed in the first look; four times as many in each later one.
const PAIRS: u64 = 800_000;
const MOST_DOUBLED: u32 = 2;

impl Looking {
    /// Looks for whole numbers of sections that so many planks of each kind give and that suffice, after
    /// so many looks.
    pub(super) fn look(
        &mut self,
        data: &SawingData,
        needs: &Needs,
        mixture: &Mixture,
        planks: &[u64],
        looks: u32,
    ) -> Option<Found> {
        let mut groups = Group::all(data, needs, mixture, planks);
        let mut loads = Load::all(data, needs, mixture, planks);
        let mut left = PAIRS << (2 * looks.min(MOST_DOUBLED));
        for _ in 0..TRIALS {
            let chosen = choose(&groups, &loads, planks, &mut self.chance, &mut left)?;
            if let Some(planks) = crosscut_all(data, &groups, &chosen, planks, &mut loads) {
                if let Some(ripped) = rip_all(data, needs, &mut groups, &chosen) {
                    return Some(Found { planks, ripped });
                }
            } else {
                // Where no proof keeps it from being chosen again, this does.
                let most = (0..groups.len()).max_by_key(|&at| groups[at].candidates.len())?;
                groups[most].candidates.remove(chosen[most]);
            }
        }
        None
    }
}

/// Crosscuts the planks into the sections chosen; where there are too many, adds what proves it.
fn crosscut_all(
    data: &SawingData,
    groups: &[Group],
    chosen: &[usize],
    planks: &[u64],
    loads: &mut Vec<Load>,
) -> Option<Vec<(Crosscut, u64)>> {
    let boards = data.boards().iter();
    let mut sections: Vec<Vec<u64>> = boards.map(|board| vec![0; board.strips.len()]).collect();
    for (group, &at) in groups.iter().zip(chosen) {
        for (&(plank, strip), &count) in group.places.iter().zip(&group.candidates[at]) {
            sections[plank][strip] = count;
        }
    }
    let mut all = Some(Vec::new());
    for (plank, wanted) in sections.iter().enumerate() {
        match crosscut(data, plank, wanted, planks[plank]) {
            Crosscuts::Found(ways) => {
                if let Some(all) = &mut all {
                    all.extend(ways);
                }
            }
            Crosscuts::TooMany { parts } => {
                loads.push(Load::of(data, plank, parts));
                all = None;
            }
            Crosscuts::NotFound => all = None,
        }
    }
    all
}

/// Rips the sections chosen; where there are too few, drops the candidates of which that is proved.
fn rip_all(
    data: &SawingData,
    needs: &Needs,
    groups: &mut [Group],
    chosen: &[usize],
) -> Option<Ripped> {
    let mut all = Some(Vec::new());
    for (group, &at) in groups.iter_mut().zip(chosen) {
        match rip(data, needs, group, at) {
            Rips::Found(ways) => {
                if let Some(all) = &mut all {
                    all.extend(ways);
                }
            }
            Rips::TooFew(floor) => {
                group.candidates.remove(at);
                group.candidates.retain(|sections| floor.holds(sections));
                all = None;
            }
            Rips::NotFound => {
                group.candidates.remove(at);
                all = None;
            }
        }
    }
    all
}
