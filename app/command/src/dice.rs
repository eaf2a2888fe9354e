//! Which dice are thrown, and how often.

use solver::tolerance::{BLOCK, Tally, Trial};

/// The most sandwiches that are made until an error is small enough.
const MOST: u64 = 100_000_000;

/// The most sandwiches of which each is made in many ways.
const MOST_COMPARED: u64 = 1_000_000;

/// Which dice are thrown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Dice {
    /// Where they begin.
    pub(crate) seed: u64,
    /// When they have been thrown often enough.
    pub(crate) enough: Enough,
}

/// When dice have been thrown often enough.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Enough {
    /// With so many sandwiches.
    Sandwiches(u64),
    /// With a standard error of the good pencils of a sandwich no larger than this.
    Error(f64),
}

impl Dice {
    /// Makes sandwiches until there are enough.
    pub(crate) fn throw(&self, trial: &Trial) -> Tally {
        match self.enough {
            Enough::Sandwiches(count) => trial.simulate(self.seed, 0..blocks(count), &mut |_| true),
            Enough::Error(error) => trial.simulate(self.seed, 0..blocks(MOST), &mut |tally| {
                !is_sharp(tally, error)
            }),
        }
    }

    /// Blocks of sandwiches that are made in many ways, after so many in one way.
    pub(crate) fn compared(sandwiches: u64) -> u64 {
        blocks(sandwiches.min(MOST_COMPARED))
    }

    /// Whether the error that was asked for is kept; so too where none was.
    pub(crate) fn is_met(&self, tally: &Tally) -> bool {
        match self.enough {
            Enough::Sandwiches(_) => true,
            Enough::Error(error) => is_sharp(tally, error),
        }
    }
}

/// Whether the standard error is small enough. One sandwich without any good pencil that was not
/// seen among them may not matter more than that error: otherwise the first sandwiches, all alike,
/// would do.
fn is_sharp(tally: &Tally, error: f64) -> bool {
    let across = tally.good_at().len() as f64;
    tally.good().error <= error && across / tally.sandwiches() as f64 <= error
}

/// Blocks with at least so many sandwiches.
const fn blocks(sandwiches: u64) -> u64 {
    sandwiches.div_ceil(BLOCK)
}
