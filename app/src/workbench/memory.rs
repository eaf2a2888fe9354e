//! The project is kept in the browser as it is worked on, by one tab at a time.

use super::Workbench;
use crate::project_file;
use crate::store::{
    BrowserStore, Keeping, Loaded, Reports, SaveState, Saver, StoreProblem, Writer,
};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// How the project is kept. A handle.
#[derive(Clone, Copy)]
pub struct Memory {
    bench: Workbench,
    /// Whether the page has looked for what was kept, so that work can begin.
    pub opened: RwSignal<bool>,
    /// The state of saving; nothing before the first change.
    pub state: RwSignal<Option<SaveState>>,
    /// Whether the browser keeps the project for good; nothing before the first save.
    pub keeping: RwSignal<Option<Keeping>>,
    /// What stands in the store and cannot be read by this page; it is not written over.
    pub unreadable: RwSignal<Option<Unreadable>>,
    store: StoredValue<BrowserStore, LocalStorage>,
    saver: StoredValue<Saver, LocalStorage>,
    writer: StoredValue<Option<Writer>, LocalStorage>,
}

/// A kept project that this page cannot read.
#[derive(Debug, Clone, PartialEq)]
pub struct Unreadable {
    /// The text as it is kept.
    pub text: String,
    /// Why it cannot be read.
    pub reasons: Vec<String>,
}

impl Memory {
    /// Opens what was kept and keeps every change from then on.
    #[must_use]
    pub fn start(bench: Workbench) -> Self {
        let (state, keeping) = (RwSignal::new(None), RwSignal::new(None));
        let store = BrowserStore::in_browser();
        let reports = Reports {
            state: Box::new(move |now| state.set(Some(now))),
            keeping: Box::new(move |answer| keeping.set(Some(answer))),
        };
        let saver = Saver::start(store.clone(), reports);
        let memory = Self {
            bench,
            opened: RwSignal::new(false),
            state,
            keeping,
            unreadable: RwSignal::new(None),
            store: StoredValue::new_local(store),
            saver: StoredValue::new_local(saver),
            writer: StoredValue::new_local(None),
        };
        spawn_local(async move {
            let writer = Writer::take(move || memory.lose()).await;
            memory.open(writer).await;
            memory.opened.set(true);
            memory.keep_changes();
        });
        memory
    }

    /// Saves at once, and reads back what was saved.
    pub fn save_now(&self) {
        let text = project_file::write(&self.bench.project().read_untracked());
        self.saver.with_value(|saver| saver.save_now(&text));
    }

    /// Takes the right to write from the tab that has it, with what that tab has saved.
    pub fn take_over(&self) {
        let memory = *self;
        spawn_local(async move {
            let writer = Writer::take_over(move || memory.lose()).await;
            memory.open(writer).await;
        });
    }

    /// Writes over what could not be read. The user has been offered a copy of it.
    pub fn give_up_unreadable(&self) {
        self.unreadable.set(None);
        self.saver.with_value(|saver| saver.allow_writing(None));
        self.save_now();
    }

    /// Reads what is kept, and begins to write if this tab may.
    async fn open(self, writer: Option<Writer>) {
        let store = self.store.get_value();
        let loaded = store.load().await;
        let may_write = writer.is_some();
        self.writer.set_value(writer);
        let loaded = match loaded {
            Ok(loaded) => loaded,
            Err(problem) => {
                self.tell(&problem);
                None
            }
        };
        if let Some(unreadable) = loaded.as_ref().and_then(|loaded| self.lay_on_bench(loaded)) {
            self.unreadable.set(Some(unreadable));
            self.saver.with_value(Saver::stop_writing);
        } else if may_write {
            self.saver
                .with_value(|saver| saver.allow_writing(loaded.as_ref()));
        } else {
            self.saver.with_value(Saver::stop_writing);
        }
    }

    /// Puts what was kept on the bench, or says why it cannot be read.
    fn lay_on_bench(self, loaded: &Loaded) -> Option<Unreadable> {
        match project_file::read(&loaded.text) {
            Ok(opened) => {
                if opened.draft != *self.bench.project().read_untracked() {
                    self.bench.start_with(opened.draft);
                }
                if loaded.is_older_copy {
                    self.bench
                        .tell("The newest copy was damaged; this is the one saved just before it.");
                }
                None
            }
            Err(problems) => {
                let reasons = problems.iter().map(ToString::to_string).collect();
                Some(Unreadable {
                    text: loaded.text.clone(),
                    reasons,
                })
            }
        }
    }

    fn keep_changes(self) {
        let project = self.bench.project();
        // The saver passes over a text that is in the store already.
        Effect::new(move |_| {
            let text = project_file::write(&project.read());
            self.saver.with_value(|saver| saver.change(&text));
        });
    }

    /// Another tab has taken over.
    fn lose(self) {
        self.saver.with_value(Saver::stop_writing);
    }

    fn tell(self, problem: &StoreProblem) {
        self.bench.tell(&format!(
            "Nothing could be opened: {problem}. {}",
            problem.hint()
        ));
    }
}
