//! From a request to its reply: what a worker does, without the worker.

mod cutters;
mod gains;
mod measured;
mod orders;
mod outlook;
mod parts;
mod purchase;
mod ranking;
mod sawing;
mod search;
mod sparing;
#[cfg(test)]
mod tests;
mod thresholds;
mod wording;

use crate::project_file;
use crate::protocol::{Reply, Request};

/// Answers a request; `tell` hears how far the job has come, some fifty times at most; a
/// purchase of many seconds may take up to a hundred.
///
/// The last word is the value: the ranking, the purchase or another answer, everything that is wrong with the
/// project, or a fault of the program.
pub fn answer(request: Request, tell: &mut dyn FnMut(Reply)) -> Reply {
    let (job, text) = match &request {
        Request::Rank { job, project, .. }
        | Request::Search { job, project, .. }
        | Request::Thresholds { job, project, .. }
        | Request::Throw { job, project, .. }
        | Request::Outlook { job, project, .. }
        | Request::Saw { job, project, .. }
        | Request::Plan { job, project, .. }
        | Request::PayingPrices { job, project, .. }
        | Request::WiderSlats { job, project, .. }
        | Request::Measure { job, project, .. }
        | Request::Expect { job, project, .. }
        | Request::Cutters { job, project, .. }
        | Request::Gains { job, project, .. }
        | Request::Purchase { job, project, .. } => (*job, project),
    };
    let draft = match project_file::read(text) {
        Ok(opened) => opened.draft,
        Err(problems) => {
            // What the page lets be typed keeps the limits of a file, but for what grew too large.
            let problems = problems.iter().map(ToString::to_string).collect();
            return Reply::Refused { job, problems };
        }
    };
    match request {
        Request::Rank { aim, unit, .. } => {
            ranking::answer(job, &draft, aim.into(), unit.into(), tell)
        }
        Request::Search { unit, .. } => search::answer(job, &draft, unit.into(), tell),
        Request::Thresholds { unit, .. } => thresholds::answer(job, &draft, unit.into()),
        Request::Throw {
            unit,
            seed,
            first,
            blocks,
            ..
        } => outlook::throw(job, &draft, unit.into(), seed, first, blocks),
        Request::Outlook { unit, .. } => outlook::answer(job, &draft, unit.into(), tell),
        Request::Saw { unit, .. } => sawing::answer(job, &draft, unit.into(), tell),
        Request::Plan { unit, .. } => orders::plan(job, &draft, unit.into(), tell),
        Request::PayingPrices {
            unit, cost, stocks, ..
        } => orders::paying_prices(job, &draft, unit.into(), cost, &stocks),
        Request::WiderSlats {
            unit, now, stocks, ..
        } => orders::wider_slats(job, &draft, unit.into(), now, &stocks),
        Request::Expect { unit, .. } => outlook::expected(job, &draft, unit.into()),
        Request::Cutters { unit, .. } => cutters::answer(job, &draft, unit.into()),
        Request::Gains {
            unit, limits_mm, ..
        } => gains::answer(job, &draft, unit.into(), limits_mm, tell),
        Request::Measure {
            unit,
            list,
            agreed_mm,
            sheet,
            ..
        } => {
            let agreed = agreed_mm.map(solver::Length::millimetres);
            measured::answer(job, &draft, unit.into(), &list, agreed, sheet)
        }
        Request::Purchase { seconds, unit, .. } => {
            purchase::answer(job, draft, seconds, unit.into(), tell)
        }
    }
}
