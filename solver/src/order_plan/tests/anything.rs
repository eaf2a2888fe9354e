//! Any draft: numbers at the ends of their ranges and beyond, and lists of any length.

use super::*;

/// Mostly within a range, now and then at its end, at times far beyond.
fn any(dice: &mut Dice, usual: u64, most: u64) -> u64 {
    match dice.roll(19) {
        0 => most,
        1 => 0,
        2 => 1,
        3 if dice.one_in(20) => u64::MAX >> dice.roll(32),
        4 => dice.roll(most / 2),
        _ => dice.roll(usual),
    }
}

fn any_small(dice: &mut Dice, usual: u32, most: u32) -> u32 {
    u32::try_from(any(dice, usual.into(), most.into())).unwrap_or(u32::MAX)
}

fn any_price(dice: &mut Dice) -> i64 {
    any(dice, 10_000, MOST_PRICE.unsigned_abs()).cast_signed()
}

fn any_draft(dice: &mut Dice) -> OrderPlanDraft {
    let mut draft = tiny(dice);
    for pencil in &mut draft.pencils {
        for due in &mut pencil.due {
            *due = any(dice, 20_000, MOST_PENCILS / 4);
        }
        pencil.on_hand = any(dice, 100, MOST_PENCILS / 4);
        pencil.holding = any_price(dice);
    }
    for stock in &mut draft.stocks {
        stock.on_hand = any(dice, 100, MOST_SLATS);
        stock.holding = any_price(dice);
        stock.cubic_millimetres = any_small(dice, 70_000, u32::MAX);
        stock.usable = any_small(dice, MILLION, MILLION);
    }
    for setup in &mut draft.setups {
        for laid in &mut setup.laid {
            laid.leads = any_small(dice, 10, 500);
            laid.good = any_small(dice, MILLION, MILLION);
        }
        setup.milliseconds = any_small(dice, 1_000, MOST_TIME);
        setup.changeover_seconds = any_small(dice, 1_000, MOST_TIME);
        setup.credit = any(dice, 1, 1_000).cast_signed();
        for cost in &mut setup.changeover_cost {
            *cost = any_price(dice);
        }
    }
    for offer in &mut draft.offers {
        offer.pack_slats = any_small(dice, 1_000, MOST_PACK_SLATS);
        offer.most_packs = any_small(dice, 1_000, MOST_PACKS);
        offer.least_packs = any_small(dice, 1, 10);
        offer.order_cost = any_price(dice);
        for tier in &mut offer.tiers {
            tier.pack_price = any_price(dice);
        }
    }
    for seconds in &mut draft.machine.seconds {
        *seconds = dice.one_in(3).then(|| any(dice, 10_000, u64::MAX));
    }
    draft.machine.hour_cost = any_price(dice);
    draft.most_slats_stored = dice.one_in(4).then(|| any(dice, 10_000, u64::MAX));
    draft.most_pencils_stored = dice.one_in(4).then(|| any(dice, 10_000, u64::MAX));
    draft.limits.cost = dice.one_in(4).then(|| any_price(dice));
    draft.limits.changeovers = dice.one_in(4).then(|| any(dice, 4, u64::MAX));
    if dice.one_in(10) {
        draft.periods = any_small(dice, 3, 61) as usize;
    }
    if dice.one_in(20) {
        draft.setups[0].bottom = 7;
    }
    draft
}

#[test]
fn any_draft_is_refused_or_planned() {
    let (mut refused, mut planned, mut none) = (0, 0, 0);
    for seed in 0..400 {
        let Ok(data) = any_draft(&mut Dice(seed)).check() else {
            refused += 1;
            continue;
        };
        let limits = OrderPlanLimits {
            steps: 100,
            gap: 100,
        };
        let outcome = plan_orders(&data, &limits, &mut |_| true).expect("a plan that adds up");
        match outcome {
            OrderPlanOutcome::Proved { plan, bound }
            | OrderPlanOutcome::WithinGap { plan, bound } => {
                assert!(bound <= plan.value(data.aim()), "seed {seed}");
                let _ = worths(&data, &plan);
                planned += 1;
            }
            _ => none += 1,
        }
    }
    assert!(
        refused > 20 && planned > 20 && none > 20,
        "{refused} refused, {planned} planned, {none} without a plan"
    );
}
