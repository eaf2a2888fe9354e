//! What stands in a field, as the file keeps it.

use serde::{Serialize, Serializer};
use solver::Typed;

/// A number, or the text that stands in its place because it is not one yet.
#[derive(Clone, Debug, PartialEq)]
pub enum Entered {
    /// A finite number in the unit that the name of the field tells.
    Number(f64),
    /// Text as it was typed.
    Text(String),
}

impl From<&Typed> for Entered {
    /// JSON has no word for what is not finite: such a number becomes the text it prints as,
    /// which no field takes for a number.
    fn from(typed: &Typed) -> Self {
        match typed {
            Typed::Number(number) if number.is_finite() => Self::Number(*number),
            Typed::Number(number) => Self::Text(number.to_string()),
            Typed::Text(text) => Self::Text(text.clone()),
        }
    }
}

impl From<&Entered> for Typed {
    fn from(entered: &Entered) -> Self {
        match entered {
            Entered::Number(number) => Self::Number(*number),
            Entered::Text(text) => Self::Text(text.clone()),
        }
    }
}

impl Serialize for Entered {
    /// Whole numbers are written without a point, as a person would.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        /// Up to here every whole number has an `f64` of its own.
        const MOST_EXACT: f64 = 9_007_199_254_740_992.0;
        match self {
            Self::Number(number) if number.fract() == 0.0 && number.abs() < MOST_EXACT => {
                serializer.serialize_i64(*number as i64)
            }
            Self::Number(number) => serializer.serialize_f64(*number),
            Self::Text(text) => serializer.serialize_str(text),
        }
    }
}
