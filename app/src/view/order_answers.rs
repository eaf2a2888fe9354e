//! What is worth knowing beside an order plan: what limits are worth, at which price stocks pay, what
//! wider slats would save, and what differs from a plan that was set aside.

use super::answered::lines;
use super::comparison::difference;
use super::live::live;
use crate::workbench::{JobState, OrderPlanned, Planner, Workbench};
use leptos::prelude::*;
use solver::order_plan::PlanAim;
use solver::{PlanTotals, compare_plans};
use std::sync::Arc;

/// What is worth knowing beside a plan.
#[component]
pub(crate) fn Beside(planned: Arc<OrderPlanned>) -> impl IntoView {
    let planner = expect_context::<Planner>();
    let (worths, slack) = (planned.answer.worths.clone(), planned.answer.slack.clone());
    let worths = (!worths.is_empty()).then(|| {
        view! {
            <h3>"What a little more of a limit is worth"</h3>
            <p class="hint">"With set-ups, orders and tiers as they are, and packs and sandwiches in fractions."</p>
            {lines("told", worths)}
        }
    });
    let slack = (!slack.is_empty()).then(|| {
        view! { <h3>"What suppliers have left"</h3> {lines("told", slack)} }
    });
    let unbought = planned
        .sheet()
        .is_some_and(|sheet| !sheet.unbought.is_empty());
    let asked = Arc::clone(&planned);
    // A price is held against a cost.
    let prices = (unbought && planned.aim == PlanAim::Cost).then(|| {
        on_demand(
            "At which price would the other stocks pay?",
            planner.prices,
            Arc::new(move || planner.ask_prices(&asked)),
        )
    });
    let wider = on_demand(
        "What would slats one millimetre wider save?",
        planner.wider,
        Arc::new(move || planner.ask_wider(&planned)),
    );
    view! { <div class="beside">{worths}{slack}{prices}{wider}</div> }
}

/// A question that is planned anew when it is asked.
fn on_demand(
    question: &'static str,
    answer: RwSignal<JobState<Vec<String>>>,
    ask: Arc<dyn Fn() + Send + Sync>,
) -> AnyView {
    let planner = expect_context::<Planner>();
    let is_asked = move || matches!(answer.get(), JobState::Running(_));
    let standing = move || match answer.get() {
        JobState::Waiting => ().into_any(),
        JobState::Running(_) => view! {
            <p class="running">
                <span>"Planning the orders anew for each stock …"</span>
                <button type="button" on:click=move |_| planner.stop_beside()>"Stop"</button>
            </p>
        }
        .into_any(),
        JobState::Done(told) if told.is_empty() => {
            view! { <p>"None of them can be planned with."</p> }.into_any()
        }
        JobState::Done(told) | JobState::Refused(told) => lines("told", told),
        JobState::Stopped => view! { <p>"Stopped before there was an answer."</p> }.into_any(),
        JobState::Fault(reason) => view! { <p class="problem">{reason}</p> }.into_any(),
    };
    view! {
        <div class="question">
            <div class="actions">
                <button
                    type="button"
                    aria-disabled=move || if is_asked() { "true" } else { "false" }
                    on:click=move |_| if !is_asked() { ask() }
                >
                    {question}
                </button>
            </div>
            <div aria-live="polite">{live(standing)}</div>
        </div>
    }
    .into_any()
}

/// What differs from the plan that was set aside.
#[component]
pub(crate) fn Differences(planned: Arc<OrderPlanned>) -> impl IntoView {
    let planner = expect_context::<Planner>();
    let bench = expect_context::<Workbench>();
    let body = move || {
        let aside = planner.aside()?;
        let [first, second] = [&aside, &planned].map(|plan| Some(plan.sheet()?.totals));
        if Arc::ptr_eq(&aside, &planned) {
            return Some(
                view! { <p class="hint">"This plan is set aside. Change something and plan again: what differs is shown here."</p> }
                    .into_any(),
            );
        }
        let [first, second] = [PlanTotals::from(first?), PlanTotals::from(second?)];
        let unit = bench.unit.get();
        let mut part = None;
        let lines = compare_plans(&first, &second);
        let rows = lines.iter().map(|line| {
            let begins = part.replace(line.part) != Some(line.part);
            difference(line, begins.then_some(line.part), unit)
        });
        Some(
            view! {
                <h3>"Beside the plan set aside"</h3>
                <div class="scroll" tabindex="0" role="group" aria-label="What differs">
                    <table>
                        <thead>
                            <tr>
                                <th scope="col"><span class="unseen">"What is compared"</span></th>
                                <th scope="col" class="figure">"Set aside"</th>
                                <th scope="col" class="figure">"This plan"</th>
                                <th scope="col" class="figure">"Change"</th>
                            </tr>
                        </thead>
                        <tbody>{rows.collect_view()}</tbody>
                    </table>
                </div>
                <div class="actions">
                    <button type="button" on:click=move |_| planner.aside.set(None)>"Take it away"</button>
                </div>
            }
            .into_any(),
        )
    };
    view! { <div class="comparison plans">{live(body)}</div> }
}
