//! What a search for the best layout may try, and what it counts with.

use crate::field::{Field, FieldProblem, Typed};

/// Which turns of the barrel are tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Turns {
    /// The ways in common use.
    Usual,
    /// Every angle.
    Any,
}

/// Which heights of the lead axis are tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum AxisChoice {
    /// The one of the machining rules.
    AsInRules,
    /// Every one at which the groove stays open and the seam keeps its bond, the one of the rules
    /// among them. At a turn that is not a usual one a height at which the bond does not hold over
    /// the turns beside it may be left out.
    Any,
}

/// Which two slats make a sandwich.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Pairs {
    /// Two of one stock.
    Same,
    /// One of each of two stocks, whichever they are.
    Any,
}

/// What a search may try, as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct SearchDraft {
    /// Which turns are tried.
    pub turns: Turns,
    /// Which heights of the lead axis are tried.
    pub axis: AxisChoice,
    /// Which two slats make a sandwich.
    pub pairs: Pairs,
    /// Price of a cutter set made to measure; empty when none is bought.
    pub new_set_price: Typed,
    /// Pencils made in a year, in gross.
    pub year_gross: Typed,
}

/// What a search may try.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SearchRules {
    /// Which turns are tried.
    pub turns: Turns,
    /// Which heights of the lead axis are tried.
    pub axis: AxisChoice,
    /// Which two slats make a sandwich.
    pub pairs: Pairs,
    /// Price of a cutter set made to measure in hundredths of the currency; `None` when none is
    /// bought.
    pub new_set_price: Option<i64>,
    /// Pencils made in a year, in gross, at least 1.
    pub year_gross: f64,
}

impl Turns {
    /// Every choice.
    pub const ALL: [Self; 2] = [Self::Usual, Self::Any];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Usual => "Usual seams only",
            Self::Any => "Any turn",
        }
    }
}

impl AxisChoice {
    /// Every choice.
    pub const ALL: [Self; 2] = [Self::AsInRules, Self::Any];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::AsInRules => "As in the rules",
            Self::Any => "Any height that fits",
        }
    }
}

impl Pairs {
    /// Every choice.
    pub const ALL: [Self; 2] = [Self::Same, Self::Any];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Same => "Both slats of one stock",
            Self::Any => "Any two stocks",
        }
    }
}

impl SearchDraft {
    /// The narrowest search, without a new cutter set, with the first value in every field.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            turns: Turns::Usual,
            axis: AxisChoice::AsInRules,
            pairs: Pairs::Same,
            new_set_price: Typed::empty(),
            year_gross: Typed::initial(Field::YearGross),
        }
    }

    /// What the search may try, or everything that is wrong with it.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range.
    ///
    /// ```
    /// use solver::{SearchDraft, Typed};
    /// let mut draft = SearchDraft::new();
    /// assert_eq!(draft.check().unwrap().new_set_price, None);
    /// draft.new_set_price = Typed::Number(480.0);
    /// assert_eq!(draft.check().unwrap().new_set_price, Some(48_000));
    /// ```
    pub fn check(&self) -> Result<SearchRules, Vec<FieldProblem>> {
        let price = self.new_set_price.read_optional(Field::NewSetPrice);
        match (price, self.year_gross.read(Field::YearGross)) {
            (Ok(price), Ok(year_gross)) => Ok(SearchRules {
                turns: self.turns,
                axis: self.axis,
                pairs: self.pairs,
                // A price of two decimals lies within i64.
                new_set_price: price.map(|price| (price * 100.0).round() as i64),
                year_gross,
            }),
            (price, year_gross) => Err(price.err().into_iter().chain(year_gross.err()).collect()),
        }
    }
}

impl Default for SearchDraft {
    fn default() -> Self {
        Self::new()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_numbers_are_checked() {
        let draft = SearchDraft {
            new_set_price: Typed::Number(-1.0),
            year_gross: Typed::Number(0.0),
            ..SearchDraft::new()
        };
        let fields: Vec<Field> = draft
            .check()
            .unwrap_err()
            .into_iter()
            .map(|problem| problem.field)
            .collect();
        assert_eq!(fields, [Field::NewSetPrice, Field::YearGross]);
    }
}
