//! The path of a free outline: several lines of text.

use super::live::live;
use crate::project_file::MOST_PATH_CHARACTERS;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{Field, Id};
use web_sys::KeyboardEvent;

/// An invented outline, one corner up: to see how a path is written, and to begin with.
const EXAMPLE: &str = "M 2 0 L 8 0
C 9.4 0 10 1 9.4 2.2
L 6.4 7.9
C 5.8 9 4.2 9 3.6 7.9
L 0.6 2.2
C 0 1 0.6 0 2 0 Z";

/// The path of a free outline.
///
/// What is typed changes the project at once, and one stay in the field is one step to undo. A
/// path that cannot be read stays as typed, with the message beside it. Escape brings back what
/// stood there before.
#[component]
pub(crate) fn PathField(
    /// The barrel it is the outline of.
    barrel: Id,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let spec = Field::Path.spec();
    let slot = Slot::Barrel(barrel, Field::Path);
    let element_id = slot.element_id("column");
    let (hint_id, message_id) = (
        format!("{element_id}-hint"),
        format!("{element_id}-message"),
    );
    let path = Memo::new(move |_| {
        let project = project.read();
        let at = project.barrel_place(barrel);
        at.map(|at| project.barrels[at].draft.path.clone())
            .unwrap_or_default()
    });
    let message = Memo::new(move |_| bench.message_at(slot));
    let wrong = move || message.with(Option::is_some);
    let described = {
        let (hint_id, message_id) = (hint_id.clone(), message_id.clone());
        move || {
            if wrong() {
                format!("{hint_id} {message_id}")
            } else {
                hint_id.clone()
            }
        }
    };
    let before = StoredValue::new(String::new());
    let on_keydown = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            bench.type_path(barrel, &before.get_value());
        }
    };
    let put_example = move |_| {
        bench.change(|project| {
            if let Some(at) = project.barrel_place(barrel) {
                EXAMPLE.clone_into(&mut project.barrels[at].draft.path);
            }
        });
        bench.tell("The example has taken the place of the outline path. Undo brings it back.");
    };
    view! {
        <div class="field path">
            <label for=element_id.clone()>{spec.label}</label>
            <textarea
                id=element_id
                class:wrong=wrong
                rows="6"
                maxlength=MOST_PATH_CHARACTERS.to_string()
                autocomplete="off"
                autocapitalize="off"
                spellcheck="false"
                prop:value=move || path.get()
                aria-invalid=move || if wrong() { "true" } else { "false" }
                aria-describedby=described
                on:focus=move |_| {
                    before.set_value(path.get_untracked());
                    bench.notice_meaning(Field::Path);
                }
                on:input=move |event| bench.type_path(barrel, &event_target_value(&event))
                on:blur=move |_| bench.leave_field()
                on:keydown=on_keydown
            ></textarea>
            <p class="problem" id=message_id role="status" hidden=move || !wrong()>
                {live(move || message.get().unwrap_or_default())}
            </p>
            <p class="meaning" id=hint_id>{spec.meaning}</p>
            <button type="button" on:click=put_example>"Put in an example (invented)"</button>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use solver::{BarrelDraft, Shape};

    #[test]
    fn the_example_is_an_outline_that_can_be_made() {
        let mut draft = BarrelDraft::new("", Shape::Free);
        assert!(draft.check().is_err());
        EXAMPLE.clone_into(&mut draft.path);
        assert_eq!(draft.check().err(), None);
    }
}
