//! From a request to its reply: what a worker does, without the worker.

mod parts;
mod purchase;
mod ranking;
mod search;
mod sparing;
#[cfg(test)]
mod tests;
mod thresholds;
mod wording;

use crate::protocol::{Reply, Request};

/// Answers a request; `tell` hears how far the job has come, some fifty times at most; a
/// purchase of many seconds may take up to a hundred.
///
/// The last word is the value: the ranking or the purchase, everything that is wrong with the
/// project, or a fault of the program.
pub fn answer(request: Request, tell: &mut dyn FnMut(Reply)) -> Reply {
    match request {
        Request::Rank {
            job,
            project,
            aim,
            unit,
        } => ranking::answer(job, &project.to_draft(), aim.into(), unit.into(), tell),
        Request::Search { job, project, unit } => {
            search::answer(job, &project.to_draft(), unit.into(), tell)
        }
        Request::Thresholds { job, project, unit } => {
            thresholds::answer(job, &project.to_draft(), unit.into())
        }
        Request::Purchase {
            job,
            project,
            seconds,
            unit,
        } => purchase::answer(job, project.to_draft(), seconds, unit.into(), tell),
    }
}
