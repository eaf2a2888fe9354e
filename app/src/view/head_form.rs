//! The heads of the line, and what their knives cut between the pencils.

use super::number_field::NumberField;
use crate::workbench::Slot;
use leptos::prelude::*;
use solver::{Field, HeadKind};

/// The numbers of a head, as they are read off it.
const OF_A_HEAD: [Field; 5] = [
    Field::HeadDiameter,
    Field::HookAngle,
    Field::CuttingKnives,
    Field::HeadSpeed,
    Field::MarkedSpeed,
];

/// The fields of the three heads.
#[component]
pub(crate) fn HeadForm() -> impl IntoView {
    let heads = HeadKind::ALL.map(|head| {
        let fields = OF_A_HEAD.map(|field| {
            let name = Signal::stored(format!("{}: {}", head.label(), field.spec().label));
            view! { <NumberField at=Slot::Head(head, field) context="column" name/> }
        });
        view! {
            <fieldset>
                <legend>{head.label()}</legend>
                {fields.into_iter().collect_view()}
            </fieldset>
        }
    });
    let between = [Field::Overcut, Field::OvercutDraft]
        .map(|field| view! { <NumberField at=Slot::Cut(field) context="column"/> });
    view! {
        {heads.into_iter().collect_view()}
        <fieldset>
            <legend>"Between the pencils"</legend>
            {between.into_iter().collect_view()}
        </fieldset>
    }
}
