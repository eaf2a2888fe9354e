//! What is said of good pencils.

use serde::{Deserialize, Serialize};
use solver::tolerance::{Choice, Choices, Estimate, Tally};
use solver::{Length, Point};

/// Sandwiches that a worker made by dice, counted.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Thrown {
    /// The counts, in the order of [`Tally::numbers`].
    counts: Vec<f64>,
    /// The lead centres, across and up by turns, mm.
    centres_mm: Vec<f64>,
}

impl From<&Tally> for Thrown {
    fn from(tally: &Tally) -> Self {
        let centres = tally.centres().iter();
        Self {
            // A worker makes far fewer than 2⁵³ sandwiches.
            counts: tally.numbers().iter().map(|&count| count as f64).collect(),
            centres_mm: centres.flat_map(|centre| [centre.x, centre.y]).collect(),
        }
    }
}

impl Thrown {
    /// The tally; nothing where the message holds none.
    #[must_use]
    pub fn tally(&self) -> Option<Tally> {
        let counts: Vec<u64> = self.counts.iter().map(|&count| count as u64).collect();
        let centres = self.centres_mm.chunks_exact(2);
        let centres = centres.map(|at| Point { x: at[0], y: at[1] }).collect();
        Tally::from_numbers(&counts, centres)
    }
}

/// What can be told of good pencils beside the count of the dice.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Outlook {
    /// The chance that a lead lies within the eccentricity limit, by an integral.
    pub centred: f64,
    /// The chance that the half grooves let the lead in.
    pub admitted: f64,
    /// Expected good pencils of a sandwich if leads off centre were the only fault.
    pub good_by_eccentricity: f64,
    /// The chance that the first and the last pencil do not reach over an edge.
    pub complete: [f64; 2],
    /// The least chance that the wall at a flat face is as thick as is asked; none where no face
    /// is flat.
    pub thinnest_face: Option<f64>,
    /// What halving each error would gain, in the order of the errors.
    pub halvings: Vec<Halving>,
    /// Good pencils by how many lie side by side.
    pub by_count: Curve,
    /// Good pencils by their distance.
    pub by_pitch: Curve,
}

/// Good pencils that are expected of a sandwich.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Expected {
    /// How many; none where a check fails, for then only dice tell.
    pub good: Option<f64>,
    /// Of how many.
    pub pencils: u32,
    /// What the line of machines is called that makes them.
    pub line: String,
}

/// What halving one error would gain.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Halving {
    /// Good pencils of a sandwich.
    pub gained: f64,
    /// The standard error of that.
    pub error: f64,
    /// Money saved for a gross, in hundredths; none where no pencil is good.
    pub saved_per_gross: Option<f64>,
    /// Money saved in a year, in hundredths; none where no pencil is good.
    pub saved_per_year: Option<f64>,
}

/// Good pencils by what is varied.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Curve {
    /// Every way that was tried.
    pub points: Vec<CurvePoint>,
    /// Which has the most good pencils.
    pub best: Option<u32>,
    /// Which is laid.
    pub laid: Option<u32>,
}

impl From<&Choices> for Curve {
    fn from(choices: &Choices) -> Self {
        let points = choices.list.iter().map(|choice| CurvePoint {
            across: choice.across,
            pitch_mm: choice.pitch.in_millimetres(),
            edge_mm: choice.edge.in_millimetres(),
            good: choice.good.mean,
            error: choice.good.error,
            behind: choice.behind.mean,
            behind_error: choice.behind.error,
            gross_price: choice.gross_price,
        });
        let place = |place: Option<usize>| place.map(|place| place as u32);
        Self {
            points: points.collect(),
            best: place(choices.best),
            laid: place(choices.laid),
        }
    }
}

impl Curve {
    /// The ways as the solver tells them.
    #[must_use]
    pub fn choices(&self) -> Choices {
        let estimate = |mean, error| Estimate { mean, error };
        let list = self.points.iter().map(|point| Choice {
            across: point.across,
            pitch: Length::millimetres(point.pitch_mm),
            edge: Length::millimetres(point.edge_mm),
            good: estimate(point.good, point.error),
            behind: estimate(point.behind, point.behind_error),
            gross_price: point.gross_price,
        });
        // What names no way is none.
        let place = |place: Option<u32>| {
            let place = place.map(|place| place as usize);
            place.filter(|place| *place < self.points.len())
        };
        Choices {
            list: list.collect(),
            best: place(self.best),
            laid: place(self.laid),
        }
    }
}

/// One way of laying the pencil on its slats.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct CurvePoint {
    /// Pencils side by side.
    pub across: u32,
    /// Distance between neighbours.
    pub pitch_mm: f64,
    /// Wood outside the outer pencils.
    pub edge_mm: f64,
    /// Expected good pencils of a sandwich.
    pub good: f64,
    /// The standard error of that.
    pub error: f64,
    /// How many fewer good pencils than the best.
    pub behind: f64,
    /// The standard error of that.
    pub behind_error: f64,
    /// Money for the slats of a gross of good pencils, in hundredths; none where none is good.
    pub gross_price: Option<f64>,
}
