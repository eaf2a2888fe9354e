//! The checks of the layout as statements with their margins.

use crate::workbench::Workbench;
use leptos::prelude::*;
use solver::Outcome;

/// A table of checks: each passes, is noted, or fails by how much.
#[component]
pub(crate) fn Checks() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let rows = move || {
        let unit = bench.unit.get();
        bench.layout().with(|shown| {
            let checks = shown
                .as_ref()
                .map(|shown| shown.layout.checks())
                .unwrap_or_default();
            checks
                .iter()
                .map(|check| {
                    let (word, class) = match check.outcome {
                        Outcome::Passed => ("Pass", "passed"),
                        Outcome::Noted => ("Note", "noted"),
                        Outcome::Failed => ("Fail", "failed"),
                    };
                    view! {
                        <tr class=class>
                            <td class="outcome">{word}</td>
                            <th scope="row">{check.rule.label()}</th>
                            <td>{check.statement(unit)}</td>
                        </tr>
                    }
                })
                .collect_view()
        })
    };
    view! {
        <section class="result checks" aria-labelledby="checks-title">
            <h2 id="checks-title">"Checks"</h2>
            <table>
                <thead class="unseen">
                    <tr>
                        <th scope="col">"Outcome"</th>
                        <th scope="col">"Check"</th>
                        <th scope="col">"Found, against what is asked"</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </section>
    }
}
