//! Where each groove goes, from the datum edge.

use super::keyed::keyed;
use super::live::live;
use super::when::When;
use crate::workbench::Workbench;
use leptos::prelude::*;
use solver::{Length, figure};

/// The groove centres, and the shape that all grooves share.
#[component]
pub(crate) fn GrooveTable() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let layout = bench.layout();
    let length = move |length: Length| figure::length(length.in_millimetres(), bench.unit.get());
    let count = Memo::new(move |_| {
        layout.with(|shown| {
            shown
                .as_ref()
                .map_or(0, |shown| shown.layout.grooves().len())
        })
    });
    // A row stays on the page while its groove moves.
    let row = move |at: usize| {
        let groove = Memo::new(move |_| {
            layout.with(|shown| shown.as_ref()?.layout.grooves().get(at).copied())
        });
        view! {
            <tr>
                <th scope="row">{live(move || groove.get().map(|groove| groove.number))}</th>
                <td class="figure">{live(move || groove.get().map(|groove| length(groove.centre)))}</td>
            </tr>
        }
    };
    let shape = [
        (
            "Pitch",
            (|layout| layout.pitch()) as fn(&solver::Layout) -> Length,
        ),
        ("Groove radius", |layout| layout.groove_shape().radius()),
        ("Depth, top slat", |layout| {
            layout.groove_shape().top_depth()
        }),
        ("Depth, bottom slat", |layout| {
            layout.groove_shape().bottom_depth()
        }),
    ]
    .map(|(name, measure)| {
        let value = Memo::new(move |_| layout.with(|shown| Some(measure(&shown.as_ref()?.layout))));
        view! {
            <When holds=move || value.get().is_some()>
                <div><dt>{name}</dt><dd class="figure">{live(move || value.get().map(length))}</dd></div>
            </When>
        }
    })
    .collect_view();
    view! {
        <section class="result grooves" aria-labelledby="grooves-title">
            <h2 id="grooves-title">"Grooves from the datum edge, " {live(move || bench.unit.get().label())}</h2>
            <dl class="facts">{shape}</dl>
            <table>
                <thead>
                    <tr><th scope="col">"Groove"</th><th scope="col" class="figure">"Centre"</th></tr>
                </thead>
                <tbody>{keyed(move || Vec::from_iter(0..count.get()), row)}</tbody>
            </table>
        </section>
    }
}
