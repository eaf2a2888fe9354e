//! What the search for the best layouts may try.

use super::live::live;
use super::number_field::NumberField;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{AxisChoice, Field, Pairs, SearchDraft, Turns, Typed};

/// Turns, heights of the axis, pairs of slats, and the two numbers that money is counted with.
#[component]
pub(crate) fn SearchForm() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let limited = move || {
        let project = bench.project().read();
        project
            .rules
            .most
            .read_optional(Field::MostAcross)
            .ok()
            .flatten()
    };
    let lift = move |_| bench.change(|project| project.rules.most = Typed::empty());
    view! {
        <div class="search-form">
            <Choice
                name="search-turns"
                label="Turns that are tried"
                all=Turns::ALL.map(|turns| (turns, turns.label()))
                read=|search| search.turns
                write=|search, turns| search.turns = turns
            />
            <Choice
                name="search-axis"
                label="Heights of the lead axis that are tried"
                all=AxisChoice::ALL.map(|axis| (axis, axis.label()))
                read=|search| search.axis
                write=|search, axis| search.axis = axis
            />
            <Choice
                name="search-pairs"
                label="Slats that are put together"
                all=Pairs::ALL.map(|pairs| (pairs, pairs.label()))
                read=|search| search.pairs
                write=|search, pairs| search.pairs = pairs
            />
            <div>
                <NumberField at=Slot::Search(Field::NewSetPrice) context="search"/>
                <NumberField at=Slot::Search(Field::YearGross) context="search"/>
            </div>
        </div>
        {live(move || limited().map(|most| {
            view! {
                <p class="limited">
                    {format!("The machining rules allow at most {most} side by side, so no row has more. ")}
                    <button type="button" on:click=lift>"Lift this limit"</button>
                </p>
            }
        }))}
    }
}

/// One of two answers to a question of the search.
#[component]
fn Choice<T: Copy + PartialEq + Send + Sync + 'static>(
    /// The name that the radio buttons share.
    name: &'static str,
    /// What is chosen.
    label: &'static str,
    /// The answers with their words.
    all: [(T, &'static str); 2],
    /// What stands in the project.
    read: fn(&SearchDraft) -> T,
    /// Puts an answer there.
    write: fn(&mut SearchDraft, T),
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let chosen = Memo::new(move |_| read(&bench.project().read().search));
    let buttons = all
        .map(|(answer, words)| {
            let pick = move |_| bench.change(|project| write(&mut project.search, answer));
            view! {
                <label class="choice">
                    <input type="radio" name=name prop:checked=move || chosen.get() == answer on:change=pick/>
                    {words}
                </label>
            }
        })
        .collect_view();
    view! { <div class="choices" role="radiogroup" aria-label=label>{buttons}</div> }
}
