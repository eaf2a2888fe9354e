//! What an order plan counts with beside orders and offers: costs, limits, and what is made small.

use super::number_field::NumberField;
use super::radios::radios;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::Field;
use solver::order_plan::PlanAim;
use std::sync::Arc;

/// The fields, group by group.
const GROUPS: [(&str, &[Field]); 5] = [
    (
        "Machines",
        &[
            Field::MachineHourPrice,
            Field::SandwichSeconds,
            Field::ChangeoverCost,
            Field::ChangeoverMinutes,
        ],
    ),
    (
        "Materials",
        &[
            Field::LeadPrice,
            Field::GluePrice,
            Field::CoatPrice,
            Field::ChipPrice,
        ],
    ),
    (
        "Stores",
        &[
            Field::PencilHolding,
            Field::SlatHolding,
            Field::PencilStore,
            Field::SlatStore,
        ],
    ),
    ("Wood", &[Field::CertifiedShare]),
    (
        "Limits of the plan",
        &[Field::CostLimit, Field::TimberLimit, Field::ChangeoverLimit],
    ),
];

/// Costs, limits and the aim.
#[component]
pub(crate) fn SupplyForm() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let chosen = Signal::derive(move || {
        let aim = bench.project().read().supply.aim;
        PlanAim::ALL.iter().position(|other| *other == aim)
    });
    let pick = move |place: usize| {
        if let Some(aim) = PlanAim::ALL.get(place) {
            bench.change(|project| project.supply.aim = *aim);
        }
    };
    let aims = radios(
        "plan-aim",
        "What the plan makes small",
        PlanAim::ALL.map(PlanAim::label).to_vec(),
        chosen,
        Arc::new(pick),
    );
    let groups = GROUPS.map(|(legend, fields)| {
        let fields = fields
            .iter()
            .map(|field| view! { <NumberField at=Slot::Supply(*field) context="column"/> });
        view! { <fieldset><legend>{legend}</legend>{fields.collect_view()}</fieldset> }
    });
    view! {
        <section class="result supply-form" aria-labelledby="supply-title">
            <h2 id="supply-title">"Costs, limits and aim"</h2>
            {aims}
            <div class="groups">{groups.into_iter().collect_view()}</div>
        </section>
    }
}
