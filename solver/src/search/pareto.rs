//! Which of all choices are best, and which lie on the frontier of wood and margin.

use super::room::{Room, SLACK};
use super::{Choosable, Field, Found, Goal};
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
pub(super) fn frontier(field: &Field<'_>, choices: &[Choosable]) -> Vec<Step> {
    struct Candidate<'a> {
        choice: &'a Choosable,
        across: u32,
        wood: f64,
        money: f64,
    }
    let mut candidates: Vec<Candidate<'_>> = choices
        .iter()
        .flat_map(|choice| {
            (1..=choice.most).map(move |across| Candidate {
                choice,
                across,
                wood: choice.wood_with(across),
                money: choice.money_with(across),
            })
        })
        .collect();
    // The sort is stable: equals keep the order of the lists.
    candidates.sort_by(|one, other| {
        one.wood
            .total_cmp(&other.wood)
            .then(one.money.total_cmp(&other.money))
    });
    let mut steps: Vec<Step> = Vec::new();
    let mut widest = f64::NEG_INFINITY;
    let mut rooms: Option<((usize, usize), Room)> = None;
    for Candidate {
        choice,
        across,
        wood,
        ..
    } in candidates
    {
        let pair = (choice.top, choice.bottom);
        let room = match rooms {
            Some((at, room)) if at == pair => room,
            _ => field.room(choice.top, choice.bottom),
        };
        rooms = Some((pair, room));
        // Of the same wood a margin as wide is an equal; of more wood it is no step.
        let same_wood = steps
            .last()
            .is_some_and(|step| step.found.wood.in_cubic_millimetres() == wood);
        let needed = if same_wood {
            widest - SLACK
        } else {
            widest + SLACK
        };
        if choice.bound(&room, across, field.pitch(choice.set)) < needed {
            continue;
        }
        let Some(found) = field.lay(choice, across, needed) else {
            continue;
        };
        let margin = found.margin.in_millimetres();
        if same_wood && (margin - widest).abs() <= SLACK {
            if let Some(step) = steps.last_mut() {
                step.equals.push(found);
            }
        } else if margin > widest + SLACK {
            if same_wood {
                steps.pop();
            }
            widest = margin;
            steps.push(Step {
                found,
                equals: vec![found],
            });
        }
    }
    steps
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
