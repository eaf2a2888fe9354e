//! Sandwiches counted: how many good pencils each had, and what was wrong with the others.

use crate::quantity::Point;

/// What is wrong with a pencil.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Fault {
    /// The lead lies farther off centre than is allowed.
    Eccentric,
    /// Somewhere the wall round the groove is less than is asked.
    ThinWall,
    /// The two half grooves do not let the lead in.
    TightGroove,
    /// An outer pencil reaches over the edge of a slat.
    Incomplete,
}

impl Fault {
    /// How many there are.
    pub const COUNT: usize = 4;

    /// Every fault, in the order of the model.
    pub const ALL: [Self; Self::COUNT] = [
        Self::Eccentric,
        Self::ThinWall,
        Self::TightGroove,
        Self::Incomplete,
    ];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Eccentric => "Lead off centre",
            Self::ThinWall => "Wall too thin",
            Self::TightGroove => "Lead does not go in",
            Self::Incomplete => "Over the edge of a slat",
        }
    }
}

/// The faults of one pencil, one bit for each.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Faults(u8);

impl Faults {
    pub(super) const NONE: Self = Self(0);

    pub(super) const fn set(&mut self, fault: Fault, found: bool) {
        self.0 |= (found as u8) << fault as u8;
    }

    pub(super) const fn is_good(self) -> bool {
        self.0 == 0
    }

    const fn has(self, fault: Fault) -> bool {
        self.0 & (1 << fault as u8) != 0
    }

    const fn has_only(self, fault: Fault) -> bool {
        self.0 == 1 << fault as u8
    }
}

/// A number found by throwing dice.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// The mean that was found.
    pub mean: f64,
    /// Its standard error: the true value lies within two of them 19 times in 20. It is 0 where
    /// every sandwich came out alike, which says only that what is rarer than one in their
    /// number was not seen.
    pub error: f64,
}

impl Estimate {
    /// From the sum and the sum of squares of whole numbers, each found in one of `count`
    /// sandwiches: mean S/N and standard error √((Q − S²/N) / (N(N − 1))).
    pub(super) fn of(count: u64, sum: i64, squares: i64) -> Self {
        let (n, sum, squares) = (count as f64, sum as f64, squares as f64);
        if count == 0 {
            return Self {
                mean: 0.0,
                error: 0.0,
            };
        }
        let mean = sum / n;
        let variance = (squares - sum * mean).max(0.0) / (n - 1.0).max(1.0);
        Self {
            mean,
            error: (variance / n).sqrt(),
        }
    }
}

/// Sandwiches counted.
#[derive(Debug, Clone, PartialEq)]
pub struct Tally {
    sandwiches: u64,
    histogram: Vec<u64>,
    good_at: Vec<u64>,
    faults: [u64; Fault::COUNT],
    only: [u64; Fault::COUNT],
    pub(super) centres: Vec<Point>,
}

impl Tally {
    /// No sandwich yet, of so many pencils.
    pub(super) fn new(pencils: usize) -> Self {
        Self {
            sandwiches: 0,
            histogram: vec![0; pencils + 1],
            good_at: vec![0; pencils],
            faults: [0; Fault::COUNT],
            only: [0; Fault::COUNT],
            centres: Vec::new(),
        }
    }

    pub(super) fn count(&mut self, found: &[Faults]) {
        let mut good = 0;
        for (good_at, faults) in self.good_at.iter_mut().zip(found) {
            if faults.is_good() {
                *good_at += 1;
                good += 1;
            } else {
                for fault in Fault::ALL {
                    self.faults[fault as usize] += u64::from(faults.has(fault));
                    self.only[fault as usize] += u64::from(faults.has_only(fault));
                }
            }
        }
        self.sandwiches += 1;
        if let Some(count) = self.histogram.get_mut(good) {
            *count += 1;
        }
    }

    /// Counts the sandwiches of another tally as well, of the same trial and seed but other blocks.
    /// In whatever order tallies are merged, the result is the same.
    ///
    /// ```
    /// use solver::tolerance::Trial;
    /// # use solver::{AccuracyDraft, BarrelDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, lay_out};
    /// # let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
    /// # let slat = SlatDraft::new("74 × 5").check().unwrap();
    /// # let rules = RulesDraft::new().check().unwrap();
    /// # let turn = barrel.turn(Seam::ThroughFaces);
    /// # let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
    /// # let accuracy = AccuracyDraft::new("Line 1").check().unwrap();
    /// # let trial = Trial::new(&setup, &lay_out(&setup), &accuracy);
    /// let whole = trial.simulate(1, 0..4, &mut |_| true);
    /// let mut parts = trial.simulate(1, 3..4, &mut |_| true);
    /// parts.merge(&trial.simulate(1, 0..3, &mut |_| true));
    /// assert_eq!(parts, whole);
    /// ```
    pub fn merge(&mut self, other: &Self) {
        self.sandwiches += other.sandwiches;
        add(&mut self.histogram, &other.histogram);
        add(&mut self.good_at, &other.good_at);
        for fault in 0..Fault::COUNT {
            self.faults[fault] += other.faults[fault];
            self.only[fault] += other.only[fault];
        }
        if self.centres.is_empty() {
            self.centres.clone_from(&other.centres);
        }
    }

    /// Every count, in an order of its own, to be carried elsewhere; the centres are carried apart.
    #[must_use]
    pub fn numbers(&self) -> Vec<u64> {
        let lists = [&self.faults[..], &self.only, &self.histogram, &self.good_at];
        [self.sandwiches]
            .into_iter()
            .chain(lists.concat())
            .collect()
    }

    /// A tally from its [`numbers`](Self::numbers) and [`centres`](Self::centres); nothing where
    /// they are not those of one.
    ///
    /// ```
    /// use solver::tolerance::{Tally, Trial};
    /// # use solver::{AccuracyDraft, BarrelDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, lay_out};
    /// # let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
    /// # let slat = SlatDraft::new("74 × 5").check().unwrap();
    /// # let rules = RulesDraft::new().check().unwrap();
    /// # let turn = barrel.turn(Seam::ThroughFaces);
    /// # let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
    /// # let accuracy = AccuracyDraft::new("Line 1").check().unwrap();
    /// # let trial = Trial::new(&setup, &lay_out(&setup), &accuracy);
    /// let tally = trial.simulate(1, 0..1, &mut |_| true);
    /// let centres = tally.centres().to_vec();
    /// assert_eq!(Tally::from_numbers(&tally.numbers(), centres), Some(tally));
    /// assert_eq!(Tally::from_numbers(&[1, 2, 3], Vec::new()), None);
    /// ```
    #[must_use]
    pub fn from_numbers(numbers: &[u64], centres: Vec<Point>) -> Option<Self> {
        let (&sandwiches, numbers) = numbers.split_first()?;
        let (faults, numbers) = numbers.split_first_chunk()?;
        let (only, numbers) = numbers.split_first_chunk()?;
        // One more count of good pencils than there are pencils.
        if numbers.len().is_multiple_of(2) {
            return None;
        }
        let (histogram, good_at) = numbers.split_at(numbers.len().div_ceil(2));
        Some(Self {
            sandwiches,
            histogram: histogram.to_vec(),
            good_at: good_at.to_vec(),
            faults: *faults,
            only: *only,
            centres,
        })
    }

    /// Sandwiches counted.
    #[must_use]
    pub const fn sandwiches(&self) -> u64 {
        self.sandwiches
    }

    /// Pencils counted, good and bad.
    #[must_use]
    pub fn pencils(&self) -> u64 {
        self.sandwiches * self.good_at.len() as u64
    }

    /// Expected good pencils of a sandwich side by side, from the histogram.
    #[must_use]
    pub fn good(&self) -> Estimate {
        let (mut sum, mut squares) = (0_i64, 0_i64);
        for (good, &count) in (0_i64..).zip(&self.histogram) {
            sum += good * count as i64;
            squares += good * good * count as i64;
        }
        Estimate::of(self.sandwiches, sum, squares)
    }

    /// Sandwiches with no, one, two … good pencils.
    #[must_use]
    pub fn histogram(&self) -> &[u64] {
        &self.histogram
    }

    /// Good pencils of each position, from the datum edge.
    #[must_use]
    pub fn good_at(&self) -> &[u64] {
        &self.good_at
    }

    /// Share of good pencils of each position, from the datum edge, with its standard error
    /// √(q(1 − q)/(N − 1)).
    #[must_use]
    pub fn good_shares(&self) -> Vec<Estimate> {
        let share = |&good: &u64| Estimate::of(self.sandwiches, good as i64, good as i64);
        self.good_at.iter().map(share).collect()
    }

    /// Pencils with a fault, whatever else is wrong with them.
    #[must_use]
    pub const fn faulty(&self, fault: Fault) -> u64 {
        self.faults[fault as usize]
    }

    /// Pencils with a fault and no other: those that would be good without it.
    #[must_use]
    pub const fn only_faulty(&self, fault: Fault) -> u64 {
        self.only[fault as usize]
    }

    /// The shares of all pencils that have a fault, and that have it and no other; none where no
    /// pencil is counted.
    #[must_use]
    pub fn faulty_shares(&self, fault: Fault) -> Option<[f64; 2]> {
        let pencils = self.pencils();
        let share = |count: u64| count as f64 / pencils as f64;
        (pencils > 0).then(|| [self.faulty(fault), self.only_faulty(fault)].map(share))
    }

    /// Lead centres as seen from the middle of their pencil, mm: those of the first 400 pencils of
    /// the first block, good and bad, as they were made. None where that block was not counted.
    #[must_use]
    pub fn centres(&self) -> &[Point] {
        &self.centres
    }
}

/// Adds count by count.
fn add(counts: &mut Vec<u64>, more: &[u64]) {
    if counts.len() < more.len() {
        counts.resize(more.len(), 0);
    }
    for (count, more) in counts.iter_mut().zip(more) {
        *count += more;
    }
}
