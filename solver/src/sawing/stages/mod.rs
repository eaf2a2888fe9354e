//! Plans by stages: how planks are crosscut, and how the sections of each length are ripped.
//!
//! A section need not know which plank it comes of, only of which kind. So a plan is as good as its
//! numbers of crosscut planks and of ripped sections, and there are far fewer ways to crosscut and to
//! rip than there are patterns.
//!
//! ```text
//! Sets        i              kinds of blank
//!             p, l           kinds of plank, and the lengths of section each can be cut into
//!             c, r           ways to crosscut a plank of p; ways to rip a section of p and l
//! Data        cut[l,c]       sections of length l from a plank crosscut like c       pieces
//!             made[i,r]      blanks i from a section ripped like r                   pieces
//!             weight[c]      weight of the plank less the worth of the offcut        units of the aim
//!             wanted[i], over[i], worth[i], planks[p]                                as for patterns
//! Variables   planks[c] ∈ ℤ≥0, sections[r] ∈ ℤ≥0, beyond[i] ∈ [0, over[i]]           pieces
//! Minimise    Σ_c weight[c]·planks[c] − Σ_i worth[i]·beyond[i]
//! Subject to  blanks[i]:     Σ_r made[i,r]·sections[r] − beyond[i] ≥ wanted[i]                   ∀i
//!             lengths[p,l]:  Σ_{c of p} cut[l,c]·planks[c] ≥ Σ_{r of p,l} sections[r]            ∀p,l
//!             planks[p]:     Σ_{c of p} planks[c] ≤ planks[p]                                    ∀p with a limit
//! ```
//!
//! Any solution can be put together into patterns, and any plan taken apart into a solution, so that
//! both have the same best cost. Certificates are the same too: the values of the blanks and the tolls
//! of the planks are priced as for whole patterns.
//!
//! 1. The relaxation is solved with ways found as they are needed.
//! 2. Plans are parted by the planks of each kind until these are whole numbers.
//! 3. For whole numbers of planks, whole numbers of sections are looked for that the planks can give and
//!    that suffice for the blanks: see [`whole`].

mod columns;
mod crosscutting;
mod master;
mod mixture;
mod problem;
mod ripping;
#[cfg(test)]
mod tests;
mod together;
mod whole;

use super::branches::Method;
use super::certificate::Certificate;
use super::data::SawingData;
use super::needs::{Needs, Range};
use super::search::Search;
use columns::Ways;
use mixture::{Mixture, mix};
use together::together;
use whole::{Found, Looking};

/// The method of stages.
#[derive(Default)]
pub(super) struct Stages {
    known: Ways,
    looking: Looking,
}

/// Most rows of the master, so that it is solved in milliseconds.
const MOST_ROWS: usize = 400;
/// What the first look for whole numbers of sections counts, in relaxations; each later one four
/// times as many.
const LOOK: u64 = 4;
/// How often whole numbers are looked for in a part.
const LOOKS: u32 = 3;
/// Numbers of planks mixed before the plans are parted.
const FIRST_MIXED: usize = 64;
/// How far above the bound these may cost.
const FIRST_GAP: f64 = 0.003;
/// How much more those cost that are tried next, where there were no numbers of sections.
const FIRST_STEP: f64 = 0.00015;

impl Stages {
    /// Whether sections hold blanks side by side, and the master is not too large.
    pub(super) fn are_of_use(data: &SawingData) -> bool {
        let boards = data.boards();
        let rows: usize = boards.iter().map(|board| board.strips.len()).sum();
        let has_two_stages = boards.iter().any(|board| {
            let mut slices = board.strips.iter().flat_map(|strip| &strip.slices);
            slices.any(|slice| 2 * slice.take <= board.width)
        });
        has_two_stages && rows + data.blanks().len() <= MOST_ROWS
    }

    /// Looks for a plan with so many planks of each kind; whether one was found.
    fn look_for(
        &mut self,
        search: &mut Search<'_>,
        needs: &Needs,
        mixture: &Mixture,
        planks: &[u64],
        looks: u32,
    ) -> bool {
        if search.spend(LOOK << (2 * looks)).is_none() {
            return false;
        }
        let found = self
            .looking
            .look(search.data, needs, mixture, planks, looks);
        let is_found = found.is_some();
        if let Some(Found { planks, ripped }) = found {
            let cuts = together(&planks, &ripped);
            let mut rest = needs.clone();
            for (pattern, count) in &cuts {
                rest.take(pattern, *count);
            }
            search.complete(&rest, &cuts);
        }
        search.hear();
        is_found
    }

    /// Looks for plans with numbers of planks near those of the mixture.
    fn look_around(&mut self, search: &mut Search<'_>, needs: &Needs, mixture: &Mixture) {
        let (mut least, mut mixed) = (0, 0);
        for planks in around(search.data, needs, mixture) {
            let cost = cost(search.data, &planks);
            if cost < least {
                continue;
            }
            mixed += 1;
            if mixed > FIRST_MIXED {
                return;
            }
            let mut part = needs.clone();
            for (range, &count) in part.planks.iter_mut().zip(&planks) {
                *range = Range {
                    least: count,
                    most: Some(count),
                };
            }
            let Some(next) = self.relax(search, &part, None) else {
                return;
            };
            if search.is_open(next.bound) {
                let is_found = self.look_for(search, &part, &next, &planks, 0);
                if is_found || search.is_over() {
                    return;
                }
                least = cost + (cost as f64 * FIRST_STEP) as i64;
            }
        }
    }
}

impl Method for Stages {
    type Relaxation = Mixture;

    fn relax(
        &mut self,
        search: &mut Search<'_>,
        needs: &Needs,
        _: Option<&Mixture>,
    ) -> Option<Mixture> {
        search.spend(1)?;
        mix(search.data, needs, &mut self.known, &mut || {
            search.go_round()
        })
    }

    fn proved(mixture: &Mixture) -> (&Certificate, i64) {
        (&mixture.certificate, mixture.bound)
    }

    fn planks(_: &Search<'_>, mixture: &Mixture) -> Vec<f64> {
        mixture.planks.clone()
    }

    fn look(
        &mut self,
        search: &mut Search<'_>,
        needs: &Needs,
        mixture: &Mixture,
        planks: Option<&[u64]>,
        looks: u32,
    ) -> bool {
        match planks {
            Some(planks) => {
                self.look_for(search, needs, mixture, planks, looks);
            }
            None if !std::mem::replace(&mut self.looking.is_begun, true) => {
                self.look_around(search, needs, mixture);
            }
            None => {}
        }
        looks < LOOKS
    }
}

/// Whole numbers of planks near those of a mixture that cost a little more, the cheapest first.
fn around(data: &SawingData, needs: &Needs, mixture: &Mixture) -> Vec<Vec<u64>> {
    // As many of each kind as give no more than so many numbers of planks.
    let kinds = mixture.planks.len();
    let span = (1..=MOST_SPAN).rev().find(|&span| {
        u32::try_from(kinds).is_ok_and(|kinds| span.saturating_pow(kinds) <= MOST_AROUND)
    });
    let Some(span) = span.filter(|&span| span > 1) else {
        return Vec::new();
    };
    let mut all: Vec<Vec<u64>> = vec![Vec::new()];
    for (&sum, range) in mixture.planks.iter().zip(&needs.planks) {
        let from = (sum.floor() as u64 + 1)
            .saturating_sub(span / 2)
            .max(range.least);
        let till = (from + span - 1).min(range.most.unwrap_or(u64::MAX));
        all = all
            .iter()
            .flat_map(|begun| {
                (from..=till).map(|count| {
                    let mut planks = begun.clone();
                    planks.push(count);
                    planks
                })
            })
            .collect();
    }
    let dearest = mixture.bound as f64 * (1.0 + FIRST_GAP);
    let mut priced: Vec<(i64, Vec<u64>)> = all
        .into_iter()
        .map(|planks| (cost(data, &planks), planks))
        .filter(|(cost, _)| *cost >= mixture.bound && *cost as f64 <= dearest)
        .collect();
    priced.sort();
    priced.into_iter().map(|(_, planks)| planks).collect()
}

/// Most numbers of planks looked at, of one kind and of all.
const MOST_SPAN: u64 = 12;
const MOST_AROUND: u64 = 4_096;

/// What so many planks of each kind cost.
fn cost(data: &SawingData, planks: &[u64]) -> i64 {
    let planks = planks.iter().enumerate();
    planks
        .map(|(plank, &count)| data.weight(plank) * count.cast_signed())
        .sum()
}
