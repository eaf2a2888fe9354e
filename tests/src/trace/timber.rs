//! Moisture, and how wood moves with it.

use super::Trace;
use crate::cases::any_slat_draft;
use crate::dice::Dice;
use solver::wood::change;
use solver::{Conditions, Length, Sawing, Species, equilibrium_moisture};

impl Trace {
    pub(super) fn timber(&mut self) {
        for celsius in [-10.0, 0.0, 4.4, 21.1, 37.8, 60.0] {
            let moistures: Vec<f64> = (0..20)
                .map(|step| equilibrium_moisture(celsius, f64::from(step) * 0.05))
                .collect();
            // Two lines a temperature.
            for part in moistures.chunks(10) {
                self.numbers("emc", part);
            }
        }
        let mut dice = Dice::new(4_000_000);
        for draft in Species::handbook() {
            let Ok(species) = draft.check() else {
                self.line("species", &format!("{} cannot be", draft.name));
                continue;
            };
            for _ in 0..4 {
                self.movement(&species, &mut dice);
            }
        }
    }

    fn movement(&mut self, species: &Species, dice: &mut Dice) {
        let [from, to] = [dice.between(0.0, 40.0), dice.between(0.0, 40.0)];
        let size = Length::millimetres(dice.between(3.0, 110.0));
        let saturation = species.fibre_saturation();
        let moved = [species.radial(), species.tangential()]
            .map(|shrinkage| change(size, shrinkage, saturation, from, to).in_millimetres());
        self.numbers("moved", &moved);
        let sawing = dice.one_of(&Sawing::ALL);
        let Ok(slat) = any_slat_draft(dice).check() else {
            self.line("slat", "cannot be had");
            return;
        };
        let slat = slat.conditioned(species, sawing, from, &Conditions { moisture: to });
        let sizes = [
            slat.grooved_width(),
            slat.grooved_thickness(),
            slat.guaranteed_width(),
            slat.guaranteed_thickness(),
        ];
        self.numbers("grooved", &sizes.map(|size| size.in_millimetres()));
    }
}
