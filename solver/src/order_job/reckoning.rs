//! What a plan comes to: what is run, bought, sawn, stored and paid, with the names of all.

use super::account::StoreAccount;
use super::job::OrderJob;
use crate::order_plan::{CostParts, MILLION, OrderPlan};
use crate::quantity::Volume;
use crate::ranking::GROSS;
use crate::sequence::in_order;

/// What a plan comes to. Money is in hundredths of the currency, time in hours.
#[derive(Debug, Clone, PartialEq)]
pub struct OrderReckoning {
    /// Each period, with what is run in it.
    pub periods: Vec<PeriodReckoning>,
    /// What is bought, by the period of the order, then in the order of the offers.
    pub orders: Vec<SlatOrder>,
    /// What each supplier gets, in the order of the offers.
    pub suppliers: Vec<SupplierTotal>,
    /// What is sawn in the works, by period, then in the order of the stocks.
    pub sawn: Vec<SawnLot>,
    /// The pencils, in the order in which the book names them first.
    pub pencils: Vec<StoreAccount>,
    /// The slats that are bought, sawn, used or on hand, in the order of the project.
    pub slats: Vec<StoreAccount>,
    /// Costs by kind; what chips bring is below 0. They add up to the total.
    pub costs: [CostLine; 7],
    /// What all costs.
    pub total: f64,
    /// Gross of pencils due.
    pub gross: f64,
    /// The total over the gross due; none where nothing is due.
    pub cost_per_gross: Option<f64>,
    /// Wood of the slats that are bought and sawn.
    pub timber: Volume,
    /// Set-ups that run, counted in each period.
    pub changeovers: u64,
}

/// What is run in a period.
#[derive(Debug, Clone, PartialEq)]
pub struct PeriodReckoning {
    /// What it is called.
    pub name: String,
    /// What is run, in the order of the set-ups.
    pub runs: Vec<PlannedRun>,
    /// Hours that the machines run and are changed over.
    pub hours: f64,
    /// Hours to be had; none where they are not limited.
    pub hours_limit: Option<f64>,
}

/// What is run of one set-up in one period.
#[derive(Debug, Clone, PartialEq)]
pub struct PlannedRun {
    /// The set-up, by its place in [`OrderJob::setups`].
    pub setup: usize,
    /// What the pencil is called.
    pub pencil: String,
    /// What the stock below the glue plane is called.
    pub bottom: String,
    /// What the stock above the glue plane is called.
    pub top: String,
    /// The way round, in words.
    pub way: &'static str,
    /// What the cutter set is called; none where grooves lie as close as the land allows.
    pub set: Option<String>,
    /// Pencils of a sandwich.
    pub pencils_per_sandwich: u32,
    /// Good pencils to expect of a sandwich, after all stages.
    pub good_per_sandwich: f64,
    /// Sandwiches to glue.
    pub sandwiches: u64,
    /// Good pencils to expect.
    pub good: f64,
    /// Hours that the machines take, with changing over.
    pub hours: f64,
}

/// An order of slats.
#[derive(Debug, Clone, PartialEq)]
pub struct SlatOrder {
    /// The offer, by its place in the project.
    pub offer: usize,
    /// Who is ordered from.
    pub supplier: String,
    /// What the stock is called.
    pub stock: String,
    /// What the period of the order is called.
    pub ordered: String,
    /// What the period is called in which the slats come; none where that is after the last.
    pub comes: Option<String>,
    /// Packs.
    pub packs: u64,
    /// Slats in them.
    pub slats: u64,
    /// Packs from which the price of the last pack holds.
    pub from_packs: u32,
    /// Price of the last pack.
    pub pack_price: i64,
    /// What the order costs beside its packs.
    pub order_cost: i64,
    /// What it costs in all.
    pub price: i64,
    /// Whether the wood is certified.
    pub is_certified: bool,
}

/// What a supplier gets.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SupplierTotal {
    /// Who it is.
    pub supplier: String,
    /// Orders.
    pub orders: u64,
    /// Packs in them.
    pub packs: u64,
    /// What they cost.
    pub price: i64,
}

/// Slats sawn in the works in a period.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SawnLot {
    /// What the stock is called.
    pub stock: String,
    /// What the period is called.
    pub period: String,
    /// Usable slats.
    pub slats: u64,
}

/// What one kind of cost comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CostLine {
    /// The words for it.
    pub label: &'static str,
    /// What it comes to.
    pub amount: f64,
}

impl CostLine {
    /// The words for each kind of cost; what chips bring is below 0.
    pub const LABELS: [&'static str; 7] = [
        "Slats bought",
        "Slats sawn",
        "Leads, glue and coat",
        "Machine time",
        "Change-overs",
        "Stores",
        "Chips sold",
    ];
}

/// Thousandths of a hundredth as hundredths.
pub(super) fn hundredths(thousandths: i64) -> f64 {
    thousandths as f64 / 1000.0
}

impl OrderReckoning {
    /// Reckons a plan of this job.
    pub(super) fn of(job: &OrderJob, plan: &OrderPlan) -> Self {
        let orders = orders(job, plan);
        let due: u64 = job
            .data
            .pencils()
            .iter()
            .flat_map(|pencil| &pencil.due)
            .sum();
        let total = hundredths(plan.cost.total());
        Self {
            periods: (0..job.periods.len())
                .map(|period| PeriodReckoning::of(job, plan, period))
                .collect(),
            suppliers: suppliers(&orders),
            orders,
            sawn: sawn(job, plan),
            pencils: StoreAccount::of_pencils(job, plan),
            slats: StoreAccount::of_slats(job, plan),
            costs: costs(&plan.cost),
            total,
            gross: due as f64 / f64::from(GROSS),
            cost_per_gross: (due > 0).then(|| total * f64::from(GROSS) / due as f64),
            timber: Volume::cubic_millimetres(plan.cubic_millimetres as f64),
            changeovers: plan.changeovers,
        }
    }
}

impl PeriodReckoning {
    fn of(job: &OrderJob, plan: &OrderPlan, period: usize) -> Self {
        let runs: Vec<PlannedRun> = (0..job.setups.len())
            .filter_map(|setup| {
                let sandwiches = *plan.runs.get(setup)?.get(period)?;
                (sandwiches > 0).then(|| PlannedRun::of(job, setup, sandwiches))
            })
            .collect();
        let limit = job
            .data
            .draft()
            .machine
            .seconds
            .get(period)
            .copied()
            .flatten();
        Self {
            name: job.periods[period].clone(),
            hours: runs.iter().map(|run| run.hours).sum(),
            runs,
            hours_limit: limit.map(|seconds| seconds as f64 / 3600.0),
        }
    }
}

impl PlannedRun {
    fn of(job: &OrderJob, setup: usize, sandwiches: u64) -> Self {
        let laid = &job.setups[setup];
        let line = &job.data.setups()[setup];
        let good = (job.data.good_pencils(setup).iter())
            .map(|&(_, good)| good)
            .sum::<u64>();
        let good = good as f64 / f64::from(MILLION);
        let pencil = job.barrels.iter().position(|&barrel| barrel == laid.barrel);
        let milliseconds = f64::from(line.milliseconds) * sandwiches as f64;
        let seconds = milliseconds / 1000.0 + f64::from(line.changeover_seconds);
        Self {
            setup,
            pencil: pencil.map_or_else(String::new, |at| job.pencils[at].clone()),
            bottom: job.stocks[laid.bottom].clone(),
            top: job.stocks[laid.top].clone(),
            way: laid.seam.label(),
            set: laid.set.map(|set| job.sets[set].clone()),
            pencils_per_sandwich: laid.pencils,
            good_per_sandwich: good,
            sandwiches,
            good: good * sandwiches as f64,
            hours: seconds / 3600.0,
        }
    }
}

fn orders(job: &OrderJob, plan: &OrderPlan) -> Vec<SlatOrder> {
    let mut orders = Vec::new();
    for period in 0..job.periods.len() {
        for (place, offer) in job.data.offers().iter().enumerate() {
            let packs = plan.packs[place][period];
            // An order of no packs reaches no tier.
            let Some(tier) = offer.tier(packs).map(|tier| offer.tiers[tier]) else {
                continue;
            };
            orders.push(SlatOrder {
                offer: place,
                supplier: job.suppliers[place].clone(),
                stock: job.stocks[offer.stock].clone(),
                ordered: job.periods[period].clone(),
                comes: job.periods.get(period + offer.lead_periods).cloned(),
                packs,
                slats: packs * u64::from(offer.pack_slats),
                from_packs: tier.from_packs,
                pack_price: tier.pack_price,
                order_cost: offer.order_cost,
                price: offer.price(packs),
                is_certified: offer.certified,
            });
        }
    }
    orders
}

/// Sums by name; offers without one stay apart, as they are called by their numbers.
fn suppliers(orders: &[SlatOrder]) -> Vec<SupplierTotal> {
    let by_offer = in_order(orders.iter().collect(), |one: &&SlatOrder, other| {
        one.offer.cmp(&other.offer)
    });
    let mut totals: Vec<SupplierTotal> = Vec::new();
    for order in by_offer {
        let place = totals
            .iter()
            .position(|total| total.supplier == order.supplier);
        let place = place.unwrap_or_else(|| {
            totals.push(SupplierTotal {
                supplier: order.supplier.clone(),
                orders: 0,
                packs: 0,
                price: 0,
            });
            totals.len() - 1
        });
        let total = &mut totals[place];
        total.orders += 1;
        total.packs += order.packs;
        total.price += order.price;
    }
    totals
}

fn sawn(job: &OrderJob, plan: &OrderPlan) -> Vec<SawnLot> {
    let mut lots = Vec::new();
    for (period, name) in job.periods.iter().enumerate() {
        for (stock, row) in job.stocks.iter().zip(&plan.sawn) {
            if row[period] > 0 {
                lots.push(SawnLot {
                    stock: stock.clone(),
                    period: name.clone(),
                    slats: row[period],
                });
            }
        }
    }
    lots
}

fn costs(cost: &CostParts) -> [CostLine; 7] {
    let amounts = [
        cost.purchase,
        cost.sawing,
        cost.materials,
        cost.machine,
        cost.changeover,
        cost.holding,
        cost.credit.saturating_neg(),
    ];
    let mut kind = 0;
    amounts.map(|amount| {
        let label = CostLine::LABELS[kind];
        kind += 1;
        let amount = hundredths(amount);
        CostLine { label, amount }
    })
}
