//! The run for which materials are reckoned.

use super::live::live;
use super::number_field::NumberField;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{Field, LeadGrade};

/// The fields of the run in groups; the yields stand in the table of the stages.
const GROUPS: [(&str, &[Field]); 5] = [
    ("Run", &[Field::RunGross]),
    (
        "Leads",
        &[
            Field::LeadTolerance,
            Field::LeadDensity,
            Field::LeadBreakage,
        ],
    ),
    (
        "Glue and clamps",
        &[
            Field::GlueSpread,
            Field::ClampPressure,
            Field::PressHours,
            Field::PressLoad,
        ],
    ),
    ("Coat", &[Field::CoatSolids, Field::CoatPasses]),
    (
        "Wood",
        &[Field::SpecificGravity, Field::VolumetricShrinkage],
    ),
];

/// The fields of the run.
#[component]
pub(crate) fn RunForm() -> impl IntoView {
    let groups = GROUPS.map(|(title, fields)| {
        let grade = (title == "Leads").then(|| view! { <Grade/> });
        let fields = fields
            .iter()
            .map(|field| view! { <NumberField at=Slot::Run(*field) context="column"/> });
        view! {
            <fieldset>
                <legend>{title}</legend>
                {grade}
                {fields.collect_view()}
            </fieldset>
        }
    });
    groups.into_iter().collect_view()
}

/// The grade of the lead.
#[component]
fn Grade() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let chosen = Memo::new(move |_| bench.project().read().run.grade);
    let options = move || {
        let chosen = chosen.get();
        let options = LeadGrade::all().map(|grade| {
            view! {
                <option value=grade.label() selected=grade == chosen prop:selected=grade == chosen>
                    {grade.label()}
                </option>
            }
        });
        options.collect_view()
    };
    let pick = move |event| {
        if let Some(grade) = LeadGrade::of_label(&event_target_value(&event)) {
            bench.change(|project| project.run.grade = grade);
        }
    };
    view! {
        <div class="field row">
            <label for="lead-grade">"Lead grade"</label>
            <select id="lead-grade" on:change=pick>{live(options)}</select>
        </div>
    }
}
