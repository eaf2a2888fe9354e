use super::*;
use LengthUnit::{Inch, Millimetre};
use proptest::prelude::*;

fn millimetres(lengths: &[Length]) -> Vec<f64> {
    lengths
        .iter()
        .map(|length| length.in_millimetres())
        .collect()
}

#[track_caller]
fn check_in(text: &str, unit: LengthUnit, widths: &[f64], thicknesses: &[f64]) {
    let readings = read(text, unit).unwrap();
    assert_eq!(readings.bad, [], "{text:?}");
    assert_eq!(millimetres(&readings.widths), widths, "{text:?}");
    assert_eq!(millimetres(&readings.thicknesses), thicknesses, "{text:?}");
}

#[track_caller]
fn check(text: &str, widths: &[f64], thicknesses: &[f64]) {
    check_in(text, Millimetre, widths, thicknesses);
}

/// The messages of the bad cells.
#[track_caller]
fn refused(text: &str, messages: &[&str]) {
    let readings = read(text, Millimetre).unwrap();
    let found: Vec<String> = readings
        .bad
        .iter()
        .map(|cell| cell.message(Millimetre).replace(figure::THIN_SPACE, " "))
        .collect();
    assert_eq!(found, messages, "{text:?}");
}

#[test]
fn one_column_is_widths_and_two_are_widths_and_thicknesses() {
    check("74.02\n73.98\n", &[74.02, 73.98], &[]);
    check("74.02\t5.01\r\n73.98\t5.03", &[74.02, 73.98], &[5.01, 5.03]);
    check("74.02;5.01\r73.98;5.03\r", &[74.02, 73.98], &[5.01, 5.03]);
}

#[test]
fn a_decimal_comma_is_taken_beside_tabs_and_semicolons_and_alone() {
    check("74,02\t5,01", &[74.02], &[5.01]);
    check("74,02;5,01", &[74.02], &[5.01]);
    check("74,02\n73,98\n74", &[74.02, 73.98, 74.0], &[]);
}

#[test]
fn commas_part_cells_where_numbers_have_points_or_there_are_two() {
    check(
        "74.02,5.01\n73.98,5\n74,5.02",
        &[74.02, 73.98, 74.0],
        &[5.01, 5.0, 5.02],
    );
    check("74.1, 5.0", &[74.1], &[5.0]);
    check("\"74,02\",\"5,01\"", &[74.02], &[5.01]);
    check("Width,Thickness\n74,5", &[74.0], &[5.0]);
    // A heading with a comma in it names one column.
    check("Width, mm\n74,5", &[74.5], &[]);
}

#[test]
fn one_slip_does_not_turn_decimal_commas_into_separators() {
    let readings = read("74,02\n73,,98\n74,01", Millimetre).unwrap();
    assert_eq!(millimetres(&readings.widths), [74.02, 74.01]);
    assert_eq!((readings.bad.len(), readings.bad[0].row), (1, 2));
}

#[test]
fn three_decimals_behind_a_comma_are_no_thousands() {
    check("4,985\n5,012", &[4.985, 5.012], &[]);
    // Both a metre and a millimetre can be: nothing is guessed.
    refused(
        "1,000",
        &["Row 1, column 1: “1,000” could be 1 000 or 1.000: type one of these two"],
    );
}

#[test]
fn a_heading_names_columns_and_units() {
    check("Thickness\tWidth\n5\t74", &[74.0], &[5.0]);
    check("No.;Thickness;Remark;Width\n1;5;dark;74", &[74.0], &[5.0]);
    check("Thickness\n5", &[], &[5.0]);
    check("Breite;Dicke\n74;5", &[74.0], &[5.0]);
    check("W [in];T [mm]\n3;5", &[76.2], &[5.0]);
    check("Width (in);Thickness\n3;0.2", &[76.2], &[5.08]);
    check_in("Width in mm\n74", Inch, &[74.0], &[]);
    check_in("Width (mm)\n74\n3 in", Inch, &[74.0, 76.2], &[]);
    check_in("2.9\n2 7/8\"", Inch, &[73.66, 73.025], &[]);
    let problem = read("Width (cm)\n7.4", Millimetre).unwrap_err();
    assert_eq!(
        problem.to_string(),
        "the heading gives lengths in cm: give them in mm or in"
    );
}

#[test]
fn empty_cells_and_rows_are_passed_over() {
    check("\n;\n74;\n;5\n\n73;4\n;;\n", &[74.0, 73.0], &[5.0, 4.0]);
    check("\u{feff}74\n\n", &[74.0], &[]);
}

#[test]
fn what_is_no_length_is_told_with_its_place() {
    refused(
        "Width;Thickness\n74;five\n\n0;5\n1000.1;5\n-74;5",
        &[
            "Row 2, column 2: “five” must be a number, like 0.4",
            "Row 4, column 1: “0” must be between 0.10 mm and 1 000.00 mm; it is 0.00 mm",
            "Row 5, column 1: “1000.1” must be between 0.10 mm and 1 000.00 mm; it is 1 000.10 mm",
            "Row 6, column 1: “-74” must be between 0.10 mm and 1 000.00 mm; it is −74.00 mm",
        ],
    );
    refused(
        "1;74;5",
        &[
            "Row 1, column 3: “5” stands beyond the second column: name the columns width and thickness in the first row",
        ],
    );
}

#[test]
fn the_bounds_can_be_measured() {
    check("0.1\n1000\n1000.0", &[0.1, 1000.0, 1000.0], &[]);
}

#[test]
fn twenty_bad_cells_are_told_and_the_rest_counted() {
    let readings = read(&"12 mn\n".repeat(75), Millimetre).unwrap();
    assert_eq!((readings.bad.len(), readings.more_bad), (20, 55));
    assert!(readings.widths.is_empty());
    let long = read(&format!("7{}", "x".repeat(500)), Millimetre).unwrap();
    assert!(long.bad[0].message(Millimetre).chars().count() < 120);
}

#[test]
fn nothing_is_told_as_nothing() {
    for text in ["", "\n\n", ";;\n;", "Width\n", "\t"] {
        assert_eq!(
            read(text, Millimetre),
            Err(ReadingsProblem::Nothing),
            "{text:?}"
        );
    }
}

#[test]
fn a_million_rows_are_read_and_one_more_is_refused() {
    let million = "74.02,5.01\n".repeat(Readings::MOST_ROWS);
    let readings = read(&million, Millimetre).unwrap();
    assert_eq!(readings.widths.len(), Readings::MOST_ROWS);
    assert_eq!(readings.thicknesses.len(), Readings::MOST_ROWS);
    let problem = read(&(million + "74.02,5.01"), Millimetre).unwrap_err();
    assert_eq!(problem, ReadingsProblem::TooManyRows);
    assert!(problem.to_string().contains("1\u{202f}000\u{202f}000 rows"));
}

proptest! {
    #[test]
    fn the_short_way_reads_what_a_field_reads(
        cell in "[0-9]{0,7}([.,][0-9]{0,8})?", inch in any::<bool>(),
    ) {
        let unit = if inch { Inch } else { Millimetre };
        if let Some(short) = plain(&cell, unit) {
            match entry::read(&cell, Dimension::Length, unit) {
                Ok(field) => prop_assert_eq!(short.to_bits(), field.to_bits()),
                Err(EntryProblem::Ambiguous { readings }) => {
                    let possible = possible(&readings, unit);
                    let is_it = |length: Length| length == Length::millimetres(short);
                    prop_assert!(possible.map_or(!can_be(Length::millimetres(short)), is_it));
                }
                Err(problem) => prop_assert!(false, "{}", problem),
            }
        }
    }

    #[test]
    fn any_text_is_read_or_refused(text in "[0-9.,;\t\r\n\" a-zäm/+-]{0,80}", inch in any::<bool>()) {
        let unit = if inch { Inch } else { Millimetre };
        if let Ok(readings) = read(&text, unit) {
            prop_assert!(readings.widths.iter().chain(&readings.thicknesses).all(|&length| can_be(length)));
            for cell in &readings.bad {
                prop_assert!(!cell.message(unit).is_empty() && cell.row >= 1 && cell.column >= 1);
            }
        }
    }

    #[test]
    fn what_is_written_is_read_back(
        sizes in prop::collection::vec((200_u32..900_000, 200_u32..9000), 1..30),
        separator in prop::sample::select(vec!['\t', ';', ',']), comma in any::<bool>(),
    ) {
        let comma = comma && separator != ',';
        let number = |thousandths: u32| {
            let text = format!("{:.3}", f64::from(thousandths) / 1000.0);
            if comma { text.replace('.', ",") } else { text }
        };
        let rows: Vec<String> = sizes
            .iter()
            .map(|&(width, thickness)| format!("{}{separator}{}\n", number(width), number(thickness)))
            .collect();
        let readings = read(&rows.concat(), Millimetre).unwrap();
        // `1,000` is the only number of these that may be a thousand as well.
        let bad = sizes.iter().filter(|(width, thickness)| comma && (*width == 1000 || *thickness == 1000));
        prop_assert_eq!(readings.bad.is_empty(), bad.count() == 0);
        if readings.bad.is_empty() {
            let expected: Vec<f64> = sizes.iter().map(|&(width, _)| f64::from(width) / 1000.0).collect();
            prop_assert_eq!(millimetres(&readings.widths), expected);
            prop_assert_eq!(readings.thicknesses.len(), sizes.len());
        }
    }
}
