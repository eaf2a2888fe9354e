//! One cell of a table: what stands in it, as text, and how text is taken in.

use super::super::Slot;
use super::{Column, Table};
use crate::project_file::MOST_CHARACTERS;
use solver::order_plan::Pricing;
use solver::{
    Field, FieldProblem, Id, Length, LengthUnit, ProjectDraft, Sawing, Slat, Typed, figure,
};

/// The longest name that is kept, in characters; a project file allows more.
pub(crate) const LONGEST_NAME: usize = 200;

/// A cell of a table, by lasting names.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cell {
    /// The table.
    pub table: Table,
    /// Its row.
    pub row: Id,
    /// Its column.
    pub column: Column,
}

/// What came of a text put in a cell.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Taken {
    /// It stands there now.
    Filled,
    /// It stands there now, and has this problem.
    Wrong(FieldProblem),
    /// It names nothing that can be chosen there, so the cell is as it was.
    Unknown,
    /// The cell follows from others, or its row has gone.
    NotFilled,
}

impl Cell {
    /// What stands there: a number with every digit and without its unit, a name, or nothing.
    #[must_use]
    pub fn text(self, project: &ProjectDraft, unit: LengthUnit) -> String {
        let Self { table, row, column } = self;
        let slat = || project.slat_place(row).map(|at| &project.slats[at].draft);
        match column {
            Column::Name | Column::Supplier => {
                table.name(project, row).unwrap_or_default().to_owned()
            }
            Column::Tier(at, field) => {
                let typed = Slot::Tier(row, at, field).get(project);
                typed.map_or_else(String::new, |typed| typed.full(field, unit))
            }
            Column::Pencil => {
                let order = project.orders.get(row.0 as usize);
                let barrel = order.and_then(|order| project.barrel_place(order.barrel));
                barrel.map_or_else(String::new, |at| barrel_name(project, at))
            }
            Column::DueName => project
                .due_period(row.0 as usize)
                .map_or_else(String::new, |at| {
                    Table::Periods.spoken_name(project, Id(at as u32))
                }),
            Column::Offered | Column::SawnStock => {
                let slat = self.slat(project);
                let slat = slat.filter(|slat| project.slat_place(*slat).is_some());
                slat.map_or_else(String::new, |slat| Table::Slats.spoken_name(project, slat))
            }
            Column::Pricing => project
                .offer_place(row)
                .map_or("", |at| project.supply.offers[at].draft.pricing.label())
                .to_owned(),
            Column::Certified => match self.is_certified(project) {
                Some(true) => YES.to_owned(),
                Some(false) => NO.to_owned(),
                None => String::new(),
            },
            Column::Number(field) if self.follows(project) => self.sawn(project, field, unit),
            Column::Number(field) => {
                let typed = table.slot(row, field).get(project);
                typed.map_or_else(String::new, |typed| typed.full(field, unit))
            }
            Column::Species => slat()
                .and_then(|slat| slat.species)
                .filter(|id| project.species_place(*id).is_some())
                .map_or_else(String::new, |id| Table::Species.spoken_name(project, id)),
            Column::Sawing => slat().map_or("", |slat| slat.sawing.label()).to_owned(),
            Column::Barrel => {
                let place = project.cutter_set_place(row);
                match place.and_then(|at| project.cutter_sets[at].draft.barrel) {
                    None => ANY.to_owned(),
                    Some(id) => project
                        .barrel_place(id)
                        .map_or_else(String::new, |at| barrel_name(project, at)),
                }
            }
            Column::Stock => {
                let place = project.blank_place(row);
                match place.and_then(|at| project.saw_shop.blanks[at].draft.slat) {
                    None => AS_TYPED.to_owned(),
                    Some(id) if project.slat_place(id).is_none() => String::new(),
                    Some(id) => Table::Slats.spoken_name(project, id),
                }
            }
            Column::GuaranteedWidth => self.guaranteed(project, unit, Slat::guaranteed_width),
            Column::GuaranteedThickness => {
                self.guaranteed(project, unit, Slat::guaranteed_thickness)
            }
        }
    }

    /// Where its number stands; nothing for a cell that holds none.
    #[must_use]
    pub const fn slot(self) -> Option<Slot> {
        match self.column {
            Column::Number(field) => Some(self.table.slot(self.row, field)),
            Column::Tier(at, field) => Some(Slot::Tier(self.row, at, field)),
            _ => None,
        }
    }

    /// The slat stock that is offered or sawn.
    #[must_use]
    pub fn slat(self, project: &ProjectDraft) -> Option<Id> {
        match self.table {
            Table::Offers => {
                let at = project.offer_place(self.row)?;
                Some(project.supply.offers[at].draft.slat)
            }
            _ => Some(project.supply.sawn.get(self.row.0 as usize)?.slat),
        }
    }

    /// Lets another slat stock be offered or sawn.
    pub fn set_slat(self, project: &mut ProjectDraft, slat: Id) {
        match self.table {
            Table::Offers => {
                if let Some(at) = project.offer_place(self.row) {
                    project.supply.offers[at].draft.slat = slat;
                }
            }
            _ => {
                if let Some(sawn) = project.supply.sawn.get_mut(self.row.0 as usize) {
                    sawn.slat = slat;
                }
            }
        }
    }

    /// Whether the wood that is offered or sawn is certified.
    #[must_use]
    pub fn is_certified(self, project: &ProjectDraft) -> Option<bool> {
        match self.table {
            Table::Offers => {
                let at = project.offer_place(self.row)?;
                Some(project.supply.offers[at].draft.is_certified)
            }
            _ => Some(project.supply.sawn.get(self.row.0 as usize)?.is_certified),
        }
    }

    /// Tells whether the wood that is offered or sawn is certified.
    pub fn certify(self, project: &mut ProjectDraft, is_certified: bool) {
        match self.table {
            Table::Offers => {
                if let Some(at) = project.offer_place(self.row) {
                    project.supply.offers[at].draft.is_certified = is_certified;
                }
            }
            _ => {
                if let Some(sawn) = project.supply.sawn.get_mut(self.row.0 as usize) {
                    sawn.is_certified = is_certified;
                }
            }
        }
    }

    /// Whether it follows from the other cells of its row: the sizes of a blank that becomes a slat,
    /// and what is dressed off one that does not.
    #[must_use]
    pub fn follows(self, project: &ProjectDraft) -> bool {
        let Column::Number(field) = self.column else {
            return self.column.is_driven();
        };
        let becomes = || {
            let at = project.blank_place(self.row);
            at.is_some_and(|at| project.saw_shop.blanks[at].draft.slat.is_some())
        };
        match field {
            Field::BlankLength | Field::BlankWidth | Field::BlankThickness => becomes(),
            Field::LengthDressing | Field::WidthDressing | Field::ThicknessDressing => !becomes(),
            _ => false,
        }
    }

    /// A size of a blank as it is sawn; nothing for what is dressed off one of typed sizes.
    fn sawn(self, project: &ProjectDraft, field: Field, unit: LengthUnit) -> String {
        let size = (project.blank_place(self.row)).and_then(|at| project.sawn_size(at).ok());
        let size = size.and_then(|size| match field {
            Field::BlankLength => Some(size.length),
            Field::BlankWidth => Some(size.width),
            Field::BlankThickness => Some(size.thickness),
            _ => None,
        });
        size.map_or_else(String::new, |micrometres| {
            figure::micrometres(micrometres, unit)
        })
    }

    fn guaranteed(
        self,
        project: &ProjectDraft,
        unit: LengthUnit,
        size: fn(&Slat) -> Length,
    ) -> String {
        let at = project.slat_place(self.row);
        let slat = at.and_then(|at| project.check_slat(at).ok());
        slat.map_or_else(String::new, |slat| {
            figure::length(size(&slat).in_millimetres(), unit)
        })
    }

    /// Puts a text there, as if it had been typed; bare lengths are in the unit given.
    pub(super) fn take(self, project: &mut ProjectDraft, text: &str, unit: LengthUnit) -> Taken {
        let Self { table, row, column } = self;
        let text = text.trim();
        match column {
            Column::Name | Column::Supplier => table.set_name(project, row, one_line(text)),
            Column::Tier(at, field) => {
                let slot = Slot::Tier(row, at, field);
                // Where nothing stands for both there is no such price.
                if text.is_empty() && at > 0 {
                    slot.set(project, Typed::empty());
                    return Taken::Filled;
                }
                return put(project, slot, text, unit);
            }
            Column::Number(Field::DuePeriod) => {
                let periods = Table::Periods.rows(project).into_iter();
                let mut names = periods.map(|row| Table::Periods.spoken_name(project, row));
                let number = names.position(|name| alike(&name, text)).map(|at| at + 1);
                let number = number.map_or_else(|| text.to_owned(), |number| number.to_string());
                return put(project, table.slot(row, Field::DuePeriod), &number, unit);
            }
            Column::Pencil => {
                let mut all = 0..project.barrels.len();
                let barrel = all.find(|at| alike(&barrel_name(project, *at), text));
                let (Some(barrel), Some(order)) = (barrel, project.orders.get_mut(row.0 as usize))
                else {
                    return Taken::Unknown;
                };
                order.barrel = project.barrels[barrel].id;
            }
            Column::Offered | Column::SawnStock => {
                let mut all = Table::Slats.rows(project).into_iter();
                let slat = all.find(|id| alike(&Table::Slats.spoken_name(project, *id), text));
                let Some(slat) = slat else {
                    return Taken::Unknown;
                };
                self.set_slat(project, slat);
            }
            Column::Pricing => {
                let mut all = Pricing::ALL.into_iter();
                let pricing = all.find(|pricing| alike(pricing.label(), text));
                let pricing = pricing.or(text.is_empty().then_some(Pricing::AllUnits));
                let at = project.offer_place(row);
                let (Some(pricing), Some(at)) = (pricing, at) else {
                    return Taken::Unknown;
                };
                project.supply.offers[at].draft.pricing = pricing;
            }
            Column::Certified => match [YES, NO].iter().position(|word| alike(word, text)) {
                Some(place) => self.certify(project, place == 0),
                None if text.is_empty() => self.certify(project, false),
                None => return Taken::Unknown,
            },
            Column::Number(_) if self.follows(project) => return Taken::NotFilled,
            Column::Number(field) => return put(project, table.slot(row, field), text, unit),
            Column::Species => {
                let mut all = Table::Species.rows(project).into_iter();
                let same = |id: &Id| alike(&Table::Species.spoken_name(project, *id), text);
                let species = all.find(same);
                if species.is_none() && !(text.is_empty() || alike(text, NONE)) {
                    return Taken::Unknown;
                }
                let Some(at) = project.slat_place(row) else {
                    return Taken::NotFilled;
                };
                project.slats[at].draft.species = species;
            }
            Column::Sawing => {
                let same = |sawing: &Sawing| alike(sawing.label(), text);
                let Some(sawing) = Sawing::ALL.into_iter().find(same) else {
                    return Taken::Unknown;
                };
                let Some(at) = project.slat_place(row) else {
                    return Taken::NotFilled;
                };
                project.slats[at].draft.sawing = sawing;
            }
            Column::Barrel => {
                let mut all = 0..project.barrels.len();
                let barrel = all.find(|at| alike(&barrel_name(project, *at), text));
                if barrel.is_none() && !(text.is_empty() || alike(text, ANY)) {
                    return Taken::Unknown;
                }
                let Some(at) = project.cutter_set_place(row) else {
                    return Taken::NotFilled;
                };
                project.cutter_sets[at].draft.barrel = barrel.map(|at| project.barrels[at].id);
            }
            Column::Stock => {
                let mut all = Table::Slats.rows(project).into_iter();
                let same = |id: &Id| alike(&Table::Slats.spoken_name(project, *id), text);
                let slat = all.find(same);
                if slat.is_none() && !(text.is_empty() || alike(text, AS_TYPED)) {
                    return Taken::Unknown;
                }
                let Some(at) = project.blank_place(row) else {
                    return Taken::NotFilled;
                };
                project.set_blank_slat(at, slat);
            }
            Column::GuaranteedWidth | Column::GuaranteedThickness | Column::DueName => {
                return Taken::NotFilled;
            }
        }
        Taken::Filled
    }
}

/// Puts a text in the place of a number, as if it had been typed.
fn put(project: &mut ProjectDraft, slot: Slot, text: &str, unit: LengthUnit) -> Taken {
    let field = slot.field();
    let text: String = text.chars().take(MOST_CHARACTERS).collect();
    let typed = Typed::new(&text, field, unit);
    let problem = if field.spec().optional {
        typed.read_optional(field).err()
    } else {
        typed.read(field).err()
    };
    slot.set(project, typed);
    problem.map_or(Taken::Filled, Taken::Wrong)
}

/// The words for what is certified and what is not.
pub(crate) const YES: &str = "Yes";
pub(crate) const NO: &str = "No";

/// The word for no species.
pub(crate) const NONE: &str = "None";

/// The word for no slat stock: the sizes of a blank are those that are typed.
pub(crate) const AS_TYPED: &str = "As typed";

/// The word for any barrel.
pub(crate) const ANY: &str = "Any";

/// The name of a barrel, or its kind with its number.
fn barrel_name(project: &ProjectDraft, at: usize) -> String {
    let name = &project.barrels[at].draft.name;
    if name.trim().is_empty() {
        format!("Barrel {}", at + 1)
    } else {
        name.clone()
    }
}

/// Whether two names are the same but for capitals and the blanks round them.
fn alike(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}

/// A name in one line, no longer than is kept.
fn one_line(text: &str) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    words.join(" ").chars().take(LONGEST_NAME).collect()
}
