//! A cutting plan as the saw shop reads it, and the bill of its planks: every sum is made here.

use super::data::SawingData;
use super::laid::LaidPlank;
use super::plan::SawingPlan;
use crate::sequence::{in_order, places_in_order};

/// A cutting plan, pattern by pattern, and its planks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SawingList {
    /// The patterns in the order in which they are sawn: the most used first, then by plank.
    pub cuts: Vec<CutLine>,
    /// The kinds of plank that are sawn, in their order.
    pub bill: Vec<BillLine>,
    /// Planks of all kinds.
    pub planks: u64,
    /// Price of all planks, hundredths of the currency.
    pub cost: i64,
}

/// One pattern.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutLine {
    /// Its place in the plan.
    pub cut: usize,
    /// Planks to saw like this.
    pub planks: u64,
    /// Planks of all kinds sawn when these are done.
    pub planks_so_far: u64,
    /// What each plank is sawn into, sections and strips in order of sawing.
    pub laid: LaidPlank,
    /// The kinds of blank that come of it, in their order. All others stand as they stood before.
    pub blanks: Vec<BlankLine>,
}

/// How far a kind of blank is when a pattern is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BlankLine {
    /// Which blank.
    pub blank: usize,
    /// Blanks that the planks of this pattern give.
    pub made: u64,
    /// Blanks made by this pattern and those before it.
    pub so_far: u64,
    /// Blanks wanted that are still to be made.
    pub to_make: u64,
}

/// Planks of one kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BillLine {
    /// Which plank.
    pub plank: usize,
    /// How many of them.
    pub planks: u64,
    /// Price of one, hundredths of the currency.
    pub price: i64,
    /// Price of them all, hundredths of the currency.
    pub cost: i64,
}

impl SawingList {
    /// The list of a plan; nothing where one of its patterns cannot be sawn from its plank (see
    /// [`CutPattern::laid`](super::CutPattern::laid)), or where a sum is more than can be counted.
    ///
    /// ```
    /// use solver::sawing::{CutPattern, SawingDraft, SawingList, SawingPlan, Section};
    /// let data = SawingDraft::along(100, 0, &[(45, 97), (36, 20)]).check().unwrap();
    /// let sections = |pieces: &[(usize, u64)]| -> Vec<(Section, u64)> {
    ///     pieces.iter().map(|&(blank, count)| (Section { blanks: vec![(blank, 1)] }, count)).collect()
    /// };
    /// let mixed = CutPattern { plank: 0, sections: sections(&[(1, 1), (0, 1)]) };
    /// let pairs = CutPattern { plank: 0, sections: sections(&[(0, 2)]) };
    /// let plan = SawingPlan { cuts: vec![(mixed, 20), (pairs, 39)], cost: 59 };
    /// let list = SawingList::of(&data, &plan).unwrap();
    /// assert_eq!((list.cuts[0].planks, list.cuts[0].blanks[0].to_make), (39, 19));
    /// // The longest section comes first.
    /// assert_eq!(list.cuts[1].laid.sections()[0].length(), 45);
    /// assert_eq!((list.planks, list.cost), (59, 59));
    /// ```
    #[must_use]
    pub fn of(data: &SawingData, plan: &SawingPlan) -> Option<Self> {
        let order = places_in_order(plan.cuts.len(), &|one, other| {
            let ((one, many), (other, more)) = (&plan.cuts[one], &plan.cuts[other]);
            more.cmp(many).then(one.plank.cmp(&other.plank))
        });
        let mut list = Self {
            cuts: Vec::new(),
            bill: Vec::new(),
            planks: 0,
            cost: 0,
        };
        let mut so_far = vec![0_u64; data.blanks().len()];
        for cut in order {
            let (pattern, planks) = &plan.cuts[cut];
            if *planks == 0 {
                continue;
            }
            let laid = pattern.laid(data)?;
            list.planks = list.planks.checked_add(*planks)?;
            list.charge(&laid, *planks)?;
            let mut blanks: Vec<BlankLine> = Vec::new();
            for (blank, so_far) in so_far.iter_mut().enumerate() {
                let made = made(&laid, blank)?.checked_mul(*planks)?;
                if made > 0 {
                    *so_far = so_far.checked_add(made)?;
                    blanks.push(BlankLine {
                        blank,
                        made,
                        so_far: *so_far,
                        to_make: data.blanks()[blank].demand.saturating_sub(*so_far),
                    });
                }
            }
            list.cuts.push(CutLine {
                cut,
                planks: *planks,
                planks_so_far: list.planks,
                laid,
                blanks,
            });
        }
        list.bill = in_order(list.bill, |one, other| one.plank.cmp(&other.plank));
        Some(list)
    }

    /// Puts planks on the bill.
    fn charge(&mut self, laid: &LaidPlank, planks: u64) -> Option<()> {
        let (plank, price) = (laid.plank(), laid.stock().price);
        let cost = price.checked_mul(i64::try_from(planks).ok()?)?;
        self.cost = self.cost.checked_add(cost)?;
        match self.bill.iter_mut().find(|line| line.plank == plank) {
            // Neither sum is greater than that of all planks, which was counted.
            Some(line) => {
                line.planks += planks;
                line.cost += cost;
            }
            None => self.bill.push(BillLine {
                plank,
                planks,
                price,
                cost,
            }),
        }
        Some(())
    }
}

/// Blanks of a kind that one plank gives.
fn made(laid: &LaidPlank, blank: usize) -> Option<u64> {
    let mut made = 0_u64;
    for section in laid.sections() {
        for strip in section.strips().iter().filter(|strip| strip.blank == blank) {
            made = made.checked_add(section.count().checked_mul(strip.pieces)?)?;
        }
    }
    Some(made)
}

#[cfg(test)]
mod tests;
