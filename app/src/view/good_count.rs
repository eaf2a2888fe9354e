//! How many pencils of a sandwich are good, counted by dice.

use super::live::live;
use crate::workbench::{Count, Dice, Enough, Workbench};
use leptos::prelude::*;
use solver::figure;
use solver::tolerance::{Estimate, Fault, Tally};

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
    let columns = ["Fault", "Of all pencils", "With no other fault"];
    share_table(
        "faults",
        "What is wrong with the others",
        columns,
        |tally| {
            let row = |fault: Fault| {
                let shares = tally.faulty_shares(fault);
                let shares = shares.map(|shares| shares.map(figure::ratio_fine));
                (fault.label().to_owned(), shares.unwrap_or_default())
            };
            Fault::ALL.map(row).to_vec()
        },
    )
}

/// The share of good pencils of each position.
#[component]
pub(crate) fn Positions() -> impl IntoView {
    let columns = ["Position from the datum edge", "Good", "Standard error"];
    share_table("positions", "Good at each position", columns, |tally| {
        let shares = (1_u32..).zip(tally.good_shares());
        let row = |(position, share): (u32, Estimate)| {
            let share = [share.mean, share.error].map(figure::ratio_fine);
            (position.to_string(), share)
        };
        shares.map(row).collect()
    })
}

/// What a row is about, and two shares of pencils.
type ShareRow = (String, [String; 2]);

/// A table of what the dice say, called by a name on the page.
fn share_table(
    name: &'static str,
    title: &'static str,
    [about, first, second]: [&'static str; 3],
    rows: fn(&Tally) -> Vec<ShareRow>,
) -> impl IntoView {
    let dice = expect_context::<Dice>();
    let rows = move || {
        let tally = dice.tally().read();
        let rows = tally.as_ref().map(rows).unwrap_or_default().into_iter();
        rows.map(|(about, [first, second])| {
            view! {
                <tr>
                    <th scope="row">{about}</th>
                    <td class="figure">{first}</td>
                    <td class="figure">{second}</td>
                </tr>
            }
        })
        .collect_view()
    };
    let title_id = format!("{name}-title");
    view! {
        <section class=format!("result {name}") aria-labelledby=title_id.clone()>
            <h2 id=title_id.clone()>{title}</h2>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{about}</th>
                        <th scope="col" class="figure">{first}</th>
                        <th scope="col" class="figure">{second}</th>
                    </tr>
                </thead>
                <tbody>{live(rows)}</tbody>
            </table>
        </section>
    }
}
