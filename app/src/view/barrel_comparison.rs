//! Up to four barrels of the project side by side, each against one of them.

use super::drawing_sheet::SheetSize;
use super::drawn::{DrawnLabels, DrawnShapes, labels_of};
use super::live::live;
use super::problem_list::named;
use super::setting_files::{save_file, titled};
use crate::workbench::{Pause, Workbench};
use leptos::html::Div;
use leptos::prelude::*;
use solver::{
    Barrel, BarrelTable, Drawing, Id, MOST_COMPARED, Verdict, compare_barrels, draw_outlines,
};

/// The barrels that are compared, kept while other places are looked at: the first is the one that the
/// others are held against.
#[derive(Clone, Copy)]
pub(crate) struct Compared(RwSignal<Vec<Id>>);

impl Compared {
    /// None yet.
    pub(crate) fn new() -> Self {
        Self(RwSignal::new(Vec::new()))
    }
}

/// The choice of barrels, their outlines in one drawing, and the table.
#[component]
pub(crate) fn BarrelComparison() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let Compared(chosen) = expect_context::<Compared>();
    // Laying every barrel on every stock waits until the hand has paused.
    let settled = RwSignal::new(None);
    let pause = Pause::new();
    Effect::new(move |_| {
        project.track();
        chosen.track();
        pause.then(move || settled.set(Some(project.get_untracked())));
    });
    let table = Memo::new(move |_| {
        let chosen = chosen.get();
        settled.with(|project| {
            let project = project.as_ref()?;
            (chosen.len() > 1).then(|| compare_barrels(project, &chosen))
        })
    });
    let size = SheetSize::new();
    let drawing = Memo::new(move |_| {
        let sheet = size.sheet(bench)?;
        let table = table.read();
        let barrels: Vec<&Barrel> = table
            .as_ref()?
            .barrels
            .iter()
            .map(|(_, barrel)| barrel)
            .collect();
        (barrels.len() > 1).then(|| draw_outlines(&barrels, &sheet))
    });
    let nothing =
        move || table.with(|table| table.as_ref().is_none_or(|table| table.barrels.len() < 2));
    let csv = move |_| {
        if let Some(table) = table.get_untracked() {
            save_file(
                bench,
                "Barrels",
                "csv",
                &table.csv(bench.unit.get_untracked()),
            );
        }
    };
    let svg = move |_| {
        if let Some(drawing) = drawing.get_untracked() {
            save_file(
                bench,
                "Outlines",
                "svg",
                &drawing.to_svg(&titled(bench, "Outlines")),
            );
        }
    };
    view! {
        <section class="result barrels" aria-labelledby="barrels-title">
            <h2 id="barrels-title">"Barrels side by side"</h2>
            <Choice chosen/>
            <p class="empty" hidden=move || !nothing()>
                "Choose two to four barrels that can be made: the first is the one that the others are held against."
            </p>
            <div class="overlaid" hidden=nothing>
                <Overlay drawing size/>
                <div class="scroll" tabindex="0" role="group" aria-label="Barrels compared">
                    {live(move || table.with(|table| table.as_ref().map(|table| rows(table, bench))))}
                </div>
            </div>
            <div class="actions" hidden=nothing>
                <button type="button" on:click=csv>"Table as CSV"</button>
                <button type="button" on:click=svg>"Outlines as SVG"</button>
            </div>
        </section>
    }
}

/// A check box for each barrel, and which of those chosen is the base.
#[component]
fn Choice(chosen: RwSignal<Vec<Id>>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let names = Memo::new(move |_| {
        let project = bench.project();
        let project = project.read();
        let barrels = project.barrels.iter().enumerate();
        let names = barrels.map(|(at, entry)| (entry.id, named(&entry.draft.name, "Barrel", at)));
        names.collect::<Vec<_>>()
    });
    let boxes = move || {
        let (names, mut picked) = (names.get(), chosen.get());
        // Those that have left the project take up no place.
        picked.retain(|id| names.iter().any(|(other, _)| other == id));
        let full = picked.len() >= MOST_COMPARED;
        names
            .into_iter()
            .map(|(id, name)| {
                let place = picked.iter().position(|other| *other == id);
                let pick = move |_| {
                    chosen.update(|chosen| match chosen.iter().position(|other| *other == id) {
                        Some(at) => {
                            chosen.remove(at);
                        }
                        None => chosen.push(id),
                    });
                };
                let first = move |_| {
                    chosen.update(|chosen| {
                        chosen.retain(|other| *other != id);
                        chosen.insert(0, id);
                    });
                };
                let base = match place {
                    Some(0) => view! { <span class="here">"base"</span> }.into_any(),
                    Some(_) => {
                        let label = format!("Hold the others against {name}");
                        view! { <button type="button" class="link" aria-label=label on:click=first>"make it the base"</button> }.into_any()
                    }
                    None => ().into_any(),
                };
                view! {
                    <div class="choice">
                        <label class="choice">
                            <input type="checkbox" prop:checked=place.is_some() disabled=place.is_none() && full on:change=pick/>
                            {name}
                        </label>
                        {base}
                    </div>
                }
            })
            .collect_view()
    };
    view! { <div class="choices line" role="group" aria-label="Barrels to compare">{live(boxes)}</div> }
}

/// The outlines about one lead axis.
#[component]
fn Overlay(drawing: Memo<Option<Drawing>>, size: SheetSize) -> impl IntoView {
    let frame = NodeRef::<Div>::new();
    size.watch(frame);
    let view_box = move || {
        let drawing = drawing.read();
        let drawing = drawing.as_ref()?;
        Some(format!("0 0 {:.0} {:.0}", drawing.width, drawing.height))
    };
    let described = move || Some(drawing.read().as_ref()?.description.clone());
    view! {
        <div class="sheet" node_ref=frame>
            <svg role="img" viewBox=view_box aria-label=described>
                <DrawnShapes drawing context="barrels" lit=None/>
                <DrawnLabels labels=labels_of(drawing)/>
            </svg>
        </div>
    }
}

fn rows(table: &BarrelTable, bench: Workbench) -> impl IntoView + use<> {
    let unit = bench.unit.get();
    let heads = table.barrels.iter().enumerate().map(|(at, (_, barrel))| {
        let name = barrel.name().to_owned();
        let change = (at > 0).then(|| view! { <th scope="col" class="figure">"Difference"</th> });
        view! { <th scope="col" class="figure">{name}</th> {change} }
    });
    let lines = table.lines.iter().map(|line| {
        let cells = (0..table.barrels.len()).map(|at| {
            let verdict = line.verdict(at, unit);
            let class = match verdict {
                Some(Verdict::Better) => "figure better",
                Some(Verdict::Worse) => "figure worse",
                None => "figure",
            };
            let told = verdict.map(|verdict| format!(", {}", verdict.label()));
            let change = (at > 0).then(|| {
                let change = line.change(at, unit);
                view! { <td class=class>{change}{told}</td> }
            });
            view! { <td class="figure">{line.text(at, unit)}</td> {change} }
        });
        view! { <tr><th scope="row">{line.title()}</th>{cells.collect_view()}</tr> }
    });
    view! {
        <table>
            <thead><tr><th scope="col">"Compared"</th>{heads.collect_view()}</tr></thead>
            <tbody>{lines.collect_view()}</tbody>
        </table>
    }
}
