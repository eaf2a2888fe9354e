//! When to save what, and what to tell the user: the saver without its clock and its store.

use std::{collections::VecDeque, rc::Rc};

use super::{Durability, Generation, Loaded, StoreProblem};

/// What the page shows about saving.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SaveState {
    /// Changed since the last save; the next one is about to start.
    Unsaved,
    /// A save is under way.
    Saving,
    /// The latest text is stored: the browser's transaction is complete.
    Saved {
        /// The number of that save.
        generation: Generation,
    },
    /// The last save failed; the latest text is in memory only and goes with the next save.
    Failed(StoreProblem),
    /// Another tab has the right to write; this one saves nothing.
    ReadOnly,
}

/// Something that happened.
#[derive(Clone, Debug)]
pub(crate) enum Event {
    /// The user changed the project.
    Changed(Rc<str>),
    /// The user, or an import, wants this stored for certain.
    SaveWanted(Rc<str>),
    /// No change since the wait with this number began.
    Quiet(u64),
    /// The page may be gone any moment.
    Hidden,
    /// The save under way is over.
    Finished(Result<Generation, StoreProblem>),
    /// This tab may write, and this is what lies in the store.
    MayWrite(Option<Loaded>),
    /// This tab may no longer write.
    MayNotWrite,
}

/// Something to do about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Action {
    /// Tell the page.
    Report(SaveState),
    /// Come back with [`Event::Quiet`] and this number after a pause.
    WaitForQuiet(u64),
    /// Save this and come back with [`Event::Finished`].
    Save(Rc<str>, Durability),
    /// The first save is done: ask the browser to keep what it has.
    AskToKeep,
}

/// At most one save is under way, and of all texts that came meanwhile only the latest is kept.
#[derive(Debug)]
pub(crate) struct Schedule {
    access: Access,
    /// The latest text that no save has taken up, or that the last one failed to store.
    pending: Option<Job>,
    /// Whether `pending` goes as soon as it can.
    is_due: bool,
    under_way: Option<UnderWay>,
    /// The text in the store, as far as this tab knows.
    stored: Option<Rc<str>>,
    wait_number: u64,
    has_asked_to_keep: bool,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Access {
    Writing,
    ReadOnly,
    /// A newer version of the page has the store: there is no way back but a reload.
    Outdated,
}

#[derive(Clone, Debug)]
struct Job {
    text: Rc<str>,
    durability: Durability,
}

#[derive(Debug)]
struct UnderWay {
    job: Job,
    /// The right to write was lost meanwhile, so that its outcome says nothing any more.
    is_disowned: bool,
}

impl Schedule {
    /// Writes nothing until [`Event::MayWrite`].
    pub(crate) fn new() -> Self {
        Self {
            access: Access::ReadOnly,
            pending: None,
            is_due: false,
            under_way: None,
            stored: None,
            wait_number: 0,
            has_asked_to_keep: false,
        }
    }

    /// What to do about `event`, in this order.
    pub(crate) fn on(&mut self, event: Event) -> VecDeque<Action> {
        let mut actions = VecDeque::new();
        match event {
            Event::Changed(text) => self.changed(text, &mut actions),
            Event::SaveWanted(text) => self.save_wanted(text, &mut actions),
            Event::Quiet(number) if number == self.wait_number => self.save_soon(&mut actions),
            Event::Quiet(_) => {}
            Event::Hidden => self.save_soon(&mut actions),
            Event::Finished(outcome) => self.finished(outcome, &mut actions),
            Event::MayWrite(loaded) => self.may_write(loaded, &mut actions),
            Event::MayNotWrite => self.may_not_write(&mut actions),
        }
        actions
    }

    fn changed(&mut self, text: Rc<str>, actions: &mut VecDeque<Action>) {
        if self.refuses(actions) {
            return;
        }
        let is_idle = self.pending.is_none() && self.under_way.is_none();
        if is_idle && self.stored.as_ref() == Some(&text) {
            return;
        }
        // An explicit save that has not begun yet stays explicit.
        let durability = match &self.pending {
            Some(job) => job.durability,
            None => Durability::Relaxed,
        };
        self.pending = Some(Job { text, durability });
        if self.under_way.is_none() {
            actions.push_back(Action::Report(SaveState::Unsaved));
        }
        self.wait_number += 1;
        actions.push_back(Action::WaitForQuiet(self.wait_number));
    }

    fn save_wanted(&mut self, text: Rc<str>, actions: &mut VecDeque<Action>) {
        if self.refuses(actions) {
            return;
        }
        let durability = Durability::Strict;
        self.pending = Some(Job { text, durability });
        self.save_soon(actions);
    }

    fn save_soon(&mut self, actions: &mut VecDeque<Action>) {
        self.is_due = self.pending.is_some();
        self.begin_if_due(actions);
    }

    fn begin_if_due(&mut self, actions: &mut VecDeque<Action>) {
        if !self.is_due || self.under_way.is_some() {
            return;
        }
        let Some(job) = self.pending.take() else {
            return;
        };
        self.is_due = false;
        actions.push_back(Action::Report(SaveState::Saving));
        actions.push_back(Action::Save(Rc::clone(&job.text), job.durability));
        self.under_way = Some(UnderWay {
            job,
            is_disowned: false,
        });
    }

    fn finished(
        &mut self,
        outcome: Result<Generation, StoreProblem>,
        actions: &mut VecDeque<Action>,
    ) {
        let Some(UnderWay { job, is_disowned }) = self.under_way.take() else {
            return;
        };
        match outcome {
            _ if is_disowned => self.store_again(),
            Ok(generation) => self.succeeded(job, generation, actions),
            Err(problem) => self.failed(job, problem, actions),
        }
        self.begin_if_due(actions);
    }

    fn succeeded(&mut self, job: Job, generation: Generation, actions: &mut VecDeque<Action>) {
        self.stored = Some(job.text);
        if self.pending.is_none() {
            actions.push_back(Action::Report(SaveState::Saved { generation }));
        } else if !self.is_due {
            actions.push_back(Action::Report(SaveState::Unsaved));
        }
        if !self.has_asked_to_keep {
            self.has_asked_to_keep = true;
            actions.push_back(Action::AskToKeep);
        }
    }

    fn failed(&mut self, job: Job, problem: StoreProblem, actions: &mut VecDeque<Action>) {
        // What lies in the store is no longer known.
        self.stored = None;
        if problem == StoreProblem::NewerVersion {
            self.access = Access::Outdated;
            self.pending = None;
            self.is_due = false;
        } else {
            match &mut self.pending {
                // The newer text takes over the promise made for the one that failed.
                Some(newer) => newer.durability = newer.durability.max(job.durability),
                None => self.pending = Some(job),
            }
        }
        actions.push_back(Action::Report(SaveState::Failed(problem)));
    }

    /// A save from before the right to write was lost may have landed on what was loaded since.
    fn store_again(&mut self) {
        if let (Access::Writing, None, Some(text)) = (self.access, &self.pending, &self.stored) {
            let (text, durability) = (Rc::clone(text), Durability::Relaxed);
            self.pending = Some(Job { text, durability });
            self.is_due = true;
        }
    }

    fn may_write(&mut self, loaded: Option<Loaded>, actions: &mut VecDeque<Action>) {
        match self.access {
            Access::ReadOnly => self.access = Access::Writing,
            Access::Writing => return,
            Access::Outdated => {
                self.refuses(actions);
                return;
            }
        }
        actions.push_back(Action::Report(match &loaded {
            Some(loaded) => SaveState::Saved {
                generation: loaded.generation,
            },
            None => SaveState::Unsaved,
        }));
        self.stored = loaded.map(|loaded| loaded.text.into());
    }

    fn may_not_write(&mut self, actions: &mut VecDeque<Action>) {
        if self.access == Access::Writing {
            self.access = Access::ReadOnly;
        }
        self.pending = None;
        self.is_due = false;
        if let Some(under_way) = &mut self.under_way {
            under_way.is_disowned = true;
        }
        self.refuses(actions);
    }

    /// Whether this tab may not write; reports why not.
    fn refuses(&self, actions: &mut VecDeque<Action>) -> bool {
        let state = match self.access {
            Access::Writing => return false,
            Access::ReadOnly => SaveState::ReadOnly,
            Access::Outdated => SaveState::Failed(StoreProblem::NewerVersion),
        };
        actions.push_back(Action::Report(state));
        true
    }
}

#[cfg(test)]
mod tests;
