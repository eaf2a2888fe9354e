//! A lower bound that anyone can check, in whole numbers.
//!
//! Give every kind of blank a value of 0 or more, every kind of plank a toll, and what is made small
//! a scale of 1 or more, all whole numbers. A toll above 0 asks for a limit on the planks. If no plank
//! can be sawn into blanks worth more than its scaled weight and its toll,
//!
//! ```text
//! Σ_i made[i,j]·value[i] + scale·offcut[j] ≤ scale·weight[p] + toll[p]     for all patterns j of p
//! ```
//!
//! with no more of any blank than is of use, then every plan that saws between least[p] and most[p]
//! planks of each kind has
//!
//! ```text
//! scale·cost ≥ Σ_i wanted[i]·value[i] − Σ_i over[i]·(scale·worth[i] − value[i])⁺
//!              − Σ_p most[p]·toll[p]⁺ + Σ_p least[p]·toll[p]⁻
//! ```
//!
//! as the left side of the condition, summed over the planks of the plan, is at least the value of
//! all that is wanted and of what is made beyond. (Weak duality; that a value found too high may be
//! mended by the scale is the bound of Farley 1990.) The right side over the scale, rounded up, and
//! further up to a multiple of the common divisor of the weights where nothing is taken off them, is
//! a bound on the cost of every plan. It is no proof that a plan attains it.
//!
//! Where missing blanks are counted, planks weigh nothing, a missing blank 1, and a value is no more
//! than the scale; the rest is the same.

use super::data::{MOST_LENGTH, SawingData};
use super::needs::Needs;
use super::pricing::{Values, price};

/// Values, tolls and a scale, of which the bound follows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Certificate {
    /// Value of each kind of blank.
    pub values: Vec<i64>,
    /// Toll of each kind of plank, at most 0 for those without a limit; below 0 it is a reward.
    pub tolls: Vec<i64>,
    /// By what the weights are multiplied, at least 1.
    pub scale: i64,
}

impl Certificate {
    /// Values of 0: no plan costs less than what blanks beyond the demand may be worth.
    pub(super) fn trivial(data: &SawingData) -> Self {
        Self {
            values: vec![0; data.blanks().len()],
            tolls: vec![0; data.planks().len()],
            scale: 1,
        }
    }

    /// What a plank may be worth in blanks and offcut.
    fn allowed(&self, data: &SawingData, plank: usize) -> i128 {
        i128::from(self.scale) * i128::from(data.weight(plank)) + i128::from(self.tolls[plank])
    }

    /// Whether its numbers are small enough to be counted with.
    pub(super) fn is_counted(&self, data: &SawingData, needs: &Needs) -> bool {
        (0..needs.planks.len()).all(|plank| {
            needs.is_out_of(plank) || self.allowed(data, plank) <= i128::from(MOST_SCALED)
        })
    }

    /// The bound that follows if the condition holds.
    pub(super) fn bound(&self, data: &SawingData, needs: &Needs) -> i64 {
        let scale = i128::from(self.scale);
        let mut sum: i128 = 0;
        for (blank, &value) in self.values.iter().enumerate() {
            let value = i128::from(value);
            let worth = i128::from(data.over_worth(blank).0) * scale;
            sum += i128::from(needs.wanted[blank]) * value;
            sum -= i128::from(needs.over[blank]) * (worth - value).max(0);
        }
        for (range, &toll) in needs.planks.iter().zip(&self.tolls) {
            let planks = if toll < 0 {
                range.least
            } else {
                range.most.unwrap_or(0)
            };
            sum -= i128::from(planks) * i128::from(toll);
        }
        let step = i128::from(step(data));
        let bound = sum.div_euclid(scale) + i128::from(sum.rem_euclid(scale) > 0);
        let bound =
            bound.div_euclid(step) * step + if bound.rem_euclid(step) > 0 { step } else { 0 };
        // Weights and pieces are bounded, so that costs are within i64.
        bound.clamp(i128::from(i64::MIN), i128::from(i64::MAX)) as i64
    }

    /// No plan leaves fewer blanks missing, where this certificate was made for that question; nothing
    /// where it is wrong. Every plank is priced anew, in whole numbers.
    #[must_use]
    pub fn missing(&self, data: &SawingData) -> Option<i64> {
        let data = data.counting_missing();
        self.proved(&data, &Needs::of(&data))
    }

    /// The bound for what is needed, after pricing every plank anew; nothing where a plank is worth
    /// more than the condition allows.
    pub(super) fn proved(&self, data: &SawingData, needs: &Needs) -> Option<i64> {
        let fits = self.values.len() == data.blanks().len()
            && self.tolls.len() == data.planks().len()
            && self.is_counted(data, needs)
            && self.scale >= 1
            && self.values.iter().all(|&value| value >= 0)
            && (!data.counts_missing() || self.values.iter().all(|&value| value <= self.scale))
            && (needs.planks.iter().zip(&self.tolls))
                .all(|(range, &toll)| range.most.is_some() || toll <= 0);
        let most = needs.most();
        let values = Values {
            blanks: &self.values,
            unit: self.scale,
            most: &most,
        };
        let holds = fits
            && (0..data.planks().len()).all(|plank| {
                let allowed = self.allowed(data, plank);
                needs.is_out_of(plank) || i128::from(price(data, plank, values, 1).most) <= allowed
            });
        holds.then(|| self.bound(data, needs))
    }
}

/// Most that planks may be worth in a certificate that is counted with.
const MOST_SCALED: i64 = 1 << 60;

/// All costs are multiples of this.
pub(super) fn step(data: &SawingData) -> i64 {
    let takes_off = data.offcut_worth(MOST_LENGTH) > 0
        || (0..data.blanks().len()).any(|blank| data.over_worth(blank).1 > 0);
    let divisor = (0..data.planks().len())
        .filter(|&plank| !data.boards()[plank].strips.is_empty())
        .fold(0, |divisor, plank| {
            common_divisor(divisor, data.weight(plank))
        });
    if takes_off { 1 } else { divisor.max(1) }
}

fn common_divisor(one: i64, other: i64) -> i64 {
    if other == 0 {
        one
    } else {
        common_divisor(other, one % other)
    }
}
