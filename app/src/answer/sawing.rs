//! The plan that saws blanks from planks.

use solver::sawing::{SawingLimits, SawingPlan, SawingProgress, saw};
use solver::{LengthUnit, ProjectDraft};

use super::sparing::Sparing;
use super::wording::sentence;
use crate::protocol::{JobId, Reply, SawnSoFar};

/// Plans the cuts. Every better plan is told as it is found, so that stopping keeps it.
pub(super) fn answer(
    job: JobId,
    draft: &ProjectDraft,
    unit: LengthUnit,
    tell: &mut dyn FnMut(Reply),
) -> Reply {
    let data = match draft.check_sawing() {
        Ok(data) => data,
        Err(problems) => {
            let told = |problem| sentence(problem, draft, unit);
            let problems = problems.iter().map(told).collect();
            return Reply::Refused { job, problems };
        }
    };
    let mut sparing = Sparing::default();
    let mut told = None;
    let outcome = saw(&data, &SawingLimits::default(), &mut |progress| {
        let best = progress.best.as_ref();
        let better = best.filter(|best| told.is_none_or(|told| best.cost < told));
        told = better.map_or(told, |better| Some(better.cost));
        if sparing.tells_next() || better.is_some() {
            let so_far = so_far(progress, better);
            tell(Reply::Sawing { job, so_far });
        }
        true
    });
    match outcome {
        Ok(outcome) => Reply::Sawn {
            job,
            sawn: (&outcome).into(),
        },
        Err(fault) => Reply::Fault {
            job: Some(job),
            reason: format!(
                "The plan did not stand its recount, so it is not shown ({fault}). \
                 Change a number of blanks a little and try again"
            ),
        },
    }
}

fn so_far(progress: &SawingProgress, better: Option<&SawingPlan>) -> SawnSoFar {
    SawnSoFar {
        rounds: progress.rounds.into(),
        // Before the first relaxation nothing is known of a bound.
        bound: (progress.bound > i64::MIN).then(|| progress.bound.into()),
        better: better.map(Into::into),
    }
}
