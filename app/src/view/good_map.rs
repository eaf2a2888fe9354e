//! Good pencils drawn: where they lie on the slats, where their leads lie in them, and how many a
//! sandwich gives.

use super::chart::{ChartPicture, Parts};
use super::drawing_sheet::SheetSize;
use super::drawn::{DrawnLabels, DrawnShapes, Hatching, labels_of};
use super::live::live;
use crate::workbench::{Dice, Workbench};
use leptos::html::Div;
use leptos::prelude::*;
use solver::{Drawing, draw_columns, draw_good_map, draw_scatter};

/// The sandwich with the share of good pencils at each position.
#[component]
pub(crate) fn GoodMap() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let dice = expect_context::<Dice>();
    let size = SheetSize::new();
    let drawing = Memo::new(move |_| {
        let sheet = size.sheet(bench)?;
        let (shown, tally) = (bench.layout().read(), dice.tally().read());
        let (shown, tally) = (shown.as_ref()?, tally.as_ref()?);
        let shares = tally.good_shares();
        // A count of another number of pencils is of before the last change.
        let counted = shares.len() == shown.layout.grooves().len();
        let shares = if counted { shares.as_slice() } else { &[] };
        Some(draw_good_map(
            &shown.parts.setup(),
            &shown.layout,
            shares,
            &sheet,
        ))
    });
    view! { <Plain drawing size name="Good pencils of a sandwich" context="map"/> }
}

/// Where the leads of the first pencils lie.
#[component]
pub(crate) fn Scatter() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let dice = expect_context::<Dice>();
    let size = SheetSize::new();
    let drawing = Memo::new(move |_| {
        let sheet = size.sheet(bench)?;
        let (shown, tally) = (bench.layout().read(), dice.tally().read());
        let (shown, tally) = (shown.as_ref()?, tally.as_ref()?);
        Some(draw_scatter(
            &shown.parts.setup(),
            &shown.layout,
            tally.centres(),
            &sheet,
        ))
    });
    view! {
        <section class="result scatter" aria-labelledby="scatter-title">
            <h2 id="scatter-title">"Where the leads lie"</h2>
            <Plain drawing size name="Lead centres" context="scatter"/>
        </section>
    }
}

/// A drawing on which nothing can be typed over.
#[component]
fn Plain(
    drawing: Memo<Option<Drawing>>,
    size: SheetSize,
    name: &'static str,
    context: &'static str,
) -> impl IntoView {
    let frame = NodeRef::<Div>::new();
    size.watch(frame);
    let view_box = move || {
        let drawing = drawing.read();
        let drawing = drawing.as_ref()?;
        Some(format!("0 0 {:.0} {:.1}", drawing.width, drawing.height))
    };
    let words = move || {
        let drawing = drawing.read();
        Some(drawing.as_ref()?.description.clone())
    };
    view! {
        <div class="sheet" node_ref=frame>
            <svg role="img" viewBox=view_box aria-label=name>
                <Hatching context/>
                <DrawnShapes drawing context lit=None/>
                <DrawnLabels labels=labels_of(drawing)/>
            </svg>
        </div>
        <p class="hint">{live(words)}</p>
    }
}

/// Sandwiches by how many good pencils they gave.
#[component]
pub(crate) fn GoodColumns() -> impl IntoView {
    let dice = expect_context::<Dice>();
    let draw = move |sheet: &solver::Sheet| {
        let tally = dice.tally().read();
        let chart = draw_columns(tally.as_ref()?.histogram(), sheet);
        Some(Parts {
            size: (chart.width, chart.height),
            paths: vec![("bars", chart.columns), ("axes", chart.axes)],
            labels: chart.labels,
            description: chart.description,
        })
    };
    view! {
        <section class="result columns" aria-labelledby="columns-title">
            <h2 id="columns-title">"Sandwiches by their good pencils"</h2>
            <ChartPicture draw=Box::new(draw)/>
        </section>
    }
}
