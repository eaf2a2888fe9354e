//! An order plan as tables and charts: runs, purchase list, sawn lots, costs, stores.

use super::chart::{ChartPicture, Parts};
use super::cut_tables::{Heading, plain_table, scrolled};
use super::live::live;
use crate::protocol::{Cells, StoreSheet};
use crate::workbench::{OrderPlanned, Workbench};
use leptos::prelude::*;
use solver::{BarChart, PlanTotals, Sheet, StoreRow, draw_costs, draw_stores, figure};
use std::sync::Arc;

/// A table whose cells are written; the first of each row names it.
fn table(label: &'static str, headings: &[Heading], rows: &[Cells], foot: AnyView) -> AnyView {
    scrolled(label, plain_table(headings, body(headings, rows), foot))
}

/// Rows of cells that are written.
fn body(headings: &[Heading], rows: &[Cells]) -> AnyView {
    let rows = rows.iter().map(|cells| {
        let cells = cells.iter().zip(headings).enumerate();
        let cells = cells.map(|(at, (cell, &(_, is_figure)))| {
            let cell = cell.clone();
            if at == 0 {
                view! { <th scope="row">{cell}</th> }.into_any()
            } else {
                view! { <td class:figure=is_figure>{cell}</td> }.into_any()
            }
        });
        view! { <tr>{cells.collect_view()}</tr> }
    });
    rows.collect_view().into_any()
}

/// A chart of bars, with its words below.
fn chart(draw: impl Fn(&Sheet) -> BarChart + Send + Sync + 'static) -> AnyView {
    let draw = move |sheet: &Sheet| {
        let chart = draw(sheet);
        Some(Parts {
            size: (chart.width, chart.height),
            paths: vec![
                ("axes", chart.axes),
                ("bars", chart.bars),
                ("over", chart.light),
            ],
            labels: chart.labels,
            description: chart.description,
        })
    };
    view! { <ChartPicture draw=Box::new(draw)/> }.into_any()
}

/// What the plan comes to in a few words.
#[component]
pub(crate) fn Facts(planned: Arc<OrderPlanned>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let facts = move || {
        let totals = PlanTotals::from(planned.sheet()?.totals);
        let gross = totals.per_gross(totals.total);
        let timber = totals.timber.in_cubic_millimetres();
        let facts = [
            ("Cost in all", figure::money_rounded(totals.total)),
            (
                "Cost of a gross",
                gross.map_or_else(|| figure::NO_FIGURE.to_owned(), figure::money_rounded),
            ),
            ("Timber", figure::timber(timber, bench.unit.get())),
            ("Change-overs", figure::count(totals.changeovers)),
            ("Machine hours", figure::plain(totals.hours, 2)),
        ];
        let facts = facts.map(|(name, value)| {
            view! { <div><dt>{name}</dt><dd class="figure">{value}</dd></div> }
        });
        Some(facts.into_iter().collect_view())
    };
    view! { <dl class="facts">{live(facts)}</dl> }
}

/// What is run, period by period.
#[component]
pub(crate) fn Runs(planned: Arc<OrderPlanned>) -> impl IntoView {
    let headings = [
        ("Pencil", false),
        ("Slats", false),
        ("Lies", false),
        ("Cutter set", false),
        ("A sandwich", true),
        ("Sandwiches", true),
        ("Good pencils", true),
        ("Hours", true),
    ];
    let periods = planned.sheet().map_or(&[][..], |sheet| &sheet.periods);
    let periods = periods.iter().map(|period| {
        let title = format!("{}: {}", period.name, period.hours);
        let runs = if period.runs.is_empty() {
            view! { <p class="empty">"Nothing is run."</p> }.into_any()
        } else {
            table("What is run", &headings, &period.runs, ().into_any())
        };
        view! { <div class="period"><h4>{title}</h4>{runs}</div> }
    });
    view! { <div class="runs"><h3>"Runs"</h3>{periods.collect_view()}</div> }
}

/// What is bought, supplier by supplier.
#[component]
pub(crate) fn Purchases(planned: Arc<OrderPlanned>) -> impl IntoView {
    let headings = [
        ("Order in", false),
        ("Comes in", false),
        ("Slat stock", false),
        ("Packs", true),
        ("Slats", true),
        ("Price of a pack", true),
        ("Beside", true),
        ("Price", true),
        ("Certified", false),
    ];
    let suppliers = planned.sheet().map_or(&[][..], |sheet| &sheet.suppliers);
    let nothing = suppliers
        .is_empty()
        .then(|| view! { <p class="empty">"Nothing is bought."</p> });
    let suppliers = suppliers.iter().map(|supplier| {
        let [packs, price] = supplier.total.clone();
        let foot = view! {
            <tr>
                <th scope="row" colspan="3">"Together"</th>
                <td class="figure">{packs}</td>
                <td colspan="3"></td>
                <td class="figure strong">{price}</td>
                <td></td>
            </tr>
        };
        let table = table(
            "What is bought",
            &headings,
            &supplier.orders,
            foot.into_any(),
        );
        view! { <div class="supplier"><h4>{supplier.name.clone()}</h4>{table}</div> }
    });
    view! {
        <div class="purchases">
            <h3>"Purchase list"</h3>
            {nothing}
            {suppliers.collect_view()}
        </div>
    }
}

/// What is sawn in the works.
#[component]
pub(crate) fn Sawn(planned: Arc<OrderPlanned>) -> impl IntoView {
    let sawn = planned.sheet().map_or(&[][..], |sheet| &sheet.sawn);
    let headings = [
        ("Period", false),
        ("Slat stock", false),
        ("Usable slats", true),
    ];
    (!sawn.is_empty()).then(|| {
        let table = table("What is sawn", &headings, sawn, ().into_any());
        view! { <div class="sawn-lots"><h3>"Sawn in the works"</h3>{table}</div> }
    })
}

/// What it costs, kind by kind, drawn and as a table.
#[component]
pub(crate) fn Costs(planned: Arc<OrderPlanned>) -> impl IntoView {
    planned.sheet().map(|sheet| {
        let totals = PlanTotals::from(sheet.totals);
        let gross = |amount: f64| {
            let gross = totals.per_gross(amount);
            gross.map_or_else(|| figure::NO_FIGURE.to_owned(), figure::money_rounded)
        };
        let row = |label: &str, amount: f64| {
            let amounts = [figure::money_rounded(amount), gross(amount)];
            let mut cells = vec![label.to_owned()];
            cells.extend(amounts);
            cells
        };
        let rows: Vec<Cells> = totals
            .costs()
            .map(|cost| row(cost.label, cost.amount))
            .collect();
        let headings = [("Costs", false), ("In all", true), ("A gross", true)];
        let foot = body(&headings, &[row("All", totals.total)]);
        let table = table("Costs by kind", &headings, &rows, foot);
        view! {
            <div class="costs">
                <h3>"Costs"</h3>
                <div class="side">
                    <div>{chart(move |sheet| draw_costs(&totals, sheet))}</div>
                    {table}
                </div>
            </div>
        }
    })
}

/// What stands in the stores, drawn and as tables.
#[component]
pub(crate) fn Stores(planned: Arc<OrderPlanned>) -> impl IntoView {
    planned.sheet().map(|sheet| {
        let periods: Vec<String> = sheet
            .periods
            .iter()
            .map(|period| period.name.clone())
            .collect();
        let part = |title: &'static str, label: &'static str, stores: &[StoreSheet]| {
            let rows: Vec<StoreRow> = stores.iter().map(StoreSheet::row).collect();
            let periods = periods.clone();
            let chart = chart(move |sheet| draw_stores(&rows, &periods, sheet));
            view! {
                <div class="stores">
                    <h3>{title}</h3>
                    {chart}
                    {account(label, stores)}
                </div>
            }
        };
        view! {
            {part("Slats in store, usable ones", "Slats that come, go and stay", &sheet.slats)}
            {part("Pencils in store", "Pencils that come, go and stay", &sheet.pencils)}
        }
    })
}

/// What comes, goes and stays, kind by kind.
fn account(label: &'static str, stores: &[StoreSheet]) -> AnyView {
    let headings = [
        ("Of", false),
        ("Period", false),
        ("Comes", true),
        ("Goes", true),
        ("Kept for later", true),
        ("Over by then", true),
    ];
    let rows = stores.iter().flat_map(|store| {
        // Nothing came, went or stays in a period of which all cells but its name say so.
        let is_told = |cells: &&Cells| cells[1..].iter().any(|cell| cell != "0");
        store.rows.iter().filter(is_told).map(|cells| {
            let mut row = vec![store.name.clone()];
            row.extend(cells.iter().cloned());
            row
        })
    });
    let rows: Vec<Cells> = rows.collect();
    table(label, &headings, &rows, ().into_any())
}
