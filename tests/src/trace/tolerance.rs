//! Good pencils: what the dice count and what the integrals give.

use super::{Trace, UNITS};
use crate::cases::{any_accuracy, any_barrel, any_rules, any_slat, any_turn};
use crate::dice::Dice;
use solver::tolerance::{BLOCK, Estimate, Fault, Tally, Trial, Varied, choices};
use solver::{
    Layout, Setup, Sheet, draw_columns, draw_curve, draw_good_map, draw_scatter, lay_out,
};

/// Sandwiches laid, each made by the dice of one block.
const CASES: u64 = 24;

impl Trace {
    pub(super) fn tolerances(&mut self) {
        for case in 0..CASES {
            self.tolerance(case);
        }
    }

    fn tolerance(&mut self, case: u64) {
        let mut dice = Dice::new(9_000_000 + case);
        let made = (
            any_barrel(&mut dice),
            any_slat(&mut dice),
            any_slat(&mut dice),
            any_rules(&mut dice),
            any_accuracy(&mut dice),
        );
        let (Some(barrel), Some(top), Some(bottom), Some(rules), Some(accuracy)) = made else {
            self.line("tolerance", &format!("{case} cannot be made"));
            return;
        };
        let setup = Setup {
            barrel: &barrel,
            turn: any_turn(&mut dice),
            top: &top,
            bottom: &bottom,
            rules: &rules,
        };
        let layout = lay_out(&setup);
        let trial = Trial::new(&setup, &layout, &accuracy);
        self.line("tolerance", &format!("{case} {}", trial.across()));
        let tally = trial.simulate(case, 0..1, &mut |_| true);
        let faults = Fault::ALL.map(|fault| (tally.faulty(fault), tally.only_faulty(fault)));
        let counts = (tally.histogram(), tally.good_at(), faults);
        self.line("tally", &format!("{BLOCK} {counts:?}"));
        self.estimate("good", tally.good());
        for centre in tally.centres().iter().take(8) {
            self.numbers("centre", &[centre.x, centre.y]);
        }

        let prospect = trial.prospect();
        self.numbers("chances", &[prospect.centred, prospect.admitted]);
        for face in &prospect.faces {
            self.numbers("face", &[face.normal.x, face.normal.y, face.holds]);
        }
        for position in &prospect.positions {
            let good = position.good.unwrap_or(-1.0);
            self.numbers("position", &[position.complete, good]);
        }
        for share in trial.shares() {
            let numbers = [share.across, share.upright, share.off_centre, share.wall];
            self.numbers("share", &numbers);
        }
        for (_, gained) in trial.halvings(case, 0..1, &mut |_| true) {
            self.estimate("halved", gained);
        }
        let sheet = Sheet {
            width: dice.between(280.0, 1200.0),
            row: 28.0,
            text: 64.0,
            unit: UNITS[(case % 2) as usize],
        };
        self.drawn(&setup, &layout, &tally, &sheet);
        for varied in [Varied::Count, Varied::Pitch] {
            let tried = choices(&setup, &accuracy, varied, case, 0..1, &mut |_| true);
            self.line("best", &format!("{:?} {:?}", tried.best, tried.laid));
            for choice in &tried.list {
                let price = choice.gross_price.unwrap_or(-1.0);
                self.numbers("choice", &[choice.pitch.in_millimetres(), price]);
                self.estimate("good", choice.good);
                self.estimate("behind", choice.behind);
            }
            let chart = draw_curve(&tried, varied, &sheet);
            self.line("curve", &format!("{chart:?}"));
        }
    }

    fn drawn(&mut self, setup: &Setup<'_>, layout: &Layout, tally: &Tally, sheet: &Sheet) {
        let map = draw_good_map(setup, layout, &tally.good_shares(), sheet);
        self.line("good map", &format!("{map:?}"));
        let scatter = draw_scatter(setup, layout, tally.centres(), sheet);
        self.line("scatter", &format!("{scatter:?}"));
        let columns = draw_columns(tally.histogram(), sheet);
        self.line("columns", &format!("{columns:?}"));
    }

    fn estimate(&mut self, name: &str, estimate: Estimate) {
        self.numbers(name, &[estimate.mean, estimate.error]);
    }
}
