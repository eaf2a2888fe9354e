//! What `orders` prints.

use schemars::JsonSchema;
use serde::Serialize;
use solver::order_plan::PlanAim;
use solver::{
    ClashLine, LengthUnit, OrderAnswer, OrderEnd, OrderReckoning, PeriodReckoning, PlannedRun,
    SlatOrder, StoreAccount,
};

use crate::orders::Planned;

/// What `slatwright orders` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct OrdersDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-orders"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = super::VERSION))]
    version: u32,
    /// What the project is called.
    project: String,
    /// How far the search came.
    outcome: OutcomeWord,
    /// What is made small; values are counted in it.
    aim: AimWord,
    /// What the plan comes to, in thousandths of a hundredth of the currency, cubic millimetres, or
    /// change-overs; `null` without a plan.
    value: Option<i64>,
    /// No plan comes to less, in the same units; `null` where there is no plan.
    bound: Option<i64>,
    /// What could be saved at most, over the value, 0 to 1; `null` without a plan.
    gap: Option<f64>,
    /// What cannot be kept together; empty but where there is no plan.
    clashes: Vec<ClashPart>,
    /// Layouts that the line could be set up for.
    setups: usize,
    /// The plan; `null` where none was found.
    plan: Option<PlanPart>,
}

/// How far the search came.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum OutcomeWord {
    /// No plan is better.
    Proved,
    /// A better plan is not ruled out.
    WithinGap,
    /// There is no plan.
    NoPlan,
    /// No plan was found; there may be one.
    NoneFound,
    /// The plan did not stand its recount.
    Fault,
}

/// What is made small.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum AimWord {
    /// All that is paid.
    Cost,
    /// Wood of the slats bought and sawn.
    Timber,
    /// Change-overs.
    Changeovers,
}

/// A demand or limit that cannot be kept with the others.
#[derive(Debug, Serialize, JsonSchema)]
struct ClashPart {
    /// What it is.
    wish: String,
    /// What it is set to: pencils, seconds, packs, slats, millionths, hundredths of the currency, cubic
    /// millimetres or change-overs.
    given: u64,
    /// What it would have to be, with all else as it is; `null` where to change it alone is not enough.
    needed: Option<u64>,
    /// All of it in a sentence.
    sentence: String,
}

/// A plan.
#[derive(Debug, Serialize, JsonSchema)]
struct PlanPart {
    /// The periods, with what is run in them.
    periods: Vec<PeriodPart>,
    /// What is bought.
    purchases: Vec<PurchasePart>,
    /// What each supplier gets.
    suppliers: Vec<SupplierPart>,
    /// What is sawn in the works.
    sawn: Vec<SawnPart>,
    /// Good pencils, what comes and goes of each.
    pencils: Vec<AccountPart>,
    /// Usable slats, what comes and goes of each.
    slats: Vec<AccountPart>,
    /// Costs by kind, which add up to the total.
    costs: Vec<CostPart>,
    /// What all costs, in hundredths of the currency.
    total_hundredths: f64,
    /// The total over the gross due; `null` where nothing is due.
    per_gross_hundredths: Option<f64>,
    /// Wood of the slats bought and sawn, cubic millimetres.
    timber_mm3: f64,
    /// Set-ups that run, counted in each period.
    changeovers: u64,
    /// What small changes would save, with set-ups, orders and tiers as they are.
    worths: Vec<WorthPart>,
    /// What the limits of offers that are ordered by leave.
    slack: Vec<SlackPart>,
}

/// What the limits of an offer leave.
#[derive(Debug, Serialize, JsonSchema)]
struct SlackPart {
    /// What the offer is called.
    offer: String,
    /// Packs that the largest order is below the most of an order; `null` without that limit.
    left_of_order: Option<u64>,
    /// Packs that all orders are below the most of all; `null` without that limit.
    left_in_all: Option<u64>,
}

/// A period.
#[derive(Debug, Serialize, JsonSchema)]
struct PeriodPart {
    /// What it is called.
    name: String,
    /// What is run.
    runs: Vec<RunPart>,
    /// Hours that the machines run and are changed over.
    machine_hours: f64,
    /// Hours to be had; `null` for as many as needed.
    machine_hours_limit: Option<f64>,
}

/// What is run of one set-up.
#[derive(Debug, Serialize, JsonSchema)]
struct RunPart {
    /// What the pencil is called.
    pencil: String,
    /// The stock below the glue plane.
    bottom: String,
    /// The stock above the glue plane.
    top: String,
    /// The way round.
    way: &'static str,
    /// The cutter set; `null` where no owned one serves the pencil.
    cutter_set: Option<String>,
    /// Pencils of a sandwich.
    pencils_per_sandwich: u32,
    /// Good pencils to expect of a sandwich.
    good_per_sandwich: f64,
    /// Sandwiches to glue.
    sandwiches: u64,
    /// Good pencils to expect.
    good: f64,
    /// Hours of the machines, with changing over.
    machine_hours: f64,
}

/// An order of slats.
#[derive(Debug, Serialize, JsonSchema)]
struct PurchasePart {
    /// The `id` of the offer in the project file.
    offer: u32,
    /// Who is ordered from.
    supplier: String,
    /// The slat stock.
    stock: String,
    /// The period of the order.
    ordered: String,
    /// The period in which the slats come; `null` where that is after the last.
    comes: Option<String>,
    /// Packs.
    packs: u64,
    /// Slats in them.
    slats: u64,
    /// Packs from which the price of the last pack holds.
    from_packs: u32,
    /// Price of the last pack, in hundredths of the currency.
    pack_price_hundredths: i64,
    /// What the order costs beside its packs, in hundredths of the currency.
    order_cost_hundredths: i64,
    /// What it costs in all, in hundredths of the currency.
    price_hundredths: i64,
    /// Whether the wood is certified.
    certified: bool,
}

/// What a supplier gets.
#[derive(Debug, Serialize, JsonSchema)]
struct SupplierPart {
    /// Who it is.
    supplier: String,
    /// Orders.
    orders: u64,
    /// Packs in them.
    packs: u64,
    /// What they cost, in hundredths of the currency.
    price_hundredths: i64,
}

/// Slats sawn in the works.
#[derive(Debug, Serialize, JsonSchema)]
struct SawnPart {
    /// The slat stock.
    stock: String,
    /// The period.
    period: String,
    /// Usable slats.
    slats: u64,
}

/// What comes and goes, period by period.
#[derive(Debug, Serialize, JsonSchema)]
struct AccountPart {
    /// What it is called.
    name: String,
    /// On hand before the first period.
    on_hand: u64,
    /// What comes: pencils made; slats bought and sawn.
    comes: Vec<u64>,
    /// What goes: pencils due; slats used.
    goes: Vec<u64>,
    /// What is kept for later periods.
    kept: Vec<u64>,
    /// What the plan has no use for from then on.
    spare: Vec<u64>,
}

/// A kind of cost.
#[derive(Debug, Serialize, JsonSchema)]
struct CostPart {
    /// What it is of.
    kind: &'static str,
    /// What it comes to, in hundredths of the currency.
    hundredths: f64,
}

/// What a small change would save.
#[derive(Debug, Serialize, JsonSchema)]
struct WorthPart {
    /// The change.
    change: String,
    /// What it would save, in the units of the value.
    saves: i64,
}

impl From<&Planned<'_>> for OrdersDocument {
    fn from(planned: &Planned<'_>) -> Self {
        let answer = planned.answer.as_ref().ok();
        Self {
            format: "slatwright-orders",
            version: super::VERSION,
            project: planned.project.to_owned(),
            outcome: match answer.map(|answer| answer.end) {
                Some(OrderEnd::Proved) => OutcomeWord::Proved,
                Some(OrderEnd::WithinGap) => OutcomeWord::WithinGap,
                Some(OrderEnd::NoPlan) => OutcomeWord::NoPlan,
                Some(OrderEnd::NoneFound) => OutcomeWord::NoneFound,
                None => OutcomeWord::Fault,
            },
            aim: match planned.job.data().aim() {
                PlanAim::Cost => AimWord::Cost,
                PlanAim::Timber => AimWord::Timber,
                PlanAim::Changeovers => AimWord::Changeovers,
            },
            value: answer.and_then(|answer| answer.value),
            bound: answer.and_then(|answer| answer.bound),
            gap: answer.and_then(|answer| answer.gap),
            clashes: answer.map_or_else(Vec::new, |answer| {
                answer.clashes.iter().map(Into::into).collect()
            }),
            setups: planned.job.setups().len(),
            plan: answer.and_then(|answer| {
                let reckoning = answer.reckoning.as_ref()?;
                Some(PlanPart::of(planned, answer, reckoning))
            }),
        }
    }
}

impl From<&ClashLine> for ClashPart {
    fn from(clash: &ClashLine) -> Self {
        Self {
            wish: clash.wish().to_owned(),
            given: clash.given(),
            needed: clash.needed(),
            sentence: clash.sentence(LengthUnit::Millimetre),
        }
    }
}

impl PlanPart {
    fn of(planned: &Planned<'_>, answer: &OrderAnswer, reckoning: &OrderReckoning) -> Self {
        let purchase = |order: &SlatOrder| PurchasePart {
            offer: planned.offers.get(order.offer).map_or(0, |id| id.0),
            supplier: order.supplier.clone(),
            stock: order.stock.clone(),
            ordered: order.ordered.clone(),
            comes: order.comes.clone(),
            packs: order.packs,
            slats: order.slats,
            from_packs: order.from_packs,
            pack_price_hundredths: order.pack_price,
            order_cost_hundredths: order.order_cost,
            price_hundredths: order.price,
            certified: order.is_certified,
        };
        Self {
            periods: reckoning.periods.iter().map(Into::into).collect(),
            purchases: reckoning.orders.iter().map(purchase).collect(),
            suppliers: (reckoning.suppliers.iter())
                .map(|total| SupplierPart {
                    supplier: total.supplier.clone(),
                    orders: total.orders,
                    packs: total.packs,
                    price_hundredths: total.price,
                })
                .collect(),
            sawn: (reckoning.sawn.iter())
                .map(|lot| SawnPart {
                    stock: lot.stock.clone(),
                    period: lot.period.clone(),
                    slats: lot.slats,
                })
                .collect(),
            pencils: reckoning.pencils.iter().map(Into::into).collect(),
            slats: reckoning.slats.iter().map(Into::into).collect(),
            costs: (reckoning.costs.iter())
                .map(|cost| CostPart {
                    kind: cost.label,
                    hundredths: cost.amount,
                })
                .collect(),
            total_hundredths: reckoning.total,
            per_gross_hundredths: reckoning.cost_per_gross,
            timber_mm3: reckoning.timber.in_cubic_millimetres(),
            changeovers: reckoning.changeovers,
            worths: (answer.worths.iter())
                .map(|worth| WorthPart {
                    change: worth.change.clone(),
                    saves: worth.saves,
                })
                .collect(),
            slack: (answer.slack.iter())
                .map(|line| SlackPart {
                    offer: line.offer.clone(),
                    left_of_order: line.left_of_order,
                    left_in_all: line.left_in_all,
                })
                .collect(),
        }
    }
}

impl From<&PeriodReckoning> for PeriodPart {
    fn from(period: &PeriodReckoning) -> Self {
        Self {
            name: period.name.clone(),
            runs: period.runs.iter().map(Into::into).collect(),
            machine_hours: period.hours,
            machine_hours_limit: period.hours_limit,
        }
    }
}

impl From<&PlannedRun> for RunPart {
    fn from(run: &PlannedRun) -> Self {
        Self {
            pencil: run.pencil.clone(),
            bottom: run.bottom.clone(),
            top: run.top.clone(),
            way: run.way,
            cutter_set: run.set.clone(),
            pencils_per_sandwich: run.pencils_per_sandwich,
            good_per_sandwich: run.good_per_sandwich,
            sandwiches: run.sandwiches,
            good: run.good,
            machine_hours: run.hours,
        }
    }
}

impl From<&StoreAccount> for AccountPart {
    fn from(account: &StoreAccount) -> Self {
        Self {
            name: account.name.clone(),
            on_hand: account.on_hand,
            comes: account.comes.clone(),
            goes: account.goes.clone(),
            kept: account.kept.clone(),
            spare: account.spare.clone(),
        }
    }
}
