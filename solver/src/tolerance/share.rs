//! What each error has a share in, and what halving it would gain.

use super::paired::Paired;
use super::tally::Estimate;
use super::trial::Trial;
use crate::accuracy::Term;
use crate::quantity::Direction;
use std::ops::Range;

/// Shares of one error in what goes wrong, of variances, 0 to 1; the shares of all errors add up
/// to 1, or are all 0 where nothing varies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shares {
    /// The error.
    pub term: Term,
    /// In the lead's place across, of Var e_x = σ_g²/2 + σ_s² + σ_f²/2 + σ_h²/4 + σ_X².
    pub across: f64,
    /// In the lead's height, of Var e_y = σ_t² + σ_p²/2 + σ_Y².
    pub upright: f64,
    /// In the eccentricity, of Var e_x + Var e_y.
    pub off_centre: f64,
    /// In the thinnest wall, of n_x²·Var e_x + n_y²·Var e_y, with the direction n in which the wall
    /// has the fewest standard deviations to spare.
    pub wall: f64,
}

impl Trial {
    /// The shares of each error, in the order of [`Term::ALL`].
    ///
    /// ```
    /// use solver::tolerance::Trial;
    /// # use solver::{AccuracyDraft, BarrelDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, lay_out};
    /// # use solver::Term;
    /// # let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
    /// # let slat = SlatDraft::new("74 × 5").check().unwrap();
    /// # let rules = RulesDraft::new().check().unwrap();
    /// # let turn = barrel.turn(Seam::ThroughFaces);
    /// # let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
    /// # let accuracy = AccuracyDraft::new("Line 1").check().unwrap();
    /// # let trial = Trial::new(&setup, &lay_out(&setup), &accuracy);
    /// // Upright: thickness 0.03², depth 0.02²/2 and head 0.03², of 0.0020 mm².
    /// let head = trial.shares()[Term::ShapingUp as usize];
    /// assert!((head.upright - 0.45).abs() < 1e-12 && head.across == 0.0);
    /// ```
    #[must_use]
    pub fn shares(&self) -> Vec<Shares> {
        let variance = |term| {
            let deviation = self.accuracy.deviation(term).in_millimetres();
            deviation * deviation
        };
        let parts = Term::ALL.map(|term| match term {
            Term::GroovePosition | Term::GrooveHead => (variance(term) / 2.0, 0.0),
            Term::ShapingPosition | Term::ShapingAcross => (variance(term), 0.0),
            Term::GlueShift => (variance(term) / 4.0, 0.0),
            Term::BottomThickness | Term::ShapingUp => (0.0, variance(term)),
            Term::GrooveDepth => (0.0, variance(term) / 2.0),
            Term::LeadDiameter | Term::SlatWidth => (0.0, 0.0),
        });
        let across: f64 = parts.iter().map(|part| part.0).sum();
        let upright: f64 = parts.iter().map(|part| part.1).sum();
        let weakest = self.wall.weakest(self.scale.across(), self.scale.upright);
        let weakest = weakest.unwrap_or(Direction::UP);
        let wall =
            |part: (f64, f64)| weakest.x * weakest.x * part.0 + weakest.y * weakest.y * part.1;
        let share = |part: f64, whole: f64| if whole > 0.0 { part / whole } else { 0.0 };
        let shares = |(term, part): (Term, (f64, f64))| Shares {
            term,
            across: share(part.0, across),
            upright: share(part.1, upright),
            off_centre: share(part.0 + part.1, across + upright),
            wall: share(wall(part), wall((across, upright))),
        };
        Term::ALL.into_iter().zip(parts).map(shares).collect()
    }

    /// Good pencils of a sandwich that halving each error alone would gain, in the order of
    /// [`Term::ALL`]: as it is and with each error halved, every sandwich is made with the same
    /// dice. After each block, `each` hears how many sandwiches are made; the work ends when it
    /// answers `false`.
    pub fn halvings(
        &self,
        seed: u64,
        blocks: Range<u64>,
        each: &mut dyn FnMut(u64) -> bool,
    ) -> Vec<(Term, Estimate)> {
        let mut trials = vec![self.clone()];
        trials.extend(Term::ALL.map(|term| self.halved(term)));
        let paired = Paired::play(&trials, seed, blocks, each);
        let gained = |(way, term)| (term, paired.difference(way, 0));
        (1..).zip(Term::ALL).map(gained).collect()
    }
}
