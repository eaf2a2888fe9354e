//! A name that can be typed over.

use crate::workbench::Workbench;
use leptos::prelude::*;
use solver::ProjectDraft;

/// The longest name that is kept, in characters; a project file allows no more.
const LONGEST_NAME: &str = "200";

/// A name in the project; an empty one is shown as its fallback.
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
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let shown = move || read(&project.read()).unwrap_or_default();
    view! {
        <input
            type="text"
            class="name"
            aria-label=label
            placeholder=fallback
            maxlength=LONGEST_NAME
            autocomplete="off"
            prop:value=shown
            on:change=move |event| {
                let name = event_target_value(&event);
                bench.change(|project| write(project, name));
            }
        />
    }
}
