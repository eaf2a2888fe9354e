//! The finished pencil in three dimensions, turned by hand and by keys. Without WebGL 2 the drawing
//! beside it stands for it.

mod scene;

use crate::workbench::Workbench;
use leptos::html::Canvas;
use leptos::prelude::*;
use scene::Scene;
use send_wrapper::SendWrapper;
use solver::{FinishedPencil, Sight, Viewpoint};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Event, KeyboardEvent, PointerEvent, ResizeObserver};

/// How much nearer a step of a key or a button goes.
const NEARER: f64 = 1.25;

/// A pointer that turns the pencil: its number, and where it was last, px.
type Held = (i32, f64, f64);

/// The picture with its buttons.
#[component]
pub(crate) fn PencilPicture(
    /// The pencil, or the last good one.
    pencil: Memo<Option<FinishedPencil>>,
    /// Told once the browser cannot draw it.
    plain: RwSignal<bool>,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let canvas = NodeRef::<Canvas>::new();
    let scene = StoredValue::new_local(None::<Scene>);
    let sight = RwSignal::new(Sight::Point);
    // Nothing while the pencil is looked at from where its part is seen well.
    let moved = RwSignal::new(None::<Viewpoint>);
    let resized = RwSignal::new(());
    let view = Memo::new(move |_| {
        let pencil = pencil.read();
        let pencil = pencil.as_ref()?;
        Some(moved.get().unwrap_or_else(|| pencil.viewpoint(sight.get())))
    });
    Effect::new(move |_| {
        if let Some(element) = canvas.get() {
            let found = Scene::new(&element);
            plain.set(found.is_none());
            scene.set_value(found);
            watch(&element, resized);
            resized.notify();
        }
    });
    // Only what has changed is drawn, and nothing moves by itself.
    Effect::new(move |_| {
        resized.track();
        if let (Some(pencil), Some(view)) = (pencil.read().as_ref(), view.get()) {
            scene.update_value(|scene| {
                if let Some(scene) = scene {
                    scene.draw(pencil, &view);
                }
            });
        }
    });
    let change = move |change: &dyn Fn(Viewpoint) -> Viewpoint| {
        if let Some(view) = view.get_untracked() {
            moved.set(Some(change(view)));
        }
    };
    let look_at = move |part| {
        moved.set(None);
        sight.set(part);
    };
    let held = RwSignal::new(None::<Held>);
    let on_press = move |event: PointerEvent| {
        if event.button() == 0
            && let Some(element) = canvas.get_untracked()
        {
            // Without capture it is turned only as long as the pointer stays on the picture.
            let _ = element.set_pointer_capture(event.pointer_id());
            held.set(Some(place_of(&event)));
        }
    };
    let on_move = move |event: PointerEvent| {
        let now = place_of(&event);
        let Some((pointer, x, y)) = held.get_untracked().filter(|held| held.0 == now.0) else {
            return;
        };
        let width = canvas
            .get_untracked()
            .map_or(1, |element| element.client_width())
            .max(1);
        let share = |pixels: f64| pixels / f64::from(width);
        held.set(Some((pointer, now.1, now.2)));
        change(&|view| view.moved(share(now.1 - x), share(now.2 - y)));
    };
    let on_release = move |_: PointerEvent| held.set(None);
    let on_key = move |event: KeyboardEvent| {
        if event.ctrl_key() || event.meta_key() || event.alt_key() {
            return;
        }
        let step = Viewpoint::STEP;
        match event.key().as_str() {
            "ArrowLeft" => change(&|view| view.turned(-step, 0.0)),
            "ArrowRight" => change(&|view| view.turned(step, 0.0)),
            "ArrowUp" => change(&|view| view.turned(0.0, -step)),
            "ArrowDown" => change(&|view| view.turned(0.0, step)),
            "+" | "=" => change(&|view| view.nearer(NEARER)),
            "-" => change(&|view| view.nearer(1.0 / NEARER)),
            "Home" => moved.set(None),
            _ => return,
        }
        event.prevent_default();
    };
    // A graphics card may be lost while a tablet sleeps; what was sent to it is sent again.
    let on_lost = move |event: Event| event.prevent_default();
    let on_restored = move |_: Event| {
        if let Some(element) = canvas.get_untracked() {
            scene.set_value(Scene::new(&element));
            resized.notify();
        }
    };
    let described = move || {
        let pencil = pencil.read();
        Some(pencil.as_ref()?.described(bench.unit.get()))
    };
    let parts = Sight::ALL.map(|part| {
        let pressed = move || if sight.get() == part { "true" } else { "false" };
        view! {
            <button type="button" class="tab" aria-pressed=pressed on:click=move |_| look_at(part)>
                {part.label()}
            </button>
        }
    });
    let step = Viewpoint::STEP;
    type Change = fn(Viewpoint, f64) -> Viewpoint;
    let turns: [(&str, &str, Change); 6] = [
        ("↑", "Roll upwards", |view, step| view.turned(0.0, -step)),
        ("↓", "Roll downwards", |view, step| view.turned(0.0, step)),
        ("←", "Swing to the left", |view, step| {
            view.turned(-step, 0.0)
        }),
        ("→", "Swing to the right", |view, step| {
            view.turned(step, 0.0)
        }),
        ("−", "Farther", |view, _| view.nearer(1.0 / NEARER)),
        ("+", "Nearer", |view, _| view.nearer(NEARER)),
    ];
    let turns = turns.map(|(sign, name, turn)| {
        view! {
            <button type="button" aria-label=name title=name on:click=move |_| change(&|view| turn(view, step))>
                {sign}
            </button>
        }
    });
    view! {
        <div class="pencil-picture" hidden=move || plain.get()>
            <canvas
                node_ref=canvas
                role="img"
                tabindex="0"
                aria-label=described
                aria-describedby="pencil-keys"
                class:held=move || held.with(Option::is_some)
                on:pointerdown=on_press
                on:pointermove=on_move
                on:pointerup=on_release
                on:pointercancel=on_release
                on:keydown=on_key
                on:webglcontextlost=on_lost
                on:webglcontextrestored=on_restored
            ></canvas>
            <div class="tabs actions" role="group" aria-label="View of the pencil">
                {parts.into_iter().collect_view()}
                <span class="tools">{turns.into_iter().collect_view()}</span>
            </div>
            <p class="hint" id="pencil-keys">
                "Drag to turn it. With keys: left and right swing it, up and down roll it, + and − go nearer and farther, Home goes back."
            </p>
        </div>
        <p class="hint" hidden=move || !plain.get()>
            "This browser draws nothing in three dimensions; the drawing shows the same pencil from two sides."
        </p>
    }
}

fn place_of(event: &PointerEvent) -> Held {
    (
        event.pointer_id(),
        f64::from(event.client_x()),
        f64::from(event.client_y()),
    )
}

/// Tells when an element has another size.
fn watch(element: &web_sys::Element, resized: RwSignal<()>) {
    let on_resize = Closure::<dyn FnMut()>::new(move || resized.notify());
    // Without an observer the picture keeps the size it started with.
    if let Ok(observer) = ResizeObserver::new(on_resize.as_ref().unchecked_ref()) {
        observer.observe(element);
        let kept = SendWrapper::new((observer, on_resize));
        on_cleanup(move || kept.0.disconnect());
    }
}
