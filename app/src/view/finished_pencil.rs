//! The finished pencil of the barrel: its picture, what is told of it, and what is asked.

use super::finish_form::FinishForm;
use super::live::live;
use super::paper_drawing::PaperDrawing;
use super::pencil_picture::PencilPicture;
use super::setting_files::{save_file, titled};
use crate::preference;
use crate::workbench::{Pause, Workbench};
use leptos::prelude::*;
use solver::{FinishedPencil, Paper, PencilFacts, draw_pencil};

/// The pencil of the project, or the last good one.
#[derive(Clone, PartialEq)]
struct Shown {
    pencil: FinishedPencil,
    /// Whether the project has gone on to something that is no pencil.
    stale: bool,
}

/// The section of the finished pencil.
#[component]
pub(crate) fn FinishedPencilSection() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    // It takes longer to make than a frame lasts: it follows when the hand that shapes the barrel pauses.
    let resting = RwSignal::new(project.get_untracked());
    let pause = Pause::new();
    Effect::new(move |first: Option<()>| {
        project.track();
        if first.is_some() {
            pause.then(move || resting.set(project.get_untracked()));
        }
    });
    let shown = Memo::new(move |last: Option<&Option<Shown>>| {
        let project = resting.read();
        match project.check_pencil(project.layout.barrel) {
            Ok(pencil) => Some(Shown {
                pencil,
                stale: false,
            }),
            Err(_) => last.cloned().flatten().map(|last| Shown {
                stale: true,
                ..last
            }),
        }
    });
    let pencil = Memo::new(move |_| shown.with(|shown| Some(shown.as_ref()?.pencil.clone())));
    let facts = Memo::new(move |_| pencil.with(|pencil| Some(pencil.as_ref()?.facts())));
    let drawing = Memo::new(move |_| {
        let paper = Paper {
            size: preference::paper(),
            landscape: false,
        };
        pencil.with(|pencil| Some(draw_pencil(pencil.as_ref()?, paper, bench.unit.get()).drawing))
    });
    let stale =
        Memo::new(move |_| shown.with(|shown| shown.as_ref().is_some_and(|shown| shown.stale)));
    let nothing = Memo::new(move |_| pencil.with(Option::is_none));
    let plain = RwSignal::new(false);
    let save_drawing = move |_| {
        if let Some(drawing) = drawing.get_untracked() {
            save_file(
                bench,
                "Finished pencil",
                "svg",
                &drawing.to_svg(&titled(bench, "Finished pencil")),
            );
        }
    };
    let save_facts = move |_| {
        if let Some(facts) = facts.get_untracked() {
            save_file(
                bench,
                "Finished pencil",
                "csv",
                &facts.csv(bench.unit.get_untracked()),
            );
        }
    };
    let rows = move || facts.with(|facts| facts.as_ref().map(|facts| rows(facts, bench)));
    view! {
        <section class="result finished" class:stale=move || stale.get() aria-labelledby="finished-title">
            <h2 id="finished-title">"Finished pencil"</h2>
            <p class="empty problem" role="status" hidden=move || !stale.get()>
                "From before the last change: something in the barrel, its finish, the run or the conditions is to be mended."
            </p>
            <p class="empty" hidden=move || !nothing.get()>"It is shown once there is a barrel that can be made."</p>
            <div hidden=move || nothing.get()><PencilPicture pencil plain/></div>
            <div class="finished-parts">
                <div class="scroll" tabindex="0" role="region" aria-label="Facts of the finished pencil" hidden=move || nothing.get()>
                    <table>
                        <thead>
                            <tr>
                                <th scope="col">"Fact"</th>
                                <th scope="col" class="figure">"As made"</th>
                                <th scope="col" class="figure">"Sharpened"</th>
                            </tr>
                        </thead>
                        <tbody>{live(rows)}</tbody>
                    </table>
                </div>
                <FinishForm/>
            </div>
            <div class="scroll" tabindex="0" role="region" aria-label="Drawing of the finished pencil" hidden=move || nothing.get()>
                <div class="sheet paper"><PaperDrawing drawing context="barrel"/></div>
            </div>
            <div class="actions">
                <button type="button" on:click=save_drawing disabled=move || nothing.get()>"Drawing as SVG"</button>
                <button type="button" on:click=save_facts disabled=move || nothing.get()>"Facts as CSV"</button>
            </div>
            <p class="hint">
                "Wood and lead weigh what the run says, the wood at the moisture of grooving; glue and the build of a dip are not weighed. "
                "How many lie in a tin is counted in rows that are all turned alike: other ways may take more."
            </p>
        </section>
    }
}

fn rows(facts: &PencilFacts, bench: Workbench) -> impl IntoView + use<> {
    let unit = bench.unit.get();
    let rows = facts.rows().into_iter().map(|fact| {
        view! {
            <tr>
                <th scope="row">{fact.name}</th>
                <td class="figure">{fact.text(fact.made, unit)}</td>
                <td class="figure">{fact.text(fact.sharpened, unit)}</td>
            </tr>
        }
    });
    rows.collect_view()
}
