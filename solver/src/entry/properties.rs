//! What holds for whatever is typed.

use super::EntryProblem as Problem;
use super::{Dimension, LARGEST_ENTRY, LONGEST_ENTRY, read};
use crate::LengthUnit::{self, Inch, Millimetre};
use crate::figure;
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1000))]

    #[test]
    fn no_text_stops_the_program(
        text in "\\PC{0,60}|(?s).{0,60}", dimension in any_dimension(), unit in any_unit(),
    ) {
        survives(&text, dimension, unit)?;
    }

    #[test]
    fn nothing_like_a_sum_stops_the_program(
        text in "[0-9.,'’ e\u{202f}/⁄+*()×−½⅜a-zµ\"°%-]{0,40}",
        dimension in any_dimension(),
        unit in any_unit(),
    ) {
        survives(&text, dimension, unit)?;
    }

    #[test]
    fn either_reading_of_an_ambiguous_entry_can_be_typed(
        text in "[1-9]{1,3}[.,'\u{202f} -][0-9]{3}[,./-][1-9]{0,4}|[1-9][ -][1-9]{1,3}/[1-9]{1,4}",
    ) {
        if let Err(Problem::Ambiguous { readings }) = read(&text, Dimension::Plain, Millimetre) {
            for reading in readings {
                prop_assert!(read(&reading, Dimension::Plain, Millimetre).is_ok(), "{}", reading);
            }
        }
    }

    #[test]
    fn an_exact_length_comes_back_to_the_last_bit(mm in any_length(), unit in any_unit()) {
        let text = figure::length_exact(mm, unit);
        let back = read(&text, Dimension::Length, unit);
        prop_assert_eq!(back.map(f64::to_bits), Ok(mm.to_bits()), "{}", text);
    }

    #[test]
    fn an_exact_number_comes_back_to_the_last_bit(value in any_length()) {
        let back = read(&figure::exact(value), Dimension::Plain, Millimetre);
        prop_assert_eq!(back.map(f64::to_bits), Ok(value.to_bits()));
    }

    #[test]
    fn an_exact_length_in_inches_has_no_digit_to_spare(mm in 0.001..5000.0_f64) {
        let text = figure::length_exact(mm, Inch);
        if let Some((whole, decimals)) = text.split_once('.') {
            let places = decimals.len() - 1;
            let inches: f64 = text.parse().expect("a number");
            for shorter in [format!("{inches:.places$}"), format!("{whole}.{}", &decimals[..places])] {
                prop_assert_ne!(read(&shorter, Dimension::Length, Inch), Ok(mm));
            }
        }
    }

    #[test]
    fn a_shown_length_is_near(mm in -5000.0..5000.0_f64, unit in any_unit()) {
        let half_a_digit = match unit { Millimetre => 0.005, Inch => 0.0005 * 25.4 };
        let back = read(&figure::length(mm, unit), Dimension::Length, unit).expect("a figure");
        prop_assert!((back - mm).abs() <= half_a_digit * (1.0 + 1e-9), "{} for {}", back, mm);
    }

    #[test]
    fn thousands_do_not_change_the_value(
        number in 0..999_999_999_999_u64,
        separator in prop::sample::select(vec![' ', '\u{a0}', '\u{2007}', '\u{2009}', '\u{202f}', '\'', '’']),
        decimals in "|\\.[0-9]{1,4}|,[0-9]{1,2}",
    ) {
        let parted = figure::count(number).replace(figure::THIN_SPACE, &separator.to_string());
        let plain = read(&format!("{number}.{}", decimals.get(1..).unwrap_or("")), Dimension::Plain, Millimetre);
        prop_assert!(plain.is_ok());
        prop_assert_eq!(read(&format!("{parted}{decimals}"), Dimension::Plain, Millimetre), plain);
    }

    #[test]
    fn a_sum_agrees_with_the_arithmetic(sum in sum()) {
        let fits = sum.text.chars().count() <= LONGEST_ENTRY;
        prop_assume!(fits && !sum.is_risky && sum.scale < LARGEST_ENTRY);
        match read(&sum.text, Dimension::Length, Millimetre) {
            Ok(read) => prop_assert!(
                (read - sum.value).abs() <= 1e-14 * sum.scale,
                "{} is {} not {}", sum.text, read, sum.value,
            ),
            Err(problem) => prop_assert!(false, "{} {}", sum.text, problem),
        }
    }

    #[test]
    fn products_come_before_sums((text, total) in flat_sum()) {
        prop_assert_eq!(read(&text, Dimension::Plain, Millimetre), Ok(total), "{}", text);
    }
}

/// A sum that its maker has already reckoned.
#[derive(Clone, Debug)]
struct Reckoned {
    text: String,
    value: f64,
    /// What the value would be if no part had cancelled another: the measure of its roundings.
    scale: f64,
    /// Something is divided by zero, or by what may be zero or only the roundings of one.
    is_risky: bool,
}

fn number() -> impl Strategy<Value = Reckoned> {
    (0..100_000_u32, any::<bool>()).prop_map(|(hundredths, comma)| {
        let point = if comma { ',' } else { '.' };
        let text = format!("{}{point}{:02}", hundredths / 100, hundredths % 100);
        let value = f64::from(hundredths) / 100.0;
        Reckoned {
            text,
            value,
            scale: value,
            is_risky: false,
        }
    })
}

fn sum() -> impl Strategy<Value = Reckoned> {
    number().prop_recursive(4, 12, 2, |part| {
        let signs = prop::sample::select(vec!["+", "-", "−", "*", "×", "·", "/", "÷"]);
        (part.clone(), signs, part, 0..3_usize).prop_map(|(left, sign, right, spaces)| {
            let space = " ".repeat(spaces);
            let text = format!("({}){space}{sign}{space}({})", left.text, right.text);
            let is_division = matches!(sign, "/" | "÷");
            let uncertainty = right.scale / right.value.abs();
            let (value, scale) = match sign {
                "+" => (left.value + right.value, left.scale + right.scale),
                "-" | "−" => (left.value - right.value, left.scale + right.scale),
                "*" | "×" | "·" => (left.value * right.value, left.scale * right.scale),
                _ => (
                    left.value / right.value,
                    left.scale / right.value.abs() * uncertainty,
                ),
            };
            let is_safe = !is_division || uncertainty < 1e9;
            let is_risky = left.is_risky || right.is_risky || !is_safe;
            Reckoned {
                text,
                value,
                scale,
                is_risky,
            }
        })
    })
}

/// Products of numbers, added and subtracted, without any bracket.
fn flat_sum() -> impl Strategy<Value = (String, f64)> {
    let term = prop::collection::vec(1..1000_u32, 1..4);
    prop::collection::vec((any::<bool>(), term), 1..6).prop_map(|terms| {
        let mut text = String::new();
        let mut total = 0.0;
        for (is_negative, factors) in terms {
            text += if is_negative { " - " } else { " + " };
            text += &factors
                .iter()
                .map(u32::to_string)
                .collect::<Vec<_>>()
                .join(" * ");
            let product: f64 = factors.iter().copied().map(f64::from).product();
            total += if is_negative { -product } else { product };
        }
        (text, total)
    })
}

/// Lengths of every order from 1e-80 mm to 1e12 mm, and those a shop handles.
fn any_length() -> impl Strategy<Value = f64> {
    prop_oneof![
        (1e-80_f64.to_bits()..1e12_f64.to_bits(), any::<bool>()).prop_map(|(bits, negative)| {
            let size = f64::from_bits(bits);
            if negative { -size } else { size }
        }),
        -5000.0..5000.0_f64,
        (0..1_000_000_u32).prop_map(|hundredths| f64::from(hundredths) / 100.0),
        (0..64_000_u32).prop_map(|parts| f64::from(parts) * 25.4 / 64.0),
    ]
}

fn any_dimension() -> impl Strategy<Value = Dimension> {
    prop::sample::select(vec![
        Dimension::Length,
        Dimension::Angle,
        Dimension::Count,
        Dimension::Money,
        Dimension::Percent,
        Dimension::Plain,
    ])
}

fn any_unit() -> impl Strategy<Value = LengthUnit> {
    prop::sample::select(vec![Millimetre, Inch])
}

/// What is read is finite and within bounds; what is refused has a short message.
fn survives(text: &str, dimension: Dimension, unit: LengthUnit) -> Result<(), TestCaseError> {
    match read(text, dimension, unit) {
        Ok(value) => prop_assert!(value.abs() < LARGEST_ENTRY),
        Err(problem) => prop_assert!(problem.to_string().chars().count() < 100),
    }
    Ok(())
}
