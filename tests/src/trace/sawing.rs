//! Planks sawn into blanks: plans, bounds, proofs, drawings and lists.

use super::{Trace, UNITS};
use crate::dice::Dice;
use solver::sawing::{
    BlankOrder, Dimensions, OffcutWorth, PlankStock, SawingAim, SawingBalance, SawingData,
    SawingDraft, SawingLimits, SawingList, SawingNames, SawnClass, saw,
};
use solver::{Sheet, draw_cut};

/// Shops that are traced.
const SHOPS: u64 = 16;

impl Trace {
    pub(super) fn sawing(&mut self) {
        for case in 0..SHOPS {
            let mut dice = Dice::new(6_000_000 + case);
            match any_shop(&mut dice).check() {
                Ok(data) => self.shop(case, &data, &mut dice),
                Err(problems) => self.line("shop", &format!("{case} {problems:?}")),
            }
        }
    }

    fn shop(&mut self, case: u64, data: &SawingData, dice: &mut Dice) {
        let limits = SawingLimits { relaxations: 25 };
        let mut plan = None;
        let outcome = saw(data, &limits, &mut |progress| {
            plan.clone_from(&progress.best);
            true
        });
        self.line("sawn", &format!("{case} {outcome:?}"));
        let Some(plan) = plan else { return };
        if let Some(balance) = SawingBalance::of(data, &plan) {
            let shares = SawnClass::ALL.map(|class| balance.share(class));
            self.numbers("wood", &shares);
        }
        let names = SawingNames {
            planks: &[],
            blanks: &[],
        };
        for unit in UNITS {
            if let Some(list) = SawingList::of(data, &plan) {
                self.line("list", &format!("{:?}", list.cuts_csv(&names, unit)));
            }
            let sheet = Sheet {
                width: dice.between(280.0, 1600.0),
                row: dice.between(24.0, 48.0),
                text: dice.between(56.0, 96.0),
                unit,
            };
            let first = plan.cuts.first();
            if let Some(drawing) =
                first.and_then(|(pattern, _)| draw_cut(pattern, data, &names, &sheet))
            {
                self.drawing(&drawing);
            }
        }
    }
}

/// A shop of up to three kinds of plank and eight kinds of blank.
fn any_shop(dice: &mut Dice) -> SawingDraft {
    let mut whole = |least: i64, most: i64| {
        let span = (most - least + 1).unsigned_abs();
        least + (dice.bits() % span).cast_signed()
    };
    let planks = (0..whole(1, 3))
        .map(|_| PlankStock {
            size: Dimensions {
                length: whole(1_800, 4_000) * 1000,
                width: whole(100, 220) * 1000,
                thickness: whole(80, 90) * 1000,
            },
            end_trim: whole(0, 20) * 1000,
            edge_trim: whole(0, 5) * 1000,
            price: whole(500, 2_000),
            on_hand: (whole(0, 3) == 0).then(|| whole(1, 20).unsigned_abs()),
        })
        .collect();
    let blanks = (0..whole(1, 8))
        .map(|_| BlankOrder {
            size: Dimensions {
                length: 186_000 + whole(0, 3) * 30_000,
                width: whole(70, 80) * 1000,
                thickness: whole(50, 90) * 100,
            },
            demand: whole(0, 900).unsigned_abs(),
            over_worth: whole(0, 4),
            most_over: whole(0, 30).unsigned_abs(),
        })
        .collect();
    SawingDraft {
        planks,
        blanks,
        crosscut_kerf: whole(0, 50) * 100,
        rip_kerf: whole(8, 20) * 100,
        offcuts: (whole(0, 1) == 0).then(|| OffcutWorth {
            shortest: whole(300, 900) * 1000,
            metre: whole(0, 100),
        }),
        aim: SawingAim::ALL[(whole(0, 2)).unsigned_abs() as usize],
    }
}
