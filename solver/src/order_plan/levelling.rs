//! Runs made earlier or later, so that the machines are not asked for more time than there is.

use std::ops::Range;

use super::data::OrderPlanData;
use super::plan::{Decisions, made};
use super::ranges::Ranges;
use super::stages::MILLION;

/// Moves runs to other periods until each has machine time enough, the cheapest move for the time it
/// frees first: to earlier periods, from the last on, and what is not needed yet to later ones, from
/// the first on. What cannot be moved is left.
pub(super) fn level(data: &OrderPlanData, ranges: &Ranges, decisions: &mut Decisions) {
    let periods = data.periods();
    for _ in 0..PASSES {
        for from in (1..periods).rev() {
            relieve(data, ranges, decisions, from, 0..from);
        }
        for from in 0..periods - 1 {
            relieve(data, ranges, decisions, from, from + 1..periods);
        }
    }
}

/// A move may burden another period anew.
const PASSES: usize = 3;

fn relieve(
    data: &OrderPlanData,
    ranges: &Ranges,
    decisions: &mut Decisions,
    from: usize,
    others: Range<usize>,
) {
    while let Some(over) = overload(data, decisions, from) {
        let setups = 0..data.setups().len();
        let running = setups.filter(|&setup| decisions.runs[setup][from] > 0);
        let moves = running.flat_map(|setup| others.clone().map(move |to| (setup, to)));
        let moves = moves
            .filter_map(|(setup, to)| Move::of(data, ranges, decisions, (setup, from, to), over));
        let Some(best) = moves.min_by(|one, other| one.rank.total_cmp(&other.rank)) else {
            break;
        };
        decisions.runs[best.setup][from] -= best.sandwiches;
        decisions.runs[best.setup][best.to] += best.sandwiches;
    }
}

/// Sandwiches of a run that nothing needs before a later period; all of them for an earlier one.
fn movable(
    data: &OrderPlanData,
    decisions: &Decisions,
    (setup, from, to): (usize, usize, usize),
) -> u64 {
    let run = decisions.runs[setup][from];
    let pencils = data
        .good_pencils(setup)
        .iter()
        .filter(|(_, good)| *good > 0);
    let spare = pencils.map(|&(pencil, good)| {
        let mut made = made(data, &decisions.runs, pencil).into_iter();
        let mut store = 0;
        let mut least = u64::MAX;
        for period in 0..to {
            store = (store + made.next().unwrap_or(0)).saturating_sub(data.net(pencil, period));
            if period >= from {
                least = least.min(store);
            }
        }
        // One pencil less, as what is made is counted down.
        let spare = u128::from(least.saturating_sub(1)) * u128::from(MILLION);
        u64::try_from(spare / u128::from(good)).unwrap_or(u64::MAX)
    });
    spare.min().unwrap_or(0).min(run)
}

struct Move {
    setup: usize,
    to: usize,
    sandwiches: u64,
    /// Cost for each millisecond that is freed.
    rank: f64,
}

impl Move {
    /// As many sandwiches as free the time wanted or find room; nothing where none do.
    fn of(
        data: &OrderPlanData,
        ranges: &Ranges,
        decisions: &Decisions,
        (setup, from, to): (usize, usize, usize),
        over: u64,
    ) -> Option<Self> {
        let line = &data.setups()[setup];
        let run = decisions.runs[setup][from];
        let there = decisions.runs[setup][to];
        let change = 1_000 * u64::from(line.changeover_seconds);
        let each = u64::from(line.milliseconds);
        let room = room(data, decisions, to).saturating_sub(if there == 0 { change } else { 0 });
        let fits = room.checked_div(each).unwrap_or(u64::MAX);
        let movable = movable(data, decisions, (setup, from, to));
        let most = movable
            .min(fits)
            .min(ranges.runs[setup][to].saturating_sub(there));
        let wanted = over.div_ceil(each.max(1));
        // All of it where that alone is enough, as it saves a change-over.
        let all_frees = each * run + change;
        let sandwiches = if most == run && (wanted >= run || change >= over) {
            run
        } else {
            most.min(wanted)
        };
        let frees = if sandwiches == run {
            all_frees
        } else {
            each * sandwiches
        };
        if sandwiches == 0 || frees == 0 {
            return None;
        }
        let held: i64 = data
            .good_pencils(setup)
            .iter()
            .map(|&(pencil, good)| {
                let each = data.pencils()[pencil]
                    .holding
                    .saturating_mul(good.cast_signed());
                each / 1_000_000
            })
            .sum();
        let mut cost = held as f64 * sandwiches as f64 * (from as f64 - to as f64);
        let changeover = |period: usize| {
            let (cost, machine) = data.changeover_parts(setup, period);
            (cost + machine) as f64
        };
        if there == 0 {
            cost += changeover(to);
        }
        if sandwiches == run {
            cost -= changeover(from);
        }
        Some(Self {
            setup,
            to,
            sandwiches,
            rank: cost / frees.min(over) as f64,
        })
    }
}

/// Milliseconds that runs and change-overs of a period take.
fn load(data: &OrderPlanData, decisions: &Decisions, period: usize) -> u64 {
    let lines = data.setups().iter().zip(&decisions.runs);
    lines
        .filter(|(_, runs)| runs[period] > 0)
        .map(|(line, runs)| {
            1_000 * u64::from(line.changeover_seconds)
                + u64::from(line.milliseconds).saturating_mul(runs[period])
        })
        .fold(0, u64::saturating_add)
}

fn overload(data: &OrderPlanData, decisions: &Decisions, period: usize) -> Option<u64> {
    let over = load(data, decisions, period).checked_sub(time(data, period)?)?;
    (over > 0).then_some(over)
}

fn room(data: &OrderPlanData, decisions: &Decisions, period: usize) -> u64 {
    let most = time(data, period).unwrap_or(u64::MAX);
    most.saturating_sub(load(data, decisions, period))
}

/// Milliseconds to be filled: some are kept for a sandwich more here and there.
fn time(data: &OrderPlanData, period: usize) -> Option<u64> {
    let most = data.draft().machine.seconds[period]?.saturating_mul(1_000);
    let longest = data.setups().iter().map(|line| line.milliseconds).max();
    let reserve = 2 * data.pencils().len() as u64 * u64::from(longest.unwrap_or(0));
    Some(most - reserve.min(most / 200))
}
