//! The parts of a project that several answers rest on, or what is wrong with them.

use solver::{Barrel, FieldProblem, LengthUnit, Place, Problem, ProjectDraft, Slat};

use super::wording::sentence;
use crate::protocol::LeftOut;

/// The barrel of the layout.
///
/// # Errors
/// Everything that is wrong with it, in sentences.
pub(super) fn barrel(draft: &ProjectDraft, unit: LengthUnit) -> Result<Barrel, Vec<String>> {
    let place = draft.barrel_place(draft.layout.barrel).ok_or_else(|| {
        vec!["Layout: its barrel is not in the project any more: choose another".to_owned()]
    })?;
    draft.barrels[place].draft.check().map_err(|found| {
        let found = placed(Place::Barrel(place), found);
        found
            .iter()
            .map(|problem| sentence(problem, draft, unit))
            .collect()
    })
}

/// The problems with the place where they stand.
pub(super) fn placed(place: Place, found: Vec<FieldProblem>) -> Vec<Problem> {
    let placed = |problem| Problem { place, problem };
    found.into_iter().map(placed).collect()
}

/// The stocks that can be worked with, and the others.
pub(super) struct Stocks {
    /// Where each stock of `slats` stands in the project.
    pub(super) places: Vec<usize>,
    /// The stocks as they come to the groove head.
    pub(super) slats: Vec<Slat>,
    /// What keeps out the others.
    pub(super) left_out: Vec<LeftOut>,
}

impl Stocks {
    /// Parts the stocks of a project.
    pub(super) fn new(draft: &ProjectDraft, unit: LengthUnit) -> Self {
        let (mut places, mut slats, mut left_out) = (Vec::new(), Vec::new(), Vec::new());
        for (place, entry) in draft.slats.iter().enumerate() {
            match draft.check_slat(place) {
                Ok(slat) => {
                    places.push(place);
                    slats.push(slat);
                }
                Err(problems) => left_out.push(LeftOut {
                    slat: entry.id.0,
                    slat_name: entry.draft.name.clone(),
                    problems: (problems.iter())
                        .map(|problem| match problem.place {
                            // Its name stands in front of all.
                            Place::Slat(_) => problem.problem.message(unit),
                            _ => sentence(problem, draft, unit),
                        })
                        .collect(),
                }),
            }
        }
        Self {
            places,
            slats,
            left_out,
        }
    }
}
