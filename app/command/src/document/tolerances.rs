//! What `tolerances` prints.

use schemars::JsonSchema;
use serde::Serialize;
use solver::Outcome;
use solver::tolerance::{Choice, Choices, Estimate, Fault, PositionChance, Prospect, Tally};

use super::words::{CheckLine, ErrorWord, FaultWord};
use super::{Named, Saved, VERSION};
use crate::dice::{Dice, Enough};
use crate::tolerances::{ErrorMade, Made, Thrown};

/// What `slatwright tolerances` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct TolerancesDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-tolerances"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the project is called.
    project: String,
    /// The barrel.
    barrel: Named,
    /// The slat stock above the glue plane.
    top: Named,
    /// The slat stock below the glue plane.
    bottom: Named,
    /// The line of machines.
    accuracy: Named,
    /// Whether every check of the layout passes.
    fits: bool,
    /// The checks that fail.
    failed: Vec<CheckLine>,
    /// Grooves that fit side by side, whatever the checks say.
    across: u32,
    /// Pencils from one slat length.
    lengths: u32,
    /// Distance between neighbouring groove centres, mm.
    pitch_mm: f64,
    /// What came of the dice; `null` where a check fails.
    made: Option<MadeLine>,
}

/// What came of the dice. Good pencils of a sandwich are counted side by side: a slat length that
/// gives several pencils gives so many times as many.
#[derive(Debug, Serialize, JsonSchema)]
struct MadeLine {
    /// Where the dice began.
    seed: u64,
    /// The standard error that sandwiches were made until; `null` where their number was given.
    error_asked: Option<f64>,
    /// Whether that error is kept; true where none was asked for.
    error_kept: bool,
    /// Sandwiches made.
    sandwiches: u64,
    /// Expected good pencils of a sandwich.
    good: EstimateLine,
    /// Price of the slats of a gross of 144 good pencils, in hundredths of the currency; `null`
    /// where no pencil is good.
    price_per_gross_hundredths: Option<f64>,
    /// Sandwiches with no, one, two … good pencils.
    histogram: Vec<u64>,
    /// Each position from the datum edge.
    positions: Vec<Position>,
    /// What is wrong with pencils.
    faults: Vec<FaultLine>,
    /// What integrals tell of a pencil.
    chances: Chances,
    /// Each error of the machines, the slats and the leads.
    errors: Vec<ErrorLine>,
    /// Sandwiches in which each error was halved, and which were made in each choice.
    compared: u64,
    /// With fewer and more pencils side by side.
    by_count: ChoicesLine,
    /// With as many pencils as are laid, closer and wider.
    by_pitch: ChoicesLine,
}

/// A number found by throwing dice.
#[derive(Debug, Serialize, JsonSchema)]
struct EstimateLine {
    /// The mean that was found.
    mean: f64,
    /// Its standard error; 0 where every sandwich came out alike.
    standard_error: f64,
}

/// One position in the sandwich.
#[derive(Debug, Serialize, JsonSchema)]
struct Position {
    /// Its number, from 1 at the datum edge.
    number: usize,
    /// Share of good pencils, 0 to 1, by dice.
    good: EstimateLine,
    /// The chance of a good pencil, 0 to 1, by integrals; `null` where faults overlap in a way
    /// that only dice tell.
    good_chance: Option<f64>,
    /// The chance that the pencil does not reach over an edge of a slat, 0 to 1, by integrals.
    complete_chance: f64,
}

/// A fault, by dice.
#[derive(Debug, Serialize, JsonSchema)]
struct FaultLine {
    /// The fault.
    fault: FaultWord,
    /// Pencils that have it, of those of all sandwiches.
    pencils: u64,
    /// Pencils that have no other: those that would be good without it.
    only_pencils: u64,
}

/// What integrals tell of a pencil; chances from 0 to 1.
#[derive(Debug, Serialize, JsonSchema)]
struct Chances {
    /// That its lead lies within the eccentricity limit.
    centred: f64,
    /// That its two half grooves let the lead in.
    admitted: f64,
    /// Expected good pencils of a sandwich, were leads off centre the only fault.
    good_by_eccentricity: f64,
    /// Each flat face of the bare outline.
    faces: Vec<Face>,
}

/// The wall at a flat face.
#[derive(Debug, Serialize, JsonSchema)]
struct Face {
    /// How far the face looks to the far edge, −1 to 1.
    normal_x: f64,
    /// How far it looks up, −1 to 1.
    normal_y: f64,
    /// The chance that its wall is as thick as is asked, 0 to 1.
    holds: f64,
}

/// One error.
#[derive(Debug, Serialize, JsonSchema)]
struct ErrorLine {
    /// The error.
    error: ErrorWord,
    /// What it is called.
    label: &'static str,
    /// Its standard deviation, mm.
    deviation_mm: f64,
    /// Its share in the variance of the lead's place across, 0 to 1.
    share_across: f64,
    /// Its share in the variance of the lead's height, 0 to 1.
    share_upright: f64,
    /// Its share in the variance of the lead off centre, 0 to 1.
    share_off_centre: f64,
    /// Its share in the variance of the thinnest wall, 0 to 1.
    share_wall: f64,
    /// Good pencils of a sandwich that halving it gains.
    halved_gain: EstimateLine,
    /// Price of slats saved by that, negative where it costs more; `null` where no pencil is good.
    halved_saved: Option<Saved>,
}

/// The choices that were tried, from the least.
#[derive(Debug, Serialize, JsonSchema)]
struct ChoicesLine {
    /// The place in the list, from 0, of the one with the most good pencils, the first of equals;
    /// `null` where the list is empty.
    best: Option<usize>,
    /// The place in the list, from 0, of the one that is laid; `null` where it is not among them.
    laid: Option<usize>,
    /// The choices.
    list: Vec<ChoiceLine>,
}

/// One choice.
#[derive(Debug, Serialize, JsonSchema)]
struct ChoiceLine {
    /// Pencils side by side.
    across: u32,
    /// Distance between neighbouring groove centres, mm.
    pitch_mm: f64,
    /// Wood outside the outer pencils, mm.
    edge_mm: f64,
    /// Expected good pencils of a sandwich.
    good: EstimateLine,
    /// How many fewer than the best.
    behind: EstimateLine,
    /// Whether the dice do not tell it from the best.
    ties: bool,
    /// Price of the slats of a gross of 144 good pencils, in hundredths of the currency; `null`
    /// where no pencil is good.
    price_per_gross_hundredths: Option<f64>,
}

impl From<&Thrown<'_>> for TolerancesDocument {
    fn from(thrown: &Thrown<'_>) -> Self {
        let (draft, layout) = (thrown.draft, &thrown.layout);
        let slat = |at: usize| Named::of(&draft.slats[at], |slat| &slat.name);
        let failed = (layout.checks().iter()).filter(|check| check.outcome == Outcome::Failed);
        Self {
            format: "slatwright-tolerances",
            version: VERSION,
            project: draft.name.clone(),
            barrel: Named::of(&draft.barrels[thrown.barrel], |barrel| &barrel.name),
            top: slat(thrown.top),
            bottom: slat(thrown.bottom),
            accuracy: Named::of(&draft.accuracies[thrown.line], |line| &line.name),
            fits: layout.fits(),
            failed: failed.map(CheckLine::from).collect(),
            across: layout.across(),
            lengths: layout.lengths(),
            pitch_mm: layout.pitch().in_millimetres(),
            made: (thrown.made.as_ref()).map(|made| MadeLine::new(made, thrown.dice)),
        }
    }
}

impl MadeLine {
    fn new(made: &Made, dice: Dice) -> Self {
        let tally = &made.tally;
        Self {
            seed: dice.seed,
            error_asked: match dice.enough {
                Enough::Sandwiches(_) => None,
                Enough::Error(error) => Some(error),
            },
            error_kept: dice.is_met(tally),
            sandwiches: tally.sandwiches(),
            good: tally.good().into(),
            price_per_gross_hundredths: made.gross_price,
            histogram: tally.histogram().to_vec(),
            positions: positions(tally, &made.prospect),
            faults: (Fault::ALL)
                .map(|fault| FaultLine {
                    fault: fault.into(),
                    pencils: tally.faulty(fault),
                    only_pencils: tally.only_faulty(fault),
                })
                .into(),
            chances: Chances::from(&made.prospect),
            errors: made.errors.iter().map(ErrorLine::from).collect(),
            compared: made.compared,
            by_count: ChoicesLine::from(&made.by_count),
            by_pitch: ChoicesLine::from(&made.by_pitch),
        }
    }
}

fn positions(tally: &Tally, prospect: &Prospect) -> Vec<Position> {
    let lines = (1..).zip(tally.good_shares().into_iter().zip(&prospect.positions));
    let position = |(number, (good, chance)): (usize, (Estimate, &PositionChance))| Position {
        number,
        good: good.into(),
        good_chance: chance.good,
        complete_chance: chance.complete,
    };
    lines.map(position).collect()
}

impl From<Estimate> for EstimateLine {
    fn from(estimate: Estimate) -> Self {
        Self {
            mean: estimate.mean,
            standard_error: estimate.error,
        }
    }
}

impl From<&Prospect> for Chances {
    fn from(prospect: &Prospect) -> Self {
        let faces = prospect.faces.iter().map(|face| Face {
            normal_x: face.normal.x,
            normal_y: face.normal.y,
            holds: face.holds,
        });
        Self {
            centred: prospect.centred,
            admitted: prospect.admitted,
            good_by_eccentricity: prospect.good_by_eccentricity(),
            faces: faces.collect(),
        }
    }
}

impl From<&ErrorMade> for ErrorLine {
    fn from(made: &ErrorMade) -> Self {
        let shares = &made.shares;
        Self {
            error: shares.term.into(),
            label: shares.term.field().spec().label,
            deviation_mm: made.deviation.in_millimetres(),
            share_across: shares.across,
            share_upright: shares.upright,
            share_off_centre: shares.off_centre,
            share_wall: shares.wall,
            halved_gain: made.gain.into(),
            halved_saved: made.worth.map(Saved::from),
        }
    }
}

impl From<&Choices> for ChoicesLine {
    fn from(choices: &Choices) -> Self {
        let line = |choice: &Choice| ChoiceLine {
            across: choice.across,
            pitch_mm: choice.pitch.in_millimetres(),
            edge_mm: choice.edge.in_millimetres(),
            good: choice.good.into(),
            behind: choice.behind.into(),
            ties: choice.ties(),
            price_per_gross_hundredths: choice.gross_price,
        };
        Self {
            best: choices.best,
            laid: choices.laid,
            list: choices.list.iter().map(line).collect(),
        }
    }
}
