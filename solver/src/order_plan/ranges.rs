//! What each decision may be, once that is left out which no best plan needs.
//!
//! Why nothing is lost, for any two set-ups, offers or quantities that are compared:
//!
//! * A run is no longer than fills all that is still due of each of its pencils. The rest would be
//!   pencils nobody ordered, and as chips bring no more than a sandwich costs, leaving it away saves.
//! * A set-up is left out where another takes the same slats and gives no fewer of each pencil at no
//!   more cost and time: its runs can be added to those of the other.
//! * Where certified shares do not count, an offer is left out where another of the same packs is no
//!   dearer for any number of them, comes no later, has falling prices and lets go all that can be of
//!   use: its orders can be added to those of the other.
//! * An order is no larger than all sandwiches that can still be run need, or than its tier needs; but
//!   for certified wood where its share counts.
//! * An order that costs no less than the first of a higher tier is left out, where more packs do no
//!   harm: neither timber nor packs over all periods nor certified shares count.

use super::data::OrderPlanData;
use super::draft::PlanAim;
use super::model::Point;
use super::offer::{Offer, Pricing};

/// Fewest and most packs of an order in one tier.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct TierRange {
    pub(super) tier: usize,
    pub(super) least: u64,
    pub(super) most: u64,
}

/// What each decision may be.
#[derive(Clone, Debug)]
pub(super) struct Ranges {
    /// `runs[setup][period]`: most sandwiches.
    pub(super) runs: Vec<Vec<u64>>,
    /// `kept[setup][period]`: the change-over is made whatever is run.
    pub(super) kept: Vec<Vec<bool>>,
    /// `orders[offer][period]`: the tiers to choose from.
    pub(super) orders: Vec<Vec<Vec<TierRange>>>,
    /// `sawn[stock][period]`: most slats.
    pub(super) sawn: Vec<Vec<u64>>,
}

impl Ranges {
    pub(super) fn new(data: &OrderPlanData) -> Self {
        let periods = 0..data.periods();
        let setups = data.setups().len();
        let runs: Vec<Vec<u64>> = (0..setups)
            .map(|setup| {
                let is_needless = (0..setups).any(|other| replaces(data, other, setup));
                let most = |period| data.most_sandwiches(setup, period);
                let row = periods.clone().map(most);
                row.map(|most| if is_needless { 0 } else { most }).collect()
            })
            .collect();
        let useful = useful_slats(data, &runs);
        let offers = data.offers().iter().enumerate();
        let orders = offers
            .map(|(number, offer)| {
                let useful = &useful[offer.stock];
                let most = useful.first().copied().unwrap_or(0);
                let is_needless =
                    (0..data.offers().len()).any(|other| supplants(data, other, number, most));
                let tiers = |period: usize| {
                    let arrival = period + offer.lead_periods;
                    match useful.get(arrival) {
                        Some(&useful) if !is_needless => tier_ranges(data, number, useful),
                        _ => Vec::new(),
                    }
                };
                periods.clone().map(tiers).collect()
            })
            .collect();
        let stocks = data.stocks().iter().zip(&useful);
        let sawn = stocks
            .map(|(line, useful)| {
                let most = line.sawing.map_or(0, |sawing| sawing.most_slats);
                let is_certified = line.sawing.is_some_and(|sawing| sawing.certified);
                let is_share = is_certified && data.draft().least_certified > 0;
                let useful = useful.iter();
                useful
                    .map(|&useful| if is_share { most } else { useful.min(most) })
                    .collect()
            })
            .collect();
        let kept = vec![vec![false; data.periods()]; setups];
        Self {
            runs,
            kept,
            orders,
            sawn,
        }
    }

    /// Only what a point chooses at least in part.
    pub(super) fn near(&self, point: &Point) -> Self {
        let mut near = self.clone();
        near.close(point, IN_PART);
        near
    }

    /// What a point chooses, and nothing else; its change-overs are made.
    pub(super) fn chosen(&self, point: &Point) -> Self {
        let mut chosen = self.clone();
        chosen.close(point, HALF);
        for (kept, runs) in chosen.kept.iter_mut().zip(&chosen.runs) {
            for (kept, &most) in kept.iter_mut().zip(runs) {
                *kept = most > 0;
            }
        }
        chosen
    }

    /// Closes set-ups that are open, and tiers that are chosen, to less than a share.
    fn close(&mut self, point: &Point, share: f64) {
        for (setup, row) in self.runs.iter_mut().enumerate() {
            for (period, most) in row.iter_mut().enumerate() {
                let open = if point.has_choice[setup][period] {
                    point.open[setup][period]
                } else {
                    f64::from(u8::from(point.runs[setup][period] > IN_PART))
                };
                if open < share {
                    *most = 0;
                }
            }
        }
        for (orders, points) in self.orders.iter_mut().zip(&point.packs) {
            for (tiers, points) in orders.iter_mut().zip(points) {
                tiers.retain(|range| {
                    let mut points = points.iter();
                    points.any(|point| point.tier == range.tier && point.chosen >= share)
                });
            }
        }
    }
}

/// A choice made to this share is made in part; one made to half is made, as others are whole.
const IN_PART: f64 = 1e-4;
const HALF: f64 = 0.5;

/// `useful[stock][period]`: most slats that runs from a period on can take.
fn useful_slats(data: &OrderPlanData, runs: &[Vec<u64>]) -> Vec<Vec<u64>> {
    let take = |stock: usize, period: usize| -> u64 {
        let rows = runs.iter().enumerate();
        let rows = rows.map(|(setup, row)| {
            let most: u64 = row[period..].iter().sum();
            data.slats(setup, stock) * most.min(most_over_all(data, setup, period))
        });
        rows.sum()
    };
    (0..data.stocks().len())
        .map(|stock| {
            let periods = 0..data.periods();
            periods.map(|period| take(stock, period)).collect()
        })
        .collect()
}

/// Most sandwiches of a set-up from a period on from which none can be left away: a run is rounded
/// up to a sandwich, and counted down to a pencil.
pub(super) fn most_over_all(data: &OrderPlanData, setup: usize, period: usize) -> u64 {
    let runs = (data.periods() - period) as u64;
    let pencils = data.good_pencils(setup).iter();
    pencils
        .filter_map(|&(pencil, good)| {
            OrderPlanData::sandwiches_for(good, data.remaining(pencil, period) + runs)
        })
        .map(|sandwiches| sandwiches + 1)
        .sum()
}

/// Whether a set-up can take over all runs of another.
fn replaces(data: &OrderPlanData, other: usize, setup: usize) -> bool {
    if other == setup {
        return false;
    }
    let (one, two) = (&data.setups()[other], &data.setups()[setup]);
    let slats =
        |line: &super::draft::LineSetup| (line.bottom.min(line.top), line.bottom.max(line.top));
    let gives_no_less = data.good_pencils(setup).iter().all(|(pencil, good)| {
        let mut ours = data.good_pencils(other).iter();
        *good == 0 || ours.any(|(of, ours)| of == pencil && ours >= good)
    });
    let pairs = || one.changeover_cost.iter().zip(&two.changeover_cost);
    let no_dearer = slats(one) == slats(two)
        && gives_no_less
        && data.run_cost(other) <= data.run_cost(setup)
        && one.milliseconds <= two.milliseconds
        && one.changeover_seconds <= two.changeover_seconds
        && pairs().all(|(ours, theirs)| ours <= theirs);
    // Of two that are alike the first is kept.
    no_dearer && (other < setup || !replaces_back(data, setup, other))
}

/// Whether two set-ups are alike in all that is compared, given that `setup` is no worse than `other`.
fn replaces_back(data: &OrderPlanData, setup: usize, other: usize) -> bool {
    let (one, two) = (&data.setups()[other], &data.setups()[setup]);
    let sorted = |setup: usize| {
        let mut good: Vec<(usize, u64)> = data.good_pencils(setup).to_vec();
        good.retain(|(_, good)| *good > 0);
        good.sort_unstable();
        good
    };
    sorted(setup) == sorted(other)
        && data.run_cost(setup) == data.run_cost(other)
        && one.milliseconds == two.milliseconds
        && one.changeover_seconds == two.changeover_seconds
        && one.changeover_cost == two.changeover_cost
}

/// Whether an offer can take over all orders by another, where no more than so many slats are of use.
fn supplants(data: &OrderPlanData, other: usize, number: usize, useful: u64) -> bool {
    if other == number || data.draft().least_certified > 0 {
        return false;
    }
    let (one, two) = (&data.offers()[other], &data.offers()[number]);
    let falls = |offer: &Offer| {
        let mut pairs = offer.tiers.windows(2);
        pairs.all(|pair| pair[0].pack_price >= pair[1].pack_price)
    };
    let is_alike = one.stock == two.stock
        && one.pack_slats == two.pack_slats
        && one.lead_periods <= two.lead_periods
        && one.most_packs_in_all.is_none()
        && one.least_packs <= two.least_packs.max(1)
        && u64::from(one.most_packs) >= most_of_all_offers(data, one.stock, useful)
        && falls(one);
    // Between two breaks both prices are lines: at the ends one sees which is lower.
    let ends = one.tiers.iter().chain(&two.tiers).flat_map(|tier| {
        let from = u64::from(tier.from_packs);
        [from, from.saturating_sub(1).max(1)]
    });
    let most = u64::from(two.most_packs);
    let mut ends = ends.chain([most]).filter(|&packs| packs <= most);
    is_alike
        && ends.all(|packs| one.price(packs) <= two.price(packs))
        // Of two that are alike the first is kept.
        && !(other > number && supplants(data, number, other, useful))
}

/// Most packs that one order could have to hold if all offers of a stock were one.
fn most_of_all_offers(data: &OrderPlanData, stock: usize, useful: u64) -> u64 {
    let offers = data.offers().iter().enumerate();
    offers
        .filter(|(_, offer)| offer.stock == stock)
        .map(|(number, offer)| {
            let wanted = useful.div_ceil(data.pack_slats(number));
            let last = offer.tiers.last().map_or(0, |tier| tier.from_packs);
            let largest = wanted.max(u64::from(last.max(offer.least_packs)));
            largest.min(u64::from(offer.most_packs))
        })
        .sum()
}

/// The tiers of an offer that an order of use may reach.
fn tier_ranges(data: &OrderPlanData, number: usize, useful: u64) -> Vec<TierRange> {
    let offer = &data.offers()[number];
    let largest = u64::from(offer.most_packs);
    // Certified wood nobody needs can still raise the share.
    let is_share = offer.certified && data.draft().least_certified > 0;
    let wanted = if is_share {
        largest
    } else {
        useful.div_ceil(data.pack_slats(number))
    };
    let mut ranges = Vec::new();
    for (tier, from) in offer.tiers.iter().enumerate() {
        let next = offer
            .tiers
            .get(tier + 1)
            .map(|next| u64::from(next.from_packs));
        let least = u64::from(from.from_packs.max(offer.least_packs));
        let top = next.map_or(largest, |next| largest.min(next - 1));
        let mut most = top.min(wanted.max(least));
        if let Some(next) = next.filter(|&next| next <= largest && more_does_no_harm(data, number))
        {
            most = most.min(last_below(
                offer,
                tier,
                next.max(u64::from(offer.least_packs)),
            ));
        }
        if wanted > 0 && least <= most {
            ranges.push(TierRange { tier, least, most });
        }
    }
    ranges
}

/// Whether packs beyond those needed harm nothing but the purse.
fn more_does_no_harm(data: &OrderPlanData, number: usize) -> bool {
    let draft = data.draft();
    draft.aim == PlanAim::Cost
        && draft.limits.cubic_millimetres.is_none()
        && draft.least_certified == 0
        && draft.offers[number].most_packs_in_all.is_none()
}

/// Most packs in a tier that cost less than an order at the next break.
fn last_below(offer: &Offer, tier: usize, next: u64) -> u64 {
    let (base, each) = offer.line(tier);
    let room = offer.price(next) - 1 - base;
    match offer.pricing {
        Pricing::AllUnits if each > 0 => u64::try_from(room.div_euclid(each)).unwrap_or(0),
        _ => u64::MAX,
    }
}
