//! Checks of the order plan.

mod answers;
mod anything;
mod trying_all;

use super::*;

/// A small generator of whole numbers, so that the drafts are the same in every run.
struct Dice(u64);

impl Dice {
    /// A number from 0 to `most`.
    fn roll(&mut self, most: u64) -> u64 {
        // The SplitMix64 step with its usual constants.
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) % (most + 1)
    }

    /// One in so many.
    fn one_in(&mut self, many: u64) -> bool {
        self.roll(many - 1) == 0
    }

    fn index(&mut self, below: usize) -> usize {
        self.roll(below as u64 - 1) as usize
    }
}

/// A draft so small that all its plans can be tried.
fn tiny(dice: &mut Dice) -> OrderPlanDraft {
    let periods = 1 + dice.index(2);
    let pencils = 1 + dice.index(2);
    let stocks = 1 + dice.index(2);
    let money = [1, 10, 137][dice.index(3)];
    let pencil = |dice: &mut Dice| PencilDemand {
        due: (0..periods).map(|_| dice.roll(7)).collect(),
        on_hand: dice.roll(3),
        holding: dice.roll(3) as i64 * money * 10,
    };
    let stock = |dice: &mut Dice| StockLine {
        on_hand: dice.roll(3),
        holding: dice.roll(2) as i64 * money * 10,
        usable: [MILLION, MILLION, 900_000][dice.index(3)],
        cubic_millimetres: 1 + dice.roll(4) as u32,
        sawing: dice.one_in(5).then(|| OwnSawing {
            thousand_cost: dice.roll(9) as i64 * money * 100,
            most_slats: dice.roll(2),
            certified: dice.one_in(2),
        }),
    };
    let setup = |dice: &mut Dice| {
        let first = dice.index(pencils);
        let laid = |dice: &mut Dice, pencil| Laid {
            pencil,
            leads: 1 + dice.roll(4) as u32,
            good: [MILLION, 930_000, 700_000][dice.index(3)],
        };
        let mut both = vec![laid(dice, first)];
        if pencils > 1 && dice.one_in(4) {
            both.push(laid(dice, 1 - first));
        }
        LineSetup {
            laid: both,
            bottom: dice.index(stocks),
            top: dice.index(stocks),
            milliseconds: dice.roll(3) as u32 * 500,
            changeover_cost: (0..periods).map(|_| dice.roll(6) as i64 * money).collect(),
            changeover_seconds: dice.roll(2) as u32,
            credit: 0,
        }
    };
    let offer = |dice: &mut Dice| {
        let first = dice.roll(8) as i64 * money;
        let mut tiers = vec![PriceTier {
            from_packs: 1,
            pack_price: first,
        }];
        if dice.one_in(2) {
            tiers.push(PriceTier {
                from_packs: 2 + dice.roll(1) as u32,
                pack_price: first * (1 + dice.roll(5) as i64) / 5,
            });
        }
        let least_packs = dice.roll(1) as u32;
        Offer {
            stock: dice.index(stocks),
            pack_slats: 2 + dice.roll(3) as u32,
            tiers,
            pricing: [Pricing::AllUnits, Pricing::Incremental][dice.index(2)],
            order_cost: dice.roll(3) as i64 * money,
            least_packs,
            most_packs: least_packs + dice.roll(3) as u32,
            most_packs_in_all: dice.one_in(4).then(|| dice.roll(4) as u32),
            lead_periods: usize::from(dice.one_in(5)),
            certified: dice.one_in(2),
        }
    };
    let mut draft = OrderPlanDraft {
        periods,
        pencils: (0..pencils).map(|_| pencil(dice)).collect(),
        stocks: (0..stocks).map(|_| stock(dice)).collect(),
        setups: (0..1 + dice.index(3)).map(|_| setup(dice)).collect(),
        offers: (0..1 + dice.index(3)).map(|_| offer(dice)).collect(),
        machine: Machine {
            hour_cost: dice.roll(3) as i64 * 3_600,
            seconds: (0..periods)
                .map(|_| dice.one_in(3).then(|| 2 + dice.roll(6)))
                .collect(),
        },
        stages: StageYields::default(),
        materials: Materials {
            thousand_leads: dice.roll(2) as i64 * money * 100,
            ..Materials::default()
        },
        aim: PlanAim::ALL[dice.index(5).saturating_sub(2)],
        ..OrderPlanDraft::default()
    };
    draft.least_certified = if dice.one_in(5) { 400_000 } else { 0 };
    draft.most_pencils_stored = dice.one_in(5).then(|| dice.roll(5));
    draft.most_slats_stored = dice.one_in(5).then(|| dice.roll(3));
    draft.limits.changeovers = dice.one_in(8).then(|| 1 + dice.roll(1));
    draft.limits.cubic_millimetres = dice.one_in(8).then(|| dice.roll(40) as i64);
    draft.limits.cost = dice.one_in(8).then(|| dice.roll(40) as i64 * money);
    draft
}
