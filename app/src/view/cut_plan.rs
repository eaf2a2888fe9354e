//! How the planks are sawn: what starts and stops the search, how good the plan is, and the plan.

use super::answered::lines;
use super::cut_sheet::CutSheet;
use super::cut_tables::{Balance, Bill, Blanks, Files};
use super::plan_frame::{PlanNames, line, plan_frame, verdict_lines};
use crate::workbench::{Ending, Planned, Sawing, Sawyer, SoFar, Workbench};
use leptos::prelude::*;
use solver::sawing::SawingAim;
use solver::{LengthUnit, SawnReckoning, figure};
use std::sync::Arc;

/// The plan of the cuts, with what starts and stops the search for it.
#[component]
pub(crate) fn CutPlan() -> impl IntoView {
    let sawyer = expect_context::<Sawyer>();
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let state = Memo::new(move |_| sawyer.state());
    let is_filled_in = Memo::new(move |_| {
        let shop = &project.read().saw_shop;
        !shop.planks.is_empty() && !shop.blanks.is_empty()
    });
    let start = Memo::new(move |_| match state.get() {
        Sawing::Waiting | Sawing::Refused(_) => ("Plan the cuts", true),
        Sawing::Running(_) => ("Plan the cuts", false),
        Sawing::Stopped => ("Start again", true),
        Sawing::Fault(_) => ("Try again", true),
        Sawing::Planned(planned) if sawyer.is_stale(&planned) => ("Plan the cuts again", true),
        Sawing::Planned(planned) => match planned.ending {
            Ending::Stopped { .. } => ("Start again", true),
            Ending::Recalled => ("Plan the cuts again", true),
            _ => ("Plan the cuts", false),
        },
    });
    let standing = move || match state.get() {
        Sawing::Running(so_far) => {
            let words = told_so_far(&so_far, bench.unit.get());
            view! {
                <p class="running">
                    <span>{words}</span>
                    <button type="button" on:click=move |_| sawyer.stop()>"Stop"</button>
                </p>
            }
            .into_any()
        }
        _ if !is_filled_in.get() => line(
            "The plan needs a plank and a blank: add them above.",
            "empty",
        ),
        Sawing::Waiting => line(
            "Which planks to take, and how to saw them with the least loss.",
            "",
        ),
        Sawing::Stopped => line("Stopped before there was a plan.", ""),
        Sawing::Refused(problems) => {
            let line = line("The plan is made when this is mended:", "");
            vec![line, lines("", problems)].into_any()
        }
        Sawing::Fault(reason) => line(&reason, "problem"),
        Sawing::Planned(planned) => {
            let verdict = verdict(&planned, bench.unit.get());
            verdict_lines(sawyer.is_stale(&planned), verdict, None)
        }
    };
    let parts = move || match state.get() {
        Sawing::Planned(planned) if is_filled_in.get() && !planned.list.cuts.is_empty() => {
            view! { <Parts planned/> }.into_any()
        }
        _ => ().into_any(),
    };
    let names = PlanNames {
        class: "cuts",
        heading: "cuts-title",
        title: "Cutting plan",
    };
    plan_frame(
        names,
        is_filled_in,
        start,
        move || sawyer.ask(),
        standing,
        parts,
    )
}

/// A plan in all its parts.
#[component]
fn Parts(planned: Arc<Planned>) -> impl IntoView {
    let sawyer = expect_context::<Sawyer>();
    let stale = {
        let planned = Arc::clone(&planned);
        Memo::new(move |_| sawyer.is_stale(&planned))
    };
    let planned = || Arc::clone(&planned);
    view! {
        <div class="sawn" class:stale=stale>
            <Files planned=planned()/>
            <Bill planned=planned()/>
            <Blanks planned=planned()/>
            <Balance planned=planned()/>
            <CutSheet planned=planned()/>
        </div>
    }
}

/// What a plan comes to, as the aim counts it.
fn amount(aim: SawingAim, amount: i64, unit: LengthUnit) -> String {
    match aim {
        SawingAim::Cost => figure::money(amount),
        SawingAim::Planks if amount == 1 => "1 plank".to_owned(),
        SawingAim::Planks => format!("{} planks", figure::count(amount.unsigned_abs())),
        SawingAim::Volume => figure::timber(amount as f64, unit),
    }
}

fn told_so_far(so_far: &SoFar, unit: LengthUnit) -> String {
    let aim = so_far.aim;
    let cost = so_far.best.as_ref().map(|best| best.cost());
    let mut words = cost.map_or_else(
        || "Looking for a plan …".to_owned(),
        |cost| format!("Best plan so far: {}.", amount(aim, cost, unit)),
    );
    if let Some(bound) = so_far.bound {
        words += &format!(" No plan comes to less than {}", amount(aim, bound, unit));
        let gap = cost.and_then(|cost| SawnReckoning::gap(cost, bound));
        words += &gap.map_or_else(
            || ".".to_owned(),
            |gap| format!(", a gap of {}.", figure::ratio_fine(gap)),
        );
    }
    match so_far.rounds {
        0 => words,
        1 => words + " 1 round of pricing.",
        rounds => words + &format!(" {} rounds of pricing.", figure::count(rounds)),
    }
}

/// How good a plan is, and the class of the line that says so.
fn verdict(planned: &Planned, unit: LengthUnit) -> (&'static str, String) {
    let aim = planned.data().draft().aim;
    let cost = planned.plan.cost;
    let comes_to = amount(aim, cost, unit);
    if planned.list.cuts.is_empty() && planned.reckoning.short == 0 {
        return (
            "proved",
            "No blank is wanted, so nothing is sawn.".to_owned(),
        );
    }
    let saved = |bound: i64| {
        let gap = SawnReckoning::gap(cost, bound).map(figure::ratio_fine);
        let share = gap.map_or_else(String::new, |gap| format!(" ({gap})"));
        format!(
            "no plan comes to less than {}, so at most {}{share} could be saved",
            amount(aim, bound, unit),
            amount(aim, cost - bound, unit)
        )
    };
    match planned.ending {
        Ending::Proved { cases: 0 | 1 } => (
            "proved",
            format!(
                "Proved best: {comes_to}. Blanks can be given values at which no plank holds more than it counts for, and those wanted come to as much."
            ),
        ),
        Ending::Proved { cases } => (
            "proved",
            format!(
                "Proved best: {comes_to}. The plans were parted by how many planks of a kind they saw, and for each of {} parts blanks can be given values that prove it.",
                figure::count(cases)
            ),
        ),
        Ending::WithinGap { bound } => (
            "open",
            format!(
                "A good plan at {comes_to}, not proved best: {}.",
                saved(bound)
            ),
        ),
        Ending::Recalled if planned.reckoning.short > 0 => (
            "failed",
            format!(
                "Kept from before, and recounted: short by {}. Plan the cuts again to learn whether it can be less.",
                missing(planned)
            ),
        ),
        Ending::Recalled => (
            "open",
            format!(
                "Kept from before, and recounted: {comes_to}. How far it is from the best is not kept with it; plan the cuts again to have it proved."
            ),
        ),
        Ending::Stopped { bound: Some(bound) } => (
            "open",
            format!(
                "Stopped. The best plan so far comes to {comes_to}: {}.",
                saved(bound)
            ),
        ),
        Ending::Stopped { bound: None } => (
            "open",
            format!(
                "Stopped. The best plan so far comes to {comes_to}; how far it is from the best is not known."
            ),
        ),
        Ending::Short { at_least } => {
            let proof = if planned.reckoning.short <= at_least {
                "No plan leaves fewer missing".to_owned()
            } else {
                format!(
                    "Every plan leaves {} or more missing",
                    figure::count(at_least)
                )
            };
            (
                "failed",
                format!(
                    "The planks to be had do not suffice: short by {}. {proof}; add planks, or ask for fewer blanks.",
                    missing(planned)
                ),
            )
        }
        Ending::NoneFound { .. } => (
            "failed",
            format!(
                "No plan was found that makes all blanks, though there may be one. This one is short by {}; add planks, or ask for fewer blanks.",
                missing(planned)
            ),
        ),
    }
}

/// What is missing, by kind.
fn missing(planned: &Planned) -> String {
    let lines = planned.reckoning.blanks.iter().enumerate();
    let missing: Vec<String> = lines
        .filter(|(_, line)| line.short > 0)
        .map(|(blank, line)| {
            let name = planned.names().blank(blank);
            format!("{} of “{name}”", figure::count(line.short))
        })
        .collect();
    missing.join(", ")
}
