//! Which of all choices are best, and which lie on the frontier of wood and margin.

use super::room::SLACK;
use super::{Choosable, Field, Found, Goal};
use crate::sequence::in_order;
use std::cmp::Ordering;

/// A layout of the frontier, with the choices that share its wood.
pub(super) struct Step {
    pub(super) found: Found,
    /// All that have the same wood and margin, the first of them `found`.
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
            (1..=most.unwrap_or(0)).map(move |across| Bunch {
                wood: of_pair[0].wood_with(across),
                across,
                of_pair,
            })
        })
        .collect();
    // The sort is stable: equals keep the order of the lists.
    bunches.sort_by(|one, other| one.wood.total_cmp(&other.wood));
    let mut steps: Vec<Step> = Vec::new();
    let mut widest = f64::NEG_INFINITY;
    for alike in bunches.chunk_by(|one, other| one.wood == other.wood) {
        // Of the same wood a margin as wide is an equal; of more wood it is no step.
        let candidates: Vec<(u32, &Choosable, f64)> = alike
            .iter()
            .flat_map(|bunch| bunch.bounded(field, widest - SLACK))
            .collect();
        let candidates = in_order(candidates, |(across, one, _), (other_across, other, _)| {
            let money = one.money_with(*across);
            money.total_cmp(&other.money_with(*other_across))
        });
        let mut begun = false;
        for (across, choice, bound) in candidates {
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
                if let Some(step) = steps.last_mut() {
                    step.equals.push(found);
                }
            } else if margin > widest + SLACK {
                if begun {
                    steps.pop();
                }
                begun = true;
                widest = margin;
                steps.push(Step {
                    found,
                    equals: vec![found],
                });
            }
        }
    }
    steps
}

/// What can be laid on a pair of slats with so many pencils across.
struct Bunch<'a> {
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
            let bound = choice.bound(&room, self.across, field.pitch(choice.set));
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
    if goal == Goal::Margin {
        // The last step has the widest margin, and of those the least wood.
        let mut equals = frontier
            .last()
            .map(|step| step.equals.clone())
            .unwrap_or_default();
        keep_best(&mut equals, |one, other| one.money.total_cmp(&other.money));
        return equals;
    }
    let mut best: Vec<&Choosable> = Vec::new();
    for choice in choices {
        match best
            .first()
            .map_or(Ordering::Less, |first| compare(choice, first, goal))
        {
            Ordering::Less => best = vec![choice],
            Ordering::Equal => best.push(choice),
            Ordering::Greater => {}
        }
    }
    let mut found: Vec<Found> = best
        .into_iter()
        .filter_map(|choice| field.lay(choice, choice.most, f64::NEG_INFINITY))
        .collect();
    keep_best(&mut found, |one, other| {
        let difference = other.margin - one.margin;
        if difference.abs().in_millimetres() <= SLACK {
            Ordering::Equal
        } else {
            difference.in_millimetres().total_cmp(&0.0)
        }
    });
    found
}

/// Less is better; what the margin decides is left open.
fn compare(one: &Choosable, other: &Choosable, goal: Goal) -> Ordering {
    let total = |choice: &Choosable| choice.most * choice.lengths;
    let pencils = total(other).cmp(&total(one));
    let wood = one
        .wood_with(one.most)
        .total_cmp(&other.wood_with(other.most));
    let money = one
        .money_with(one.most)
        .total_cmp(&other.money_with(other.most));
    match goal {
        Goal::Pencils => pencils.then(wood).then(money),
        Goal::Wood | Goal::Margin => wood.then(money),
        Goal::Money => money.then(wood),
    }
}

/// Keeps the first and all its equals.
fn keep_best(found: &mut Vec<Found>, order: impl Fn(&Found, &Found) -> Ordering) {
    let Some(best) = found.iter().copied().reduce(|best, next| {
        if order(&next, &best) == Ordering::Less {
            next
        } else {
            best
        }
    }) else {
        return;
    };
    found.retain(|each| order(each, &best) == Ordering::Equal);
}
