//! Invented order books of any size, the same from the same seed.

use solver::order_plan::{
    Laid, LineSetup, Machine, Materials, Offer, OrderPlanDraft, PencilDemand, PriceTier, Pricing,
    StageYields, StockLine,
};

use crate::dice::Dice;

/// How large an invented order book is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BookSize {
    /// Ways to set up the line.
    pub setups: usize,
    /// Slat stocks.
    pub stocks: usize,
    /// Periods.
    pub periods: usize,
}

/// An order book of this size, with two offers of three tiers for each stock. All numbers are
/// invented.
#[must_use]
pub fn order_book(seed: u64, size: BookSize) -> OrderPlanDraft {
    let mut dice = Dice::new(seed);
    let pencils = (size.setups * 2 / 5).max(1);
    let many = size.periods > 1;
    let setups: Vec<LineSetup> = (0..size.setups)
        .map(|setup| line_setup(&mut dice, setup % pencils, size))
        .collect();
    let pencils: Vec<PencilDemand> = (0..pencils)
        .map(|_| {
            let due = |dice: &mut Dice| {
                let is_due = !many || dice.bits() % 10 < 7;
                u64::from(is_due) * 144 * (20 + dice.bits() % 180)
            };
            PencilDemand {
                due: (0..size.periods).map(|_| due(&mut dice)).collect(),
                on_hand: if dice.bits().is_multiple_of(3) {
                    144 * (dice.bits() % 20)
                } else {
                    0
                },
                holding: 30 + (dice.bits() % 40).cast_signed(),
            }
        })
        .collect();
    // As if each pencil were made nine to a sandwich.
    let sandwiches = pencils.iter().flat_map(|pencil| &pencil.due).sum::<u64>() / 8;
    let stocks: Vec<StockLine> = (0..size.stocks)
        .map(|_| StockLine {
            on_hand: if dice.bits().is_multiple_of(2) {
                dice.bits() % 3_000
            } else {
                0
            },
            holding: 40 + (dice.bits() % 60).cast_signed(),
            usable: 960_000 + (dice.bits() % 40) as u32 * 1_000,
            cubic_millimetres: 62_000 + (dice.bits() % 12_000) as u32,
            sawing: None,
        })
        .collect();
    let per_stock = 2 * sandwiches / size.stocks as u64;
    let offers = (0..2 * size.stocks)
        .map(|offer| offer_of(&mut dice, offer / 2, per_stock, many, offer % 2 == 1))
        .collect();
    // About twice the mean of a period.
    let hour_share = 2.0 * sandwiches as f64 / size.periods as f64;
    let seconds = many.then_some((hour_share * 0.9) as u64 + 36_000);
    OrderPlanDraft {
        periods: size.periods,
        pencils,
        stocks,
        setups,
        offers,
        machine: Machine {
            hour_cost: 6_500,
            seconds: vec![seconds; size.periods],
        },
        stages: StageYields {
            laying: 995_000,
            gluing: 990_000,
            shaping: 985_000,
            coating: 990_000,
            sharpening: 995_000,
            inspection: 985_000,
        },
        materials: Materials {
            thousand_leads: 2_400,
            thousand_glued: 1_100,
            thousand_coated: 900,
        },
        ..OrderPlanDraft::default()
    }
}

fn line_setup(dice: &mut Dice, pencil: usize, size: BookSize) -> LineSetup {
    let bottom = (dice.bits() % size.stocks as u64) as usize;
    let top = if dice.bits().is_multiple_of(8) {
        (dice.bits() % size.stocks as u64) as usize
    } else {
        bottom
    };
    let cost = 3_000 + (dice.bits() % 150).cast_signed() * 100;
    LineSetup {
        laid: vec![Laid {
            pencil,
            leads: 7 + (dice.bits() % 4) as u32,
            good: 900_000 + (dice.bits() % 95) as u32 * 1_000,
        }],
        bottom,
        top,
        milliseconds: 500 + (dice.bits() % 500) as u32,
        changeover_cost: vec![cost; size.periods],
        changeover_seconds: 900 + (dice.bits() % 8) as u32 * 300,
        credit: 20 + (dice.bits() % 50).cast_signed(),
    }
}

fn offer_of(dice: &mut Dice, stock: usize, slats: u64, many: bool, dear: bool) -> Offer {
    let pack_slats = dice.one_of(&[250, 400, 500, 1_000]);
    let packs = (slats / u64::from(pack_slats)).max(8) as u32;
    let price = i64::from(pack_slats) * (11 + (dice.bits() % 70).cast_signed() / 10);
    let off = |share: i64| price * (1_000 - share) / 1_000;
    let (first, second) = (20 + dice.bits() % 40, 30 + dice.bits() % 50);
    let tier = |from_packs, pack_price| PriceTier {
        from_packs,
        pack_price,
    };
    Offer {
        stock,
        pack_slats,
        tiers: vec![
            tier(1, price),
            tier(2 + packs / 8, off(first.cast_signed())),
            tier(4 + packs / 3, off((first + second).cast_signed())),
        ],
        pricing: if dice.bits().is_multiple_of(3) {
            Pricing::Incremental
        } else {
            Pricing::AllUnits
        },
        order_cost: 2_000 + (dice.bits() % 60).cast_signed() * 100,
        least_packs: 1 + (dice.bits() % 3) as u32,
        most_packs: 2 * packs,
        most_packs_in_all: None,
        lead_periods: usize::from(many && dear && dice.bits().is_multiple_of(2)),
        certified: dice.bits().is_multiple_of(2),
    }
}

/// A book as JSON, under the names of the draft. Limits of stores, certified wood and aims are left
/// out, as no invented book has them.
#[must_use]
pub fn json(draft: &OrderPlanDraft) -> String {
    let list = |items: Vec<String>| format!("[{}]", items.join(","));
    let numbers = |numbers: &[u64]| list(numbers.iter().map(u64::to_string).collect());
    let pencils = draft.pencils.iter().map(|line| {
        let due = numbers(&line.due);
        let (on_hand, holding) = (line.on_hand, line.holding);
        format!(r#"{{"due":{due},"on_hand":{on_hand},"holding":{holding}}}"#)
    });
    let stocks = draft.stocks.iter().map(|line| {
        format!(
            r#"{{"on_hand":{},"holding":{},"usable":{},"cubic_millimetres":{}}}"#,
            line.on_hand, line.holding, line.usable, line.cubic_millimetres
        )
    });
    let setups = draft.setups.iter().map(|line| {
        let laid = line.laid.iter().map(|laid| {
            let (pencil, leads, good) = (laid.pencil, laid.leads, laid.good);
            format!(r#"{{"pencil":{pencil},"leads":{leads},"good":{good}}}"#)
        });
        let changeover = line.changeover_cost.iter().map(i64::to_string).collect();
        format!(
            r#"{{"laid":{},"bottom":{},"top":{},"milliseconds":{},"changeover_cost":{},"changeover_seconds":{},"credit":{}}}"#,
            list(laid.collect()),
            line.bottom,
            line.top,
            line.milliseconds,
            list(changeover),
            line.changeover_seconds,
            line.credit
        )
    });
    let offers = draft.offers.iter().map(|line| {
        let tiers = line.tiers.iter();
        let tiers = tiers.map(|tier| format!("[{},{}]", tier.from_packs, tier.pack_price));
        format!(
            r#"{{"stock":{},"pack_slats":{},"tiers":{},"incremental":{},"order_cost":{},"least_packs":{},"most_packs":{},"lead_periods":{}}}"#,
            line.stock,
            line.pack_slats,
            list(tiers.collect()),
            line.pricing == Pricing::Incremental,
            line.order_cost,
            line.least_packs,
            line.most_packs,
            line.lead_periods
        )
    });
    let seconds = draft.machine.seconds.iter();
    let seconds = seconds.map(|seconds| seconds.map_or("null".to_owned(), |s| s.to_string()));
    let stages = draft.stages.all().map(u64::from);
    let materials = draft.materials;
    format!(
        r#"{{"periods":{},"pencils":{},"stocks":{},"setups":{},"offers":{},"hour_cost":{},"seconds":{},"stages":{},"leads":{},"glued":{},"coated":{}}}"#,
        draft.periods,
        list(pencils.collect()),
        list(stocks.collect()),
        list(setups.collect()),
        list(offers.collect()),
        draft.machine.hour_cost,
        list(seconds.collect()),
        numbers(&stages),
        materials.thousand_leads,
        materials.thousand_glued,
        materials.thousand_coated
    )
}
