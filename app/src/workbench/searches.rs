//! The search for the best layouts, for the thresholds of the one that is looked at, and for what
//! its good pencils depend on, each with a worker of its own that starts with its first question.

use super::Workbench;
use super::jobs::{Asker, JobState, take};
use super::pause::Pause;
use crate::project_file;
use crate::protocol::{
    CutterPlan, Expected, JobId, Outlook, Progress, Reply, Request, Searched, ThresholdRow,
    UnitWord,
};
use crate::view::Place;
use leptos::prelude::*;
use solver::{AxisChoice, Field, ProjectDraft, Spacing, Typed};

/// The questions that are asked again with every change of what they rest on. A handle.
#[derive(Clone, Copy)]
pub struct Searches {
    /// The best layouts.
    pub layouts: Question<Searched>,
    /// What the next pencil costs.
    pub thresholds: Question<Vec<ThresholdRow>>,
    /// What can be told of good pencils beside their count.
    pub outlook: Question<Outlook>,
    /// The good pencils that are expected of the layout.
    pub expected: Question<Expected>,
    /// What cutter sets serve, and what one more would save.
    pub cutters: Question<CutterPlan>,
}

/// A question whose last answer stays until the next one is there. A handle.
pub struct Question<T: 'static> {
    state: RwSignal<JobState<T>>,
    /// How far the job is that is under way, if one is.
    busy: RwSignal<Option<Option<Progress>>>,
    asker: Asker,
    bench: Workbench,
    request: fn(JobId, String, UnitWord) -> Request,
}

impl<T> Clone for Question<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Question<T> {}

impl Searches {
    /// Asks whenever what an answer rests on has changed and the layout is looked at.
    #[must_use]
    pub fn start(bench: Workbench) -> Self {
        let layouts = Question::new(
            bench,
            |job, project, unit| Request::Search { job, project, unit },
            |reply| match reply {
                Reply::Searched { searched, .. } => Ok(searched),
                other => Err(Box::new(other)),
            },
        );
        let thresholds = Question::new(
            bench,
            |job, project, unit| Request::Thresholds { job, project, unit },
            |reply| match reply {
                Reply::Thresholds { rows, .. } => Ok(rows),
                other => Err(Box::new(other)),
            },
        );
        let outlook = Question::new(
            bench,
            |job, project, unit| Request::Outlook { job, project, unit },
            |reply| match reply {
                Reply::Outlook { outlook, .. } => Ok(outlook),
                other => Err(Box::new(other)),
            },
        );
        let expected = Question::new(
            bench,
            |job, project, unit| Request::Expect { job, project, unit },
            |reply| match reply {
                Reply::Expected { expected, .. } => Ok(expected),
                other => Err(Box::new(other)),
            },
        );
        let cutters = Question::new(
            bench,
            |job, project, unit| Request::Cutters { job, project, unit },
            |reply| match reply {
                Reply::Cutters { plan, .. } => Ok(plan),
                other => Err(Box::new(other)),
            },
        );
        layouts.ask_when_changed(&[Place::Layout], searched_from);
        thresholds.ask_when_changed(&[Place::Layout], stepped_from);
        outlook.ask_when_changed(&[Place::Tolerances], layout_of);
        expected.ask_when_changed(&[Place::Layout, Place::Setting], layout_of);
        cutters.ask_when_changed(&[Place::Setting], bought_from);
        Self {
            layouts,
            thresholds,
            outlook,
            expected,
            cutters,
        }
    }
}

impl<T: Send + Sync + Clone + PartialEq + 'static> Question<T> {
    fn new(
        bench: Workbench,
        request: fn(JobId, String, UnitWord) -> Request,
        read: fn(Reply) -> Result<T, Box<Reply>>,
    ) -> Self {
        let (state, busy) = (RwSignal::new(JobState::Waiting), RwSignal::new(None));
        let asker = Asker::at_rest(move |reply| {
            let progress = match &reply {
                Reply::Progress { progress, .. } => Some(Some(*progress)),
                _ => None,
            };
            busy.set(progress);
            match read(reply) {
                Ok(answer) => state.set(JobState::Done(answer)),
                Err(other) => take(state, *other),
            }
        });
        Self {
            state,
            busy,
            asker,
            bench,
            request,
        }
    }

    /// The answer, or why there is none; the last one while the next is looked for.
    #[must_use]
    pub fn state(&self) -> ReadSignal<JobState<T>> {
        self.state.read_only()
    }

    /// Whether it is being looked for, and how far that is.
    #[must_use]
    pub fn busy(&self) -> ReadSignal<Option<Option<Progress>>> {
        self.busy.read_only()
    }

    /// Asks with the project as it stands.
    pub fn ask(&self) {
        if self.busy.read_untracked().is_some() {
            // A worker that searches hears nothing: the old question ends with it.
            self.asker.stop();
        }
        let project = project_file::write(&self.bench.project().read_untracked());
        let unit = self.bench.unit.get_untracked().into();
        if !matches!(*self.state.read_untracked(), JobState::Done(_)) {
            self.state.set(JobState::Running(None));
        }
        self.busy.set(Some(None));
        let request = self.request;
        self.asker.ask(|job| request(job, project, unit));
    }

    /// Stops looking; the next change starts it again.
    pub fn stop(&self) {
        self.asker.stop();
        self.busy.set(None);
        self.state.set(JobState::Stopped);
    }

    fn ask_when_changed(self, at: &'static [Place], from: fn(&ProjectDraft) -> ProjectDraft) {
        let (project, unit, place) = (self.bench.project(), self.bench.unit, self.bench.place);
        let rests_on = Memo::new(move |_| from(&project.read()));
        let pause = Pause::new();
        // What was asked last is not asked again when its place is only looked at once more.
        Effect::new(move |asked: Option<Option<_>>| {
            let asked = asked.flatten();
            let wanted = (rests_on.get(), unit.get());
            if !at.contains(&place.get()) || asked.as_ref() == Some(&wanted) {
                return asked;
            }
            pause.then(move || self.ask());
            Some(wanted)
        });
    }
}

/// What good pencils rest on: all that the layout rests on.
pub(super) fn layout_of(project: &ProjectDraft) -> ProjectDraft {
    project.layout_alone()
}

/// What the thresholds rest on: everything but the order book and the names of others.
fn stepped_from(project: &ProjectDraft) -> ProjectDraft {
    let mut project = project.clone();
    project.name.clear();
    project.orders.clear();
    project.search.new_set_price = Typed::empty();
    project.accuracies.clear();
    project.clear_making();
    project.set_aside = None;
    project
}

/// What cutter sets are planned from: barrels, stocks, sets, rules and the order book.
fn bought_from(project: &ProjectDraft) -> ProjectDraft {
    let mut project = project.clone();
    project.name.clear();
    project.accuracies.clear();
    project.clear_making();
    project.set_aside = None;
    project
}

/// What the search rests on: of the layout only the barrel and the line, of the rules not the spacing, which is
/// what it finds. Laying a found layout on the drawing changes nothing of it.
fn searched_from(project: &ProjectDraft) -> ProjectDraft {
    let mut project = project.clone();
    project.name.clear();
    project.orders.clear();
    project
        .accuracies
        .retain(|entry| entry.id == project.layout.accuracy);
    project.clear_making();
    project.set_aside = None;
    project
        .barrels
        .retain(|entry| entry.id == project.layout.barrel);
    project.rules.spacing = Spacing::Closest;
    project.rules.pitch = Typed::initial(Field::Pitch);
    project.rules.cutter_set = None;
    if project.search.axis == AxisChoice::Any {
        project.rules.axis_height = Typed::initial(Field::AxisHeight);
    }
    project.layout = solver::LayoutDraft {
        barrel: project.layout.barrel,
        top: project.layout.barrel,
        bottom: project.layout.barrel,
        way: solver::Way::Turned,
        turn: Typed::empty(),
        accuracy: project.layout.accuracy,
    };
    project
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;

    #[test]
    fn a_search_does_not_rest_on_the_layout_that_is_looked_at() {
        let before = demo::project();
        let mut after = before.clone();
        after.layout.top = after.slats[1].id;
        after.layout.way = solver::Way::Turned;
        after.rules.spacing = Spacing::Set;
        after.rules.cutter_set = Some(after.cutter_sets[0].id);
        assert_eq!(searched_from(&after), searched_from(&before));
        assert_ne!(stepped_from(&after), stepped_from(&before));
    }

    #[test]
    fn a_search_rests_on_the_barrel_the_limit_across_and_the_axis_where_it_is_not_searched() {
        let before = demo::project();
        let differs = |change: fn(&mut ProjectDraft)| {
            let mut after = before.clone();
            change(&mut after);
            searched_from(&after) != searched_from(&before)
        };
        assert!(differs(
            |project| project.layout.barrel = project.barrels[1].id
        ));
        assert!(differs(|project| project.rules.most = Typed::Number(8.0)));
        assert!(differs(
            |project| project.rules.axis_height = Typed::Number(0.1)
        ));
        assert!(!differs(|project| project.orders.clear()));
        assert!(differs(|project| {
            project.accuracies[0].draft.glue_shift.size = Typed::Number(0.07);
        }));
    }
}
