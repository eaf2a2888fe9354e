//! What stands in the place of an answer that a worker makes.

use crate::workbench::JobState;
use leptos::prelude::*;

/// The answer as it is to be shown, or why there is none yet; `waiting` stands while it is made,
/// unless a line of its own tells how far it is.
pub(crate) fn answered<T>(
    state: JobState<T>,
    waiting: Option<&'static str>,
    show: impl FnOnce(T) -> AnyView,
) -> AnyView {
    let in_words = |words: &'static str| view! { <p class="empty">{words}</p> };
    match state {
        JobState::Waiting | JobState::Running(_) => waiting.map(in_words).into_any(),
        JobState::Done(answer) => show(answer),
        JobState::Refused(problems) => problem_list(problems),
        JobState::Stopped => in_words("Stopped. The next change starts it again.").into_any(),
        JobState::Fault(reason) => view! { <p class="empty problem">{reason}</p> }.into_any(),
    }
}

/// Why the project cannot be worked with.
fn problem_list(problems: Vec<String>) -> AnyView {
    lines("empty", problems)
}

/// Lines of text, one below the other.
pub(crate) fn lines(class: &'static str, lines: Vec<String>) -> AnyView {
    let lines = lines.into_iter().map(|line| view! { <li>{line}</li> });
    view! { <ul class=class>{lines.collect_view()}</ul> }.into_any()
}
