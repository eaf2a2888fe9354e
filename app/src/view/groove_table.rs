//! Where each groove goes, from the datum edge.

use crate::workbench::Workbench;
use leptos::prelude::*;
use solver::{Length, figure};

/// The groove centres, and the shape that all grooves share.
#[component]
pub(crate) fn GrooveTable() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let length = move |length: Length| figure::length(length.in_millimetres(), bench.unit.get());
    let rows = move || {
        bench.layout().with(|shown| {
            let grooves = shown
                .as_ref()
                .map(|shown| shown.layout.grooves())
                .unwrap_or_default();
            grooves
                .iter()
                .map(|groove| {
                    view! {
                        <tr>
                            <th scope="row">{groove.number}</th>
                            <td class="figure">{length(groove.centre)}</td>
                        </tr>
                    }
                })
                .collect_view()
        })
    };
    let shape = move || {
        bench.layout().with(|shown| {
            shown.as_ref().map(|shown| {
                let shape = shown.layout.groove_shape();
                [
                    ("Pitch", shown.layout.pitch()),
                    ("Groove radius", shape.radius()),
                    ("Depth, top slat", shape.top_depth()),
                    ("Depth, bottom slat", shape.bottom_depth()),
                ]
                .map(|(name, value)| {
                    view! { <div><dt>{name}</dt><dd class="figure">{length(value)}</dd></div> }
                })
                .collect_view()
            })
        })
    };
    view! {
        <section class="result grooves" aria-labelledby="grooves-title">
            <h2 id="grooves-title">"Grooves from the datum edge, " {move || bench.unit.get().label()}</h2>
            <dl class="facts">{shape}</dl>
            <table>
                <thead>
                    <tr><th scope="col">"Groove"</th><th scope="col" class="figure">"Centre"</th></tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </section>
    }
}
