//! Several ways of making one sandwich, all with the same dice.

use super::tally::{Estimate, Faults};
use super::throw::Throw;
use super::trial::{BLOCK, Trial};
use super::ziggurat::Ziggurat;
use std::ops::Range;

/// Good pencils of each way, counted so that the error of any difference is known.
///
/// With the good pencils a_i and b_i of two ways in sandwich i, made with the same numbers, the
/// difference has the standard error of the a_i − b_i, which is far below those of the two means
/// where both fail together. All sums are whole numbers.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Paired {
    sandwiches: u64,
    ways: usize,
    /// Σ a_i for each way.
    sums: Vec<i64>,
    /// Σ a_i·b_i for each pair of ways, the first one running slowest.
    products: Vec<i64>,
}

impl Paired {
    /// Makes the sandwiches of some blocks in every way. After each block, `each` hears how many
    /// sandwiches are made; the work ends when it answers `false`.
    pub(super) fn play(
        trials: &[Trial],
        seed: u64,
        blocks: Range<u64>,
        each: &mut dyn FnMut(u64) -> bool,
    ) -> Self {
        let ways = trials.len();
        let most = trials.iter().map(Trial::across).max().unwrap_or(0);
        let ziggurat = Ziggurat::new();
        let mut throw = Throw::new(most);
        let mut faults = vec![Faults::NONE; most];
        let mut good = vec![0_i64; ways];
        let mut paired = Self {
            sandwiches: 0,
            ways,
            sums: vec![0; ways],
            products: vec![0; ways * ways],
        };
        for block in blocks {
            let first = block.wrapping_mul(BLOCK);
            for step in 0..BLOCK {
                throw.again(&ziggurat, seed, first.wrapping_add(step));
                for (trial, good) in trials.iter().zip(&mut good) {
                    let faults = &mut faults[..trial.across()];
                    trial.judge(&throw, faults);
                    *good = faults
                        .iter()
                        .map(|faults| i64::from(faults.is_good()))
                        .sum();
                }
                paired.count(&good);
            }
            if !each(paired.sandwiches) {
                break;
            }
        }
        paired
    }

    fn count(&mut self, good: &[i64]) {
        self.sandwiches += 1;
        for (sum, good) in self.sums.iter_mut().zip(good) {
            *sum += good;
        }
        let pairs = good
            .iter()
            .flat_map(|one| good.iter().map(move |other| one * other));
        for (product, pair) in self.products.iter_mut().zip(pairs) {
            *product += pair;
        }
    }

    /// Expected good pencils of a way.
    pub(super) fn good(&self, way: usize) -> Estimate {
        Estimate::of(self.sandwiches, self.sums[way], self.product(way, way))
    }

    /// How many more good pencils one way has than another.
    pub(super) fn difference(&self, one: usize, other: usize) -> Estimate {
        let squares =
            self.product(one, one) - 2 * self.product(one, other) + self.product(other, other);
        Estimate::of(self.sandwiches, self.sums[one] - self.sums[other], squares)
    }

    fn product(&self, one: usize, other: usize) -> i64 {
        self.products[one * self.ways + other]
    }
}
