//! Saves shortly after the last change, one save at a time.

use std::{
    cell::RefCell,
    future::Future,
    rc::Rc,
    task::{Context, Waker},
};

use super::{
    Browser, Keeping, Loaded, Platform, ProjectStore, SaveState,
    listener::Listener,
    schedule::{Action, Event, Schedule},
};

/// How long after the last change a save begins, in milliseconds.
pub(crate) const QUIET: u32 = 300;

/// What the saver tells the page.
pub struct Reports {
    /// Called at every change of the state of saving.
    pub state: Box<dyn Fn(SaveState)>,
    /// Called once after the first save, when the browser has said whether it keeps the project.
    pub keeping: Box<dyn Fn(Keeping)>,
}

/// Stores the latest text of the project, and says how that went. Clones are the same saver.
///
/// Saves nothing before [`Saver::allow_writing`].
pub struct Saver<P: Platform = Browser> {
    shared: Rc<Shared<P>>,
}

struct Shared<P: Platform> {
    schedule: RefCell<Schedule>,
    store: ProjectStore<P>,
    reports: Reports,
    hiding: RefCell<Vec<Listener>>,
}

impl Saver<Browser> {
    /// A saver that also saves when the page is hidden or left.
    pub fn start(store: ProjectStore<Browser>, reports: Reports) -> Self {
        let saver = Self::new(store, reports);
        let mut hiding = Vec::new();
        if let Some(window) = web_sys::window() {
            let leaving = Rc::downgrade(&saver.shared);
            hiding.push(Listener::new(&window, "pagehide", move |_| {
                if let Some(shared) = leaving.upgrade() {
                    Saver { shared }.flush();
                }
            }));
            if let Some(document) = window.document() {
                let hidden = Rc::downgrade(&saver.shared);
                hiding.push(Listener::new(
                    &document.clone(),
                    "visibilitychange",
                    move |_| {
                        if let (true, Some(shared)) = (document.hidden(), hidden.upgrade()) {
                            Saver { shared }.flush();
                        }
                    },
                ));
            }
        }
        saver.shared.hiding.replace(hiding);
        saver
    }
}

impl<P: Platform> Saver<P> {
    /// A saver that knows nothing of the page: call [`Saver::flush`] when it is hidden.
    pub fn new(store: ProjectStore<P>, reports: Reports) -> Self {
        Self {
            shared: Rc::new(Shared {
                schedule: RefCell::new(Schedule::new()),
                store,
                reports,
                hiding: RefCell::default(),
            }),
        }
    }

    /// The project is now `text`: saves it when no change has come for 0.3 s.
    pub fn change(&self, text: &str) {
        self.handle(Event::Changed(text.into()));
    }

    /// Saves `text` at once, strictly, and reads it back: for an explicit save or an import.
    pub fn save_now(&self, text: &str) {
        self.handle(Event::SaveWanted(text.into()));
    }

    /// Saves at once what is not saved yet, as when the page is hidden.
    pub fn flush(&self) {
        self.handle(Event::Hidden);
    }

    /// This tab has the right to write, and `loaded` is what it found in the store after it got
    /// that right.
    pub fn allow_writing(&self, loaded: Option<&Loaded>) {
        self.handle(Event::MayWrite(loaded.cloned()));
    }

    /// Another tab has the right to write. What is not saved yet stays with the page.
    pub fn stop_writing(&self) {
        self.handle(Event::MayNotWrite);
    }

    fn handle(&self, event: Event) {
        let actions = self.shared.schedule.borrow_mut().on(event);
        for action in actions {
            self.act(action);
        }
    }

    fn act(&self, action: Action) {
        let saver = self.clone();
        let platform = self.shared.store.platform();
        match action {
            Action::Report(state) => (self.shared.reports.state)(state),
            Action::WaitForQuiet(number) => platform.spawn(async move {
                saver.shared.store.platform().wait(QUIET).await;
                saver.handle(Event::Quiet(number));
            }),
            Action::Save(text, durability) => {
                let mut saving = Box::pin(async move {
                    let outcome = saver.shared.store.save(&text, durability).await;
                    saver.handle(Event::Finished(outcome));
                });
                // The first steps are taken at once: to a page that is being left, the browser
                // grants the handler of that event and nothing after it.
                let mut unheard = Context::from_waker(Waker::noop());
                if saving.as_mut().poll(&mut unheard).is_pending() {
                    platform.spawn(saving);
                }
            }
            Action::AskToKeep => platform.spawn(async move {
                let keeping = saver.shared.store.platform().ask_to_keep().await;
                (saver.shared.reports.keeping)(keeping);
            }),
        }
    }
}

impl<P: Platform> Clone for Saver<P> {
    fn clone(&self) -> Self {
        Self {
            shared: Rc::clone(&self.shared),
        }
    }
}
