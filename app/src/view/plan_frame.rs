//! The frame of a plan: what starts the search for it, how it stands, and its parts.

use super::live::live;
use leptos::prelude::*;

/// What the frame of a plan is called.
#[derive(Clone, Copy)]
pub(crate) struct PlanNames {
    /// The class of the section.
    pub(crate) class: &'static str,
    /// The name of its heading on the page.
    pub(crate) heading: &'static str,
    /// What stands in the heading.
    pub(crate) title: &'static str,
}

/// A plan with what starts the search for it, the words on it and whether it can be pressed. What starts
/// it stands alone in its line and stays there, so that no other button comes under a finger that presses
/// twice.
pub(crate) fn plan_frame(
    names: PlanNames,
    is_filled_in: Memo<bool>,
    start: Memo<(&'static str, bool)>,
    ask: impl Fn() + 'static,
    standing: impl Fn() -> AnyView + Send + Sync + 'static,
    parts: impl Fn() -> AnyView + Send + Sync + 'static,
) -> impl IntoView {
    let press = move |_| {
        if start.get_untracked().1 {
            ask();
        }
    };
    view! {
        <section class=format!("result {}", names.class) aria-labelledby=names.heading>
            <h2 id=names.heading>{names.title}</h2>
            <div class="actions" hidden=move || !is_filled_in.get()>
                <button
                    type="button"
                    aria-disabled=move || if start.get().1 { "false" } else { "true" }
                    on:click=press
                >
                    {live(move || start.get().0)}
                </button>
            </div>
            <div aria-live="polite">{live(standing)}</div>
            {live(parts)}
        </section>
    }
}

/// How the search stands.
pub(crate) fn line(words: &str, class: &'static str) -> AnyView {
    view! { <p class=format!("running {class}")>{words.to_owned()}</p> }.into_any()
}

/// How good a plan is, after whether it is of before the last change, and before what else is told.
pub(crate) fn verdict_lines(
    is_stale: bool,
    (class, words): (&'static str, String),
    rest: Option<AnyView>,
) -> AnyView {
    let before = is_stale.then(|| line("This plan is of before the last change.", "before"));
    let verdict = view! { <p class=format!("proof {class}")>{words}</p> }.into_any();
    let lines = before.into_iter().chain([verdict]).chain(rest);
    lines.collect_view().into_any()
}
