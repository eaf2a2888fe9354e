//! A size of a drawing that is set by sliding the jaw of a gauge: by mouse, finger, pen or key.

use super::when::When;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{Drawing, Grip, Handle, Length, Stride, figure};
use wasm_bindgen::JsCast;
use web_sys::{Event, FocusOptions, HtmlElement, KeyboardEvent, PointerEvent};

/// One gauge of a drawing. A handle: copies share it.
#[derive(Clone, Copy)]
pub(crate) struct Gauge {
    bench: Workbench,
    grip: Grip,
    /// The gauge as it is shown; nothing where the drawing has none.
    shown: Memo<Option<Handle>>,
    held: RwSignal<Option<Held>>,
    /// Whether it is moved by keys: then it shows its focus.
    keyed: RwSignal<bool>,
}

/// A jaw in somebody's hand.
#[derive(Clone)]
struct Held {
    pointer: i32,
    /// Where the pointer was pressed, px across the window.
    pressed: f64,
    /// The gauge as it was then.
    start: Handle,
    /// Where the jaw has been moved.
    value: Length,
}

impl Gauge {
    /// The gauge of a drawing for one size.
    pub(crate) fn new(grip: Grip, drawing: Memo<Option<Drawing>>) -> Self {
        let held = RwSignal::new(None::<Held>);
        let shown = Memo::new(move |_| {
            let drawing = drawing.read();
            let mut handles = drawing.as_ref()?.handles.iter();
            let handle = handles.find(|handle| handle.grip == grip)?;
            Some(match &*held.read() {
                Some(held) => handle.held(&held.start, held.value),
                None => handle.clone(),
            })
        });
        Self {
            bench: expect_context::<Workbench>(),
            grip,
            shown,
            held,
            keyed: RwSignal::new(false),
        }
    }

    fn press(&self, event: &PointerEvent) {
        const MAIN_BUTTON: i16 = 0;
        if !event.is_primary() || event.button() != MAIN_BUTTON {
            return;
        }
        let (Some(start), Some(element)) = (self.shown.get_untracked(), element_of(event)) else {
            return;
        };
        // No text is marked along the way.
        event.prevent_default();
        // Without focus the jaw still slides; without capture it stops at its own edge.
        let options = FocusOptions::new();
        options.set_prevent_scroll(true);
        let _ = element.focus_with_options(&options);
        let _ = element.set_pointer_capture(event.pointer_id());
        self.keyed.set(false);
        self.bench.leave_field();
        self.held.set(Some(Held {
            pointer: event.pointer_id(),
            pressed: f64::from(event.client_x()),
            value: start.moved(0.0),
            start,
        }));
    }

    fn drag(&self, event: &PointerEvent) {
        let moved = self.held.with_untracked(|held| {
            let held = held.as_ref()?;
            let value = held.start.moved(f64::from(event.client_x()) - held.pressed);
            (held.pointer == event.pointer_id() && held.value != value).then_some(value)
        });
        if let Some(value) = moved {
            self.held.update(|held| {
                if let Some(held) = held {
                    held.value = value;
                }
            });
            self.bench.slide(self.grip, value);
        }
    }

    /// Lets go of the jaw; says whether this pointer held it.
    fn release(&self, event: &PointerEvent) -> bool {
        let holds = self.held.with_untracked(|held| {
            held.as_ref()
                .is_some_and(|held| held.pointer == event.pointer_id())
        });
        if holds {
            self.held.set(None);
        }
        holds
    }

    fn key(&self, event: &KeyboardEvent) {
        if event.ctrl_key() || event.meta_key() || event.alt_key() {
            return;
        }
        let Some(handle) = self.shown.get_untracked() else {
            return;
        };
        let arrow = if event.shift_key() {
            Stride::Coarse
        } else {
            Stride::Fine
        };
        let value = match event.key().as_str() {
            "Escape" => {
                self.held.set(None);
                return self.bench.take_back(Slot::Rules(self.grip.field()));
            }
            "ArrowRight" | "ArrowUp" => handle.stepped(arrow, 1),
            "ArrowLeft" | "ArrowDown" => handle.stepped(arrow, -1),
            "PageUp" => handle.stepped(Stride::Page, 1),
            "PageDown" => handle.stepped(Stride::Page, -1),
            "Home" => handle.least(),
            "End" => handle.most(),
            _ => return,
        };
        event.prevent_default();
        self.keyed.set(true);
        // A jaw in the hand is not moved by keys as well.
        if value != handle.value && self.held.with_untracked(Option::is_none) {
            self.bench.slide(self.grip, value);
        }
    }

    fn path(&self, pick: fn(&Handle) -> &String) -> Option<String> {
        self.shown
            .with(|shown| shown.as_ref().map(|handle| pick(handle).clone()))
    }

    fn figure(&self, pick: fn(&Handle) -> Length) -> Option<String> {
        let unit = self.bench.unit.get();
        self.shown.with(|shown| {
            let length = pick(shown.as_ref()?);
            Some(figure::length(length.in_millimetres(), unit))
        })
    }

    fn is_held(&self) -> bool {
        self.held.with(Option::is_some)
    }
}

/// A gauge as it is drawn: fixed jaw, beam and sliding jaw, in a drawing.
#[component]
pub(crate) fn GaugeMark(
    /// The gauge.
    gauge: Gauge,
    /// Whether the drawing no longer shows what is asked.
    stale: Signal<bool>,
) -> impl IntoView {
    view! {
        <When holds=move || !stale.get() && gauge.shown.with(Option::is_some)>
            <g class="gauge" class:held=move || gauge.is_held() || gauge.keyed.get()>
                <path class="reach" d=move || gauge.path(|handle| &handle.reach)/>
                <path class="beam" d=move || gauge.path(|handle| &handle.beam)/>
                <path class="fixed" d=move || gauge.path(|handle| &handle.fixed_jaw)/>
                <path class="jaw" d=move || gauge.path(|handle| &handle.jaw)/>
                <path class="knurl" d=move || gauge.path(|handle| &handle.knurl)/>
            </g>
        </When>
    }
}

/// What is pressed to slide a gauge, over its jaw.
#[component]
pub(crate) fn GaugeGrip(
    /// The gauge.
    gauge: Gauge,
    /// Whether the drawing no longer shows what is asked.
    stale: Signal<bool>,
) -> impl IntoView {
    let (bench, field) = (gauge.bench, gauge.grip.field());
    let pixels = move |pick: fn(&solver::SheetArea) -> f64| {
        gauge.shown.with(|shown| {
            shown
                .as_ref()
                .map(|handle| format!("{:.1}px", pick(&handle.area)))
        })
    };
    let spoken = move || {
        let unit = bench.unit.get();
        gauge.shown.with(|shown| {
            let value = shown.as_ref()?.value;
            Some(figure::length_with_unit(value.in_millimetres(), unit))
        })
    };
    let on_focus = move |event: web_sys::FocusEvent| {
        bench.notice_meaning(field);
        let by_key = element_of(&event)
            .is_some_and(|element| element.matches(":focus-visible").unwrap_or(false));
        gauge.keyed.set(by_key);
    };
    let on_blur = move |_| {
        gauge.keyed.set(false);
        bench.leave_field();
    };
    let on_release = move |event: PointerEvent| {
        if gauge.release(&event) {
            bench.leave_field();
        }
    };
    // The browser has taken the pointer for something else: nothing was meant.
    let on_cancel = move |event: PointerEvent| {
        if gauge.release(&event) {
            bench.take_back(Slot::Rules(field));
        }
    };
    view! {
        <When holds=move || !stale.get() && gauge.shown.with(Option::is_some)>
            <div
                class="grip"
                class:keyed=move || gauge.keyed.get()
                role="slider"
                tabindex="0"
                aria-label=format!("{}, sliding gauge", field.spec().label)
                aria-valuemin=move || gauge.figure(Handle::least)
                aria-valuemax=move || gauge.figure(Handle::most)
                aria-valuenow=move || gauge.figure(|handle| handle.value)
                aria-valuetext=spoken
                style:left=move || pixels(|area| area.x)
                style:top=move || pixels(|area| area.y)
                style:width=move || pixels(|area| area.width)
                style:height=move || pixels(|area| area.height)
                on:pointerdown=move |event| gauge.press(&event)
                on:pointermove=move |event| gauge.drag(&event)
                on:pointerup=on_release
                on:pointercancel=on_cancel
                on:lostpointercapture=on_release
                on:keydown=move |event| gauge.key(&event)
                on:focus=on_focus
                on:blur=on_blur
            ></div>
        </When>
    }
}

/// The grip at which something happened.
fn element_of(event: &Event) -> Option<HtmlElement> {
    event
        .current_target()
        .and_then(|target| target.dyn_into().ok())
}
