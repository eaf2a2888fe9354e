//! The tables of a project: their columns, and what can be done with their rows.

mod cell;
mod column;
mod file;
mod paste;

pub use cell::Cell;
pub(crate) use cell::{ANY, AS_TYPED, LONGEST_NAME, NO, NONE, YES};
pub use column::Column;
pub use file::Replaced;
pub use paste::Pasted;

use super::Slot;
use solver::{
    BlankDraft, CutterSetDraft, Entry, Field, Id, LengthUnit, OfferDraft, OrderDraft, PeriodDraft,
    PlankDraft, ProjectDraft, SawnSlatsDraft, SlatDraft, SpeciesDraft,
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
    /// The order book.
    Orders,
    /// The periods of the order plan.
    Periods,
    /// What suppliers offer.
    Offers,
    /// What sawing slats in the works costs.
    Sawn,
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
            Table::Orders => { let $list = & $($mutable)? $project.orders; $result }
            Table::Periods => { let $list = & $($mutable)? $project.supply.periods; $result }
            Table::Offers => { let $list = & $($mutable)? $project.supply.offers; $result }
            Table::Sawn => { let $list = & $($mutable)? $project.supply.sawn; $result }
        }
    };
}

/// The list of a table whose rows have lasting names; `$other` for one whose rows go by their places.
macro_rules! with_entries {
    ($table:expr, & $($mutable:ident)?, $project:expr, $list:ident => $result:expr, $other:expr) => {
        match $table {
            Table::Slats => { let $list = & $($mutable)? $project.slats; $result }
            Table::Species => { let $list = & $($mutable)? $project.species; $result }
            Table::CutterSets => { let $list = & $($mutable)? $project.cutter_sets; $result }
            Table::Planks => { let $list = & $($mutable)? $project.saw_shop.planks; $result }
            Table::Blanks => { let $list = & $($mutable)? $project.saw_shop.blanks; $result }
            Table::Offers => { let $list = & $($mutable)? $project.supply.offers; $result }
            Table::Orders | Table::Periods | Table::Sawn => $other,
        }
    };
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

    /// Its rows, from the top.
    #[must_use]
    pub fn rows(self, project: &ProjectDraft) -> Vec<Id> {
        with_entries!(self, &, project, list => list.iter().map(|entry| entry.id).collect(), {
            (0..self.length(project)).map(|at| Id(at as u32)).collect()
        })
    }

    /// Number of its rows.
    fn length(self, project: &ProjectDraft) -> usize {
        with_list!(self, &, project, list => list.len())
    }

    /// The place of a row, from the top.
    #[must_use]
    pub fn place(self, project: &ProjectDraft, row: Id) -> Option<usize> {
        with_entries!(self, &, project, list => list.iter().position(|entry| entry.id == row), {
            Some(row.0 as usize).filter(|at| *at < self.length(project))
        })
    }

    /// The name of a row, which may be empty; nothing where rows have no names.
    #[must_use]
    pub fn name(self, project: &ProjectDraft, row: Id) -> Option<&str> {
        let at = self.place(project, row)?;
        Some(match self {
            Self::Slats => &project.slats[at].draft.name,
            Self::Species => &project.species[at].draft.name,
            Self::CutterSets => &project.cutter_sets[at].draft.name,
            Self::Planks => &project.saw_shop.planks[at].draft.name,
            Self::Blanks => &project.saw_shop.blanks[at].draft.name,
            Self::Periods => &project.supply.periods[at].name,
            Self::Offers => &project.supply.offers[at].draft.supplier,
            Self::Orders | Self::Sawn => return None,
        })
    }

    /// Gives a row another name.
    pub fn set_name(self, project: &mut ProjectDraft, row: Id, name: String) {
        let Some(at) = self.place(project, row) else {
            return;
        };
        let place = match self {
            Self::Slats => &mut project.slats[at].draft.name,
            Self::Species => &mut project.species[at].draft.name,
            Self::CutterSets => &mut project.cutter_sets[at].draft.name,
            Self::Planks => &mut project.saw_shop.planks[at].draft.name,
            Self::Blanks => &mut project.saw_shop.blanks[at].draft.name,
            Self::Periods => &mut project.supply.periods[at].name,
            Self::Offers => &mut project.supply.offers[at].draft.supplier,
            Self::Orders | Self::Sawn => return,
        };
        *place = name;
    }

    /// What a row is called: its name, or its kind with its number where it has none. An offer is called
    /// by its supplier and its stock, as a supplier makes several.
    #[must_use]
    pub fn spoken_name(self, project: &ProjectDraft, row: Id) -> String {
        let place = self.place(project, row);
        let name = match self.name(project, row) {
            Some(name) if !name.trim().is_empty() => name.to_owned(),
            _ => format!("{} {}", self.fallback(), place.unwrap_or(0) + 1),
        };
        let offer = place.filter(|_| self == Self::Offers);
        match offer.map(|at| project.supply.offers[at].draft.slat) {
            Some(slat) if project.slat_place(slat).is_some() => {
                format!("{name} for {}", Self::Slats.spoken_name(project, slat))
            }
            _ => name,
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
            Self::Orders => {
                let barrel = project.layout.barrel;
                project.orders.push(OrderDraft::new(barrel));
                return Id(project.orders.len() as u32 - 1);
            }
            Self::Periods => {
                project.supply.periods.push(PeriodDraft::new(""));
                return Id(project.supply.periods.len() as u32 - 1);
            }
            Self::Offers => {
                let slat = (project.slats.first()).map_or(project.layout.bottom, |slat| slat.id);
                let draft = OfferDraft::new("", slat);
                project.supply.offers.push(Entry { id, draft });
            }
            Self::Sawn => {
                let sawn = &mut project.supply.sawn;
                let is_free =
                    |slat: &&Entry<SlatDraft>| sawn.iter().all(|sawn| sawn.slat != slat.id);
                let free = project.slats.iter().find(is_free).map(|slat| slat.id);
                sawn.push(SawnSlatsDraft::new(free.unwrap_or(project.layout.bottom)));
                return Id(sawn.len() as u32 - 1);
            }
        }
        id
    }

    /// Puts a copy of a row behind it. A copy of an offer keeps the supplier.
    pub fn copy(self, project: &mut ProjectDraft, row: Id) -> Option<Id> {
        let name = format!("{} copy", self.spoken_name(project, row));
        let at = self.place(project, row)?;
        let id = if self.is_numbered() {
            Id(at as u32 + 1)
        } else {
            project.free_id()
        };
        with_list!(self, &mut, project, list => {
            let copy = list[at].clone();
            list.insert(at + 1, copy);
        });
        with_entries!(self, &mut, project, list => list[at + 1].id = id, {});
        if self == Self::Periods {
            project.period_added(at + 1);
        }
        if self != Self::Offers {
            self.set_name(project, id, name);
        }
        Some(id)
    }

    /// Moves a row by one place, and does nothing at the end of the table. The row, which has another
    /// name then where rows go by their places.
    pub fn shift(self, project: &mut ProjectDraft, row: Id, step: Step) -> Id {
        let other = self.place(project, row).and_then(|at| {
            let other = match step {
                Step::Up => at.checked_sub(1),
                Step::Down => Some(at + 1),
            };
            other.zip(Some(at))
        });
        let Some((other, at)) = other.filter(|(other, _)| *other < self.length(project)) else {
            return row;
        };
        with_list!(self, &mut, project, list => list.swap(at, other));
        if self == Self::Periods {
            project.periods_swapped(at, other);
        }
        if self.is_numbered() {
            Id(other as u32)
        } else {
            row
        }
    }

    /// Lets a row change places with the one at a place.
    fn swap(self, project: &mut ProjectDraft, at: usize, row: Id) {
        if let Some(from) = self.place(project, row) {
            with_list!(self, &mut, project, list => list.swap(at, from));
        }
    }

    /// Takes a row out, and with it what goes by it: the layout moves to the stock that takes its
    /// place, its offers and what sawing it costs go too, stocks of a species are of none, and what is
    /// due stays with its period. Rules that space by a cutter set
    /// say that it has gone, and so do blanks that become slats of a stock. Of periods one stays. The row
    /// that now stands there, or the last.
    pub fn delete(self, project: &mut ProjectDraft, row: Id) -> Option<Id> {
        let at = self.place(project, row)?;
        with_list!(self, &mut, project, list => { list.remove(at); });
        if self == Self::Periods {
            project.period_gone(at);
        }
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
            _ => {}
        }
        next
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
            if let Some(name) = table
                .name(&project, copy)
                .filter(|_| table != Table::Offers)
            {
                assert!(name.ends_with(" copy"), "{name}");
            }
            let next = rows.get(1).or(rows.first()).copied();
            assert_eq!(table.delete(&mut project, copy), next);
            assert_eq!(project, demo::project());
        }
    }

    #[test]
    fn rows_move_up_and_down_and_stop_at_the_ends() {
        for table in Table::ALL {
            let mut project = demo::project();
            if table.rows(&project).len() == 1 {
                table.copy(&mut project, table.rows(&demo::project())[0]);
            }
            let before = project.clone();
            let rows = table.rows(&project);
            table.shift(&mut project, rows[0], Step::Up);
            assert_eq!(project, before);
            let moved = table.shift(&mut project, rows[0], Step::Down);
            assert_eq!(table.place(&project, moved), Some(1));
            assert_eq!(table.shift(&mut project, moved, Step::Up), rows[0]);
            assert_eq!(project, before);
            table.shift(&mut project, rows[rows.len() - 1], Step::Down);
            assert_eq!(project, before);
        }
    }

    #[test]
    fn what_is_due_stays_with_its_period() {
        let due = |project: &ProjectDraft| {
            let orders = 0..project.orders.len();
            let periods = orders.map(|order| project.due_period(order));
            let name = |at: usize| Table::Periods.spoken_name(project, Id(at as u32));
            periods
                .map(|period| period.map(name).unwrap())
                .collect::<Vec<String>>()
        };
        let mut project = demo::project();
        let before = due(&project);
        Table::Periods.copy(&mut project, Id(0));
        assert_eq!(due(&project), before);
        Table::Periods.shift(&mut project, Id(1), Step::Down);
        assert_eq!(due(&project), before);
        Table::Periods.delete(&mut project, Id(2));
        assert_eq!((due(&project), project), (before, demo::project()));
    }

    #[test]
    fn one_period_stays() {
        let mut project = demo::project();
        for _ in 0..4 {
            Table::Periods.delete(&mut project, Id(0));
        }
        assert_eq!(project.supply.periods, [PeriodDraft::new("")]);
        assert!(!Column::Number(Field::PackLimit).may_be_unwanted());
    }

    #[test]
    fn prices_of_an_offer_come_and_go_with_what_is_typed() {
        use solver::Typed;
        let mut project = demo::project();
        let tiers = |project: &ProjectDraft| project.supply.offers[4].draft.tiers.len();
        let offer = project.supply.offers[4].id;
        let slot = |at, field| Slot::Tier(offer, at, field);
        slot(2, Field::PackPrice).set(&mut project, Typed::Number(90.0));
        assert_eq!(tiers(&project), 3);
        assert_eq!(
            slot(1, Field::TierFrom).get(&project),
            Some(&Typed::empty())
        );
        assert!(Column::Tier(3, Field::TierFrom).is_wanted(&project));
        slot(2, Field::PackPrice).set(&mut project, Typed::empty());
        assert_eq!(project, demo::project());
        slot(9, Field::PackPrice).set(&mut project, Typed::Number(1.0));
        assert_eq!(project, demo::project());
        assert!(!Column::Tier(4, Field::TierFrom).is_wanted(&project));
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
