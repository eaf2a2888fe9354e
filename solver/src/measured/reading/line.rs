//! Lines of a text, and cells of a line.

use super::heading;

/// The lines of a text, whichever way a system ends them.
pub(super) fn lines(text: &str) -> impl Iterator<Item = &str> {
    let end = if text.contains('\n') { '\n' } else { '\r' };
    text.split(end)
        .map(|line| line.strip_suffix('\r').unwrap_or(line))
}

/// What parts the cells of a text; nothing where no sign does.
///
/// A comma parts cells where most lines with a number have it in another way than as the only mark
/// between two digits, and where the first line names two columns with one between.
pub(super) fn separator(text: &str) -> Option<char> {
    for separator in ['\t', ';'] {
        if text.contains(separator) {
            return Some(separator);
        }
    }
    let is_told = |line: &str| line.contains(|sign: char| sign.is_ascii_digit());
    let (mut parting, mut decimal) = (0_usize, 0_usize);
    for line in lines(text) {
        if line.contains(',') && is_told(line) {
            if is_decimal(line) {
                decimal += 1;
            } else {
                parting += 1;
            }
        }
    }
    let first = lines(text).find(|line| !cells(line, Some(',')).all(str::is_empty));
    let names = first.is_some_and(|line| heading::names_both(line, ','));
    (parting > decimal || names).then_some(',')
}

/// Whether the commas of a line, one at least, can only be the one mark of one number.
fn is_decimal(line: &str) -> bool {
    let mut parts = line.split(',');
    let (Some(before), Some(behind), None) = (parts.next(), parts.next(), parts.next()) else {
        return false;
    };
    let digit = |sign: Option<char>| sign.is_some_and(|sign| sign.is_ascii_digit());
    !line.contains('.') && digit(before.chars().next_back()) && digit(behind.chars().next())
}

/// The cells of a line, without the spaces round them. A cell in quotation marks may hold the
/// separator; a mark without its partner is a mark like any other, for inches say.
pub(super) fn cells(line: &str, separator: Option<char>) -> impl Iterator<Item = &str> {
    let mut rest = Some(line);
    std::iter::from_fn(move || {
        let line = rest.take()?;
        let (cell, behind) = quoted(line, separator).unwrap_or_else(|| {
            match separator.and_then(|separator| line.split_once(separator)) {
                Some((cell, behind)) => (cell, Some(behind)),
                None => (line, None),
            }
        });
        rest = behind;
        Some(cell.trim())
    })
}

/// A cell in quotation marks and what follows its separator; nothing where there is none.
fn quoted(line: &str, separator: Option<char>) -> Option<(&str, Option<&str>)> {
    let (cell, behind) = line.trim_start().strip_prefix('"')?.split_once('"')?;
    let behind = behind.trim_start_matches(' ');
    if behind.is_empty() {
        return Some((cell, None));
    }
    Some((cell, Some(behind.strip_prefix(separator?)?)))
}
