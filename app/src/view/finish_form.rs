//! What is asked of a finished pencil beyond its barrel.

use super::live::live;
use super::number_field::NumberField;
use super::text_field::NameField;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{Colour, Field, FinishDraft, Id};

/// The fields of a group, before and after its colour.
struct Group {
    title: &'static str,
    colour: Option<ColourOf>,
    fields: &'static [Field],
}

/// A colour of the pencil: its name, and where it stands.
type ColourOf = (&'static str, fn(&mut FinishDraft) -> &mut Colour);

const GROUPS: [Group; 4] = [
    Group {
        title: "Point",
        colour: Some(("Colour of the lead", |finish| &mut finish.lead_colour)),
        fields: &[Field::PointAngle],
    },
    Group {
        title: "Coat",
        colour: Some(("Colour of the coat", |finish| &mut finish.coat_colour)),
        fields: &[Field::CoatDensity],
    },
    Group {
        title: "Dip",
        colour: Some(("Colour of the dip", |finish| &mut finish.dip_colour)),
        fields: &[Field::DipLength],
    },
    Group {
        title: "Tin",
        colour: None,
        fields: &[Field::TinWidth, Field::TinHeight, Field::TinLength],
    },
];

/// The fields of the imprint, after its text.
const IMPRINT: [Field; 4] = [
    Field::ImprintFace,
    Field::ImprintMargin,
    Field::ImprintEnd,
    Field::FaceFall,
];

/// The entries of the barrel that is looked at.
#[component]
pub(crate) fn FinishForm() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let chosen = Memo::new(move |_| bench.project().read().layout.barrel);
    live(move || {
        let id = chosen.get();
        let fields = move |fields: &[Field]| {
            let field = |field: &Field| view! { <NumberField at=Slot::Barrel(id, *field) context="finish"/> };
            fields.iter().map(field).collect_view()
        };
        let groups = GROUPS.map(|group| {
            view! {
                <fieldset>
                    <legend>{group.title}</legend>
                    {group.colour.map(|colour| colour_field(bench, id, colour))}
                    {fields(group.fields)}
                </fieldset>
            }
        });
        view! {
            <div class="finish-form">
                {groups.into_iter().collect_view()}
                <fieldset>
                    <legend>"Imprint"</legend>
                    <div class="field row">
                        <span class="label">"Text"</span>
                        <NameField
                            read=move |project| {
                                let at = project.barrel_place(id)?;
                                Some(project.barrels[at].draft.finish.imprint.clone())
                            }
                            write=move |project, text| {
                                if let Some(at) = project.barrel_place(id) {
                                    project.barrels[at].draft.finish.imprint = text;
                                }
                            }
                            label="Text of the imprint".to_owned()
                            fallback="None".to_owned()
                        />
                    </div>
                    {fields(&IMPRINT)}
                </fieldset>
            </div>
        }
    })
}

/// A colour that is chosen with the browser's own means.
fn colour_field(bench: Workbench, barrel: Id, (name, of): ColourOf) -> impl IntoView + use<> {
    let shown = move || {
        let project = bench.project().read();
        let at = project.barrel_place(barrel)?;
        Some(of(&mut project.barrels[at].draft.finish.clone()).text())
    };
    let take = move |event| {
        if let Some(colour) = Colour::read(&event_target_value(&event)) {
            bench.change(|project| {
                if let Some(at) = project.barrel_place(barrel) {
                    *of(&mut project.barrels[at].draft.finish) = colour;
                }
            });
        }
    };
    view! {
        <label class="field row colour">
            {name}
            <input type="color" prop:value=shown on:change=take/>
        </label>
    }
}
