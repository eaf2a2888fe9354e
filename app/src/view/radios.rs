//! One of a few answers, each with its words.

use super::live::live;
use leptos::prelude::*;
use std::sync::Arc;

/// What is done when an answer is picked, by its place among all.
pub(crate) type Pick = Arc<dyn Fn(usize) + Send + Sync>;

/// Radio buttons, one for each answer. Compiled once for all questions.
pub(crate) fn radios(
    name: &'static str,
    label: &'static str,
    answers: Vec<&'static str>,
    chosen: Signal<Option<usize>>,
    pick: Pick,
) -> AnyView {
    let buttons = move || {
        let chosen = chosen.get();
        let buttons = answers.iter().enumerate().map(|(place, words)| {
            let pick = Arc::clone(&pick);
            view! {
                <label class="choice">
                    <input type="radio" name=name prop:checked=chosen == Some(place) on:change=move |_| pick(place)/>
                    {*words}
                </label>
            }
        });
        buttons.collect_view()
    };
    view! { <div class="choices" role="radiogroup" aria-label=label>{live(buttons)}</div> }
        .into_any()
}
