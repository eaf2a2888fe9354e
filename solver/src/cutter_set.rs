//! A set of groove cutters on one head: its pitch is fixed, and so is how many it carries.

use crate::field::{Field, FieldProblem, Typed};
use crate::project::Id;
use crate::quantity::Length;

/// A cutter set as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct CutterSetDraft {
    /// What it is called.
    pub name: String,
    /// Distance between neighbouring cutters.
    pub pitch: Typed,
    /// Most grooves side by side.
    pub most: Typed,
    /// The barrel it is ground for; none for any.
    pub barrel: Option<Id>,
    /// What is still to be paid for it; 0 when it is owned.
    pub price: Typed,
}

/// A cutter set that can be worked with.
#[derive(Debug, Clone, PartialEq)]
pub struct CutterSet {
    name: String,
    pitch: Length,
    most: u32,
    barrel: Option<Id>,
    price: i64,
}

impl CutterSetDraft {
    /// A new set that is owned and serves any barrel, with the first value in every field.
    #[must_use]
    pub fn new(name: &str) -> Self {
        Self {
            name: name.to_owned(),
            pitch: Typed::initial(Field::SetPitch),
            most: Typed::initial(Field::SetMost),
            barrel: None,
            price: Typed::initial(Field::SetPrice),
        }
    }

    /// The set, or every rule it breaks.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range.
    ///
    /// ```
    /// use solver::{CutterSetDraft, Length};
    /// let set = CutterSetDraft::new("Tens").check().unwrap();
    /// assert_eq!((set.pitch(), set.most(), set.price()), (Length::millimetres(7.5), 10, 0));
    /// ```
    pub fn check(&self) -> Result<CutterSet, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let set = CutterSet {
            name: self.name.clone(),
            pitch: Length::millimetres(read(&self.pitch, Field::SetPitch)),
            // The ranges of the fields lie within u32, and a price of two decimals within i64.
            most: read(&self.most, Field::SetMost) as u32,
            barrel: self.barrel,
            price: (read(&self.price, Field::SetPrice) * 100.0).round() as i64,
        };
        if problems.is_empty() {
            Ok(set)
        } else {
            Err(problems)
        }
    }
}

impl CutterSet {
    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Distance between neighbouring cutters, above 0.
    #[must_use]
    pub const fn pitch(&self) -> Length {
        self.pitch
    }

    /// Most grooves side by side, at least 1.
    #[must_use]
    pub const fn most(&self) -> u32 {
        self.most
    }

    /// The barrel it is ground for; none for any.
    #[must_use]
    pub const fn barrel(&self) -> Option<Id> {
        self.barrel
    }

    /// What is still to be paid for it, in hundredths of the currency.
    #[must_use]
    pub const fn price(&self) -> i64 {
        self.price
    }

    /// Whether it can be used for a barrel.
    #[must_use]
    pub fn serves(&self, barrel: Id) -> bool {
        self.barrel.is_none_or(|ground_for| ground_for == barrel)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_bad_field_is_reported_at_once() {
        let mut draft = CutterSetDraft::new("");
        draft.pitch = Typed::Number(2.9);
        draft.most = Typed::Number(9.5);
        draft.price = Typed::Text("dear".into());
        let fields: Vec<Field> = draft
            .check()
            .unwrap_err()
            .into_iter()
            .map(|problem| problem.field)
            .collect();
        assert_eq!(fields, [Field::SetPitch, Field::SetMost, Field::SetPrice]);
    }

    #[test]
    fn a_set_serves_its_barrel_or_any() {
        let mut draft = CutterSetDraft::new("");
        assert!(draft.check().unwrap().serves(Id(4)));
        draft.barrel = Some(Id(4));
        let set = draft.check().unwrap();
        assert!(set.serves(Id(4)) && !set.serves(Id(5)));
    }

    #[test]
    fn a_price_is_kept_in_hundredths() {
        let mut draft = CutterSetDraft::new("");
        draft.price = Typed::Number(640.35);
        assert_eq!(draft.check().unwrap().price(), 64_035);
    }
}
