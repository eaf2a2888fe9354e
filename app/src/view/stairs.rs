//! Pencils against slat width, with today's stocks on the stairs.

use super::drawing_sheet::SheetSize;
use super::drawn::{DrawnLabels, place};
use super::keyed::keyed;
use super::live::live;
use super::problem_list::named;
use super::when::When;
use crate::workbench::Workbench;
use leptos::html::Div;
use leptos::prelude::*;
use solver::{Chart, Length, ProjectDraft, draw_stairs, staircase, stairs_range};

/// The stairs of the layout that is looked at.
#[component]
pub(crate) fn Stairs() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let size = SheetSize::new();
    let frame = NodeRef::<Div>::new();
    size.watch(frame);
    let widths = Memo::new(move |_| stock_widths(&bench.project().read()));
    let chart = Memo::new(move |_| {
        let sheet = size.sheet(bench)?;
        bench.layout().with(|shown| {
            let parts = &shown.as_ref()?.parts;
            let range = stairs_range(parts);
            let steps = staircase(parts, range.0, range.1);
            Some(widths.with(|widths| draw_stairs(&steps, range, widths, &sheet)))
        })
    });
    let words = move || chart.with(|chart| chart.as_ref().map(|chart| chart.description.clone()));
    view! {
        <section class="result stairs" aria-labelledby="stairs-title">
            <h2 id="stairs-title">"Pencils against slat width"</h2>
            <div class="chart" node_ref=frame>
                <When holds=move || chart.with(Option::is_some)><Picture chart/></When>
            </div>
            <p class="hint">{live(words)}</p>
        </section>
    }
}

/// The chart itself; the words beside it say the same. Its elements stay on the page while the
/// stairs change.
#[component]
fn Picture(chart: Memo<Option<Chart>>) -> impl IntoView {
    let path = move |pick: fn(&Chart) -> &String| Some(pick(chart.read().as_ref()?).clone());
    let view_box = move || {
        let chart = chart.read();
        let chart = chart.as_ref()?;
        Some(format!("0 0 {:.1} {:.1}", chart.width, chart.height))
    };
    let height = move || Some(format!("{}px", chart.read().as_ref()?.height.round()));
    let count = Memo::new(move |_| {
        let chart = chart.read();
        chart.as_ref().map_or(0, |chart| chart.markers.len())
    });
    let labels = Memo::new(move |_| {
        let chart = chart.read();
        let labels = chart.as_ref().map(|chart| chart.labels.clone());
        labels.unwrap_or_default()
    });
    let stock = move |at: usize| {
        let marker = Memo::new(move |_| chart.read().as_ref()?.markers.get(at).cloned());
        let flag = move || {
            let label = marker.read().as_ref()?.label.clone()?;
            Some(
                view! { <text class="label flag" x=place(label.x) y=place(label.y)>{label.text}</text> },
            )
        };
        view! {
            <path class="pole" d=move || Some(marker.read().as_ref()?.pole.clone())/>
            <circle
                class="stock"
                cx=move || Some(place(marker.read().as_ref()?.at.0))
                cy=move || Some(place(marker.read().as_ref()?.at.1))
                r="4"
            />
            {live(flag)}
        }
    };
    view! {
        <svg aria-hidden="true" viewBox=view_box style:height=height>
            <path class="grid" d=move || path(|chart| &chart.grid)/>
            <path class="axes" d=move || path(|chart| &chart.axes)/>
            <path class="steps" d=move || path(|chart| &chart.stairs)/>
            {keyed(move || Vec::from_iter(0..count.get()), stock)}
            <DrawnLabels labels/>
        </svg>
    }
}

/// The widths of the stocks that can be worked with, with their names.
fn stock_widths(project: &ProjectDraft) -> Vec<(Length, String)> {
    let stocks = project.slats.iter().enumerate();
    stocks
        .filter_map(|(at, entry)| {
            let slat = entry.draft.check().ok()?;
            Some((slat.width(), short(&named(&entry.draft.name, "Slat", at))))
        })
        .collect()
}

/// A name that leaves room for others beside it.
fn short(name: &str) -> String {
    const LONGEST: usize = 24;
    match name.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}…", &name[..end]),
        None => name.to_owned(),
    }
}
