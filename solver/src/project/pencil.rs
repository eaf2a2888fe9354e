//! From a project that may be wrong to a finished pencil.

use super::{Id, ProjectDraft, keep, placed};
use crate::field::{Place, Problem};
use crate::finish::FinishedPencil;
use crate::wood::density;

impl ProjectDraft {
    /// The finished pencil of a barrel, or everything that stands in its way. Its wood is that of the
    /// run, at the moisture content of grooving.
    ///
    /// # Errors
    /// Every problem of the barrel and its finish, at [`Place::Barrel`]; of the run, at [`Place::Run`]
    /// and [`Place::Stage`]; of the conditions, at [`Place::Conditions`]. An empty list when there is no
    /// such barrel.
    pub fn check_pencil(&self, barrel: Id) -> Result<FinishedPencil, Vec<Problem>> {
        let at = self.barrel_place(barrel).ok_or_else(Vec::new)?;
        let mut problems = Vec::new();
        let place = Place::Barrel(at);
        let draft = &self.barrels[at].draft;
        let barrel = keep(placed(draft.check(), place), &mut problems);
        let finish = barrel
            .as_ref()
            .and_then(|barrel| keep(placed(draft.finish.check(barrel), place), &mut problems));
        let run = keep(self.check_run(), &mut problems);
        let conditions = keep(
            placed(self.conditions.check(), Place::Conditions),
            &mut problems,
        );
        match (barrel, finish, run, conditions) {
            (Some(barrel), Some(finish), Some(run), Some(conditions)) => {
                let wood = density(
                    run.specific_gravity,
                    run.volumetric_shrinkage,
                    conditions.moisture,
                );
                // A gram in a cubic centimetre is a thousand kilograms in a cubic metre.
                Ok(FinishedPencil::new(
                    barrel,
                    finish,
                    wood / 1000.0,
                    run.lead_density,
                ))
            }
            _ => Err(problems),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::project;
    use super::*;
    use crate::field::{Field, Typed};

    #[test]
    fn what_stands_in_the_way_of_a_pencil_is_told_all_at_once() {
        let mut draft = project();
        let id = draft.barrels[0].id;
        assert!(draft.check_pencil(id).is_ok());
        draft.barrels[0].draft.finish.point_angle = Typed::Number(200.0);
        draft.barrels[0].draft.finish.tin_width = Typed::empty();
        draft.run.lead_density = Typed::Number(-1.0);
        let told = draft.check_pencil(id).unwrap_err();
        let told: Vec<_> = told
            .iter()
            .map(|told| (told.place, told.problem.field))
            .collect();
        assert_eq!(
            told,
            [
                (Place::Barrel(0), Field::PointAngle),
                (Place::Barrel(0), Field::TinWidth),
                (Place::Run, Field::LeadDensity),
            ]
        );
        assert_eq!(draft.check_pencil(Id(999)), Err(Vec::new()));
        // A layout rests on none of it, and the project tells of it all the same.
        assert!(draft.check_layout().is_ok());
        assert_eq!(draft.check().unwrap_err().len(), 3);
    }
}
