//! What comes out: the plan, how good it is, or why there is none.

use std::time::Duration;

use super::data::PurchaseData;

/// Packs to buy and sandwiches to run.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PurchasePlan {
    /// `runs[order][stock]`: sandwiches of that stock glued for that order.
    pub runs: Vec<Vec<u64>>,
    /// Packs to buy of each stock.
    pub packs: Vec<u64>,
    /// Price of all packs, in hundredths of the currency.
    pub cost: i64,
    /// Slats the runs take, two a sandwich; the rest of the last pack is left over.
    pub slats_used: u64,
}

impl PurchasePlan {
    /// The plan that makes these runs with the fewest packs that give their slats.
    pub(super) fn for_runs(data: &PurchaseData, runs: Vec<Vec<u64>>) -> Self {
        let mut plan = Self {
            runs,
            packs: Vec::new(),
            cost: 0,
            slats_used: 0,
        };
        for (stock, slats) in data.stocks().iter().enumerate() {
            let sandwiches = plan.runs.iter().map(|row| row[stock]).sum();
            let packs = data.packs_for(stock, sandwiches);
            plan.packs.push(packs);
            plan.slats_used += 2 * sandwiches;
            // At most 64 stocks of 2·10⁸ useful packs at 10⁸ each: below 2⁶³.
            plan.cost += slats.pack_price * packs.cast_signed();
        }
        plan
    }

    /// What is compared between plans: cost, then slats, then how late in the list the stocks
    /// stand, then the runs themselves.
    pub(super) fn rank(&self) -> (i64, u64, u64, std::cmp::Reverse<&[Vec<u64>]>) {
        let lateness = |row: &Vec<u64>| {
            row.iter()
                .zip(0_u64..)
                .map(|(&run, stock)| run * stock)
                .sum::<u64>()
        };
        let lateness = self.runs.iter().map(lateness).sum();
        (
            self.cost,
            self.slats_used,
            lateness,
            std::cmp::Reverse(&self.runs),
        )
    }
}

/// How far the search came. The four cases never stand for each other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PurchaseOutcome {
    /// No plan costs less.
    Proved {
        /// The cheapest plan.
        plan: PurchasePlan,
        /// Whether no plan of this cost takes fewer slats, as far as the search could prove.
        fewest_slats: bool,
    },
    /// A plan that can be carried out; a cheaper one is not ruled out.
    WithinGap {
        /// The cheapest plan found.
        plan: PurchasePlan,
        /// No plan costs less than this, in hundredths of the currency.
        bound: i64,
    },
    /// The limits were reached before any plan was found; there may be one.
    NoneFound {
        /// No plan costs less than this, in hundredths of the currency.
        bound: i64,
    },
    /// No plan fills the book, for these reasons.
    Impossible {
        /// Every order that fails alone; only when none does, how the orders compete.
        obstacles: Vec<Obstacle>,
    },
}

/// Why the book cannot be filled. Orders are counted from 0 in the fields and from 1 in the
/// messages.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Obstacle {
    /// The pencil cannot be made from any stock.
    #[error("order {} cannot be made from any slat stock", order + 1)]
    NoStock {
        /// The order.
        order: usize,
    },
    /// Even with all slats to itself the order is not filled.
    #[error("order {} is short by {short} pencils: all slats to be had give {most}", order + 1)]
    TooFewSlats {
        /// The order.
        order: usize,
        /// Most pencils of this order that all slats within the limits give.
        most: u64,
        /// Pencils missing.
        short: u64,
    },
    /// Each order could be filled alone, but they share the slats.
    #[error("the orders share too few slats: at least {at_least} pencils will be missing")]
    Competing {
        /// Pencils missing of each order when the slats are shared as well as was found.
        short: Vec<u64>,
        /// No way of sharing leaves fewer pencils missing in all; equal to the sum of `short`
        /// when that sharing is proved best.
        at_least: u64,
    },
}

/// When the search gives up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PurchaseLimits {
    /// Time spent in the solver; `None` leaves it to `nodes`. The answer then depends on the
    /// machine.
    pub time: Option<Duration>,
    /// Branches examined in all. The same number gives the same answer in every run.
    pub nodes: u64,
}

impl Default for PurchaseLimits {
    /// No time limit and 20 000 branches.
    fn default() -> Self {
        Self {
            time: None,
            nodes: 20_000,
        }
    }
}

/// What the search reports on its way. Costs and bounds in hundredths of the currency.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Progress {
    /// The quick first plan.
    FirstPlan {
        /// Its cost; `None` when the quick way fills not every order.
        cost: Option<i64>,
    },
    /// The lower bound as it stands.
    Bound {
        /// No plan costs less.
        bound: i64,
        /// Branches examined so far.
        nodes: u64,
    },
    /// A better plan in whole sandwiches.
    BetterPlan {
        /// Its cost.
        cost: i64,
    },
    /// The cost is settled; now fewer slats are sought at this cost.
    FewerSlats {
        /// The cost.
        cost: i64,
    },
}
