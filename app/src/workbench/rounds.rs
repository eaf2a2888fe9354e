//! How the sandwiches that dice make are shared out among workers and counted together.

use solver::tolerance::Tally;
use std::collections::BTreeMap;

/// Blocks of sandwiches that a worker is asked for at once.
pub(super) const PORTION: u32 = 64;

/// The most portions that are counted: some hundred million sandwiches.
const MOST_PORTIONS: u32 = 1526;

/// The fewest, so that an error is not told from a handful of bad pencils.
const LEAST_PORTIONS: u32 = 3;

/// Why no more is needed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Enough {
    /// The count is as exact as was wanted.
    Exact,
    /// As many sandwiches are made as are at most.
    Most,
}

/// Portions counted in the order of their numbers, whoever made them and whenever they came: so
/// the count, and where it ends, do not depend on how many workers there are.
#[derive(Debug)]
pub(super) struct Rounds {
    /// The standard error of good pencils a sandwich that is wanted.
    wanted: f64,
    /// The next portion that nobody was asked for.
    next: u32,
    /// The portions that are counted.
    counted: u32,
    /// Portions that came before their turn.
    early: BTreeMap<u32, Tally>,
    tally: Option<Tally>,
    enough: Option<Enough>,
}

impl Rounds {
    /// Nothing is counted yet.
    #[must_use]
    pub(super) const fn new(wanted: f64) -> Self {
        Self {
            wanted,
            next: 0,
            counted: 0,
            early: BTreeMap::new(),
            tally: None,
            enough: None,
        }
    }

    /// The next portion to be asked for; nothing when no more is needed.
    pub(super) fn hand_out(&mut self) -> Option<u32> {
        let portion = self.next;
        (self.enough.is_none() && portion < MOST_PORTIONS).then(|| {
            self.next += 1;
            portion
        })
    }

    /// Takes in a portion.
    pub(super) fn take(&mut self, portion: u32, tally: Tally) {
        self.early.insert(portion, tally);
        while self.enough.is_none()
            && let Some(tally) = self.early.remove(&self.counted)
        {
            self.counted += 1;
            let whole = match self.tally.take() {
                None => tally,
                Some(mut whole) => {
                    whole.merge(&tally);
                    whole
                }
            };
            let is_exact = self.counted >= LEAST_PORTIONS && whole.good().error <= self.wanted;
            self.enough = if is_exact {
                Some(Enough::Exact)
            } else {
                (self.counted == MOST_PORTIONS).then_some(Enough::Most)
            };
            self.tally = Some(whole);
        }
    }

    /// What is counted so far.
    #[must_use]
    pub(super) const fn tally(&self) -> Option<&Tally> {
        self.tally.as_ref()
    }

    /// Why no more is needed, once it is not.
    #[must_use]
    pub(super) const fn enough(&self) -> Option<Enough> {
        self.enough
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;
    use solver::lay_out;
    use solver::tolerance::{BLOCK, Trial};

    fn portion(number: u32) -> Tally {
        let project = demo::project();
        let parts = project.check_layout().unwrap();
        let accuracy = project.accuracies[1].draft.check().unwrap();
        let setup = parts.setup();
        let trial = Trial::new(&setup, &lay_out(&setup), &accuracy);
        // A block stands for the portion.
        let first = u64::from(number);
        trial.simulate(1, first..first + 1, &mut |_| true)
    }

    /// What is counted when portions come in an order.
    fn counted(wanted: f64, order: &[u32]) -> Rounds {
        let mut rounds = Rounds::new(wanted);
        while rounds.next < order.len() as u32 && rounds.hand_out().is_some() {}
        for &number in order {
            rounds.take(number, portion(number));
        }
        rounds
    }

    #[test]
    fn the_count_does_not_depend_on_who_is_first() {
        let rounds = counted(0.0, &[0, 1, 2, 3, 4]);
        let mixed = counted(0.0, &[3, 0, 4, 2, 1]);
        assert_eq!(rounds.tally(), mixed.tally());
        assert_eq!(rounds.tally().unwrap().sandwiches(), 5 * BLOCK);
        assert_eq!(rounds.enough(), None);
    }

    #[test]
    fn it_ends_at_the_same_portion_whatever_came_early() {
        let rounds = counted(1.0, &[0, 1, 2, 3, 4]);
        let mixed = counted(1.0, &[4, 3, 2, 1, 0]);
        assert_eq!(rounds.enough(), Some(Enough::Exact));
        assert_eq!(mixed.enough(), rounds.enough());
        assert_eq!(rounds.tally(), mixed.tally());
        let sandwiches = u64::from(LEAST_PORTIONS) * BLOCK;
        assert_eq!(rounds.tally().unwrap().sandwiches(), sandwiches);
    }

    #[test]
    fn what_is_missing_is_waited_for() {
        let rounds = counted(1.0, &[1, 2, 3]);
        assert_eq!(rounds.tally(), None);
        assert_eq!(rounds.enough(), None);
    }

    #[test]
    fn nothing_is_handed_out_when_enough_is_counted_or_asked_for() {
        let mut rounds = counted(1.0, &[0, 1, 2]);
        assert_eq!(rounds.hand_out(), None);
        let mut endless = Rounds::new(0.0);
        let handed = std::iter::from_fn(|| endless.hand_out()).count();
        assert_eq!(handed, MOST_PORTIONS as usize);
        let one = portion(0);
        for number in 0..MOST_PORTIONS {
            assert_eq!(endless.enough(), None, "{number}");
            endless.take(number, one.clone());
        }
        assert_eq!(endless.enough(), Some(Enough::Most));
    }
}
