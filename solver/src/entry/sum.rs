//! A sum of numbers with and without units.

use super::cursor::Cursor;
use super::number::{Number, is_fraction_slash};
use super::typed_unit::TypedUnit;
use super::{Dimension, EntryProblem};
use crate::decimal::Decimal;
use crate::figure;

/// Brackets may stand this deep in each other; no sum a person types needs more.
const DEEPEST_BRACKET: usize = 16;

/// A text being read as a sum for one field.
pub(super) struct Sum<'a> {
    text: &'a str,
    cursor: Cursor<'a>,
    dimension: Dimension,
    own_unit: Decimal,
    depth: usize,
    /// Something was added or multiplied, and so rounded.
    is_reckoned: bool,
}

impl<'a> Sum<'a> {
    /// Reads `text`, which is not empty, for a field whose numbers without a unit are so many
    /// of `own_unit`.
    pub(super) fn new(text: &'a str, dimension: Dimension, own_unit: Decimal) -> Self {
        Self {
            text,
            cursor: Cursor::new(text),
            dimension,
            own_unit,
            depth: 0,
            is_reckoned: false,
        }
    }

    /// The value of the whole text, in the unit the program reckons in.
    pub(super) fn total(mut self) -> Result<f64, EntryProblem> {
        let value = self.sum()?;
        match self.cursor.peek() {
            None if self.is_reckoned => Ok(as_on_paper(value.in_field())),
            None => Ok(value.in_field()),
            Some(')') => Err(EntryProblem::LoneBracket),
            Some(_) => Err(self.missing_operator()),
        }
    }

    fn sum(&mut self) -> Result<Value, EntryProblem> {
        let mut total = self.product()?;
        loop {
            total = if self.cursor.take(is_plus).is_some() {
                total.plus(self.product()?)?
            } else if self.cursor.take(is_minus).is_some() {
                total.plus(self.product()?.negated())?
            } else {
                return Ok(total);
            };
            self.is_reckoned = true;
        }
    }

    fn product(&mut self) -> Result<Value, EntryProblem> {
        let mut product = self.factor(false)?;
        loop {
            product = if self.cursor.take(is_times).is_some() {
                product.times(self.factor(false)?)?
            } else if self.cursor.take(is_division).is_some() {
                product.over(self.factor(true)?)?
            } else {
                return Ok(product);
            };
            self.is_reckoned = true;
        }
    }

    /// Reads a number or a bracket with its sign, its unit and the spaces behind.
    fn factor(&mut self, divisor: bool) -> Result<Value, EntryProblem> {
        self.cursor.skip_spaces();
        let is_negative = self.cursor.take(is_minus).is_some();
        if !is_negative {
            self.cursor.take(is_plus);
        }
        self.cursor.skip_spaces();
        let value = match self.cursor.peek() {
            Some('(') => self.bracket()?,
            Some(first) if Number::starts_with(first) => self.number(divisor)?,
            Some(sign) if is_operator(sign) || sign == ')' => {
                return Err(EntryProblem::MissingNumber { sign: sign.into() });
            }
            Some(_) => return Err(EntryProblem::NotANumber),
            None => {
                let sign = self
                    .text
                    .chars()
                    .next_back()
                    .map(String::from)
                    .unwrap_or_default();
                return Err(EntryProblem::MissingNumber { sign });
            }
        };
        Ok(if is_negative { value.negated() } else { value })
    }

    fn bracket(&mut self) -> Result<Value, EntryProblem> {
        self.cursor.take(|next| next == '(');
        self.depth += 1;
        if self.depth > DEEPEST_BRACKET {
            return Err(EntryProblem::TooDeep);
        }
        let value = self.sum()?;
        self.depth -= 1;
        if self.cursor.take(|next| next == ')').is_none() {
            let at_end = self.cursor.rest().is_empty();
            return Err(if at_end {
                EntryProblem::LoneBracket
            } else {
                self.missing_operator()
            });
        }
        match (value, self.unit()?) {
            (value, None) => Ok(value),
            (Value::Bare { number, .. }, Some((_, unit))) => {
                Value::Measured(number * unit.to_f64()).finite()
            }
            (Value::Measured(_), Some((word, _))) => Err(EntryProblem::SecondUnit {
                unit: word.to_owned(),
            }),
        }
    }

    fn number(&mut self, divisor: bool) -> Result<Value, EntryProblem> {
        let number = Number::read(&mut self.cursor, divisor)?;
        if !divisor && let Some(quotient) = self.quotient_with_unit(number) {
            return quotient;
        }
        match self.unit()? {
            Some((_, unit)) => Value::Measured(number.in_unit(unit)),
            None => Value::Bare {
                number: number.in_unit(Decimal::ONE),
                in_field: number.in_unit(self.own_unit),
            },
        }
        .finite()
    }

    /// Looks ahead for `/16 in` behind a 5: the unit then belongs to the quotient. Behind a
    /// division sign the caller does not look, since sums are reckoned from the left.
    fn quotient_with_unit(&mut self, number: Number) -> Option<Result<Value, EntryProblem>> {
        let start = self.cursor;
        self.cursor.skip_spaces();
        let quotient = self.cursor.take(is_fraction_slash).and_then(|_| {
            self.cursor.skip_spaces();
            let divisor = Number::read(&mut self.cursor, true).ok()?;
            let quotient = number.over(divisor)?;
            match self.unit() {
                Ok(Some(_)) if divisor.is_zero() => Some(Err(EntryProblem::DividedByZero)),
                Ok(Some((_, unit))) => Some(Value::Measured(quotient.in_unit(unit)).finite()),
                Ok(None) => None,
                Err(problem) => Some(Err(problem)),
            }
        });
        if quotient.is_none() {
            self.cursor = start;
        }
        quotient
    }

    /// Takes a unit as typed and its size, if there is one, and the spaces round it.
    fn unit(&mut self) -> Result<Option<(&'a str, Decimal)>, EntryProblem> {
        self.cursor.skip_spaces();
        if self.cursor.peek().is_some_and(Number::starts_with) {
            return Ok(None);
        }
        let word = self.cursor.take_while(can_be_in_unit);
        self.cursor.skip_spaces();
        if word.is_empty() {
            return Ok(None);
        }
        let dimension = self.dimension;
        match TypedUnit::named(word) {
            Some(unit) if unit.dimension == dimension => Ok(Some((word, unit.scale))),
            Some(_) => Err(EntryProblem::WrongUnit {
                unit: word.to_owned(),
                dimension,
            }),
            None => Err(EntryProblem::UnknownUnit {
                unit: word.to_owned(),
                dimension,
            }),
        }
    }

    fn missing_operator(&self) -> EntryProblem {
        EntryProblem::MissingOperator {
            rest: self.cursor.rest().to_owned(),
        }
    }
}

/// The value of a part of a sum.
#[derive(Clone, Copy, Debug)]
enum Value {
    /// A number without a unit: a factor, or so many of the field's own unit.
    Bare {
        number: f64,
        in_field: f64,
    },
    Measured(f64),
}

impl Value {
    /// The value if it must have a unit: a bare number takes the field's own.
    fn in_field(self) -> f64 {
        match self {
            Self::Bare { in_field, .. } => in_field,
            Self::Measured(value) => value,
        }
    }

    /// The value if it must be a factor.
    fn factor(self) -> Result<f64, EntryProblem> {
        match self {
            Self::Bare { number, .. } => Ok(number),
            Self::Measured(_) => Err(EntryProblem::UnitTimesUnit),
        }
    }

    fn map(self, operation: impl Fn(f64) -> f64) -> Self {
        match self {
            Self::Bare { number, in_field } => Self::Bare {
                number: operation(number),
                in_field: operation(in_field),
            },
            Self::Measured(value) => Self::Measured(operation(value)),
        }
    }

    fn negated(self) -> Self {
        self.map(|value| -value)
    }

    fn plus(self, other: Self) -> Result<Self, EntryProblem> {
        let in_field = added(self.in_field(), other.in_field());
        match (self, other) {
            (Self::Bare { number: left, .. }, Self::Bare { number: right, .. }) => Self::Bare {
                number: added(left, right),
                in_field,
            },
            _ => Self::Measured(in_field),
        }
        .finite()
    }

    fn times(self, other: Self) -> Result<Self, EntryProblem> {
        match (self, other) {
            (Self::Bare { number, .. }, Self::Measured(_)) => other.map(|value| number * value),
            _ => {
                let factor = other.factor()?;
                self.map(|value| value * factor)
            }
        }
        .finite()
    }

    fn over(self, other: Self) -> Result<Self, EntryProblem> {
        let divisor = other.factor()?;
        if divisor == 0.0 {
            return Err(EntryProblem::DividedByZero);
        }
        self.map(|value| value / divisor).finite()
    }

    /// Stops an overflow where it happens, before a later division could hide it.
    fn finite(self) -> Result<Self, EntryProblem> {
        let is_finite = match self {
            Self::Bare { number, in_field } => number.is_finite() && in_field.is_finite(),
            Self::Measured(value) => value.is_finite(),
        };
        if is_finite {
            Ok(self)
        } else {
            Err(EntryProblem::TooLarge)
        }
    }
}

/// The sum of two numbers; 0 when only the roundings of earlier steps keep it from 0, so that
/// `0.3 - 0.2 - 0.1` is nothing.
fn added(left: f64, right: f64) -> f64 {
    const ROUNDINGS: f64 = 4.0 * f64::EPSILON;
    let sum = left + right;
    if sum.abs() <= ROUNDINGS * left.abs() {
        0.0
    } else {
        sum
    }
}

/// The result to 15 digits, which is how many decimals survive binary arithmetic: `7.2 + 0.4`
/// is 7.6 and not 7.6000000000000005.
fn as_on_paper(result: f64) -> f64 {
    format!("{result:.14e}")
        .parse()
        .expect("a written number can be read")
}

fn is_plus(sign: char) -> bool {
    sign == '+'
}

fn is_minus(sign: char) -> bool {
    sign == '-' || sign == figure::MINUS
}

fn is_times(sign: char) -> bool {
    matches!(sign, '*' | '×' | '·' | '\u{22c5}')
}

fn is_division(sign: char) -> bool {
    is_fraction_slash(sign) || sign == '÷'
}

fn is_operator(sign: char) -> bool {
    is_plus(sign) || is_minus(sign) || is_times(sign) || is_division(sign)
}

/// Everything that is nothing else, so that a message can name what it does not know. A full
/// stop or a comma may end a unit but never begins one.
fn can_be_in_unit(next: char) -> bool {
    let is_number = Number::starts_with(next) && next != '.' && next != ',';
    !is_number && !next.is_whitespace() && !is_operator(next) && !matches!(next, '(' | ')')
}
