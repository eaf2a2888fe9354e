//! How many pencils of a sandwich are good, counted by dice.

use super::live::live;
use crate::workbench::{Count, Dice, Enough, Workbench};
use leptos::prelude::*;
use solver::figure;
use solver::tolerance::{Fault, Tally};

/// Standard errors that can be asked for, good pencils of a sandwich.
const PRECISIONS: [f64; 4] = [0.01, 0.003, 0.001, 0.0003];

/// The answer in a line, and how the count stands.
#[component]
pub(crate) fn GoodVerdict() -> impl IntoView {
    let dice = expect_context::<Dice>();
    let bench = expect_context::<Workbench>();
    let across = Memo::new(move |_| {
        let shown = bench.layout().read();
        shown.as_ref().map_or(0, |shown| shown.layout.across())
    });
    let words = move || {
        let tally = dice.tally().read();
        let Some(tally) = tally.as_ref() else {
            return view! { <p class="verdict"><span>"Throwing the dice …"</span></p> }.into_any();
        };
        let good = tally.good();
        view! {
            <p class="verdict">
                <strong>{figure::plain(good.mean, 3)}" good pencils"</strong>
                " "
                <span>{format!("of {} in a sandwich; standard error {}", across.get(), figure::plain(good.error, 4))}</span>
            </p>
        }
        .into_any()
    };
    view! { <div>{live(words)}</div> }
}

/// The dice: which, how exact, how far, and what stops them.
#[component]
pub(crate) fn DiceControls() -> impl IntoView {
    let dice = expect_context::<Dice>();
    let status = move || {
        let sandwiches = dice
            .tally()
            .with(|tally| tally.as_ref().map_or(0, Tally::sandwiches));
        let made = figure::count(sandwiches);
        match dice.count().get() {
            Count::Waiting => view! { <span>"Not thrown yet."</span> }.into_any(),
            Count::Running => view! {
                <span>{made}" sandwiches made …"</span>
                <button type="button" on:click=move |_| dice.stop()>"Stop the dice"</button>
            }
            .into_any(),
            Count::Done(enough) => {
                let why = match enough {
                    Enough::Exact => "as exact as was wanted",
                    Enough::Most => {
                        "as many as are made at most, and still less exact than was wanted"
                    }
                };
                view! { <span>{made}" sandwiches made: "{why}"."</span> }.into_any()
            }
            Count::Stopped => view! {
                <span>{made}" sandwiches made, then stopped."</span>
                <button type="button" on:click=move |_| dice.throw()>"Throw again"</button>
            }
            .into_any(),
            Count::Refused(problems) => {
                let problems = problems
                    .into_iter()
                    .map(|problem| view! { <li>{problem}</li> });
                view! { <ul class="empty problem">{problems.collect_view()}</ul> }.into_any()
            }
            Count::Fault(reason) => view! { <p class="empty problem">{reason}</p> }.into_any(),
        }
    };
    let precisions = move || {
        let chosen = dice.wanted.get();
        PRECISIONS
            .map(|error| {
                let value = error.to_string();
                view! { <option value=value selected=error == chosen prop:selected=error == chosen>{figure::exact(error)}</option> }
            })
            .into_iter()
            .collect_view()
    };
    let pick = move |event| {
        if let Ok(error) = event_target_value(&event).parse() {
            dice.wanted.set(error);
        }
    };
    let wrong = move || dice.seed_problem().read().is_some();
    view! {
        <div class="dice">
            <label class="joined">
                "Until the standard error is below "
                <select on:change=pick>{live(precisions)}</select>
                " pencils"
            </label>
            <label class="joined">
                "Dice number "
                <input
                    type="text"
                    inputmode="numeric"
                    class:wrong=wrong
                    prop:value=move || dice.seed().get().to_string()
                    aria-invalid=move || if wrong() { "true" } else { "false" }
                    aria-describedby=move || wrong().then_some("dice-message")
                    on:change=move |event| dice.pick(&event_target_value(&event))
                />
            </label>
            <p class="problem" id="dice-message" role="status" hidden=move || !wrong()>
                {live(move || dice.seed_problem().get().unwrap_or_default())}
            </p>
            <div class="running" role="status">{live(status)}</div>
        </div>
    }
}

/// What is wrong with the pencils that are not good.
#[component]
pub(crate) fn Faults() -> impl IntoView {
    let dice = expect_context::<Dice>();
    let rows = move || {
        let tally = dice.tally().read();
        tally.as_ref().map(|tally| {
            Fault::ALL
                .map(|fault| {
                    let shares = tally
                        .faulty_shares(fault)
                        .map(|shares| shares.map(figure::ratio_fine));
                    let [all, only] = shares.unwrap_or_default();
                    view! {
                        <tr>
                            <th scope="row">{fault.label()}</th>
                            <td class="figure">{all}</td>
                            <td class="figure">{only}</td>
                        </tr>
                    }
                })
                .into_iter()
                .collect_view()
        })
    };
    view! {
        <section class="result faults" aria-labelledby="faults-title">
            <h2 id="faults-title">"What is wrong with the others"</h2>
            <table>
                <thead>
                    <tr>
                        <th scope="col">"Fault"</th>
                        <th scope="col" class="figure">"Of all pencils"</th>
                        <th scope="col" class="figure">"With no other fault"</th>
                    </tr>
                </thead>
                <tbody>{live(rows)}</tbody>
            </table>
        </section>
    }
}

/// The share of good pencils of each position.
#[component]
pub(crate) fn Positions() -> impl IntoView {
    let dice = expect_context::<Dice>();
    let rows = move || {
        let tally = dice.tally().read();
        let shares = tally.as_ref().map(Tally::good_shares).unwrap_or_default();
        (1..)
            .zip(shares)
            .map(|(position, share): (u32, _)| {
                view! {
                    <tr>
                        <th scope="row">{position}</th>
                        <td class="figure">{figure::ratio_fine(share.mean)}</td>
                        <td class="figure">{figure::ratio_fine(share.error)}</td>
                    </tr>
                }
            })
            .collect_view()
    };
    view! {
        <section class="result positions" aria-labelledby="positions-title">
            <h2 id="positions-title">"Good at each position"</h2>
            <table>
                <thead>
                    <tr>
                        <th scope="col">"Position from the datum edge"</th>
                        <th scope="col" class="figure">"Good"</th>
                        <th scope="col" class="figure">"Standard error"</th>
                    </tr>
                </thead>
                <tbody>{live(rows)}</tbody>
            </table>
        </section>
    }
}
