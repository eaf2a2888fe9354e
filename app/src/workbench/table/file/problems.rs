//! What is wrong in a file, in words that say where.

use super::super::paste::counted;

/// Everything that is wrong in a file.
#[derive(Default)]
pub(super) struct Problems(Vec<String>);

/// More problems than this are only counted.
pub(super) const MOST_PROBLEMS: usize = 50;

impl Problems {
    /// A problem of the whole file.
    pub(super) fn tell(&mut self, words: String) {
        self.0.push(words);
    }

    /// A problem of a cell, in a row counted from 1 and a column counted from 0.
    pub(super) fn at(&mut self, row: usize, column: usize, words: &str) {
        self.tell(format!("Row {row}, column {}: {words}", letters(column)));
    }

    /// Whether all is well.
    ///
    /// # Errors
    /// All problems in words; the last line counts those that are too many.
    pub(super) fn none(mut self) -> Result<(), Vec<String>> {
        let count = self.0.len();
        if count > MOST_PROBLEMS {
            self.0.truncate(MOST_PROBLEMS);
            let more = counted(count - MOST_PROBLEMS, "more problem", "more problems");
            self.tell(format!("And {more}"));
        }
        if count == 0 { Ok(()) } else { Err(self.0) }
    }
}

/// A column as spreadsheets name it: A to Z, then AA.
pub(super) fn letters(column: usize) -> String {
    let (before, last) = (column / 26, (b'A' + (column % 26) as u8) as char);
    match before.checked_sub(1) {
        Some(before) => letters(before) + &last.to_string(),
        None => last.to_string(),
    }
}
