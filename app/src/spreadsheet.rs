//! Text that spreadsheets exchange: rows of cells, parted by tabs, semicolons or commas.

/// The rows of a text that a spreadsheet put on the clipboard.
///
/// Cells are parted by tabs, or by semicolons where there is no tab; a comma is none, as it may
/// stand in a number. Rows end with a line, whichever way a system ends its lines. A cell that
/// begins with a quotation mark goes on to the next single one, over lines if need be; two in a
/// row stand for one. A mark without its partner, or with more behind it than the end of a cell,
/// is a mark like any other, for inches say. Empty lines at the end are no rows.
///
/// ```
/// use app::spreadsheet;
/// let rows = spreadsheet::read("Wide\t74,5\n\"two\nlines\"\t5/16\"\n");
/// assert_eq!(rows, [["Wide", "74,5"], ["two\nlines", "5/16\""]]);
/// ```
#[must_use]
pub fn read(text: &str) -> Vec<Vec<String>> {
    parted(text, if text.contains('\t') { '\t' } else { ';' })
}

/// The rows of a CSV file, after RFC 4180, with or without a byte order mark.
///
/// Cells are parted by tabs where the first row has one outside quotation marks, otherwise by
/// semicolons where it has one, otherwise by commas. The rest is as in [`read`]; an apostrophe that
/// [`write_csv`] put before a text is taken off.
///
/// ```
/// use app::spreadsheet;
/// let rows = spreadsheet::read_csv("Oak;74,5\r\n\"Ash; wide\";5,2\r\n");
/// assert_eq!(rows, [["Oak", "74,5"], ["Ash; wide", "5,2"]]);
/// ```
#[must_use]
pub fn read_csv(text: &str) -> Vec<Vec<String>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut rows = parted(text, separator(text));
    for cell in rows.iter_mut().flatten() {
        if cell.strip_prefix('\'').is_some_and(runs) {
            cell.remove(0);
        }
    }
    rows
}

/// Rows as a CSV file, after RFC 4180: cells parted by commas, quoted where they need be, and rows
/// ended by CR LF. A text that a spreadsheet would run as a formula gets an apostrophe in front.
///
/// ```
/// use app::spreadsheet;
/// let rows = vec![vec!["Oak, wide".to_owned(), "-1.5".to_owned(), "=A1".to_owned()]];
/// assert_eq!(spreadsheet::write_csv(&rows), "\"Oak, wide\",-1.5,'=A1\r\n");
/// ```
#[must_use]
pub fn write_csv(rows: &[Vec<String>]) -> String {
    let safe = |cell: &String| format!("{}{cell}", if runs(cell) { "'" } else { "" });
    let rows: Vec<Vec<String>> = rows
        .iter()
        .map(|row| row.iter().map(safe).collect())
        .collect();
    joined(&rows, ',', "\r\n")
}

/// What parts the cells of the first row of a text.
fn separator(text: &str) -> char {
    let mut found = ',';
    let mut is_quoted = false;
    for sign in text.chars() {
        match sign {
            '"' => is_quoted = !is_quoted,
            _ if is_quoted => {}
            '\n' | '\r' => break,
            '\t' => return sign,
            ';' => found = sign,
            _ => {}
        }
    }
    found
}

/// Whether a spreadsheet may run a cell as a formula, after any spaces and apostrophes; a number it
/// only reads.
fn runs(cell: &str) -> bool {
    let begins = cell
        .trim_start_matches([' ', '\''])
        .starts_with(['=', '+', '-', '@']);
    begins && cell.parse::<f64>().is_err()
}

/// The rows of a text whose cells are parted by a sign.
fn parted(text: &str, separator: char) -> Vec<Vec<String>> {
    let mut rows = vec![Vec::new()];
    let mut rest = text;
    loop {
        let (cell, behind) = quoted(rest, separator).unwrap_or_else(|| plain(rest, separator));
        if let Some(row) = rows.last_mut() {
            row.push(cell);
        }
        if let Some(next) = behind.strip_prefix(separator) {
            rest = next;
        } else if behind.is_empty() {
            break;
        } else {
            rest = line_end(behind).map_or("", |length| &behind[length..]);
            rows.push(Vec::new());
        }
        if rest.is_empty() && rows.last().is_some_and(Vec::is_empty) {
            break;
        }
    }
    while rows
        .last()
        .is_some_and(|row| row.iter().all(String::is_empty))
    {
        rows.pop();
    }
    rows
}

/// Rows as a spreadsheet takes them: cells parted by tabs, quoted where they need be.
///
/// ```
/// use app::spreadsheet;
/// let rows = vec![vec!["74".to_owned(), "5/16\"".to_owned()]];
/// assert_eq!(spreadsheet::write(&rows), "74\t\"5/16\"\"\"\n");
/// ```
#[must_use]
pub fn write(rows: &[Vec<String>]) -> String {
    joined(rows, '\t', "\n")
}

/// Rows whose cells are parted by a sign and quoted where they need be.
fn joined(rows: &[Vec<String>], separator: char, line_end: &str) -> String {
    let mut text = String::new();
    for row in rows {
        for (at, cell) in row.iter().enumerate() {
            if at > 0 {
                text.push(separator);
            }
            if cell.contains([separator, '\n', '\r', '"']) {
                text.push('"');
                text.push_str(&cell.replace('"', "\"\""));
                text.push('"');
            } else {
                text.push_str(cell);
            }
        }
        text.push_str(line_end);
    }
    text
}

/// A cell in quotation marks, and what stands behind it; nothing where there is none.
fn quoted(text: &str, separator: char) -> Option<(String, &str)> {
    let mut rest = text.strip_prefix('"')?;
    let mut cell = String::new();
    loop {
        let (before, behind) = rest.split_once('"')?;
        cell.push_str(before);
        match behind.strip_prefix('"') {
            Some(next) => {
                cell.push('"');
                rest = next;
            }
            None => {
                let ends = behind.is_empty()
                    || behind.starts_with(separator)
                    || line_end(behind).is_some();
                return ends.then_some((cell, behind));
            }
        }
    }
}

/// A cell as it stands, and what stands behind it.
fn plain(text: &str, separator: char) -> (String, &str) {
    let end = text.find([separator, '\n', '\r']).unwrap_or(text.len());
    (text[..end].to_owned(), &text[end..])
}

/// The length of the line end that a text begins with.
fn line_end(text: &str) -> Option<usize> {
    match text.as_bytes() {
        [b'\r', b'\n', ..] => Some(2),
        [b'\r' | b'\n', ..] => Some(1),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[track_caller]
    fn check(text: &str, rows: &[&[&str]]) {
        assert_eq!(read(text), rows, "{text:?}");
    }

    #[test]
    fn tabs_part_cells_and_lines_part_rows() {
        check("a\tb\nc\td", &[&["a", "b"], &["c", "d"]]);
    }

    #[test]
    fn any_system_ends_its_lines_its_way() {
        check("a\r\nb\rc\nd\r\n", &[&["a"], &["b"], &["c"], &["d"]]);
    }

    #[test]
    fn semicolons_part_cells_where_there_is_no_tab() {
        check("74,5;5,2\n70;4.76", &[&["74,5", "5,2"], &["70", "4.76"]]);
        check("a;b\tc", &[&["a;b", "c"]]);
    }

    #[test]
    fn a_comma_stays_in_its_number() {
        check("74,5", &[&["74,5"]]);
    }

    #[test]
    fn empty_cells_keep_their_place() {
        check("\ta\t\t", &[&["", "a", "", ""]]);
        check("a\n\nb", &[&["a"], &[""], &["b"]]);
    }

    #[test]
    fn empty_lines_at_the_end_are_no_rows() {
        check("a\tb\r\n\r\n", &[&["a", "b"]]);
        check("a\n\t\t\n", &[&["a"]]);
        check("", &[]);
        check("\n\n", &[]);
    }

    #[test]
    fn a_quoted_cell_may_have_lines_separators_and_marks() {
        check("\"a\r\nb\tc \"\"d\"\"\"\te\n", &[&["a\r\nb\tc \"d\"", "e"]]);
        check("\"\"\t\"\"", &[]);
        check("\"\"\tx", &[&["", "x"]]);
    }

    #[test]
    fn a_mark_that_quotes_no_cell_is_a_mark() {
        check("5/16\"\t2\"", &[&["5/16\"", "2\""]]);
        check("\"wide\" slat\t74", &[&["\"wide\" slat", "74"]]);
        check("\"open\t74\nb", &[&["\"open", "74"], &["b"]]);
    }

    #[track_caller]
    fn check_csv(text: &str, rows: &[&[&str]]) {
        assert_eq!(read_csv(text), rows, "{text:?}");
    }

    // RFC 4180 (2005), Common Format and MIME Type for CSV Files, section 2: the examples of its
    // rules 1 to 7, and what they say of spaces.
    #[test]
    fn the_examples_of_the_standard_are_read() {
        let plain: &[&[&str]] = &[&["aaa", "bbb", "ccc"], &["zzz", "yyy", "xxx"]];
        check_csv("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", plain);
        check_csv("aaa,bbb,ccc\r\nzzz,yyy,xxx", plain);
        check_csv(
            "field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
            &[&["field_name"; 3], plain[0], plain[1]],
        );
        check_csv("aaa,bbb,ccc", &plain[..1]);
        check_csv("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", plain);
        check_csv(
            "\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx",
            &[&["aaa", "b\r\nbb", "ccc"], plain[1]],
        );
        check_csv("\"aaa\",\"b\"\"bb\",\"ccc\"", &[&["aaa", "b\"bb", "ccc"]]);
        check_csv(" aaa ,bbb", &[&[" aaa ", "bbb"]]);
    }

    #[test]
    fn what_parts_the_first_row_parts_the_file() {
        check_csv("a;b,c\n1,5;2", &[&["a", "b,c"], &["1,5", "2"]]);
        check_csv("a\tb;c\n1;5\t2,5", &[&["a", "b;c"], &["1;5", "2,5"]]);
        check_csv("\"a;b\",c\n1;2,3", &[&["a;b", "c"], &["1;2", "3"]]);
        check_csv("\u{feff}a\nb", &[&["a"], &["b"]]);
        check_csv("", &[]);
    }

    #[test]
    fn a_text_that_looks_like_a_formula_is_a_text() {
        for text in ["=1+1", "-", "'=x", "''", " @x", "+49", "-5", "'-5"] {
            let rows = vec![vec![text.to_owned(), String::new()]];
            let csv = write_csv(&rows);
            assert!(!csv.starts_with(['=', '@', ' ']), "{csv}");
            assert_eq!(read_csv(&csv), rows, "{csv}");
        }
    }

    proptest! {
        #[test]
        fn a_csv_file_is_read_back(
            rows in prop::collection::vec(prop::collection::vec("[ab;,\"'=\t\r\n -]{0,4}", 2..4), 1..5),
        ) {
            let heading = vec!["a".to_owned(), "b".to_owned()];
            let mut kept = [vec![heading], rows].concat();
            let text = write_csv(&kept);
            while kept.last().is_some_and(|row| row.iter().all(String::is_empty)) {
                kept.pop();
            }
            prop_assert_eq!(read_csv(&text), kept);
        }

        #[test]
        fn what_is_written_is_read_back(
            rows in prop::collection::vec(prop::collection::vec("[ab;,\"\t\r\n ]{0,4}", 2..4), 1..5),
        ) {
            // Rows of empty cells at the end are not told from the end of the text.
            let mut kept = rows.clone();
            while kept.last().is_some_and(|row| row.iter().all(String::is_empty)) {
                kept.pop();
            }
            prop_assert_eq!(read(&write(&rows)), kept);
        }

        #[test]
        fn any_text_is_read(text in "[a;,\"\t\r\n]{0,40}") {
            let cells: usize = read(&text).iter().map(Vec::len).sum();
            prop_assert!(cells <= text.len() + 1);
        }
    }
}
