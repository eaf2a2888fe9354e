//! A setting note: lines and aligned columns, for a terminal or a printed sheet.

/// The gap between two columns.
const GAP: &str = "  ";

/// A note while it is being written.
#[derive(Debug, Default)]
pub(crate) struct Note {
    text: String,
}

/// How the cells of a column stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Column {
    /// Words, which begin below each other.
    Words,
    /// Numbers, which end below each other.
    Figures,
}

impl Note {
    /// An empty note.
    pub(crate) const fn new() -> Self {
        Self {
            text: String::new(),
        }
    }

    /// A line with an empty one below, and one above where it is not the first.
    pub(crate) fn title(&mut self, title: &str) {
        if !self.text.is_empty() {
            self.text.push('\n');
        }
        self.line(title);
        self.text.push('\n');
    }

    /// A line.
    pub(crate) fn line(&mut self, line: &str) {
        self.text.push_str(clean(line).trim_end());
        self.text.push('\n');
    }

    /// Rows of cells in columns, as wide as their widest cell.
    pub(crate) fn table<const N: usize>(&mut self, columns: [Column; N], rows: &[[String; N]]) {
        let rows: Vec<[String; N]> = rows
            .iter()
            .map(|row| row.each_ref().map(|cell| clean(cell)))
            .collect();
        let width = |at: usize| rows.iter().map(|row| row[at].chars().count()).max();
        let widths: [usize; N] = std::array::from_fn(|at| width(at).unwrap_or(0));
        for row in &rows {
            let cells = row.iter().zip(columns).zip(widths);
            let cells: Vec<String> = cells
                .map(|((cell, column), width)| match column {
                    Column::Words => format!("{cell:<width$}"),
                    Column::Figures => format!("{cell:>width$}"),
                })
                .collect();
            self.line(&cells.join(GAP));
        }
    }

    /// The whole note.
    pub(crate) fn finish(self) -> String {
        self.text
    }
}

/// A text of the file as it can stand in a line: what would steer a terminal is told by a mark.
fn clean(text: &str) -> String {
    let shown = |character: char| {
        if character.is_control() {
            char::REPLACEMENT_CHARACTER
        } else {
            character
        }
    };
    text.chars().map(shown).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_line_up() {
        let mut note = Note::new();
        note.title("Grooves");
        let rows = [["1", "4.42", "first"], ["10", "69.58", ""]];
        let columns = [Column::Figures, Column::Figures, Column::Words];
        note.table(columns, &rows.map(|row| row.map(str::to_owned)));
        assert_eq!(note.finish(), "Grooves\n\n 1   4.42  first\n10  69.58\n");
    }

    #[test]
    fn a_name_cannot_steer_the_terminal() {
        let mut note = Note::new();
        note.line("Brook\u{1b}[31m\ncedar");
        assert_eq!(note.finish(), "Brook\u{fffd}[31m\u{fffd}cedar\n");
    }

    #[test]
    fn a_table_without_rows_is_nothing() {
        let mut note = Note::new();
        note.table([Column::Words], &[]);
        assert_eq!(note.finish(), "");
    }
}
