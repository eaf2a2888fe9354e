//! How moist the slats are when they are grooved.

use super::live::live;
use super::number_field::NumberField;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{Field, MoistureSource, figure};

/// The moisture content at grooving: as measured, or from the air of the shop.
#[component]
pub(crate) fn Conditions() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let source = Memo::new(move |_| project.read().conditions.source);
    let sources = move || {
        let chosen = source.get();
        MoistureSource::ALL
            .map(|source| {
                let pick = move |_| bench.change(|project| project.conditions.source = source);
                view! {
                    <label class="choice">
                        <input type="radio" name="moisture-source" prop:checked=source == chosen on:change=pick/>
                        {source.label()}
                    </label>
                }
            })
            .collect_view()
    };
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
            <div class="choices" role="radiogroup" aria-label="Where the moisture content is taken from">{live(sources)}</div>
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
