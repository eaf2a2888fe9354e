//! Everything the page and a worker say to each other.
//!
//! The types are the conversation's own. Numbers are `u32` or `f64`, which a browser's messages
//! carry as they are; amounts that can pass `u32` are [`Whole`] numbers.

mod cutters;
mod gain;
mod job;
mod measured;
mod orders;
mod outlook;
mod purchase;
mod ranking;
mod reply;
mod request;
mod sawing;
mod search;
mod threshold;
mod whole;
mod words;

pub use cutters::{CutterPlan, NewCutterSet, NewSetKind, ServedBarrel, ServingSet};
pub use gain::{GainRow, GainStepRow};
pub use job::{JobId, Progress};
pub use measured::{ChartLabel, Fact, LotChart, MeasuredList, MeasuredLot, SheetSizes, SizeWord};
pub use orders::{
    Cells, OrderEndWord, OrdersSoFar, PeriodSheet, PlanSheet, PlannedOrders, StoreSheet,
    SupplierSheet, TotalFigures,
};
pub use outlook::{Curve, CurvePoint, Expected, Halving, Outlook, Thrown};
pub use purchase::{Purchase, PurchaseList, RunLine, StockLine, Totals};
pub use ranking::{LeftOut, RankedRow, Ranking};
pub use reply::Reply;
pub use request::{MOST_SECONDS, Request, USUAL_SECONDS};
pub use sawing::{Cut, CutSection, Cuts, Sawn, SawnSoFar};
pub use search::{FoundRow, Searched};
pub use threshold::{ChangeLine, InputAddress, OwnerWord, ThresholdRow};
pub use whole::Whole;
pub use words::{AimWord, GoalWord, UnitWord};
