//! The search for the nearest change of the barrel that gains something.

use super::Workbench;
use super::jobs::{Asker, JobState, take};
use super::searches::layout_of;
use crate::project_file;
use crate::protocol::{GainRow, Progress, Reply, Request};
use leptos::prelude::*;
use solver::{Field, Typed};

/// The search with its limits. A handle.
#[derive(Clone, Copy)]
pub struct Gains {
    bench: Workbench,
    /// How far size, corner radius and coat may move.
    pub limits: [RwSignal<Typed>; 3],
    state: RwSignal<JobState<Vec<GainRow>>>,
    /// How far the job is that is under way, if one is.
    busy: RwSignal<Option<Option<Progress>>>,
    asker: Asker,
}

impl Gains {
    /// Not asked yet; what is told is taken away when the project has changed.
    #[must_use]
    pub fn new(bench: Workbench) -> Self {
        let (state, busy) = (RwSignal::new(JobState::Waiting), RwSignal::new(None));
        let asker = Asker::at_rest(move |reply| {
            busy.set(match &reply {
                Reply::Progress { progress, .. } => Some(Some(*progress)),
                _ => None,
            });
            match reply {
                Reply::Gains { rows, .. } => state.set(JobState::Done(rows)),
                other => take(state, other),
            }
        });
        let limits = [0.2, 0.2, 0.02].map(|limit| RwSignal::new(Typed::Number(limit)));
        let gains = Self {
            bench,
            limits,
            state,
            busy,
            asker,
        };
        let rests_on = Memo::new(move |_| {
            let project = bench.project();
            let project = project.read();
            (layout_of(&project), project.slats.clone(), bench.unit.get())
        });
        Effect::new(move |first: Option<()>| {
            rests_on.track();
            if first.is_some() {
                gains.forget();
            }
        });
        gains
    }

    /// What was found, or why there is nothing.
    #[must_use]
    pub fn state(&self) -> ReadSignal<JobState<Vec<GainRow>>> {
        self.state.read_only()
    }

    /// Whether it is being looked for, and how far that is.
    #[must_use]
    pub fn busy(&self) -> ReadSignal<Option<Option<Progress>>> {
        self.busy.read_only()
    }

    /// Looks for it, within the limits that are numbers.
    pub fn ask(&self) {
        if self.busy.read_untracked().is_some() {
            self.asker.stop();
        }
        let project = project_file::write(&self.bench.project().read_untracked());
        let unit = self.bench.unit.get_untracked().into();
        let limits = self.limits.map(|limit| {
            let read = limit.read_untracked().read(Field::GainReach);
            read.unwrap_or_default()
        });
        self.state.set(JobState::Running(None));
        self.busy.set(Some(None));
        self.asker.ask(|job| Request::Gains {
            job,
            project,
            unit,
            limits_mm: limits,
        });
    }

    /// Stops looking.
    pub fn stop(&self) {
        self.asker.stop();
        self.busy.set(None);
        self.state.set(JobState::Stopped);
    }

    /// What was found is of another barrel now.
    fn forget(&self) {
        if self.busy.read_untracked().is_some() {
            self.asker.stop();
            self.busy.set(None);
        }
        if *self.state.read_untracked() != JobState::Waiting {
            self.state.set(JobState::Waiting);
        }
    }
}
