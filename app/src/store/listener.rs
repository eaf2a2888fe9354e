//! An event handler that is taken off when it goes out of scope.

use wasm_bindgen::{JsCast, closure::Closure};
use web_sys::{Event, EventTarget};

/// A handler on a target, for as long as this value lives.
pub(crate) struct Listener {
    target: EventTarget,
    event: &'static str,
    handler: Closure<dyn FnMut(Event)>,
}

impl Listener {
    /// Calls `handler` at every `event` of `target`.
    ///
    /// `handler` must not drop its own `Listener`: it would pull the rug from under itself.
    pub(crate) fn new(
        target: &EventTarget,
        event: &'static str,
        handler: impl FnMut(Event) + 'static,
    ) -> Self {
        let handler = Closure::<dyn FnMut(Event)>::new(handler);
        target
            .add_event_listener_with_callback(event, handler.as_ref().unchecked_ref())
            .expect("adding a listener with a function fails in no browser");
        Self {
            target: target.clone(),
            event,
            handler,
        }
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let handler = self.handler.as_ref().unchecked_ref();
        // Nothing is lost if it fails: there is nothing to take off then.
        let _ = self
            .target
            .remove_event_listener_with_callback(self.event, handler);
    }
}
