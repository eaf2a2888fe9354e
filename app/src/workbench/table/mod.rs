//! The tables of a project: what they are called, and their columns.

mod cell;
mod column;
mod file;
mod paste;
mod rows;
#[cfg(test)]
mod tests;

pub use cell::Cell;
pub(crate) use cell::{ANY, AS_TYPED, LONGEST_NAME, NO, NONE, YES};
pub use column::Column;
pub use file::Replaced;
pub use paste::Pasted;
pub use rows::Step;

use super::Slot;
use solver::{Field, Id, LengthUnit, ProjectDraft};

/// A table of the project with one row for each member of a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Table {
    /// The slat stocks.
    Slats,
    /// The species of wood.
    Species,
    /// The cutter sets.
    CutterSets,
    /// The kinds of plank.
    Planks,
    /// The kinds of blank.
    Blanks,
    /// The order book.
    Orders,
    /// The periods of the order plan.
    Periods,
    /// What suppliers offer.
    Offers,
    /// What sawing slats in the works costs.
    Sawn,
}

impl Table {
    /// Every table.
    pub const ALL: [Self; 9] = [
        Self::Slats,
        Self::Species,
        Self::CutterSets,
        Self::Planks,
        Self::Blanks,
        Self::Orders,
        Self::Periods,
        Self::Offers,
        Self::Sawn,
    ];

    /// Whether its rows go by their places and have no lasting names: an `Id` is then a place.
    #[must_use]
    pub const fn is_numbered(self) -> bool {
        matches!(self, Self::Orders | Self::Periods | Self::Sawn)
    }

    /// Whether a column holds what its rows are called.
    #[must_use]
    pub fn is_named(self) -> bool {
        self.columns().iter().any(|column| column.is_name())
    }

    /// Its columns, from the left.
    #[must_use]
    pub const fn columns(self) -> &'static [Column] {
        match self {
            Self::Slats => &[
                Column::Name,
                Column::Number(Field::SlatWidth),
                Column::Number(Field::SlatThickness),
                Column::Number(Field::SlatLength),
                Column::Number(Field::WidthTolerance),
                Column::Number(Field::ThicknessTolerance),
                Column::Species,
                Column::Sawing,
                Column::Number(Field::DeliveryMoisture),
                Column::GuaranteedWidth,
                Column::GuaranteedThickness,
                Column::Number(Field::PackSlats),
                Column::Number(Field::PackPrice),
                Column::Number(Field::OnHand),
                Column::Number(Field::PackLimit),
            ],
            Self::Species => &[
                Column::Name,
                Column::Number(Field::RadialShrinkage),
                Column::Number(Field::TangentialShrinkage),
                Column::Number(Field::FibreSaturation),
            ],
            Self::CutterSets => &[
                Column::Name,
                Column::Number(Field::SetPitch),
                Column::Number(Field::SetMost),
                Column::Barrel,
                Column::Number(Field::SetPrice),
            ],
            Self::Planks => &[
                Column::Name,
                Column::Number(Field::PlankLength),
                Column::Number(Field::PlankWidth),
                Column::Number(Field::PlankThickness),
                Column::Number(Field::PlankEndTrim),
                Column::Number(Field::PlankEdgeTrim),
                Column::Number(Field::PlankPrice),
                Column::Number(Field::PlanksOnHand),
            ],
            Self::Blanks => &[
                Column::Name,
                Column::Number(Field::BlanksWanted),
                Column::Stock,
                Column::Number(Field::LengthDressing),
                Column::Number(Field::WidthDressing),
                Column::Number(Field::ThicknessDressing),
                Column::Number(Field::BlankLength),
                Column::Number(Field::BlankWidth),
                Column::Number(Field::BlankThickness),
                Column::Number(Field::BlankOverWorth),
                Column::Number(Field::MostOver),
            ],
            Self::Orders => &[
                Column::Pencil,
                Column::Number(Field::OrderGross),
                Column::Number(Field::DuePeriod),
                Column::DueName,
                Column::Number(Field::PencilsOnHand),
            ],
            Self::Periods => &[Column::Name, Column::Number(Field::MachineHours)],
            Self::Offers => &[
                Column::Supplier,
                Column::Offered,
                Column::Number(Field::PackSlats),
                Column::Tier(0, Field::TierFrom),
                Column::Tier(0, Field::PackPrice),
                Column::Tier(1, Field::TierFrom),
                Column::Tier(1, Field::PackPrice),
                Column::Tier(2, Field::TierFrom),
                Column::Tier(2, Field::PackPrice),
                Column::Tier(3, Field::TierFrom),
                Column::Tier(3, Field::PackPrice),
                Column::Tier(4, Field::TierFrom),
                Column::Tier(4, Field::PackPrice),
                Column::Tier(5, Field::TierFrom),
                Column::Tier(5, Field::PackPrice),
                Column::Tier(6, Field::TierFrom),
                Column::Tier(6, Field::PackPrice),
                Column::Tier(7, Field::TierFrom),
                Column::Tier(7, Field::PackPrice),
                Column::Pricing,
                Column::Number(Field::OrderCost),
                Column::Number(Field::LeastOrder),
                Column::Number(Field::MostOrder),
                Column::Number(Field::PackLimit),
                Column::Number(Field::LeadPeriods),
                Column::Certified,
            ],
            Self::Sawn => &[
                Column::SawnStock,
                Column::Number(Field::SawnCost),
                Column::Number(Field::SawnMost),
                Column::Certified,
            ],
        }
    }

    /// What is above the table.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Slats => "Slat stocks",
            Self::Species => "Species",
            Self::CutterSets => "Cutter sets",
            Self::Planks => "Planks",
            Self::Blanks => "Blanks wanted",
            Self::Orders => "Order book",
            Self::Periods => "Periods",
            Self::Offers => "Offers of slats",
            Self::Sawn => "Slats sawn in the works",
        }
    }

    /// What one row is, in a sentence.
    #[must_use]
    pub const fn noun(self) -> &'static str {
        match self {
            Self::Slats => "slat stock",
            Self::Species => "species",
            Self::CutterSets => "cutter set",
            Self::Planks => "plank",
            Self::Blanks => "blank",
            Self::Orders => "order",
            Self::Periods => "period",
            Self::Offers => "offer",
            Self::Sawn => "sawn stock",
        }
    }

    /// One row, as in “a plank” and “an order”.
    #[must_use]
    pub fn one(self) -> String {
        let noun = self.noun();
        let article = if noun.starts_with('o') { "an" } else { "a" };
        format!("{article} {noun}")
    }

    /// What a row without a name is called, before its number.
    #[must_use]
    pub const fn fallback(self) -> &'static str {
        match self {
            Self::Slats => "Slat",
            Self::Species => "Species",
            Self::CutterSets => "Cutter set",
            Self::Planks => "Plank",
            Self::Blanks => "Blank",
            Self::Orders => "Order",
            Self::Periods => "Period",
            Self::Offers => "Offer",
            Self::Sawn => "Sawn stock",
        }
    }

    /// What the names of its elements on the page begin with.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Slats => "slats",
            Self::Species => "species",
            Self::CutterSets => "cutter-sets",
            Self::Planks => "planks",
            Self::Blanks => "blanks",
            Self::Orders => "orders",
            Self::Periods => "periods",
            Self::Offers => "offers",
            Self::Sawn => "sawn-slats",
        }
    }

    /// The table that a number stands in, and its row.
    #[must_use]
    pub const fn of_slot(slot: Slot) -> Option<(Self, Id)> {
        match slot {
            Slot::Slat(id, _) => Some((Self::Slats, id)),
            Slot::Species(id, _) => Some((Self::Species, id)),
            Slot::CutterSet(id, _) => Some((Self::CutterSets, id)),
            Slot::Plank(id, _) => Some((Self::Planks, id)),
            Slot::Blank(id, _) => Some((Self::Blanks, id)),
            Slot::Order(at, _) => Some((Self::Orders, Id(at as u32))),
            Slot::Period(at) => Some((Self::Periods, Id(at as u32))),
            Slot::Offer(id, _) | Slot::Tier(id, ..) => Some((Self::Offers, id)),
            Slot::SawnSlats(at, _) => Some((Self::Sawn, Id(at as u32))),
            _ => None,
        }
    }

    /// Where a number of a row stands.
    #[must_use]
    pub const fn slot(self, row: Id, field: Field) -> Slot {
        match self {
            Self::Slats => Slot::Slat(row, field),
            Self::Species => Slot::Species(row, field),
            Self::CutterSets => Slot::CutterSet(row, field),
            Self::Planks => Slot::Plank(row, field),
            Self::Blanks => Slot::Blank(row, field),
            Self::Orders => Slot::Order(row.0 as usize, field),
            Self::Periods => Slot::Period(row.0 as usize),
            Self::Offers => Slot::Offer(row, field),
            Self::Sawn => Slot::SawnSlats(row.0 as usize, field),
        }
    }

    /// The whole table for a spreadsheet: its headings with units, then its rows.
    #[must_use]
    pub fn cells(self, project: &ProjectDraft, unit: LengthUnit) -> Vec<Vec<String>> {
        let columns = || {
            let columns = self.columns().iter();
            columns.filter(|column| column.is_wanted(project))
        };
        let headings = columns().map(|column| column.heading(unit));
        let rows = self.rows(project).into_iter().map(|row| {
            let cells = columns();
            cells
                .map(|column| {
                    Cell {
                        table: self,
                        row,
                        column: *column,
                    }
                    .text(project, unit)
                })
                .collect()
        });
        [headings.collect()].into_iter().chain(rows).collect()
    }
}
