//! How accurately a line of machines works: one error after the other.

use super::layout_place::read_id;
use super::live::live;
use super::number_field::NumberField;
use super::problem_list::named;
use super::text_field::NameField;
use super::when::When;
use crate::demo::FIRST_LINE;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{AccuracyDraft, Entry, Field, Id, ProjectDraft, Reading, Term};

/// The errors by how far they reach: whether pencils fail one by one or all together.
const GROUPS: [(&str, &[Term]); 3] = [
    (
        "Each pencil by itself",
        &[
            Term::GroovePosition,
            Term::ShapingPosition,
            Term::LeadDiameter,
        ],
    ),
    (
        "Common to a slat",
        &[
            Term::GrooveHead,
            Term::GrooveDepth,
            Term::SlatWidth,
            Term::BottomThickness,
        ],
    ),
    (
        "Common to a sandwich",
        &[Term::GlueShift, Term::ShapingAcross, Term::ShapingUp],
    ),
];

/// The line on which the layout is made, and its errors.
#[component]
pub(crate) fn AccuracyForm() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let chosen = Memo::new(move |_| project.read().layout.accuracy);
    let lines = Memo::new(move |_| {
        let project = project.read();
        let lines = project.accuracies.iter().enumerate();
        lines
            .map(|(at, entry)| (entry.id, named(&entry.draft.name, "Line", at)))
            .collect::<Vec<_>>()
    });
    let known =
        Memo::new(move |_| lines.with(|lines| lines.iter().any(|(id, _)| *id == chosen.get())));
    let options = move || {
        let chosen = chosen.get();
        lines
            .get()
            .into_iter()
            .map(|(id, name)| {
                view! { <option value=id.0.to_string() selected=id == chosen prop:selected=id == chosen>{name}</option> }
            })
            .collect_view()
    };
    let errors = move || known.get().then(|| errors(chosen.get()));
    view! {
        <fieldset>
            <legend>"Line of machines"</legend>
            <div class="field row">
                <label for="accuracy-line">"Line"</label>
                <select
                    id="accuracy-line"
                    on:change=move |event| {
                        if let Some(id) = read_id(&event_target_value(&event)) {
                            bench.change(|project| project.layout.accuracy = id);
                        }
                    }
                >
                    {live(options)}
                </select>
            </div>
            <div class="actions">
                <button type="button" on:click=move |_| bench.change(add_line)>"Add a line"</button>
                <button type="button" disabled=move || !known.get() on:click=move |_| bench.change(copy_line)>"Copy"</button>
                <button
                    type="button"
                    disabled=move || !known.get() || lines.with(|lines| lines.len() < 2)
                    on:click=move |_| bench.change(delete_line)
                >
                    "Delete"
                </button>
            </div>
        </fieldset>
        {live(errors)}
    }
}

/// The fields of a line.
fn errors(id: Id) -> impl IntoView + use<> {
    let name = move |project: &ProjectDraft| {
        let at = project.accuracy_place(id)?;
        Some(project.accuracies[at].draft.name.clone())
    };
    let bench = expect_context::<Workbench>();
    let limited = move || {
        let project = bench.project().read();
        project.accuracy_place(id).is_some_and(|at| {
            let line = &project.accuracies[at].draft;
            let mut terms = Term::ALL.into_iter();
            terms.any(|term| line.error(term).reading == Reading::Limits)
        })
    };
    let groups = GROUPS.map(|(title, terms)| {
        let rows = terms.iter().map(|term| view! { <ErrorRow id term=*term/> });
        view! { <fieldset><legend>{title}</legend>{rows.collect_view()}</fieldset> }
    });
    view! {
        <fieldset>
            <legend>"Its name"</legend>
            <div class="field row">
                <NameField
                    read=name
                    write=move |project, name| {
                        if let Some(at) = project.accuracy_place(id) {
                            project.accuracies[at].draft.name = name;
                        }
                    }
                    label="Name of the line".to_owned()
                    fallback="Line".to_owned()
                />
            </div>
        </fieldset>
        {groups.into_iter().collect_view()}
        <fieldset>
            <legend>"What they stand for"</legend>
            <When holds=limited><NumberField at=Slot::Accuracy(id, Field::Sigmas) context="column"/></When>
            <NumberField at=Slot::Accuracy(id, Field::WidthOffset) context="column"/>
            <NumberField at=Slot::Accuracy(id, Field::ThicknessOffset) context="column"/>
            <NumberField at=Slot::Rules(Field::Eccentricity) context="column"/>
            <p class="hint">"Sizes that nobody has typed are assumptions for a common shop. Measure yours."</p>
        </fieldset>
    }
}

/// One error: its size, and whether that is a standard deviation or ± limits.
#[component]
fn ErrorRow(id: Id, term: Term) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let reading = Memo::new(move |_| {
        let project = bench.project().read();
        let at = project.accuracy_place(id)?;
        Some(project.accuracies[at].draft.error(term).reading)
    });
    let pick = move |event| {
        let limits = event_target_value(&event) == "limits";
        let reading = if limits {
            Reading::Limits
        } else {
            Reading::Deviation
        };
        bench.change(|project| {
            if let Some(at) = project.accuracy_place(id) {
                project.accuracies[at].draft.error_mut(term).reading = reading;
            }
        });
    };
    let limits = move || reading.get() == Some(Reading::Limits);
    let label = format!("{}: how its size is meant", term.field().spec().label);
    view! {
        <div class="error">
            <NumberField at=Slot::Accuracy(id, term.field()) context="column"/>
            <select aria-label=label on:change=pick>
                <option value="deviation" prop:selected=move || !limits()>"σ"</option>
                <option value="limits" prop:selected=limits>"±"</option>
            </select>
        </div>
    }
}

/// Adds a line with the first values, and looks at it.
fn add_line(project: &mut ProjectDraft) {
    put_line(project, AccuracyDraft::new(FIRST_LINE));
}

/// Adds a copy of the line that is looked at, and looks at it.
fn copy_line(project: &mut ProjectDraft) {
    if let Some(at) = project.accuracy_place(project.layout.accuracy) {
        let mut draft = project.accuracies[at].draft.clone();
        draft.name = format!("{} (copy)", draft.name);
        put_line(project, draft);
    }
}

fn put_line(project: &mut ProjectDraft, draft: AccuracyDraft) {
    let id = project.free_id();
    project.accuracies.push(Entry { id, draft });
    project.layout.accuracy = id;
}

/// Deletes the line that is looked at, and looks at its neighbour. The last one stays.
fn delete_line(project: &mut ProjectDraft) {
    let Some(at) = project.accuracy_place(project.layout.accuracy) else {
        return;
    };
    if project.accuracies.len() > 1 {
        project.accuracies.remove(at);
        let next = at.min(project.accuracies.len() - 1);
        project.layout.accuracy = project.accuracies[next].id;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;

    #[test]
    fn a_line_is_added_copied_and_deleted_but_the_last_one_stays() {
        let mut project = demo::blank();
        copy_line(&mut project);
        assert_eq!(project.accuracies.len(), 2);
        assert_eq!(project.layout.accuracy, project.accuracies[1].id);
        assert!(project.accuracies[1].draft.name.ends_with("(copy)"));
        add_line(&mut project);
        delete_line(&mut project);
        assert_eq!(project.layout.accuracy, project.accuracies[1].id);
        delete_line(&mut project);
        delete_line(&mut project);
        assert_eq!(project.accuracies.len(), 1);
        assert_eq!(project.layout.accuracy, project.accuracies[0].id);
    }

    #[test]
    fn every_error_stands_in_one_group() {
        let mut terms: Vec<Term> = GROUPS
            .iter()
            .flat_map(|(_, terms)| *terms)
            .copied()
            .collect();
        terms.sort_by_key(|term| *term as usize);
        assert_eq!(terms, Term::ALL);
    }
}
