//! An order plan: what is run, bought, sawn, stored and paid, as a page shows it.

use serde::{Deserialize, Serialize};
use solver::{OrderEnd, PlanTotals, StoreRow, Volume};

use super::whole::Whole;
use crate::project_file::AimOfPlanWord;

/// How far a search for an order plan came. The cases never stand for each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum OrderEndWord {
    /// No plan is better.
    Proved,
    /// A better plan is not ruled out.
    WithinGap,
    /// There is no plan.
    NoPlan,
    /// The limits were reached before a plan was found; there may be one.
    NoneFound,
}

impl From<OrderEnd> for OrderEndWord {
    fn from(end: OrderEnd) -> Self {
        match end {
            OrderEnd::Proved => Self::Proved,
            OrderEnd::WithinGap => Self::WithinGap,
            OrderEnd::NoPlan => Self::NoPlan,
            OrderEnd::NoneFound => Self::NoneFound,
        }
    }
}

/// What came out of planning orders. Amounts as the aim counts them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlannedOrders {
    /// How far the search came.
    pub end: OrderEndWord,
    /// What is made small.
    pub aim: AimOfPlanWord,
    /// What the plan comes to.
    pub value: Option<Whole>,
    /// No plan comes to less.
    pub bound: Option<Whole>,
    /// The plan.
    pub sheet: Option<PlanSheet>,
    /// What small changes would save, in sentences.
    pub worths: Vec<String>,
    /// What the limits of suppliers leave, in sentences.
    pub slack: Vec<String>,
    /// What clashes where there is no plan, in sentences.
    pub clashes: Vec<String>,
}

/// How far the search has come.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OrdersSoFar {
    /// What is made small.
    pub aim: AimOfPlanWord,
    /// No plan comes to less; `None` while nothing is known.
    pub bound: Option<Whole>,
    /// What the best plan comes to.
    pub value: Option<Whole>,
    /// Relaxations and branches so far.
    pub steps: Whole,
    /// The best plan, where it is better than the one told before.
    pub better: Option<PlanSheet>,
}

/// The cells of a row of a table, as they are shown.
pub type Cells = Vec<String>;

/// A plan as it is read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanSheet {
    /// Each period, with what is run in it.
    pub periods: Vec<PeriodSheet>,
    /// Each supplier, with what is bought.
    pub suppliers: Vec<SupplierSheet>,
    /// What is sawn: period, stock, usable slats.
    pub sawn: Vec<Cells>,
    /// Pencils that come, go and stay.
    pub pencils: Vec<StoreSheet>,
    /// Slats that come, go and stay.
    pub slats: Vec<StoreSheet>,
    /// What it comes to.
    pub totals: TotalFigures,
    /// What it costs, thousandths of a hundredth of the currency.
    pub cost: Whole,
    /// Stocks that are offered and not bought, by their places in the project.
    pub unbought: Vec<u32>,
    /// Stocks that are run, by their places.
    pub run: Vec<u32>,
    /// The purchase list for a spreadsheet.
    pub purchase_csv: String,
}

/// A period.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PeriodSheet {
    /// What it is called.
    pub name: String,
    /// Pencil, slats, way round, cutter set, pencils of a sandwich, sandwiches, good pencils, hours.
    pub runs: Vec<Cells>,
    /// Hours taken, of those to be had where they are limited.
    pub hours: String,
}

/// A supplier.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SupplierSheet {
    /// Who it is.
    pub name: String,
    /// Order in, comes in, stock, packs, slats, price of the last pack with the packs it holds from,
    /// beside the packs, price, certified.
    pub orders: Vec<Cells>,
    /// Packs and price in all.
    pub total: [String; 2],
}

/// One kind of slat or pencil in the store.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StoreSheet {
    /// What it is called.
    pub name: String,
    /// By period: comes, goes, kept for later, over.
    pub rows: Vec<Cells>,
    /// Kept and over at the end of each period.
    pub stands: Vec<[Whole; 2]>,
}

/// What a plan comes to: see [`PlanTotals`].
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct TotalFigures {
    total: f64,
    gross: f64,
    costs: [f64; 7],
    timber_mm3: f64,
    sandwiches: Whole,
    hours: f64,
    changeovers: Whole,
    packs: Whole,
    sawn: Whole,
}

impl From<PlanTotals> for TotalFigures {
    fn from(totals: PlanTotals) -> Self {
        Self {
            total: totals.total,
            gross: totals.gross,
            costs: totals.costs,
            timber_mm3: totals.timber.in_cubic_millimetres(),
            sandwiches: totals.sandwiches.into(),
            hours: totals.hours,
            changeovers: totals.changeovers.into(),
            packs: totals.packs.into(),
            sawn: totals.sawn.into(),
        }
    }
}

impl From<TotalFigures> for PlanTotals {
    fn from(figures: TotalFigures) -> Self {
        Self {
            total: figures.total,
            gross: figures.gross,
            costs: figures.costs,
            timber: Volume::cubic_millimetres(figures.timber_mm3),
            sandwiches: figures.sandwiches.pieces(),
            hours: figures.hours,
            changeovers: figures.changeovers.pieces(),
            packs: figures.packs.pieces(),
            sawn: figures.sawn.pieces(),
        }
    }
}

impl StoreSheet {
    /// What stands in the store, to be drawn.
    #[must_use]
    pub fn row(&self) -> StoreRow {
        let stands = self.stands.iter();
        StoreRow {
            name: self.name.clone(),
            stands: stands.map(|pair| pair.map(Whole::pieces)).collect(),
        }
    }
}
