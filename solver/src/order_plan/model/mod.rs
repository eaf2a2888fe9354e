//! Questions to the solver, and how it is run; only this module and its parts know it.

mod columns;
mod cut;
mod dive;
mod formulation;
mod point;
mod value;

use std::time::Duration;

pub(super) use self::cut::{Cut, broken};
pub(super) use self::dive::dive;
pub(super) use self::point::Point;

use self::formulation::Formulation;
use super::data::OrderPlanData;
use super::ranges::Ranges;

/// What must be whole. Each is a relaxation of those after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Whole {
    /// Nothing: a linear program.
    Nothing,
    /// Whether a set-up runs and in which tier is ordered.
    Choices,
    /// These and packs.
    Packs,
    /// All: sandwiches and sawn slats too.
    Runs,
}

/// A question to the solver.
#[derive(Clone, Copy, Debug)]
pub(super) struct Question<'a> {
    pub(super) ranges: &'a Ranges,
    pub(super) cuts: &'a [Cut],
    pub(super) whole: Whole,
    /// Most the aim may come to, in its units.
    pub(super) most: Option<i64>,
    /// Keeps slats for a sandwich more of every set-up that runs, so that runs can be rounded up.
    pub(super) with_reserve: bool,
}

/// Where a solve stands, or ended.
#[derive(Clone, Debug)]
pub(super) struct Finding {
    pub(super) best: Option<Point>,
    /// Nothing comes to less, in whole units of the aim after the margin was taken off.
    pub(super) bound: i64,
    /// There is proof that no solution exists.
    pub(super) none_exists: bool,
    /// All was searched.
    pub(super) is_complete: bool,
    /// Branches examined.
    pub(super) nodes: u64,
}

/// Branches between two looks at the limits.
const SLICE: u64 = 20;
/// The simplex method of the solver can turn in circles. A slice takes milliseconds: one that takes as
/// long as this, without a branch, ends the solve with what was found before. Nothing else depends on
/// time.
const LONGEST_SLICE: Duration = Duration::from_secs(10);

/// Solves within so many branches; the root is no branch and is solved in any case. `go_on` sees the
/// finding after each slice and may stop.
pub(super) fn solve(
    data: &OrderPlanData,
    question: Question<'_>,
    nodes: u64,
    go_on: &mut dyn FnMut(&Finding) -> bool,
) -> Finding {
    let mut finding = Finding {
        best: None,
        bound: 0,
        none_exists: false,
        is_complete: false,
        nodes: 0,
    };
    let model = Formulation::new(data, question);
    let mut problem = model.problem.as_inner().clone();
    // With no time the solver stops at once and hands back a search that runs in slices, which
    // can be counted in branches; a model without whole-number variables is solved in one go.
    let sliced = problem.has_integer_vars();
    let first_slice = if sliced {
        Duration::ZERO
    } else {
        LONGEST_SLICE
    };
    problem.set_time_limit(first_slice);
    let mut state = problem.solve();
    let mut tried = !sliced;
    loop {
        let outcome = match state {
            Ok(outcome) => outcome,
            Err(error) => {
                // Any other failure leaves only what the slices before found.
                finding.none_exists =
                    good_lp::ResolutionError::from(error) == good_lp::ResolutionError::Infeasible;
                finding.is_complete = finding.none_exists;
                return finding;
            }
        };
        let stats = outcome.stats();
        let is_stuck = tried && sliced && stats.nodes_solved == finding.nodes;
        finding.nodes = stats.nodes_solved;
        let bound = stats.best_bound.map_or(0, |bound| model.safe_bound(bound));
        finding.bound = finding.bound.max(bound);
        if let Some(solution) = outcome.solution() {
            let values: Vec<f64> = solution.iter().map(|(_, value)| value).collect();
            finding.best = Some(model.point(&values));
        }
        finding.is_complete = outcome.is_optimal();
        let left = nodes.saturating_sub(finding.nodes);
        if finding.is_complete || is_stuck || (tried && (!sliced || left == 0 || !go_on(&finding)))
        {
            return finding;
        }
        tried = true;
        let mut options = outcome.last_resume_options();
        options.node_limit = Some(left.clamp(1, SLICE));
        options.time_limit = Some(LONGEST_SLICE);
        state = outcome.resume_with(options);
    }
}
