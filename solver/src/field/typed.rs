//! What stands in a field: a number, or the text that could not be read as one.

use super::{Cause, Field, FieldProblem};
use crate::entry::{self, Dimension};
use crate::figure;
use crate::unit::LengthUnit;

/// What stands in a field.
///
/// A number is kept in millimetres, degrees, pieces, percent or currency, whatever unit it
/// was typed in. Text that is no number stays as it was typed, so that nothing is lost.
///
/// ```
/// use solver::{Field, LengthUnit, Typed};
/// let width = Typed::new("3 in", Field::SlatWidth, LengthUnit::Millimetre);
/// assert_eq!(width, Typed::Number(76.2));
/// assert!(Typed::Text("wide".into()).read(Field::SlatWidth).is_err());
/// ```
#[derive(Debug, Clone, PartialEq)]
pub enum Typed {
    /// A number in the unit of the field.
    Number(f64),
    /// Text that could not be read.
    Text(String),
}

impl Typed {
    /// The value a new project starts with.
    #[must_use]
    pub const fn initial(field: Field) -> Self {
        Self::Number(field.spec().initial)
    }

    /// Nothing, for a field that may stay empty.
    #[must_use]
    pub const fn empty() -> Self {
        Self::Text(String::new())
    }

    /// Takes in what a person typed; bare lengths are in the given unit.
    #[must_use]
    pub fn new(text: &str, field: Field, bare: LengthUnit) -> Self {
        match entry::read(text, field.spec().dimension, bare) {
            Ok(number) => Self::Number(number),
            Err(_) => Self::Text(text.to_owned()),
        }
    }

    /// What a field shows while nobody types in it: no more digits than a shop can measure,
    /// or the text as it was typed.
    ///
    /// ```
    /// use solver::{Field, LengthUnit, Typed};
    /// assert_eq!(Typed::Number(74.0).shown(Field::SlatWidth, LengthUnit::Millimetre), "74.00");
    /// assert_eq!(Typed::Number(74.0).shown(Field::SlatWidth, LengthUnit::Inch), "2.913");
    /// ```
    #[must_use]
    pub fn shown(&self, field: Field, unit: LengthUnit) -> String {
        match self {
            Self::Text(text) => text.clone(),
            Self::Number(number) => match field.spec().dimension {
                Dimension::Length if field.is_error() => figure::length_of_error(*number, unit),
                Dimension::Length => figure::length(*number, unit),
                Dimension::Money => figure::plain(*number, 2),
                Dimension::Angle | Dimension::Count | Dimension::Percent | Dimension::Plain => {
                    figure::exact(*number)
                }
            },
        }
    }

    /// What a field shows while somebody types in it: every digit, in a form that reads back
    /// as the same number.
    ///
    /// ```
    /// use solver::{Field, LengthUnit, Typed};
    /// assert_eq!(Typed::Number(7.9375).full(Field::SlatWidth, LengthUnit::Millimetre), "7.9375");
    /// ```
    #[must_use]
    pub fn full(&self, field: Field, unit: LengthUnit) -> String {
        match self {
            Self::Text(text) => text.clone(),
            Self::Number(number) => match field.spec().dimension {
                Dimension::Length => figure::length_exact(*number, unit),
                _ => figure::exact(*number),
            },
        }
    }

    /// The number, checked against the range of the field.
    ///
    /// # Errors
    /// When the text is no number of the kind asked for, or the number lies outside the range.
    pub fn read(&self, field: Field) -> Result<f64, FieldProblem> {
        let spec = field.spec();
        let number =
            match self {
                Self::Number(number) => *number,
                Self::Text(text) => entry::read(text, spec.dimension, LengthUnit::Millimetre)
                    .map_err(|problem| FieldProblem {
                        field,
                        cause: Cause::Unreadable(problem),
                    })?,
            };
        // Written so that NaN falls outside.
        if !(spec.least <= number && number <= spec.most) {
            return Err(FieldProblem {
                field,
                cause: Cause::OutOfRange { found: number },
            });
        }
        if spec.dimension == Dimension::Count && number.fract() != 0.0 {
            return Err(FieldProblem {
                field,
                cause: Cause::Unreadable(entry::EntryProblem::NotWhole),
            });
        }
        Ok(number)
    }

    /// The number, or nothing when the field stands empty.
    ///
    /// # Errors
    /// As [`Self::read`].
    pub fn read_optional(&self, field: Field) -> Result<Option<f64>, FieldProblem> {
        match self {
            Self::Text(text) if text.trim().is_empty() => Ok(None),
            _ => self.read(field).map(Some),
        }
    }
}
