//! The checks of the layout as statements with their margins.

use super::keyed::keyed;
use super::live::live;
use crate::workbench::Workbench;
use leptos::prelude::*;
use solver::{Outcome, Rule};

/// A table of checks: each passes, is noted, or fails by how much.
#[component]
pub(crate) fn Checks(
    /// What it is called.
    title: &'static str,
    /// The checks that are told; all where none is named.
    only: &'static [Rule],
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let rules = Memo::new(move |_| {
        bench.layout().with(|shown| {
            let checks = shown.iter().flat_map(|shown| shown.layout.checks());
            let rules = checks.map(|check| check.rule);
            let told = rules.filter(|rule| only.is_empty() || only.contains(rule));
            told.collect::<Vec<_>>()
        })
    });
    // A row stays on the page while its check comes out another way.
    let row = move |rule: Rule| {
        let check = Memo::new(move |_| {
            bench.layout().with(|shown| {
                let mut checks = shown.iter().flat_map(|shown| shown.layout.checks());
                checks.find(|check| check.rule == rule).copied()
            })
        });
        let outcome = Memo::new(move |_| check.get().map(|check| check.outcome));
        let class = move || outcome.get().map(|outcome| words(outcome).1);
        let word = move || outcome.get().map(|outcome| words(outcome).0);
        let statement = move || check.get().map(|check| check.statement(bench.unit.get()));
        view! {
            <tr class=class>
                <td class="outcome">{live(word)}</td>
                <th scope="row">{rule.label()}</th>
                <td>{live(statement)}</td>
            </tr>
        }
    };
    view! {
        <section class="result checks" aria-labelledby="checks-title">
            <h2 id="checks-title">{title}</h2>
            <table>
                <thead class="unseen">
                    <tr>
                        <th scope="col">"Outcome"</th>
                        <th scope="col">"Check"</th>
                        <th scope="col">"Found, against what is asked"</th>
                    </tr>
                </thead>
                <tbody>{keyed(move || rules.get(), row)}</tbody>
            </table>
        </section>
    }
}

/// The word and the class for an outcome.
const fn words(outcome: Outcome) -> (&'static str, &'static str) {
    match outcome {
        Outcome::Passed => ("Pass", "passed"),
        Outcome::Noted => ("Note", "noted"),
        Outcome::Failed => ("Fail", "failed"),
    }
}
