//! Measurements from pasted cells or a file of values parted by tabs, semicolons or commas.

mod heading;
mod line;
#[cfg(test)]
mod tests;

use crate::entry::{self, Dimension, EntryProblem};
use crate::figure;
use crate::quantity::Length;
use crate::unit::LengthUnit;
use heading::Heading;
use line::{cells, lines, separator};

/// Measurements that were read, and the cells that could not be.
#[derive(Debug, Clone, PartialEq)]
pub struct Readings {
    /// The widths, from the first row down.
    pub widths: Vec<Length>,
    /// The thicknesses, from the first row down.
    pub thicknesses: Vec<Length>,
    /// What parts the cells; nothing where there is one column.
    pub separator: Option<char>,
    /// Whether the first line was taken for a heading.
    pub headed: bool,
    /// The first cells that could not be read, [`Readings::MOST_TOLD`] at most.
    pub bad: Vec<BadCell>,
    /// How many more there are.
    pub more_bad: usize,
}

impl Readings {
    /// The most rows that are read.
    pub const MOST_ROWS: usize = 1_000_000;
    /// The most bad cells that are told one by one.
    pub const MOST_TOLD: usize = 20;
    /// The least length that can be measured on a slat.
    pub const LEAST: Length = Length::millimetres(0.1);
    /// The greatest length that can be measured on a slat.
    pub const GREATEST: Length = Length::millimetres(1000.0);

    fn take(&mut self, column: Column, length: Length) {
        match column {
            Column::Width => self.widths.push(length),
            Column::Thickness => self.thicknesses.push(length),
        }
    }

    fn refuse(&mut self, cell: BadCell) {
        if self.bad.len() < Self::MOST_TOLD {
            self.bad.push(cell);
        } else {
            self.more_bad += 1;
        }
    }
}

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Column {
    Width,
    Thickness,
}

/// Why nothing was read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ReadingsProblem {
    /// There is no row that holds anything, but for a heading.
    #[error("there is nothing to read: give one width to a row, with its thickness beside it")]
    Nothing,
    /// There are more than [`Readings::MOST_ROWS`] rows. The first of them are not taken for all:
    /// a list in order of size would give another lot.
    #[error(
        "there are more than {} rows: give a part that was picked blindly",
        figure::count(Readings::MOST_ROWS as u64)
    )]
    TooManyRows,
    /// The heading has a unit that is neither mm nor in.
    #[error("the heading gives lengths in {unit}: give them in mm or in")]
    OtherUnit {
        /// The unit as it stands there.
        unit: &'static str,
    },
}

/// A cell that could not be read.
#[derive(Debug, Clone, PartialEq)]
pub struct BadCell {
    /// Its row, from 1, headings and empty rows counted.
    pub row: usize,
    /// Its column, from 1.
    pub column: usize,
    /// What stands there, shortened.
    pub text: String,
    /// What is wrong with it.
    pub problem: CellProblem,
}

/// What is wrong with a cell.
#[derive(Debug, Clone, PartialEq)]
pub enum CellProblem {
    /// It holds no length.
    Unreadable(EntryProblem),
    /// The length lies outside [`Readings::LEAST`] to [`Readings::GREATEST`].
    OutOfRange {
        /// The length that stands there.
        found: Length,
    },
    /// It stands beyond the second column, and no heading says what it is.
    BeyondColumns,
}

impl BadCell {
    /// Where it stands, what is wrong and what to try.
    ///
    /// ```
    /// use solver::LengthUnit;
    /// use solver::measured::read;
    /// let readings = read("74.0\nwide", LengthUnit::Millimetre).unwrap();
    /// let message = readings.bad[0].message(LengthUnit::Millimetre);
    /// assert_eq!(message, "Row 2, column 1: “wide” must be a number, like 0.4");
    /// ```
    #[must_use]
    pub fn message(&self, unit: LengthUnit) -> String {
        let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
        let problem = match &self.problem {
            CellProblem::Unreadable(problem) => problem.to_string(),
            CellProblem::OutOfRange { found } => format!(
                "must be between {} and {}; it is {}",
                length(Readings::LEAST),
                length(Readings::GREATEST),
                length(*found)
            ),
            CellProblem::BeyondColumns => {
                "stands beyond the second column: name the columns width and thickness in the first row"
                    .to_owned()
            }
        };
        let (row, column) = (self.row as u64, self.column as u64);
        let (row, column) = (figure::count(row), figure::count(column));
        format!("Row {row}, column {column}: “{}” {problem}", self.text)
    }
}

/// Reads measurements of slats from a text, one slat to a row. A number without a unit is in
/// `unit`, if no heading says otherwise.
///
/// Cells are parted by tabs; where there is none, by semicolons; where there is none of these
/// either, by commas, unless most rows have a comma only as the one mark within a number. The
/// first column holds widths, the second thicknesses. Cells are numbers as a field takes them
/// ([`entry::read`]); of two readings, like those of `4,985`, the one that can be the size of a
/// slat is taken. Empty cells are passed over.
///
/// A first row of words is a heading. It may name the columns (width, thickness, w, t): then those
/// are read and no others; and it may give their unit, mm or in, one for all or one for each.
///
/// A cell that cannot be read is reported and left out; the others are read. The time is in
/// proportion to the length of the text.
///
/// # Errors
/// When there is nothing in it, when it has more than [`Readings::MOST_ROWS`] rows, and when its
/// heading has another unit.
///
/// ```
/// use solver::LengthUnit;
/// use solver::measured::read;
/// let readings = read("No\tThickness (mm)\tWidth (in)\n1\t5.0\t2.9", LengthUnit::Millimetre).unwrap();
/// assert_eq!(readings.widths[0].in_millimetres(), 73.66);
/// assert_eq!(readings.thicknesses[0].in_millimetres(), 5.0);
/// ```
pub fn read(text: &str, unit: LengthUnit) -> Result<Readings, ReadingsProblem> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let separator = separator(text);
    let mut readings = Readings {
        widths: Vec::new(),
        thicknesses: Vec::new(),
        separator,
        headed: false,
        bad: Vec::new(),
        more_bad: 0,
    };
    let mut heading = None;
    let mut rows = 0;
    for (row, line) in (1..).zip(lines(text)) {
        if cells(line, separator).all(str::is_empty) {
            continue;
        }
        let heading: &Heading = match &heading {
            Some(heading) => heading,
            None => match Heading::read(line, separator, unit)? {
                Some(found) => {
                    heading = Some(found);
                    readings.headed = true;
                    continue;
                }
                None => heading.insert(Heading::none(unit)),
            },
        };
        rows += 1;
        if rows > Readings::MOST_ROWS {
            return Err(ReadingsProblem::TooManyRows);
        }
        for (column, cell) in cells(line, separator).enumerate() {
            let problem = match heading.column(column) {
                _ if cell.is_empty() => continue,
                Some((named, unit)) => match length(cell, unit) {
                    Ok(length) => {
                        readings.take(named, length);
                        continue;
                    }
                    Err(problem) => problem,
                },
                None if heading.names_columns() => continue,
                None => CellProblem::BeyondColumns,
            };
            readings.refuse(BadCell {
                row,
                column: column + 1,
                text: shortened(cell),
                problem,
            });
        }
    }
    if rows == 0 {
        return Err(ReadingsProblem::Nothing);
    }
    Ok(readings)
}

/// The length in a cell that is not empty.
fn length(cell: &str, unit: LengthUnit) -> Result<Length, CellProblem> {
    let found = match plain(cell, unit) {
        Some(millimetres) => millimetres,
        None => match entry::read(cell, Dimension::Length, unit) {
            Ok(millimetres) => millimetres,
            Err(EntryProblem::Ambiguous { readings }) => {
                return possible(&readings, unit).ok_or(CellProblem::Unreadable(
                    EntryProblem::Ambiguous { readings },
                ));
            }
            Err(problem) => return Err(CellProblem::Unreadable(problem)),
        },
    };
    let found = Length::millimetres(found);
    if can_be(found) {
        Ok(found)
    } else {
        Err(CellProblem::OutOfRange { found })
    }
}

/// Millimetres as most cells have them, digits with at most one mark that can only be the decimal
/// one: what `entry` reads, in a fraction of the time. A thousand or more is no size of a slat, so
/// three digits behind a comma are decimals, but for those of `1,000`.
fn plain(cell: &str, unit: LengthUnit) -> Option<f64> {
    /// So many digits, and as many times 254, are whole numbers that an `f64` holds, so that the
    /// quotient is rounded once.
    const MOST_DIGITS: usize = 13;
    let (whole, decimals) = match cell.split_once(['.', ',']) {
        None => (cell, ""),
        Some(("1", "000")) if cell.contains(',') => return None,
        Some(parts) => parts,
    };
    let count = whole.len() + decimals.len();
    if count == 0 || count > MOST_DIGITS {
        return None;
    }
    let mut digits = 0_u64;
    for byte in whole.bytes().chain(decimals.bytes()) {
        if !byte.is_ascii_digit() {
            return None;
        }
        digits = digits * 10 + u64::from(byte - b'0');
    }
    let divisor = (0..decimals.len()).fold(1.0, |power, _| power * 10.0);
    Some(match unit {
        LengthUnit::Millimetre => digits as f64 / divisor,
        LengthUnit::Inch => (digits * 254) as f64 / (divisor * 10.0),
    })
}

/// The one of two readings that can be the size of a slat; nothing where both can, or neither.
fn possible(readings: &[String; 2], unit: LengthUnit) -> Option<Length> {
    let lengths = readings.each_ref().map(|reading| {
        let length = entry::read(reading, Dimension::Length, unit).ok();
        length
            .map(Length::millimetres)
            .filter(|&length| can_be(length))
    });
    match lengths {
        [Some(length), None] | [None, Some(length)] => Some(length),
        _ => None,
    }
}

fn can_be(length: Length) -> bool {
    Readings::LEAST.fits_in(length) && length.fits_in(Readings::GREATEST)
}

/// What stands in a cell, cut to at most 20 characters so that a message stays one line.
fn shortened(cell: &str) -> String {
    const LONGEST: usize = 20;
    match cell.char_indices().nth(LONGEST) {
        None => cell.to_owned(),
        Some(_) => cell.chars().take(LONGEST - 1).chain(['…']).collect(),
    }
}
