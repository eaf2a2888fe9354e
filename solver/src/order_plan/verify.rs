//! Checks a plan by counting slats, pencils, time and money, in whole numbers and without the search.

use super::draft::{OrderPlanDraft, PlanAim};
use super::fault::OrderPlanFault;
use super::offer::{Offer, Pricing};
use super::plan::{CostParts, OrderPlan};

/// Recounts a plan: everything due is delivered, every slat is there when it is used, no limit is
/// passed, every cost is as told.
///
/// # Errors
/// The first [`OrderPlanFault`] met: the shape, then pencils, slats, orders, machines, stores and the
/// totals.
pub fn verify(draft: &OrderPlanDraft, plan: &OrderPlan) -> Result<(), OrderPlanFault> {
    let fits = |rows: &[Vec<u64>], lines: usize| {
        rows.len() == lines && rows.iter().all(|row| row.len() == draft.periods)
    };
    let pencils = draft.pencils.len();
    let stocks = draft.stocks.len();
    if !fits(&plan.runs, draft.setups.len())
        || !fits(&plan.packs, draft.offers.len())
        || !fits(&plan.sawn, stocks)
        || !fits(&plan.pencil_store, pencils)
        || !fits(&plan.slat_store, stocks)
        || !fits(&plan.spare_pencils, pencils)
        || !fits(&plan.spare_slats, stocks)
    {
        return Err(OrderPlanFault::Shape);
    }
    (0..pencils).try_for_each(|pencil| pencils_are_there(draft, plan, pencil))?;
    (0..stocks).try_for_each(|stock| slats_are_there(draft, plan, stock))?;
    (0..draft.offers.len()).try_for_each(|offer| orders_are_allowed(draft, plan, offer))?;
    (0..draft.periods).try_for_each(|period| machines_and_stores_suffice(draft, plan, period))?;
    totals_are_as_told(draft, plan)
}

fn pencils_are_there(
    draft: &OrderPlanDraft,
    plan: &OrderPlan,
    pencil: usize,
) -> Result<(), OrderPlanFault> {
    let mut on_hand = i128::from(draft.pencils[pencil].on_hand);
    let mut store = 0;
    for period in 0..draft.periods {
        let due = i128::from(draft.pencils[pencil].due[period]);
        let served = due.min(on_hand);
        on_hand -= served;
        let mut millionths = 0;
        for (setup, line) in draft.setups.iter().enumerate() {
            for laid in line.laid.iter().filter(|laid| laid.pencil == pencil) {
                let good = good_pencils(draft, laid.leads, laid.good);
                millionths += good * u128::from(plan.runs[setup][period]);
            }
        }
        store += (millionths / 1_000_000).cast_signed();
        store -= due - served + i128::from(plan.spare_pencils[pencil][period]);
        if store < 0 || store != i128::from(plan.pencil_store[pencil][period]) {
            return Err(OrderPlanFault::Pencils {
                pencil,
                period,
                left: store,
            });
        }
    }
    Ok(())
}

/// Millionths, rounded down, with twelve more digits on the way.
fn good_pencils(draft: &OrderPlanDraft, leads: u32, good: u32) -> u128 {
    let stages = &draft.stages;
    let mut left = u128::from(leads) * u128::from(good) * 1_000_000_000_000;
    for stage in [
        stages.laying,
        stages.gluing,
        stages.shaping,
        stages.coating,
        stages.sharpening,
        stages.inspection,
    ] {
        left = left * u128::from(stage) / 1_000_000;
    }
    left / 1_000_000_000_000
}

fn slats_are_there(
    draft: &OrderPlanDraft,
    plan: &OrderPlan,
    stock: usize,
) -> Result<(), OrderPlanFault> {
    let line = &draft.stocks[stock];
    let most_sawn = line.sawing.map_or(0, |sawing| sawing.most_slats);
    let mut store = i128::from(line.on_hand);
    for period in 0..draft.periods {
        let sawn = plan.sawn[stock][period];
        if sawn > most_sawn {
            return Err(OrderPlanFault::Sawing {
                stock,
                period,
                sawn,
                most: most_sawn,
            });
        }
        store += i128::from(sawn);
        for (number, offer) in draft.offers.iter().enumerate() {
            if offer.stock == stock && period >= offer.lead_periods {
                let packs = i128::from(plan.packs[number][period - offer.lead_periods]);
                let usable = u64::from(offer.pack_slats) * u64::from(line.usable) / 1_000_000;
                store += packs * i128::from(usable);
            }
        }
        for (setup, run) in draft.setups.iter().zip(&plan.runs) {
            for side in [setup.bottom, setup.top] {
                if side == stock {
                    store -= i128::from(run[period]);
                }
            }
        }
        store -= i128::from(plan.spare_slats[stock][period]);
        if store < 0 || store != i128::from(plan.slat_store[stock][period]) {
            return Err(OrderPlanFault::Slats {
                stock,
                period,
                left: store,
            });
        }
    }
    Ok(())
}

fn orders_are_allowed(
    draft: &OrderPlanDraft,
    plan: &OrderPlan,
    number: usize,
) -> Result<(), OrderPlanFault> {
    let offer = &draft.offers[number];
    let orders = &plan.packs[number];
    for (period, &packs) in orders.iter().enumerate().filter(|(_, packs)| **packs > 0) {
        let in_range =
            (u64::from(offer.least_packs)..=u64::from(offer.most_packs)).contains(&packs);
        if !in_range || period + offer.lead_periods >= draft.periods {
            return Err(OrderPlanFault::Order {
                offer: number,
                period,
                packs,
            });
        }
    }
    let packs: u128 = orders.iter().map(|&packs| u128::from(packs)).sum();
    match offer.most_packs_in_all {
        Some(most) if packs > u128::from(most) => Err(OrderPlanFault::OrdersInAll {
            offer: number,
            packs,
            most,
        }),
        _ => Ok(()),
    }
}

fn machines_and_stores_suffice(
    draft: &OrderPlanDraft,
    plan: &OrderPlan,
    period: usize,
) -> Result<(), OrderPlanFault> {
    if let Some(seconds) = draft.machine.seconds[period] {
        let mut milliseconds = 0_u128;
        for (setup, runs) in draft.setups.iter().zip(&plan.runs) {
            if runs[period] > 0 {
                milliseconds += u128::from(setup.changeover_seconds) * 1_000;
                milliseconds += u128::from(setup.milliseconds) * u128::from(runs[period]);
            }
        }
        if milliseconds > u128::from(seconds) * 1_000 {
            return Err(OrderPlanFault::Machine {
                period,
                milliseconds,
                seconds,
            });
        }
    }
    let pairs = [
        (&plan.pencil_store, draft.most_pencils_stored),
        (&plan.slat_store, draft.most_slats_stored),
    ];
    for (rows, most) in pairs {
        let stored: u128 = rows.iter().map(|row| u128::from(row[period])).sum();
        if let Some(most) = most
            && stored > u128::from(most)
        {
            return Err(OrderPlanFault::Store {
                period,
                stored,
                most,
            });
        }
    }
    Ok(())
}

fn totals_are_as_told(draft: &OrderPlanDraft, plan: &OrderPlan) -> Result<(), OrderPlanFault> {
    let (parts, changeovers) = counted_cost(draft, plan);
    let told = told_parts(&plan.cost);
    if parts != told {
        return Err(OrderPlanFault::Cost {
            counted: parts[..6].iter().sum::<i128>() - parts[6],
            told: plan.cost.total(),
        });
    }
    if changeovers != u128::from(plan.changeovers) {
        return Err(OrderPlanFault::Changeovers {
            counted: changeovers,
            told: plan.changeovers,
        });
    }
    let (volume, certified) = counted_wood(draft, plan);
    if volume != i128::from(plan.cubic_millimetres) {
        return Err(OrderPlanFault::Timber {
            counted: volume,
            told: plan.cubic_millimetres,
        });
    }
    if certified * 1_000_000 < volume * i128::from(draft.least_certified) {
        return Err(OrderPlanFault::Certified { certified, volume });
    }
    let limits = &draft.limits;
    let most = |aim| match aim {
        PlanAim::Cost => limits.cost.map(|cost| cost.saturating_mul(1_000)),
        PlanAim::Timber => limits.cubic_millimetres,
        PlanAim::Changeovers => limits
            .changeovers
            .map(|most| i64::try_from(most).unwrap_or(i64::MAX)),
    };
    for aim in PlanAim::ALL {
        let value = plan.value(aim);
        if let Some(most) = most(aim).filter(|&most| value > most) {
            return Err(OrderPlanFault::Limit { aim, value, most });
        }
    }
    Ok(())
}

fn told_parts(cost: &CostParts) -> [i128; 7] {
    [
        cost.purchase,
        cost.changeover,
        cost.machine,
        cost.holding,
        cost.materials,
        cost.sawing,
        cost.credit,
    ]
    .map(i128::from)
}

/// Costs in the order of [`CostParts`], thousandths of a hundredth, and the change-overs.
fn counted_cost(draft: &OrderPlanDraft, plan: &OrderPlan) -> ([i128; 7], u128) {
    let hour = i128::from(draft.machine.hour_cost);
    let machine_time = |milliseconds: i128| (milliseconds * hour + 1_800) / 3_600;
    let [mut changeover, mut machine, mut materials, mut credit] = [0; 4];
    let mut changeovers = 0;
    for (setup, runs) in draft.setups.iter().zip(&plan.runs) {
        let leads = setup.laid.iter().map(|laid| i128::from(laid.leads)).sum();
        for (period, &run) in runs.iter().enumerate().filter(|(_, run)| **run > 0) {
            let run = i128::from(run);
            changeovers += 1;
            changeover += 1_000 * i128::from(setup.changeover_cost[period]);
            machine += machine_time(1_000 * i128::from(setup.changeover_seconds));
            machine += machine_time(i128::from(setup.milliseconds)) * run;
            materials += materials_of(draft, leads) * run;
            credit += i128::from(setup.credit) * run;
        }
    }
    let orders = draft.offers.iter().zip(&plan.packs);
    let purchase = orders
        .flat_map(|(offer, packs)| packs.iter().map(|&packs| 1_000 * price(offer, packs)))
        .sum();
    let held = |store: &[Vec<u64>], line: usize| -> i128 {
        store[line].iter().map(|&pieces| i128::from(pieces)).sum()
    };
    let mut holding = 0;
    let mut sawing = 0;
    for (stock, line) in draft.stocks.iter().enumerate() {
        holding += i128::from(line.holding) * held(&plan.slat_store, stock);
        if let Some(own) = line.sawing {
            sawing += i128::from(own.thousand_cost) * held(&plan.sawn, stock);
        }
    }
    for (pencil, line) in draft.pencils.iter().enumerate() {
        holding += i128::from(line.holding) * held(&plan.pencil_store, pencil);
    }
    let parts = [
        purchase, changeover, machine, holding, materials, sawing, credit,
    ];
    (parts, changeovers)
}

/// Leads, glue and coat of a sandwich, thousandths of a hundredth, to the nearest.
fn materials_of(draft: &OrderPlanDraft, leads: i128) -> i128 {
    let materials = &draft.materials;
    let whole = 1_000_000_000_000_000_000;
    let laying = i128::from(draft.stages.laying);
    let shaped = laying * i128::from(draft.stages.gluing) * i128::from(draft.stages.shaping);
    let sum = leads * i128::from(materials.thousand_leads) * whole
        + i128::from(materials.thousand_glued) * laying * 1_000_000_000_000
        + leads * i128::from(materials.thousand_coated) * shaped;
    (sum + whole / 2) / whole
}

/// Price of an order, hundredths, pack by pack where the price is incremental.
fn price(offer: &Offer, packs: u64) -> i128 {
    if packs == 0 {
        return 0;
    }
    let packs = i128::from(packs);
    let mut goods = 0;
    for (at, tier) in offer.tiers.iter().enumerate() {
        let from = i128::from(tier.from_packs);
        let next = offer.tiers.get(at + 1);
        let to = next.map_or(packs, |next| packs.min(i128::from(next.from_packs) - 1));
        if from > packs {
            break;
        }
        let each = i128::from(tier.pack_price);
        match offer.pricing {
            Pricing::AllUnits => goods = each * packs,
            Pricing::Incremental => goods += each * (to - from + 1),
        }
    }
    goods + i128::from(offer.order_cost)
}

/// Volume bought and sawn, and the certified part of it, cubic millimetres.
fn counted_wood(draft: &OrderPlanDraft, plan: &OrderPlan) -> (i128, i128) {
    let mut volume = 0;
    let mut certified = 0;
    let mut add = |pieces: i128, slat: u32, is_certified: bool| {
        let added = pieces * i128::from(slat);
        volume += added;
        certified += if is_certified { added } else { 0 };
    };
    for (offer, packs) in draft.offers.iter().zip(&plan.packs) {
        let packs: i128 = packs.iter().map(|&packs| i128::from(packs)).sum();
        let slat = draft.stocks[offer.stock].cubic_millimetres;
        add(packs * i128::from(offer.pack_slats), slat, offer.certified);
    }
    for (line, sawn) in draft.stocks.iter().zip(&plan.sawn) {
        let sawn = sawn.iter().map(|&sawn| i128::from(sawn)).sum();
        let is_certified = line.sawing.is_some_and(|sawing| sawing.certified);
        add(sawn, line.cubic_millimetres, is_certified);
    }
    (volume, certified)
}
