//! A table as a file of a spreadsheet: taken in whole, or not at all.

mod heading;
#[cfg(test)]
mod tests;

use super::cell::Taken;
use super::paste::{beginning, counted};
use super::{Cell, Column, Table};
use crate::project_file::MOST_ENTRIES;
use crate::spreadsheet;
use heading::Heading;
use solver::{Id, LengthUnit, ProjectDraft};

/// What a file did to a table.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Replaced {
    /// Rows that stand in the table now.
    pub rows: usize,
    /// Of these, rows that are new.
    pub added: usize,
    /// Rows of before that have gone.
    pub gone: usize,
    /// Headings that name no column; what stands below them was passed over.
    pub unknown: Vec<String>,
}

/// More problems than this are only counted.
const MOST_PROBLEMS: usize = 50;

/// Everything that is wrong in a file.
#[derive(Default)]
struct Problems(Vec<String>);

impl Table {
    /// The project with the rows of a CSV file in place of those of the table.
    ///
    /// Where the first row names a column it is the heading: columns may then stand in any order, with
    /// the unit of lengths behind their names, as in “Plank length, in” or “Length (mm)”. Without a
    /// heading they stand in the order of the table. Bare lengths are in the unit given. A comma within
    /// digits is a decimal one where another of the file can be nothing else.
    ///
    /// A row that has the name of a row of the table is that row, with what the file does not tell as
    /// it was; so is the row in the same place, where the file tells no names. Other rows are new, and
    /// rows of the table that are not in the file go.
    ///
    /// # Errors
    /// Everything that is wrong in the file, each with its row and column.
    pub fn replaced(
        self,
        project: &ProjectDraft,
        text: &str,
        unit: LengthUnit,
    ) -> Result<(ProjectDraft, Replaced), Vec<String>> {
        let mut rows = numbered(spreadsheet::read_csv(text));
        let mut problems = Problems::default();
        let mut replaced = Replaced::default();
        let in_order = |column: &Column| Heading::Column(*column, None);
        let headings = match self.headings(&rows) {
            Some(headings) => {
                let (row, names) = rows.remove(0);
                replaced.unknown = problems.of_headings(row, &names, &headings);
                headings
            }
            None => self.columns().iter().map(in_order).collect(),
        };
        if text.contains(char::REPLACEMENT_CHARACTER) {
            problems.tell("It is no text in UTF-8: save it as CSV in UTF-8".to_owned());
        } else if rows.is_empty() {
            problems.tell("It has no row to take in".to_owned());
        } else if rows.len() > MOST_ENTRIES {
            let rows = rows.len();
            problems.tell(format!(
                "It has {rows} rows, and a list holds at most {MOST_ENTRIES}"
            ));
        }
        if !problems.0.is_empty() {
            return Err(problems.told());
        }
        let place_of = |column: Column| {
            let is_it = |heading: &Heading| matches!(heading, Heading::Column(other, _) if *other == column);
            headings.iter().position(is_it)
        };
        let name_place = place_of(Column::Name);
        let decimal_comma = has_decimal_comma(&rows, &headings);

        let mut changed = project.clone();
        let name = |row: &Id| self.name(project, *row).unwrap_or_default().trim();
        let mut left: Vec<(Id, &str)> = self
            .rows(project)
            .iter()
            .map(|row| (*row, name(row)))
            .collect();
        let mut kept = Vec::new();
        for (number, cells) in &rows {
            let named = |place: usize| cells.get(place).map_or("", |cell| cell.trim());
            let known = match name_place {
                Some(place) => left.iter().position(|(_, name)| *name == named(place)),
                None => (!left.is_empty()).then_some(0),
            };
            let row = match known {
                Some(place) => left.remove(place).0,
                None => {
                    replaced.added += 1;
                    self.append(&mut changed)
                }
            };
            kept.push(row);
            // In the order of the table, as sizes follow from the stock that a blank becomes.
            for &column in self.columns() {
                let Some(at) =
                    place_of(column).filter(|_| column != Column::Name || known.is_none())
                else {
                    continue;
                };
                let Heading::Column(_, told) = headings[at] else {
                    continue;
                };
                let text = cells.get(at).map_or("", String::as_str);
                let plain = (decimal_comma && matches!(column, Column::Number(_)))
                    .then(|| with_point(text))
                    .flatten();
                let text = plain.as_deref().unwrap_or(text);
                let cell = Cell {
                    table: self,
                    row,
                    column,
                };
                match cell.take(&mut changed, text, told.unwrap_or(unit)) {
                    Taken::Filled | Taken::NotFilled => {}
                    Taken::Wrong(problem) => problems.at(*number, at, &problem.message(unit)),
                    Taken::Unknown => {
                        let words = format!(
                            "{}: “{}” is not known here",
                            column.label(),
                            beginning(text)
                        );
                        problems.at(*number, at, &words);
                    }
                }
            }
            let mut beyond =
                (headings.len()..cells.len()).filter(|at| !cells[*at].trim().is_empty());
            if let Some(at) = beyond.next() {
                let text = beginning(&cells[at]);
                let words = format!(
                    "“{text}” stands behind the last column; a number with a comma in a file parted by commas goes in quotation marks"
                );
                problems.at(*number, at, &words);
            }
        }
        if !problems.0.is_empty() {
            return Err(problems.told());
        }
        for (at, row) in kept.iter().enumerate() {
            self.swap(&mut changed, at, *row);
        }
        replaced.rows = kept.len();
        replaced.gone = left.len();
        for (row, _) in left {
            self.delete(&mut changed, row);
        }
        Ok((changed, replaced))
    }
}

/// Rows that hold something, with their numbers as a spreadsheet counts them.
fn numbered(rows: Vec<Vec<String>>) -> Vec<(usize, Vec<String>)> {
    let rows = rows.into_iter().enumerate();
    rows.map(|(at, cells)| (at + 1, cells))
        .filter(|(_, cells)| cells.iter().any(|cell| !cell.trim().is_empty()))
        .collect()
}

/// Whether a number of the file has a comma that can be no thousands mark.
fn has_decimal_comma(rows: &[(usize, Vec<String>)], headings: &[Heading]) -> bool {
    let is_decimal = |text: &String| {
        let point = with_point(text);
        point.is_some_and(|text| {
            text.starts_with('0') || text.rfind('.') != text.len().checked_sub(4)
        })
    };
    rows.iter().any(|(_, cells)| {
        let mut cells = cells.iter().zip(headings);
        cells.any(|(cell, heading)| {
            matches!(heading, Heading::Column(Column::Number(_), _)) && is_decimal(cell)
        })
    })
}

/// A number with one comma within its digits, with a point in place of it.
fn with_point(text: &str) -> Option<String> {
    let text = text.trim();
    let (before, behind) = text.split_once(',')?;
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|sign| sign.is_ascii_digit());
    (digits(before) && digits(behind)).then(|| format!("{before}.{behind}"))
}

impl Problems {
    fn tell(&mut self, words: String) {
        self.0.push(words);
    }

    /// A problem of a cell, in a row counted from 1 and a column counted from 0.
    fn at(&mut self, row: usize, column: usize, words: &str) {
        self.tell(format!("Row {row}, column {}: {words}", letters(column)));
    }

    /// The headings that are not known; the wrong ones are told.
    fn of_headings(&mut self, row: usize, names: &[String], headings: &[Heading]) -> Vec<String> {
        let mut unknown = Vec::new();
        for (at, (name, heading)) in names.iter().zip(headings).enumerate() {
            let name = beginning(name.trim());
            match heading {
                Heading::Unknown if name.is_empty() => {}
                Heading::Unknown => unknown.push(name),
                Heading::OtherUnit => {
                    let words = format!(
                        "“{name}” has a unit in which no lengths are read here: give them in mm or in"
                    );
                    self.at(row, at, &words);
                }
                Heading::Column(column, _) => {
                    let same = |other: &Heading| matches!(other, Heading::Column(other, _) if other == column);
                    if headings[..at].iter().any(same) {
                        let words =
                            format!("“{name}” stands there twice: leave one of the columns out");
                        self.at(row, at, &words);
                    }
                }
            }
        }
        unknown
    }

    /// All of them in words; the last line counts those that are too many.
    fn told(mut self) -> Vec<String> {
        let count = self.0.len();
        if count > MOST_PROBLEMS {
            self.0.truncate(MOST_PROBLEMS);
            let more = counted(count - MOST_PROBLEMS, "more problem", "more problems");
            self.tell(format!("And {more}"));
        }
        self.0
    }
}

/// A column as spreadsheets name it: A to Z, then AA.
fn letters(column: usize) -> String {
    let (before, last) = (column / 26, (b'A' + (column % 26) as u8) as char);
    match before.checked_sub(1) {
        Some(before) => letters(before) + &last.to_string(),
        None => last.to_string(),
    }
}

impl Replaced {
    /// What happened, in words.
    #[must_use]
    pub fn notice(&self, file: &str) -> String {
        let mut words = format!(
            "{} from {file}: {} new, {} gone. Undo brings back what stood there.",
            counted(self.rows, "row", "rows"),
            self.added,
            self.gone
        );
        if !self.unknown.is_empty() {
            words += &format!(
                " Not known here, and passed over: {}.",
                self.unknown.join(", ")
            );
        }
        words
    }
}
