//! The worker: moves requests to [`answer()`] and replies back, and does nothing else.

use crate::answer::answer;
use crate::protocol::{Reply, Request};
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

/// Whether the program was started as a worker and not as the page.
#[must_use]
pub fn is_here() -> bool {
    js_sys::global().is_instance_of::<DedicatedWorkerGlobalScope>()
}

/// Answers from now on.
pub fn run() {
    let on_message = Closure::<dyn FnMut(MessageEvent)>::new(|event: MessageEvent| {
        match serde_wasm_bindgen::from_value::<Request>(event.data()) {
            // What is posted from the middle of a job reaches the page at once.
            Ok(request) => post(&answer(request, &mut |progress| post(&progress))),
            Err(error) => post(&Reply::Fault {
                job: None,
                reason: format!("The worker cannot read the request ({error}). Reload the page"),
            }),
        }
    });
    scope().set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    on_message.forget(); // it lives as long as the worker
    post(&Reply::Ready { build: build() });
}

fn scope() -> DedicatedWorkerGlobalScope {
    js_sys::global().unchecked_into()
}

/// The build that the start script writes down; empty when there is none.
fn build() -> String {
    js_sys::Reflect::get(&scope(), &JsValue::from_str("slatwrightBuild"))
        .ok()
        .and_then(|build| build.as_string())
        .unwrap_or_default()
}

fn post(reply: &Reply) {
    let message = serde_wasm_bindgen::to_value(reply)
        .expect("texts, numbers within 2⁵³ and lists of them are always a message");
    scope()
        .post_message(&message)
        .expect("a plain message is always posted");
}
