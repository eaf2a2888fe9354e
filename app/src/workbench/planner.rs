//! The order plan, what is asked beside it, and the worker that looks for both.

use super::Workbench;
use super::jobs::{Asker, JobState};
use crate::project_file;
use crate::protocol::{
    JobId, OrderEndWord, OrdersSoFar, PlanSheet, PlannedOrders, Reply, Request, UnitWord, Whole,
};
use leptos::prelude::*;
use solver::ProjectDraft;
use solver::order_plan::PlanAim;
use std::sync::Arc;

/// The order plan. It is looked for when asked, and kept until the next one. A handle.
#[derive(Clone, Copy)]
pub struct Planner {
    bench: Workbench,
    state: RwSignal<Planning>,
    /// The project as it was asked of, without what no order plan rests on.
    asked: StoredValue<Option<Arc<Asked>>>,
    /// The plan that was set aside.
    pub aside: RwSignal<Option<Arc<OrderPlanned>>>,
    /// At which prices stocks pay that the plan does not buy.
    pub prices: RwSignal<JobState<Vec<String>>>,
    /// What wider slats would save.
    pub wider: RwSignal<JobState<Vec<String>>>,
    asker: Asker,
}

/// What was asked.
#[derive(Debug, PartialEq)]
struct Asked {
    project: ProjectDraft,
    /// Which of the projects that were put on the bench it is of.
    put: u32,
}

/// How far the plan is.
#[derive(Debug, Clone, PartialEq)]
pub enum Planning {
    /// Not asked yet.
    Waiting,
    /// Looked for; with the best plan so far.
    Running(Arc<OrdersSoFar>),
    /// Answered.
    Planned(Arc<OrderPlanned>),
    /// Stopped before there was a plan.
    Stopped,
    /// The orders cannot be planned, for these reasons.
    Refused(Vec<String>),
    /// Something broke that is no fault of the project.
    Fault(String),
}

/// An answer, with what it was asked of.
#[derive(Debug, PartialEq)]
pub struct OrderPlanned {
    asked: Arc<Asked>,
    /// How the search ended.
    pub ending: HowGood,
    /// What is made small.
    pub aim: PlanAim,
    /// What came out.
    pub answer: PlannedOrders,
}

/// How good a plan is, or why there is none.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HowGood {
    /// No plan is better.
    Proved,
    /// A better one is not ruled out.
    WithinGap,
    /// Stopped by the user; a better one is not ruled out.
    Stopped,
    /// There is no plan.
    NoPlan,
    /// None was found, and there may be one.
    NoneFound,
}

impl Planner {
    /// Nothing is asked yet; the worker starts with the first question.
    #[must_use]
    pub fn new(bench: Workbench) -> Self {
        let state = RwSignal::new(Planning::Waiting);
        let asked = StoredValue::new(None);
        let [prices, wider] = [(); 2].map(|()| RwSignal::new(JobState::Waiting));
        let asker = Asker::at_rest(move |reply| match reply {
            Reply::Told { lines, .. } => {
                // One of the two is asked at a time.
                for answer in [prices, wider] {
                    if matches!(*answer.read_untracked(), JobState::Running(_)) {
                        answer.set(JobState::Done(lines.clone()));
                    }
                }
            }
            reply => {
                let is_beside = |answer: RwSignal<JobState<Vec<String>>>| {
                    matches!(*answer.read_untracked(), JobState::Running(_))
                };
                match [prices, wider]
                    .into_iter()
                    .find(|answer| is_beside(*answer))
                {
                    Some(answer) => super::jobs::take(answer, reply),
                    None => hear(state, asked.get_value(), reply),
                }
            }
        });
        Self {
            bench,
            state,
            asked,
            aside: RwSignal::new(None),
            prices,
            wider,
            asker,
        }
    }

    /// How far it is; a plan of another project is none.
    #[must_use]
    pub fn state(&self) -> Planning {
        match self.state.get() {
            Planning::Planned(planned) if !self.is_of_this(&planned) => Planning::Waiting,
            state => state,
        }
    }

    /// The plan set aside, if it is one of this project.
    #[must_use]
    pub fn aside(&self) -> Option<Arc<OrderPlanned>> {
        self.aside.get().filter(|aside| self.is_of_this(aside))
    }

    fn is_of_this(&self, planned: &OrderPlanned) -> bool {
        planned.asked.put == self.bench.put.get()
    }

    /// Whether what a plan rests on has changed since it was asked for.
    #[must_use]
    pub fn is_stale(&self, planned: &OrderPlanned) -> bool {
        self.bench.project().read().for_orders() != planned.asked.project
    }

    /// Looks for a plan of the orders as they stand.
    pub fn ask(&self) {
        self.end_what_runs();
        self.prices.set(JobState::Waiting);
        self.wider.set(JobState::Waiting);
        let project = self.bench.project().read_untracked().for_orders();
        let aim = project.supply.aim.into();
        let text = project_file::write(&project);
        let put = self.bench.put.get_untracked();
        self.asked.set_value(Some(Arc::new(Asked { project, put })));
        self.state.set(Planning::Running(Arc::new(OrdersSoFar {
            aim,
            bound: None,
            value: None,
            steps: Whole::default(),
            better: None,
        })));
        let unit = self.unit();
        self.asker.ask(|job| Request::Plan {
            job,
            project: text,
            unit,
        });
    }

    /// Stops looking; the best plan so far is kept.
    pub fn stop(&self) {
        self.asker.stop();
        let Planning::Running(so_far) = self.state.get_untracked() else {
            return;
        };
        let planned = self.asked.get_value().zip(so_far.better.clone());
        self.state
            .set(planned.map_or(Planning::Stopped, |(asked, sheet)| {
                Planning::Planned(Arc::new(OrderPlanned {
                    asked,
                    ending: HowGood::Stopped,
                    aim: so_far.aim.into(),
                    answer: PlannedOrders {
                        end: OrderEndWord::WithinGap,
                        aim: so_far.aim,
                        value: so_far.value,
                        bound: so_far.bound,
                        sheet: Some(sheet),
                        worths: Vec::new(),
                        slack: Vec::new(),
                        clashes: Vec::new(),
                    },
                }))
            }));
    }

    /// Asks at which prices the stocks pay that a plan does not buy.
    pub fn ask_prices(&self, planned: &OrderPlanned) {
        let Some(sheet) = &planned.answer.sheet else {
            return;
        };
        let (cost, stocks) = (sheet.cost, sheet.unbought.clone());
        self.ask_beside(planned, self.prices, |job, project, unit| {
            Request::PayingPrices {
                job,
                project,
                unit,
                cost,
                stocks,
            }
        });
    }

    /// Asks what slats one millimetre wider would save.
    pub fn ask_wider(&self, planned: &OrderPlanned) {
        let PlannedOrders {
            sheet: Some(sheet),
            value: Some(value),
            bound,
            ..
        } = &planned.answer
        else {
            return;
        };
        // A proved plan is no more than a step of the bound away from it.
        let bound = match planned.ending {
            HowGood::Proved => *value,
            _ => bound.unwrap_or_default(),
        };
        let (now, stocks) = ([*value, bound], sheet.run.clone());
        self.ask_beside(planned, self.wider, |job, project, unit| {
            Request::WiderSlats {
                job,
                project,
                unit,
                now,
                stocks,
            }
        });
    }

    /// Stops what is asked beside the plan.
    pub fn stop_beside(&self) {
        self.end_what_runs();
        for answer in [self.prices, self.wider] {
            if matches!(*answer.read_untracked(), JobState::Running(_)) {
                answer.set(JobState::Stopped);
            }
        }
    }

    fn ask_beside(
        &self,
        planned: &OrderPlanned,
        answer: RwSignal<JobState<Vec<String>>>,
        request: impl FnOnce(JobId, String, UnitWord) -> Request,
    ) {
        self.stop_beside();
        let (project, unit) = (project_file::write(&planned.asked.project), self.unit());
        answer.set(JobState::Running(None));
        self.asker.ask(|job| request(job, project, unit));
    }

    /// A worker that solves hears nothing: what it is asked ends with it.
    fn end_what_runs(&self) {
        let is_asked = [self.prices, self.wider]
            .iter()
            .any(|answer| matches!(*answer.read_untracked(), JobState::Running(_)));
        if is_asked || matches!(*self.state.read_untracked(), Planning::Running(_)) {
            self.asker.stop();
        }
    }

    fn unit(&self) -> UnitWord {
        self.bench.unit.get_untracked().into()
    }
}

/// Takes in a reply to a question for a plan.
fn hear(state: RwSignal<Planning>, asked: Option<Arc<Asked>>, reply: Reply) {
    let next = match reply {
        Reply::Planning { so_far, .. } => {
            let Planning::Running(before) = state.get_untracked() else {
                return;
            };
            Planning::Running(Arc::new(OrdersSoFar {
                better: so_far.better.clone().or_else(|| before.better.clone()),
                ..*so_far
            }))
        }
        Reply::Planned { planned, .. } => match asked {
            Some(asked) => Planning::Planned(Arc::new(OrderPlanned {
                asked,
                ending: match planned.end {
                    OrderEndWord::Proved => HowGood::Proved,
                    OrderEndWord::WithinGap => HowGood::WithinGap,
                    OrderEndWord::NoPlan => HowGood::NoPlan,
                    OrderEndWord::NoneFound => HowGood::NoneFound,
                },
                aim: planned.aim.into(),
                answer: *planned,
            })),
            None => return,
        },
        Reply::Refused { problems, .. } => Planning::Refused(problems),
        Reply::Fault { reason, .. } => Planning::Fault(reason),
        _ => return,
    };
    state.set(next);
}

impl OrderPlanned {
    /// The plan, if there is one.
    #[must_use]
    pub const fn sheet(&self) -> Option<&PlanSheet> {
        self.answer.sheet.as_ref()
    }

    /// What the plan comes to, and what no plan comes below, as the aim counts.
    #[must_use]
    pub fn amounts(&self) -> [Option<i64>; 2] {
        [self.answer.value, self.answer.bound].map(|amount| amount.map(Whole::hundredths))
    }
}
