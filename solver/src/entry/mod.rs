//! Reads what a person types into a number field: one parser for all of them.
//!
//! A field takes a number, with a unit or without, or a simple sum of numbers:
//!
//! ```text
//! sum       product, then any of  + product   − product
//! product   factor, then any of   × factor    / factor
//! factor    + or − at most once, then a number or a bracketed sum, then a unit if wanted
//! number    7.2   7,2   1 234.5   1'234   1e3   ½   5/16   1 3/8
//! ```
//!
//! Three rules settle what a person may mean.
//!
//! - Nothing is guessed. What can be read in two ways (`1,234`, `1.234,5`, `1-3/8`) is
//!   refused with both. A lone point is always the decimal point: `3.175` is no thousand.
//! - A number without a unit takes the field's own when it is added to something, and is a
//!   plain factor when it multiplies or divides a number that has a unit.
//! - A unit behind a quotient of two numbers belongs to the quotient, as in `5/16 in`.
//!
//! Nothing typed can make the program stop: the text has at most [`LONGEST_ENTRY`] characters
//! and brackets stand at most a few deep.

mod cursor;
mod number;
mod problem;
#[cfg(test)]
mod properties;
mod sum;
#[cfg(test)]
mod tests;
mod typed_unit;

pub use problem::EntryProblem;

use crate::LengthUnit;
use crate::decimal::Decimal;
use sum::Sum;

/// The most characters an entry may have.
pub const LONGEST_ENTRY: usize = 200;

/// Every entry lies strictly between this and its negative: far beyond any slat or order, and
/// small enough that whole numbers and hundredths are told apart.
pub const LARGEST_ENTRY: f64 = 1e12;

/// What sort of quantity a field asks for; decides which units may be typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Dimension {
    /// A length: mm, cm, m, µm or in, read as millimetres.
    Length,
    /// An angle: ° or deg, read as degrees.
    Angle,
    /// A whole number of things; `pcs` may be typed.
    Count,
    /// An amount of money in major units; no unit.
    Money,
    /// A percentage, read as such: `12 %` is 12.
    Percent,
    /// A plain number; no unit.
    Plain,
}

/// Reads what a person typed.
///
/// `bare` is the unit of a length typed without one; other dimensions do not look at it. The
/// value is in millimetres, degrees, pieces, major units of money, percent, or plain. A number
/// with a unit is converted in decimals and rounded once, so `0.1 in` is exactly what `2.54`
/// is; the result of a sum is rounded to 15 digits, so `7.2 + 0.4` is exactly what `7.6` is.
///
/// # Errors
///
/// The first [`EntryProblem`] from the left. Its message follows the field's label: "Land must
/// be a number, like 0.4".
///
/// ```
/// use solver::LengthUnit::{Inch, Millimetre};
/// use solver::entry::{Dimension, EntryProblem, read};
///
/// assert_eq!(read("7,2", Dimension::Length, Millimetre), Ok(7.2));
/// assert_eq!(read("5/16\"", Dimension::Length, Millimetre), Ok(7.9375));
/// assert_eq!(read("74 - 2*1.5 mm", Dimension::Length, Millimetre), Ok(71.0));
/// assert_eq!(read("1 3/8", Dimension::Length, Inch), Ok(34.925));
///
/// let problem = read("1,234", Dimension::Length, Millimetre).unwrap_err();
/// assert!(matches!(problem, EntryProblem::Ambiguous { .. }));
/// ```
pub fn read(text: &str, dimension: Dimension, bare: LengthUnit) -> Result<f64, EntryProblem> {
    let text = text.trim();
    if text.is_empty() {
        return Err(EntryProblem::Empty);
    }
    if text.chars().count() > LONGEST_ENTRY {
        return Err(EntryProblem::TooLong);
    }
    let own_unit = match dimension {
        Dimension::Length => bare.scale(),
        _ => Decimal::ONE,
    };
    let value = Sum::new(text, dimension, own_unit).total()?;
    if value.abs() >= LARGEST_ENTRY {
        return Err(EntryProblem::TooLarge);
    }
    if dimension == Dimension::Count && value.fract() != 0.0 {
        return Err(EntryProblem::NotWhole);
    }
    Ok(without_negative_zero(value))
}

fn without_negative_zero(value: f64) -> f64 {
    if value == 0.0 { 0.0 } else { value }
}
