//! Chances of single pencils, by integrals.

use super::chance::within_circle;
use super::goodness::{Edges, Goodness, Position};
use super::normal::{Bend, Normal};
use super::scale::norm;
use super::trial::Trial;
use super::wall::towards;
use crate::quantity::{Direction, Length};

/// Chances that can be told without throwing dice.
///
/// [`Self::centred`] and the chances of faces have a relative error below 1e-9, all others an
/// error below 1e-9 of a pencil.
#[derive(Debug, Clone, PartialEq)]
pub struct Prospect {
    /// The chance that a lead lies within the eccentricity limit; the same at every position.
    pub centred: f64,
    /// The chance that the two half grooves let the lead in; the same at every position.
    pub admitted: f64,
    /// Each flat face of the bare outline. Curved faces are left to the dice.
    pub faces: Vec<FaceChance>,
    /// Each position, from the datum edge.
    pub positions: Vec<PositionChance>,
}

/// The wall at one flat face, taken as endless.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FaceChance {
    /// Its outward normal.
    pub normal: Direction,
    /// The chance that its wall is as thick as is asked:
    /// Φ((f − ρ − w − n·μ)/σ) with the distance f of the face from the middle, the groove radius ρ,
    /// the least wall w, and σ² = n_x²σ_x² + n_y²σ_y².
    pub holds: f64,
}

/// One position in the sandwich.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PositionChance {
    /// The chance that the pencil does not reach over an edge of a slat.
    pub complete: f64,
    /// The chance that nothing is wrong with it. Told where a lead within the eccentricity limit
    /// has its wall whatever its direction, as it has in every layout that keeps its wall; elsewhere
    /// faults overlap in a way that only dice tell.
    pub good: Option<f64>,
}

impl Prospect {
    /// Expected good pencils of a sandwich if leads off centre were the only fault.
    #[must_use]
    pub fn good_by_eccentricity(&self) -> f64 {
        self.centred * self.positions.len() as f64
    }

    /// Expected good pencils of a sandwich side by side: the sum of the chances of its positions, for
    /// expectation is linear whatever their faults have in common. None where a chance is not told.
    #[must_use]
    pub fn good(&self) -> Option<f64> {
        self.positions.iter().map(|position| position.good).sum()
    }
}

impl Trial {
    /// What can be told without throwing dice.
    ///
    /// ```
    /// use solver::tolerance::Trial;
    /// # use solver::{AccuracyDraft, BarrelDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, lay_out};
    /// use solver::{Length, Term};
    /// # let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
    /// # let slat = SlatDraft::new("74 × 5").check().unwrap();
    /// # let rules = RulesDraft::new().check().unwrap();
    /// # let turn = barrel.turn(Seam::ThroughFaces);
    /// # let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
    /// # let layout = lay_out(&setup);
    /// # let mut accuracy = AccuracyDraft::new("Line 1").check().unwrap();
    /// // Only the shaping head is off, by 0.1 mm either way: 1 − exp(−0.3²/(2·0.1²)) of the leads
    /// // lie within 0.3 mm.
    /// # for term in Term::ALL {
    /// #     accuracy = accuracy.with_deviation(term, Length::ZERO).unwrap();
    /// # }
    /// # let tenth = Length::millimetres(0.1);
    /// # accuracy = accuracy.with_deviation(Term::ShapingAcross, tenth).unwrap();
    /// # accuracy = accuracy.with_deviation(Term::ShapingUp, tenth).unwrap();
    /// let prospect = Trial::new(&setup, &layout, &accuracy).prospect();
    /// assert!((prospect.centred - 0.988_891_003_461_758).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn prospect(&self) -> Prospect {
        let (across, upright) = (self.scale.across(), self.scale.upright);
        let goodness = self.goodness();
        let walls_hold = self.holds_walls();
        let position = |k| PositionChance {
            complete: self.complete(k),
            good: walls_hold.then(|| {
                let (first, last) = (k == 0, k + 1 == self.row.count);
                if first || last {
                    goodness.at(Position { first, last }, self.edges())
                } else {
                    goodness.inside()
                }
            }),
        };
        let face = |(normal, room): (Direction, f64)| FaceChance {
            normal,
            holds: towards(normal, across, upright).at_most(room),
        };
        Prospect {
            centred: within_circle(across, upright, self.limit),
            admitted: goodness.goes_in(),
            faces: self.wall.faces().map(face).collect(),
            positions: (0..self.row.count).map(position).collect(),
        }
    }

    /// Whether a lead within the eccentricity limit has its wall whatever its direction.
    pub(crate) fn holds_walls(&self) -> bool {
        self.wall.holds_within(self.limit)
    }

    pub(crate) fn goodness(&self) -> Goodness {
        Goodness::new(self.scale, self.groove, self.lead, self.limit)
    }

    pub(crate) fn edges(&self) -> Edges {
        let far = self.row.last() + self.right;
        Edges {
            datum: self.row.first - self.left,
            bottom: self.bottom_width - far,
            top: self.top_width - far,
        }
    }

    /// The chance that a pencil does not reach over an edge: the expected value over its place of
    /// the chances at both edges.
    fn complete(&self, k: usize) -> f64 {
        let (row, scale) = (&self.row, &self.scale);
        let (first, last) = (k == 0, k + 1 == row.count);
        if !first && !last {
            return 1.0;
        }
        let place = Normal::new(0.0, norm([scale.cutter, scale.shaping, 0.0]));
        let shift = Normal::new(0.0, scale.shift);
        let bottom = Normal::new(self.bottom_width, scale.width);
        let top = Normal::new(self.top_width, scale.width);
        let top_end = Normal::new(self.top_width, norm([scale.width, scale.shift, 0.0]));
        let (datum, far) = (row.first - self.left, row.last() + self.right);
        let bends = [
            (-datum, shift.deviation),
            (bottom.mean - far, bottom.deviation),
            (top_end.mean - far, top_end.deviation),
        ];
        let bends = bends.map(|(place, width)| Bend { place, width });
        place.expected(&bends, |off| {
            let (datum, far) = (datum + off, far + off);
            if first && datum < -Length::SLACK.in_millimetres() {
                return 0.0;
            }
            match (first, last) {
                (true, false) => shift.at_most(datum),
                (false, _) => bottom.at_least(far) * top_end.at_least(far),
                // The shift moves both edges of the top slat.
                (true, true) => {
                    let bends = [(datum, 0.0), (far - top.mean, top.deviation)];
                    let bends = bends.map(|(place, width)| Bend { place, width });
                    let both = shift.expected(&bends, |h| {
                        if h <= datum + Length::SLACK.in_millimetres() {
                            top.at_least(far - h)
                        } else {
                            0.0
                        }
                    });
                    bottom.at_least(far) * both
                }
            }
        })
    }
}
