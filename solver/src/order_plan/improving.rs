//! Better plans near a relaxation and near other plans.

use super::model::{Point, Question, Whole, dive};
use super::neighbourhood::Neighbourhood;
use super::ranges::Ranges;
use super::search::Search;

/// Branches for a plan near a point, and for whole sandwiches in a plan.
const NEAR_NODES: u64 = 200;
const POLISH_NODES: u64 = 100;
/// Runs beyond which whole sandwiches are not sought among so few branches.
const MOST_POLISHED: usize = 60;
/// Branches for a part of a plan, and how often the parts are formed in another way.
const PART_NODES: u64 = 150;
const IMPROVING_ROUNDS: usize = 6;

impl Search<'_> {
    /// Makes choices one after the other within ranges; every point on the way is rounded.
    fn dive(&mut self, ranges: &Ranges) {
        let cuts = self.cuts.clone();
        let question = Question {
            ranges,
            cuts: &cuts,
            whole: Whole::Nothing,
            most: None,
            with_reserve: false,
        };
        let mut last = None;
        let data = self.data;
        let steps = dive(data, question, &mut |point, value| {
            let is_open = self.value().is_none_or(|best| value < best);
            if is_open {
                self.offer_rounded(point);
                last = Some(point.clone());
            }
            is_open && !self.is_over()
        });
        self.steps += steps;
        if let Some(point) = last {
            self.polish(&point);
        }
    }

    /// A search near a point: only set-ups, orders and tiers that it chooses in part.
    pub(super) fn near(&mut self, point: &Point) {
        if self.is_over() {
            return;
        }
        let all = self.ranges.clone();
        self.dive(&all);
        let ranges = self.ranges.near(point);
        let finding = self.ask(
            &ranges,
            (Whole::Choices, false),
            NEAR_NODES,
            &mut |_, _, _| (),
        );
        if let Some(point) = finding.best {
            self.take(&point);
        }
    }

    /// A plan near a point whose choices are whole.
    pub(super) fn take(&mut self, point: &Point) {
        self.offer_exact(point);
        self.offer_rounded(point);
        self.polish(point);
    }

    /// Whole packs and sandwiches for choices that are made.
    fn polish(&mut self, point: &Point) {
        if self.is_over() {
            return;
        }
        let ranges = self.ranges.chosen(point);
        let packs = self.ask(
            &ranges,
            (Whole::Packs, true),
            POLISH_NODES,
            &mut |_, _, _| (),
        );
        if let Some(point) = packs.best {
            self.offer_rounded(&point);
        }
        let runs = ranges.runs.iter().flatten().filter(|most| **most > 0);
        if self.is_over() || runs.count() > MOST_POLISHED {
            return;
        }
        let runs = self.ask(
            &ranges,
            (Whole::Runs, false),
            POLISH_NODES,
            &mut |_, _, _| (),
        );
        if let Some(point) = runs.best {
            self.offer_exact(&point);
            self.offer_rounded(&point);
        }
    }

    /// Plans parts of the best plan anew until no part yields a better one.
    pub(super) fn improve(&mut self) {
        for round in 0..IMPROVING_ROUNDS {
            let mut is_better = false;
            for part in Neighbourhood::parts(self.data, round) {
                let Some(best) = self.best.as_ref().filter(|_| !self.is_over()) else {
                    return;
                };
                let before = best.value(self.data.aim());
                let ranges = part.around(self.data, &self.ranges, best);
                self.dive(&ranges);
                let finding = self.ask(
                    &ranges,
                    (Whole::Choices, false),
                    PART_NODES,
                    &mut |_, _, _| (),
                );
                if let Some(point) = finding.best {
                    self.take(&point);
                }
                is_better |= self.value() < Some(before);
            }
            if !is_better && round > 0 {
                break;
            }
        }
    }
}
