//! What is done to the outline as a whole and to the chosen point, under the drawing.

use super::super::live::live;
use super::super::when::When;
use super::Shaping;
use leptos::prelude::*;
use solver::{Edit, Joint, StretchKind, Symmetry};

/// The tools of a free outline; of another kind, the way to one.
#[component]
pub(crate) fn OutlineTools() -> impl IntoView {
    let shaping = expect_context::<Shaping>();
    let bench = shaping.bench;
    let free = Memo::new(move |_| shaping.is_free());
    let has_path = move || shaping.path.with(Option::is_some);
    let make_free = move |_| {
        shaping.make_free();
        bench.tell(
            "The outline is now drawn point by point, in the same form. Undo brings its kind back.",
        );
    };
    let symmetries = move || {
        let chosen = shaping.symmetry.get();
        Symmetry::ALL
            .map(|symmetry| {
                let selected = symmetry == chosen;
                view! { <option selected=selected prop:selected=selected>{symmetry.label()}</option> }
            })
            .collect_view()
    };
    let pick = move |event| {
        let label = event_target_value(&event);
        let found = Symmetry::ALL
            .into_iter()
            .find(|symmetry| symmetry.label() == label);
        let Some(symmetry) = found else {
            return;
        };
        shaping.symmetry.set(symmetry);
        if let Some(path) = shaping.path.get_untracked() {
            let made = path.made(symmetry);
            // Points on the line of a mirror are put in at once, so that the others keep their numbers.
            if path.is(symmetry) && made.nodes().len() == path.nodes().len() {
                return;
            }
            bench.leave_field();
            bench.draw(shaping.id(), &made);
            bench.leave_field();
            bench.tell("The outline has been made symmetric. Undo brings back what it was.");
        }
    };
    let chosen = move || shaping.chosen.get();
    let joint = Memo::new(move |_| {
        let path = shaping.path.read();
        path.as_ref().map(|path| path.joint(shaping.chosen.get()))
    });
    let kind = Memo::new(move |_| {
        let path = shaping.path.read();
        let node = *path.as_ref()?.nodes().get(shaping.chosen.get())?;
        Some(node.onward.kind())
    });
    let few = move || {
        shaping
            .path
            .with(|path| path.as_ref().is_none_or(|path| path.nodes().len() < 3))
    };
    let pressed = |is: bool| if is { "true" } else { "false" };
    let joints = Joint::ALL
        .map(|each| {
            view! {
                <button
                    type="button"
                    aria-pressed=move || pressed(joint.get() == Some(each))
                    on:click=move |_| shaping.edit(Edit::Join(shaping.chosen.get_untracked(), each))
                >
                    {each.label()}
                </button>
            }
        })
        .collect_view();
    let kinds = StretchKind::ALL
        .map(|each| {
            view! {
                <button
                    type="button"
                    aria-pressed=move || pressed(kind.get() == Some(each))
                    on:click=move |_| shaping.edit(Edit::Bend(shaping.chosen.get_untracked(), each))
                >
                    {each.label()}
                </button>
            }
        })
        .collect_view();
    // Children of a condition are made anew each time; these are kept and hidden.
    view! {
        <When holds=move || !free.get() && shaping.barrel.with(Option::is_some)>
            <div class="outline-tools">
                <button type="button" on:click=make_free>"Shape it point by point"</button>
            </div>
        </When>
        <div class="outline-tools" hidden=move || !(free.get() && has_path())>
            <label>
                "Symmetric "
                <select aria-label="Symmetric" on:change=pick>{live(symmetries)}</select>
            </label>
            <span class="here">"Point "{live(move || chosen() + 1)}</span>
            <span role="group" aria-label="Joint">{joints}</span>
            <span role="group" aria-label="Stretch after it">{kinds}</span>
            <button type="button" on:click=move |_| shaping.add_point()>"Add a point after it"</button>
            <button type="button" disabled=few on:click=move |_| shaping.edit(Edit::RemoveNode(shaping.chosen.get_untracked()))>
                "Take it out"
            </button>
        </div>
    }
}
