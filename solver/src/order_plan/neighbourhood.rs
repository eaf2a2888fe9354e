//! Parts of a plan that are planned anew while the rest stays.

use super::data::OrderPlanData;
use super::plan::OrderPlan;
use super::ranges::Ranges;

/// What is planned anew: set-ups and offers in some periods.
#[derive(Clone, Debug)]
pub(super) struct Neighbourhood {
    /// `setups[setup]`, whether it is free in the periods.
    setups: Vec<bool>,
    /// `offers[offer]`, whether it is free when what is ordered arrives in the periods.
    offers: Vec<bool>,
    /// First period, and the one after the last.
    periods: (usize, usize),
}

/// Periods planned anew at a time, and by how much the window moves on.
const WINDOW: usize = 4;
const STRIDE: usize = 2;
/// Pencils planned anew at a time.
const PENCILS: usize = 8;

impl Neighbourhood {
    /// Nothing is planned anew but how much is run and ordered.
    pub(super) fn nothing(data: &OrderPlanData) -> Self {
        Self {
            setups: vec![false; data.setups().len()],
            offers: vec![false; data.offers().len()],
            periods: (0, 0),
        }
    }

    /// Parts that cover the plan, large enough to hold a better choice and small enough to be
    /// searched; each `round` parts it in another way.
    pub(super) fn parts(data: &OrderPlanData, round: usize) -> Vec<Self> {
        let mut parts = Self::pairs_of_stocks(data, round);
        parts.extend(Self::groups_of_pencils(data, round));
        if data.periods() > WINDOW {
            let windows = (0..data.periods() - STRIDE).step_by(STRIDE);
            parts.extend(windows.map(|start| Self {
                setups: vec![true; data.setups().len()],
                offers: vec![true; data.offers().len()],
                periods: (start, (start + WINDOW).min(data.periods())),
            }));
        }
        parts
    }

    /// Two stocks with all that is made of them and all that is offered of them.
    fn pairs_of_stocks(data: &OrderPlanData, round: usize) -> Vec<Self> {
        let stocks = data.stocks().len();
        let distance = round + 1;
        if distance >= stocks.max(2) {
            return Vec::new();
        }
        let pairs = (0..stocks).map(|one| {
            let pair = [one, (one + distance) % stocks];
            let setups = data.setups().iter();
            let offers = data.offers().iter();
            Self {
                setups: setups
                    .map(|line| pair.contains(&line.bottom) && pair.contains(&line.top))
                    .collect(),
                offers: offers.map(|offer| pair.contains(&offer.stock)).collect(),
                periods: (0, data.periods()),
            }
        });
        pairs.collect()
    }

    /// Some pencils with all set-ups that make them, and every offer.
    fn groups_of_pencils(data: &OrderPlanData, round: usize) -> Vec<Self> {
        let pencils = data.pencils().len();
        let groups = pencils.div_ceil(PENCILS);
        let group = |pencil: usize| (pencil * (round + 1) + pencil / groups) % groups;
        let parts = (0..groups).map(|number| {
            let setups = (0..data.setups().len()).map(|setup| {
                let mut pencils = data.good_pencils(setup).iter();
                pencils.any(|(pencil, _)| group(*pencil) == number)
            });
            Self {
                setups: setups.collect(),
                offers: vec![true; data.offers().len()],
                periods: (0, data.periods()),
            }
        });
        parts.collect()
    }

    /// The ranges in which all else is done as in a plan.
    pub(super) fn around(&self, data: &OrderPlanData, all: &Ranges, plan: &OrderPlan) -> Ranges {
        let mut ranges = all.clone();
        let (first, end) = self.periods;
        for (setup, runs) in plan.runs.iter().enumerate() {
            for (period, &run) in runs.iter().enumerate() {
                if self.setups[setup] && (first..end).contains(&period) {
                    continue;
                }
                ranges.kept[setup][period] = run > 0;
                if run == 0 {
                    ranges.runs[setup][period] = 0;
                }
            }
        }
        for (number, orders) in plan.packs.iter().enumerate() {
            let offer = &data.offers()[number];
            for (period, &packs) in orders.iter().enumerate() {
                let arrival = period + offer.lead_periods;
                if !(self.offers[number] && (first..end).contains(&arrival)) {
                    let tier = offer.tier(packs);
                    ranges.orders[number][period].retain(|range| Some(range.tier) == tier);
                }
            }
        }
        ranges
    }
}
