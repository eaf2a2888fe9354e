//! What to run, buy and saw in each period to fill an order book.

mod check;
mod clash;
mod data;
mod draft;
mod greedy;
mod levelling;
mod model;
mod neighbourhood;
mod offer;
mod outcome;
mod plan;
mod problem;
mod purchasing;
mod ranges;
mod rounding;
mod search;
mod stages;
#[cfg(test)]
mod tests;
mod verify;

pub use check::{
    MOST_LEADS, MOST_OFFERS, MOST_PACK_SLATS, MOST_PACKS, MOST_PENCIL_KINDS, MOST_PENCILS,
    MOST_PERIODS, MOST_PRICE, MOST_SETUPS, MOST_SLATS, MOST_STOCKS, MOST_TIERS,
};
pub use clash::{Clash, Wish};
pub use data::OrderPlanData;
pub use draft::{
    AimLimits, Laid, LineSetup, Machine, OrderPlanDraft, OwnSawing, PencilDemand, PlanAim,
    StockLine,
};
pub use offer::{Offer, PriceTier, Pricing};
pub use outcome::{OrderPlanLimits, OrderPlanOutcome, OrderPlanProgress};
pub use plan::{CostParts, OrderPlan};
pub use problem::{OrderPlanProblem, PeriodList, Priced};
pub use search::plan_orders;
pub use stages::{MILLION, Materials, StageYields};
pub use verify::{OrderPlanFault, verify};
