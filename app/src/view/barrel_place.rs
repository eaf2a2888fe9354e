//! What the pencil is: its outline, its sizes, its numbers.

use super::barrel_card::{BarrelCard, Card};
use super::barrel_comparison::BarrelComparison;
use super::barrel_sharing::BarrelSharing;
use super::checks::Checks;
use super::drawing_sheet::{DrawingSheet, SheetSize, homeless_slots};
use super::finished_pencil::FinishedPencilSection;
use super::gain_table::GainTable;
use super::keyed::keyed;
use super::live::live;
use super::number_field::NumberField;
use super::path_field::PathField;
use super::problem_list::{ProblemList, named};
use super::shaping::{Handles, OutlineTools, PointTable, Shaping, StockTable};
use super::text_field::NameField;
use crate::workbench::{Slot, Workbench, barrel_shape};
use leptos::prelude::*;
use solver::{Angle, Barrel, BarrelDraft, Entry, Field, Id, LengthUnit, Rule, Shape, Size, figure};

/// The sizes that are typed over on the drawing.
const DRIVING: [Size; 5] = [
    Size::Barrel,
    Size::BarrelHeight,
    Size::CornerRadius,
    Size::Coat,
    Size::Lead,
];

/// The checks that rest on the barrel more than on the slats.
const OF_THE_BARREL: [Rule; 5] = [
    Rule::Wall,
    Rule::Bond,
    Rule::OpenGroove,
    Rule::Undercut,
    Rule::Relief,
];

/// The place of the barrel designer.
#[component]
pub(crate) fn BarrelPlace() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let size = SheetSize::new();
    let card = Card::new();
    let shaping = Shaping::new(bench, size);
    provide_context(shaping);
    let (barrel, drawing, stale) = (shaping.barrel, shaping.drawing(), shaping.stale());
    let homeless = Memo::new(move |_| {
        let nothing_to_draw = barrel.with(Option::is_none);
        let all = if nothing_to_draw {
            DRIVING.as_slice()
        } else {
            &[]
        };
        drawing.with(|drawing| homeless_slots(drawing.as_ref(), all, &project.read()))
    });
    let chosen = Memo::new(move |_| project.read().layout.barrel);
    let shape = Memo::new(move |_| barrel_shape(&project.read()));
    view! {
        <div class="place barrel-place" data-print=move || if card.printing.get() { "card" } else { "place" }>
            <section class="board" aria-label="End view of the barrel">
                <Barrels/>
                <div class="stage">
                    <DrawingSheet drawing size title="Barrel, end view" context="barrel" stale/>
                    <Handles/>
                </div>
                <OutlineTools/>
            </section>
            <aside class="column" aria-label="Inputs">
                <ProblemList/>
                <fieldset>
                    <legend>"Barrel"</legend>
                    {live(move || {
                        let id = chosen.get();
                        view! {
                            <div class="field row">
                                <span class="label">"Name"</span>
                                <NameField
                                    read=move |project| {
                                        project.barrel_place(id).map(|at| project.barrels[at].draft.name.clone())
                                    }
                                    write=move |project, name| {
                                        if let Some(at) = project.barrel_place(id) {
                                            project.barrels[at].draft.name = name;
                                        }
                                    }
                                    label="Barrel name".to_owned()
                                    fallback="Barrel".to_owned()
                                />
                            </div>
                        }
                    })}
                    <ShapeChoice/>
                    {live(move || own_fields(chosen.get(), shape.get()))}
                    {keyed(move || homeless.get(), |at| view! { <NumberField at context="column"/> })}
                    {live(move || {
                        let id = chosen.get();
                        view! {
                            <NumberField at=Slot::Barrel(id, Field::PencilLength) context="column"/>
                        }
                    })}
                </fieldset>
            </aside>
            <div class="results">
                <FinishedPencilSection/>
                <Checks title="What the woodshop says" only=&OF_THE_BARREL/>
                <StockTable/>
                <PointTable/>
                {live(move || barrel.with(|barrel| barrel.as_ref().map(|(barrel, _)| numbers(barrel, bench.unit.get()))))}
                <GainTable/>
                <BarrelComparison/>
                <BarrelSharing card/>
            </div>
            <BarrelCard card checks=&OF_THE_BARREL/>
        </div>
    }
}

/// The barrels of the project: choose, add, copy, delete.
#[component]
fn Barrels() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let tabs = move || {
        let project = project.read();
        let chosen = project.layout.barrel;
        project
            .barrels
            .iter()
            .enumerate()
            .map(|(at, entry)| {
                let id = entry.id;
                let pick = move |_| bench.change(|project| project.layout.barrel = id);
                view! {
                    <button type="button" class="tab" aria-pressed=if id == chosen { "true" } else { "false" } on:click=pick>
                        {named(&entry.draft.name, "Barrel", at)}
                    </button>
                }
            })
            .collect_view()
    };
    let only_one = move || project.read().barrels.len() < 2;
    let add = move |_| {
        bench.change(|project| {
            let id = project.free_id();
            project.barrels.push(Entry {
                id,
                draft: BarrelDraft::new("", Shape::Hexagonal),
            });
            project.layout.barrel = id;
        });
    };
    let copy = move |_| {
        bench.change(|project| {
            let Some(at) = project.barrel_place(project.layout.barrel) else {
                return;
            };
            let mut draft = project.barrels[at].draft.clone();
            draft.name = format!("{} copy", named(&draft.name, "Barrel", at));
            let id = project.free_id();
            project.barrels.insert(at + 1, Entry { id, draft });
            project.layout.barrel = id;
        });
    };
    let delete = move |_| {
        bench.change(|project| {
            let Some(at) = project.barrel_place(project.layout.barrel) else {
                return;
            };
            let gone = project.barrels.remove(at).id;
            project.orders.retain(|order| order.barrel != gone);
            let next = at.min(project.barrels.len().saturating_sub(1));
            if let Some(entry) = project.barrels.get(next) {
                project.layout.barrel = entry.id;
            }
        });
        bench.tell("Barrel deleted, with its orders. Undo brings both back.");
    };
    view! {
        <div class="tabs" role="group" aria-label="Barrels of the project">
            {live(tabs)}
            <span class="tools">
                <button type="button" on:click=add>"Add"</button>
                <button type="button" on:click=copy>"Copy"</button>
                <button type="button" on:click=delete disabled=only_one>"Delete"</button>
            </span>
        </div>
    }
}

#[component]
fn ShapeChoice() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let options = move || {
        let chosen = barrel_shape(&project.read());
        Shape::ALL
            .map(|shape| {
                let selected = Some(shape) == chosen;
                view! { <option selected=selected prop:selected=selected>{shape.label()}</option> }
            })
            .collect_view()
    };
    let pick = move |event| {
        let label = event_target_value(&event);
        let Some(shape) = Shape::ALL.into_iter().find(|shape| shape.label() == label) else {
            return;
        };
        bench.change(|project| {
            if let Some(at) = project.barrel_place(project.layout.barrel) {
                project.barrels[at].draft.shape = shape;
            }
        });
    };
    view! {
        <div class="field row">
            <label for="barrel-shape">"Shape"</label>
            <select id="barrel-shape" on:change=pick>{live(options)}</select>
        </div>
    }
}

/// What only this kind of outline asks for beside its size.
fn own_fields(barrel: Id, shape: Option<Shape>) -> impl IntoView + use<> {
    let numbers = shape
        .map_or([].as_slice(), Shape::own_fields)
        .iter()
        // That one stands on the drawing.
        .filter(|field| **field != Field::BarrelHeight)
        .map(|field| view! { <NumberField at=Slot::Barrel(barrel, *field) context="column"/> })
        .collect_view();
    let path = (shape == Some(Shape::Free)).then(|| view! { <PathField barrel/> });
    view! { {path} {numbers} }
}

/// The numbers of a barrel, over and under the coat.
fn numbers(barrel: &Barrel, unit: LengthUnit) -> impl IntoView + use<> {
    let (finished, bare) = (barrel.finished(Angle::ZERO), barrel.bare(Angle::ZERO));
    let length = |length: solver::Length| figure::length_with_unit(length.in_millimetres(), unit);
    let area = |area: solver::Area| {
        format!(
            "{}{}{}",
            figure::area(area.in_square_millimetres(), unit),
            figure::THIN_SPACE,
            unit.area_label()
        )
    };
    let width = match barrel.shape() {
        Shape::Round => "Width",
        Shape::Hexagonal | Shape::Triangular | Shape::Polygonal => "Width, standing on a face",
        Shape::Oval | Shape::Flat => "Width, lying flat",
        Shape::Free => "Width, as drawn",
    };
    let rows = [
        (
            width,
            length(finished.extents().width()),
            length(bare.extents().width()),
        ),
        (
            "Height",
            length(finished.extents().height()),
            length(bare.extents().height()),
        ),
        (
            "Axis to the nearest side",
            length(finished.least_distance()),
            length(bare.least_distance()),
        ),
        (
            "Girth",
            length(finished.perimeter()),
            length(bare.perimeter()),
        ),
        (
            "Section, lead bore not taken off",
            area(finished.area()),
            area(bare.area()),
        ),
    ];
    view! {
        <section class="result" aria-labelledby="barrel-numbers-title">
            <h2 id="barrel-numbers-title">"Numbers"</h2>
            <table>
                <thead>
                    <tr>
                        <th scope="col">"Size"</th>
                        <th scope="col" class="figure">"Over the coat"</th>
                        <th scope="col" class="figure">"Wood"</th>
                    </tr>
                </thead>
                <tbody>
                    {rows
                        .map(|(name, finished, bare)| {
                            view! {
                                <tr>
                                    <th scope="row">{name}</th>
                                    <td class="figure">{finished}</td>
                                    <td class="figure">{bare}</td>
                                </tr>
                            }
                        })
                        .collect_view()}
                </tbody>
            </table>
        </section>
    }
}
