//! The rows of a table: what they are called, and how they come, move and go.

use super::Table;
use solver::{
    BlankDraft, CutterSetDraft, Entry, Id, OfferDraft, OrderDraft, PeriodDraft, PlankDraft,
    ProjectDraft, SawnSlatsDraft, SlatDraft, SpeciesDraft,
};

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
    pub(super) fn swap(self, project: &mut ProjectDraft, at: usize, row: Id) {
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
}
