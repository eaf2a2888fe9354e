//! The method of whole patterns: a relaxation of patterns, and dives from it.

use super::branches::Method;
use super::certificate::Certificate;
use super::needs::Needs;
use super::pattern::CutPattern;
use super::relaxation::Relaxation;
use super::search::Search;

/// The method of whole patterns.
#[derive(Default)]
pub(super) struct Diving {
    has_dived: bool,
}

/// How long a dive may take.
#[derive(Clone, Copy, Debug)]
struct Effort {
    /// How many times a pattern may be passed over that did not fail at once.
    detours: usize,
    /// Relaxations.
    relaxations: u64,
}

impl Effort {
    /// For the first dive: where there is one kind of plank, nothing else closes the gap.
    const fn first(kinds: usize) -> Self {
        Self {
            detours: 3,
            relaxations: if kinds > 1 { 80 } else { 1_000 },
        }
    }

    /// For the others.
    const LATER: Self = Self {
        detours: 0,
        relaxations: 25,
    };
}

/// Patterns tried at one step of a dive.
const TRIED: usize = 4;
/// Shares nearer to a whole number than this are whole.
const ROUGH: f64 = 1e-6;

impl Method for Diving {
    type Relaxation = Relaxation;

    fn relax(
        &mut self,
        search: &mut Search<'_>,
        needs: &Needs,
        near: Option<&Relaxation>,
    ) -> Option<Relaxation> {
        search.relax(needs, &near.map(Relaxation::patterns).unwrap_or_default())
    }

    fn proved(relaxation: &Relaxation) -> (&Certificate, i64) {
        (&relaxation.certificate, relaxation.bound)
    }

    fn planks(search: &Search<'_>, relaxation: &Relaxation) -> Vec<f64> {
        let mut sums = vec![0.0; search.data.planks().len()];
        for (column, share) in relaxation.columns.iter().zip(&relaxation.shares) {
            sums[column.pattern.plank] += share;
        }
        sums
    }

    fn look(
        &mut self,
        search: &mut Search<'_>,
        needs: &Needs,
        relaxation: &Relaxation,
        _: Option<&[u64]>,
        _: u32,
    ) -> bool {
        let effort = if std::mem::replace(&mut self.has_dived, true) {
            Effort::LATER
        } else {
            Effort::first(search.data.planks().len())
        };
        // Few detours first: so the early choices are doubted before the late ones are worn out.
        for detours in 0..=effort.detours {
            if search.is_over() {
                break;
            }
            let mut dive = Dive {
                search,
                left: effort.relaxations,
            };
            dive.from(needs, relaxation, &mut Vec::new(), detours);
        }
        false
    }
}

/// A dive, and the relaxations left to it.
struct Dive<'a, 'b> {
    search: &'a mut Search<'b>,
    left: u64,
}

impl Dive<'_, '_> {
    /// Takes whole planks from a relaxation, and solves the rest anew, until nothing is wanted. Where
    /// the rest can lead to nothing better, the next pattern is tried.
    fn from(
        &mut self,
        needs: &Needs,
        relaxation: &Relaxation,
        cuts: &mut Vec<(CutPattern, u64)>,
        detours: usize,
    ) {
        let depth = cuts.len();
        let mut detour = 0;
        for taken in choices(needs, relaxation) {
            let mut rest = needs.clone();
            for (pattern, count) in taken {
                rest.take(&pattern, count);
                cuts.push((pattern, count));
            }
            self.search.complete(&rest, cuts);
            if !rest.is_met() && !self.search.is_over() && self.left > 0 {
                self.left -= 1;
                let known = relaxation.patterns();
                let spent: i64 = cuts
                    .iter()
                    .map(|(pattern, count)| pattern.weight(self.search.data) * count.cast_signed())
                    .sum();
                if let Some(next) = self.search.relax(&rest, &known)
                    && self.search.is_open(spent + next.bound)
                {
                    self.from(&rest, &next, cuts, detours - detour);
                    detour += 1;
                }
            }
            cuts.truncate(depth);
            if self.search.is_over() || self.left == 0 || detour > detours {
                return;
            }
        }
    }
}

/// Whole planks that are taken over: all whole parts of the shares; where there are none, one plank of
/// a pattern, the greatest share first.
fn choices(needs: &Needs, relaxation: &Relaxation) -> Vec<Vec<(CutPattern, u64)>> {
    let mut order: Vec<usize> = (0..relaxation.columns.len())
        .filter(|&at| relaxation.shares[at] > ROUGH)
        .collect();
    order.sort_by(|&one, &other| relaxation.shares[other].total_cmp(&relaxation.shares[one]));
    let mut left = needs.clone();
    let mut whole = Vec::new();
    for &at in &order {
        let pattern = &relaxation.columns[at].pattern;
        let count = ((relaxation.shares[at] + ROUGH).floor() as u64).min(left.room_for(pattern));
        if count > 0 {
            left.take(pattern, count);
            whole.push((pattern.clone(), count));
        }
    }
    if whole.is_empty() {
        // Any plan saws the largest of its blanks in one of the patterns that hold it: these first.
        let pivot = order
            .first()
            .and_then(|&at| relaxation.columns[at].made.first());
        let holds = |at: usize| {
            let made = &relaxation.columns[at].made;
            pivot.is_none_or(|(pivot, _)| made.iter().any(|(blank, _)| blank == pivot))
        };
        let (first, then): (Vec<usize>, Vec<usize>) = order.iter().partition(|&&at| holds(at));
        let one = |at: usize| vec![(relaxation.columns[at].pattern.clone(), 1)];
        first.into_iter().chain(then).take(TRIED).map(one).collect()
    } else {
        vec![whole]
    }
}
