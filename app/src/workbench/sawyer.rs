//! The plan that saws blanks from planks, and the worker that looks for it.

use super::Workbench;
use super::jobs::Asker;
use super::kept_plan::KeptPlan;
use crate::project_file;
use crate::protocol::{Cuts, Reply, Request, Sawn, Whole};
use crate::workbench::Table;
use leptos::prelude::*;
use solver::sawing::{SawingAim, SawingBalance, SawingData, SawingList, SawingNames, SawingPlan};
use solver::{ProjectDraft, SawnReckoning};
use std::sync::Arc;

/// The plan of cuts. It is looked for when asked, and kept until the next one. A handle.
#[derive(Clone, Copy)]
pub struct Sawyer {
    bench: Workbench,
    state: RwSignal<Sawing>,
    /// What was asked last, where it can be sawn.
    asked: StoredValue<Option<Arc<Asked>>>,
    asker: Asker,
}

/// How far the plan is.
#[derive(Debug, Clone, PartialEq)]
pub enum Sawing {
    /// Not asked yet.
    Waiting,
    /// Looked for.
    Running(SoFar),
    /// There is a plan.
    Planned(Arc<Planned>),
    /// Stopped before there was one.
    Stopped,
    /// The saw shop cannot be worked with, for these reasons.
    Refused(Vec<String>),
    /// Something broke that is no fault of the project.
    Fault(String),
}

/// How far the search is.
#[derive(Debug, Clone, PartialEq)]
pub struct SoFar {
    /// What is made small, as it was asked.
    pub aim: SawingAim,
    /// Rounds of pricing.
    pub rounds: u64,
    /// No plan comes to less.
    pub bound: Option<i64>,
    /// The best plan.
    pub best: Option<Cuts>,
}

/// What was asked, with the names of then.
#[derive(Debug, PartialEq)]
struct Asked {
    data: SawingData,
    planks: Vec<String>,
    blanks: Vec<String>,
    /// Which of the projects that were put on the bench it is of.
    put: u32,
}

/// A plan, with what it was asked of.
#[derive(Debug, PartialEq)]
pub struct Planned {
    asked: Arc<Asked>,
    /// The plan.
    pub plan: SawingPlan,
    /// The same as a saw shop reads it.
    pub list: SawingList,
    /// What it comes to.
    pub reckoning: SawnReckoning,
    /// Where the wood of the planks goes.
    pub balance: SawingBalance,
    /// How good it is.
    pub ending: Ending,
}

/// How the search ended. Amounts as the aim counts them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Ending {
    /// No plan is better.
    Proved {
        /// Cases of which it is proved one by one.
        cases: u64,
    },
    /// A better one is not ruled out.
    WithinGap {
        /// No plan comes to less.
        bound: i64,
    },
    /// The planks to be had do not suffice.
    Short {
        /// No plan leaves fewer blanks missing.
        at_least: u64,
    },
    /// No plan was found that makes all; there may be one.
    NoneFound {
        /// No plan comes to less.
        bound: i64,
    },
    /// Kept from before the page was loaded: recounted, but what was proved of it is not at hand.
    Recalled,
    /// Stopped by the user.
    Stopped {
        /// No plan comes to less, where that was known.
        bound: Option<i64>,
    },
}

impl Planned {
    /// A plan with all that is told of it; nothing where it is none of what was asked.
    fn new(asked: Arc<Asked>, cuts: &Cuts, ending: Ending) -> Option<Self> {
        let plan = cuts.plan(&asked.data)?;
        Some(Self {
            list: SawingList::of(&asked.data, &plan)?,
            reckoning: SawnReckoning::of(&asked.data, &plan),
            balance: SawingBalance::of(&asked.data, &plan)?,
            asked,
            plan,
            ending,
        })
    }

    /// What it was asked of.
    #[must_use]
    pub fn data(&self) -> &SawingData {
        &self.asked.data
    }

    /// What planks and blanks were called then.
    #[must_use]
    pub fn names(&self) -> SawingNames<'_> {
        SawingNames {
            planks: &self.asked.planks,
            blanks: &self.asked.blanks,
        }
    }
}

impl Asked {
    /// What a project asks; nothing where it cannot be sawn.
    fn of(project: &ProjectDraft, put: u32) -> Option<Self> {
        let names = |table: Table| {
            let rows = table.rows(project).into_iter();
            rows.map(|row| table.spoken_name(project, row)).collect()
        };
        Some(Self {
            data: project.check_sawing().ok()?,
            planks: names(Table::Planks),
            blanks: names(Table::Blanks),
            put,
        })
    }
}

impl Sawyer {
    /// Nothing is asked yet; the worker starts with the first question.
    #[must_use]
    pub fn new(bench: Workbench) -> Self {
        let state = RwSignal::new(Sawing::Waiting);
        let asked = StoredValue::new(None);
        let asker = Asker::at_rest(move |reply| hear(state, asked.get_value(), reply));
        Self {
            bench,
            state,
            asked,
            asker,
        }
    }

    /// How far it is; a plan of another project is none.
    #[must_use]
    pub fn state(&self) -> Sawing {
        match self.state.get() {
            Sawing::Planned(planned) if planned.asked.put != self.bench.put.get() => {
                Sawing::Waiting
            }
            state => state,
        }
    }

    /// Whether the saw shop has changed since the plan was asked for.
    #[must_use]
    pub fn is_stale(&self, planned: &Planned) -> bool {
        let data = self.bench.project().read().check_sawing();
        data.as_ref() != Ok(&planned.asked.data)
    }

    /// Shows the plan that the browser kept, where it is one for the saw shop as it stands.
    pub fn recall(&self) {
        let project = self.bench.project().read_untracked();
        let asked = Asked::of(&project, self.bench.put.get_untracked()).map(Arc::new);
        let recalled = asked.zip(KeptPlan::recall()).and_then(|(asked, kept)| {
            let cuts = kept.of(&asked.data)?;
            Planned::new(Arc::clone(&asked), cuts, Ending::Recalled)
        });
        if let Some(planned) = recalled {
            self.state.set(Sawing::Planned(Arc::new(planned)));
        }
    }

    /// Looks for a plan for the saw shop as it stands.
    pub fn ask(&self) {
        if matches!(*self.state.read_untracked(), Sawing::Running(_)) {
            // A worker that solves hears nothing: the old question ends with it.
            self.asker.stop();
        }
        let project = self.bench.project().read_untracked();
        let asked = Asked::of(&project, self.bench.put.get_untracked());
        self.asked.set_value(asked.map(Arc::new));
        let aim = project.saw_shop.aim;
        let project = project_file::write(&project);
        let unit = self.bench.unit.get_untracked().into();
        self.state.set(Sawing::Running(SoFar {
            aim,
            rounds: 0,
            bound: None,
            best: None,
        }));
        self.asker.ask(|job| Request::Saw { job, project, unit });
    }

    /// Stops looking; the best plan so far is kept.
    pub fn stop(&self) {
        self.asker.stop();
        let Sawing::Running(so_far) = self.state.get_untracked() else {
            return;
        };
        let ending = Ending::Stopped {
            bound: so_far.bound,
        };
        let planned = (self.asked.get_value().zip(so_far.best)).and_then(|(asked, cuts)| {
            let planned = Planned::new(Arc::clone(&asked), &cuts, ending)?;
            KeptPlan::new(&asked.data, cuts).keep();
            Some(planned)
        });
        self.state.set(planned.map_or(Sawing::Stopped, |planned| {
            Sawing::Planned(Arc::new(planned))
        }));
    }
}

/// Takes in a reply to what was asked.
fn hear(state: RwSignal<Sawing>, asked: Option<Arc<Asked>>, reply: Reply) {
    let next = match reply {
        Reply::Sawing { so_far, .. } => {
            let Sawing::Running(before) = state.get_untracked() else {
                return;
            };
            Sawing::Running(SoFar {
                aim: before.aim,
                rounds: so_far.rounds.pieces(),
                bound: so_far.bound.map(Whole::hundredths),
                best: so_far.better.or(before.best),
            })
        }
        Reply::Sawn { sawn, .. } => {
            let planned = asked.and_then(|asked| {
                let (cuts, ending) = read(&sawn);
                let planned = Planned::new(Arc::clone(&asked), cuts, ending)?;
                KeptPlan::new(&asked.data, cuts.clone()).keep();
                Some(planned)
            });
            planned.map_or_else(
                || {
                    Sawing::Fault(
                        "The plan is none of the planks that were asked of. Try again".to_owned(),
                    )
                },
                |planned| Sawing::Planned(Arc::new(planned)),
            )
        }
        Reply::Refused { problems, .. } => Sawing::Refused(problems),
        Reply::Fault { reason, .. } => Sawing::Fault(reason),
        _ => return,
    };
    state.set(next);
}

/// The plan that a worker found, and how its search ended.
fn read(sawn: &Sawn) -> (&Cuts, Ending) {
    match sawn {
        Sawn::Proved { cuts, cases } => {
            let cases = cases.pieces();
            (cuts, Ending::Proved { cases })
        }
        Sawn::WithinGap { cuts, bound } => {
            let bound = bound.hundredths();
            (cuts, Ending::WithinGap { bound })
        }
        Sawn::Short { cuts, at_least } => {
            let at_least = at_least.pieces();
            (cuts, Ending::Short { at_least })
        }
        Sawn::NoneFound { cuts, bound } => {
            let bound = bound.hundredths();
            (cuts, Ending::NoneFound { bound })
        }
    }
}
