//! Which of all choices are best, and which lie on the frontier of wood and margin.
//!
//! Wood and money are sums and quotients, of which rounding changes the last bits: 24.01 · 3 is not
//! 72.03. So what exceeds the least of all by no more than [`SAME`] is equal to it. Each group of
//! equals is counted from its own least, so that no value is in two groups, and the order in which
//! layouts are compared decides nothing.

use super::choosable::Choosable;
use super::field::Field;
use super::room::SLACK;
use super::sound;
use super::{Found, Goal};
use crate::quantity::lesser;

/// The share by which equal wood or money may differ: far above the rounding of some ten operations,
/// far below a hundredth of a cubic millimetre or of the currency in what a gross takes.
const SAME: f64 = 1e-12;

/// A layout of the frontier, with the choices that share its wood.
pub(super) struct Step {
    pub(super) found: Found,
    /// All that have the same wood, margin and money, the first of them `found`.
    equals: Vec<Found>,
}

/// The layouts of which no other has both less wood and a wider margin, least wood first.
///
/// Candidates are looked at by growing wood; the exact margin is worked out only where the bound
/// exceeds the widest margin so far, so nothing that could belong is left out.
///
/// The wood is that of the pair of slats, whatever cuts the grooves. So only pairs are put in
/// order, with each number of pencils across, and of a pair no more than the choices whose bound
/// may still belong.
pub(super) fn frontier(field: &Field<'_>, choices: &[Choosable]) -> Vec<Step> {
    let mut bunches: Vec<Bunch<'_>> = choices
        .chunk_by(|one, other| one.pair() == other.pair())
        .flat_map(|of_pair| {
            let most = of_pair.iter().map(|choice| choice.most).max();
            (1..=most.unwrap_or(0)).map(move |across| (across, of_pair))
        })
        .enumerate()
        .map(|(place, (across, of_pair))| Bunch {
            place,
            wood: of_pair[0].wood_with(across),
            across,
            of_pair,
        })
        .collect();
    bunches.sort_by(|one, other| one.wood.total_cmp(&other.wood));
    let mut steps: Vec<Step> = Vec::new();
    let mut widest = f64::NEG_INFINITY;
    let mut rest = bunches.as_mut_slice();
    while let Some(first) = rest.first() {
        let limit = with_equals(first.wood);
        let many = rest.partition_point(|bunch| bunch.wood <= limit);
        let (alike, after) = rest.split_at_mut(many);
        rest = after;
        // Equals come in the order of the lists.
        alike.sort_by_key(|bunch| bunch.place);
        // Of the same wood a margin as wide is an equal; of more wood it is no step.
        let candidates: Vec<(u32, &Choosable, f64)> = alike
            .iter()
            .flat_map(|bunch| bunch.bounded(field, widest - SLACK))
            .collect();
        let mut equals: Vec<Found> = Vec::new();
        for (across, choice, bound) in candidates {
            let begun = !equals.is_empty();
            let needed = if begun {
                widest - SLACK
            } else {
                widest + SLACK
            };
            if bound < needed {
                continue;
            }
            let Some(found) = field.lay(choice, across, needed) else {
                continue;
            };
            let margin = found.margin.in_millimetres();
            if begun && (margin - widest).abs() <= SLACK {
                equals.push(found);
            } else if margin > widest + SLACK {
                widest = margin;
                equals = vec![found];
            }
        }
        let equals = least_of(equals.into_iter(), |found| found.money, with_equals);
        if let Some(&found) = equals.first() {
            steps.push(Step { found, equals });
        }
    }
    steps
}

/// What can be laid on a pair of slats with so many pencils across.
struct Bunch<'a> {
    /// Where it comes by the order of the lists.
    place: usize,
    wood: f64,
    across: u32,
    of_pair: &'a [Choosable],
}

impl<'a> Bunch<'a> {
    /// The choices whose margin may be as wide as `floor`, mm, each with its bound.
    fn bounded(&self, field: &Field<'_>, floor: f64) -> Vec<(u32, &'a Choosable, f64)> {
        let first = &self.of_pair[0];
        if first.upright < floor {
            return Vec::new();
        }
        let room = field.room(first.top, first.bottom);
        let able = self
            .of_pair
            .iter()
            .filter(|choice| self.across <= choice.most);
        let bounded = able.map(|choice| {
            let bound = choice.bound(&room, self.across, field.pitches[choice.set]);
            (self.across, choice, bound)
        });
        bounded.filter(|(.., bound)| *bound >= floor).collect()
    }
}

/// All that are best under a goal.
pub(super) fn best(
    field: &Field<'_>,
    choices: &[Choosable],
    goal: Goal,
    frontier: &[Step],
) -> Vec<Found> {
    let pencils: fn(&&Choosable) -> f64 = |choice| -f64::from(choice.most * choice.lengths);
    let wood: fn(&&Choosable) -> f64 = |choice| choice.wood_with(choice.most);
    let money: fn(&&Choosable) -> f64 = |choice| choice.money_with(choice.most);
    let (first, others) = match goal {
        // The last step has the widest margin, and of those the least wood and money.
        Goal::Margin => {
            let last = frontier.last();
            return last.map(|step| step.equals.clone()).unwrap_or_default();
        }
        Goal::Pencils => (pencils, vec![wood, money]),
        Goal::Wood => (wood, vec![money]),
        Goal::Money => (money, vec![wood]),
        Goal::Good => return sound::best(field, choices),
    };
    let best = others.into_iter().fold(
        least_of(choices.iter(), first, with_equals),
        |best, next| least_of(best.into_iter(), next, with_equals),
    );
    let laid: Vec<Found> = best
        .into_iter()
        .filter_map(|choice| field.lay(choice, choice.most, f64::NEG_INFINITY))
        .collect();
    let narrowness = |found: &Found| -found.margin.in_millimetres();
    least_of(laid.into_iter(), narrowness, |least| least + SLACK)
}

/// The most that is equal to the least of some wood or money, or to a count below 0.
pub(super) fn with_equals(least: f64) -> f64 {
    least + least.abs() * SAME
}

/// Those with the least of something and their equals, up to a limit that the least sets.
pub(super) fn least_of<T>(
    list: impl Iterator<Item = T> + Clone,
    of: impl Fn(&T) -> f64,
    limit: impl Fn(f64) -> f64,
) -> Vec<T> {
    let least = list.clone().map(|each| of(&each));
    let limit = limit(least.fold(f64::INFINITY, lesser));
    list.filter(|each| of(each) <= limit).collect()
}
