//! One number as typed: digits with their separators, and fractions.

use super::EntryProblem;
use super::cursor::Cursor;
use crate::decimal::Decimal;
use crate::figure;

/// A number as typed, kept as a quotient so that nothing is rounded before its unit is known.
#[derive(Clone, Copy, Debug)]
pub(super) struct Number {
    numerator: Decimal,
    denominator: Decimal,
}

impl Number {
    /// Whether a number can begin with this character.
    pub(super) fn starts_with(first: char) -> bool {
        first.is_ascii_digit() || is_mark(first) || vulgar_fraction(first).is_some()
    }

    /// Reads a number. A `divisor`, the number behind a division sign, is not searched for the
    /// workshop spelling `1-3/8`: in `1/2-1/4` the hyphen can only be a minus.
    pub(super) fn read(cursor: &mut Cursor, divisor: bool) -> Result<Self, EntryProblem> {
        if let Some((above, below)) = take_vulgar_fraction(cursor) {
            return Ok(Self::fraction(Decimal::new(0, 0), above, below));
        }
        let numeral = Numeral::read(cursor)?;
        if !numeral.is_whole {
            return Ok(Self {
                numerator: numeral.value,
                denominator: Decimal::ONE,
            });
        }
        numeral.refuse_second_reading(*cursor, divisor)?;
        let mut ahead = *cursor;
        let spaced = ahead.skip_spaces();
        let fraction = match take_vulgar_fraction(&mut ahead) {
            None if spaced => take_proper_fraction(&mut ahead),
            vulgar => vulgar,
        };
        let Some((above, below)) = fraction else {
            return Ok(Self {
                numerator: numeral.value,
                denominator: Decimal::ONE,
            });
        };
        *cursor = ahead;
        Ok(Self::fraction(numeral.value, above, below))
    }

    /// The number `whole + above / below`.
    fn fraction(whole: Decimal, above: u32, below: u32) -> Self {
        let above = whole.digits() * u128::from(below) + u128::from(above);
        Self {
            numerator: Decimal::new(above, 0),
            denominator: Decimal::new(below.into(), 0),
        }
    }

    /// Whether this is 0.
    pub(super) fn is_zero(self) -> bool {
        self.numerator.digits() == 0
    }

    /// The quotient of two numbers that are not fractions themselves.
    pub(super) fn over(self, divisor: Self) -> Option<Self> {
        let simple = self.denominator == Decimal::ONE && divisor.denominator == Decimal::ONE;
        simple.then_some(Self {
            numerator: self.numerator,
            denominator: divisor.numerator,
        })
    }

    /// The number as so many of a unit of this size.
    pub(super) fn in_unit(self, scale: Decimal) -> f64 {
        self.numerator.times(scale).to_f64() / self.denominator.to_f64()
    }
}

/// A run of digits with its separators.
struct Numeral<'a> {
    value: Decimal,
    /// Neither decimals nor a power of ten were typed.
    is_whole: bool,
    /// The digits, parted at the thousands.
    groups: Vec<&'a str>,
    /// Thousands are parted by some kind of space, which also parts `1` from `3/8`.
    is_spaced: bool,
}

impl<'a> Numeral<'a> {
    fn read(cursor: &mut Cursor<'a>) -> Result<Self, EntryProblem> {
        let mut groups = vec![cursor.take_digits()];
        let separator = cursor.peek().filter(|&next| is_thousands_separator(next));
        if let Some(separator) = separator
            && can_lead_thousands(groups[0])
        {
            groups.extend(std::iter::from_fn(|| take_thousand(cursor, separator)));
        }
        let is_grouped = groups.len() > 1;

        let mut marks = Vec::new();
        let mut parts = Vec::new();
        while let Some(mark) = cursor.take(is_mark) {
            marks.push(mark);
            parts.push(cursor.take_digits());
        }
        let behind = cursor.rest();
        let power = take_power_of_ten(cursor)?;
        let typed_power = &behind[..behind.len() - cursor.rest().len()];
        if groups[0].is_empty() && parts.iter().all(|part| part.is_empty()) {
            return Err(EntryProblem::NotANumber);
        }

        let decimals = match marks[..] {
            [] => "",
            [mark] => {
                if mark == ',' && !is_grouped && are_thousands(groups[0], &parts) {
                    return Err(thousand_or_decimals(groups[0], parts[0], "", typed_power));
                }
                parts[0]
            }
            // Marks in pairs: the first kind parts thousands, a different last one decimals.
            [first, .., last] => {
                let decimals = if last == first {
                    ""
                } else {
                    parts.pop().unwrap_or_default()
                };
                let same = marks[..parts.len()].iter().all(|&mark| mark == first);
                if is_grouped || !same || !are_thousands(groups[0], &parts) {
                    return Err(EntryProblem::NotANumber);
                }
                if let [thousand] = parts[..] {
                    return Err(thousand_or_decimals(
                        groups[0],
                        thousand,
                        decimals,
                        typed_power,
                    ));
                }
                groups.append(&mut parts);
                decimals
            }
        };
        let value = Decimal::written(&groups.concat(), decimals, power.unwrap_or(0));
        Ok(Self {
            value,
            is_whole: marks.is_empty() && value.exponent() == 0,
            groups,
            is_spaced: is_grouped && separator.is_some_and(char::is_whitespace),
        })
    }

    /// Refuses `1 375/500`, a fraction or one and a fraction, and `1-3/8`, one and a fraction
    /// in many workshops but a difference at school. Over a thousand both readings of the
    /// former are the same number.
    fn refuse_second_reading(&self, rest: Cursor, divisor: bool) -> Result<(), EntryProblem> {
        let digits = self.groups.concat();
        if let [leading @ .., last] = &self.groups[..]
            && self.is_spaced
            && !last.starts_with('0')
        {
            let mut ahead = rest;
            if let Some(below) = take_denominator(&mut ahead)
                && below != THOUSAND
                && last.parse().is_ok_and(|above: u32| above < below)
            {
                let whole = leading.concat();
                return Err(ambiguous(
                    format!("{digits}/{below}"),
                    format!("{whole} + {last}/{below}"),
                ));
            }
        }
        let mut ahead = rest;
        if !divisor
            && ahead.take(|next| next == '-').is_some()
            && let Some((above, below)) = take_proper_fraction(&mut ahead)
            && below.is_power_of_two()
            && below <= FINEST_RULE
        {
            return Err(ambiguous(
                format!("{digits} {above}/{below}"),
                format!("{digits} {} {above}/{below}", figure::MINUS),
            ));
        }
        Ok(())
    }
}

/// What the digits before a thousands separator count.
const THOUSAND: u32 = 1000;

/// The finest fraction of an inch on a shop rule is one 64th.
const FINEST_RULE: u32 = 64;

fn is_mark(mark: char) -> bool {
    mark == '.' || mark == ','
}

/// Spaces a thousand may be parted by (plain, no-break, figure, thin and narrow no-break) and
/// both apostrophes.
fn is_thousands_separator(separator: char) -> bool {
    matches!(
        separator,
        ' ' | '\u{a0}' | '\u{2007}' | '\u{2009}' | '\u{202f}' | '\'' | '\u{2019}'
    )
}

/// A group of thousands is led by one to three digits, the first of them not 0.
fn can_lead_thousands(digits: &str) -> bool {
    (1..=3).contains(&digits.len()) && !digits.starts_with('0')
}

fn are_thousands(leading: &str, groups: &[&str]) -> bool {
    can_lead_thousands(leading) && groups.iter().all(|group| group.len() == 3)
}

/// Takes the separator and exactly three digits behind it, or nothing.
fn take_thousand<'a>(cursor: &mut Cursor<'a>, separator: char) -> Option<&'a str> {
    let mut ahead = *cursor;
    ahead.take(|next| next == separator)?;
    let digits = ahead.take_digits();
    (digits.len() == 3).then(|| *cursor = ahead)?;
    Some(digits)
}

/// Takes `e3`, `E-3` and the like, or nothing.
fn take_power_of_ten(cursor: &mut Cursor) -> Result<Option<i32>, EntryProblem> {
    let mut ahead = *cursor;
    if ahead.take(|next| next == 'e' || next == 'E').is_none() {
        return Ok(None);
    }
    let sign = ahead.take(|next| matches!(next, '+' | '-' | figure::MINUS));
    let digits = ahead.take_digits();
    if digits.is_empty() {
        return Ok(None);
    }
    *cursor = ahead;
    let is_negative = sign.is_some_and(|sign| sign != '+');
    match digits.trim_start_matches('0') {
        "" => Ok(Some(0)),
        digits if digits.len() > 2 && is_negative => Err(EntryProblem::TooSmall),
        digits if digits.len() > 2 => Err(EntryProblem::TooLarge),
        digits => {
            let power = digits
                .bytes()
                .fold(0, |power, digit| power * 10 + i32::from(digit - b'0'));
            Ok(Some(if is_negative { -power } else { power }))
        }
    }
}

/// Takes `3/8` when it is less than one, or nothing.
fn take_proper_fraction(cursor: &mut Cursor) -> Option<(u32, u32)> {
    let mut ahead = *cursor;
    let above = take_small_whole(&mut ahead)?;
    let below = take_denominator(&mut ahead)?;
    (above < below).then(|| *cursor = ahead)?;
    Some((above, below))
}

/// Takes `/8`, or nothing.
fn take_denominator(cursor: &mut Cursor) -> Option<u32> {
    let mut ahead = *cursor;
    ahead.take(is_fraction_slash)?;
    let below = take_small_whole(&mut ahead)?;
    let goes_on = ahead.peek().is_some_and(is_mark);
    (!goes_on).then(|| *cursor = ahead)?;
    Some(below)
}

/// Takes a whole number of at most four digits that does not begin with 0, or nothing.
fn take_small_whole(cursor: &mut Cursor) -> Option<u32> {
    let digits = cursor.take_digits();
    if digits.len() > 4 || digits.starts_with('0') {
        return None;
    }
    digits.parse().ok()
}

/// The slash of the keyboard, of fractions and of division.
pub(super) fn is_fraction_slash(slash: char) -> bool {
    matches!(slash, '/' | '\u{2044}' | '\u{2215}')
}

fn take_vulgar_fraction(cursor: &mut Cursor) -> Option<(u32, u32)> {
    let fraction = vulgar_fraction(cursor.peek()?)?;
    cursor.take(|_| true);
    Some(fraction)
}

fn vulgar_fraction(sign: char) -> Option<(u32, u32)> {
    Some(match sign {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    })
}

/// `1,234` and `1,234.5`: thousands or decimals.
fn thousand_or_decimals(
    leading: &str,
    thousand: &str,
    decimals: &str,
    power: &str,
) -> EntryProblem {
    let whole = figure::grouped(&[leading, thousand].concat());
    let point = if decimals.is_empty() { "" } else { "." };
    ambiguous(
        format!("{whole}{point}{decimals}{power}"),
        format!("{leading}.{thousand}{decimals}{power}"),
    )
}

fn ambiguous(first: String, second: String) -> EntryProblem {
    EntryProblem::Ambiguous {
        readings: [first, second],
    }
}
