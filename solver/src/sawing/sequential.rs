//! Plans made plank by plank, with the values corrected by what they led to.
//!
//! Sequential value correction (Mukhacheva & Zalgaller 1993; Belov & Scheithauer 2007): each plank
//! is filled for the most value; the blanks of a plank that was filled badly become dearer, so that
//! in the next plan they are placed sooner and with better company.

use super::data::SawingData;
use super::needs::Needs;
use super::pattern::CutPattern;
use super::pricing::{Values, price};

/// Blanks are worth a little more than their share of wood the larger they are.
const EXPONENT: f64 = 1.02;
/// Values are whole numbers of this size.
const FINENESS: f64 = 1e9;

/// Values of blanks, corrected from plan to plan.
pub(super) struct Sequential<'a> {
    data: &'a SawingData,
    /// Wood of each blank, kerfs included, in parts of the largest plank.
    wood: Vec<f64>,
    values: Vec<f64>,
    /// A stream of numbers that looks like dice, the same in every run.
    dice: u64,
}

impl<'a> Sequential<'a> {
    pub(super) fn new(data: &'a SawingData) -> Self {
        let draft = data.draft();
        let largest = (data.boards().iter())
            .map(|board| board.length as f64 * board.width as f64)
            .fold(1.0, f64::max);
        let wood: Vec<f64> = data
            .blanks()
            .iter()
            .map(|blank| {
                let length = (blank.size.length + draft.crosscut_kerf) as f64;
                length * (blank.size.thickness + draft.rip_kerf) as f64 / largest
            })
            .collect();
        let values = wood.iter().map(|&wood| libm::pow(wood, EXPONENT)).collect();
        Self {
            data,
            wood,
            values,
            dice: 1,
        }
    }

    /// The next plan; not all that is wanted where the planks do not suffice.
    pub(super) fn plan(&mut self, needs: &Needs) -> Vec<(CutPattern, u64)> {
        let mut left = needs.clone();
        let mut cuts = Vec::new();
        while !left.is_met() {
            let values: Vec<i64> = self
                .values
                .iter()
                .map(|value| (value * FINENESS) as i64 + 1)
                .collect();
            let Some(pattern) = self.best_plank(&left, &values) else {
                break;
            };
            let count = left.room_for(&pattern).max(1);
            self.correct(&pattern, count, &left);
            left.take(&pattern, count);
            cuts.push((pattern, count));
        }
        cuts
    }

    /// The plank with the most value for what it costs.
    fn best_plank(&self, left: &Needs, values: &[i64]) -> Option<CutPattern> {
        let most = left.wanted.clone();
        let mut best: Option<(f64, CutPattern)> = None;
        for plank in 0..left.planks.len() {
            if left.is_out_of(plank) {
                continue;
            }
            let values = Values {
                blanks: values,
                unit: 0,
                most: &most,
            };
            let priced = price(self.data, plank, values, 1);
            let Some(pattern) = priced.patterns.into_iter().next() else {
                continue;
            };
            if pattern.sections.is_empty() {
                continue;
            }
            let worth: f64 = (pattern.made(most.len()).iter().zip(values.blanks))
                .map(|(&made, &value)| made as f64 * value as f64)
                .sum();
            let rate = worth / (self.data.weight(plank) as f64 + 1e-9);
            if best.as_ref().is_none_or(|(known, _)| rate > *known) {
                best = Some((rate, pattern));
            }
        }
        best.map(|(_, pattern)| pattern)
    }

    /// Blanks of a plank with much waste become dearer.
    fn correct(&mut self, pattern: &CutPattern, count: u64, left: &Needs) {
        let made = pattern.made(self.wood.len());
        let board = &self.data.boards()[pattern.plank];
        let used: f64 = made
            .iter()
            .zip(&self.wood)
            .map(|(&made, wood)| made as f64 * wood)
            .sum();
        let whole = board.length as f64 * board.width as f64;
        let largest = (self.data.boards().iter())
            .map(|board| board.length as f64 * board.width as f64)
            .fold(1.0, f64::max);
        let factor = if used > 0.0 {
            whole / largest / used
        } else {
            1.0
        };
        for (blank, &made) in made.iter().enumerate() {
            if made == 0 {
                continue;
            }
            self.dice = self
                .dice
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            // Between 2/3 and 3/2.
            let spread = 2.0 / 3.0 + (self.dice >> 40) as f64 / (1_u64 << 24) as f64 * (5.0 / 6.0);
            let weight = spread * (left.wanted[blank] + self.data.blanks()[blank].demand) as f64;
            let now = (made * count) as f64;
            let target = libm::pow(self.wood[blank], EXPONENT) * factor;
            self.values[blank] = (weight * self.values[blank] + now * target) / (weight + now);
        }
    }
}
