//! The order plan of a project: the ways to make what is ordered, what is planned from them, and the
//! plan as those read it who buy and run.

mod account;
mod candidate;
mod clash;
mod csv;
mod job;
mod reading;
mod reckoning;
#[cfg(test)]
mod tests;
mod worth;

pub use account::StoreAccount;
pub use candidate::LaidSetup;
pub use clash::ClashLine;
pub use job::OrderJob;
pub use reading::{OrderAnswer, OrderEnd};
pub use reckoning::{
    CostLine, OrderReckoning, PeriodReckoning, PlannedRun, SawnLot, SlatOrder, SupplierTotal,
};
pub use worth::WorthLine;
