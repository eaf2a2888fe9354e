//! Cells from a spreadsheet put in a table.

use super::cell::Taken;
use super::{Cell, Column, Table};
use crate::project_file::MOST_ENTRIES;
use solver::{Id, LengthUnit, ProjectDraft};

/// What came of cells put in a table.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Pasted {
    /// Cells that were filled.
    pub cells: usize,
    /// Of these, cells with a problem: no number, or one out of its range.
    pub wrong: usize,
    /// Rows that were filled.
    pub rows: usize,
    /// Of these, rows that are new.
    pub added: usize,
    /// Columns that follow from others and were passed over.
    pub driven: Vec<Column>,
    /// Columns that were left over to the right of the table.
    pub beyond: usize,
    /// Rows that were left over, as a project holds no more.
    pub left_over: usize,
    /// Names that can be chosen nowhere in their column, each once.
    pub unknown: Vec<String>,
}

impl Table {
    /// Fills cells to the right and down from one on, as if each had been typed, adding rows as
    /// needed. A first row that repeats the headings is no row: it tells the units of its columns.
    pub fn paste(
        self,
        project: &mut ProjectDraft,
        row: Id,
        column: usize,
        cells: &[Vec<String>],
        unit: LengthUnit,
    ) -> Pasted {
        let columns = self.columns().get(column..).unwrap_or_default();
        let columns = columns.iter().copied();
        let columns: Vec<Column> = columns.filter(|column| column.is_wanted(project)).collect();
        let columns = columns.as_slice();
        let (units, cells) = match cells.split_first() {
            Some((first, rest)) if is_heading(first, columns) => (units_of(first, columns), rest),
            _ => (Vec::new(), cells),
        };
        let mut pasted = Pasted::default();
        let mut rows = self.rows(project);
        let from = self.place(project, row).unwrap_or(rows.len());
        for (at, texts) in cells.iter().enumerate() {
            let row = match rows.get(from + at) {
                Some(row) => *row,
                None if rows.len() < MOST_ENTRIES => {
                    let row = self.append(project);
                    rows.push(row);
                    pasted.added += 1;
                    row
                }
                None => {
                    pasted.left_over += 1;
                    continue;
                }
            };
            pasted.rows += 1;
            pasted.beyond = pasted.beyond.max(texts.len().saturating_sub(columns.len()));
            for (at, (text, &column)) in texts.iter().zip(columns).enumerate() {
                let table = self;
                let unit = units.get(at).copied().flatten().unwrap_or(unit);
                let taken = Cell { table, row, column }.take(project, text, unit);
                pasted.count(taken, column, text);
            }
        }
        pasted
    }
}

impl Pasted {
    fn count(&mut self, taken: Taken, column: Column, text: &str) {
        match taken {
            Taken::Filled => self.cells += 1,
            Taken::Wrong(_) => {
                self.cells += 1;
                self.wrong += 1;
            }
            Taken::Unknown => {
                if !text.trim().is_empty() && !self.unknown.iter().any(|known| known == text) {
                    self.unknown.push(text.to_owned());
                }
            }
            Taken::NotFilled => {
                if !self.driven.contains(&column) {
                    self.driven.push(column);
                }
            }
        }
    }

    /// What happened, in words.
    #[must_use]
    pub fn notice(&self) -> String {
        /// More names than this are only counted.
        const MOST_NAMES: usize = 3;
        let mut words = format!(
            "Pasted {} in {}",
            counted(self.cells, "cell", "cells"),
            counted(self.rows, "row", "rows")
        );
        if self.added > 0 {
            words += &format!(", {} new", self.added);
        }
        words += ".";
        match self.wrong {
            0 => {}
            1 => words += " One cell is to be mended.",
            wrong => words += &format!(" {wrong} cells are to be mended."),
        }
        for column in &self.driven {
            words += &format!(
                " {} is skipped: it follows from the others.",
                column.label()
            );
        }
        if self.beyond > 0 {
            let beyond = counted(self.beyond, "column", "columns");
            words += &format!(" Skipped beyond the last column: {beyond}.");
        }
        if self.left_over > 0 {
            let rows = counted(self.left_over, "row", "rows");
            words += &format!(" Left over: {rows}, as a list holds at most {MOST_ENTRIES}.");
        }
        if !self.unknown.is_empty() {
            let named = self.unknown.iter().take(MOST_NAMES);
            let names: Vec<String> = named.map(|name| format!("“{}”", beginning(name))).collect();
            words += &format!(" Not known here, and left as it was: {}", names.join(", "));
            if self.unknown.len() > MOST_NAMES {
                words += &format!(" and {} more", self.unknown.len() - MOST_NAMES);
            }
            words += ".";
        }
        words
    }
}

/// Whether a row repeats the headings of columns, with or without units, a number's among them.
fn is_heading(texts: &[String], columns: &[Column]) -> bool {
    let mut pairs = texts.iter().zip(columns);
    let names = |text: &str, column: &Column| {
        let units = [LengthUnit::Millimetre, LengthUnit::Inch];
        text == column.label() || units.iter().any(|unit| text == column.heading(*unit))
    };
    pairs
        .clone()
        .any(|(text, column)| column.is_number() && names(text.trim(), column))
        && pairs.all(|(text, column)| text.trim().is_empty() || names(text.trim(), column))
}

/// The units that headings tell, where they tell one.
fn units_of(texts: &[String], columns: &[Column]) -> Vec<Option<LengthUnit>> {
    let told = |(text, column): (&String, &Column)| {
        let units = [LengthUnit::Millimetre, LengthUnit::Inch];
        let named = |unit: &LengthUnit| {
            text.trim() == column.heading(*unit) && !column.unit(*unit).is_empty()
        };
        units.into_iter().find(named)
    };
    texts.iter().zip(columns).map(told).collect()
}

pub(super) fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// The first characters of a text, enough to find it again.
pub(super) fn beginning(text: &str) -> String {
    const LONGEST: usize = 40;
    match text.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{demo, spreadsheet};
    use proptest::prelude::*;
    use solver::{Field, Sawing, Typed};

    fn paste(
        table: Table,
        project: &mut ProjectDraft,
        row: Id,
        column: Column,
        text: &str,
    ) -> Pasted {
        let mut columns = table.columns().iter();
        let column = columns.position(|other| *other == column).unwrap();
        let cells = spreadsheet::read(text);
        table.paste(project, row, column, &cells, LengthUnit::Millimetre)
    }

    fn width(project: &ProjectDraft, at: usize) -> &Typed {
        &project.slats[at].draft.width
    }

    const WIDTH: Column = Column::Number(Field::SlatWidth);

    #[test]
    fn cells_fill_to_the_right_and_down_and_rows_are_added() {
        let mut project = demo::project();
        let last = project.slats[4].id;
        let text = "71,5\t4.9\n3 in\t5\n68\n";
        let pasted = paste(Table::Slats, &mut project, last, WIDTH, text);
        assert_eq!((pasted.cells, pasted.rows, pasted.added), (5, 3, 2));
        assert_eq!(project.slats.len(), 7);
        assert_eq!(*width(&project, 4), Typed::Number(71.5));
        assert_eq!(*width(&project, 5), Typed::Number(76.2));
        assert_eq!(*width(&project, 6), Typed::Number(68.0));
        assert_eq!(project.slats[5].draft.thickness, Typed::Number(5.0));
        assert_eq!(pasted.notice(), "Pasted 5 cells in 3 rows, 2 new.");
        assert!(project.check().is_ok());
    }

    #[test]
    fn what_cannot_be_read_stays_as_typed_and_is_counted() {
        let mut project = demo::project();
        let text = "wide\n500\n\n70";
        let pasted = paste(Table::Slats, &mut project, Id(11), WIDTH, text);
        assert_eq!(*width(&project, 0), Typed::Text("wide".to_owned()));
        assert_eq!(*width(&project, 1), Typed::Number(500.0));
        assert_eq!(*width(&project, 2), Typed::empty());
        assert_eq!(pasted.wrong, project.check().unwrap_err().len());
        assert_eq!(
            pasted.notice(),
            "Pasted 4 cells in 4 rows. 3 cells are to be mended."
        );
    }

    #[test]
    fn an_empty_cell_empties_a_field_that_may_be_empty() {
        let mut project = demo::project();
        let limit = Column::Number(Field::PackLimit);
        let pasted = paste(Table::Slats, &mut project, Id(11), limit, "7\n\n9");
        assert_eq!(pasted.wrong, 0);
        assert_eq!(project.slats[1].draft.pack_limit, Typed::empty());
    }

    #[test]
    fn columns_that_follow_and_columns_beyond_are_skipped_and_told() {
        let mut project = demo::project();
        let moisture = Column::Number(Field::DeliveryMoisture);
        let text = "9\t1\t2\t400\t99\t0\t\tmore\tstill more";
        let pasted = paste(Table::Slats, &mut project, Id(11), moisture, text);
        assert_eq!(project.slats[0].draft.moisture, Typed::Number(9.0));
        assert_eq!(project.slats[0].draft.pack_slats, Typed::Number(400.0));
        assert_eq!((pasted.cells, pasted.beyond), (5, 2));
        assert_eq!(
            pasted.notice(),
            "Pasted 5 cells in 1 row. Guaranteed width is skipped: it follows from the others. \
             Guaranteed thickness is skipped: it follows from the others. \
             Skipped beyond the last column: 2 columns."
        );
    }

    #[test]
    fn choices_go_by_their_names() {
        let mut project = demo::project();
        let text = "mill lime (INVENTED)\tquarter-sawn\nnone\tFlat-sawn\nOak\tsideways";
        let pasted = paste(Table::Slats, &mut project, Id(11), Column::Species, text);
        let wood = |at: usize| {
            let draft = &project.slats[at].draft;
            (draft.species, draft.sawing)
        };
        assert_eq!(wood(0), (Some(Id(22)), Sawing::Quarter));
        assert_eq!(wood(1), (None, Sawing::Flat));
        assert_eq!(wood(2), (Some(Id(21)), Sawing::Flat), "left as it was");
        assert_eq!(pasted.unknown, ["Oak", "sideways"]);
        let pasted = paste(
            Table::CutterSets,
            &mut project,
            Id(31),
            Column::Barrel,
            "any\nJumbo, round",
        );
        assert_eq!(pasted.cells, 2);
        assert_eq!(project.cutter_sets[0].draft.barrel, None);
        assert_eq!(project.cutter_sets[1].draft.barrel, Some(Id(4)));
    }

    #[test]
    fn a_name_of_several_lines_becomes_one() {
        let mut project = demo::project();
        let text = "\"Wide\r\nstock\"\t78\n";
        paste(Table::Slats, &mut project, Id(11), Column::Name, text);
        assert_eq!(project.slats[0].draft.name, "Wide stock");
        assert_eq!(*width(&project, 0), Typed::Number(78.0));
    }

    #[test]
    fn headings_are_no_row_and_tell_the_unit() {
        let mut project = demo::project();
        let text = "Slat width, in\tSlat thickness, mm\n3\t5.1";
        let pasted = paste(Table::Slats, &mut project, Id(11), WIDTH, text);
        assert_eq!(pasted.rows, 1);
        assert_eq!(*width(&project, 0), Typed::Number(76.2));
        assert_eq!(project.slats[0].draft.thickness, Typed::Number(5.1));
    }

    #[test]
    fn a_copied_table_pastes_back_as_it_was() {
        for table in Table::ALL {
            for unit in [LengthUnit::Millimetre, LengthUnit::Inch] {
                let mut project = demo::project();
                let text = spreadsheet::write(&table.cells(&project, unit));
                let first = table.rows(&project)[0];
                let cells = spreadsheet::read(&text);
                // The headings tell the unit, whichever is shown where it is pasted.
                let shown = LengthUnit::Millimetre;
                let pasted = table.paste(&mut project, first, 0, &cells, shown);
                assert_eq!((pasted.wrong, pasted.added), (0, 0), "{table:?}");
                assert_eq!(project, demo::project(), "{table:?} in {unit:?}");
            }
        }
    }

    #[test]
    fn a_list_takes_no_more_rows_than_a_project_file() {
        let mut project = demo::project();
        let text = "70\n".repeat(MOST_ENTRIES + 5);
        let pasted = paste(Table::Slats, &mut project, Id(11), WIDTH, &text);
        assert_eq!(project.slats.len(), MOST_ENTRIES);
        assert_eq!((pasted.rows, pasted.left_over), (MOST_ENTRIES, 5));
        assert!(pasted.notice().contains("Left over: 5 rows"));
    }

    proptest! {
        #[test]
        fn any_text_is_pasted_into_any_cell_and_changes_no_other(
            text in "[0-9a,.;\"\t\n ]{0,60}", table in 0_usize..9, row in 0_usize..6, column in 0_usize..20,
        ) {
            let table = Table::ALL[table];
            let before = demo::project();
            let mut project = before.clone();
            let rows = table.rows(&project);
            let row = rows.get(row).copied().unwrap_or(Id(9999));
            let cells = spreadsheet::read(&text);
            let pasted = table.paste(&mut project, row, column, &cells, LengthUnit::Millimetre);
            prop_assert_eq!(table.rows(&project).len(), rows.len() + pasted.added);
            let above = table.place(&before, row).unwrap_or(rows.len());
            for (at, row) in rows.iter().enumerate() {
                for (place, &column_here) in table.columns().iter().enumerate() {
                    let cell = Cell { table, row: *row, column: column_here };
                    let untouched = at < above || place < column;
                    if untouched && !column_here.is_driven() {
                        let unit = LengthUnit::Millimetre;
                        prop_assert_eq!(cell.text(&project, unit), cell.text(&before, unit));
                    }
                }
            }
            prop_assert!(pasted.wrong <= pasted.cells);
        }
    }
}
