//! What the first row of a file says of its columns.

use super::super::{Column, Table};
use solver::LengthUnit;
use solver::entry::{self, Dimension};

/// What a heading says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Heading {
    /// A column, with the unit of its lengths where it tells one.
    Column(Column, Option<LengthUnit>),
    /// A column in a unit that lengths are not read in.
    OtherUnit,
    /// Nothing that is known here.
    Unknown,
}

impl Table {
    /// What a first row says, where it is a heading.
    pub(super) fn headings(self, names: &[String]) -> Option<Vec<Heading>> {
        let headings: Vec<Heading> = names.iter().map(|name| self.heading(name)).collect();
        let is_any = headings.iter().any(|heading| *heading != Heading::Unknown);
        is_any.then_some(headings)
    }

    /// What a heading says: the name of a column, with or without the word for the row in front, and
    /// the unit behind.
    fn heading(self, text: &str) -> Heading {
        let words = words(text);
        let noun = self.noun().split(' ').next().unwrap_or_default();
        for &column in self.columns() {
            let other_names = column.other_names().iter();
            if other_names
                .into_iter()
                .any(|name| self::words(name) == words)
            {
                return Heading::Column(column, None);
            }
            let label = self::words(column.label());
            let is_of_row = label.len() > 1 && label[0].starts_with(noun);
            let short = &label[usize::from(is_of_row)..];
            let behind = words.strip_prefix(&*label);
            let Some(behind) = behind.or_else(|| words.strip_prefix(short)) else {
                continue;
            };
            let behind = match behind {
                [first, unit @ ..] if first == "in" && !unit.is_empty() => unit,
                all => all,
            };
            let behind = behind.join(" ");
            let read = entry::read(
                &format!("1 {behind}"),
                Dimension::Length,
                LengthUnit::Millimetre,
            );
            let is_length = column.unit(LengthUnit::Inch) == LengthUnit::Inch.label();
            match read {
                _ if behind.is_empty()
                    || behind == column.unit(LengthUnit::Millimetre) && !is_length =>
                {
                    return Heading::Column(column, None);
                }
                Ok(millimetres) if is_length => {
                    let units = [(LengthUnit::Millimetre, 1.0), (LengthUnit::Inch, 25.4)];
                    let told = units.into_iter().find(|(_, size)| *size == millimetres);
                    return told.map_or(Heading::OtherUnit, |(unit, _)| {
                        Heading::Column(column, Some(unit))
                    });
                }
                _ => {}
            }
        }
        Heading::Unknown
    }
}

/// The words of a heading without capitals and the signs between them.
fn words(text: &str) -> Vec<String> {
    let text = text.to_lowercase();
    let words = text.split(|sign: char| !(sign.is_alphanumeric() || sign == '%'));
    words
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}
