//! The slat stocks, one row each.

use super::number_field::{Look, NumberField};
use super::problem_list::named;
use super::text_field::NameField;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{Entry, Field, Id, ProjectDraft, SlatDraft};

/// The numbers of a stock that the table shows, in its order.
const COLUMNS: [Field; 9] = [
    Field::SlatWidth,
    Field::SlatThickness,
    Field::SlatLength,
    Field::WidthTolerance,
    Field::ThicknessTolerance,
    Field::PackSlats,
    Field::PackPrice,
    Field::OnHand,
    Field::PackLimit,
];

/// The slat stocks of the project: change, add, copy, move, delete.
#[component]
pub(crate) fn SlatTable() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let ids = Memo::new(move |_| {
        project
            .read()
            .slats
            .iter()
            .map(|entry| entry.id)
            .collect::<Vec<_>>()
    });
    let add = move |_| bench.change(add_slat);
    let unit = move || bench.unit.get().label();
    view! {
        <section class="result slats" aria-labelledby="slats-title">
            <h2 id="slats-title">"Slat stocks"</h2>
            <div class="scroll" tabindex="0" role="group" aria-label="Slat stocks">
                <table class="entry">
                    <thead>
                        <tr>
                            <th scope="col">"Stock"</th>
                            {COLUMNS
                                .map(|field| {
                                    let spec = field.spec();
                                    let is_length = spec.dimension == solver::entry::Dimension::Length;
                                    view! {
                                        <th scope="col" class="figure" title=spec.meaning>
                                            {spec.label}
                                            {is_length.then(|| view! { <span class="unit">", " {unit}</span> })}
                                        </th>
                                    }
                                })
                                .collect_view()}
                            <th scope="col"><span class="unseen">"Change the list"</span></th>
                        </tr>
                    </thead>
                    <tbody>
                        <For each=move || ids.get() key=|id| *id let(id)>
                            <SlatRow id/>
                        </For>
                    </tbody>
                </table>
            </div>
            <Show when=move || ids.read().is_empty()>
                <p class="empty">"No slat stock yet. Without one there is nothing to lay a pencil on."</p>
            </Show>
            <button type="button" on:click=add>"Add a slat stock"</button>
        </section>
    }
}

#[component]
fn SlatRow(id: Id) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let name = Signal::derive(move || {
        let project = project.read();
        project
            .slat_place(id)
            .map(|at| named(&project.slats[at].draft.name, "Slat", at))
            .unwrap_or_default()
    });
    let first = move || project.read().slat_place(id) == Some(0);
    let copy = move |_| {
        bench.change(|project| {
            if let Some(at) = project.slat_place(id) {
                let mut draft = project.slats[at].draft.clone();
                draft.name = format!("{} copy", named(&draft.name, "Slat", at));
                let id = project.free_id();
                project.slats.insert(at + 1, Entry { id, draft });
            }
        });
    };
    let up = move |_| {
        bench.change(|project| {
            if let Some(at) = project.slat_place(id).filter(|at| *at > 0) {
                project.slats.swap(at, at - 1);
            }
        });
    };
    let delete = move |_| {
        bench.change(|project| delete_slat(project, id));
        bench.tell("Slat stock deleted. Undo brings it back.");
    };
    view! {
        <tr>
            <th scope="row">
                <NameField
                    read=move |project| project.slat_place(id).map(|at| project.slats[at].draft.name.clone())
                    write=move |project, name| {
                        if let Some(at) = project.slat_place(id) {
                            project.slats[at].draft.name = name;
                        }
                    }
                    label="Name of the slat stock".to_owned()
                    fallback="Slat".to_owned()
                />
            </th>
            {COLUMNS
                .map(|field| {
                    let spoken = Signal::derive(move || format!("{}, {}", name.get(), field.spec().label));
                    view! {
                        <td><NumberField at=Slot::Slat(id, field) context="table" look=Look::Bare name=spoken/></td>
                    }
                })
                .collect_view()}
            <td class="tools">
                <button type="button" on:click=copy aria-label=move || format!("Copy {}", name.get())>"Copy"</button>
                <button type="button" on:click=up disabled=first aria-label=move || format!("Move {} up", name.get())>"Up"</button>
                <button type="button" on:click=delete aria-label=move || format!("Delete {}", name.get())>"Delete"</button>
            </td>
        </tr>
    }
}

/// Puts a new stock at the end of the list; a layout that has lost its slats takes it.
fn add_slat(project: &mut ProjectDraft) {
    let id = project.free_id();
    let (top, bottom) = (project.layout.top, project.layout.bottom);
    if project.slat_place(top).is_none() {
        project.layout.top = id;
    }
    if project.slat_place(bottom).is_none() {
        project.layout.bottom = id;
    }
    project.slats.push(Entry {
        id,
        draft: SlatDraft::new(""),
    });
}

/// Takes a stock out of the project; the layout moves to the stock that takes its place.
fn delete_slat(project: &mut ProjectDraft, id: Id) {
    let Some(at) = project.slat_place(id) else {
        return;
    };
    project.slats.remove(at);
    let next = project
        .slats
        .get(at.min(project.slats.len().saturating_sub(1)))
        .map(|entry| entry.id);
    if let Some(next) = next {
        let layout = &mut project.layout;
        for chosen in [&mut layout.top, &mut layout.bottom] {
            if *chosen == id {
                *chosen = next;
            }
        }
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
        delete_slat(&mut project, first);
        assert_eq!(
            (project.layout.top, project.layout.bottom),
            (second, second)
        );
    }

    #[test]
    fn a_layout_without_slats_takes_the_next_one_added() {
        let mut project = demo::project();
        while let Some(id) = project.slats.first().map(|entry| entry.id) {
            delete_slat(&mut project, id);
        }
        assert!(project.check_layout().is_err());
        add_slat(&mut project);
        assert!(project.check_layout().is_ok());
    }
}
