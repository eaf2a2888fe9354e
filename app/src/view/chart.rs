//! A chart that the solver has drawn, as a picture with its words.

use super::drawing_sheet::SheetSize;
use super::drawn::DrawnLabels;
use super::keyed::keyed;
use super::live::live;
use crate::workbench::Workbench;
use leptos::html::Div;
use leptos::prelude::*;
use solver::{Label, Sheet};

/// What a chart consists of.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Parts {
    /// Width and height, px.
    pub(crate) size: (f64, f64),
    /// Paths with their class, in the order in which they are painted.
    pub(crate) paths: Vec<(&'static str, String)>,
    /// Short texts.
    pub(crate) labels: Vec<Label>,
    /// The chart in words.
    pub(crate) description: String,
}

/// Draws a chart for a sheet; nothing while there is nothing to draw.
pub(crate) type Draw = Box<dyn Fn(&Sheet) -> Option<Parts> + Send + Sync>;

/// A chart for the width that it finds on the page. The words below it say the same.
#[component]
pub(crate) fn ChartPicture(
    /// What draws it.
    draw: Draw,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let size = SheetSize::new();
    let frame = NodeRef::<Div>::new();
    size.watch(frame);
    let parts = Memo::new(move |_| draw(&size.sheet(bench)?));
    let count =
        Memo::new(move |_| parts.with(|parts| parts.as_ref().map_or(0, |parts| parts.paths.len())));
    let path = move |at: usize| {
        let of = move |pick: fn(&(&'static str, String)) -> String| {
            let parts = parts.read();
            Some(pick(parts.as_ref()?.paths.get(at)?))
        };
        view! {
            <path class=move || of(|path| path.0.to_owned()) d=move || of(|path| path.1.clone())/>
        }
    };
    let labels = Memo::new(move |_| {
        parts.with(|parts| {
            let labels = parts.as_ref().map(|parts| parts.labels.clone());
            labels.unwrap_or_default()
        })
    });
    let view_box = move || {
        let parts = parts.read();
        let (width, height) = parts.as_ref()?.size;
        Some(format!("0 0 {width:.1} {height:.1}"))
    };
    let words = move || parts.with(|parts| parts.as_ref().map(|parts| parts.description.clone()));
    view! {
        <div class="chart" node_ref=frame>
            <svg aria-hidden="true" viewBox=view_box>
                {keyed(move || Vec::from_iter(0..count.get()), path)}
                <DrawnLabels labels/>
            </svg>
        </div>
        <p class="hint">{live(words)}</p>
    }
}
