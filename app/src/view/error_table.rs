//! Which error to fight first.

use super::live::live;
use crate::protocol::{Halving, Outlook};
use crate::workbench::{JobState, Searches, Workbench};
use leptos::prelude::*;
use solver::tolerance::{Shares, Trial};
use solver::{Term, figure};

/// Each error with its share in what goes wrong, and what halving it would gain.
#[component]
pub(crate) fn ErrorTable() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let outlook = expect_context::<Searches>().outlook;
    // The last one, while something is to be mended.
    let shares = Memo::new(move |last: Option<&Vec<Shares>>| {
        let accuracy = bench.project().read().check_accuracy().ok();
        let shown = bench.layout().read();
        match (shown.as_ref(), accuracy) {
            (Some(shown), Some(accuracy)) => {
                let trial = Trial::new(&shown.parts.setup(), &shown.layout, &accuracy);
                trial.shares()
            }
            _ => last.cloned().unwrap_or_default(),
        }
    });
    let rows = move || {
        let state = outlook.state().read();
        let halvings = match &*state {
            JobState::Done(Outlook { halvings, .. }) => halvings.as_slice(),
            _ => &[],
        };
        let shares = shares.get();
        let rows = shares.iter().enumerate();
        rows.map(|(at, shares)| row(shares, halvings.get(at)))
            .collect_view()
    };
    view! {
        <section class="result errors" aria-labelledby="errors-title">
            <h2 id="errors-title">"Which error to fight first"</h2>
            <div class="scroll" tabindex="0" role="group" aria-label="Errors and what they cost">
                <table>
                    <thead>
                        <tr>
                            <th scope="col">"Error"</th>
                            <th scope="col" class="figure">"Share off centre"</th>
                            <th scope="col" class="figure">"Share of the wall"</th>
                            <th scope="col" class="figure">"Halved, good pencils gained a sandwich"</th>
                            <th scope="col" class="figure">"Saved a gross"</th>
                            <th scope="col" class="figure">"Saved a year"</th>
                        </tr>
                    </thead>
                    <tbody>{live(rows)}</tbody>
                </table>
            </div>
            <p class="hint">
                "Shares are of variance; a gain is counted with the same dice, beside it stands its standard error. Money is that of the slats."
            </p>
        </section>
    }
}

fn row(shares: &Shares, halving: Option<&Halving>) -> impl IntoView + use<> {
    let label = Term::field(shares.term).spec().label;
    let none = || figure::NO_FIGURE.to_owned();
    let gained = halving.map_or_else(none, |halving| {
        let [gained, error] =
            [halving.gained, halving.error].map(|number| figure::plain(number, 4));
        format!("{gained} ± {error}")
    });
    let money = |pick: fn(&Halving) -> Option<f64>| {
        let saved = halving.and_then(pick);
        saved.map_or_else(none, figure::money_rounded)
    };
    view! {
        <tr>
            <th scope="row">{label}</th>
            <td class="figure">
                <span class="bar"><i style:width=width(shares.off_centre)></i></span>
                {figure::ratio(shares.off_centre)}
            </td>
            <td class="figure">
                <span class="bar"><i style:width=width(shares.wall)></i></span>
                {figure::ratio(shares.wall)}
            </td>
            <td class="figure strong">{gained}</td>
            <td class="figure">{money(|halving| halving.saved_per_gross)}</td>
            <td class="figure">{money(|halving| halving.saved_per_year)}</td>
        </tr>
    }
}

/// A share as the width of its bar.
fn width(share: f64) -> String {
    format!("{:.1}%", share * 100.0)
}
