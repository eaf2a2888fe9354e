//! How the orders are filled: what starts and stops the search, how good the plan is, and the plan.

use super::answered::lines;
use super::order_answers::{Beside, Differences};
use super::order_sheet::{Costs, Facts, Purchases, Runs, Sawn, Stores};
use super::plan_frame::{PlanNames, line, plan_frame, verdict_lines};
use crate::download;
use crate::protocol::{OrdersSoFar, Whole};
use crate::workbench::{HowGood, OrderPlanned, Planner, Planning, Workbench};
use leptos::prelude::*;
use solver::order_plan::{OrderPlanProgress, PlanAim};
use solver::{LengthUnit, figure};
use std::sync::Arc;

/// The order plan, with what starts and stops the search for it.
#[component]
pub(crate) fn OrderPlanView() -> impl IntoView {
    let planner = expect_context::<Planner>();
    let bench = expect_context::<Workbench>();
    let state = Memo::new(move |_| planner.state());
    let has_orders = Memo::new(move |_| !bench.project().read().orders.is_empty());
    let start = Memo::new(move |_| match state.get() {
        Planning::Waiting | Planning::Refused(_) => ("Plan the orders", true),
        Planning::Running(_) => ("Plan the orders", false),
        Planning::Stopped => ("Start again", true),
        Planning::Fault(_) => ("Try again", true),
        Planning::Planned(planned) if planner.is_stale(&planned) => ("Plan the orders again", true),
        Planning::Planned(planned) if planned.ending == HowGood::Stopped => ("Start again", true),
        Planning::Planned(_) => ("Plan the orders", false),
    });
    let standing = move || {
        let unit = bench.unit.get();
        match state.get() {
            Planning::Running(so_far) => view! {
                <p class="running">
                    <span>{told_so_far(&so_far, unit)}</span>
                    <button type="button" on:click=move |_| planner.stop()>"Stop"</button>
                </p>
            }
            .into_any(),
            _ if !has_orders.get() => line("The plan needs an order: add one above.", "empty"),
            Planning::Waiting => line(
                "What to run, to buy and to saw in each period, so that all is there when it is due.",
                "",
            ),
            Planning::Stopped => line("Stopped before there was a plan.", ""),
            Planning::Refused(problems) => {
                let line = line("The plan is made when this is mended:", "");
                vec![line, lines("", problems)].into_any()
            }
            Planning::Fault(reason) => line(&reason, "problem"),
            Planning::Planned(planned) => {
                let clashes = planned.answer.clashes.clone();
                let clashes = (!clashes.is_empty()).then(|| lines("clashes", clashes));
                verdict_lines(planner.is_stale(&planned), verdict(&planned, unit), clashes)
            }
        }
    };
    let parts = move || match state.get() {
        Planning::Planned(planned) if planned.sheet().is_some() => {
            view! { <Parts planned/> }.into_any()
        }
        _ => ().into_any(),
    };
    let names = PlanNames {
        class: "plan",
        heading: "plan-title",
        title: "Order plan",
    };
    plan_frame(
        names,
        has_orders,
        start,
        move || planner.ask(),
        standing,
        parts,
    )
}

/// A plan in all its parts.
#[component]
fn Parts(planned: Arc<OrderPlanned>) -> impl IntoView {
    let planner = expect_context::<Planner>();
    let stale = {
        let planned = Arc::clone(&planned);
        Memo::new(move |_| planner.is_stale(&planned))
    };
    let planned = || Arc::clone(&planned);
    view! {
        <div class="planned" class:stale=stale>
            <Files planned=planned()/>
            <Facts planned=planned()/>
            <Differences planned=planned()/>
            <Runs planned=planned()/>
            <Purchases planned=planned()/>
            <Sawn planned=planned()/>
            <Costs planned=planned()/>
            <Stores planned=planned()/>
            <Beside planned=planned()/>
        </div>
    }
}

/// What can be done with the plan.
#[component]
fn Files(planned: Arc<OrderPlanned>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let planner = expect_context::<Planner>();
    let kept = Arc::clone(&planned);
    let save = move |_| {
        if let Some(sheet) = planned.sheet() {
            bench.tell(&download::list("purchase-list.csv", &sheet.purchase_csv));
        }
    };
    let set_aside = move |_| {
        planner.aside.set(Some(Arc::clone(&kept)));
        bench
            .tell("The plan is set aside. Change something and plan again: what differs is shown.");
    };
    view! {
        <div class="actions">
            <button type="button" on:click=save>"Save the purchase list as CSV"</button>
            <button type="button" on:click=|_| { let _ = window().print(); }>"Print the plan"</button>
            <button type="button" on:click=set_aside>"Set this plan aside"</button>
        </div>
    }
}

fn told_so_far(so_far: &OrdersSoFar, unit: LengthUnit) -> String {
    let aim = PlanAim::from(so_far.aim);
    let [value, bound] = [so_far.value, so_far.bound].map(|amount| amount.map(Whole::hundredths));
    let mut words = value.map_or_else(
        || "Looking for a plan …".to_owned(),
        |value| format!("Best plan so far: {}.", aim.shown(value, unit)),
    );
    if let Some(bound) = bound {
        words += &format!(" No plan comes to less than {}", aim.shown(bound, unit));
        words +=
            &gap(value, bound).map_or_else(|| ".".to_owned(), |gap| format!(", a gap of {gap}."));
    }
    match so_far.steps.pieces() {
        0 => words,
        1 => words + " 1 step.",
        steps => words + &format!(" {} steps.", figure::count(steps)),
    }
}

/// The gap between a plan and the bound, in words.
fn gap(value: Option<i64>, bound: i64) -> Option<String> {
    let progress = OrderPlanProgress {
        best: None,
        value,
        bound,
        steps: 0,
    };
    progress.gap().map(figure::ratio_fine)
}

/// How good a plan is, and the class of the line that says so.
fn verdict(planned: &OrderPlanned, unit: LengthUnit) -> (&'static str, String) {
    let shown = |amount: i64| planned.aim.shown(amount, unit);
    let [value, bound] = planned.amounts();
    let comes_to = value.map(shown).unwrap_or_default();
    let open = |start: &str| {
        let told = value.zip(bound).map(|(value, bound)| {
            let share = gap(Some(value), bound);
            format!(
                "no plan comes to less than {}, so at most {}{} could be saved",
                shown(bound),
                shown(value.saturating_sub(bound)),
                share.map_or_else(String::new, |share| format!(" ({share})"))
            )
        });
        let told = told.unwrap_or_else(|| "how far it is from the best is not known".to_owned());
        ("open", format!("{start}: {told}."))
    };
    match planned.ending {
        HowGood::Proved => ("proved", format!("Proved best: {comes_to}.")),
        HowGood::WithinGap => open(&format!("A good plan at {comes_to}, not proved best")),
        HowGood::Stopped => open(&format!(
            "Stopped. The best plan so far comes to {comes_to}"
        )),
        HowGood::NoPlan if planned.answer.clashes.is_empty() => (
            "failed",
            "There is no plan: fractions of packs and sandwiches would do, whole ones do not. Allow a little more of a limit."
                .to_owned(),
        ),
        HowGood::NoPlan => (
            "failed",
            "There is no plan. These cannot be kept together, and without any one of them there would be one:"
                .to_owned(),
        ),
        HowGood::NoneFound => (
            "failed",
            "No plan was found, though there may be one. Ask for fewer pencils, or allow more of a limit.".to_owned(),
        ),
    }
}
