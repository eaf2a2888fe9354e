//! A name that can be typed over.

use crate::workbench::{LONGEST_NAME, Workbench};
use leptos::prelude::*;
use solver::ProjectDraft;
use web_sys::Event;

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
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let shown = move || read(&project.read()).unwrap_or_default();
    let write = move |event: &Event| {
        // The field shows a name over several lines, but it has one.
        let name = event_target_value(event).replace(['\r', '\n'], " ");
        bench.change(|project| write(project, name));
    };
    let write = StoredValue::new(write);
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
            on:keydown=move |event| {
                if event.key() == "Enter" {
                    event.prevent_default();
                    write.with_value(|write| write(&event));
                }
            }
            on:change=move |event| write.with_value(|write| write(&event))
        ></textarea>
    }
}
