//! What may be typed, line by line.

use super::EntryProblem as Problem;
use super::{Dimension, LONGEST_ENTRY, read};
use crate::LengthUnit::{Inch, Millimetre};
use crate::figure;

#[track_caller]
fn length(text: &str, mm: f64) {
    assert_eq!(read(text, Dimension::Length, Millimetre), Ok(mm), "{text}");
}

#[track_caller]
fn length_in_inches(text: &str, mm: f64) {
    assert_eq!(read(text, Dimension::Length, Inch), Ok(mm), "{text}");
}

#[track_caller]
fn other(text: &str, dimension: Dimension, value: f64) {
    assert_eq!(read(text, dimension, Millimetre), Ok(value), "{text}");
}

#[track_caller]
fn refused(text: &str, dimension: Dimension, message: &str) {
    let problem = read(text, dimension, Millimetre).expect_err(text);
    assert_eq!(
        problem.to_string().replace(figure::THIN_SPACE, " "),
        message,
        "{text}"
    );
}

/// Refused with both readings, each of which is taken when typed, and they differ.
#[track_caller]
fn two_readings(text: &str, first: f64, second: f64) {
    match read(text, Dimension::Length, Millimetre) {
        Err(Problem::Ambiguous { readings }) => {
            length(&readings[0], first);
            length(&readings[1], second);
            assert_ne!(first, second);
        }
        other => panic!("{text} gave {other:?}"),
    }
}

#[test]
fn plain_numbers() {
    length("7", 7.0);
    length("7.2", 7.2);
    length("7,2", 7.2);
    length(".5", 0.5);
    length(",5", 0.5);
    length("7.", 7.0);
    length("007", 7.0);
    length(" \t7.2\u{a0}\n", 7.2);
    length("0", 0.0);
    length("0.1", 0.1);
}

#[test]
fn signs() {
    length("-7.2", -7.2);
    length("−7.2", -7.2);
    length("+7.2", 7.2);
    length("- 7.2", -7.2);
    length("5 - -3", 8.0);
    length("2*-3", -6.0);
    refused("--5", Dimension::Length, "needs a number beside “-”");
}

#[test]
fn zero_has_no_sign() {
    let zero = read("-0", Dimension::Length, Millimetre).unwrap();
    assert!(zero.is_sign_positive());
    let none = read("-0", Dimension::Count, Millimetre).unwrap();
    assert!(none.is_sign_positive());
}

#[test]
fn powers_of_ten() {
    length("1e3", 1000.0);
    length("2.5E-2", 0.025);
    length("2,5e−2 mm", 0.025);
    length("1e+2", 100.0);
    length("1e000", 1.0);
    refused(
        "1e13",
        Dimension::Length,
        "must be smaller than 1 000 000 000 000",
    );
    refused(
        "1e400",
        Dimension::Length,
        "must be smaller than 1 000 000 000 000",
    );
    refused(
        "1e-400",
        Dimension::Length,
        "is too close to 0 to be told from it: type 0",
    );
    refused("1e3.5", Dimension::Length, "needs +, −, × or / before “.5”");
}

#[test]
fn thousands() {
    length("1 234", 1234.0);
    length("1\u{a0}234", 1234.0);
    length("1\u{2007}234", 1234.0);
    length("1\u{2009}234", 1234.0);
    length("1\u{202f}234,5", 1234.5);
    length("1'234.5", 1234.5);
    length("1’234’567", 1_234_567.0);
    length("12 345 678", 12_345_678.0);
    length("1 234,567", 1234.567);
    length("1,234,567", 1_234_567.0);
    length("1.234.567", 1_234_567.0);
    length("1,234,567.8", 1_234_567.8);
    length("1.234.567,8", 1_234_567.8);
}

#[test]
fn groups_that_are_not_thousands() {
    refused("1 23", Dimension::Length, "needs +, −, × or / before “23”");
    refused(
        "1 2345",
        Dimension::Length,
        "needs +, −, × or / before “2345”",
    );
    refused(
        "1234 567",
        Dimension::Length,
        "needs +, −, × or / before “567”",
    );
    refused(
        "0 123",
        Dimension::Length,
        "needs +, −, × or / before “123”",
    );
    refused(
        "1 234 56",
        Dimension::Length,
        "needs +, −, × or / before “56”",
    );
    refused(
        "1.5 234",
        Dimension::Length,
        "needs +, −, × or / before “234”",
    );
    refused(
        "1  234",
        Dimension::Length,
        "needs +, −, × or / before “234”",
    );
    refused("1,23,456", Dimension::Length, "must be a number, like 0.4");
    refused("1.2.3", Dimension::Length, "must be a number, like 0.4");
    refused(
        "1,234.567,8",
        Dimension::Length,
        "must be a number, like 0.4",
    );
    refused(
        "1 234,567,8",
        Dimension::Length,
        "must be a number, like 0.4",
    );
}

#[test]
fn a_point_is_the_decimal_point() {
    length("3.175", 3.175);
    length("1.234", 1.234);
}

#[test]
fn a_comma_that_cannot_part_thousands_is_the_decimal_comma() {
    length("0,125", 0.125);
    length("1234,567", 1234.567);
    length("1,2345", 1.2345);
    length("1,23", 1.23);
    length(",125", 0.125);
    length("012,125", 12.125);
}

#[test]
fn thousands_or_decimals() {
    two_readings("1,234", 1234.0, 1.234);
    two_readings("12,345 mm", 12_345.0, 12.345);
    two_readings("74 - 1,500", 1500.0, 1.5);
    two_readings("1.234,5", 1234.5, 1.2345);
    two_readings("1,234.5", 1234.5, 1.2345);
    two_readings("1,234e2", 123_400.0, 123.4);
    refused(
        "1,234",
        Dimension::Count,
        "could be 1 234 or 1.234: type one of these two",
    );
}

#[test]
fn a_fraction_or_a_mixed_number() {
    two_readings("1 375/500", 2.75, 1.75);
    two_readings("12 345 678/900", 13_717.42, 12_345.753_333_333_3);
    length("1 375/1000", 1.375);
    length("1 375/100", 13.75);
    length("1 012/500", 2.024);
    length("1'375/500", 2.75);
}

#[test]
fn units_of_length() {
    length("7.2 mm", 7.2);
    length("7.2mm", 7.2);
    length("7.2 MM", 7.2);
    length("7.2\u{202f}mm", 7.2);
    length("7.2\u{a0}+\u{2009}1\tmm", 8.2);
    length("7 cm", 70.0);
    length("2.3 m", 2300.0);
    length("250 µm", 0.25);
    length("250 \u{3bc}m", 0.25);
    length("2 in", 50.8);
    length("2 in.", 50.8);
    length("2 inches", 50.8);
    length("1 inch", 25.4);
    length("2\"", 50.8);
    length("2″", 50.8);
    length("2”", 50.8);
    length("2''", 50.8);
}

#[test]
fn units_are_converted_in_decimals() {
    length("0.1 in", 2.54);
    length("4.35 cm", 43.5);
    length("1.1 µm", 0.0011);
    length_in_inches("0.3", 7.62);
    length_in_inches("7.2 mm", 7.2);
}

#[test]
fn fractions() {
    length("5/16\"", 7.9375);
    length("5/16 in", 7.9375);
    length("5 / 16 in", 7.9375);
    length("5⁄16 in", 7.9375);
    length("74.5/2 mm", 37.25);
    length("½", 0.5);
    length("½ in", 12.7);
    length("⅜\"", 9.525);
    length("1⅜ in", 34.925);
    length("1 ⅜ in", 34.925);
    length("1 3/8 in", 34.925);
    length("1 234 1/2", 1234.5);
    length("1 1/2 + 1/4 mm", 1.75);
    length_in_inches("5/16", 7.9375);
    length_in_inches("1 3/8", 34.925);
    length_in_inches("7/64", 2.778_125);
    refused(
        "1 8/3 in",
        Dimension::Length,
        "needs +, −, × or / before “8/3 in”",
    );
    refused("1.5½", Dimension::Length, "needs +, −, × or / before “½”");
    refused("1/0 mm", Dimension::Length, "cannot be divided by 0");
}

#[test]
fn a_hyphen_may_join_a_fraction() {
    two_readings("1-3/8", 1.375, 0.625);
    two_readings("10-1-1/2 in", 1.5, 0.5);
    length("1 - 3/8", 0.625);
    length("1−3/8", 0.625);
    length("1/2-1/4", 0.25);
    length("10-3/5", 9.4);
}

#[test]
fn sums() {
    length("74 - 2*1.5", 71.0);
    length("74 − 2 × 1.5", 71.0);
    length("2·3", 6.0);
    length("9 ÷ 2", 4.5);
    length("9 / 2 / 3", 1.5);
    length("8/1/2", 4.0);
    length("3/4/1/2", 0.375);
    length("(1 + 2) * (3 + 4)", 21.0);
    length("-(1 + 2)", -3.0);
    length("((7))", 7.0);
    length("10-3-2", 5.0);
}

#[test]
fn sums_with_units() {
    length("7.2 + 0.4 mm", 7.6);
    length("7.2 mm + 0.4", 7.6);
    length("1 in + 1", 26.4);
    length("2 * 1.5 mm", 3.0);
    length("1.5 mm * 2", 3.0);
    length("1 in / 2", 12.7);
    length("2*5/16 in", 15.875);
    length("(1/2 + 1/4) in", 19.05);
    length("74 mm - (2 * 1 mm + 1) * 3", 65.0);
    length_in_inches("1 + 2 mm", 27.4);
    length_in_inches("2 * (1 + 1)", 101.6);
    length_in_inches("2 * 3 mm", 6.0);
    length_in_inches("3 / 2", 38.1);
    let message = "can be multiplied or divided only by a number without a unit, like 2 × 1.5 mm";
    refused("2 mm * 3 mm", Dimension::Length, message);
    refused("10 / (2 mm)", Dimension::Length, message);
    refused("10 mm / 2 mm", Dimension::Length, message);
    refused("8/1/2 in", Dimension::Length, message);
    refused(
        "(2 mm) in",
        Dimension::Length,
        "has a second unit, “in”: keep one of the two",
    );
}

#[test]
fn sums_come_out_as_on_paper() {
    length("7.2 + 0.4", 7.6);
    length("0.1 + 0.2", 0.3);
    length("0.1 * 3", 0.3);
    length("0.3 - 0.2 - 0.1", 0.0);
    length("1 / 3", 0.333_333_333_333_333);
    length_in_inches("0.3 + 0.1", 10.16);
    refused(
        "1 / (0.3 - 0.2 - 0.1)",
        Dimension::Length,
        "cannot be divided by 0",
    );
}

#[test]
fn unfinished_sums() {
    refused("74 -", Dimension::Length, "needs a number beside “-”");
    refused("74 - * 2", Dimension::Length, "needs a number beside “*”");
    refused("* 2", Dimension::Length, "needs a number beside “*”");
    refused("()", Dimension::Length, "needs a number beside “)”");
    refused("(", Dimension::Length, "needs a number beside “(”");
    refused("(1", Dimension::Length, "has a bracket without its partner");
    refused("1)", Dimension::Length, "has a bracket without its partner");
    refused(
        "2(3+1)",
        Dimension::Length,
        "needs +, −, × or / before “(3+1)”",
    );
    refused("(1 2)", Dimension::Length, "needs +, −, × or / before “2)”");
    refused("1 mm 2", Dimension::Length, "needs +, −, × or / before “2”");
    refused("5 ,5", Dimension::Length, "needs +, −, × or / before “,5”");
    refused("1 / 0", Dimension::Length, "cannot be divided by 0");
    refused("1 / (1 - 1)", Dimension::Length, "cannot be divided by 0");
}

#[test]
fn what_is_no_number() {
    refused("", Dimension::Length, "needs a number, like 0.4");
    refused(" \u{202f} ", Dimension::Length, "needs a number, like 0.4");
    for text in [
        "NaN", "inf", "-inf", "∞", "mm", "seven", ".", ",", "$5", "–", "5 + nan", "٣",
    ] {
        refused(text, Dimension::Length, "must be a number, like 0.4");
    }
}

#[test]
fn units_that_do_not_fit() {
    let unknown = "has a unit that is not known here, “ft”: use mm, cm, m, µm or in";
    refused("5 ft", Dimension::Length, unknown);
    refused("5/16 ft", Dimension::Length, unknown);
    refused("5 M", Dimension::Length, &unknown.replace("ft", "M"));
    refused("50x70", Dimension::Length, &unknown.replace("ft", "x"));
    refused("5'", Dimension::Length, &unknown.replace("ft", "'"));
    refused(
        "10 mm",
        Dimension::Angle,
        "must be an angle in degrees, not in “mm”",
    );
    refused(
        "10°",
        Dimension::Length,
        "must be a length in mm or in, not in “°”",
    );
    refused(
        "10 %",
        Dimension::Plain,
        "must be a number without a unit, not in “%”",
    );
    refused(
        "10 €",
        Dimension::Money,
        "has a unit that is not known here, “€”: type the number alone",
    );
    refused(
        "1 mmmmmmmmmmmmmmmmmmmmmmmmmmm",
        Dimension::Angle,
        "has a unit that is not known here, “mmmmmmmmmmmmmmmmmmm…”: use ° or deg",
    );
}

#[test]
fn other_dimensions() {
    other("22,5°", Dimension::Angle, 22.5);
    other("360/7", Dimension::Angle, 51.428_571_428_571_4);
    other("15 deg", Dimension::Angle, 15.0);
    other("12 %", Dimension::Percent, 12.0);
    other("8 + 0,5 %", Dimension::Percent, 8.5);
    other("12.50", Dimension::Money, 12.5);
    other("1 250,50", Dimension::Money, 1250.5);
    other("1.5", Dimension::Plain, 1.5);
    other("12 500 pcs", Dimension::Count, 12_500.0);
}

#[test]
fn counts_are_whole() {
    other("5 * 144", Dimension::Count, 720.0);
    other("2.5 * 144", Dimension::Count, 360.0);
    other("1e3", Dimension::Count, 1000.0);
    other("0.1 * 3 * 10", Dimension::Count, 3.0);
    refused("2.5", Dimension::Count, "must be a whole number, like 12");
    refused("1e-9", Dimension::Count, "must be a whole number, like 12");
    refused(
        "100000.000001",
        Dimension::Count,
        "must be a whole number, like 12",
    );
}

#[test]
fn a_unit_in_a_field_of_inches_does_not_change_angles() {
    assert_eq!(read("90", Dimension::Angle, Inch), Ok(90.0));
}

#[test]
fn length_and_depth_are_bounded() {
    length(&format!("{}1", "0".repeat(LONGEST_ENTRY - 1)), 1.0);
    refused(
        &"1".repeat(LONGEST_ENTRY + 1),
        Dimension::Length,
        &Problem::TooLong.to_string(),
    );
    refused(
        &"½".repeat(1_000_000),
        Dimension::Length,
        &Problem::TooLong.to_string(),
    );
    length(&format!("{}1{}", "(".repeat(16), ")".repeat(16)), 1.0);
    length(&vec!["(1)"; 20].join("+"), 20.0);
    refused(
        &format!("{}1{}", "(".repeat(17), ")".repeat(17)),
        Dimension::Length,
        "has too many brackets inside each other",
    );
    refused(
        &"(".repeat(LONGEST_ENTRY),
        Dimension::Length,
        "has too many brackets inside each other",
    );
}

#[test]
fn what_is_too_large_is_not_hidden_by_a_division() {
    let too_large = "must be smaller than 1 000 000 000 000";
    refused(&["1e99"; 4].join("*"), Dimension::Length, too_large);
    refused("1/(1e99*1e99*1e99*1e99)", Dimension::Length, too_large);
    refused("1e12", Dimension::Length, too_large);
    refused(&"9".repeat(LONGEST_ENTRY), Dimension::Length, too_large);
    refused(
        &format!("{} 1/2", "9".repeat(100)),
        Dimension::Length,
        "needs +, −, × or / before “1/2”",
    );
    length("999 999 999 999.5", 999_999_999_999.5);
    length("1e99 / 1e98", 10.0);
}
