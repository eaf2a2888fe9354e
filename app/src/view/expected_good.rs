//! The good pencils that are expected of the layout, in a line.

use super::live::live;
use crate::protocol::Expected;
use crate::workbench::{JobState, Searches};
use leptos::prelude::*;
use solver::figure;

/// The good pencils that are expected of a sandwich.
#[component]
pub(crate) fn ExpectedGood() -> impl IntoView {
    let question = expect_context::<Searches>().expected;
    let (state, busy) = (question.state(), question.busy());
    let words = Memo::new(move |_| match state.get() {
        JobState::Done(Expected {
            good: Some(good),
            pencils,
            line,
        }) => Some(format!(
            "{} of {pencils} pencils of a sandwich are expected to be good with the errors of “{line}”.",
            figure::plain(good, 3)
        )),
        _ => None,
    });
    let stale = move || busy.get().is_some();
    view! { <p class="expected" class:stale=stale>{live(move || words.get())}</p> }
}
