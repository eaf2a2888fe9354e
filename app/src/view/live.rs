//! Parts of the page that change.

use leptos::prelude::*;
use leptos::tachys::reactive_graph::SharedReactiveFunction;
use std::sync::{Arc, Mutex};

/// What is made anew whenever something it read has changed.
///
/// A closure in the markup does the same; but each weighs kilobytes in a browser, as all that
/// keeps it up to date is compiled for it. This is compiled once.
pub(crate) fn live<View: IntoView + 'static>(
    mut make: impl FnMut() -> View + Send + 'static,
) -> SharedReactiveFunction<AnyView> {
    Arc::new(Mutex::new(move || make().into_any()))
}
