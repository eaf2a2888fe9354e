//! The first row of a list: what its columns hold, and in which unit.

use super::line::cells;
use super::{Column, ReadingsProblem};
use crate::unit::LengthUnit;

/// What the columns of a list hold.
#[derive(Debug)]
pub(super) struct Heading {
    /// Each column with its unit; nothing for one that is not read.
    columns: Vec<Option<(Column, LengthUnit)>>,
    names_columns: bool,
}

impl Heading {
    /// A list without a heading: widths, then thicknesses.
    pub(super) fn none(unit: LengthUnit) -> Self {
        Self::by_place([unit; 2])
    }

    fn by_place([width, thickness]: [LengthUnit; 2]) -> Self {
        Self {
            columns: vec![
                Some((Column::Width, width)),
                Some((Column::Thickness, thickness)),
            ],
            names_columns: false,
        }
    }

    /// Reads the first row; nothing where it is a row of numbers, or of what should be some.
    ///
    /// A unit that one column has stands for those without.
    pub(super) fn read(
        line: &str,
        separator: Option<char>,
        unit: LengthUnit,
    ) -> Result<Option<Self>, ReadingsProblem> {
        if !cells(line, separator).all(is_words) {
            return Ok(None);
        }
        let units = cells(line, separator).map(unit_of);
        let units = units.collect::<Result<Vec<_>, _>>()?;
        let usual = units.iter().flatten().next().copied().unwrap_or(unit);
        let unit_at = |at: usize| units.get(at).copied().flatten().unwrap_or(usual);
        let mut columns: Vec<Option<(Column, LengthUnit)>> = Vec::new();
        for (at, cell) in cells(line, separator).enumerate() {
            let named = column_of(cell)
                .filter(|named| !columns.iter().flatten().any(|(column, _)| column == named));
            columns.push(named.map(|column| (column, unit_at(at))));
        }
        Ok(Some(if columns.iter().any(Option::is_some) {
            Self {
                columns,
                names_columns: true,
            }
        } else {
            Self::by_place([unit_at(0), unit_at(1)])
        }))
    }

    /// What a column holds, by its place from 0.
    pub(super) fn column(&self, place: usize) -> Option<(Column, LengthUnit)> {
        self.columns.get(place).copied().flatten()
    }

    /// Whether the columns are those that were named, and no others are read.
    pub(super) const fn names_columns(&self) -> bool {
        self.names_columns
    }
}

/// Whether a line names both columns, with a separator between.
pub(super) fn names_both(line: &str, separator: char) -> bool {
    let named = |wanted| {
        cells(line, Some(separator)).any(|cell| is_words(cell) && column_of(cell) == Some(wanted))
    };
    named(Column::Width) && named(Column::Thickness)
}

/// Whether a cell does not begin as a number does; an empty one does not.
fn is_words(cell: &str) -> bool {
    !cell.starts_with(|first: char| first.is_numeric() || ".,+-\u{2212}".contains(first))
}

/// The words of a cell, in small letters.
fn words(cell: &str) -> impl Iterator<Item = String> {
    cell.split(|sign: char| !sign.is_alphabetic() && sign != '"')
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
}

fn column_of(cell: &str) -> Option<Column> {
    words(cell).find_map(|word| match word.as_str() {
        "w" => Some(Column::Width),
        "t" => Some(Column::Thickness),
        word if word.starts_with("wid") => Some(Column::Width),
        word if word.starts_with("thick") => Some(Column::Thickness),
        _ => None,
    })
}

/// The unit in a cell of a heading. The last one counts, as in `width in mm`.
fn unit_of(cell: &str) -> Result<Option<LengthUnit>, ReadingsProblem> {
    let mut unit = None;
    for word in words(cell) {
        let other = match word.as_str() {
            "mm" => {
                unit = Some(Ok(LengthUnit::Millimetre));
                continue;
            }
            "in" | "inch" | "inches" | "\"" => {
                unit = Some(Ok(LengthUnit::Inch));
                continue;
            }
            "cm" => "cm",
            "m" => "m",
            "\u{b5}m" | "\u{3bc}m" | "um" => "µm",
            _ => continue,
        };
        unit = Some(Err(ReadingsProblem::OtherUnit { unit: other }));
    }
    unit.transpose()
}
