//! What is folded away until it is needed.

use super::live::live;
use leptos::prelude::*;

/// A part of the page under a line that tells how it stands, and opens it.
#[component]
pub(crate) fn Folded(
    /// How it stands.
    summary: Memo<String>,
    /// Whether it is open at first.
    open: bool,
    /// The part.
    children: Children,
) -> impl IntoView {
    view! {
        <details class="folded" open=open>
            <summary>{live(move || summary.get())}</summary>
            {children()}
        </details>
    }
}
