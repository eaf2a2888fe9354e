//! The half of the conversation that a worker says.

use serde::{Deserialize, Serialize};

use super::cutters::CutterPlan;
use super::gain::GainRow;
use super::job::{JobId, Progress};
use super::measured::MeasuredList;
use super::orders::{OrdersSoFar, PlannedOrders};
use super::outlook::{Expected, Outlook, Thrown};
use super::purchase::Purchase;
use super::ranking::Ranking;
use super::sawing::{Sawn, SawnSoFar};
use super::search::Searched;
use super::threshold::ThresholdRow;

/// What a worker says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Reply {
    /// The worker listens from now on.
    Ready {
        /// The build it belongs to; empty when the build was not finished by the task runner.
        build: String,
    },
    /// How far a job has come.
    Progress {
        /// The job.
        job: JobId,
        /// How far.
        progress: Progress,
    },
    /// The end of [`Request::Rank`](super::Request::Rank).
    Ranked {
        /// The job.
        job: JobId,
        /// The ranking.
        ranking: Ranking,
    },
    /// The end of [`Request::Search`](super::Request::Search).
    Searched {
        /// The job.
        job: JobId,
        /// What was found.
        searched: Searched,
    },
    /// The end of [`Request::Thresholds`](super::Request::Thresholds).
    Thresholds {
        /// The job.
        job: JobId,
        /// A row for each input of the layout, slats first, then rules, then the barrel.
        rows: Vec<ThresholdRow>,
    },
    /// The end of [`Request::Throw`](super::Request::Throw).
    Thrown {
        /// The job.
        job: JobId,
        /// The sandwiches, counted.
        thrown: Thrown,
    },
    /// The end of [`Request::Outlook`](super::Request::Outlook).
    Outlook {
        /// The job.
        job: JobId,
        /// What can be told.
        outlook: Outlook,
    },
    /// How far a [`Request::Saw`](super::Request::Saw) has come.
    Sawing {
        /// The job.
        job: JobId,
        /// How far.
        so_far: SawnSoFar,
    },
    /// The end of [`Request::Saw`](super::Request::Saw).
    Sawn {
        /// The job.
        job: JobId,
        /// What came out.
        sawn: Sawn,
    },
    /// How far a [`Request::Plan`](super::Request::Plan) has come.
    Planning {
        /// The job.
        job: JobId,
        /// How far.
        so_far: Box<OrdersSoFar>,
    },
    /// The end of [`Request::Plan`](super::Request::Plan).
    Planned {
        /// The job.
        job: JobId,
        /// What came out.
        planned: Box<PlannedOrders>,
    },
    /// The end of [`Request::PayingPrices`](super::Request::PayingPrices) and of
    /// [`Request::WiderSlats`](super::Request::WiderSlats).
    Told {
        /// The job.
        job: JobId,
        /// The answer, a sentence a line.
        lines: Vec<String>,
    },
    /// The end of [`Request::Expect`](super::Request::Expect).
    Expected {
        /// The job.
        job: JobId,
        /// What is expected.
        expected: Expected,
    },
    /// The end of [`Request::Cutters`](super::Request::Cutters).
    Cutters {
        /// The job.
        job: JobId,
        /// What they make.
        plan: CutterPlan,
    },
    /// The end of [`Request::Gains`](super::Request::Gains).
    Gains {
        /// The job.
        job: JobId,
        /// The nearest first.
        rows: Vec<GainRow>,
    },
    /// The end of [`Request::Measure`](super::Request::Measure).
    Measured {
        /// The job.
        job: JobId,
        /// What the list says.
        measured: MeasuredList,
    },
    /// The end of [`Request::Purchase`](super::Request::Purchase).
    Purchased {
        /// The job.
        job: JobId,
        /// What came out.
        purchase: Purchase,
    },
    /// The project cannot be worked with.
    Refused {
        /// The job.
        job: JobId,
        /// Everything that is wrong, each a sentence that says where and what to try.
        problems: Vec<String>,
    },
    /// Something broke that is no fault of the project. Asking again is safe: if the worker is
    /// gone, the next request starts another.
    Fault {
        /// The job it happened to, if one was under way.
        job: Option<JobId>,
        /// What is known of it, and what to try.
        reason: String,
    },
}

impl Reply {
    /// The job that is spoken of, if any.
    #[must_use]
    pub const fn job(&self) -> Option<JobId> {
        match self {
            Self::Ready { .. } => None,
            Self::Progress { job, .. }
            | Self::Ranked { job, .. }
            | Self::Searched { job, .. }
            | Self::Thresholds { job, .. }
            | Self::Thrown { job, .. }
            | Self::Outlook { job, .. }
            | Self::Sawing { job, .. }
            | Self::Sawn { job, .. }
            | Self::Planning { job, .. }
            | Self::Planned { job, .. }
            | Self::Told { job, .. }
            | Self::Measured { job, .. }
            | Self::Expected { job, .. }
            | Self::Cutters { job, .. }
            | Self::Gains { job, .. }
            | Self::Purchased { job, .. }
            | Self::Refused { job, .. } => Some(*job),
            Self::Fault { job, .. } => *job,
        }
    }

    /// Whether this is the last word on its job.
    #[must_use]
    pub const fn is_last(&self) -> bool {
        !matches!(
            self,
            Self::Ready { .. }
                | Self::Progress { .. }
                | Self::Sawing { .. }
                | Self::Planning { .. }
        )
    }
}
