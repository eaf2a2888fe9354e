//! The handles over the drawing of a barrel.

use super::super::keyed::keyed;
use super::super::live::live;
use super::{Grip, Shaping};
use leptos::prelude::*;
use solver::figure;
use web_sys::PointerEvent;

/// What can be moved on the drawing, with the lines that belong to it.
#[component]
pub(crate) fn Handles() -> impl IntoView {
    let shaping = expect_context::<Shaping>();
    let side = move |measure: fn(&solver::Drawing) -> f64| {
        let drawn = shaping.drawn.read();
        let drawing = drawn.as_ref().map(|(drawing, _)| measure(drawing).round());
        format!("{}px", drawing.unwrap_or_default())
    };
    let arms = move || Some(shaping.marks.read().as_ref()?.arms.clone());
    // The good outline stands behind what cannot be made.
    let stale = shaping.stale();
    let curve = move || {
        let marks = shaping.marks.read();
        stale
            .get()
            .then(|| marks.as_ref().map(|marks| marks.curve.clone()))
    };
    let flaws = move || {
        let (drawn, bench) = (shaping.drawn.read(), shaping.bench);
        let view = drawn.as_ref().map(|(_, view)| *view);
        // What can be made has none, and to look for them takes as long as to make it.
        let draft = stale.get().then(|| super::draft_of(bench)).flatten();
        let flaws = draft.map(|draft| draft.flaws());
        let marks = flaws.unwrap_or_default().into_iter().filter_map(|flaw| {
            let (x, y) = view?.place(flaw);
            Some(view! { <circle class="flaw" cx=super::super::drawn::place(x) cy=super::super::drawn::place(y) r="9"/> })
        });
        marks.collect_view()
    };
    view! {
        <svg
            class="handle-lines"
            aria-hidden="true"
            style:width=move || side(|drawing| drawing.width)
            style:height=move || side(|drawing| drawing.height)
        >
            <path class="asked" d=move || curve().flatten()/>
            <path class="arms" d=arms/>
            {live(flaws)}
        </svg>
        <div class="handles" role="group" aria-label="Handles on the drawing">
            {keyed(move || shaping.grips(), move |grip| view! { <HandleMark grip/> })}
        </div>
    }
}

/// One handle. A size is a slider; a point moves both ways, and is named with where it lies.
#[component]
fn HandleMark(grip: Grip) -> impl IntoView {
    let shaping = expect_context::<Shaping>();
    let bench = shaping.bench;
    let place = Memo::new(move |_| shaping.place(grip));
    let pixels =
        move |pick: fn((f64, f64)) -> f64| place.get().map(|place| format!("{:.1}px", pick(place)));
    let chosen =
        Memo::new(move |_| matches!(grip, Grip::Node(node) if shaping.chosen.get() == node));
    let told = Memo::new(move |_| grip.told(shaping, bench.unit.get()));
    let is_size = matches!(grip, Grip::Size(_));
    let end = move |pick: fn(&solver::SizeHandle) -> solver::Length| {
        let Grip::Size(field) = grip else {
            return None;
        };
        let (handles, unit) = (shaping.handles.read(), bench.unit.get());
        let handle = handles.iter().find(|handle| handle.field == field)?;
        Some(figure::length(pick(handle).in_millimetres(), unit))
    };
    let now = move || end(|handle| handle.value.unwrap_or(handle.range.1));
    let label = move || match told.get() {
        Some(told) if !is_size => format!("{}: {told}", grip.name()),
        _ => grip.name(),
    };
    // One point of the outline is reached by the tabulator, and the others from the table of points.
    let tab = move || match grip {
        Grip::Size(_) => "0",
        Grip::Node(_) if chosen.get() => "0",
        _ => "-1",
    };
    let on_focus = move |_| {
        shaping.choose(grip);
        if let Grip::Size(field) = grip {
            bench.notice_meaning(field);
        }
    };
    let on_release = move |event: PointerEvent| {
        if shaping.release(&event) {
            bench.leave_field();
        }
    };
    let on_cancel = move |event: PointerEvent| {
        if shaping.release(&event) {
            shaping.take_back(grip);
        }
    };
    view! {
        <div
            class=move || grip.class(shaping)
            role=if is_size { "slider" } else { "button" }
            tabindex=tab
            aria-label=label
            aria-valuemin=move || end(|handle| handle.range.0)
            aria-valuemax=move || end(|handle| handle.range.1)
            aria-valuenow=now
            aria-valuetext=move || told.get().filter(|_| is_size)
            style:left=move || pixels(|place| place.0)
            style:top=move || pixels(|place| place.1)
            on:pointerdown=move |event| shaping.press(grip, &event)
            on:pointermove=move |event| shaping.drag(&event)
            on:pointerup=on_release
            on:pointercancel=on_cancel
            on:lostpointercapture=on_release
            on:keydown=move |event| shaping.key(grip, &event)
            on:focus=on_focus
            on:blur=move |_| bench.leave_field()
        >
            <span class="told" aria-hidden="true">{live(move || told.get())}</span>
        </div>
    }
}
