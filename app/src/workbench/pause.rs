//! Waiting until changes have paused.

use leptos::prelude::*;
use std::time::Duration;

/// Quiet time after a change, ms.
const QUIET: f64 = 150.0;

/// A wait that every change prolongs. A handle.
///
/// One timer runs through a row of changes and is set anew only when it rings too early: calling
/// one off and beginning another at every step of a drag is dear.
#[derive(Clone, Copy)]
pub(crate) struct Pause {
    /// When the last change was, ms of the clock.
    changed: StoredValue<f64>,
    waits: StoredValue<bool>,
}

impl Pause {
    /// Nothing has changed yet.
    pub(crate) fn new() -> Self {
        Self {
            changed: StoredValue::new(0.0),
            waits: StoredValue::new(false),
        }
    }

    /// Runs the action when the changes have paused, once for all that asked for it meanwhile.
    pub(crate) fn then(self, action: impl Fn() + 'static) {
        self.changed.set_value(js_sys::Date::now());
        if !self.waits.get_value() {
            self.wait(QUIET, action);
        }
    }

    fn wait(self, milliseconds: f64, action: impl Fn() + 'static) {
        let ring = move || {
            // What waited may have left the page.
            let Some(changed) = self.changed.try_get_value() else {
                return;
            };
            // A clock that was set back waits no longer than a whole pause.
            let left = (QUIET - (js_sys::Date::now() - changed)).min(QUIET);
            if left > 0.0 {
                self.wait(left, action);
            } else {
                self.waits.set_value(false);
                action();
            }
        };
        // Without a timer the question is asked with the next change.
        let time = Duration::from_micros((milliseconds * 1000.0) as u64);
        let timer = set_timeout_with_handle(ring, time);
        self.waits.set_value(timer.is_ok());
    }
}
