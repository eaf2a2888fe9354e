//! One row of a table of the project.

use super::entry_table::add_button_id;
use super::layout_place::{optional_choices, read_id};
use super::live::live;
use super::number_field::{Look, NumberField};
use super::problem_list::named;
use super::text_field::NameField;
use crate::spreadsheet;
use crate::workbench::{ANY, AS_TYPED, Cell, Column, NO, NONE, Step, Table, Workbench, YES};
use leptos::prelude::*;
use solver::order_plan::Pricing;
use solver::{Field, Id, ProjectDraft, Sawing, figure};
use std::sync::Arc;
use wasm_bindgen::JsCast;
use web_sys::{ClipboardEvent, FocusOptions, HtmlElement};

/// What can be chosen in the cells of a table; each list is made once for all rows.
#[derive(Clone, Copy)]
pub(crate) struct Choices {
    species: Memo<Vec<(Id, String)>>,
    barrels: Memo<Vec<(Id, String)>>,
    stocks: Memo<Vec<(Id, String)>>,
}

impl Choices {
    /// The choices that a project gives.
    pub(crate) fn of(bench: Workbench) -> Self {
        let project = bench.project();
        let of_table = |table: Table| {
            Memo::new(move |_| {
                let project = project.read();
                let rows = table.rows(&project).into_iter();
                rows.map(|id| (id, table.spoken_name(&project, id)))
                    .collect()
            })
        };
        let barrels = Memo::new(move |_| {
            let project = project.read();
            let barrels = project.barrels.iter().enumerate();
            barrels
                .map(|(at, entry)| (entry.id, named(&entry.draft.name, "Barrel", at)))
                .collect()
        });
        Self {
            species: of_table(Table::Species),
            barrels,
            stocks: of_table(Table::Slats),
        }
    }
}

/// A row: its cells, and the buttons that copy, move and delete it.
#[component]
pub(crate) fn Row(
    /// The table it stands in.
    table: Table,
    /// Its lasting name.
    row: Id,
    /// What can be chosen in its cells.
    choices: Choices,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let name = Memo::new(move |_| table.spoken_name(&project.read(), row));
    let cells = table.columns().iter().enumerate().map(|(at, &column)| {
        let cell = Cell { table, row, column };
        let paste = move |event: ClipboardEvent| paste_at(bench, cell, at, &event);
        let inner = match column {
            // The name stands before the other cells, as the heading of its row.
            Column::Name | Column::Supplier => {
                return view! { <th scope="row" on:paste=paste><RowName table row/></th> }.into_any();
            }
            column if column.may_be_unwanted() => return at_times(bench, cell, name, Arc::new(paste)),
            Column::Number(field) if may_follow(field) => {
                let follows = Memo::new(move |_| cell.follows(&project.read()));
                let inner = move || {
                    if follows.get() {
                        driven(bench, cell).into_any()
                    } else {
                        number(cell, name)
                    }
                };
                return view! { <td class:figure=move || follows.get() class:driven=move || follows.get() on:paste=paste>{live(inner)}</td> }
                    .into_any();
            }
            Column::Number(_) | Column::Tier(..) => number(cell, name),
            Column::GuaranteedWidth | Column::GuaranteedThickness | Column::DueName => {
                driven(bench, cell).into_any()
            }
            _ => {
                // In a table without names, the first cell takes the cursor that is led to a row.
                let id = (at == 0).then(|| part_id(table, row, "name"));
                view! { <ChoiceCell cell choices name id/> }.into_any()
            }
        };
        view! { <td class:figure=column.is_driven() class:driven=column.is_driven() on:paste=paste>{inner}</td> }
            .into_any()
    });
    let number_of_row = move || {
        let at = table.place(&project.read(), row);
        figure::count(at.map_or(0, |at| at as u64 + 1))
    };
    view! {
        <tr>
            {(!table.is_named()).then(|| view! { <th scope="row" class="figure">{live(number_of_row)}</th> })}
            {cells.collect_view()}
            <Tools table row name/>
        </tr>
    }
}

/// A number that is typed in a cell.
fn number(cell: Cell, name: Memo<String>) -> AnyView {
    let label = cell.column.label();
    let spoken = Signal::derive(move || format!("{}, {label}", name.get()));
    cell.slot().map_or_else(
        || ().into_any(),
        |at| view! { <NumberField at context="table" look=Look::Bare name=spoken/> }.into_any(),
    )
}

/// A cell of a column that is not always wanted.
fn at_times(bench: Workbench, cell: Cell, name: Memo<String>, paste: Paste) -> AnyView {
    let project = bench.project();
    let column = cell.column;
    let is_wanted = Memo::new(move |_| column.is_wanted(&project.read()));
    let inner = move || {
        is_wanted.get().then(|| {
            if column.is_driven() {
                driven(bench, cell).into_any()
            } else {
                number(cell, name)
            }
        })
    };
    view! {
        <td class:driven=column.is_driven() hidden=move || !is_wanted.get() on:paste=move |event| paste(event)>
            {live(inner)}
        </td>
    }
    .into_any()
}

/// What is done when something is pasted in a cell.
type Paste = Arc<dyn Fn(ClipboardEvent) + Send + Sync>;

/// Whether a number may follow from the other cells of its row.
const fn may_follow(field: Field) -> bool {
    matches!(
        field,
        Field::BlankLength
            | Field::BlankWidth
            | Field::BlankThickness
            | Field::LengthDressing
            | Field::WidthDressing
            | Field::ThicknessDressing
    )
}

/// What follows from other cells.
fn driven(bench: Workbench, cell: Cell) -> impl IntoView {
    let project = bench.project();
    let text = Memo::new(move |_| cell.text(&project.read(), bench.unit.get()));
    let shown = move || match text.get() {
        text if text.is_empty() => solver::figure::NO_FIGURE.to_owned(),
        text => text,
    };
    view! { <output>{live(shown)}</output> }
}

#[component]
fn RowName(table: Table, row: Id) -> impl IntoView {
    view! {
        <NameField
            id=part_id(table, row, "name")
            read=move |project| table.name(project, row).map(str::to_owned)
            write=move |project, name| table.set_name(project, row, name)
            label=format!("Name of the {}", table.noun())
            fallback=table.fallback().to_owned()
        />
    }
}

/// A cell in which something is chosen by its name.
#[component]
fn ChoiceCell(
    cell: Cell,
    choices: Choices,
    name: Memo<String>,
    /// The name of its element on the page, where something leads there.
    id: Option<String>,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let chosen = Memo::new(move |_| Chosen::of(cell, &project.read()));
    let options = move || {
        let options = |list: Memo<Vec<(Id, String)>>, chosen, none| {
            optional_choices(list.get(), chosen, none, "One that is gone").into_any()
        };
        match chosen.get() {
            Chosen::Species(id) => options(choices.species, id, NONE),
            Chosen::Barrel(id) => options(choices.barrels, id, ANY),
            Chosen::Stock(id) => options(choices.stocks, id, AS_TYPED),
            Chosen::Pencil(id) => needed_choices(choices.barrels.get(), id),
            Chosen::Slats(id) => needed_choices(choices.stocks.get(), id),
            Chosen::Sawing(chosen) => words(
                Sawing::ALL
                    .map(|sawing| (sawing.label(), sawing == chosen))
                    .to_vec(),
            ),
            Chosen::Pricing(chosen) => words(
                Pricing::ALL
                    .map(|pricing| (pricing.label(), pricing == chosen))
                    .to_vec(),
            ),
            Chosen::Certified(is_certified) => {
                words(vec![(NO, !is_certified), (YES, is_certified)])
            }
        }
    };
    let pick = move |event| {
        let value = event_target_value(&event);
        bench.change(|project| chosen.get_untracked().replaced(&value).put(cell, project));
    };
    view! {
        <select id=id aria-label=move || format!("{}, {}", name.get(), cell.column.label()) on:change=pick>
            {live(options)}
        </select>
    }
}

/// Options that are words, one of them chosen.
fn words(options: Vec<(&'static str, bool)>) -> AnyView {
    let options = options.into_iter().map(|(word, is_chosen)| {
        view! { <option selected=is_chosen prop:selected=is_chosen>{word}</option> }
    });
    options.collect_view().into_any()
}

/// Options of which one has to be chosen; what has gone from the list is told.
fn needed_choices(options: Vec<(Id, String)>, chosen: Option<Id>) -> AnyView {
    let is_there = |id: Id| options.iter().any(|(option, _)| *option == id);
    let gone = chosen.filter(|id| !is_there(*id));
    let gone = gone.map(|id| (id, "One that is gone".to_owned()));
    let options = gone.into_iter().chain(options).map(|(id, name)| {
        let is_chosen = Some(id) == chosen;
        view! { <option value=id.0.to_string() selected=is_chosen prop:selected=is_chosen>{name}</option> }
    });
    options.collect_view().into_any()
}

/// What is chosen in a cell.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Chosen {
    Species(Option<Id>),
    Barrel(Option<Id>),
    Stock(Option<Id>),
    Pencil(Option<Id>),
    Slats(Option<Id>),
    Sawing(Sawing),
    Pricing(Pricing),
    Certified(bool),
}

impl Chosen {
    /// What is chosen in a cell of a project.
    fn of(cell: Cell, project: &ProjectDraft) -> Self {
        let slat = project
            .slat_place(cell.row)
            .map(|at| &project.slats[at].draft);
        match cell.column {
            Column::Barrel => {
                let place = project.cutter_set_place(cell.row);
                Self::Barrel(place.and_then(|at| project.cutter_sets[at].draft.barrel))
            }
            Column::Stock => {
                let place = project.blank_place(cell.row);
                Self::Stock(place.and_then(|at| project.saw_shop.blanks[at].draft.slat))
            }
            Column::Sawing => Self::Sawing(slat.map_or(Sawing::Flat, |slat| slat.sawing)),
            Column::Pencil => {
                let order = project.orders.get(cell.row.0 as usize);
                Self::Pencil(order.map(|order| order.barrel))
            }
            Column::Offered | Column::SawnStock => Self::Slats(cell.slat(project)),
            Column::Pricing => {
                let offer = project.offer_place(cell.row);
                let offer = offer.map(|at| project.supply.offers[at].draft.pricing);
                Self::Pricing(offer.unwrap_or(Pricing::AllUnits))
            }
            Column::Certified => Self::Certified(cell.is_certified(project) == Some(true)),
            _ => Self::Species(slat.and_then(|slat| slat.species)),
        }
    }

    /// Another choice of the same kind, by the value of its option.
    fn replaced(self, value: &str) -> Self {
        match self {
            Self::Species(_) => Self::Species(read_id(value)),
            Self::Barrel(_) => Self::Barrel(read_id(value)),
            Self::Stock(_) => Self::Stock(read_id(value)),
            Self::Pencil(before) => Self::Pencil(read_id(value).or(before)),
            Self::Slats(before) => Self::Slats(read_id(value).or(before)),
            Self::Pricing(before) => {
                let mut all = Pricing::ALL.into_iter();
                Self::Pricing(
                    all.find(|pricing| pricing.label() == value)
                        .unwrap_or(before),
                )
            }
            Self::Certified(_) => Self::Certified(value == YES),
            Self::Sawing(before) => {
                let mut all = Sawing::ALL.into_iter();
                Self::Sawing(all.find(|sawing| sawing.label() == value).unwrap_or(before))
            }
        }
    }

    /// Puts the choice in a cell of a project.
    fn put(self, cell: Cell, project: &mut ProjectDraft) {
        let slat = project.slat_place(cell.row);
        match self {
            Self::Barrel(barrel) => {
                if let Some(at) = project.cutter_set_place(cell.row) {
                    project.cutter_sets[at].draft.barrel = barrel;
                }
            }
            Self::Stock(stock) => {
                if let Some(at) = project.blank_place(cell.row) {
                    project.set_blank_slat(at, stock);
                }
            }
            Self::Pencil(barrel) => {
                let order = project.orders.get_mut(cell.row.0 as usize);
                if let Some((order, barrel)) = order.zip(barrel) {
                    order.barrel = barrel;
                }
            }
            Self::Slats(slat) => {
                if let Some(slat) = slat {
                    cell.set_slat(project, slat);
                }
            }
            Self::Pricing(pricing) => {
                if let Some(at) = project.offer_place(cell.row) {
                    project.supply.offers[at].draft.pricing = pricing;
                }
            }
            Self::Certified(is_certified) => cell.certify(project, is_certified),
            Self::Species(species) => {
                if let Some(at) = slat {
                    project.slats[at].draft.species = species;
                }
            }
            Self::Sawing(sawing) => {
                if let Some(at) = slat {
                    project.slats[at].draft.sawing = sawing;
                }
            }
        }
    }
}

/// The buttons that copy, move and delete a row. The cursor stays with the row.
#[component]
fn Tools(table: Table, row: Id, name: Memo<String>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let ends = Memo::new(move |_| {
        let project = project.read();
        let rows = table.rows(&project);
        (rows.first() == Some(&row), rows.last() == Some(&row))
    });
    let copy = move |_| {
        let mut copied = None;
        bench.change(|project| copied = table.copy(project, row));
        if let Some(copied) = copied {
            focus_row(bench, table, copied, &["name"]);
        }
    };
    let shift = move |step| {
        let mut row = row;
        bench.change(|project| row = table.shift(project, row, step));
        // At the end of the table the button that was pressed has nothing left to do.
        let parts = match step {
            Step::Up => ["up", "down"],
            Step::Down => ["down", "up"],
        };
        focus_row(bench, table, row, &parts);
    };
    let delete = move |_| {
        let mut next = None;
        bench.change(|project| next = table.delete(project, row));
        bench.tell(&format!(
            "One {} deleted. Undo brings it back.",
            table.noun()
        ));
        match next {
            Some(next) => focus_row(bench, table, next, &["delete"]),
            None => focus_first(vec![add_button_id(table)]),
        }
    };
    view! {
        <td class="tools">
            <button type="button" on:click=copy aria-label=move || format!("Copy {}", name.get())>"Copy"</button>
            <button
                type="button"
                id=part_id(table, row, "up")
                disabled=move || ends.get().0
                on:click=move |_| shift(Step::Up)
                aria-label=move || format!("Move {} up", name.get())
            >
                "Up"
            </button>
            <button
                type="button"
                id=part_id(table, row, "down")
                disabled=move || ends.get().1
                on:click=move |_| shift(Step::Down)
                aria-label=move || format!("Move {} down", name.get())
            >
                "Down"
            </button>
            <button
                type="button"
                id=part_id(table, row, "delete")
                on:click=delete
                aria-label=move || format!("Delete {}", name.get())
            >
                "Delete"
            </button>
        </td>
    }
}

/// The name of the element of a part of a row.
fn part_id(table: Table, row: Id, part: &str) -> String {
    format!("{}-{}-{part}", table.word(), row.0)
}

/// Puts the cursor on the first part of a row that can take it, once the row stands there.
pub(crate) fn focus_row(bench: Workbench, table: Table, row: Id, parts: &[&str]) {
    bench.row_in_sight.set(Some((table, row)));
    focus_first(parts.iter().map(|part| part_id(table, row, part)).collect());
}

/// Puts the cursor on the first of these elements that can take it, once they stand there.
pub(crate) fn focus_first(ids: Vec<String>) {
    request_animation_frame(move || {
        let mut found = ids
            .iter()
            .filter_map(|id| document().get_element_by_id(id))
            .filter(|element| !element.has_attribute("disabled"));
        let element = found.next();
        if let Some(element) = element.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
            let options = FocusOptions::new();
            options.set_prevent_scroll(false);
            // An element that cannot take the cursor leaves it where it is.
            let _ = element.focus_with_options(&options);
        }
    });
}

/// Takes in cells that are pasted in one of them. A single value is left to the field itself,
/// unless it stands over several lines or the cell is no text field.
fn paste_at(bench: Workbench, cell: Cell, column: usize, event: &ClipboardEvent) {
    let text = event
        .clipboard_data()
        .and_then(|data| data.get_data("text/plain").ok())
        .unwrap_or_default();
    let cells = spreadsheet::read(&text);
    let is_field = cell.column.is_name() || cell.column.is_number();
    let is_single = match cells.as_slice() {
        [] => return,
        [row] => matches!(row.as_slice(), [only] if !only.contains(['\n', '\r'])),
        _ => false,
    };
    if is_single && is_field {
        return;
    }
    event.prevent_default();
    let unit = bench.unit.get_untracked();
    let mut notice = String::new();
    bench.change(|project| {
        notice = cell
            .table
            .paste(project, cell.row, column, &cells, unit)
            .notice();
    });
    bench.tell(&notice);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;

    #[test]
    fn what_is_chosen_in_a_cell_is_found_there() {
        let mut project = demo::project();
        let slat = |column| Cell {
            table: Table::Slats,
            row: Id(11),
            column,
        };
        let set = Cell {
            table: Table::CutterSets,
            row: Id(31),
            column: Column::Barrel,
        };
        let blank = Cell {
            table: Table::Blanks,
            row: Id(61),
            column: Column::Stock,
        };
        for (cell, value, chosen) in [
            (slat(Column::Species), "22", Chosen::Species(Some(Id(22)))),
            (slat(Column::Species), "", Chosen::Species(None)),
            (
                slat(Column::Sawing),
                "Quarter-sawn",
                Chosen::Sawing(Sawing::Quarter),
            ),
            (blank, "12", Chosen::Stock(Some(Id(12)))),
            (blank, "", Chosen::Stock(None)),
            (set, "4", Chosen::Barrel(Some(Id(4)))),
            (set, "", Chosen::Barrel(None)),
        ] {
            let before = Chosen::of(cell, &project);
            before.replaced(value).put(cell, &mut project);
            assert_eq!(Chosen::of(cell, &project), chosen);
        }
    }

    #[test]
    fn a_row_that_has_gone_takes_no_choice() {
        let mut project = demo::project();
        for column in [
            Column::Species,
            Column::Sawing,
            Column::Barrel,
            Column::Stock,
        ] {
            let cell = Cell {
                table: Table::Slats,
                row: Id(999),
                column,
            };
            Chosen::of(cell, &project)
                .replaced("21")
                .put(cell, &mut project);
        }
        assert_eq!(project, demo::project());
    }
}
