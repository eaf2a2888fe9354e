//! What the title block of a printed sheet tells: entered here, in one place.

use super::text_field::NameField;
use leptos::prelude::*;
use solver::TitleField;

/// The fields of the title block.
#[component]
pub(crate) fn TitleForm() -> impl IntoView {
    let fields = TitleField::ALL.map(|field| {
        let id = format!("title-block-{field:?}");
        let fallback = match field {
            TitleField::Title => "Barrel and slats",
            _ => "A box for the pen",
        };
        view! {
            <div class="field row">
                <label for=id.clone()>{field.label()}</label>
                <NameField
                    read=move |project| Some(project.title_block.at(field).to_owned())
                    write=move |project, text| *project.title_block.at_mut(field) = text
                    label=field.label().to_owned()
                    fallback=fallback.to_owned()
                    id
                />
            </div>
        }
    });
    view! {
        <fieldset class="titles">
            <legend>"Title block"</legend>
            {fields.into_iter().collect_view()}
        </fieldset>
    }
}
