//! A kind of slat blank that is sawn from planks, as it is being described.

use super::micrometres::{hundredths, up};
use crate::field::{Field, FieldProblem, Typed};
use crate::project::Id;
use crate::quantity::Length;
use crate::sawing::{BlankOrder, Dimensions};
use crate::slat::Slat;
use crate::wood::Movement;

/// A kind of blank as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct BlankDraft {
    /// What it is called.
    pub name: String,
    /// The slat stock that it becomes, from which its sizes follow; none where they are typed.
    pub slat: Option<Id>,
    /// Length as sawn, where it is typed.
    pub length: Typed,
    /// Width as sawn, where it is typed.
    pub width: Typed,
    /// Thickness as sawn, where it is typed.
    pub thickness: Typed,
    /// What dressing takes off the length of a slat; not read where the sizes are typed.
    pub length_dressing: Typed,
    /// What dressing takes off its width.
    pub width_dressing: Typed,
    /// What dressing takes off its thickness.
    pub thickness_dressing: Typed,
    /// Blanks wanted.
    pub demand: Typed,
    /// What a blank beyond those wanted is worth.
    pub over_worth: Typed,
    /// How many beyond those wanted are worth that.
    pub most_over: Typed,
}

/// The slat that a blank becomes, and how its wood moves from the saw to the delivery.
pub(super) struct Becomes<'a> {
    pub(super) slat: &'a Slat,
    pub(super) movement: Movement,
}

impl BlankDraft {
    /// A new kind of blank of typed sizes, with the first value in every field.
    #[must_use]
    pub fn new(name: &str) -> Self {
        Self {
            name: name.to_owned(),
            slat: None,
            length: Typed::initial(Field::BlankLength),
            width: Typed::initial(Field::BlankWidth),
            thickness: Typed::initial(Field::BlankThickness),
            length_dressing: Typed::initial(Field::LengthDressing),
            width_dressing: Typed::initial(Field::WidthDressing),
            thickness_dressing: Typed::initial(Field::ThicknessDressing),
            demand: Typed::initial(Field::BlanksWanted),
            over_worth: Typed::initial(Field::BlankOverWorth),
            most_over: Typed::initial(Field::MostOver),
        }
    }

    /// Its size as sawn, in whole micrometres, rounded up.
    ///
    /// A slat of the size d that loses a in dressing was dried to d + a. With f what the size was
    /// multiplied by on the way from sawn to delivered moisture, it was sawn to (d + a) / f. Along
    /// the grain wood hardly moves, so there f is 1.
    pub(super) fn size(
        &self,
        becomes: Option<&Becomes<'_>>,
    ) -> Result<Dimensions, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let size = match becomes {
            None => Dimensions {
                length: up(read(&self.length, Field::BlankLength)),
                width: up(read(&self.width, Field::BlankWidth)),
                thickness: up(read(&self.thickness, Field::BlankThickness)),
            },
            Some(Becomes { slat, movement }) => {
                let [length, width, thickness] =
                    [slat.length(), slat.width(), slat.thickness()].map(Length::in_millimetres);
                let length = length + read(&self.length_dressing, Field::LengthDressing);
                let width = width + read(&self.width_dressing, Field::WidthDressing);
                let thickness =
                    thickness + read(&self.thickness_dressing, Field::ThicknessDressing);
                Dimensions {
                    length: up(length),
                    width: up(width / movement.width),
                    thickness: up(thickness / movement.thickness),
                }
            }
        };
        if problems.is_empty() {
            Ok(size)
        } else {
            Err(problems)
        }
    }

    /// The blank in whole micrometres and hundredths.
    pub(super) fn check_as(
        &self,
        becomes: Option<&Becomes<'_>>,
    ) -> Result<BlankOrder, Vec<FieldProblem>> {
        let size = self.size(becomes);
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        // Within their ranges numbers of pieces are whole and far within u64.
        let demand = read(&self.demand, Field::BlanksWanted) as u64;
        let over_worth = hundredths(read(&self.over_worth, Field::BlankOverWorth));
        let most_over = read(&self.most_over, Field::MostOver) as u64;
        match size {
            Ok(size) if problems.is_empty() => Ok(BlankOrder {
                size,
                demand,
                over_worth,
                most_over,
            }),
            size => Err(size.err().into_iter().flatten().chain(problems).collect()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::slat::SlatDraft;
    use crate::wood::{Sawing, SpeciesDraft};

    fn fields(problems: Vec<FieldProblem>) -> Vec<Field> {
        problems.into_iter().map(|problem| problem.field).collect()
    }

    #[test]
    fn only_the_sizes_that_count_are_read() {
        let wrong = || Typed::Text("later".into());
        let mut draft = BlankDraft::new("");
        (draft.length_dressing, draft.width_dressing) = (wrong(), wrong());
        assert!(draft.check_as(None).is_ok());
        let slat = SlatDraft::new("").check().unwrap();
        let becomes = Becomes {
            slat: &slat,
            movement: Movement::NONE,
        };
        assert_eq!(
            fields(draft.check_as(Some(&becomes)).unwrap_err()),
            [Field::LengthDressing, Field::WidthDressing]
        );
        draft = BlankDraft::new("");
        (draft.length, draft.thickness) = (wrong(), wrong());
        assert!(draft.check_as(Some(&becomes)).is_ok());
        assert_eq!(
            fields(draft.check_as(None).unwrap_err()),
            [Field::BlankLength, Field::BlankThickness]
        );
    }

    #[test]
    fn a_blank_dries_to_its_slat_and_its_dressing() {
        let mut draft = SlatDraft::new("");
        (draft.width, draft.thickness) = (Typed::Number(74.0), Typed::Number(5.0));
        let slat = draft.check().unwrap();
        let species = SpeciesDraft::new("").check().unwrap();
        let movement = Movement::new(&species, Sawing::Flat, 12.0, 8.0);
        let becomes = Becomes {
            slat: &slat,
            movement,
        };
        let mut blank = BlankDraft::new("");
        (blank.width_dressing, blank.thickness_dressing) = (Typed::Number(1.5), Typed::Number(0.8));
        let size = blank.check_as(Some(&becomes)).unwrap().size;
        // Wood Handbook, FPL-GTR-190, Eq. 13-2: C = 0.0017956 tangential, 0.0011248 radial, so
        // f = 1 − 4·C; 75.5 / 0.9928176 = 76.04619, 5.8 / 0.9955008 = 5.82621.
        assert_eq!((size.width, size.thickness), (76_047, 5_827));
        // Along the grain only the dressing is added: 184 and 2.
        assert_eq!(size.length, 186_000);
    }
}
