//! What limits and demands are worth, beside a plan.

use super::data::OrderPlanData;
use super::draft::{OrderPlanDraft, PlanAim};
use super::model::{Question, Whole, solve};
use super::neighbourhood::Neighbourhood;
use super::offer::PriceTier;
use super::outcome::{OrderPlanLimits, OrderPlanOutcome};
use super::plan::OrderPlan;
use super::ranges::Ranges;
use super::search::plan_orders;

/// Pencils in a gross.
const GROSS: u64 = 144;
/// Seconds in an hour.
const HOUR: u64 = 3_600;

/// What a little more of a limit, or less of a demand, saves. In the units of the aim, for a plan in
/// which set-ups, orders and their tiers stay as they are, and sandwiches and packs may be fractions:
/// the relaxation is solved anew for each.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Worths {
    /// `machine_hour[period]`: one hour more; `None` where the time is not limited.
    pub machine_hour: Vec<Option<i64>>,
    /// `packs[offer]`: what the limits of each offer leave and are worth.
    pub packs: Vec<PacksWorth>,
    /// `gross_less[pencil]`: one gross less of what is due last, or all of it where that is less.
    pub gross_less: Vec<i64>,
}

/// What the limits of an offer leave and are worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PacksWorth {
    /// Packs that the largest order is below the most of an order.
    pub left_of_order: u64,
    /// Packs that all orders are below the most of all; `None` without that limit.
    pub left_in_all: Option<u64>,
    /// What one pack more in both limits saves.
    pub pack_more: i64,
}

/// Tells what a little more of each limit, and less of each demand, saves: see [`Worths`].
#[must_use]
pub fn worths(data: &OrderPlanData, plan: &OrderPlan) -> Worths {
    let now = relaxed_value(data.draft(), plan);
    let saving = |change: &dyn Fn(&mut OrderPlanDraft)| {
        let mut draft = data.draft().clone();
        change(&mut draft);
        let then = relaxed_value(&draft, plan);
        // Either may lack a value only where the solver fails.
        now.zip(then).map_or(0, |(now, then)| (now - then).max(0))
    };
    let machine_hour = (0..data.periods()).map(|period| {
        let seconds = data.draft().machine.seconds[period]?;
        Some(saving(&|draft| {
            draft.machine.seconds[period] = Some(seconds.saturating_add(HOUR));
        }))
    });
    let packs = data.offers().iter().zip(&plan.packs).enumerate();
    let packs = packs.map(|(number, (offer, orders))| {
        let largest = orders.iter().max().copied().unwrap_or(0);
        let all: u64 = orders.iter().sum();
        let left_of_order = u64::from(offer.most_packs).saturating_sub(largest);
        let in_all = offer.most_packs_in_all.map(u64::from);
        let left_in_all = in_all.map(|most| most.saturating_sub(all));
        let is_tight = all > 0 && (left_of_order == 0 || left_in_all == Some(0));
        let pack_more = if is_tight {
            saving(&|draft| {
                let offer = &mut draft.offers[number];
                offer.most_packs = offer.most_packs.saturating_add(1);
                offer.most_packs_in_all =
                    offer.most_packs_in_all.map(|most| most.saturating_add(1));
            })
        } else {
            0
        };
        PacksWorth {
            left_of_order,
            left_in_all,
            pack_more,
        }
    });
    let gross_less = (0..data.pencils().len()).map(|pencil| {
        saving(&|draft| {
            let last = draft.pencils[pencil]
                .due
                .iter_mut()
                .rev()
                .find(|due| **due > 0);
            if let Some(due) = last {
                *due = due.saturating_sub(GROSS);
            }
        })
    });
    Worths {
        machine_hour: machine_hour.collect(),
        packs: packs.collect(),
        gross_less: gross_less.collect(),
    }
}

/// The least value in fractions, with the choices of a plan.
fn relaxed_value(draft: &OrderPlanDraft, plan: &OrderPlan) -> Option<i64> {
    let data = OrderPlanData::new(draft.clone());
    let all = Ranges::new(&data);
    let question = Question {
        ranges: &Neighbourhood::nothing(&data).around(&data, &all, plan),
        cuts: &[],
        whole: Whole::Nothing,
        most: None,
        with_reserve: false,
    };
    let finding = solve(&data, question, 0, &mut |_| true);
    finding.best.map(|_| finding.bound)
}

/// Times the price is set anew.
const PRICES: u32 = 4;

/// Price of a thousand slats of a stock, hundredths of the currency, at which a plan that buys it is
/// known to cost no more than `cost`, thousandths of a hundredth, where an order costs nothing beside; the true price at
/// which it begins to pay may be higher. `None` where no such plan is found, where nothing offers the
/// stock, or where the aim is not the cost.
///
/// The stock is given away but for a hundredth a pack; the plan that comes of it tells a price. At that
/// price it is planned again, until no cheaper plan is found (Dinkelbach 1967). Each plan is searched
/// for within the limits.
#[must_use]
pub fn break_even(
    data: &OrderPlanData,
    cost: i64,
    stock: usize,
    limits: &OrderPlanLimits,
) -> Option<i64> {
    let is_offered = data.offers().iter().any(|offer| offer.stock == stock);
    if data.aim() != PlanAim::Cost || !is_offered {
        return None;
    }
    let mut found = None;
    // Hundredths for a thousand slats.
    let mut price = 0_i64;
    for _ in 0..PRICES {
        let mut draft = data.draft().clone();
        for offer in draft.offers.iter_mut().filter(|offer| offer.stock == stock) {
            let pack_price = price.saturating_mul(i64::from(offer.pack_slats)) / 1_000;
            offer.tiers = vec![PriceTier {
                from_packs: 1,
                pack_price: pack_price.max(1),
            }];
            offer.order_cost = 0;
        }
        let Ok(changed) = draft.check() else {
            break;
        };
        let outcome = plan_orders(&changed, limits, &mut |_| true);
        let Ok(
            OrderPlanOutcome::Proved { plan: other, .. }
            | OrderPlanOutcome::WithinGap { plan: other, .. },
        ) = outcome
        else {
            break;
        };
        let mut slats = 0;
        let mut paid = 0;
        for (number, offer) in changed.offers().iter().enumerate() {
            if offer.stock == stock {
                let packs = other.packs[number].iter();
                paid += packs
                    .clone()
                    .map(|&packs| 1_000 * offer.price(packs))
                    .sum::<i64>();
                slats += packs.sum::<u64>().cast_signed() * i64::from(offer.pack_slats);
            }
        }
        if slats == 0 {
            break;
        }
        // Thousandths for a slat are hundredths for a thousand.
        let next = (cost - (other.cost.total() - paid)).div_euclid(slats);
        if next <= price {
            break;
        }
        found = Some(next);
        price = next;
    }
    found
}
