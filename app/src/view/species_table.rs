//! The species of wood, with a handbook to begin from.

use super::entry_table::{EntryTable, add_row};
use crate::workbench::{Table, Workbench};
use leptos::prelude::*;
use solver::{Entry, Species};

/// The species that the slats are of.
#[component]
pub(crate) fn SpeciesTable() -> impl IntoView {
    view! {
        <EntryTable table=Table::Species empty="No species yet. Slats without one do not move with moisture.">
            <Handbook/>
        </EntryTable>
    }
}

/// Adds a copy of a species of the handbook.
#[component]
fn Handbook() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let woods = StoredValue::new(Species::handbook());
    let chosen = RwSignal::new(0_usize);
    let options = woods.with_value(|woods| {
        let options = woods.iter().enumerate();
        options
            .map(|(at, wood)| view! { <option value=at.to_string()>{wood.name.clone()}</option> })
            .collect_view()
    });
    let pick = move |event| {
        if let Ok(at) = event_target_value(&event).parse() {
            chosen.set(at);
        }
    };
    let add = move |_| {
        let Some(draft) = woods.with_value(|woods| woods.get(chosen.get_untracked()).cloned())
        else {
            return;
        };
        add_row(bench, Table::Species, |project| {
            let id = project.free_id();
            project.species.push(Entry { id, draft });
            id
        });
    };
    view! {
        <span class="joined">
            <label for="handbook">"From the handbook"</label>
            <select id="handbook" on:change=pick>{options}</select>
            <button type="button" aria-label="Add this species from the handbook" on:click=add>"Add"</button>
        </span>
    }
}
