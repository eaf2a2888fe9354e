//! A kind of plank, as it is being described.

use super::micrometres::{down, hundredths, up};
use crate::field::{Cause, Field, FieldProblem, Typed};
use crate::quantity::Length;
use crate::sawing::{Dimensions, PlankStock};

/// A kind of plank as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct PlankDraft {
    /// What it is called.
    pub name: String,
    /// Length along the grain, as bought.
    pub length: Typed,
    /// Width of the wide face, as bought.
    pub width: Typed,
    /// Thickness, as bought.
    pub thickness: Typed,
    /// Price of one plank.
    pub price: Typed,
    /// Planks that can be had; empty for as many as wanted.
    pub on_hand: Typed,
    /// Wood cut off each end.
    pub end_trim: Typed,
    /// Wood ripped off each edge.
    pub edge_trim: Typed,
}

impl PlankDraft {
    /// A new kind of plank, with the first value in every field and as many as wanted.
    #[must_use]
    pub fn new(name: &str) -> Self {
        Self {
            name: name.to_owned(),
            length: Typed::initial(Field::PlankLength),
            width: Typed::initial(Field::PlankWidth),
            thickness: Typed::initial(Field::PlankThickness),
            price: Typed::initial(Field::PlankPrice),
            on_hand: Typed::empty(),
            end_trim: Typed::initial(Field::PlankEndTrim),
            edge_trim: Typed::initial(Field::PlankEdgeTrim),
        }
    }

    /// The plank in whole micrometres and hundredths, or every rule it breaks. What lies between
    /// two micrometres is rounded so that no plan counts on wood that is not there: sizes down,
    /// trims up.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range, and for each trim
    /// that leaves nothing of a size that can be read.
    ///
    /// ```
    /// use solver::{PlankDraft, Typed};
    /// let mut draft = PlankDraft::new("Cedar, 80");
    /// draft.thickness = Typed::Number(79.3759);
    /// draft.price = Typed::Number(18.4);
    /// let plank = draft.check().unwrap();
    /// assert_eq!((plank.size.thickness, plank.price, plank.on_hand), (79_375, 1_840, None));
    /// ```
    pub fn check(&self) -> Result<PlankStock, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let on_hand = self.on_hand.read_optional(Field::PlanksOnHand);
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let size = Dimensions {
            length: down(read(&self.length, Field::PlankLength)),
            width: down(read(&self.width, Field::PlankWidth)),
            thickness: down(read(&self.thickness, Field::PlankThickness)),
        };
        let price = hundredths(read(&self.price, Field::PlankPrice));
        let end_trim = up(read(&self.end_trim, Field::PlankEndTrim));
        let edge_trim = up(read(&self.edge_trim, Field::PlankEdgeTrim));
        problems.extend(
            [self.along(), self.across()]
                .into_iter()
                .filter_map(Result::err),
        );
        match on_hand {
            Ok(on_hand) if problems.is_empty() => Ok(PlankStock {
                size,
                end_trim,
                edge_trim,
                price,
                // Within its range a number of pieces is whole and far within u64.
                on_hand: on_hand.map(|planks| planks as u64),
            }),
            on_hand => {
                problems.extend(on_hand.err());
                Err(problems)
            }
        }
    }

    /// Whether a blank of this size may be sawn from it, as far as its fields can be read.
    pub(super) fn may_hold(&self, blank: &Dimensions) -> bool {
        let thickness = self.thickness.read(Field::PlankThickness).ok().map(down);
        // Nothing is known of a size that cannot be read, nor of one that the trims take up.
        let known = |room: Result<Option<i64>, FieldProblem>| room.ok().flatten();
        let holds = |room: Option<i64>, size| room.is_none_or(|room| size <= room);
        holds(known(self.along()), blank.length)
            && holds(known(self.across()), blank.thickness)
            && holds(thickness, blank.width)
    }

    /// Length between the trims.
    fn along(&self) -> Result<Option<i64>, FieldProblem> {
        let (size, trim) = (Field::PlankLength, Field::PlankEndTrim);
        between((&self.length, size), (&self.end_trim, trim))
    }

    /// Width between the trims.
    fn across(&self) -> Result<Option<i64>, FieldProblem> {
        let (size, trim) = (Field::PlankWidth, Field::PlankEdgeTrim);
        between((&self.width, size), (&self.edge_trim, trim))
    }
}

/// What two trims leave of a size, micrometres; nothing where one of the fields cannot be read.
fn between(size: (&Typed, Field), trim: (&Typed, Field)) -> Result<Option<i64>, FieldProblem> {
    let field = trim.1;
    let (Ok(size), Ok(trim)) = (size.0.read(size.1), trim.0.read(field)) else {
        return Ok(None);
    };
    let left = down(size) - 2 * up(trim);
    if left > 0 {
        return Ok(Some(left));
    }
    let [trim, size] = [trim, size].map(Length::millimetres);
    let cause = Cause::NothingBetweenTrims { trim, size };
    Err(FieldProblem { field, cause })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_bad_field_is_reported_at_once() {
        let mut draft = PlankDraft::new("");
        draft.length = Typed::Number(0.0);
        draft.thickness = Typed::Text("thick".into());
        draft.edge_trim = Typed::Number(-1.0);
        draft.on_hand = Typed::Number(1.5);
        let fields: Vec<Field> = (draft.check().unwrap_err().into_iter())
            .map(|problem| problem.field)
            .collect();
        assert_eq!(
            fields,
            [
                Field::PlankLength,
                Field::PlankThickness,
                Field::PlankEdgeTrim,
                Field::PlanksOnHand
            ]
        );
    }

    #[test]
    fn trims_that_leave_nothing_are_told_with_all_else_that_is_wrong() {
        let mut draft = PlankDraft::new("");
        draft.price = Typed::Text("dear".into());
        draft.length = Typed::Number(3_000.0);
        draft.end_trim = Typed::Number(1_500.0);
        draft.width = Typed::Number(150.0);
        draft.edge_trim = Typed::Number(80.0);
        let told: Vec<String> = (draft.check().unwrap_err().iter())
            .map(|problem| problem.to_string().replace('\u{202f}', " "))
            .collect();
        assert_eq!(
            told[1..],
            [
                "Plank end trim 1 500.00 mm leaves nothing of 3 000.00 mm: type less than 1 500.00 mm, or a plank of more than 3 000.00 mm",
                "Plank edge trim 80.00 mm leaves nothing of 150.00 mm: type less than 75.00 mm, or a plank of more than 160.00 mm",
            ]
        );
        draft.length = Typed::Text("long".into());
        draft.edge_trim = Typed::Number(74.999);
        let fields: Vec<Field> = (draft.check().unwrap_err().into_iter())
            .map(|problem| problem.field)
            .collect();
        assert_eq!(fields, [Field::PlankLength, Field::PlankPrice]);
    }

    #[test]
    fn a_size_that_cannot_be_read_may_be_any() {
        let blank = Dimensions {
            length: 186_000,
            width: 76_000,
            thickness: 5_800,
        };
        let mut draft = PlankDraft::new("");
        assert!(draft.may_hold(&blank));
        draft.thickness = Typed::Number(75.999);
        assert!(!draft.may_hold(&blank));
        draft.length = Typed::Text("long".into());
        draft.edge_trim = Typed::Text("some".into());
        assert!(!draft.may_hold(&blank));
        draft.thickness = Typed::Text("thick".into());
        assert!(draft.may_hold(&blank));
    }

    #[test]
    fn trims_are_rounded_up_and_sizes_down() {
        let mut draft = PlankDraft::new("");
        draft.length = Typed::Number(1000.0009);
        draft.end_trim = Typed::Number(3.0001);
        let plank = draft.check().unwrap();
        assert_eq!((plank.size.length, plank.end_trim), (1_000_000, 3_001));
    }
}
