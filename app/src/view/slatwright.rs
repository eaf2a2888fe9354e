//! The frame of the page: name, places, unit, undo, file, saving, update.

use super::Place;
use super::barrel_comparison::Compared;
use super::barrel_place::BarrelPlace;
use super::entry_table::on_drag;
use super::file_menu::{FileMenu, Files, RefusedFile};
use super::layout_place::LayoutPlace;
use super::live::live;
use super::orders_place::OrdersPlace;
use super::place_files::PlaceFiles;
use super::planks_place::PlanksPlace;
use super::setting_place::SettingPlace;
use super::text_field::NameField;
use super::timber_place::TimberPlace;
use super::tolerance_place::TolerancePlace;
use crate::offline::{self, Update};
use crate::store::{Keeping, SaveState};
use crate::workbench::{Delivery, Dice, Gains, Jobs, Memory, Planner, Sawyer, Searches, Workbench};
use crate::{demo, download, preference, project_file};
use leptos::ev;
use leptos::prelude::*;
use solver::LengthUnit;

/// The page.
#[component]
pub fn Slatwright() -> impl IntoView {
    let bench = Workbench::new(demo::project(), preference::unit());
    let memory = Memory::start(bench);
    let files = Files::new(bench, memory);
    provide_context(bench);
    provide_context(memory);
    provide_context(files);
    provide_context(Jobs::start(bench));
    provide_context(Searches::start(bench));
    provide_context(Dice::start(bench));
    provide_context(Gains::new(bench));
    provide_context(Compared::new());
    provide_context(Delivery::new(bench));
    provide_context(Planner::new(bench));
    let sawyer = Sawyer::new(bench);
    provide_context(sawyer);
    Effect::new(move |_| {
        if memory.opened.get() {
            sawyer.recall();
        }
    });
    let update = offline::start();
    // Before the address is put in order: a barrel in it is added once the project is there.
    let sent = RwSignal::new(sent_barrel());
    Effect::new(move |_| {
        if memory.opened.get()
            && let Some(fragment) = sent.get()
        {
            sent.set(None);
            let barrel = project_file::read_barrel_fragment(&fragment);
            files.add_barrel("The barrel of the link".to_owned(), barrel);
        }
    });

    Effect::new(move |_| preference::keep_unit(bench.unit.get()));
    Effect::new(move |_| {
        let fragment = bench.place.get().fragment();
        if window().location().hash().as_deref() != Ok(fragment) {
            // A page that may not change its address still works.
            let _ = window().location().set_hash(fragment);
        }
    });
    let on_hash = window_event_listener(ev::hashchange, move |_| {
        // A place that is looked at already is not made anew.
        let place = Place::from_address();
        if bench.place.get_untracked() != place {
            bench.place.set(place);
        }
        if let Some(fragment) = sent_barrel() {
            sent.set(Some(fragment));
            // The same link can be opened again.
            let _ = window().location().set_hash(Place::Barrel.fragment());
        }
    });
    let on_key = window_event_listener(ev::keydown, move |event| {
        shortcuts(&event, bench, memory, files)
    });
    let on_drag = window_event_listener(ev::dragover, on_drag);
    let on_drop = window_event_listener(ev::drop, move |event| files.drop(&event));
    on_cleanup(move || {
        on_drag.remove();
        on_drop.remove();
        on_hash.remove();
        on_key.remove();
    });

    let place = move || {
        if !memory.opened.get() {
            return view! { <p class="opening" role="status">"Opening your project …"</p> }
                .into_any();
        }
        match bench.place.get() {
            Place::Barrel => view! { <BarrelPlace/> }.into_any(),
            Place::Layout => view! { <LayoutPlace/> }.into_any(),
            Place::Tolerances => view! { <TolerancePlace/> }.into_any(),
            Place::Setting => view! { <SettingPlace/> }.into_any(),
            Place::Planks => view! { <PlanksPlace/> }.into_any(),
            Place::Timber => view! { <TimberPlace/> }.into_any(),
            Place::Orders => view! { <OrdersPlace/> }.into_any(),
        }
    };
    view! {
        <a class="skip" href="#place">"To the work"</a>
        <Header/>
        <Banners update/>
        <main id="place" tabindex="-1">{live(place)} <PlaceFiles/></main>
        <Notice/>
        <footer>
            <p>
                "Numbers are for planning. Guards on, power locked out before a cutter is touched, dust extracted; "
                "the machine maker’s limits, local codes and licensed practice decide."
            </p>
        </footer>
    }
}

/// The end of the address, where it holds a barrel.
fn sent_barrel() -> Option<String> {
    let fragment = window().location().hash().ok()?;
    fragment
        .starts_with(project_file::BARREL_FRAGMENT)
        .then_some(fragment)
}

/// Ctrl or ⌘ with S, O, Z and Y.
fn shortcuts(event: &web_sys::KeyboardEvent, bench: Workbench, memory: Memory, files: Files) {
    if !(event.ctrl_key() || event.meta_key()) || event.alt_key() {
        return;
    }
    match (event.key().to_lowercase().as_str(), event.shift_key()) {
        ("s", false) => memory.save_now(),
        ("o", false) => files.pick(),
        ("z", false) => bench.undo(),
        ("z", true) | ("y", false) => bench.redo(),
        _ => return,
    }
    event.prevent_default();
}

#[component]
fn Header() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let places = Place::ALL
        .map(|place| {
            view! {
                <a
                    href=place.fragment()
                    aria-current=move || (bench.place.get() == place).then_some("page")
                >
                    {place.label()}
                </a>
            }
        })
        .collect_view();
    let units = [
        (
            LengthUnit::Millimetre,
            "mm",
            "mm, show lengths in millimetres",
        ),
        (LengthUnit::Inch, "in", "in, show lengths in inches"),
    ]
    .map(|(unit, label, meaning)| {
        view! {
            <button
                type="button"
                aria-label=meaning
                aria-pressed=move || if bench.unit.get() == unit { "true" } else { "false" }
                on:click=move |_| bench.unit.set(unit)
            >
                {label}
            </button>
        }
    })
    .collect_view();
    view! {
        <header>
            <div class="title">
                <h1>"Slatwright"</h1>
                <NameField
                    read=|project| Some(project.name.clone())
                    write=|project, name| project.name = name
                    label="Project name".to_owned()
                    fallback="Project".to_owned()
                />
                <SaveStatus/>
            </div>
            <nav aria-label="Places">{places}</nav>
            <div class="tools">
                <div class="units" role="group" aria-label="Unit">{units}</div>
                <div role="group" aria-label="Steps">
                    <button type="button" disabled=move || !bench.can_undo() on:click=move |_| bench.undo()>"Undo"</button>
                    <button type="button" disabled=move || !bench.can_redo() on:click=move |_| bench.redo()>"Redo"</button>
                </div>
                <FileMenu/>
            </div>
        </header>
    }
}

/// How the project is kept, in a word.
#[component]
fn SaveStatus() -> impl IntoView {
    let memory = expect_context::<Memory>();
    let words = move || match memory.state.get() {
        None => String::new(),
        Some(SaveState::Unsaved | SaveState::Saving) => "Saving …".to_owned(),
        Some(SaveState::Saved { .. }) => match memory.keeping.get() {
            Some(Keeping::NotGranted) => {
                "Saved in this browser, which may clear it when space runs out".to_owned()
            }
            _ => "Saved in this browser".to_owned(),
        },
        Some(SaveState::Failed(_)) => "Not saved".to_owned(),
        Some(SaveState::ReadOnly) => "Read only here".to_owned(),
    };
    view! { <p class="save-status" role="status">{live(words)}</p> }
}

/// What has to be known before work goes on: nothing saved, another tab, a new version.
#[component]
fn Banners(update: RwSignal<Option<Update>>) -> impl IntoView {
    let memory = expect_context::<Memory>();
    let files = expect_context::<Files>();
    let saving = move || {
        match memory.state.get() {
        Some(SaveState::Failed(problem)) => view! {
            <section class="banner failed" role="alert">
                <p>{format!("Your last change is not saved: {problem}. {}", problem.hint())}</p>
                <button type="button" on:click=move |_| memory.save_now()>"Try again"</button>
                <button type="button" on:click=move |_| files.save_copy()>"Save a copy as a file"</button>
            </section>
        }
        .into_any(),
        Some(SaveState::ReadOnly) if memory.unreadable.read().is_none() => view! {
            <section class="banner" role="status">
                <p>"This project is open in another tab, which saves it. What you change here is not saved."</p>
                <button type="button" on:click=move |_| memory.take_over()>"Take over here"</button>
            </section>
        }
        .into_any(),
        _ => ().into_any(),
    }
    };
    let unreadable = move || {
        memory.unreadable.get().map(|unreadable| {
            let text = unreadable.text;
            view! {
                <section class="banner failed" role="alert">
                    <p>"What is stored in this browser cannot be read by this version, and is left as it is:"</p>
                    <ul>{unreadable.reasons.into_iter().map(|reason| view! { <li>{reason}</li> }).collect_view()}</ul>
                    <button type="button" on:click=move |_| {
                        // The banner stays, so a refusal can be tried again.
                        let _ = download::text("stored.slatwright.json", &text);
                    }>"Save what is stored as a file"</button>
                    <button type="button" on:click=move |_| memory.give_up_unreadable()>"Write over it"</button>
                </section>
            }
        })
    };
    let new_version = move || {
        update.get().map(|update| {
            view! {
                <section class="banner" role="status">
                    <p>"A new version is ready. Your project stays as it is."</p>
                    <button type="button" id="update" on:click=move |_| {
                        memory.save_now();
                        update.apply();
                    }>"Change to the new version"</button>
                </section>
            }
        })
    };
    view! { {live(saving)} {live(unreadable)} <RefusedFile/> {live(new_version)} }
}

/// What has just happened.
#[component]
fn Notice() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let words = move || bench.notice.get().unwrap_or_default();
    view! {
        <div class="notice" role="status" hidden=move || bench.notice.read().is_none()>
            <p>{live(words)}</p>
            <button type="button" on:click=move |_| bench.notice.set(None)>"Close"</button>
        </div>
    }
}
