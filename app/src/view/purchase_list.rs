//! Which slats to buy for the order book, and what is made from what.

use super::live::live;
use crate::protocol::{Progress, Purchase, PurchaseList};
use crate::workbench::{JobState, Jobs, Workbench};
use leptos::prelude::*;
use solver::{LengthUnit, Way, figure};

/// The cheapest packs that fill the order book, with the state of the proof.
#[component]
pub(crate) fn PurchaseListView() -> impl IntoView {
    let jobs = expect_context::<Jobs>();
    let bench = expect_context::<Workbench>();
    let purchase = jobs.purchase();
    let body = move || {
        let unit = bench.unit.get();
        match purchase.get() {
            JobState::Waiting => view! { <p class="empty">"Waiting for the solver …"</p> }.into_any(),
            JobState::Running(progress) => view! {
                <p class="running">
                    <span>{progress.map_or_else(|| "Looking for the cheapest packs …".to_owned(), describe)}</span>
                    <button type="button" on:click=move |_| jobs.stop_purchase()>"Stop"</button>
                </p>
            }
            .into_any(),
            JobState::Stopped => view! {
                <p class="running">
                    <span>"Stopped before an answer was found."</span>
                    <button type="button" on:click=move |_| jobs.ask_purchase()>"Start again"</button>
                </p>
            }
            .into_any(),
            JobState::Refused(problems) => view! {
                <p class="empty">"The list is made when this is mended:"</p>
                <ul>{problems.into_iter().map(|problem| view! { <li>{problem}</li> }).collect_view()}</ul>
            }
            .into_any(),
            JobState::Fault(reason) => view! {
                <p class="running">
                    <span class="problem">{reason}</span>
                    <button type="button" on:click=move |_| jobs.ask_purchase()>"Try again"</button>
                </p>
            }
            .into_any(),
            JobState::Done(purchase) => outcome(purchase, unit).into_any(),
        }
    };
    view! {
        <section class="result purchase" aria-labelledby="purchase-title">
            <h2 id="purchase-title">"Slats to buy"</h2>
            <div aria-live="polite">{live(body)}</div>
        </section>
    }
}

/// Progress in words.
fn describe(progress: Progress) -> String {
    match progress {
        Progress::Laid { done, of } => format!("{done} of {of} layouts laid out …"),
        Progress::FirstPlan { cost: Some(cost) } => format!(
            "First plan costs {}; looking for a cheaper one …",
            figure::money(cost.hundredths())
        ),
        Progress::FirstPlan { cost: None } => {
            "No quick plan fills every order; looking further …".to_owned()
        }
        Progress::Bound { bound } => format!(
            "No plan costs less than {}; closing the gap …",
            figure::money(bound.hundredths())
        ),
        Progress::BetterPlan { cost } => format!(
            "Best plan so far costs {} …",
            figure::money(cost.hundredths())
        ),
        Progress::FewerSlats { cost } => format!(
            "Cost settled at {}; looking for fewer slats …",
            figure::money(cost.hundredths())
        ),
    }
}

fn outcome(purchase: Purchase, unit: LengthUnit) -> impl IntoView {
    match purchase {
        Purchase::Cheapest { list, fewest_slats } => {
            let slats = if fewest_slats { " No other plan of this cost uses fewer slats." } else { "" };
            let words = format!("Proved cheapest: {}.{slats}", figure::money(list.totals.cost.hundredths()));
            view! { <p class="proof proved">{words}</p> {tables(list, unit)} }.into_any()
        }
        Purchase::WithinGap { list, bound, gap } => {
            let words = format!(
                "A good plan at {}, not proved cheapest: no plan costs less than {}, so at most {} could be saved.",
                figure::money(list.totals.cost.hundredths()),
                figure::money(bound.hundredths()),
                figure::ratio(gap)
            );
            view! { <p class="proof open">{words}</p> {tables(list, unit)} }.into_any()
        }
        Purchase::NoneFound { bound } => {
            let words = format!(
                "No plan found in time; there may be one, and it costs at least {}. Take off an order, or allow more packs.",
                figure::money(bound.hundredths())
            );
            view! { <p class="proof open">{words}</p> }.into_any()
        }
        Purchase::Impossible { obstacles } => view! {
            <p class="proof failed">"The order book cannot be filled:"</p>
            <ul>{obstacles.into_iter().map(|obstacle| view! { <li>{obstacle}</li> }).collect_view()}</ul>
        }
        .into_any(),
    }
}

fn tables(list: PurchaseList, unit: LengthUnit) -> impl IntoView {
    let totals = list.totals;
    if list.runs.is_empty() && list.stocks.is_empty() {
        return view! { <p class="empty">"Nothing is ordered, so nothing is bought."</p> }
            .into_any();
    }
    let stocks = list
        .stocks
        .into_iter()
        .map(|line| {
            view! {
                <tr>
                    <th scope="row">{line.slat_name}</th>
                    <td class="figure strong">{figure::count(line.packs.pieces())}</td>
                    <td class="figure">{figure::count(line.slats_bought.pieces())}</td>
                    <td class="figure">{figure::money(line.cost.hundredths())}</td>
                    <td class="figure">{figure::count(line.slats_used.pieces())}</td>
                    <td class="figure">{figure::count(line.slats_from_hand.pieces())}</td>
                    <td class="figure">{figure::count(line.slats_left.pieces())}</td>
                </tr>
            }
        })
        .collect_view();
    let runs = list
        .runs
        .into_iter()
        .map(|line| {
            let way: Way = line.way.into();
            view! {
                <tr>
                    <td class="figure">{line.order + 1}</td>
                    <th scope="row">{line.barrel_name}</th>
                    <td>{line.slat_name}</td>
                    <td>{way.label()}</td>
                    <td class="figure">{line.pencils_per_sandwich}</td>
                    <td class="figure strong">{figure::count(line.sandwiches.pieces())}</td>
                    <td class="figure">{figure::count(line.pencils.pieces())}</td>
                </tr>
            }
        })
        .collect_view();
    let facts = [
        ("Cost of the packs", figure::money(totals.cost.hundredths())),
        (
            "Cost a gross ordered",
            totals
                .cost_per_gross
                .map_or_else(|| figure::NO_FIGURE.to_owned(), figure::money_rounded),
        ),
        ("Wood bought", figure::timber(totals.wood_bought_mm3, unit)),
        ("Pencils over", figure::count(totals.pencils_over.pieces())),
    ];
    view! {
        <dl class="facts">
            {facts.map(|(name, value)| view! { <div><dt>{name}</dt><dd class="figure">{value}</dd></div> }).collect_view()}
        </dl>
        <div class="scroll" tabindex="0" role="group" aria-label="Packs to buy">
            <table>
                <thead>
                    <tr>
                        <th scope="col">"Buy"</th>
                        <th scope="col" class="figure">"Packs"</th>
                        <th scope="col" class="figure">"Slats"</th>
                        <th scope="col" class="figure">"Cost"</th>
                        <th scope="col" class="figure">"Used"</th>
                        <th scope="col" class="figure">"From store"</th>
                        <th scope="col" class="figure">"Left in store"</th>
                    </tr>
                </thead>
                <tbody>{stocks}</tbody>
            </table>
        </div>
        <div class="scroll" tabindex="0" role="group" aria-label="What is made from what">
            <table>
                <thead>
                    <tr>
                        <th scope="col" class="figure">"Order"</th>
                        <th scope="col">"Pencil"</th>
                        <th scope="col">"From"</th>
                        <th scope="col">"Lies"</th>
                        <th scope="col" class="figure">"Per sandwich"</th>
                        <th scope="col" class="figure">"Sandwiches"</th>
                        <th scope="col" class="figure">"Pencils"</th>
                    </tr>
                </thead>
                <tbody>{runs}</tbody>
            </table>
        </div>
        <p class="hint">"Every order is laid as close as the land allows, whatever spacing the layout that is looked at has. Rejects of slats and pencils, as the machining rules tell them, are counted in. Offers with several prices, periods, machine hours and other costs are planned under “Orders”."</p>
    }
    .into_any()
}
