//! How numbers are shown: with no more digits than the shop can measure.
//!
//! Every figure here is text without its unit, unless the name says otherwise. Thousands are
//! parted by a narrow no-break space, a negative number has a real minus sign, a number that
//! rounds to nothing has none, and what is not finite is a dash. Rounding follows the decimal
//! digits of the number: 7.125 is shown as 7.13.

use crate::LengthUnit;
use crate::decimal::Decimal;
use crate::quantity::Length;

/// Parts thousands, and a number from its unit: narrow and never broken at the end of a line.
pub const THIN_SPACE: char = '\u{202f}';
/// The sign before a negative number.
pub const MINUS: char = '\u{2212}';
/// Stands for a number that is not finite.
pub const NO_FIGURE: &str = "–";

/// A length given in millimetres, to 0.01 mm or 0.001 in.
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::length(7.2, LengthUnit::Millimetre), "7.20");
/// assert_eq!(figure::length(7.2, LengthUnit::Inch), "0.283");
/// ```
#[must_use]
pub fn length(mm: f64, unit: LengthUnit) -> String {
    let decimals = match unit {
        LengthUnit::Millimetre => 2,
        LengthUnit::Inch => 3,
    };
    plain(mm / unit.millimetres(), decimals)
}

/// A length given in millimetres, to 0.001 mm or 0.0001 in: an error of a machine.
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::length_of_error(0.015, LengthUnit::Millimetre), "0.015");
/// assert_eq!(figure::length_of_error(0.0127, LengthUnit::Inch), "0.0005");
/// ```
#[must_use]
pub fn length_of_error(mm: f64, unit: LengthUnit) -> String {
    let decimals = match unit {
        LengthUnit::Millimetre => 3,
        LengthUnit::Inch => 4,
    };
    plain(mm / unit.millimetres(), decimals)
}

/// A length given in millimetres, to 0.0001 mm or 0.00001 in: of what is reckoned from many
/// measurements.
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::length_fine(0.015, LengthUnit::Millimetre), "0.0150");
/// assert_eq!(figure::length_fine(0.0127, LengthUnit::Inch), "0.00050");
/// ```
#[must_use]
pub fn length_fine(mm: f64, unit: LengthUnit) -> String {
    let decimals = match unit {
        LengthUnit::Millimetre => 4,
        LengthUnit::Inch => 5,
    };
    plain(mm / unit.millimetres(), decimals)
}

/// A length given in whole micrometres, shown as [`length`].
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::micrometres(76_047, LengthUnit::Millimetre), "76.05");
/// assert_eq!(figure::micrometres(76_041, LengthUnit::Millimetre), "76.04");
/// ```
#[must_use]
pub fn micrometres(micrometres: i64, unit: LengthUnit) -> String {
    length(micrometres as f64 / 1000.0, unit)
}

/// A [`length`] followed by its unit.
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::length_with_unit(7.2, LengthUnit::Millimetre), "7.20\u{202f}mm");
/// ```
#[must_use]
pub fn length_with_unit(mm: f64, unit: LengthUnit) -> String {
    format!("{}{THIN_SPACE}{}", length(mm, unit), unit.label())
}

/// A length given in millimetres as inches to the nearest 1/64, as a steel rule reads them: a whole number
/// and a fraction in lowest terms. Of two that are equally near, the one farther from nothing.
///
/// ```
/// use solver::figure;
///
/// assert_eq!(figure::sixty_fourths(74.0), "2\u{a0}29/32");
/// assert_eq!(figure::sixty_fourths(4.42), "11/64");
/// assert_eq!(figure::sixty_fourths(-25.4), "−1");
/// assert_eq!(figure::sixty_fourths(0.1), "0");
/// assert_eq!(figure::sixty_fourths(f64::NAN), figure::NO_FIGURE);
/// ```
#[must_use]
pub fn sixty_fourths(mm: f64) -> String {
    let parts = (mm / LengthUnit::Inch.millimetres() * 64.0).round();
    // Beyond it a number has no sixty-fourths any more, and nobody a rule as long.
    if !parts.is_finite() || parts.abs() > 1e12 {
        return NO_FIGURE.to_owned();
    }
    let sign = if parts < 0.0 {
        MINUS.to_string()
    } else {
        String::new()
    };
    let parts = parts.abs() as u64;
    let (whole, rest) = (parts / 64, parts % 64);
    if rest == 0 {
        return format!("{sign}{whole}");
    }
    let halvings = rest.trailing_zeros();
    let fraction = format!("{}/{}", rest >> halvings, 64_u64 >> halvings);
    match whole {
        0 => format!("{sign}{fraction}"),
        // A narrow space would let 2 29/32 be read as 229/32.
        _ => format!("{sign}{whole}\u{a0}{fraction}"),
    }
}

/// A [`length`] as it is set in the shop: in inches with the nearest 1/64 beside it.
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::length_to_set(74.0, LengthUnit::Inch), "2.913 · 2\u{a0}29/32");
/// assert_eq!(figure::length_to_set(74.0, LengthUnit::Millimetre), "74.00");
/// ```
#[must_use]
pub fn length_to_set(mm: f64, unit: LengthUnit) -> String {
    let decimal = length(mm, unit);
    match unit {
        LengthUnit::Millimetre => decimal,
        LengthUnit::Inch => format!("{decimal} · {}", sixty_fourths(mm)),
    }
}

/// A length in millimetres rounded to what [`length`] shows, away from another: what is true
/// from `mm` onwards, seen from `from`, is true at the value that is shown as well.
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::length_away(81.2312, 74.0, LengthUnit::Millimetre), 81.24);
/// assert_eq!(figure::length_away(66.7688, 74.0, LengthUnit::Millimetre), 66.76);
/// assert_eq!(figure::length_away(81.24, 74.0, LengthUnit::Millimetre), 81.24);
/// ```
#[must_use]
pub fn length_away(mm: f64, from: f64, unit: LengthUnit) -> f64 {
    let (steps, millimetres) = match unit {
        LengthUnit::Millimetre => (100.0, 1.0),
        LengthUnit::Inch => (1000.0, unit.millimetres()),
    };
    let exact = mm / millimetres * steps;
    let nearest = exact.round();
    let rounded = if (nearest - exact).abs() * millimetres / steps <= Length::SLACK.in_millimetres()
    {
        nearest
    } else if mm < from {
        exact.floor()
    } else {
        exact.ceil()
    };
    rounded / steps * millimetres
}

/// A length given in millimetres as the shortest text that [`entry::read`](crate::entry::read)
/// takes for the very same length: what stands in an input field.
///
/// The way back is exact, to the last bit, for zero and for 1e-80 mm to 1e12 mm, in either
/// unit and either sign. A negative zero comes back as zero.
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::length_exact(7.2, LengthUnit::Millimetre), "7.2");
/// assert_eq!(figure::length_exact(3.175, LengthUnit::Inch), "0.125");
/// ```
#[must_use]
pub fn length_exact(mm: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Inch if mm.is_finite() && mm != 0.0 => {
            signed(mm, &unrounded(shortest_inches(mm.abs())))
        }
        _ => exact(mm),
    }
}

/// A number as the shortest text that [`entry::read`](crate::entry::read) takes for the very
/// same number: what stands in an input field that does not ask for a length.
///
/// The way back is exact within the limits of [`length_exact`].
///
/// ```
/// use solver::figure;
///
/// assert_eq!(figure::exact(22.5), "22.5");
/// assert_eq!(figure::exact(1200.0), "1200");
/// ```
#[must_use]
pub fn exact(value: f64) -> String {
    if value.is_finite() {
        signed(value, &unrounded(Decimal::shortest(value.abs())))
    } else {
        NO_FIGURE.to_owned()
    }
}

/// An area given in square millimetres, to 0.1 mm² or 0.0001 in²: what a caliper of 0.01 mm
/// can tell of the section of a pencil.
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::area(42.435, LengthUnit::Millimetre), "42.4");
/// assert_eq!(figure::area(42.435, LengthUnit::Inch), "0.0658");
/// ```
#[must_use]
pub fn area(square_mm: f64, unit: LengthUnit) -> String {
    let side = unit.millimetres();
    let decimals = match unit {
        LengthUnit::Millimetre => 1,
        LengthUnit::Inch => 4,
    };
    plain(square_mm / (side * side), decimals)
}

/// A volume given in cubic millimetres, to 0.01 cm³ or 0.001 in³.
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::volume(68_080.0, LengthUnit::Millimetre), "68.08");
/// assert_eq!(figure::volume(68_080.0, LengthUnit::Inch), "4.154");
/// ```
#[must_use]
pub fn volume(cubic_mm: f64, unit: LengthUnit) -> String {
    let side = unit.millimetres();
    match unit {
        LengthUnit::Millimetre => plain(cubic_mm / 1000.0, 2),
        LengthUnit::Inch => plain(cubic_mm / (side * side * side), 3),
    }
}

/// A volume of timber given in cubic millimetres, with its unit: cubic metres, or board feet of
/// 144 in³ (trade rule).
///
/// ```
/// use solver::{LengthUnit, figure};
///
/// assert_eq!(figure::timber(1.396e9, LengthUnit::Millimetre), "1.396\u{202f}m³");
/// assert_eq!(figure::timber(1.396e9, LengthUnit::Inch), "591.6\u{202f}bd ft");
/// ```
#[must_use]
pub fn timber(cubic_mm: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Millimetre => format!("{}{THIN_SPACE}m³", plain(cubic_mm / 1e9, 3)),
        LengthUnit::Inch => {
            let inch = unit.millimetres();
            let board_feet = cubic_mm / (inch * inch * inch) / 144.0;
            format!("{}{THIN_SPACE}bd ft", plain(board_feet, 1))
        }
    }
}

/// A number of pieces.
///
/// ```
/// use solver::figure;
///
/// assert_eq!(figure::count(12_500), "12\u{202f}500");
/// ```
#[must_use]
pub fn count(pieces: u64) -> String {
    grouped(&pieces.to_string())
}

/// An amount of money given in hundredths of the currency.
///
/// ```
/// use solver::figure;
///
/// assert_eq!(figure::money(123_450), "1\u{202f}234.50");
/// assert_eq!(figure::money(-5), "\u{2212}0.05");
/// ```
#[must_use]
pub fn money(minor_units: i64) -> String {
    let amount = minor_units.unsigned_abs();
    let sign = if minor_units < 0 { "\u{2212}" } else { "" };
    format!("{sign}{}.{:02}", count(amount / 100), amount % 100)
}

/// An amount of money given in hundredths of the currency that need not be whole, like a price
/// for a gross.
///
/// ```
/// use solver::figure;
///
/// assert_eq!(figure::money_rounded(565.6), "5.66");
/// ```
#[must_use]
pub fn money_rounded(minor_units: f64) -> String {
    plain(minor_units / 100.0, 2)
}

/// An angle given in degrees, to a tenth, with its sign.
///
/// ```
/// use solver::figure;
///
/// assert_eq!(figure::angle(22.5), "22.5°");
/// ```
#[must_use]
pub fn angle(degrees: f64) -> String {
    with_sign_of_unit(plain(degrees, 1), "°")
}

/// A percentage given as such (12 for 12 %), to a tenth, with its sign.
///
/// ```
/// use solver::figure;
///
/// assert_eq!(figure::percent(8.25), "8.3\u{202f}%");
/// ```
#[must_use]
pub fn percent(percent: f64) -> String {
    with_sign_of_unit(plain(percent, 1), "\u{202f}%")
}

/// A ratio given as a fraction (0.12 for 12 %), shown as [`percent`].
///
/// ```
/// use solver::figure;
///
/// assert_eq!(figure::ratio(0.934), "93.4\u{202f}%");
/// ```
#[must_use]
pub fn ratio(fraction: f64) -> String {
    percent(fraction * 100.0)
}

/// A ratio given as a fraction as a percentage to a hundredth: of what is rare.
///
/// ```
/// use solver::figure;
///
/// assert_eq!(figure::ratio_fine(0.00027), "0.03\u{202f}%");
/// ```
#[must_use]
pub fn ratio_fine(fraction: f64) -> String {
    with_sign_of_unit(plain(fraction * 100.0, 2), "\u{202f}%")
}

/// Any number, to as many decimals as asked.
///
/// ```
/// use solver::figure;
///
/// assert_eq!(figure::plain(-1234.565, 2), "\u{2212}1\u{202f}234.57");
/// assert_eq!(figure::plain(-0.001, 2), "0.00");
/// assert_eq!(figure::plain(f64::NAN, 2), "–");
/// ```
#[must_use]
pub fn plain(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return NO_FIGURE.to_owned();
    }
    let rounded = Decimal::shortest(value.abs()).rounded(decimals);
    let (whole, fraction) = rounded.positional();
    let mut text = grouped(&whole);
    if decimals > 0 {
        text = format!("{text}.{fraction:0<decimals$}");
    }
    if rounded.digits() == 0 {
        text
    } else {
        signed(value, &text)
    }
}

/// Puts thin spaces between the thousands of a run of digits.
pub(crate) fn grouped(digits: &str) -> String {
    let mut text = String::with_capacity(digits.len() * 2);
    for (position, digit) in digits.chars().enumerate() {
        if position > 0 && (digits.len() - position).is_multiple_of(3) {
            text.push(THIN_SPACE);
        }
        text.push(digit);
    }
    text
}

fn signed(value: f64, digits: &str) -> String {
    if value < 0.0 {
        format!("{MINUS}{digits}")
    } else {
        digits.to_owned()
    }
}

/// Leaves the dash for a missing number without a unit.
fn with_sign_of_unit(figure: String, sign: &str) -> String {
    if figure == NO_FIGURE {
        figure
    } else {
        figure + sign
    }
}

/// All digits; with a power of ten when the number is far from anything the shop handles.
fn unrounded(number: Decimal) -> String {
    const LONGEST: usize = 24;
    let (whole, fraction) = number.positional();
    if whole.len() + fraction.len() > LONGEST {
        format!("{}e{}", number.digits(), number.exponent())
    } else if fraction.is_empty() {
        whole
    } else {
        format!("{whole}.{fraction}")
    }
}

/// The fewest decimals in inches that come back as this length in millimetres.
///
/// With `m` the shortest digits of the length, `m / 25.4` is written ever finer. At each step
/// the decimals just below and just above it are tried: if any decimal of that step lies among
/// the texts that mean this length, one of these two does. Twenty steps past the last digit of
/// `m` give at least 18 digits, finer than any `f64`.
fn shortest_inches(mm: f64) -> Decimal {
    let length = Decimal::shortest(mm);
    let comes_back = |inches: &Decimal| inches.times(Decimal::INCH).to_f64() == mm;
    (-18..=20_i32)
        .find_map(|step| {
            let power = 10_u128.pow(step.unsigned_abs());
            let (dividend, divisor) = if step < 0 {
                (length.digits(), Decimal::INCH.digits() * power)
            } else {
                (length.digits() * power, Decimal::INCH.digits())
            };
            let below = dividend / divisor;
            let exponent = length.exponent() - Decimal::INCH.exponent() - step;
            [below, below + 1]
                .map(|digits| Decimal::new(digits, exponent))
                .into_iter()
                .find(comes_back)
        })
        .expect("eighteen digits tell any two lengths apart")
}

#[cfg(test)]
mod tests {
    use super::*;
    use LengthUnit::{Inch, Millimetre};

    #[track_caller]
    fn check(figure: String, expected: &str) {
        assert_eq!(
            figure.replace(THIN_SPACE, " ").replace(MINUS, "-"),
            expected
        );
    }

    #[test]
    fn thousands_are_parted() {
        check(length(1234.5, Millimetre), "1 234.50");
    }
    #[test]
    fn rounding_away_never_comes_nearer() {
        for (mm, from) in [(7.1211, 7.0), (7.1211, 8.0), (0.4, 0.3), (-0.1234, 0.0)] {
            for unit in [Millimetre, Inch] {
                let away = length_away(mm, from, unit);
                assert!(
                    (away - from).abs() >= (mm - from).abs() - 1e-9,
                    "{mm}: {away}"
                );
                assert!((away - mm).abs() < 0.0255, "{mm}: {away}");
            }
        }
    }
    #[test]
    fn three_digits_stand_alone() {
        check(length(999.994, Millimetre), "999.99");
    }
    #[test]
    fn rounding_may_need_a_space() {
        check(length(999.995, Millimetre), "1 000.00");
    }
    #[test]
    fn nothing_has_no_sign() {
        check(length(-0.004, Millimetre), "0.00");
        check(plain(-0.0, 0), "0");
        check(exact(-0.0), "0");
    }
    #[test]
    fn half_a_hundredth_below_zero_has_one() {
        check(length(-0.005, Millimetre), "-0.01");
    }
    #[test]
    fn inches_have_three_decimals() {
        check(length(184.0, Inch), "7.244");
    }
    #[test]
    fn what_is_no_number_is_a_dash() {
        for nothing in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            check(length(nothing, Inch), "–");
            check(length_exact(nothing, Inch), "–");
            check(length_exact(nothing, Millimetre), "–");
            check(angle(nothing), "–");
            check(ratio(nothing), "–");
        }
    }
    #[test]
    fn money_has_two_decimals() {
        check(money(0), "0.00");
        check(money(100_000_000), "1 000 000.00");
        check(money(-123_456), "-1 234.56");
        check(money(i64::MIN), "-92 233 720 368 547 758.08");
    }
    #[test]
    fn counts_go_to_the_end() {
        check(count(0), "0");
        check(count(999), "999");
        check(count(1_000), "1 000");
        check(count(u64::MAX), "18 446 744 073 709 551 615");
    }
    #[test]
    fn no_decimals_no_point() {
        check(plain(1999.5, 0), "2 000");
    }
    #[test]
    fn many_decimals_are_filled_up() {
        check(plain(0.5, 30), "0.500000000000000000000000000000");
    }
    #[test]
    fn exact_lengths_are_short() {
        check(length_exact(25.4, Inch), "1");
        check(length_exact(2540.0, Inch), "100");
        check(length_exact(7.9375, Inch), "0.3125");
        check(length_exact(-3.175, Inch), "-0.125");
        check(length_exact(0.0, Inch), "0");
        check(length_exact(1234.5, Millimetre), "1234.5");
        check(length_exact(0.1 + 0.2, Millimetre), "0.30000000000000004");
    }
    #[test]
    fn extreme_numbers_have_a_power_of_ten() {
        check(exact(1.5e-60), "15e-61");
        check(exact(f64::MAX), "17976931348623157e292");
    }
}
