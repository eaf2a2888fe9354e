//! What is wrong, all in one list, each line leading to its field.

use super::Place;
use super::live::live;
use crate::workbench::{Slot, Table, Workbench};
use leptos::prelude::*;
use solver::{Problem, ProjectDraft};
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, HtmlInputElement};

/// Lines that are shown at once; what is mended makes room for others.
const MOST_LINES: usize = 50;

/// A list of everything to mend in the project; nothing when all is well.
#[component]
pub(crate) fn ProblemList() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let any = move || !bench.problems().read().is_empty();
    let title = move || match bench.problems().read().len() {
        1 => "One thing to mend".to_owned(),
        count => format!("{count} things to mend"),
    };
    let rows = move || {
        let project = bench.project().get();
        let unit = bench.unit.get();
        bench
            .problems()
            .get()
            .into_iter()
            .take(MOST_LINES)
            .map(|problem| {
                let message = problem.problem.message(unit);
                let whose = owner(&problem, &project);
                let go = move |_| go_to(bench, &problem);
                view! { <li><button type="button" class="link" on:click=go>{whose} {message}</button></li> }
            })
            .collect_view()
    };
    view! {
        <section class="problems" aria-labelledby="problems-title" hidden=move || !any()>
            <h2 id="problems-title">{live(title)}</h2>
            <ul>{live(rows)}</ul>
            <p hidden=move || bench.problems().read().len() <= MOST_LINES>
                "The first "{MOST_LINES}" are listed; mend them to see the others."
            </p>
        </section>
    }
}

/// Whose field it is, where a list has several of the kind.
fn owner(problem: &Problem, project: &ProjectDraft) -> Option<String> {
    let name = match problem.place {
        solver::Place::Barrel(at) => project
            .barrels
            .get(at)
            .map(|entry| named(&entry.draft.name, "Barrel", at)),
        solver::Place::Slat(at) => project
            .slats
            .get(at)
            .map(|entry| named(&entry.draft.name, "Slat", at)),
        solver::Place::Order(at) => Some(named("", "Order", at)),
        solver::Place::Species(at) => project
            .species
            .get(at)
            .map(|entry| named(&entry.draft.name, "Species", at)),
        solver::Place::CutterSet(at) => project
            .cutter_sets
            .get(at)
            .map(|entry| named(&entry.draft.name, "Cutter set", at)),
        solver::Place::Accuracy(at) => project
            .accuracies
            .get(at)
            .map(|entry| named(&entry.draft.name, "Line", at)),
        solver::Place::Plank(at) => project
            .saw_shop
            .planks
            .get(at)
            .map(|entry| named(&entry.draft.name, "Plank", at)),
        solver::Place::Blank(at) => project
            .saw_shop
            .blanks
            .get(at)
            .map(|entry| named(&entry.draft.name, "Blank", at)),
        solver::Place::Head(head) => Some(head.label().to_owned()),
        solver::Place::Stage(stage) => Some(stage.label().to_owned()),
        solver::Place::Period(at) => {
            (project.supply.periods.get(at)).map(|period| named(&period.name, "Period", at))
        }
        solver::Place::Offer(at) | solver::Place::Tier(at, _) => {
            (project.supply.offers.get(at)).map(|entry| named(&entry.draft.supplier, "Offer", at))
        }
        solver::Place::SawnSlats(at) => Some(format!("Sawn slats {}", at + 1)),
        solver::Place::Conditions
        | solver::Place::Supply
        | solver::Place::SawShop
        | solver::Place::Cut
        | solver::Place::Run
        | solver::Place::Rules
        | solver::Place::Layout
        | solver::Place::Search => None,
    };
    name.map(|name| format!("{name}: "))
}

/// A name, or the kind with its number where it has none.
pub(crate) fn named(name: &str, kind: &str, at: usize) -> String {
    if name.trim().is_empty() {
        format!("{kind} {}", at + 1)
    } else {
        name.to_owned()
    }
}

/// Goes to the field of a problem and puts the cursor in it.
fn go_to(bench: Workbench, problem: &Problem) {
    let project = bench.project().get_untracked();
    let Some(slot) = Slot::of_problem(problem.place, problem.problem.field, &project) else {
        return;
    };
    let place = match slot {
        Slot::Barrel(id, _) => {
            if project.layout.barrel != id {
                bench.change(|project| project.layout.barrel = id);
            }
            Place::Barrel
        }
        Slot::Slat(..) | Slot::Species(..) | Slot::Conditions(_) => Place::Timber,
        // The order book stands in both places.
        Slot::Order(..) if bench.place.get_untracked() == Place::Timber => Place::Timber,
        Slot::Order(..)
        | Slot::Period(_)
        | Slot::Offer(..)
        | Slot::Tier(..)
        | Slot::SawnSlats(..)
        | Slot::Supply(_) => Place::Orders,
        Slot::Accuracy(..) => Place::Tolerances,
        Slot::Plank(..) | Slot::Blank(..) | Slot::SawShop(_) => Place::Planks,
        Slot::Head(..) | Slot::Cut(_) | Slot::Run(_) | Slot::Yield(_) => Place::Setting,
        Slot::CutterSet(..) | Slot::Rules(_) | Slot::Turn | Slot::Search(_) => Place::Layout,
    };
    if let Some(row) = Table::of_slot(slot) {
        bench.row_in_sight.set(Some(row));
    }
    bench.place.set(place);
    // The place has to stand on the page before its field can be found.
    request_animation_frame(move || {
        let found = ["drawing", "drawing-top", "column", "table", "barrel"]
            .iter()
            .find_map(|context| document().get_element_by_id(&slot.element_id(context)));
        if let Some(element) = found.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
            if let Ok(Some(folded)) = element.closest("details") {
                // What cannot be unfolded stays as it is.
                let _ = folded.set_attribute("open", "");
            }
            // A field that cannot take the cursor is still shown in the list.
            let _ = element.focus();
            // Whoever types next means the whole number, also in a place that has just been made.
            if let Some(input) = element.dyn_ref::<HtmlInputElement>() {
                input.select();
            }
        }
    });
}
