//! Which demands and limits clash when there is no plan, and by how much.

use super::check::{MOST_PACKS, MOST_PENCILS, MOST_SLATS};
use super::data::OrderPlanData;
use super::draft::{OrderPlanDraft, PlanAim};
use super::model::{Question, Whole, solve};
use super::ranges::Ranges;

/// A demand or a limit that can be given up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wish {
    /// Pencils due, all periods together.
    Due {
        /// The pencil.
        pencil: usize,
    },
    /// Machine seconds of a period.
    Machine {
        /// The period.
        period: usize,
    },
    /// Most packs of an offer, per order and over all periods.
    Packs {
        /// The offer.
        offer: usize,
    },
    /// Most slats of a stock sawn in a period.
    Sawing {
        /// The stock.
        stock: usize,
    },
    /// Room for pencils.
    PencilStore,
    /// Room for slats.
    SlatStore,
    /// Least certified share.
    Certified,
    /// Most an aim may come to.
    Limit {
        /// The aim.
        aim: PlanAim,
    },
}

/// One of the demands and limits that cannot be kept together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clash {
    /// What it is.
    pub wish: Wish,
    /// What it is set to: pencils, seconds, packs of an order, slats, pieces, millionths, or the units
    /// of the aim.
    pub given: u64,
    /// What it has to be at least (a limit) or at most (a demand, a share) so that, all else as it is,
    /// fractions would do; `None` where changing it alone is not enough.
    pub needed: Option<u64>,
}

impl Wish {
    /// All that a draft has.
    fn all(draft: &OrderPlanDraft) -> Vec<Self> {
        let mut wishes = Vec::new();
        for (pencil, line) in draft.pencils.iter().enumerate() {
            if line.due.iter().any(|&due| due > 0) {
                wishes.push(Self::Due { pencil });
            }
        }
        for (period, seconds) in draft.machine.seconds.iter().enumerate() {
            if seconds.is_some() {
                wishes.push(Self::Machine { period });
            }
        }
        wishes.extend((0..draft.offers.len()).map(|offer| Self::Packs { offer }));
        let sawing = draft.stocks.iter().enumerate();
        let sawing = sawing.filter(|(_, line)| line.sawing.is_some());
        wishes.extend(sawing.map(|(stock, _)| Self::Sawing { stock }));
        wishes.extend(draft.most_pencils_stored.map(|_| Self::PencilStore));
        wishes.extend(draft.most_slats_stored.map(|_| Self::SlatStore));
        wishes.extend((draft.least_certified > 0).then_some(Self::Certified));
        let limits = &draft.limits;
        wishes.extend(limits.cost.map(|_| Self::Limit { aim: PlanAim::Cost }));
        let timber = limits.cubic_millimetres;
        wishes.extend(timber.map(|_| Self::Limit {
            aim: PlanAim::Timber,
        }));
        let changeovers = limits.changeovers;
        wishes.extend(changeovers.map(|_| Self::Limit {
            aim: PlanAim::Changeovers,
        }));
        wishes
    }

    /// What it is set to, and what giving it up altogether means.
    fn range(self, draft: &OrderPlanDraft) -> (u64, u64) {
        const ANY: u64 = u64::MAX >> 12;
        let positive = |amount: Option<i64>| u64::try_from(amount.unwrap_or(0)).unwrap_or(0);
        match self {
            Self::Due { pencil } => (draft.pencils[pencil].due.iter().sum(), 0),
            Self::Machine { period } => (draft.machine.seconds[period].unwrap_or(0), ANY),
            Self::Packs { offer } => {
                let line = &draft.offers[offer];
                let most = line.most_packs_in_all.unwrap_or(line.most_packs);
                (u64::from(most.min(line.most_packs)), u64::from(MOST_PACKS))
            }
            Self::Sawing { stock } => {
                let sawing = draft.stocks[stock].sawing;
                (sawing.map_or(0, |sawing| sawing.most_slats), MOST_SLATS)
            }
            Self::PencilStore => (draft.most_pencils_stored.unwrap_or(0), MOST_PENCILS),
            Self::SlatStore => (draft.most_slats_stored.unwrap_or(0), ANY),
            Self::Certified => (u64::from(draft.least_certified), 0),
            Self::Limit { aim } => match aim {
                PlanAim::Cost => (positive(draft.limits.cost), ANY >> 10),
                PlanAim::Timber => (positive(draft.limits.cubic_millimetres), ANY),
                PlanAim::Changeovers => (draft.limits.changeovers.unwrap_or(0), ANY),
            },
        }
    }

    /// The draft with the wish set to something else.
    fn set(self, draft: &mut OrderPlanDraft, to: u64) {
        match self {
            Self::Due { pencil } => {
                // The last of them are given up first.
                let mut kept = to;
                for due in &mut draft.pencils[pencil].due {
                    *due = (*due).min(kept);
                    kept -= *due;
                }
            }
            Self::Machine { period } => draft.machine.seconds[period] = Some(to),
            Self::Packs { offer } => {
                let line = &mut draft.offers[offer];
                let to = u32::try_from(to).unwrap_or(MOST_PACKS);
                line.most_packs = line.most_packs.max(to);
                line.most_packs_in_all = line.most_packs_in_all.map(|most| most.max(to));
                if to == MOST_PACKS {
                    line.most_packs_in_all = None;
                }
            }
            Self::Sawing { stock } => {
                if let Some(sawing) = &mut draft.stocks[stock].sawing {
                    sawing.most_slats = to;
                }
            }
            Self::PencilStore => draft.most_pencils_stored = Some(to),
            Self::SlatStore => draft.most_slats_stored = Some(to),
            Self::Certified => draft.least_certified = u32::try_from(to).unwrap_or(0),
            Self::Limit { aim } => match aim {
                PlanAim::Cost => draft.limits.cost = i64::try_from(to).ok(),
                PlanAim::Timber => draft.limits.cubic_millimetres = i64::try_from(to).ok(),
                PlanAim::Changeovers => draft.limits.changeovers = Some(to),
            },
        }
    }
}

/// Demands and limits of which none can be left out and still no plan be possible, even in fractions;
/// empty where fractions are possible.
///
/// One after the other is given up; what makes a plan possible is taken back (deletion filter, Chinneck
/// & Dravnieks 1991). Then each alone is changed, by halving, until fractions are possible.
pub(super) fn clash(data: &OrderPlanData) -> Vec<Clash> {
    let draft = data.draft();
    if is_possible(draft) {
        return Vec::new();
    }
    let mut relaxed = draft.clone();
    let mut kept = Vec::new();
    for wish in Wish::all(draft) {
        let mut without = relaxed.clone();
        let (_, free) = wish.range(draft);
        wish.set(&mut without, free);
        if is_possible(&without) {
            kept.push(wish);
        } else {
            relaxed = without;
        }
    }
    kept.into_iter()
        .map(|wish| Clash {
            wish,
            given: wish.range(draft).0,
            needed: needed(draft, wish),
        })
        .collect()
}

/// The nearest setting of a wish by itself with which fractions are possible.
fn needed(draft: &OrderPlanDraft, wish: Wish) -> Option<u64> {
    let possible = |to: u64| {
        let mut changed = draft.clone();
        wish.set(&mut changed, to);
        is_possible(&changed)
    };
    let (given, free) = wish.range(draft);
    if !possible(free) {
        return None;
    }
    // `bad` is not possible, `well` is.
    let (mut bad, mut well) = (given, free);
    if free > given {
        // First by doubling, as no limit may be very far.
        let mut step = 1;
        while let Some(next) = given.checked_add(step).filter(|&next| next < free) {
            if possible(next) {
                well = next;
                break;
            }
            bad = next;
            step *= 2;
        }
    }
    while well.abs_diff(bad) > 1 {
        let middle = u64::midpoint(well, bad);
        if possible(middle) {
            well = middle;
        } else {
            bad = middle;
        }
    }
    Some(well)
}

/// Whether fractions meet all demands within all limits.
fn is_possible(draft: &OrderPlanDraft) -> bool {
    let data = OrderPlanData::new(draft.clone());
    let ranges = Ranges::new(&data);
    let question = Question {
        ranges: &ranges,
        cuts: &[],
        whole: Whole::Nothing,
        most: None,
        with_reserve: false,
    };
    !solve(&data, question, 0, &mut |_| true).none_exists
}
