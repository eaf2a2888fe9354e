//! What the page works on: the project with its history, the unit shown, the place looked at.

mod delivery;
mod dice;
mod gains;
mod history;
mod jobs;
mod kept_plan;
mod laying;
mod machined;
mod memory;
mod pause;
mod planner;
mod rounds;
mod sawyer;
mod searches;
mod slot;
mod table;

pub use delivery::{Delivery, stock, use_measured};
pub use dice::{Count, Dice};
pub use gains::Gains;
pub use history::History;
pub use jobs::{JobState, Jobs};
pub use laying::{is_laid, lay_found};
pub(crate) use machined::drawn_on;
pub use machined::{Machined, machined};
pub use memory::{Memory, Unreadable};
pub(crate) use pause::Pause;
pub use planner::{HowGood, OrderPlanned, Planner, Planning};
pub use rounds::Enough;
pub use sawyer::{Ending, Planned, Sawing, Sawyer, SoFar};
pub use searches::{Question, Searches};
pub use slot::{Slot, barrel_shape};
pub(crate) use table::{ANY, AS_TYPED, LONGEST_NAME, NO, NONE, YES};
pub use table::{Cell, Column, Pasted, Replaced, Step, Table};

use crate::project_file;
use crate::view::Place;
use leptos::prelude::*;
use solver::{
    DrawnPath, Field, FieldProblem, Grip, Id, Laid, Layout, LayoutParts, Length, LengthUnit,
    Problem, ProjectDraft, Spacing, Typed, lay_out,
};
use std::collections::HashMap;

/// The state of the page. A handle: copies share it.
#[derive(Clone, Copy)]
pub struct Workbench {
    project: RwSignal<ProjectDraft>,
    /// How many projects were put on the bench.
    put: RwSignal<u32>,
    history: RwSignal<History<ProjectDraft, Slot>>,
    /// The unit in which lengths are shown and bare numbers are read.
    pub unit: RwSignal<LengthUnit>,
    /// The place that is looked at.
    pub place: RwSignal<Place>,
    /// What has just happened, for eyes and ears.
    pub notice: RwSignal<Option<String>>,
    /// The field in use, whose meaning is told.
    pub meaning: RwSignal<Option<Field>>,
    /// The row that its table has to show, as the cursor goes there.
    pub row_in_sight: RwSignal<Option<(Table, Id)>>,
    problems: Memo<Vec<Problem>>,
    /// The first problem of each field that has one; only ever asked for one field.
    marked: RwSignal<HashMap<Slot, FieldProblem>>,
    layout: Memo<Option<Shown>>,
}

/// The layout on the screen: the one of the project, or the last good one.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// The parts it was made of.
    pub parts: LayoutParts,
    /// The layout.
    pub layout: Layout,
    /// Whether the project has gone on to something that cannot be laid out.
    pub stale: bool,
    /// Which of the projects that were put on the bench it is of.
    put: u32,
}

impl Shown {
    /// The layout with its parts.
    #[must_use]
    pub const fn laid(&self) -> Laid<'_> {
        Laid {
            parts: &self.parts,
            layout: &self.layout,
        }
    }
}

impl Workbench {
    /// A workbench with a project on it.
    #[must_use]
    pub fn new(project: ProjectDraft, unit: LengthUnit) -> Self {
        let (project, put) = (RwSignal::new(project), RwSignal::new(0));
        let layout = Memo::new(move |last: Option<&Option<Shown>>| {
            let put = put.get();
            match project.read().check_layout() {
                Ok(parts) => Some(Shown {
                    layout: lay_out(&parts.setup()),
                    parts,
                    stale: false,
                    put,
                }),
                // What was shown of another project says nothing of this one.
                Err(_) => (last.cloned().flatten())
                    .filter(|last| last.put == put)
                    .map(|last| Shown {
                        stale: true,
                        ..last
                    }),
            }
        });
        let problems = Memo::new(move |_| project.read().check().err().unwrap_or_default());
        // Set only when it changes. A memo would have every field of the page ask at every step
        // of a drag whether it is still well, several times over.
        let marked = RwSignal::new(HashMap::new());
        Effect::new(move |_| {
            let found = marked_fields(&problems.read(), &project.read());
            if *marked.read_untracked() != found {
                marked.set(found);
            }
        });
        Self {
            project,
            put,
            history: RwSignal::new(History::default()),
            unit: RwSignal::new(unit),
            place: RwSignal::new(Place::from_address()),
            notice: RwSignal::new(None),
            meaning: RwSignal::new(None),
            row_in_sight: RwSignal::new(None),
            problems,
            marked,
            layout,
        }
    }

    /// The project.
    #[must_use]
    pub fn project(&self) -> ReadSignal<ProjectDraft> {
        self.project.read_only()
    }

    /// Everything that is wrong in the project.
    #[must_use]
    pub const fn problems(&self) -> Memo<Vec<Problem>> {
        self.problems
    }

    /// What is wrong with a field, in words.
    #[must_use]
    pub fn message_at(&self, slot: Slot) -> Option<String> {
        let unit = self.unit.get();
        let marked = self.marked.read();
        marked.get(&slot).map(|problem| problem.message(unit))
    }

    /// The layout to show.
    #[must_use]
    pub const fn layout(&self) -> Memo<Option<Shown>> {
        self.layout
    }

    /// Changes the project in a step of its own. A change that would make a list longer than a file
    /// can hold is not made, and that is told.
    pub fn change(&self, change: impl FnOnce(&mut ProjectDraft)) {
        let mut project = self.project.get_untracked();
        change(&mut project);
        if let Some(list) = project_file::overfull(&project) {
            let most = project_file::MOST_ENTRIES;
            self.tell(&format!(
                "A list holds at most {most} entries, so nothing was added to the {list}."
            ));
            return;
        }
        self.note(None);
        self.project.set(project);
    }

    /// Takes in what is being typed in a field; keystrokes in one field are one step.
    pub fn type_in(&self, slot: Slot, text: &str) {
        let typed = Typed::new(text, slot.field(), self.unit.get_untracked());
        if slot.get(&self.project.read_untracked()) == Some(&typed) {
            return;
        }
        self.note(Some(slot));
        self.project.update(|project| slot.set(project, typed));
    }

    /// Takes in the path of a free outline as it is being drawn; keystrokes are one step.
    pub fn type_path(&self, barrel: Id, path: &str) {
        let at = self.project.read_untracked().barrel_place(barrel);
        let Some(at) =
            at.filter(|at| self.project.read_untracked().barrels[*at].draft.path != path)
        else {
            return;
        };
        self.note(Some(Slot::Barrel(barrel, Field::Path)));
        self.project
            .update(|project| project.barrels[at].draft.path = path.to_owned());
    }

    /// Ends the step of the field that was typed in, or of the gauge that was slid.
    pub fn leave_field(&self) {
        self.history.update(History::close);
    }

    /// Slides a gauge to a value; its moves are one step until [`Self::leave_field`]. A pitch
    /// that is slid is a given one.
    pub fn slide(&self, grip: Grip, value: Length) {
        let slot = Slot::Rules(grip.field());
        let typed = Typed::Number(value.in_millimetres());
        let spacing = match grip {
            Grip::Pitch => Spacing::Given,
            Grip::Edge => self.project.read_untracked().rules.spacing,
        };
        let stands_there = {
            let project = self.project.read_untracked();
            slot.get(&project) == Some(&typed) && project.rules.spacing == spacing
        };
        if stands_there {
            return;
        }
        self.note(Some(slot));
        self.project.update(|project| {
            project.rules.spacing = spacing;
            slot.set(project, typed);
        });
    }

    /// Puts a number in a slot while it is moved by hand; its moves are one step until
    /// [`Self::leave_field`].
    pub fn slide_to(&self, slot: Slot, typed: Typed) {
        if slot.get(&self.project.read_untracked()) == Some(&typed) {
            return;
        }
        self.note(Some(slot));
        self.project.update(|project| slot.set(project, typed));
    }

    /// Makes a barrel the free outline of a path; its moves are one step until [`Self::leave_field`].
    /// A path of more characters than a file can hold is not taken, and that is told.
    pub fn draw(&self, barrel: Id, path: &DrawnPath) {
        let at = self.project.read_untracked().barrel_place(barrel);
        let Some(at) = at else {
            return;
        };
        let mut draft = self.project.read_untracked().barrels[at].draft.clone();
        draft.draw(path);
        if draft.path.len() > project_file::MOST_PATH_CHARACTERS {
            self.tell("The outline has as many points as a file can hold, so nothing was changed.");
            return;
        }
        if self.project.read_untracked().barrels[at].draft == draft {
            return;
        }
        self.note(Some(Slot::Barrel(barrel, Field::Path)));
        self.project
            .update(|project| project.barrels[at].draft = draft);
    }

    /// Takes back what was moved by hand in a slot since it was taken, as if it had never been.
    pub fn take_back(&self, slot: Slot) {
        let state = self
            .history
            .try_update(|history| history.abandon(&slot))
            .flatten();
        if let Some(state) = state {
            self.project.set(state);
        }
    }

    /// Puts another project on the bench; the one that lay there can be brought back by undo.
    pub fn replace(&self, project: ProjectDraft) {
        self.note(None);
        self.put.update(|put| *put += 1);
        self.project.set(project);
    }

    /// Puts the project on the bench with which work begins; there is nothing to undo before it.
    pub fn start_with(&self, project: ProjectDraft) {
        self.history.set(History::default());
        self.put.update(|put| *put += 1);
        self.project.set(project);
    }

    /// Tells what has just happened; the next step, forth or back, ends it.
    pub fn tell(&self, notice: &str) {
        self.notice.set(Some(notice.to_owned()));
    }

    /// Tells what the field in use means.
    pub fn notice_meaning(&self, field: Field) {
        self.meaning.set(Some(field));
    }

    /// Takes a step back.
    pub fn undo(&self) {
        self.travel(History::undo);
    }

    /// Takes a step forward again.
    pub fn redo(&self) {
        self.travel(History::redo);
    }

    /// Whether there is a step to take back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        self.history.read().can_undo(&self.project.read())
    }

    /// Whether there is a step to take forward again.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        self.history.read().can_redo()
    }

    fn travel(
        &self,
        step: fn(&mut History<ProjectDraft, Slot>, &ProjectDraft) -> Option<ProjectDraft>,
    ) {
        let present = self.project.get_untracked();
        let state = self
            .history
            .try_update(|history| step(history, &present))
            .flatten();
        if let Some(state) = state {
            self.notice.set(None);
            self.project.set(state);
        }
    }

    fn note(&self, mark: Option<Slot>) {
        if self.notice.read_untracked().is_some() {
            self.notice.set(None);
        }
        let present = self.project.get_untracked();
        self.history
            .update(|history| history.before(&present, mark));
    }
}

/// The first problem of each field that has one.
fn marked_fields(problems: &[Problem], project: &ProjectDraft) -> HashMap<Slot, FieldProblem> {
    let mut marked = HashMap::new();
    for Problem { place, problem } in problems {
        if let Some(slot) = Slot::of_problem(*place, problem.field, project) {
            marked.entry(slot).or_insert_with(|| problem.clone());
        }
    }
    marked
}
