//! The tables of a project: their columns, and what can be done with their rows.

mod cell;
mod file;
mod paste;

pub use cell::Cell;
pub(crate) use cell::{ANY, AS_TYPED, LONGEST_NAME, NONE};
pub use file::Replaced;
pub use paste::Pasted;

use super::Slot;
use solver::entry::Dimension;
use solver::{
    BlankDraft, CutterSetDraft, Entry, Field, Id, LengthUnit, PlankDraft, ProjectDraft, SlatDraft,
    SpeciesDraft,
};

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
}

/// A column of a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Column {
    /// What the row is called.
    Name,
    /// A number.
    Number(Field),
    /// The species of a slat stock, or none.
    Species,
    /// How a slat stock is sawn.
    Sawing,
    /// The barrel a cutter set is ground for, or any.
    Barrel,
    /// The slat stock that a blank becomes, or none.
    Stock,
    /// The width that every slat of a stock has at the groove head; it follows from the others.
    GuaranteedWidth,
    /// The thickness that every slat of a stock has at the groove head; it follows as well.
    GuaranteedThickness,
}

/// Which way a row moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// Towards the beginning.
    Up,
    /// Towards the end.
    Down,
}

/// The one list of a table, whatever its rows are.
macro_rules! with_list {
    ($table:expr, & $($mutable:ident)?, $project:expr, $list:ident => $result:expr) => {
        match $table {
            Table::Slats => { let $list = & $($mutable)? $project.slats; $result }
            Table::Species => { let $list = & $($mutable)? $project.species; $result }
            Table::CutterSets => { let $list = & $($mutable)? $project.cutter_sets; $result }
            Table::Planks => { let $list = & $($mutable)? $project.saw_shop.planks; $result }
            Table::Blanks => { let $list = & $($mutable)? $project.saw_shop.blanks; $result }
        }
    };
}

impl Table {
    /// Every table.
    pub const ALL: [Self; 5] = [
        Self::Slats,
        Self::Species,
        Self::CutterSets,
        Self::Planks,
        Self::Blanks,
    ];

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
        }
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
        }
    }

    /// Its rows, from the top.
    #[must_use]
    pub fn rows(self, project: &ProjectDraft) -> Vec<Id> {
        with_list!(self, &, project, list => list.iter().map(|entry| entry.id).collect())
    }

    /// The place of a row, from the top.
    #[must_use]
    pub fn place(self, project: &ProjectDraft, row: Id) -> Option<usize> {
        with_list!(self, &, project, list => list.iter().position(|entry| entry.id == row))
    }

    /// The name of a row, which may be empty.
    #[must_use]
    pub fn name(self, project: &ProjectDraft, row: Id) -> Option<&str> {
        with_list!(self, &, project, list => {
            let entry = list.iter().find(|entry| entry.id == row);
            entry.map(|entry| entry.draft.name.as_str())
        })
    }

    /// Gives a row another name.
    pub fn set_name(self, project: &mut ProjectDraft, row: Id, name: String) {
        with_list!(self, &mut, project, list => {
            if let Some(entry) = list.iter_mut().find(|entry| entry.id == row) {
                entry.draft.name = name;
            }
        });
    }

    /// The name of a row, or its kind with its number where it has none.
    #[must_use]
    pub fn spoken_name(self, project: &ProjectDraft, row: Id) -> String {
        match (self.name(project, row), self.place(project, row)) {
            (Some(name), _) if !name.trim().is_empty() => name.to_owned(),
            (_, place) => format!("{} {}", self.fallback(), place.unwrap_or(0) + 1),
        }
    }

    /// Puts a new row at the end; a layout that has lost its slats takes a new stock.
    pub fn append(self, project: &mut ProjectDraft) -> Id {
        let id = project.free_id();
        match self {
            Self::Slats => {
                let draft = SlatDraft::new("");
                project.slats.push(Entry { id, draft });
                let (top, bottom) = (project.layout.top, project.layout.bottom);
                if project.slat_place(top).is_none() {
                    project.layout.top = id;
                }
                if project.slat_place(bottom).is_none() {
                    project.layout.bottom = id;
                }
            }
            Self::Species => {
                let draft = SpeciesDraft::new("");
                project.species.push(Entry { id, draft });
            }
            Self::CutterSets => {
                let draft = CutterSetDraft::new("");
                project.cutter_sets.push(Entry { id, draft });
            }
            Self::Planks => {
                let draft = PlankDraft::new("");
                project.saw_shop.planks.push(Entry { id, draft });
            }
            Self::Blanks => {
                let draft = BlankDraft::new("");
                project.saw_shop.blanks.push(Entry { id, draft });
            }
        }
        id
    }

    /// Puts a copy of a row behind it.
    pub fn copy(self, project: &mut ProjectDraft, row: Id) -> Option<Id> {
        let name = format!("{} copy", self.spoken_name(project, row));
        let id = project.free_id();
        let at = self.place(project, row)?;
        with_list!(self, &mut, project, list => {
            let mut draft = list[at].draft.clone();
            draft.name = name;
            list.insert(at + 1, Entry { id, draft });
        });
        Some(id)
    }

    /// Moves a row by one place; does nothing at the end of the table.
    pub fn shift(self, project: &mut ProjectDraft, row: Id, step: Step) {
        let Some(at) = self.place(project, row) else {
            return;
        };
        let other = match step {
            Step::Up => at.checked_sub(1),
            Step::Down => Some(at + 1),
        };
        with_list!(self, &mut, project, list => {
            if let Some(other) = other.filter(|other| *other < list.len()) {
                list.swap(at, other);
            }
        });
    }

    /// Lets a row change places with the one at a place.
    fn swap(self, project: &mut ProjectDraft, at: usize, row: Id) {
        if let Some(from) = self.place(project, row) {
            with_list!(self, &mut, project, list => list.swap(at, from));
        }
    }

    /// Takes a row out, and with it what goes by it: the layout moves to the stock that takes its
    /// place, its offers and what sawing it costs go too, stocks of a species are of none. Rules that space by a cutter set say that it has
    /// gone, and so do blanks that become slats of a stock. The row that now stands there, or the last.
    pub fn delete(self, project: &mut ProjectDraft, row: Id) -> Option<Id> {
        let at = self.place(project, row)?;
        with_list!(self, &mut, project, list => { list.remove(at); });
        let rows = self.rows(project);
        let next = rows.get(at).or(rows.last()).copied();
        match self {
            Self::Slats => {
                project
                    .supply
                    .offers
                    .retain(|offer| offer.draft.slat != row);
                project.supply.sawn.retain(|sawn| sawn.slat != row);
                let layout = &mut project.layout;
                for chosen in [&mut layout.top, &mut layout.bottom] {
                    if *chosen == row {
                        *chosen = next.unwrap_or(row);
                    }
                }
            }
            Self::Species => {
                for slat in &mut project.slats {
                    if slat.draft.species == Some(row) {
                        slat.draft.species = None;
                    }
                }
            }
            Self::CutterSets | Self::Planks | Self::Blanks => {}
        }
        next
    }

    /// The whole table for a spreadsheet: its headings with units, then its rows.
    #[must_use]
    pub fn cells(self, project: &ProjectDraft, unit: LengthUnit) -> Vec<Vec<String>> {
        let headings = self.columns().iter().map(|column| column.heading(unit));
        let rows = self.rows(project).into_iter().map(|row| {
            let cells = self.columns().iter();
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

impl Column {
    /// What is above it, with the unit where it has one.
    #[must_use]
    pub fn heading(self, unit: LengthUnit) -> String {
        match self.unit(unit) {
            "" => self.label().to_owned(),
            unit => format!("{}, {unit}", self.label()),
        }
    }

    /// What is above it, without a unit.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Name => "Name",
            Self::Number(field) => field.spec().label,
            Self::Species => "Species",
            Self::Sawing => "Sawn",
            Self::Barrel => "Ground for",
            Self::Stock => "Becomes",
            Self::GuaranteedWidth => "Guaranteed width",
            Self::GuaranteedThickness => "Guaranteed thickness",
        }
    }

    /// The unit of what stands in it.
    #[must_use]
    pub fn unit(self, unit: LengthUnit) -> &'static str {
        match self {
            Self::GuaranteedWidth | Self::GuaranteedThickness => unit.label(),
            Self::Number(field) => match field.spec().dimension {
                Dimension::Length => unit.label(),
                Dimension::Percent => "%",
                _ => "",
            },
            _ => "",
        }
    }

    /// What its term means.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Name => "What it is called.",
            Self::Number(field) => field.spec().meaning,
            Self::Species => "The wood of the slats; without one they do not move with moisture.",
            Self::Sawing => "Whether the growth rings run along the width or along the thickness.",
            Self::Barrel => "The barrel that the cutters are ground for.",
            Self::Stock => {
                "The slat stock that the blank becomes: its sizes as sawn follow from the slat, from dressing and from shrinkage. As typed means they are given."
            }
            Self::GuaranteedWidth => {
                "The width that every slat has at the groove head: less its shortfall, after the wood has moved."
            }
            Self::GuaranteedThickness => {
                "The thickness that every slat has at the groove head: less its shortfall, after the wood has moved."
            }
        }
    }

    /// Whether it follows from others and cannot be filled.
    #[must_use]
    pub const fn is_driven(self) -> bool {
        matches!(self, Self::GuaranteedWidth | Self::GuaranteedThickness)
    }

    /// Whether figures stand in it.
    #[must_use]
    pub const fn is_figure(self) -> bool {
        matches!(self, Self::Number(_)) || self.is_driven()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;

    #[test]
    fn the_layout_moves_to_the_stock_that_takes_the_place_of_a_deleted_one() {
        let mut project = demo::project();
        let (first, second) = (project.slats[0].id, project.slats[1].id);
        assert_eq!(Table::Slats.delete(&mut project, first), Some(second));
        assert_eq!(
            (project.layout.top, project.layout.bottom),
            (second, second)
        );
    }

    #[test]
    fn a_layout_without_slats_takes_the_next_one_added() {
        let mut project = demo::project();
        for row in Table::Slats.rows(&project) {
            Table::Slats.delete(&mut project, row);
        }
        assert!(project.check_layout().is_err());
        Table::Slats.append(&mut project);
        assert!(project.check_layout().is_ok());
    }

    #[test]
    fn stocks_of_a_deleted_species_are_of_none() {
        let mut project = demo::project();
        Table::Species.delete(&mut project, Id(21));
        let species: Vec<Option<Id>> = project
            .slats
            .iter()
            .map(|slat| slat.draft.species)
            .collect();
        assert_eq!(species, [None, None, None, Some(Id(22)), Some(Id(22))]);
        assert!(project.check().is_ok());
    }

    #[test]
    fn a_copy_stands_behind_its_row_with_a_name_of_its_own() {
        for table in Table::ALL {
            let mut project = demo::project();
            let rows = table.rows(&project);
            let copy = table.copy(&mut project, rows[0]).unwrap();
            assert_eq!(table.place(&project, copy), Some(1));
            let name = table.name(&project, copy).unwrap();
            assert!(name.ends_with(" copy"), "{name}");
            assert_eq!(table.delete(&mut project, copy), Some(rows[1]));
            assert_eq!(project, demo::project());
        }
    }

    #[test]
    fn rows_move_up_and_down_and_stop_at_the_ends() {
        for table in Table::ALL {
            let mut project = demo::project();
            let rows = table.rows(&project);
            table.shift(&mut project, rows[0], Step::Up);
            assert_eq!(project, demo::project());
            table.shift(&mut project, rows[0], Step::Down);
            assert_eq!(table.place(&project, rows[0]), Some(1));
            table.shift(&mut project, rows[0], Step::Up);
            assert_eq!(project, demo::project());
            table.shift(&mut project, rows[rows.len() - 1], Step::Down);
            assert_eq!(project, demo::project());
        }
    }

    #[test]
    fn headings_carry_the_unit_shown() {
        let heading = |unit| Column::Number(Field::SlatWidth).heading(unit);
        assert_eq!(heading(LengthUnit::Millimetre), "Slat width, mm");
        assert_eq!(heading(LengthUnit::Inch), "Slat width, in");
        let moisture = Column::Number(Field::DeliveryMoisture);
        assert_eq!(
            moisture.heading(LengthUnit::Inch),
            "Moisture as delivered, %"
        );
    }
}
