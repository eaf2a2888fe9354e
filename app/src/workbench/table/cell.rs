//! One cell of a table: what stands in it, as text, and how text is taken in.

use super::{Column, Table};
use crate::project_file::MOST_CHARACTERS;
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
            Column::Name => table.name(project, row).unwrap_or_default().to_owned(),
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
            Column::Name => table.set_name(project, row, one_line(text)),
            Column::Number(_) if self.follows(project) => return Taken::NotFilled,
            Column::Number(field) => {
                let text: String = text.chars().take(MOST_CHARACTERS).collect();
                let typed = Typed::new(&text, field, unit);
                let problem = if field.spec().optional {
                    typed.read_optional(field).err()
                } else {
                    typed.read(field).err()
                };
                table.slot(row, field).set(project, typed);
                if let Some(problem) = problem {
                    return Taken::Wrong(problem);
                }
            }
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
            Column::GuaranteedWidth | Column::GuaranteedThickness => return Taken::NotFilled,
        }
        Taken::Filled
    }
}

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
