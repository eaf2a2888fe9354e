//! An order plan as a page shows it: every cell is written here.

use solver::order_plan::OrderPlan;
use solver::{
    OrderJob, OrderReckoning, PeriodReckoning, PlannedRun, SlatOrder, StoreAccount, figure,
};

use crate::protocol::{Cells, PeriodSheet, PlanSheet, StoreSheet, SupplierSheet};

impl PlanSheet {
    /// A plan of a job, with the names of all.
    pub(super) fn of(job: &OrderJob, plan: &OrderPlan) -> Self {
        let reckoning = job.reckon(plan);
        let places = |stocks: Vec<usize>| stocks.into_iter().map(|stock| stock as u32).collect();
        Self {
            periods: reckoning.periods.iter().map(period).collect(),
            suppliers: suppliers(&reckoning),
            sawn: reckoning
                .sawn
                .iter()
                .map(|lot| {
                    vec![
                        lot.period.clone(),
                        lot.stock.clone(),
                        figure::count(lot.slats),
                    ]
                })
                .collect(),
            pencils: stores(&reckoning, &reckoning.pencils),
            slats: stores(&reckoning, &reckoning.slats),
            totals: reckoning.totals().into(),
            cost: plan.cost.total().into(),
            unbought: places(job.unbought(&plan.packs)),
            run: places(job.run_stocks(&plan.runs)),
            purchase_csv: reckoning.purchase_csv(),
        }
    }
}

fn period(period: &PeriodReckoning) -> PeriodSheet {
    let hours = figure::plain(period.hours, 2);
    PeriodSheet {
        name: period.name.clone(),
        runs: period.runs.iter().map(run).collect(),
        hours: period.hours_limit.map_or_else(
            || format!("{hours} machine hours"),
            |limit| format!("{hours} of {} machine hours", figure::plain(limit, 2)),
        ),
    }
}

fn run(run: &PlannedRun) -> Cells {
    let slats = if run.bottom == run.top {
        run.bottom.clone()
    } else {
        format!("{} over {}", run.top, run.bottom)
    };
    let set = run.set.clone();
    vec![
        run.pencil.clone(),
        slats,
        run.way.to_owned(),
        set.unwrap_or_else(|| "Made to measure".to_owned()),
        figure::count(u64::from(run.pencils_per_sandwich)),
        figure::count(run.sandwiches),
        figure::plain(run.good, 0),
        figure::plain(run.hours, 2),
    ]
}

fn suppliers(reckoning: &OrderReckoning) -> Vec<SupplierSheet> {
    let sheets = reckoning.suppliers.iter().map(|total| {
        let orders = reckoning.orders.iter();
        let orders = orders.filter(|order| order.supplier == total.supplier);
        SupplierSheet {
            name: total.supplier.clone(),
            orders: orders.map(order).collect(),
            total: [figure::count(total.packs), figure::money(total.price)],
        }
    });
    sheets.collect()
}

fn order(order: &SlatOrder) -> Cells {
    let later = order.comes.clone();
    let price = figure::money(order.pack_price);
    vec![
        order.ordered.clone(),
        later.unwrap_or_else(|| "After the last period".to_owned()),
        order.stock.clone(),
        figure::count(order.packs),
        figure::count(order.slats),
        match order.from_packs {
            0 | 1 => price,
            packs => format!("{price} from {}", figure::count(u64::from(packs))),
        },
        figure::money(order.order_cost),
        figure::money(order.price),
        if order.is_certified { "Yes" } else { "No" }.to_owned(),
    ]
}

fn stores(reckoning: &OrderReckoning, accounts: &[StoreAccount]) -> Vec<StoreSheet> {
    let sheet = |account: &StoreAccount| {
        let stands = account.stands();
        // What is over stays over, so its number is that of the chart.
        let rows = reckoning.periods.iter().enumerate().map(|(at, period)| {
            let of = |row: &[u64]| row.get(at).copied().unwrap_or(0);
            let [kept, over] = stands.get(at).copied().unwrap_or_default();
            let pieces = [of(&account.comes), of(&account.goes), kept, over];
            let cells = pieces.map(figure::count);
            [period.name.clone()].into_iter().chain(cells).collect()
        });
        let rows = rows.collect();
        let stands = stands.into_iter();
        StoreSheet {
            name: account.name.clone(),
            rows,
            stands: stands.map(|pair| pair.map(Into::into)).collect(),
        }
    };
    accounts.iter().map(sheet).collect()
}
