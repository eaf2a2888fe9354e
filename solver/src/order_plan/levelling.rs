//! Runs made earlier, so that the machines are not asked for more time than there is.

use super::data::OrderPlanData;
use super::plan::Decisions;
use super::ranges::Ranges;

/// Moves runs to earlier periods until each period has machine time enough, the cheapest move for the
/// time it frees first; what cannot be moved is left.
pub(super) fn level(data: &OrderPlanData, ranges: &Ranges, decisions: &mut Decisions) {
    for period in (1..data.periods()).rev() {
        while let Some(over) = overload(data, decisions, period) {
            let moves = (0..data.setups().len()).flat_map(|setup| {
                let earlier = (0..period).rev();
                earlier.map(move |to| (setup, to))
            });
            let moves = moves.filter_map(|(setup, to)| {
                Move::of(data, ranges, decisions, (setup, period, to), over)
            });
            let Some(best) = moves.min_by(|one, other| one.rank.total_cmp(&other.rank)) else {
                break;
            };
            decisions.runs[best.setup][period] -= best.sandwiches;
            decisions.runs[best.setup][best.to] += best.sandwiches;
        }
    }
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
        let most = run
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
        let frees = if sandwiches == run { all_frees } else { each * sandwiches };
        if sandwiches == 0 || frees == 0 {
            return None;
        }
        let held: i64 = data
            .good_pencils(setup)
            .iter()
            .map(|&(pencil, good)| {
                let each = data.pencils()[pencil].holding.saturating_mul(good.cast_signed());
                each / 1_000_000
            })
            .sum();
        let mut cost = held as f64 * sandwiches as f64 * (from - to) as f64;
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
    let seconds = data.draft().machine.seconds[period]?;
    let over = load(data, decisions, period).saturating_sub(seconds.saturating_mul(1_000));
    (over > 0).then_some(over)
}

fn room(data: &OrderPlanData, decisions: &Decisions, period: usize) -> u64 {
    let seconds = data.draft().machine.seconds[period];
    let most = seconds.map_or(u64::MAX, |seconds| seconds.saturating_mul(1_000));
    most.saturating_sub(load(data, decisions, period))
}
