//! What a plan comes to: blanks by kind, and what is taken off the price of the planks.

use crate::sawing::{CutPattern, SawingData, SawingPlan};

/// What a plan comes to, beside its [`SawingList`](crate::sawing::SawingList) and its
/// [`SawingBalance`](crate::sawing::SawingBalance).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SawnReckoning {
    /// Every kind of blank, in their order.
    pub blanks: Vec<SawnBlank>,
    /// Worth of the offcuts that can be used again, in hundredths of the currency; 0 where the aim is
    /// not the cost.
    pub offcuts: i64,
    /// Worth of the blanks beyond those wanted, in hundredths; 0 where the aim is not the cost.
    pub over: i64,
    /// Blanks missing, of all kinds.
    pub short: u64,
}

/// How many blanks come of a kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SawnBlank {
    /// Blanks wanted.
    pub wanted: u64,
    /// Blanks that come of the plan.
    pub made: u64,
    /// Of these, beyond those wanted.
    pub over: u64,
    /// Missing.
    pub short: u64,
}

impl SawnReckoning {
    /// Reckons a plan of these data.
    ///
    /// ```
    /// use solver::SawnReckoning;
    /// use solver::sawing::{CutPattern, SawingDraft, SawingPlan, Section};
    /// let data = SawingDraft::along(100, 0, &[(45, 5), (9, 3)]).check().unwrap();
    /// let sections = vec![(Section { blanks: vec![(0, 1)] }, 2)];
    /// let plan = SawingPlan { cuts: vec![(CutPattern { plank: 0, sections }, 3)], cost: 3 };
    /// let reckoning = SawnReckoning::of(&data, &plan);
    /// // Three planks with two pieces of 45 each: six for five, and nothing of 9.
    /// assert_eq!((reckoning.blanks[0].over, reckoning.short), (1, 3));
    /// ```
    #[must_use]
    pub fn of(data: &SawingData, plan: &SawingPlan) -> Self {
        let made = plan.made(data).into_iter();
        let blanks: Vec<SawnBlank> = (data.blanks().iter().zip(made))
            .map(|(order, made)| SawnBlank {
                wanted: order.demand,
                made,
                over: made.saturating_sub(order.demand),
                short: order.demand.saturating_sub(made),
            })
            .collect();
        let over = |(line, blank): (&SawnBlank, usize)| {
            let (worth, most) = data.over_worth(blank);
            worth * line.over.min(most).cast_signed()
        };
        let offcuts = |(pattern, planks): &(CutPattern, u64)| {
            data.offcut_worth(pattern.offcut(data)) * planks.cast_signed()
        };
        Self {
            offcuts: plan.cuts.iter().map(offcuts).sum(),
            over: blanks.iter().zip(0..).map(over).sum(),
            short: blanks.iter().map(|line| line.short).sum(),
            blanks,
        }
    }

    /// What could be saved at most, over what a plan comes to: (cost − bound) / cost; above 1 where
    /// the bound lies below 0, and nothing for a plan that comes to nothing or less.
    ///
    /// ```
    /// use solver::SawnReckoning;
    /// assert_eq!(SawnReckoning::gap(1_250, 1_000), Some(0.2));
    /// assert_eq!(SawnReckoning::gap(0, -10), None);
    /// ```
    #[must_use]
    pub fn gap(cost: i64, bound: i64) -> Option<f64> {
        (cost > 0).then(|| cost.saturating_sub(bound).max(0) as f64 / cost as f64)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sawing::{
        BlankOrder, Dimensions, OffcutWorth, PlankStock, SawingAim, SawingDraft, SawingLimits,
        SawingList, SawingOutcome, Section, saw,
    };

    fn size(length: i64, width: i64, thickness: i64) -> Dimensions {
        Dimensions {
            length,
            width,
            thickness,
        }
    }

    /// Planks 1 m × 100 mm × 80 mm for 12.00; blanks 300 × 75 × 9 and 200 × 75 × 5 mm.
    fn data(demand: [u64; 2], aim: SawingAim) -> SawingData {
        let blank = |length, thickness, demand| BlankOrder {
            size: size(length, 75_000, thickness),
            demand,
            over_worth: 10,
            most_over: 3,
        };
        let draft = SawingDraft {
            planks: vec![PlankStock {
                size: size(1_000_000, 100_000, 80_000),
                end_trim: 0,
                edge_trim: 0,
                price: 1_200,
                on_hand: None,
            }],
            blanks: vec![
                blank(300_000, 9_000, demand[0]),
                blank(200_000, 5_000, demand[1]),
            ],
            crosscut_kerf: 4_000,
            rip_kerf: 1_000,
            offcuts: Some(OffcutWorth {
                shortest: 50_000,
                metre: 100,
            }),
            aim,
        };
        draft.check().unwrap()
    }

    fn pattern(sections: &[(usize, u64, u64)]) -> CutPattern {
        let sections = sections.iter().map(|&(blank, pieces, count)| {
            let blanks = vec![(blank, pieces)];
            (Section { blanks }, count)
        });
        CutPattern {
            plank: 0,
            sections: sections.collect(),
        }
    }

    /// One plank of three sections with ten blanks of the first kind each, and two planks of two such
    /// and one with sixteen of the second.
    fn plan() -> SawingPlan {
        let cuts = vec![
            // 3 · (300 + 4) = 912 of 1000: 88 mm are left, worth 0.08; 30 blanks.
            (pattern(&[(0, 10, 3)]), 1),
            // 2 · 304 + 204 = 812: 188 mm are left, worth 0.18; 20 and 16 blanks.
            (pattern(&[(0, 10, 2), (1, 16, 1)]), 2),
        ];
        SawingPlan { cuts, cost: 3_506 }
    }

    #[test]
    fn a_plan_that_was_reckoned_by_hand() {
        let reckoning = SawnReckoning::of(&data([25, 30], SawingAim::Cost), &plan());
        let [first, second] = [reckoning.blanks[0], reckoning.blanks[1]];
        assert_eq!((first.made, first.over, first.short), (70, 45, 0));
        assert_eq!((second.made, second.over), (32, 2));
        // 8 + 2 · 18 hundredths; of 45 and 2 beyond, 3 and 2 are worth 10 each.
        assert_eq!((reckoning.offcuts, reckoning.over), (44, 50));
    }

    #[test]
    fn where_the_aim_is_not_the_cost_nothing_is_taken_off() {
        let reckoning = SawnReckoning::of(&data([25, 30], SawingAim::Planks), &plan());
        assert_eq!((reckoning.offcuts, reckoning.over), (0, 0));
    }

    #[test]
    fn what_is_missing_is_told_by_kind() {
        let reckoning = SawnReckoning::of(&data([100, 32], SawingAim::Cost), &plan());
        let short: Vec<u64> = reckoning.blanks.iter().map(|line| line.short).collect();
        assert_eq!((short, reckoning.short), (vec![30, 0], 30));
    }

    #[test]
    fn the_price_less_what_is_taken_off_is_the_cost_of_the_search() {
        let data = data([61, 47], SawingAim::Cost);
        let outcome = saw(&data, &SawingLimits::default(), &mut |_| true).unwrap();
        let (SawingOutcome::Proved { plan, .. } | SawingOutcome::WithinGap { plan, .. }) = outcome
        else {
            panic!("there is a plan");
        };
        let reckoning = SawnReckoning::of(&data, &plan);
        let price = SawingList::of(&data, &plan).unwrap().cost;
        assert_eq!(price - reckoning.offcuts - reckoning.over, plan.cost);
    }
}
