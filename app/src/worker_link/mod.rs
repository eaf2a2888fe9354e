//! The page's end of the conversation with a worker.

mod conversation;

use std::{
    cell::{Cell, RefCell},
    rc::{Rc, Weak},
};

use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use web_sys::{ErrorEvent, Event, MessageEvent, Worker, WorkerOptions, WorkerType};

use crate::protocol::{JobId, Reply, Request};
use conversation::{Conversation, Step};

/// The script that starts a worker, beside the page.
const WORKER: &str = "./worker_loader.js";

/// One worker and what is asked of it. A handle: clones mean the same worker.
///
/// One job is answered at a time, and only replies to the newest request are told. A request made
/// while another is under way waits for its end; [`stop`](Self::stop) before it to have a long
/// job broken off. A worker that breaks down is told as a [`Reply::Fault`], and the next request
/// starts another.
#[derive(Clone)]
pub struct WorkerLink {
    line: Rc<Line>,
}

impl WorkerLink {
    /// A worker that starts with the first request; `on_reply` hears its replies, and may ask again
    /// from there.
    #[must_use]
    pub fn at_rest(on_reply: impl Fn(Reply) + 'static) -> Self {
        let line = Rc::new_cyclic(|line| Line::new(line, Box::new(on_reply)));
        Self { line }
    }

    /// Starts the worker ahead of the first request.
    pub fn begin(&self) {
        self.line.take(Conversation::begin);
    }

    /// A number for the next request, told apart from all before it.
    #[must_use]
    pub fn next_job(&self) -> JobId {
        let job = self.line.next_job.get();
        self.line.next_job.set(job.wrapping_add(1));
        JobId(job)
    }

    /// Asks; replies to earlier requests are dropped from now on.
    pub fn ask(&self, request: Request) {
        self.line.take(|conversation| conversation.ask(request));
    }

    /// Breaks off what is under way, and drops all replies to it.
    pub fn stop(&self) {
        self.line.take(Conversation::stop);
    }
}

/// The worker with its two handlers, which serve every worker that follows another.
struct Line {
    conversation: RefCell<Conversation>,
    worker: RefCell<Option<Worker>>,
    next_job: Cell<u32>,
    on_reply: Box<dyn Fn(Reply)>,
    on_message: Closure<dyn FnMut(MessageEvent)>,
    on_error: Closure<dyn FnMut(Event)>,
}

impl Line {
    fn new(line: &Weak<Self>, on_reply: Box<dyn Fn(Reply)>) -> Self {
        let heard = line.clone();
        let broken = line.clone();
        Self {
            conversation: RefCell::new(Conversation::new(page_build())),
            worker: RefCell::new(None),
            next_job: Cell::new(1),
            on_reply,
            on_message: Closure::new(move |event: MessageEvent| {
                if let Some(line) = heard.upgrade() {
                    line.hear(event.data());
                }
            }),
            on_error: Closure::new(move |event: Event| {
                if let Some(line) = broken.upgrade() {
                    line.take(|conversation| conversation.break_down(&reason(&event)));
                }
            }),
        }
    }

    fn hear(&self, message: JsValue) {
        self.take(
            |conversation| match serde_wasm_bindgen::from_value(message) {
                Ok(reply) => conversation.hear(reply),
                Err(error) => conversation.break_down(&format!(
                    "The worker's message cannot be read ({error}). Reload the page"
                )),
            },
        );
    }

    /// Lets the conversation go on, and takes the steps that follow. No borrow is held while the
    /// page is told, so it may ask again at once.
    fn take(&self, event: impl FnOnce(&mut Conversation) -> Vec<Step>) {
        let steps = event(&mut self.conversation.borrow_mut());
        for step in steps {
            match step {
                Step::Start => self.start(),
                Step::End => self.end(),
                Step::Post(request) => self.post(&request),
                Step::Tell(reply) => (self.on_reply)(reply),
            }
        }
    }

    fn start(&self) {
        let options = WorkerOptions::new();
        options.set_type(WorkerType::Module);
        match Worker::new_with_options(WORKER, &options) {
            Ok(worker) => {
                worker.set_onmessage(Some(self.on_message.as_ref().unchecked_ref()));
                worker.set_onmessageerror(Some(self.on_error.as_ref().unchecked_ref()));
                worker.set_onerror(Some(self.on_error.as_ref().unchecked_ref()));
                self.worker.replace(Some(worker));
            }
            Err(error) => self.take(|conversation| {
                conversation.break_down(&format!(
                    "This browser starts no worker ({error:?}). Open the page in a newer browser"
                ))
            }),
        }
    }

    fn end(&self) {
        if let Some(worker) = self.worker.take() {
            worker.set_onmessage(None);
            worker.set_onmessageerror(None);
            worker.set_onerror(None);
            worker.terminate();
        }
    }

    fn post(&self, request: &Request) {
        let sent = serde_wasm_bindgen::to_value(request)
            .map_err(JsValue::from)
            .and_then(|message| match &*self.worker.borrow() {
                Some(worker) => worker.post_message(&message),
                None => Err(JsValue::from_str("there is no worker")),
            });
        if let Err(error) = sent {
            self.take(|conversation| {
                conversation.break_down(&format!(
                    "The request did not reach the worker ({error:?}). Try again"
                ))
            });
        }
    }
}

impl Drop for Line {
    fn drop(&mut self) {
        self.end();
    }
}

/// What an error event tells; one about a script that cannot be loaded tells nothing.
fn reason(event: &Event) -> String {
    match event.dyn_ref::<ErrorEvent>() {
        Some(error) => format!("The worker broke down ({}). Try again", error.message()),
        None => "The worker did not start, or a message was lost. Try again; if that fails too, reload the page".to_owned(),
    }
}

/// The build of the page; empty when it is not there.
fn page_build() -> String {
    web_sys::window()
        .and_then(|window| window.document())
        .and_then(|document| {
            document
                .query_selector("meta[name=\"build\"]")
                .ok()
                .flatten()
        })
        .and_then(|element| element.get_attribute("content"))
        .unwrap_or_default()
}
