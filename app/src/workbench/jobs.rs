//! What the workers are asked, and how far they are.

use super::Workbench;
use super::pause::Pause;
use crate::project_file;
use crate::protocol::{AimWord, JobId, Progress, Purchase, Ranking, Reply, Request, USUAL_SECONDS};
use crate::view::Place;
use crate::worker_link::WorkerLink;
use leptos::prelude::*;
use solver::{ProjectDraft, Way};

/// How far a job is.
#[derive(Debug, Clone, PartialEq)]
pub enum JobState<T> {
    /// Not asked yet.
    Waiting,
    /// Asked, with the last word on how far it is.
    Running(Option<Progress>),
    /// Answered.
    Done(T),
    /// The project cannot be worked with, for these reasons.
    Refused(Vec<String>),
    /// Stopped by the user.
    Stopped,
    /// Something broke that is no fault of the project.
    Fault(String),
}

/// The two questions that workers answer, each with a worker of its own. A handle.
#[derive(Clone, Copy)]
pub struct Jobs {
    bench: Workbench,
    /// What makes one stock better than another.
    pub aim: RwSignal<AimWord>,
    ranking: RwSignal<JobState<Ranking>>,
    purchase: RwSignal<JobState<Purchase>>,
    ranker: Asker,
    purchaser: Asker,
    /// Whether the ranker answers a question of a barrel that is being shaped.
    ranking_busy: StoredValue<bool>,
    /// Whether that barrel has changed since.
    ranking_late: StoredValue<bool>,
}

/// A worker with the job that it was last asked.
#[derive(Clone, Copy)]
pub(super) struct Asker {
    link: StoredValue<WorkerLink, LocalStorage>,
    latest: RwSignal<Option<JobId>>,
}

impl Jobs {
    /// Starts the workers and asks them again whenever what they answer from has changed and
    /// is looked at.
    #[must_use]
    pub fn start(bench: Workbench) -> Self {
        let (ranking, purchase) = (
            RwSignal::new(JobState::Waiting),
            RwSignal::new(JobState::Waiting),
        );
        let ranker = Asker::start(move |reply| match reply {
            Reply::Ranked {
                ranking: answer, ..
            } => ranking.set(JobState::Done(answer)),
            other => take(ranking, other),
        });
        let purchaser = Asker::start(move |reply| match reply {
            Reply::Purchased {
                purchase: answer, ..
            } => purchase.set(JobState::Done(answer)),
            other => take(purchase, other),
        });
        let jobs = Self {
            bench,
            aim: RwSignal::new(AimWord::Pencils),
            ranking,
            purchase,
            ranker,
            purchaser,
            ranking_busy: StoredValue::new(false),
            ranking_late: StoredValue::new(false),
        };
        jobs.ask_when_changed();
        jobs
    }

    /// The ranking of the stocks.
    #[must_use]
    pub fn ranking(&self) -> ReadSignal<JobState<Ranking>> {
        self.ranking.read_only()
    }

    /// The slats to buy.
    #[must_use]
    pub fn purchase(&self) -> ReadSignal<JobState<Purchase>> {
        self.purchase.read_only()
    }

    /// Asks for the slats to buy.
    pub fn ask_purchase(&self) {
        let unit = self.bench.unit.get_untracked().into();
        let project = project_file::write(&self.bench.project().read_untracked());
        if matches!(*self.purchase.read_untracked(), JobState::Running(_)) {
            // A worker that solves hears nothing: the old question ends with it.
            self.purchaser.stop();
        }
        self.purchase.set(JobState::Running(None));
        self.purchaser.ask(|job| Request::Purchase {
            job,
            project,
            seconds: USUAL_SECONDS,
            unit,
        });
    }

    /// Stops looking for the slats to buy.
    pub fn stop_purchase(&self) {
        self.purchaser.stop();
        self.purchase.set(JobState::Stopped);
    }

    fn ask_ranking(&self) {
        let unit = self.bench.unit.get_untracked().into();
        let project = project_file::write(&self.bench.project().read_untracked());
        let aim = self.aim.get_untracked();
        // The last answer stays on the screen until the next one is there.
        if !matches!(*self.ranking.read_untracked(), JobState::Done(_)) {
            self.ranking.set(JobState::Running(None));
        }
        self.ranker.ask(|job| Request::Rank {
            job,
            project,
            aim,
            unit,
        });
    }

    /// Asks for the ranking while a barrel is shaped: at once, or as soon as the worker is free, and
    /// then of the barrel as it is by then.
    fn ask_ranking_now(&self) {
        let busy = self.ranking_busy.get_value();
        self.ranking_late.set_value(busy);
        if !busy {
            self.ranking_busy.set_value(true);
            self.ask_ranking();
        }
    }

    fn ask_when_changed(self) {
        let project = self.bench.project();
        // Only what an answer rests on counts as a change.
        let ranked_from = Memo::new(move |_| {
            let project = project.read();
            let barrel = project
                .barrel_place(project.layout.barrel)
                .map(|at| project.barrels[at].draft.clone());
            let turn = (project.layout_way() == Way::Turned).then(|| project.layout.turn.clone());
            (
                barrel,
                turn,
                project.slats.clone(),
                wood_and_tools(&project),
            )
        });
        let bought_from = Memo::new(move |_| {
            let project = project.read();
            (
                project.barrels.clone(),
                project.slats.clone(),
                wood_and_tools(&project),
                project.orders.clone(),
            )
        });
        let place = self.bench.place;
        let unit = self.bench.unit;
        // What was asked last is not asked again when its place is only looked at once more.
        let ranking_pause = Pause::new();
        Effect::new(move |asked: Option<Option<_>>| {
            let asked = asked.flatten();
            let wanted = (ranked_from.get(), self.aim.get(), unit.get());
            let place = place.get();
            let is_shown = matches!(place, Place::Layout | Place::Barrel);
            if !is_shown || asked.as_ref() == Some(&wanted) {
                return asked;
            }
            if place == Place::Barrel {
                self.ask_ranking_now();
            } else {
                ranking_pause.then(move || self.ask_ranking());
            }
            Some(wanted)
        });
        // What has changed meanwhile is asked as soon as the last answer is there.
        Effect::new(move |_| {
            if !matches!(*self.ranking.read(), JobState::Running(_)) {
                self.ranking_busy.set_value(false);
                if self.ranking_late.get_value() {
                    self.ask_ranking_now();
                }
            }
        });
        let purchase_pause = Pause::new();
        Effect::new(move |asked: Option<Option<_>>| {
            let asked = asked.flatten();
            let wanted = (bought_from.get(), unit.get());
            if place.get() != Place::Timber || asked.as_ref() == Some(&wanted) {
                return asked;
            }
            purchase_pause.then(move || self.ask_purchase());
            Some(wanted)
        });
    }
}

impl Asker {
    /// A worker whose replies to its latest job are taken in.
    fn start(on_reply: impl Fn(Reply) + 'static) -> Self {
        let asker = Self::at_rest(on_reply);
        asker.link.with_value(WorkerLink::begin);
        asker
    }

    /// The same, with a worker that starts with its first job.
    pub(super) fn at_rest(on_reply: impl Fn(Reply) + 'static) -> Self {
        let latest = RwSignal::new(None::<JobId>);
        let link = WorkerLink::at_rest(move |reply| {
            if reply
                .job()
                .is_none_or(|job| Some(job) == latest.get_untracked())
            {
                on_reply(reply);
            }
        });
        Self {
            link: StoredValue::new_local(link),
            latest,
        }
    }

    pub(super) fn ask(&self, request: impl FnOnce(JobId) -> Request) {
        self.link.with_value(|link| {
            let job = link.next_job();
            self.latest.set(Some(job));
            link.ask(request(job));
        });
    }

    pub(super) fn stop(&self) {
        self.latest.set(None);
        self.link.with_value(WorkerLink::stop);
    }
}

/// What both answers rest on beside pencils and stocks: how the wood moves, and how it is grooved.
fn wood_and_tools(project: &ProjectDraft) -> impl Clone + PartialEq + Send + Sync + use<> {
    (
        project.species.clone(),
        project.conditions.clone(),
        project.cutter_sets.clone(),
        project.rules.clone(),
    )
}

/// Takes in a reply that is no answer.
pub(super) fn take<T: Send + Sync + 'static>(state: RwSignal<JobState<T>>, reply: Reply) {
    match reply {
        Reply::Progress { progress, .. } => {
            if matches!(*state.read_untracked(), JobState::Running(_)) {
                state.set(JobState::Running(Some(progress)));
            }
        }
        Reply::Refused { problems, .. } => state.set(JobState::Refused(problems)),
        Reply::Fault { reason, .. } => state.set(JobState::Fault(reason)),
        Reply::Ready { .. }
        | Reply::Ranked { .. }
        | Reply::Searched { .. }
        | Reply::Thresholds { .. }
        | Reply::Thrown { .. }
        | Reply::Outlook { .. }
        | Reply::Sawing { .. }
        | Reply::Sawn { .. }
        | Reply::Planning { .. }
        | Reply::Planned { .. }
        | Reply::Told { .. }
        | Reply::Measured { .. }
        | Reply::Expected { .. }
        | Reply::Cutters { .. }
        | Reply::Gains { .. }
        | Reply::Purchased { .. } => {}
    }
}
