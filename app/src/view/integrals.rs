//! What can be told of good pencils without dice.

use super::live::live;
use crate::protocol::Outlook;
use crate::workbench::{JobState, Searches};
use leptos::prelude::*;
use solver::figure;

/// Chances by integrals: the dice must agree with them.
#[component]
pub(crate) fn Integrals() -> impl IntoView {
    let state = expect_context::<Searches>().outlook.state();
    let facts = move || {
        let state = state.read();
        let JobState::Done(outlook) = &*state else {
            return None;
        };
        let Outlook {
            centred,
            admitted,
            good_by_eccentricity,
            complete: [first, last],
            thinnest_face,
            ..
        } = outlook;
        let share = |share: &f64| figure::ratio_fine(*share);
        let facts = [
            ("Lead within the eccentricity limit", share(centred)),
            ("Half grooves let the lead in", share(admitted)),
            ("First pencil complete", share(first)),
            ("Last pencil complete", share(last)),
            (
                "Wall holds at the weakest flat face",
                thinnest_face.map_or_else(|| figure::NO_FIGURE.to_owned(), figure::ratio_fine),
            ),
            (
                "Good pencils a sandwich, were leads off centre the only fault",
                figure::plain(*good_by_eccentricity, 4),
            ),
        ];
        let rows = facts.map(|(name, value)| {
            view! { <tr><th scope="row">{name}</th><td class="figure">{value}</td></tr> }
        });
        Some(rows.into_iter().collect_view())
    };
    view! {
        <section class="result integrals" aria-labelledby="integrals-title">
            <h2 id="integrals-title">"By integrals, without dice"</h2>
            <table>
                <thead class="unseen">
                    <tr><th scope="col">"What"</th><th scope="col">"Chance"</th></tr>
                </thead>
                <tbody>{live(facts)}</tbody>
            </table>
        </section>
    }
}
