//! A job, and how far it has come.

use serde::{Deserialize, Serialize};

use super::whole::Whole;

/// Tells one job from the others of the same worker.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct JobId(pub u32);

/// How far a job has come. Amounts of money in hundredths of the currency.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum Progress {
    /// Layouts that are laid out, or pairs of slats that are compared.
    Laid {
        /// So many are done.
        done: u32,
        /// So many there are.
        of: u32,
    },
    /// A first plan is made.
    FirstPlan {
        /// Its cost; `None` when the quick way fills not every order.
        cost: Option<Whole>,
    },
    /// No plan costs less than this.
    Bound {
        /// The bound.
        bound: Whole,
    },
    /// A better plan is found.
    BetterPlan {
        /// Its cost.
        cost: Whole,
    },
    /// The cost is settled; now fewer slats are sought.
    FewerSlats {
        /// The cost.
        cost: Whole,
    },
}
