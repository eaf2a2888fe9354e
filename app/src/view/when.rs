//! Parts of the page that are there or not.

use leptos::prelude::*;

/// What is on the page while a condition holds.
///
/// This is leptos' `Show` without a fallback, for contents of every kind: it is compiled once.
#[component]
pub(crate) fn When(
    /// The condition.
    #[prop(into)]
    holds: Signal<bool>,
    /// What is there.
    children: ChildrenFn,
) -> impl IntoView {
    let holds = Memo::new(move |_| holds.get());
    move || holds.get().then(|| children())
}
