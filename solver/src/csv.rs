//! Tables as CSV text.
//!
//! After RFC 4180: cells parted by commas, rows ended by CR LF, a header, in every row as many cells,
//! and quotation marks round a cell that holds a comma, a quotation mark or a line end, with those in
//! it doubled. Numbers have a decimal point and no thousands marks.
//!
//! A spreadsheet runs a cell as a formula when it begins with = + - or @, quoted or not. Names that
//! begin so, after any spaces, get an apostrophe in front, which it takes for the sign of a text.
//! (What the handbooks of web safety say about formulas in CSV, *from memory*.)

use crate::quantity::Length;
use crate::unit::LengthUnit;

/// Rows of cells in the making.
pub(crate) struct Table(String);

impl Table {
    pub(crate) fn headed(header: &[String]) -> Self {
        let mut table = Self(String::new());
        table.row(header);
        table
    }

    pub(crate) fn row(&mut self, cells: &[String]) {
        for (place, cell) in cells.iter().enumerate() {
            if place > 0 {
                self.0.push(',');
            }
            if cell.contains([',', '"', '\r', '\n']) {
                self.0.push('"');
                self.0.push_str(&cell.replace('"', "\"\""));
                self.0.push('"');
            } else {
                self.0.push_str(cell);
            }
        }
        self.0.push_str("\r\n");
    }

    pub(crate) fn done(self) -> String {
        self.0
    }
}

/// A text that no spreadsheet runs as a formula.
pub(crate) fn text(text: &str) -> String {
    // Spreadsheets take the wide forms of these signs for the signs themselves.
    let runs = ['=', '+', '-', '@', '＝', '＋', '－', '＠'];
    if text.trim_start().starts_with(runs) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

/// A whole number, 0 or more, of so many decimals.
pub(crate) fn decimal(number: i64, decimals: usize) -> String {
    let digits = format!("{number:0>width$}", width = decimals + 1);
    let (whole, fraction) = digits.split_at(digits.len() - decimals);
    format!("{whole}.{fraction}")
}

/// A number of at most four decimals, without zeros at the end; empty where it is none.
pub(crate) fn number(value: f64) -> String {
    if !value.is_finite() {
        return String::new();
    }
    // What is too large for it becomes the largest that can be written.
    let parts = (value * 10_000.0).round() as i64;
    let size = decimal(parts.saturating_abs(), 4);
    let size = size.trim_end_matches('0').trim_end_matches('.');
    let sign = if parts < 0 { "-" } else { "" };
    format!("{sign}{size}")
}

/// Hundredths, 0 or more, as an amount.
pub(crate) fn money(hundredths: i64) -> String {
    decimal(hundredths, 2)
}

/// A length in a unit, to 0.0001 of it.
pub(crate) fn length(length: Length, unit: LengthUnit) -> String {
    number(length.in_millimetres() / unit.millimetres())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_written_plainly() {
        for (value, text) in [
            (0.0, "0"),
            (-0.000_04, "0"),
            (-56.08, "-56.08"),
            (12_345.678_95, "12345.679"),
            (100.0, "100"),
            (f64::NAN, ""),
        ] {
            assert_eq!(number(value), text);
        }
        assert_eq!(length(Length::millimetres(6.35), LengthUnit::Inch), "0.25");
    }
}
