//! What is to be planned, as it was described.
//!
//! Whole numbers throughout, so that a plan can be recounted without rounding: pieces, hundredths of
//! the currency, hundredths for a thousand pieces (which is thousandths of a hundredth for one),
//! milliseconds, millionths.

use super::offer::Offer;
use super::stages::{MILLION, Materials, StageYields};

/// One pencil of the order book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PencilDemand {
    /// Whole good pencils due at the end of each period; 144 are a gross, 1 000 an M.
    pub due: Vec<u64>,
    /// Good pencils in the store before the first period. They serve what is due first.
    pub on_hand: u64,
    /// Cost of holding a thousand of those the plan makes from one period to the next, hundredths.
    pub holding: i64,
}

/// Slats sawn in the works.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OwnSawing {
    /// Cost of a thousand usable slats, hundredths of the currency.
    pub thousand_cost: i64,
    /// Most usable slats sawn in a period.
    pub most_slats: u64,
    /// Whether the wood is certified.
    pub certified: bool,
}

/// A kind of slat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StockLine {
    /// Usable slats in the store before the first period.
    pub on_hand: u64,
    /// Cost of holding a thousand from one period to the next, hundredths.
    pub holding: i64,
    /// Usable share of the slats that are bought, millionths.
    pub usable: u32,
    /// Volume of a slat, cubic millimetres.
    pub cubic_millimetres: u32,
    /// Slats sawn in the works, if they are.
    pub sawing: Option<OwnSawing>,
}

/// Pencils that a sandwich of a set-up gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Laid {
    /// Place of the pencil in the draft.
    pub pencil: usize,
    /// Leads laid for it in one sandwich.
    pub leads: u32,
    /// Share of them whose errors leave a good pencil, before the losses of the stages; millionths.
    pub good: u32,
}

/// A way to set up the line: a layout on a pair of slats.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineSetup {
    /// What lies in a sandwich; mostly one kind of pencil.
    pub laid: Vec<Laid>,
    /// Place of the stock of the bottom slat.
    pub bottom: usize,
    /// Place of the stock of the top slat.
    pub top: usize,
    /// Machine time of a sandwich, milliseconds.
    pub milliseconds: u32,
    /// Cost of changing over to it, in each period in which it runs; hundredths of the currency.
    pub changeover_cost: Vec<i64>,
    /// Machine time of changing over, seconds.
    pub changeover_seconds: u32,
    /// What the chips of a thousand sandwiches bring, hundredths of the currency.
    pub credit: i64,
}

/// The machines, taken as one line.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Machine {
    /// Cost of an hour, hundredths of the currency.
    pub hour_cost: i64,
    /// Seconds to be had in each period, where they are limited.
    pub seconds: Vec<Option<u64>>,
}

/// What is made as small as possible.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum PlanAim {
    /// All that is paid, thousandths of a hundredth of the currency.
    #[default]
    Cost,
    /// Volume of the slats bought and sawn, cubic millimetres.
    Timber,
    /// Change-overs.
    Changeovers,
}

impl PlanAim {
    /// Every aim.
    pub const ALL: [Self; 3] = [Self::Cost, Self::Timber, Self::Changeovers];
}

/// Limits on what a plan may come to, whatever the aim.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct AimLimits {
    /// Most that may be paid, hundredths of the currency.
    pub cost: Option<i64>,
    /// Most slats bought and sawn, cubic millimetres.
    pub cubic_millimetres: Option<i64>,
    /// Most change-overs.
    pub changeovers: Option<u64>,
}

/// What is to be planned, as it was described.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OrderPlanDraft {
    /// Number of periods.
    pub periods: usize,
    /// The order book.
    pub pencils: Vec<PencilDemand>,
    /// The slats.
    pub stocks: Vec<StockLine>,
    /// The ways to make pencils.
    pub setups: Vec<LineSetup>,
    /// What can be bought.
    pub offers: Vec<Offer>,
    /// The machines.
    pub machine: Machine,
    /// What each stage leaves.
    pub stages: StageYields,
    /// What leads, glue and coat cost.
    pub materials: Materials,
    /// Least certified share of the volume that is bought and sawn, millionths.
    pub least_certified: u32,
    /// Most pencils made by the plan in the store at the end of a period.
    pub most_pencils_stored: Option<u64>,
    /// Most slats in the store at the end of a period.
    pub most_slats_stored: Option<u64>,
    /// What is made small.
    pub aim: PlanAim,
    /// What a plan may come to.
    pub limits: AimLimits,
}

impl PencilDemand {
    /// Pencils due in each period, none on hand, held for nothing.
    #[must_use]
    pub fn due(due: &[u64]) -> Self {
        Self {
            due: due.to_vec(),
            on_hand: 0,
            holding: 0,
        }
    }
}

impl Default for StockLine {
    /// None on hand, held for nothing, all usable.
    fn default() -> Self {
        Self {
            on_hand: 0,
            holding: 0,
            usable: MILLION,
            cubic_millimetres: 0,
            sawing: None,
        }
    }
}
