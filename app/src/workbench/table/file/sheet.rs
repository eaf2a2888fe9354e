//! A file of a spreadsheet: its lines, and what stands in its columns.

use super::super::paste::beginning;
use super::super::{Column, Table};
use super::heading::Heading;
use super::problems::Problems;
use crate::project_file::MOST_ENTRIES;
use crate::spreadsheet;
use solver::LengthUnit;
use std::borrow::Cow;

/// A file as it was read.
pub(super) struct Sheet {
    /// Its lines but for the heading and empty ones.
    pub(super) lines: Vec<Line>,
    /// Headings that are not known.
    pub(super) unknown: Vec<String>,
    headings: Vec<Heading>,
    /// Whether a comma within digits is a decimal one.
    has_decimal_comma: bool,
}

/// A line of a file.
pub(super) struct Line {
    /// Its number as a spreadsheet counts, from 1.
    pub(super) number: usize,
    cells: Vec<String>,
}

impl Line {
    /// What stands in a column; nothing where the line has ended.
    pub(super) fn cell(&self, at: usize) -> &str {
        self.cells.get(at).map_or("", String::as_str)
    }

    fn is_empty(&self) -> bool {
        self.cells.iter().all(|cell| cell.trim().is_empty())
    }
}

impl Sheet {
    /// Reads a file for a table, and tells what is wrong with it as a whole and with its headings.
    pub(super) fn read(table: Table, text: &str, problems: &mut Problems) -> Self {
        let lines = spreadsheet::read_csv(text).into_iter().zip(1..);
        let lines = lines.map(|(cells, number)| Line { number, cells });
        let mut sheet = Self {
            lines: lines.filter(|line| !line.is_empty()).collect(),
            unknown: Vec::new(),
            headings: Vec::new(),
            has_decimal_comma: false,
        };
        let first = sheet.lines.first();
        match first.and_then(|line| table.headings(&line.cells)) {
            Some(headings) => {
                sheet.headings = headings;
                let line = sheet.lines.remove(0);
                sheet.check_headings(&line, problems);
            }
            None => {
                let in_order = |column: &Column| Heading::Column(*column, None);
                let columns = table.columns().iter();
                let columns = columns.filter(|column| !column.is_driven());
                let cells = sheet.lines.iter().map(|line| line.cells.len());
                let widest = cells.max().unwrap_or(0);
                sheet.headings = columns.take(widest).map(in_order).collect();
            }
        }
        let rows = sheet.lines.len();
        if text.contains(char::REPLACEMENT_CHARACTER) {
            problems.tell("It is no text in UTF-8: save it as CSV in UTF-8".to_owned());
        } else if rows == 0 {
            problems.tell("It has no row to take in".to_owned());
        } else if rows > most_rows(table) {
            let most = most_rows(table);
            problems.tell(format!(
                "It has {rows} rows, and at most {most} can be taken in"
            ));
        }
        sheet.has_decimal_comma = sheet.lines.iter().any(|line| {
            let cells = line.cells.iter().enumerate();
            let mut numbers = cells.filter(|(at, _)| sheet.holds_numbers(*at));
            numbers.any(|(_, cell)| is_decimal(cell))
        });
        sheet
    }

    /// Tells the headings that are wrong, and puts down those that are not known.
    fn check_headings(&mut self, line: &Line, problems: &mut Problems) {
        for (at, heading) in self.headings.iter().enumerate() {
            let name = beginning(line.cell(at).trim());
            match heading {
                Heading::Unknown if name.is_empty() => {}
                Heading::Unknown => self.unknown.push(name),
                Heading::OtherUnit => {
                    let words = format!(
                        "“{name}” has a unit in which no lengths are read here: give them in mm or in"
                    );
                    problems.at(line.number, at, &words);
                }
                Heading::Column(column, _) => {
                    if self.place_of(*column) != Some(at) {
                        let words =
                            format!("“{name}” stands there twice: leave one of the columns out");
                        problems.at(line.number, at, &words);
                    }
                }
            }
        }
    }

    /// Where a column of the table stands in the file.
    pub(super) fn place_of(&self, column: Column) -> Option<usize> {
        let is_it =
            |heading: &Heading| matches!(heading, Heading::Column(other, _) if *other == column);
        self.headings.iter().position(is_it)
    }

    /// The unit that a heading tells.
    pub(super) fn unit_of(&self, at: usize) -> Option<LengthUnit> {
        match self.headings.get(at) {
            Some(Heading::Column(_, unit)) => *unit,
            _ => None,
        }
    }

    /// What stands in a column of a line, numbers with a decimal point.
    pub(super) fn text<'a>(&self, line: &'a Line, at: usize) -> Cow<'a, str> {
        let cell = line.cell(at);
        let is_comma = self.has_decimal_comma && self.holds_numbers(at);
        let number = is_comma.then(|| with_point(cell)).flatten();
        number.map_or(Cow::Borrowed(cell), Cow::Owned)
    }

    /// The first cell behind the last column in which something stands.
    pub(super) fn beyond(&self, line: &Line) -> Option<usize> {
        (self.headings.len()..line.cells.len()).find(|at| !line.cell(*at).trim().is_empty())
    }

    fn holds_numbers(&self, at: usize) -> bool {
        let heading = self.headings.get(at);
        matches!(heading, Some(Heading::Column(column, _)) if column.is_number())
    }
}

/// The most rows that are read: an order book of more than a list holds is gathered.
const fn most_rows(table: Table) -> usize {
    match table {
        Table::Orders => 50 * MOST_ENTRIES,
        _ => MOST_ENTRIES,
    }
}

/// Whether a number has a comma that can be no thousands mark.
fn is_decimal(text: &str) -> bool {
    with_point(text).is_some_and(|number| {
        let digits = number.rsplit('.').next().map_or(0, str::len);
        number.starts_with('0') || digits != 3
    })
}

/// A number with one comma within its digits, with a point in place of it.
fn with_point(text: &str) -> Option<String> {
    let (before, behind) = text.trim().split_once(',')?;
    let is_number = |text: &str| !text.is_empty() && text.bytes().all(|sign| sign.is_ascii_digit());
    (is_number(before) && is_number(behind)).then(|| format!("{before}.{behind}"))
}
