//! A number of the project that can be typed over.

use super::live::live;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::Typed;
use solver::entry::Dimension;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlInputElement, KeyboardEvent};

/// How a number field stands on the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Look {
    /// A row of the column: label, number, unit, and what the term means while it is in use.
    #[default]
    Row,
    /// The number alone, named for those who do not see where it stands.
    Bare,
}

/// A number of the project that can be typed over.
///
/// What is typed changes the project at once. Text that is no number stays as typed, with
/// the message beside it. Escape brings back what stood there before.
#[component]
pub(crate) fn NumberField(
    /// Where the number stands in the project.
    at: Slot,
    /// Which part of the page it stands in, so that its element has a name of its own.
    context: &'static str,
    /// How it stands there.
    #[prop(optional)]
    look: Look,
    /// What it is called where its own label would not say enough.
    #[prop(optional, into)]
    name: Option<Signal<String>>,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let (project, unit) = (bench.project(), bench.unit);
    let field = at.field();
    let spec = field.spec();
    let element_id = at.element_id(context);
    let message_id = format!("{element_id}-message");

    let typing = RwSignal::new(None::<String>);
    let before = StoredValue::new(None);
    // Of all that changes in the project, only this number is shown here.
    let stands_here = Memo::new(move |_| at.get(&project.read()).cloned());
    let shown = move || {
        let (typed, unit) = (stands_here.read(), unit.get());
        match (typed.as_ref(), typing.get()) {
            (None, _) => String::new(),
            (Some(typed), None) => typed.shown(field, unit),
            (Some(typed), Some(text)) if *typed == Typed::new(&text, field, unit) => text,
            // The number has changed under the hands of the one who types, by undo for one.
            (Some(typed), Some(_)) => typed.full(field, unit),
        }
    };
    let message = Memo::new(move |_| bench.message_at(at));
    let wrong = move || message.with(Option::is_some);

    // A press that brings the cursor here selects the number, to be typed over.
    let is_new_here = StoredValue::new(false);
    let on_focus = move |event: web_sys::FocusEvent| {
        let typed = at.get(&project.read_untracked()).cloned();
        let full = typed
            .as_ref()
            .map(|typed| typed.full(field, unit.get_untracked()));
        before.set_value(typed);
        is_new_here.set_value(true);
        bench.notice_meaning(field);
        // At once, not with the next update: whoever types next means the whole number.
        if let (Some(input), Some(full)) = (input_of(&event), &full) {
            input.set_value(full);
            input.select();
        }
        typing.set(full);
    };
    let on_pointer_up = move |event: web_sys::PointerEvent| {
        if is_new_here.get_value()
            && let Some(input) = input_of(&event)
        {
            is_new_here.set_value(false);
            input.select();
        }
    };
    let on_input = move |event: Event| {
        let text = event_target_value(&event);
        bench.type_in(at, &text);
        typing.set(Some(text));
    };
    let on_blur = move |_| {
        typing.set(None);
        bench.leave_field();
    };
    let put = move |event: &KeyboardEvent, typed: &Typed| {
        let full = typed.full(field, unit.get_untracked());
        bench.type_in(at, &full);
        if let Some(input) = input_of(event) {
            input.set_value(&full);
            input.select();
        }
        typing.set(Some(full));
    };
    let on_keydown = move |event: KeyboardEvent| match event.key().as_str() {
        "Enter" => {
            bench.leave_field();
            let typed = at.get(&project.read_untracked()).cloned();
            if let Some(typed) = &typed {
                put(&event, typed);
            }
            before.set_value(typed);
        }
        "Escape" => {
            if let Some(typed) = before.get_value() {
                put(&event, &typed);
            }
        }
        _ => is_new_here.set_value(false),
    };

    // A keyboard with only digits cannot type a minus.
    let keyboard = if spec.least < 0.0 { "text" } else { "decimal" };
    let unit_label = move || match spec.dimension {
        Dimension::Length => unit.get().label(),
        Dimension::Angle => "°",
        Dimension::Percent => "%",
        _ => "",
    };
    let spoken = move || {
        let name = name.map_or_else(|| spec.label.to_owned(), |name| name.get());
        match unit_label() {
            "" => name,
            "°" => format!("{name}, degrees"),
            "%" => format!("{name}, percent"),
            unit => format!("{name}, {unit}"),
        }
    };
    let described = {
        let message_id = message_id.clone();
        move || wrong().then(|| message_id.clone())
    };
    let input = view! {
        <input
            type="text"
            id=element_id.clone()
            class="number"
            class:wrong=wrong
            inputmode=keyboard
            autocomplete="off"
            spellcheck="false"
            prop:value=shown
            aria-label=move || (look == Look::Bare || name.is_some()).then(spoken)
            aria-invalid=move || if wrong() { "true" } else { "false" }
            aria-describedby=described
            on:focus=on_focus
            on:input=on_input
            on:pointerup=on_pointer_up
            on:blur=on_blur
            on:keydown=on_keydown
        />
    };
    let problem = view! {
        <p class="problem" id=message_id role="status" hidden=move || !wrong()>
            {live(move || message.get().unwrap_or_default())}
        </p>
    };
    let changed = move || {
        let initial = Typed::initial(field);
        !spec.optional
            && stands_here
                .read()
                .as_ref()
                .is_some_and(|typed| *typed != initial)
    };
    match look {
        Look::Bare => view! { <span class="field bare">{input}{problem}</span> }.into_any(),
        Look::Row => view! {
            <div class="field row" class:changed=move || matches!(at, Slot::Rules(_)) && changed()>
                <label for=element_id>
                    {spec.label} <span class="unit">{live(move || match unit_label() { "" => String::new(), unit => format!(", {unit}") })}</span>
                </label>
                {input}
                <p class="meaning">{spec.meaning}</p>
                {problem}
            </div>
        }
        .into_any(),
    }
}

/// The field in which something happened.
fn input_of(event: &Event) -> Option<HtmlInputElement> {
    event.target().and_then(|target| target.dyn_into().ok())
}
