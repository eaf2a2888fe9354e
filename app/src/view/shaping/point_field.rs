//! One coordinate of a point of the outline.

use super::super::live::live;
use super::{Grip, Shaping};
use leptos::prelude::*;
use solver::{Field, Point, Typed, figure};
use wasm_bindgen::JsCast;
use web_sys::{FocusEvent, HtmlInputElement, KeyboardEvent};

/// Which coordinate.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    /// To the right of the lead axis.
    Across,
    /// Above it.
    Up,
}

impl Side {
    const fn field(self) -> Field {
        match self {
            Self::Across => Field::PointAcross,
            Self::Up => Field::PointUp,
        }
    }

    const fn of(self, point: Point) -> f64 {
        match self {
            Self::Across => point.x,
            Self::Up => point.y,
        }
    }
}

/// A coordinate that can be typed over: what is a number moves the point at once, and one stay in the
/// field is one step to undo.
#[component]
pub(super) fn PointField(grip: Grip, side: Side) -> impl IntoView {
    let shaping = expect_context::<Shaping>();
    let (bench, field) = (shaping.bench, side.field());
    let typing = RwSignal::new(None::<String>);
    let value = Memo::new(move |_| {
        let path = shaping.path.read();
        path.as_ref()
            .and_then(|path| grip.at(path))
            .map(|at| side.of(at))
    });
    let shown = move || {
        typing.get().unwrap_or_else(|| {
            let value = value.get().unwrap_or_default();
            figure::length(value, bench.unit.get())
        })
    };
    let problem = Memo::new(move |_| {
        let (text, unit) = (typing.get()?, bench.unit.get());
        let read = Typed::new(&text, field, unit).read(field);
        read.err().map(|problem| problem.message(unit))
    });
    let on_focus = move |event: FocusEvent| {
        shaping.choose(grip);
        bench.notice_meaning(field);
        let value = value.get_untracked().unwrap_or_default();
        let full = Typed::Number(value).full(field, bench.unit.get_untracked());
        if let Some(input) = event
            .target()
            .and_then(|target| target.dyn_into::<HtmlInputElement>().ok())
        {
            input.set_value(&full);
            input.select();
        }
        typing.set(Some(full));
    };
    let on_input = move |event| {
        let text = event_target_value(&event);
        let read = Typed::new(&text, field, bench.unit.get_untracked()).read(field);
        typing.set(Some(text));
        let path = shaping.path.get_untracked();
        if let (Ok(number), Some(path)) = (read, path)
            && let Some(at) = grip.at(&path)
        {
            let to = match side {
                Side::Across => Point { x: number, ..at },
                Side::Up => Point { y: number, ..at },
            };
            shaping.put_point(grip, &path, to);
        }
    };
    let on_blur = move |_| {
        typing.set(None);
        bench.leave_field();
    };
    let on_key = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            shaping.take_back(grip);
            let value = value.get_untracked().unwrap_or_default();
            typing.set(Some(
                Typed::Number(value).full(field, bench.unit.get_untracked()),
            ));
        }
    };
    let wrong = move || problem.with(Option::is_some);
    view! {
        <input
            type="text"
            class="number"
            class:wrong=wrong
            autocomplete="off"
            spellcheck="false"
            prop:value=shown
            aria-label=move || format!("{}, {}, {}", grip.name(), field.spec().label.to_lowercase(), bench.unit.get().label())
            aria-invalid=move || if wrong() { "true" } else { "false" }
            on:focus=on_focus
            on:input=on_input
            on:blur=on_blur
            on:keydown=on_key
        />
        <p class="problem" role="status" hidden=move || !wrong()>{live(move || problem.get())}</p>
    }
}
