//! A kind of plank, as it is being described.

use super::micrometres::{down, hundredths, up};
use crate::field::{Field, FieldProblem, Typed};
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
    /// One problem for each field that cannot be read or lies outside its range.
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
    fn trims_are_rounded_up_and_sizes_down() {
        let mut draft = PlankDraft::new("");
        draft.length = Typed::Number(1000.0009);
        draft.end_trim = Typed::Number(3.0001);
        let plank = draft.check().unwrap();
        assert_eq!((plank.size.length, plank.end_trim), (1_000_000, 3_001));
    }
}
