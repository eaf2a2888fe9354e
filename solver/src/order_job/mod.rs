//! The order plan of a project: the ways to make what is ordered, what is planned from them, and the
//! plan as those read it who buy and run.

mod account;
mod candidate;
mod clash;
mod csv;
mod job;
mod price;
mod reading;
mod reckoning;
mod slack;
#[cfg(test)]
mod tests;
mod totals;
mod wider;
mod worth;

pub use account::StoreAccount;
pub use candidate::LaidSetup;
pub use clash::ClashLine;
pub use job::OrderJob;
pub use price::PayingPrice;
pub use reading::{OrderAnswer, OrderEnd};
pub use reckoning::{
    CostLine, OrderReckoning, PeriodReckoning, PlannedRun, SawnLot, SlatOrder, SupplierTotal,
};
pub use slack::SlackLine;
pub use totals::{PlanTotals, compare_plans};
pub use wider::WiderSlats;
pub use worth::WorthLine;
