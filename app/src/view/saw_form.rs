//! The saws, what is kept of the ends, and what is made small.

use super::number_field::NumberField;
use super::radios::radios;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::Field;
use solver::sawing::SawingAim;
use std::sync::Arc;

/// The fields of the saws.
#[component]
pub(crate) fn SawForm() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let chosen = Signal::derive(move || {
        let aim = bench.project().read().saw_shop.aim;
        SawingAim::ALL.iter().position(|other| *other == aim)
    });
    let pick = move |place: usize| {
        if let Some(aim) = SawingAim::ALL.get(place) {
            bench.change(|project| project.saw_shop.aim = *aim);
        }
    };
    let aims = radios(
        "saw-aim",
        "What the plan makes small",
        SawingAim::ALL.map(SawingAim::label).to_vec(),
        chosen,
        Arc::new(pick),
    );
    let fields = [
        Field::CrosscutKerf,
        Field::RipKerf,
        Field::SawnMoisture,
        Field::ShortestOffcut,
        Field::OffcutPrice,
    ]
    .map(|field| view! { <NumberField at=Slot::SawShop(field) context="column"/> });
    view! {
        <section class="result saws" aria-labelledby="saws-title">
            <h2 id="saws-title">"Saws and offcuts"</h2>
            {fields}
            {aims}
        </section>
    }
}
