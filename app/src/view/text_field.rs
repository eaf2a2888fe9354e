//! A name that can be typed over.

use crate::workbench::{LONGEST_NAME, Workbench};
use leptos::prelude::*;
use solver::ProjectDraft;
use std::sync::Arc;
use web_sys::Event;

/// Reads a name in the project.
type Reading = Arc<dyn Fn(&ProjectDraft) -> Option<String> + Send + Sync>;

/// Puts another name there.
type Writing = Arc<dyn Fn(&mut ProjectDraft, String) + Send + Sync>;

/// A name in the project, whole, over several lines where it is long; an empty one is shown as its
/// fallback.
#[component]
pub(crate) fn NameField(
    /// Reads the name.
    read: impl Fn(&ProjectDraft) -> Option<String> + Send + Sync + 'static,
    /// Puts another name there.
    write: impl Fn(&mut ProjectDraft, String) + Send + Sync + 'static,
    /// What the field is called.
    label: String,
    /// Shown while the name is empty.
    fallback: String,
    /// The name of its element on the page, where something leads there.
    #[prop(optional, into)]
    id: Option<String>,
) -> impl IntoView {
    field(Arc::new(read), Arc::new(write), label, fallback, id)
}

/// The field, compiled once for all names.
fn field(
    read: Reading,
    write: Writing,
    label: String,
    fallback: String,
    id: Option<String>,
) -> AnyView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let shown = move || read(&project.read()).unwrap_or_default();
    let take = move |event: &Event| {
        // The field shows a name over several lines, but it has one.
        let name = event_target_value(event).replace(['\r', '\n'], " ");
        bench.change(|project| write(project, name));
    };
    let take = StoredValue::new(take);
    let on_keydown = move |event: web_sys::KeyboardEvent| {
        if event.key() == "Enter" {
            event.prevent_default();
            take.with_value(|take| take(&event));
        }
    };
    view! {
        <textarea
            rows="1"
            id=id
            class="name"
            aria-label=label
            placeholder=fallback
            maxlength=LONGEST_NAME.to_string()
            autocomplete="off"
            prop:value=shown
            on:keydown=on_keydown
            on:change=move |event| take.with_value(|take| take(&event))
        ></textarea>
    }
    .into_any()
}
