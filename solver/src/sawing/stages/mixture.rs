//! Planks and sections in fractions.
//!
//! Ways to crosscut and to rip are found as they are needed, as in the relaxation of whole patterns.

use std::collections::BTreeSet;

use super::super::board::{Board, Strip};
use super::super::certificate::Certificate;
use super::super::data::SawingData;
use super::super::knapsack::{Filling, Piece, fill};
use super::super::needs::Needs;
use super::super::relaxation::certify;
use super::columns::{Crosscut, Rip, Ways};
use super::master::{Dual, Shares};
use super::problem::Problem;

/// A best mixture.
#[derive(Clone, Debug)]
pub(in crate::sawing) struct Mixture {
    /// Planks of each kind.
    pub(super) planks: Vec<f64>,
    /// Sections ripped, for each kind of plank and strip of its board.
    pub(super) sections: Vec<Vec<f64>>,
    /// Values of the blanks, in parts of the dearest plank.
    pub(super) values: Vec<f64>,
    /// Worths of the sections, likewise, for each kind of plank and strip of its board.
    pub(super) worths: Vec<Vec<f64>>,
    /// The certificate that follows.
    pub(super) certificate: Certificate,
    /// What it proves.
    pub(super) bound: i64,
}

/// A way worth more than it costs by less than this part of the dearest plank is as good as found.
const TOLERANCE: f64 = 1e-9;
/// Ways that cost more than they are worth by less than this part may have a share.
const TIGHT: f64 = 1e-6;
/// Worths are whole numbers of this part of the dearest plank.
const FINENESS: f64 = (1_i64 << 44) as f64;
/// Ways taken in of one kind in a round.
const WAYS: usize = 2;
/// Ways kept for each row of the master.
const KEPT: usize = 3;

/// Mixes what is needed. What is known of ways is used, added to, and rid of what is far from being of
/// use. Nothing where the solver fails or `go_on`, heard after each round, says so.
pub(super) fn mix(
    data: &SawingData,
    needs: &Needs,
    known: &mut Ways,
    go_on: &mut dyn FnMut() -> bool,
) -> Option<Mixture> {
    let problem = Problem::new(data, needs);
    let mut met = Met::default();
    let mut ways = met.those_of_use(&problem, std::mem::take(known));
    let mut dual = Dual::solve(&problem, &ways)?;
    loop {
        let new = worth_more(&problem, &dual, &mut met);
        if new.crosscuts.is_empty() && new.rips.is_empty() {
            break;
        }
        if !go_on() {
            return None;
        }
        dual = dual.with(&problem, &new)?;
        ways.crosscuts.extend(new.crosscuts);
        ways.rips.extend(new.rips);
    }
    let (values, worths, tolls) = (dual.values(), dual.worths(), dual.tolls());
    let rows = values.len() + worths.iter().map(Vec::len).sum::<usize>();
    let crosscuts = keep_cheapest(&mut ways.crosscuts, KEPT * rows, |way| {
        let sections = worths[way.plank].iter().zip(&way.sections);
        let worth: f64 = sections.map(|(worth, &count)| worth * count as f64).sum();
        problem.crosscut(way) + tolls[way.plank] - worth
    });
    let rips = keep_cheapest(&mut ways.rips, KEPT * rows, |way| {
        let blanks = way.blanks.iter();
        let value: f64 = blanks
            .map(|&(blank, count)| values[blank] * count as f64)
            .sum();
        worths[way.plank][way.strip] - value
    });
    let (crosscuts, rips) = (&ways.crosscuts[..crosscuts], &ways.rips[..rips]);
    let shares = Shares::solve(&problem, crosscuts, rips)?;
    let mut planks = vec![0.0; needs.planks.len()];
    for (way, share) in crosscuts.iter().zip(&shares.crosscuts) {
        planks[way.plank] += share;
    }
    let boards = data.boards().iter();
    let mut sections: Vec<Vec<f64>> = boards.map(|board| vec![0.0; board.strips.len()]).collect();
    for (way, share) in rips.iter().zip(&shares.rips) {
        sections[way.plank][way.strip] += share;
    }
    let (certificate, bound) = certify(data, needs, (values.clone(), tolls), problem.unit);
    *known = ways;
    Some(Mixture {
        planks,
        sections,
        values,
        worths,
        certificate,
        bound,
    })
}

/// What was met, so that nothing is taken in twice.
#[derive(Default)]
struct Met {
    crosscuts: BTreeSet<Crosscut>,
    rips: BTreeSet<Rip>,
}

impl Met {
    /// The first ways, and those known that may be of use.
    fn those_of_use(&mut self, problem: &Problem<'_>, known: Ways) -> Ways {
        let most = problem.needs.most();
        let (crosscuts, rips) = problem.first_ways();
        let is_open = |plank: usize| !problem.needs.is_out_of(plank);
        let fits = |way: &Rip| {
            let mut blanks = way.blanks.iter();
            blanks.all(|&(blank, count)| count <= most[blank])
        };
        Ways {
            crosscuts: (crosscuts.into_iter().chain(known.crosscuts))
                .filter(|way| is_open(way.plank) && self.crosscuts.insert(way.clone()))
                .collect(),
            rips: (rips.into_iter().chain(known.rips))
                .filter(|way| is_open(way.plank) && fits(way) && self.rips.insert(way.clone()))
                .collect(),
        }
    }
}

/// Values as whole numbers, rounded down.
pub(super) fn whole_numbers(values: &[f64]) -> Vec<i64> {
    let values = values.iter();
    values.map(|value| (value * FINENESS) as i64).collect()
}

/// Whole numbers as values.
pub(super) fn fraction(whole: i64) -> f64 {
    whole as f64 / FINENESS
}

/// What a section is ripped into for the most value, best first.
pub(super) fn best_rips(
    board: &Board,
    strip: &Strip,
    values: &[i64],
    most: &[u64],
    rips: usize,
) -> Vec<Filling> {
    let slices = strip.slices.iter();
    let pieces: Vec<Piece> = slices
        .map(|slice| Piece {
            take: slice.take,
            value: values[slice.blank],
            most: most[slice.blank],
        })
        .collect();
    fill(board.width, &pieces, None, rips)
}

/// What a plank is crosscut into for the most worth of the sections and the offcut, best first.
pub(super) fn best_crosscuts(
    problem: &Problem<'_>,
    plank: usize,
    worths: &[i64],
    crosscuts: usize,
) -> Vec<Filling> {
    let board = &problem.data.boards()[plank];
    let strips = board.strips.iter().zip(worths);
    let pieces: Vec<Piece> = strips
        .map(|(strip, &value)| Piece {
            take: strip.length,
            value,
            most: (board.length / strip.length).unsigned_abs(),
        })
        .collect();
    let kerf = problem.data.draft().crosscut_kerf;
    let offcut = |free: i64| problem.data.offcut_worth((free - kerf).max(0));
    let rest = |free: i64| (offcut(free) as f64 / problem.unit * FINENESS) as i64;
    let has_worth = offcut(board.length) > 0;
    fill(
        board.length,
        &pieces,
        if has_worth { Some(&rest) } else { None },
        crosscuts,
    )
}

/// The ways worth more than they cost that were not met.
fn worth_more(problem: &Problem<'_>, dual: &Dual, met: &mut Met) -> Ways {
    let values = whole_numbers(&dual.values());
    let worths = dual.worths();
    let tolls = dual.tolls();
    let most = problem.needs.most();
    let mut new = Ways::default();
    for (plank, board) in problem.data.boards().iter().enumerate() {
        if problem.needs.is_out_of(plank) {
            continue;
        }
        let mut whole = whole_numbers(&worths[plank]);
        for (strip, lane) in board.strips.iter().enumerate() {
            for filling in best_rips(board, lane, &values, &most, WAYS) {
                whole[strip] = whole[strip].max(filling.value);
                if fraction(filling.value) <= worths[plank][strip] + TOLERANCE {
                    continue;
                }
                let slices = lane.slices.iter().zip(&filling.counts);
                let blanks = slices
                    .filter(|(_, count)| **count > 0)
                    .map(|(slice, &count)| (slice.blank, count));
                let way = Rip {
                    plank,
                    strip,
                    blanks: blanks.collect(),
                };
                if met.rips.insert(way.clone()) {
                    new.rips.push(way);
                }
            }
        }
        let cost = problem.plank(plank) + tolls[plank];
        for filling in best_crosscuts(problem, plank, &whole, WAYS) {
            let way = Crosscut {
                plank,
                sections: filling.counts,
            };
            if fraction(filling.value) > cost + TOLERANCE && met.crosscuts.insert(way.clone()) {
                new.crosscuts.push(way);
            }
        }
    }
    new
}

/// Sorts the ways by what they cost beyond their worth, keeps so many or all that are tight, and tells
/// how many are.
fn keep_cheapest<T>(ways: &mut Vec<T>, most: usize, slack: impl Fn(&T) -> f64) -> usize {
    ways.sort_by(|one, other| slack(one).total_cmp(&slack(other)));
    let tight = ways.iter().take_while(|way| slack(way) <= TIGHT).count();
    ways.truncate(tight.max(most));
    tight
}
