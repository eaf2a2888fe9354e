//! A candidate for each length, so that no kind of plank is overloaded.
//!
//! From a beginning, the candidates of two lengths at a time are changed for the two that overload the
//! planks least, until no two can be changed for better; then those of three lengths, and at last from
//! another beginning. What all sections are worth is nearly the same whatever is chosen, so of the last
//! of the candidates only those matter that put about as much on the main kind of plank as is left there.

use std::ops::Range;

use super::group::Group;
use super::load::Load;

/// Numbers that look like dice, the same in every run.
pub(super) struct Chance(u64);

impl Default for Chance {
    fn default() -> Self {
        Self(1)
    }
}

impl Chance {
    /// A number below another one.
    fn below(&mut self, most: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % most.max(1)
    }
}

/// Three groups are changed at once while more than so many pairs are left.
const THREES: u64 = 1_000_000;
/// Candidates with least to spare that are tried for the first two of three.
const NEAR: usize = 100;
/// Overload that rounding may feign, in parts of the dearest plank.
const ROUGH: f64 = 1e-9;

/// The place of a candidate in each group; nothing where none are found that fit among
/// as many pairs as are left.
pub(super) fn choose(
    groups: &[Group],
    loads: &[Load],
    planks: &[u64],
    chance: &mut Chance,
    left: &mut u64,
) -> Option<Vec<usize>> {
    let scale = Scale::new(loads, planks)?;
    let takes: Vec<Takes> = groups
        .iter()
        .map(|group| Takes::new(group, loads, &scale))
        .collect();
    if takes.iter().any(|takes| takes.order.is_empty()) {
        return None;
    }
    // The first of all are those with least to spare.
    let mut chosen: Vec<usize> = (takes.iter())
        .map(|takes| takes.order.iter().position(|&at| at == 0).unwrap_or(0))
        .collect();
    loop {
        let mut descent = Descent::new(&scale, &takes, chosen);
        descent.run(left);
        if descent.over <= ROUGH {
            let chosen = takes.iter().zip(&descent.chosen);
            return Some(chosen.map(|(takes, &at)| takes.order[at]).collect());
        }
        if *left == 0 {
            return None;
        }
        chosen = (takes.iter())
            .map(|takes| chance.below(takes.order.len()))
            .collect();
    }
}

/// What the loads are measured by.
struct Scale {
    /// Kind of plank of each load, among those that are used.
    kinds: Vec<usize>,
    /// How much each load may be.
    most: Vec<f64>,
    /// What a plank too many of each kind counts.
    weights: Vec<f64>,
    /// The kind with most on it.
    main: usize,
    /// What all the other kinds can take, weighted.
    others: f64,
}

impl Scale {
    /// The first loads are one for each kind of plank that is used.
    fn new(loads: &[Load], planks: &[u64]) -> Option<Self> {
        let used = planks.iter().filter(|&&count| count > 0).count();
        let first = &loads[..used.min(loads.len())];
        let kinds: Option<Vec<usize>> = loads
            .iter()
            .map(|load| first.iter().position(|known| known.plank == load.plank))
            .collect();
        let most: Vec<f64> = loads.iter().map(|load| planks[load.plank] as f64).collect();
        let weights: Vec<f64> = first.iter().map(|load| load.weight).collect();
        let whole = |kind: usize| most[kind] * weights[kind];
        let main = (0..used).max_by(|&one, &other| whole(one).total_cmp(&whole(other)))?;
        let others = (0..used).filter(|&kind| kind != main).map(whole).sum();
        Some(Self {
            kinds: kinds?,
            most,
            weights,
            main,
            others,
        })
    }

    /// The weighted sum of the loads of worth.
    fn total(&self, loads: &[f64]) -> f64 {
        let loads = self.weights.iter().zip(loads);
        loads.map(|(weight, load)| weight * load).sum()
    }

    /// By how much the planks are overloaded, weighted.
    fn over(&self, loads: &[f64], by_kind: &mut [f64]) -> f64 {
        by_kind.fill(0.0);
        for ((load, most), &kind) in loads.iter().zip(&self.most).zip(&self.kinds) {
            by_kind[kind] = f64::max(by_kind[kind], load - most);
        }
        self.total(by_kind)
    }
}

/// What the candidates of a group take, those first that take least of the main kind of plank.
struct Takes {
    /// Places of the candidates.
    order: Vec<usize>,
    /// Loads of one candidate after the other.
    loads: Vec<f64>,
    /// How many loads there are.
    width: usize,
    /// On the main kind of plank.
    main: Vec<f64>,
    /// The weighted sum.
    total: Vec<f64>,
    least_total: f64,
    /// Those with least to spare.
    near: Vec<usize>,
}

impl Takes {
    fn new(group: &Group, loads: &[Load], scale: &Scale) -> Self {
        let row = |sections: &[u64]| -> Vec<f64> {
            let load = |load: &Load| -> f64 {
                (group.places.iter().zip(sections))
                    .filter(|((plank, _), _)| *plank == load.plank)
                    .map(|(&(_, strip), &count)| load.parts[strip] * count as f64)
                    .sum()
            };
            loads.iter().map(load).collect()
        };
        let rows: Vec<Vec<f64>> = group
            .candidates
            .iter()
            .map(|sections| row(sections))
            .collect();
        let mut order: Vec<usize> = (0..rows.len()).collect();
        order.sort_by(|&one, &other| rows[one][scale.main].total_cmp(&rows[other][scale.main]));
        let total: Vec<f64> = order.iter().map(|&at| scale.total(&rows[at])).collect();
        Self {
            loads: order
                .iter()
                .flat_map(|&at| rows[at].iter().copied())
                .collect(),
            width: loads.len(),
            main: order.iter().map(|&at| rows[at][scale.main]).collect(),
            least_total: total.iter().copied().fold(f64::INFINITY, f64::min),
            total,
            near: (0..order.len()).filter(|&at| order[at] < NEAR).collect(),
            order,
        }
    }

    fn of(&self, at: usize) -> &[f64] {
        &self.loads[at * self.width..(at + 1) * self.width]
    }
}

/// Candidates that are changed for better ones.
struct Descent<'a> {
    scale: &'a Scale,
    takes: &'a [Takes],
    chosen: Vec<usize>,
    loads: Vec<f64>,
    over: f64,
    /// Room for the loads of a trial, and for its overload by kind of plank.
    trial: Vec<f64>,
    by_kind: Vec<f64>,
}

impl<'a> Descent<'a> {
    fn new(scale: &'a Scale, takes: &'a [Takes], chosen: Vec<usize>) -> Self {
        let mut loads = vec![0.0; scale.most.len()];
        for (takes, &at) in takes.iter().zip(&chosen) {
            add(&mut loads, takes.of(at), 1.0);
        }
        let mut by_kind = vec![0.0; scale.weights.len()];
        Self {
            over: scale.over(&loads, &mut by_kind),
            trial: loads.clone(),
            scale,
            takes,
            chosen,
            loads,
            by_kind,
        }
    }

    /// Changes the candidates of three groups, where two no longer help; whether that is better.
    fn change_threes(&mut self, left: &mut u64) -> bool {
        let all = self.takes.len();
        for one in 0..all {
            for other in one + 1..all {
                for third in (0..all).filter(|&third| third != one && third != other) {
                    if *left == 0 || self.over <= ROUGH {
                        return false;
                    }
                    if self.change_three(one, other, third, left) {
                        return true;
                    }
                }
            }
        }
        false
    }

    /// Changes the candidates of three groups for the best three; whether that is better.
    fn change_three(&mut self, one: usize, other: usize, third: usize, left: &mut u64) -> bool {
        let (takes, scale) = (self.takes, self.scale);
        let mut base = self.loads.clone();
        for at in [one, other, third] {
            add(&mut base, takes[at].of(self.chosen[at]), -1.0);
        }
        let base_total = scale.total(&base);
        let mut best = None;
        let mut both = base.clone();
        for &first in &takes[one].near {
            for &second in &takes[other].near {
                *left = left.saturating_sub(1);
                both.copy_from_slice(&base);
                add(&mut both, takes[one].of(first), 1.0);
                add(&mut both, takes[other].of(second), 1.0);
                let main = both[scale.main];
                let total = base_total + takes[one].total[first] + takes[other].total[second];
                for last in self.window(&takes[third], main, total) {
                    *left = left.saturating_sub(1);
                    self.trial.copy_from_slice(&both);
                    add(&mut self.trial, takes[third].of(last), 1.0);
                    let over = scale.over(&self.trial, &mut self.by_kind);
                    if over < self.over - ROUGH {
                        self.over = over;
                        best = Some((first, second, last));
                    }
                }
            }
        }
        let Some((first, second, last)) = best else {
            return false;
        };
        self.loads = base;
        for (at, candidate) in [(one, first), (other, second), (third, last)] {
            self.chosen[at] = candidate;
            add(&mut self.loads, takes[at].of(candidate), 1.0);
        }
        true
    }

    fn run(&mut self, left: &mut u64) {
        let mut is_better = true;
        while is_better && self.over > ROUGH && *left > 0 {
            is_better = false;
            for one in 0..self.takes.len() {
                // With itself where there is one length only.
                let from = if self.takes.len() == 1 { one } else { one + 1 };
                for other in from..self.takes.len() {
                    is_better |= self.change(one, other, left);
                }
            }
            if !is_better && *left > THREES {
                is_better = self.change_threes(left);
            }
        }
    }

    /// The candidates that may be better than what is known, beside so much on the main kind of plank and
    /// in all.
    fn window(&self, takes: &Takes, main: f64, total: f64) -> Range<usize> {
        let scale = self.scale;
        let weight = scale.weights[scale.main];
        // More than this overloads the main kind of plank, and less the others.
        let high = scale.most[scale.main] - main + self.over / weight;
        let low = (total + takes.least_total - scale.others - self.over) / weight - main;
        let from = takes.main.partition_point(|&main| main < low);
        let till = takes.main.partition_point(|&main| main <= high);
        from..till.max(from)
    }

    /// Changes the candidates of two groups for the best two; whether that is better.
    fn change(&mut self, one: usize, other: usize, left: &mut u64) -> bool {
        let (takes, scale) = (self.takes, self.scale);
        let mut base = self.loads.clone();
        add(&mut base, takes[one].of(self.chosen[one]), -1.0);
        if other != one {
            add(&mut base, takes[other].of(self.chosen[other]), -1.0);
        }
        let base_total = scale.total(&base);
        let mut best = None;
        for first in 0..takes[one].order.len() {
            *left = left.saturating_sub(1);
            let main = base[scale.main] + takes[one].main[first];
            let total = base_total + takes[one].total[first];
            let seconds = if other == one {
                first..first + 1
            } else {
                self.window(&takes[other], main, total)
            };
            for second in seconds {
                self.trial.copy_from_slice(&base);
                add(&mut self.trial, takes[one].of(first), 1.0);
                if other != one {
                    add(&mut self.trial, takes[other].of(second), 1.0);
                }
                let over = scale.over(&self.trial, &mut self.by_kind);
                *left = left.saturating_sub(1);
                if over < self.over - ROUGH {
                    self.over = over;
                    best = Some((first, second));
                }
            }
        }
        let Some((first, second)) = best else {
            return false;
        };
        self.loads = base;
        self.chosen[one] = first;
        add(&mut self.loads, takes[one].of(first), 1.0);
        if other != one {
            self.chosen[other] = second;
            add(&mut self.loads, takes[other].of(second), 1.0);
        }
        true
    }
}

fn add(loads: &mut [f64], part: &[f64], sign: f64) {
    for (load, part) in loads.iter_mut().zip(part) {
        *load += sign * part;
    }
}
