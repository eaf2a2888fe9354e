//! How moist the slats are when they are grooved.

use super::live::live;
use super::number_field::NumberField;
use super::radios::radios;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{Field, MoistureSource, figure};
use std::sync::Arc;

/// The moisture content at grooving: as measured, or from the air of the shop.
#[component]
pub(crate) fn Conditions() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let source = Memo::new(move |_| project.read().conditions.source);
    let pick = move |place: usize| {
        if let Some(source) = MoistureSource::ALL.get(place) {
            bench.change(|project| project.conditions.source = *source);
        }
    };
    let sources = radios(
        "moisture-source",
        "Where the moisture content is taken from",
        MoistureSource::ALL.map(MoistureSource::label).to_vec(),
        Signal::derive(move || {
            let source = source.get();
            MoistureSource::ALL
                .iter()
                .position(|other| *other == source)
        }),
        Arc::new(pick),
    );
    let fields = move || {
        let fields: &[Field] = match source.get() {
            MoistureSource::Typed => &[Field::GroovingMoisture],
            MoistureSource::Air => &[Field::AirTemperature, Field::AirHumidity],
        };
        fields
            .iter()
            .map(|field| view! { <NumberField at=Slot::Conditions(*field) context="column"/> })
            .collect_view()
    };
    let moisture = Memo::new(move |_| {
        let conditions = project.read().conditions.check().ok();
        conditions.map_or_else(
            || figure::NO_FIGURE.to_owned(),
            |conditions| figure::percent(conditions.moisture),
        )
    });
    view! {
        <section class="result conditions" aria-labelledby="conditions-title">
            <h2 id="conditions-title">"Moisture at the groove head"</h2>
            {sources}
            {live(fields)}
            <dl class="facts">
                <div>
                    <dt>"Slats are grooved at a moisture content of"</dt>
                    <dd class="figure"><output>{moisture}</output></dd>
                </div>
            </dl>
            <p class="hint">
                "Slats of a species move by the difference to their moisture as delivered; their guaranteed sizes stand in the table."
            </p>
        </section>
    }
}
