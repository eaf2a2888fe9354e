//! What the search for the best layouts may try.

use super::live::live;
use super::number_field::NumberField;
use super::radios::radios;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{AxisChoice, Field, Pairs, SearchDraft, Turns, Typed};
use std::sync::Arc;

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
    let turns = choice(
        bench,
        "search-turns",
        "Turns that are tried",
        Turns::ALL.map(|turns| (turns, turns.label())),
        |search| search.turns,
        |search, turns| search.turns = turns,
    );
    let axis = choice(
        bench,
        "search-axis",
        "Heights of the lead axis that are tried",
        AxisChoice::ALL.map(|axis| (axis, axis.label())),
        |search| search.axis,
        |search, axis| search.axis = axis,
    );
    let pairs = choice(
        bench,
        "search-pairs",
        "Slats that are put together",
        Pairs::ALL.map(|pairs| (pairs, pairs.label())),
        |search| search.pairs,
        |search, pairs| search.pairs = pairs,
    );
    view! {
        <div class="search-form">
            {turns}
            {axis}
            {pairs}
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
fn choice<T: Copy + PartialEq + Send + Sync + 'static>(
    bench: Workbench,
    name: &'static str,
    label: &'static str,
    all: [(T, &'static str); 2],
    read: fn(&SearchDraft) -> T,
    write: fn(&mut SearchDraft, T),
) -> AnyView {
    let chosen = Signal::derive(move || {
        let chosen = read(&bench.project().read().search);
        all.iter().position(|(answer, _)| *answer == chosen)
    });
    let pick = move |place: usize| {
        if let Some((answer, _)) = all.get(place) {
            bench.change(|project| write(&mut project.search, *answer));
        }
    };
    let answers = all.map(|(_, words)| words).to_vec();
    radios(name, label, answers, chosen, Arc::new(pick))
}
