//! What is ordered, what it is made from, and what to run, buy and saw in each period.

use super::entry_table::EntryTable;
use super::folded::Folded;
use super::live::live;
use super::order_plan::OrderPlanView;
use super::order_table::OrderTable;
use super::problem_list::ProblemList;
use super::supply_form::SupplyForm;
use crate::workbench::{Sawing, Sawyer, Table, Workbench};
use leptos::prelude::*;
use solver::{ProjectDraft, SupplyDraft};

/// The place of those who plan orders.
#[component]
pub(crate) fn OrdersPlace() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let periods = Memo::new(move |_| {
        let project = project.read();
        let periods = &project.supply.periods;
        let is_limited = |period: &solver::PeriodDraft| period.hours != solver::Typed::empty();
        match (periods.len(), periods.iter().any(is_limited)) {
            (1, false) => "Periods: one, with machine hours as needed".to_owned(),
            (1, true) => "Periods: one, with limited machine hours".to_owned(),
            (count, false) => format!("Periods: {count}, with machine hours as needed"),
            (count, true) => format!("Periods: {count}, with limited machine hours"),
        }
    });
    let sawn = Memo::new(move |_| match project.read().supply.sawn.len() {
        0 => "Slats sawn in the works: none".to_owned(),
        count => format!("Slats sawn in the works: {count}"),
    });
    let costs = Memo::new(move |_| {
        let aim = project.read().supply.aim.label();
        format!("Costs, limits and aim: {}", aim.to_lowercase())
    });
    let is_in_use = |read: fn(&ProjectDraft) -> bool| read(&project.read_untracked());
    let has_periods = is_in_use(|project| project.supply.periods != SupplyDraft::new().periods);
    let has_sawn = is_in_use(|project| !project.supply.sawn.is_empty());
    view! {
        <div class="place tables-place orders-place">
            <ProblemList/>
            <OrderTable/>
            <Folded summary=periods open=has_periods>
                <EntryTable table=Table::Periods empty="No period. Add one."/>
            </Folded>
            <EntryTable
                table=Table::Offers
                empty="No offer yet. Add one, or offer each slat stock at its own pack and price."
            >
                <OfferEach/>
            </EntryTable>
            <PricedApart/>
            <Folded summary=sawn open=has_sawn>
                <EntryTable table=Table::Sawn empty="No slats are sawn in the works.">
                    <FromPlanks/>
                </EntryTable>
            </Folded>
            <Folded summary=costs open=false><SupplyForm/></Folded>
            <OrderPlanView/>
        </div>
    }
}

/// Offers what nothing offers yet.
#[component]
fn OfferEach() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let has_unoffered = Memo::new(move |_| bench.project().read().has_unoffered());
    view! {
        <button
            type="button"
            hidden=move || !has_unoffered.get()
            on:click=move |_| bench.change(ProjectDraft::offer_each_stock)
        >
            "Offer each other stock at its own price"
        </button>
    }
}

/// Which stocks have another price elsewhere, and a way to make it the same.
#[component]
fn PricedApart() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let words = Memo::new(move |_| {
        let project = project.read();
        let apart = project.priced_apart().into_iter();
        let names = apart.map(|at| Table::Slats.spoken_name(&project, project.slats[at].id));
        names.collect::<Vec<String>>().join(", ")
    });
    let told = move || {
        format!(
            "The order plan buys by these offers. Layouts, searches and the list under Timber count with the pack and price of the stock itself, which no offer has: {}.",
            words.get()
        )
    };
    view! {
        <div class="apart" hidden=move || words.with(String::is_empty)>
            <p class="hint">{live(told)}</p>
            <button type="button" on:click=move |_| bench.change(ProjectDraft::price_as_offered)>
                "Give these stocks the pack and first price of their cheapest offer"
            </button>
        </div>
    }
}

/// Takes what sawing slats costs from the cutting plan.
#[component]
fn FromPlanks() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let sawyer = expect_context::<Sawyer>();
    let is_there = Memo::new(move |_| match sawyer.state() {
        Sawing::Planned(planned) => !sawyer.is_stale(&planned),
        _ => false,
    });
    let take = move |_| {
        let Sawing::Planned(planned) = sawyer.state() else {
            return;
        };
        let mut taken = 0;
        bench.change(|project| taken = project.take_sawn(planned.data(), &planned.plan));
        bench.tell(&match taken {
            0 => "The cutting plan saws no blanks that become slats of a stock.".to_owned(),
            1 => {
                "Cost and most of a period are taken from the cutting plan for 1 stock.".to_owned()
            }
            stocks => format!(
                "Cost and most of a period are taken from the cutting plan for {stocks} stocks."
            ),
        });
    };
    view! {
        <button type="button" disabled=move || !is_there.get() on:click=take>"Take from Planks"</button>
        <span class="hint" hidden=move || is_there.get()>
            "Plan the cuts under Planks to take what sawn slats cost from there."
        </span>
    }
}
