//! Questions to the solver, and how it is run; only this module and its formulation know it.

mod formulation;

use std::time::Duration;

use self::formulation::Formulation;
use super::data::PurchaseData;

/// What is made as small as possible.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Goal {
    /// Price of the packs, hundredths of the currency.
    Cost,
    /// Sandwiches run.
    Sandwiches,
    /// Pencils missing, with every pack that helps bought.
    Shortage,
}

/// A question to the solver.
#[derive(Clone, Copy, Debug)]
pub(super) struct Question<'a> {
    pub(super) goal: Goal,
    /// Whole sandwiches, or any fraction of them: a relaxation.
    pub(super) whole_runs: bool,
    /// Buy exactly these packs.
    pub(super) packs: Option<&'a [u64]>,
    /// Least and greatest cost allowed, hundredths.
    pub(super) cost: Option<(i64, i64)>,
}

/// Runs and packs that meet the rows, up to the solver's tolerance.
#[derive(Clone, Debug)]
pub(super) struct Answer {
    /// `runs[order][stock]`, sandwiches.
    pub(super) runs: Vec<Vec<f64>>,
    pub(super) packs: Vec<u64>,
}

/// Where a solve stands, or ended.
#[derive(Clone, Debug)]
pub(super) struct Finding {
    pub(super) best: Option<Answer>,
    /// No solution has a smaller goal, rounded up to a whole number after the margin was taken
    /// off. Never negative.
    pub(super) bound: u64,
    /// There is proof that no solution exists.
    pub(super) none_exists: bool,
    /// Branches examined.
    pub(super) nodes: u64,
    /// Time spent in the solver, by its own clock.
    pub(super) elapsed: Duration,
}

/// Branches between two looks at the limits and reports of progress.
const SLICE: u64 = 100;
/// A longer time limit is no limit; the solver's clock could not hold the end of it.
const LONGEST: Duration = Duration::from_secs(7 * 24 * 3600);

/// Solves within limits; the root is no branch and is solved in any case but want of time. `go_on` sees the finding after each slice and may stop.
pub(super) fn solve(
    data: &PurchaseData,
    question: Question<'_>,
    nodes: u64,
    time: Option<Duration>,
    go_on: &mut dyn FnMut(&Finding) -> bool,
) -> Finding {
    let mut finding = Finding {
        best: None,
        bound: 0,
        none_exists: false,
        nodes: 0,
        elapsed: Duration::ZERO,
    };
    let model = Formulation::new(data, question);
    let mut problem = model.problem.as_inner().clone();
    // With no time the solver stops at once and hands back a search that runs in slices, which
    // can be counted in branches; a model without whole-number variables is solved in one go.
    let sliced = problem.has_integer_vars();
    problem.set_time_limit(if sliced {
        Duration::ZERO
    } else {
        time.unwrap_or(LONGEST).min(LONGEST)
    });
    let mut state = problem.solve();
    let mut tried = !sliced;
    loop {
        let outcome = match state {
            Ok(outcome) => outcome,
            Err(error) => {
                // Any other failure leaves only what the slices before found.
                finding.none_exists =
                    good_lp::ResolutionError::from(error) == good_lp::ResolutionError::Infeasible;
                return finding;
            }
        };
        let stats = outcome.stats();
        finding.nodes = stats.nodes_solved;
        finding.elapsed = stats.elapsed;
        finding.bound = finding
            .bound
            .max(stats.best_bound.map_or(0, |bound| model.safe_bound(bound)));
        if let Some(solution) = outcome.solution() {
            let values: Vec<f64> = solution.iter().map(|(_, value)| value).collect();
            finding.best = Some(model.answer(&values));
        }
        let time_left = time.map(|time| time.min(LONGEST).saturating_sub(finding.elapsed));
        let nodes_left = nodes.saturating_sub(finding.nodes);
        let no_time = time_left == Some(Duration::ZERO);
        if outcome.is_optimal()
            || no_time
            || (tried && (!sliced || nodes_left == 0 || !go_on(&finding)))
        {
            return finding;
        }
        tried = true;
        let mut options = outcome.last_resume_options();
        options.node_limit = Some(nodes_left.min(SLICE));
        options.time_limit = time_left;
        state = outcome.resume_with(options);
    }
}
