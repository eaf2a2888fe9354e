//! The ways to make a pencil from the slats and with the cutters of a works.

use crate::accuracy::Accuracy;
use crate::barrel::Barrel;
use crate::cutter_set::CutterSet;
use crate::layout::{Setup, lay_out};
use crate::materials::chips_of_sandwich;
use crate::order_plan::MILLION;
use crate::rules::{PitchRule, Rules};
use crate::seam::Seam;
use crate::search_rules::Pairs;
use crate::slat::Slat;
use crate::tolerance::Trial;

/// A layout that the line can be set up for.
#[derive(Debug, Clone, PartialEq)]
pub struct LaidSetup {
    /// The pencil, by its place in the list of barrels.
    pub barrel: usize,
    /// The stock below the glue plane, by its place in the list.
    pub bottom: usize,
    /// The stock above the glue plane.
    pub top: usize,
    /// The way round.
    pub seam: Seam,
    /// The cutter set, by its place in the list; none where no owned one serves the pencil and grooves
    /// lie as close as the land allows.
    pub set: Option<usize>,
    /// Grooves side by side.
    pub across: u32,
    /// Pencils of a sandwich.
    pub pencils: u32,
    /// Share of them that the errors of the line leave good, millionths, rounded down.
    pub good: u32,
    /// Chips of a sandwich, grams, as moist as the slats are grooved; rounded down.
    pub chips: u32,
}

/// What pencils are laid on and with.
pub(super) struct Shop<'a> {
    pub(super) slats: &'a [Slat],
    pub(super) pairs: Pairs,
    pub(super) rules: &'a Rules,
    pub(super) accuracy: Option<&'a Accuracy>,
    /// Density of the wood at grooving, kg/m³.
    pub(super) density: f64,
    /// Whether chips are sold.
    pub(super) sells_chips: bool,
}

impl Shop<'_> {
    /// The layouts of a barrel: each pair of slats that a search may try, each usual way round, with
    /// each of these sets, or as close as the land allows where there is none; of each the number across
    /// that leaves most good pencils. Those that another on the same slats beats are left out.
    ///
    /// On the same slats a sandwich takes the same time and changing over costs the same, so one that
    /// gives no fewer good pencils from no more leads, and no fewer chips where they are sold, is as good
    /// for every plan.
    pub(super) fn layouts(
        &self,
        (place, barrel): (usize, &Barrel),
        sets: &[(usize, CutterSet)],
    ) -> Vec<LaidSetup> {
        let rules = self.rules.for_any_pencil();
        let mut spacings: Vec<(Option<usize>, Rules)> = Vec::new();
        for (set, cutters) in sets {
            let rules = Rules {
                spacing: PitchRule::OfSet(cutters.pitch()),
                most: Some(cutters.most()),
                ..rules
            };
            spacings.push((Some(*set), rules));
        }
        if sets.is_empty() {
            spacings.push((None, rules));
        }
        let mut kept: Vec<LaidSetup> = Vec::new();
        for bottom in 0..self.slats.len() {
            for top in 0..self.slats.len() {
                if self.pairs == Pairs::Same && top != bottom {
                    continue;
                }
                for &seam in barrel.shape().seams() {
                    for (set, rules) in &spacings {
                        let laid = LaidSetup {
                            barrel: place,
                            bottom,
                            top,
                            seam,
                            set: *set,
                            across: 0,
                            pencils: 0,
                            good: 0,
                            chips: 0,
                        };
                        if let Some(laid) = self.best_count(barrel, laid, *rules) {
                            keep_undominated(&mut kept, laid, self.sells_chips);
                        }
                    }
                }
            }
        }
        kept
    }

    /// With the number across that leaves most good pencils, if any does.
    fn best_count(&self, barrel: &Barrel, laid: LaidSetup, mut rules: Rules) -> Option<LaidSetup> {
        let mut best: Option<LaidSetup> = None;
        loop {
            let setup = Setup {
                barrel,
                turn: barrel.turn(laid.seam),
                top: &self.slats[laid.top],
                bottom: &self.slats[laid.bottom],
                rules: &rules,
            };
            let layout = lay_out(&setup);
            let across = layout.across();
            if layout.pencils() == 0 {
                return best;
            }
            let share = match self.accuracy {
                None => 1.0,
                Some(accuracy) => {
                    let good = Trial::new(&setup, &layout, accuracy).prospect().good()?;
                    good / f64::from(across)
                }
            };
            let (groove, shaping) = layout
                .balance()
                .map_or_else(Default::default, chips_of_sandwich);
            // A cubic millimetre is 10⁻⁹ m³, and a kilogram has a thousand grams.
            let chips = (groove + shaping).in_cubic_millimetres() * 1e-6 * self.density;
            let found = LaidSetup {
                across,
                pencils: layout.pencils(),
                // A chance lies within 0 and 1.
                good: (share * f64::from(MILLION)) as u32,
                // Two slats weigh no more than some kilograms.
                chips: chips as u32,
                ..laid.clone()
            };
            if found.good_pencils() <= best.as_ref().map_or(0, LaidSetup::good_pencils) {
                return best;
            }
            best = Some(found);
            if across == 1 {
                return best;
            }
            rules.most = Some(across - 1);
        }
    }
}

impl LaidSetup {
    /// Good pencils to expect of a sandwich before the losses of the stages, millionths.
    pub(super) fn good_pencils(&self) -> u64 {
        u64::from(self.pencils) * u64::from(self.good)
    }

    fn pair(&self) -> (usize, usize) {
        (self.bottom.min(self.top), self.bottom.max(self.top))
    }

    /// Whether no plan needs the other beside this one.
    fn beats(&self, other: &Self, sells_chips: bool) -> bool {
        self.pair() == other.pair()
            && (!sells_chips || self.chips >= other.chips)
            && self.pencils <= other.pencils
            && self.good_pencils() >= other.good_pencils()
    }
}

/// Of equals the first is kept.
fn keep_undominated(kept: &mut Vec<LaidSetup>, laid: LaidSetup, sells_chips: bool) {
    if !kept.iter().any(|other| other.beats(&laid, sells_chips)) {
        kept.retain(|other| !laid.beats(other, sells_chips));
        kept.push(laid);
    }
}
