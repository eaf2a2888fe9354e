//! Pencils against slat width, with today's stocks on the stairs.

use super::drawing_sheet::SheetSize;
use super::problem_list::named;
use crate::workbench::Workbench;
use leptos::html::Div;
use leptos::prelude::*;
use solver::{Chart, Label, Length, ProjectDraft, draw_stairs, staircase, stairs_range};

/// The stairs of the layout that is looked at.
#[component]
pub(crate) fn Stairs() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let size = SheetSize::new();
    let frame = NodeRef::<Div>::new();
    Effect::new(move |_| {
        if let Some(frame) = frame.get() {
            size.watch(&frame);
        }
    });
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
    let drawn = move || chart.get().map(picture);
    let words = move || chart.with(|chart| chart.as_ref().map(|chart| chart.description.clone()));
    view! {
        <section class="result stairs" aria-labelledby="stairs-title">
            <h2 id="stairs-title">"Pencils against slat width"</h2>
            <div class="chart" node_ref=frame>{drawn}</div>
            <p class="hint">{words}</p>
        </section>
    }
}

/// The chart itself; the words beside it say the same.
fn picture(chart: Chart) -> impl IntoView {
    let text = |label: &Label, class: &'static str| {
        view! { <text class=class x=format!("{:.1}", label.x) y=format!("{:.1}", label.y)>{label.text.clone()}</text> }
    };
    let labels = chart.labels.iter().map(|label| text(label, "label"));
    let labels = labels.collect_view();
    let stocks = chart
        .markers
        .iter()
        .map(|marker| {
            let (x, y) = marker.at;
            let flag = marker.label.as_ref().map(|label| text(label, "label flag"));
            view! {
                <path class="pole" d=marker.pole.clone()/>
                <circle class="stock" cx=format!("{x:.1}") cy=format!("{y:.1}") r="4"/>
                {flag}
            }
        })
        .collect_view();
    let (width, height) = (chart.width, chart.height);
    view! {
        <svg
            aria-hidden="true"
            viewBox=format!("0 0 {width:.1} {height:.1}")
            style:height=format!("{}px", height.round())
        >
            <path class="grid" d=chart.grid/>
            <path class="axes" d=chart.axes/>
            <path class="steps" d=chart.stairs/>
            {stocks}
            {labels}
        </svg>
    }
}

/// The widths of the stocks that can be worked with, with their names.
fn stock_widths(project: &ProjectDraft) -> Vec<(Length, String)> {
    let stocks = project.slats.iter().enumerate();
    stocks
        .filter_map(|(at, entry)| {
            let slat = entry.draft.check().ok()?;
            Some((slat.width(), named(&entry.draft.name, "Slat", at)))
        })
        .collect()
}
