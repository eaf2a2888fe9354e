//! How many packs more a supplier would send than the plan takes.

use super::job::OrderJob;
use crate::figure;
use crate::order_plan::{MOST_PACKS, OrderPlan, PacksWorth, Worths};

/// What the limits of an offer that is ordered by leave.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SlackLine {
    /// What the offer is called.
    pub offer: String,
    /// Packs that the largest order is below the most of an order; none without that limit.
    pub left_of_order: Option<u64>,
    /// Packs that all orders are below the most of all; none without that limit.
    pub left_in_all: Option<u64>,
}

impl SlackLine {
    /// The offers that are ordered by and have a limit.
    pub(super) fn of(job: &OrderJob, plan: &OrderPlan, worths: &Worths) -> Vec<Self> {
        let orders = plan.packs.iter().zip(&worths.packs).enumerate();
        let ordered = orders.filter(|(_, (packs, _))| packs.iter().any(|&packs| packs > 0));
        let lines = ordered.map(|(place, (_, worth))| {
            let PacksWorth {
                left_of_order,
                left_in_all,
                ..
            } = *worth;
            let has_most = job.data().offers()[place].most_packs < MOST_PACKS;
            Self {
                offer: job.offer(place),
                left_of_order: has_most.then_some(left_of_order),
                left_in_all,
            }
        });
        let is_told = |line: &Self| line.left_of_order.is_some() || line.left_in_all.is_some();
        lines.filter(is_told).collect()
    }

    /// All of it in a sentence.
    ///
    /// ```
    /// use solver::SlackLine;
    /// let line = SlackLine {
    ///     offer: "Mill for 74 × 5".to_owned(), left_of_order: Some(0), left_in_all: Some(12),
    /// };
    /// assert_eq!(
    ///     line.sentence(),
    ///     "Mill for 74 × 5: the largest order is as large as it may be; 12 packs less than may be had in all"
    /// );
    /// ```
    #[must_use]
    pub fn sentence(&self) -> String {
        let mut parts = Vec::new();
        if let Some(left) = self.left_of_order {
            parts.push(match left {
                0 => "the largest order is as large as it may be".to_owned(),
                left => format!("the largest order is {} below the most", packs(left)),
            });
        }
        if let Some(left) = self.left_in_all {
            parts.push(match left {
                0 => "all is taken that may be had".to_owned(),
                left => format!("{} less than may be had in all", packs(left)),
            });
        }
        format!("{}: {}", self.offer, parts.join("; "))
    }
}

fn packs(packs: u64) -> String {
    match packs {
        1 => "1 pack".to_owned(),
        packs => format!("{} packs", figure::count(packs)),
    }
}
