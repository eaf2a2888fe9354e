//! A table as a file of a spreadsheet: taken in whole, or not at all.

mod heading;
mod problems;
mod sheet;
#[cfg(test)]
mod tests;

use super::cell::Taken;
use super::paste::{beginning, counted};
use super::{Cell, Column, Table};
use crate::project_file::MOST_ENTRIES;
use problems::Problems;
use sheet::{Line, Sheet};
use solver::{Id, LengthUnit, ProjectDraft};

/// What a file did to a table.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Replaced {
    /// Rows that were read, and stand in the table now if they were not gathered.
    pub rows: usize,
    /// What they were gathered into, where they were too many for the list.
    pub gathered: Option<usize>,
    /// Of these, rows that are new.
    pub added: usize,
    /// Rows of before that have gone.
    pub gone: usize,
    /// Headings that name no column; what stands below them was passed over.
    pub unknown: Vec<String>,
}

impl Table {
    /// The project with the rows of a CSV file in place of those of the table.
    ///
    /// An order book of more rows than a list holds is gathered by pencil and period.
    ///
    /// Where the first row names a column it is the heading: columns may then stand in any order, with
    /// the unit of lengths behind their names, as in “Plank length, in” or “Length (mm)”. Without a
    /// heading they stand in the order of the table, but for those that follow from others, and those
    /// behind the widest row are not told. Bare lengths are in the unit given. A comma within
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
        let mut problems = Problems::default();
        let sheet = Sheet::read(self, text, &mut problems);
        problems.none()?;
        let mut filling = Filling {
            table: self,
            sheet: &sheet,
            unit,
            project: project.clone(),
            problems: Problems::default(),
        };

        let name = |row: &Id| self.name(project, *row).unwrap_or_default().trim();
        let rows = self.rows(project).into_iter();
        let mut left: Vec<(Id, &str)> = rows.map(|row| (row, name(&row))).collect();
        let mut kept = Vec::with_capacity(sheet.lines.len());
        let mut added = 0;
        for line in &sheet.lines {
            let named = sheet.place_of(Column::Name).filter(|_| !self.is_numbered());
            let known = match named {
                Some(at) => left
                    .iter()
                    .position(|(_, name)| *name == line.cell(at).trim()),
                None => (!left.is_empty()).then_some(0),
            };
            let row = match known {
                Some(place) => left.remove(place).0,
                None => {
                    added += 1;
                    self.append(&mut filling.project)
                }
            };
            filling.fill(row, known.is_none() || named.is_none(), line);
            kept.push(row);
        }
        let Filling {
            project: mut changed,
            problems,
            ..
        } = filling;
        problems.none()?;

        for (at, row) in kept.iter().enumerate() {
            self.swap(&mut changed, at, *row);
        }
        let gone = left.len();
        // From the end, as rows that go by their places move up.
        for (row, _) in left.into_iter().rev() {
            self.delete(&mut changed, row);
        }
        let rows = kept.len();
        let mut gathered = None;
        if self == Self::Orders && rows > MOST_ENTRIES {
            changed.gather_orders();
            gathered = Some(changed.orders.len());
            if changed.orders.len() > MOST_ENTRIES {
                return Err(vec![format!(
                    "It has {rows} rows, {} when those of one pencil and period are one, and the order book holds at most {MOST_ENTRIES}",
                    changed.orders.len()
                )]);
            }
        }
        let unknown = sheet.unknown;
        let replaced = Replaced {
            gathered,
            rows,
            added,
            gone,
            unknown,
        };
        Ok((changed, replaced))
    }
}

/// Lines of a file that are put in the rows of a project.
struct Filling<'a> {
    table: Table,
    sheet: &'a Sheet,
    /// The unit of bare lengths.
    unit: LengthUnit,
    project: ProjectDraft,
    problems: Problems,
}

impl Filling<'_> {
    /// Puts the cells of a line in a row.
    fn fill(&mut self, row: Id, is_new: bool, line: &Line) {
        let table = self.table;
        // In the order of the table, as sizes follow from the stock that a blank becomes.
        for &column in table.columns() {
            // A row that was found by its name has it.
            let is_told = column != Column::Name || is_new;
            let Some(at) = self.sheet.place_of(column).filter(|_| is_told) else {
                continue;
            };
            let text = self.sheet.text(line, at);
            let unit = self.sheet.unit_of(at).unwrap_or(self.unit);
            match (Cell { table, row, column }).take(&mut self.project, &text, unit) {
                Taken::Filled | Taken::NotFilled => {}
                Taken::Wrong(problem) => {
                    self.problems.at(line.number, at, &problem.message(unit));
                }
                Taken::Unknown => {
                    let (label, text) = (column.label(), beginning(&text));
                    let words = format!("{label}: “{text}” is not known here");
                    self.problems.at(line.number, at, &words);
                }
            }
        }
        if let Some(at) = self.sheet.beyond(line) {
            let text = beginning(line.cell(at));
            let words = format!(
                "“{text}” stands behind the last column; a number with a comma in a file parted by commas goes in quotation marks"
            );
            self.problems.at(line.number, at, &words);
        }
    }
}

impl Replaced {
    /// What happened, in words.
    #[must_use]
    pub fn notice(&self, file: &str) -> String {
        let rows = counted(self.rows, "row", "rows");
        let (added, gone) = (self.added, self.gone);
        let mut words = format!(
            "{rows} from {file}: {added} new, {gone} gone. Undo brings back what stood there."
        );
        if let Some(lines) = self.gathered {
            let lines = counted(lines, "line", "lines");
            words = format!(
                "{rows} from {file}, gathered by pencil and period into {lines}. Undo brings back what stood there."
            );
        }
        if !self.unknown.is_empty() {
            let unknown = self.unknown.join(", ");
            words += &format!(" Not known here, and passed over: {unknown}.");
        }
        words
    }
}
