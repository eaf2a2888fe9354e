//! Why an entry was not taken, in words that follow the field's label.

use super::{Dimension, LARGEST_ENTRY, LONGEST_ENTRY};
use crate::figure;

/// Why an entry was not taken.
///
/// Each message is a predicate: put the field's label before it.
///
/// ```
/// use solver::entry::EntryProblem;
///
/// assert_eq!(format!("Land {}", EntryProblem::NotANumber), "Land must be a number, like 0.4");
/// ```
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum EntryProblem {
    /// Nothing was typed.
    #[error("needs a number, like 0.4")]
    Empty,
    /// More was typed than any number or sum needs.
    #[error("must be at most {LONGEST_ENTRY} characters long")]
    TooLong,
    /// Something that is not a number stands where one should.
    #[error("must be a number, like 0.4")]
    NotANumber,
    /// Two readings are possible; each, typed as it is given here, has only one.
    #[error(
        "could be {} or {}: type one of these two",
        shortened(&readings[0]),
        shortened(&readings[1])
    )]
    Ambiguous {
        /// What may be meant.
        readings: [String; 2],
    },
    /// A unit that no field knows.
    #[error("has a unit that is not known here, “{}”: {}", shortened(unit), units_of(*dimension))]
    UnknownUnit {
        /// The unit as typed.
        unit: String,
        /// What the field asks for.
        dimension: Dimension,
    },
    /// A unit of some other quantity.
    #[error("must be {}, not in “{}”", name_of(*dimension), shortened(unit))]
    WrongUnit {
        /// The unit as typed.
        unit: String,
        /// What the field asks for.
        dimension: Dimension,
    },
    /// A unit behind a bracket that has one inside.
    #[error("has a second unit, “{}”: keep one of the two", shortened(unit))]
    SecondUnit {
        /// The later unit as typed.
        unit: String,
    },
    /// Two numbers with units multiplied, or a division by a number with a unit.
    #[error("can be multiplied or divided only by a number without a unit, like 2 × 1.5 mm")]
    UnitTimesUnit,
    /// An operator or a bracket without a number beside it.
    #[error("needs a number beside “{}”", shortened(sign))]
    MissingNumber {
        /// The operator or bracket as typed.
        sign: String,
    },
    /// Two numbers side by side.
    #[error("needs +, −, × or / before “{}”", shortened(rest))]
    MissingOperator {
        /// What follows the first number.
        rest: String,
    },
    /// A bracket that is not opened or not closed.
    #[error("has a bracket without its partner")]
    LoneBracket,
    /// Brackets stand deeper in each other than any sum needs.
    #[error("has too many brackets inside each other")]
    TooDeep,
    /// A division by zero.
    #[error("cannot be divided by 0")]
    DividedByZero,
    /// A count that is not whole.
    #[error("must be a whole number, like 12")]
    NotWhole,
    /// A number beyond [`LARGEST_ENTRY`], here or within the sum.
    #[error("must be smaller than {}", figure::plain(LARGEST_ENTRY, 0))]
    TooLarge,
    /// A power of ten below 1e-99.
    #[error("is too close to 0 to be told from it: type 0")]
    TooSmall,
}

/// What was typed, cut to at most 20 characters so that a message stays one line.
fn shortened(typed: &str) -> String {
    const LONGEST_QUOTE: usize = 20;
    match typed.char_indices().nth(LONGEST_QUOTE) {
        None => typed.to_owned(),
        Some(_) => typed.chars().take(LONGEST_QUOTE - 1).chain(['…']).collect(),
    }
}

fn units_of(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Length => "use mm, cm, m, µm or in",
        Dimension::Angle => "use ° or deg",
        Dimension::Percent => "use %",
        Dimension::Count | Dimension::Money | Dimension::Plain => "type the number alone",
    }
}

fn name_of(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Length => "a length in mm or in",
        Dimension::Angle => "an angle in degrees",
        Dimension::Count => "a count",
        Dimension::Money => "an amount of money",
        Dimension::Percent => "a percentage",
        Dimension::Plain => "a number without a unit",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn every_problem(typed: &str) -> Vec<EntryProblem> {
        let text = || typed.to_owned();
        let mut problems = vec![
            EntryProblem::Empty,
            EntryProblem::TooLong,
            EntryProblem::NotANumber,
            EntryProblem::Ambiguous {
                readings: [text(), text()],
            },
            EntryProblem::SecondUnit { unit: text() },
            EntryProblem::UnitTimesUnit,
            EntryProblem::MissingNumber { sign: text() },
            EntryProblem::MissingOperator { rest: text() },
            EntryProblem::LoneBracket,
            EntryProblem::TooDeep,
            EntryProblem::DividedByZero,
            EntryProblem::NotWhole,
            EntryProblem::TooLarge,
            EntryProblem::TooSmall,
        ];
        for dimension in [
            Dimension::Length,
            Dimension::Angle,
            Dimension::Count,
            Dimension::Money,
            Dimension::Percent,
            Dimension::Plain,
        ] {
            problems.push(EntryProblem::UnknownUnit {
                unit: text(),
                dimension,
            });
            problems.push(EntryProblem::WrongUnit {
                unit: text(),
                dimension,
            });
        }
        problems
    }

    #[test]
    fn messages_are_civil_predicates() {
        for problem in every_problem("ft") {
            let message = problem.to_string();
            assert!(
                message.starts_with(|first: char| first.is_lowercase()),
                "{message}"
            );
            assert!(!message.ends_with('.'), "{message}");
            for word in ["invalid", "please", "oops"] {
                assert!(!message.to_lowercase().contains(word), "{message}");
            }
        }
    }

    #[test]
    fn messages_stay_short_whatever_was_typed() {
        for problem in every_problem(&"½€".repeat(100)) {
            assert!(problem.to_string().chars().count() <= 90, "{problem}");
        }
    }

    #[test]
    fn twenty_characters_are_quoted_whole() {
        assert_eq!(shortened(&"µ".repeat(20)), "µ".repeat(20));
        assert_eq!(shortened(&"µ".repeat(21)), "µ".repeat(19) + "…");
    }
}
