//! The layout on the drawing beside one that was set aside, with what differs.

use super::drawing_sheet::SheetSize;
use super::drawn::{DrawnLabels, DrawnShapes};
use crate::workbench::{Shown, Workbench};
use leptos::html::Div;
use leptos::prelude::*;
use solver::{ComparedLine, Drawing, Laid, Part, Problem, compare, draw_pair, lay_out};

/// What the two are called, first the one that was set aside.
const NAMES: [&str; 2] = ["Set aside", "On the drawing"];

/// What was set aside, as it is laid out, or what stands in its way.
type Kept = Option<Result<Shown, Vec<Problem>>>;

/// Two layouts side by side.
#[component]
pub(crate) fn Comparison() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let aside = Memo::new(move |_| bench.project().read().set_aside.clone());
    let kept: Memo<Kept> = Memo::new(move |_| {
        let draft = aside.get()?;
        Some(draft.check_layout().map(|parts| Shown {
            layout: lay_out(&parts.setup()),
            parts,
            stale: false,
        }))
    });
    let is_laid = Memo::new(move |_| kept.with(|kept| matches!(kept, Some(Ok(_)))));
    let nothing_laid = Memo::new(move |_| {
        let shown = bench.layout().read();
        shown.as_ref().is_none_or(|shown| shown.stale)
    });
    let is_aside = Memo::new(move |_| aside.with(Option::is_some));
    let problems = move || {
        let kept = kept.read();
        let Some(Err(problems)) = kept.as_ref() else {
            return None;
        };
        let unit = bench.unit.get();
        let problems = problems.iter().map(|problem| {
            let message = problem.problem.message(unit);
            view! { <li>{message}</li> }
        });
        let problems = problems.collect_view();
        Some(view! {
            <p class="empty problem">"What was set aside cannot be laid out:"</p>
            <ul>{problems}</ul>
        })
    };
    let set_aside_label = move || {
        if is_aside.get() {
            "Set this one aside instead"
        } else {
            "Set this layout aside"
        }
    };
    view! {
        <section class="result comparison" aria-labelledby="comparison-title">
            <h2 id="comparison-title">"Side by side with a layout set aside"</h2>
            <Show when=move || !is_aside.get()>
                <p class="empty">
                    "Set the layout on the drawing aside, then change it or lay out another: both are shown here, with what differs."
                </p>
            </Show>
            {problems}
            <Show when=move || is_laid.get()>
                <Drawings kept/>
                <Differences kept/>
            </Show>
            <div class="actions">
                <button
                    type="button"
                    disabled=nothing_laid
                    on:click=move |_| bench.change(solver::ProjectDraft::set_layout_aside)
                >
                    {set_aside_label}
                </button>
                <Show when=move || is_laid.get()>
                    <button type="button" on:click=move |_| bench.change(solver::ProjectDraft::change_places)>
                        "Let them change places"
                    </button>
                </Show>
                <Show when=move || is_aside.get()>
                    <button type="button" on:click=move |_| bench.change(|project| project.set_aside = None)>
                        "Take it away"
                    </button>
                </Show>
                <Show when=move || nothing_laid.get()>
                    <span class="hint">"Only what can be laid out can be set aside."</span>
                </Show>
            </div>
        </section>
    }
}

/// Hands both layouts to a reader, when there are two.
fn with_both<T>(
    bench: Workbench,
    kept: Memo<Kept>,
    read: impl FnOnce(Laid<'_>, Laid<'_>) -> T,
) -> Option<T> {
    let kept = kept.read();
    let shown = bench.layout().read();
    let (Some(Ok(first)), Some(second)) = (kept.as_ref(), shown.as_ref()) else {
        return None;
    };
    Some(read(first.laid(), second.laid()))
}

/// Both sandwiches at one scale.
#[component]
fn Drawings(kept: Memo<Kept>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let size = SheetSize::new();
    let frame = NodeRef::<Div>::new();
    Effect::new(move |_| {
        if let Some(frame) = frame.get() {
            size.watch(&frame);
        }
    });
    let pair = Memo::new(move |_| {
        let sheet = size.sheet(bench)?;
        with_both(bench, kept, |first, second| {
            draw_pair([first, second], &sheet)
        })
    });
    let counts = Memo::new(move |_| {
        with_both(bench, kept, |first, second| {
            [first.layout.pencils(), second.layout.pencils()]
        })
    });
    let figures = [0, 1].map(|at| {
        let drawing =
            Memo::new(move |_| pair.with(|pair| pair.as_ref().map(|pair| pair[at].clone())));
        let count = move || {
            let count = counts.get()?[at];
            let noun = if count == 1 { "pencil" } else { "pencils" };
            Some(format!(", {count} {noun}"))
        };
        view! {
            <figure>
                <figcaption><strong>{NAMES[at]}</strong>{count}</figcaption>
                <Picture drawing name=NAMES[at]/>
            </figure>
        }
    });
    view! { <div class="pair" node_ref=frame>{figures.into_iter().collect_view()}</div> }
}

#[component]
fn Picture(drawing: Memo<Option<Drawing>>, name: &'static str) -> impl IntoView {
    let view_box = move || {
        let drawing = drawing.read();
        let drawing = drawing.as_ref()?;
        Some(format!("0 0 {:.0} {:.1}", drawing.width, drawing.height))
    };
    let description = move || {
        let drawing = drawing.read();
        let words = drawing.as_ref().map_or("", |drawing| &drawing.description);
        format!("{name}: {words}")
    };
    let labels = Memo::new(move |_| {
        drawing.with(|drawing| {
            let labels = drawing.as_ref().map(|drawing| drawing.labels.clone());
            labels.unwrap_or_default()
        })
    });
    // Hatching is found by the name of the large drawing, which stands above.
    view! {
        <div class="sheet">
            <svg role="img" viewBox=view_box aria-label=description>
                <DrawnShapes drawing context="drawing" lit=None/>
                <DrawnLabels labels/>
            </svg>
        </div>
    }
}

/// The lines of the comparison as a table; those in which both are alike only when asked for.
#[component]
fn Differences(kept: Memo<Kept>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let with_alike = RwSignal::new(false);
    let lines = Memo::new(move |_| with_both(bench, kept, compare).unwrap_or_default());
    let shown = Memo::new(move |_| {
        let (unit, all) = (bench.unit.get(), with_alike.get());
        lines.with(|lines| {
            let shown = lines.iter().filter(|line| all || line.differs(unit));
            shown
                .map(|line| (line.part, line.label))
                .collect::<Vec<_>>()
        })
    });
    let parts = Memo::new(move |_| {
        shown.with(|shown| {
            let mut parts: Vec<Part> = shown.iter().map(|(part, _)| *part).collect();
            parts.dedup();
            parts
        })
    });
    let body = move |part: Part| {
        let labels = Memo::new(move |_| {
            shown.with(|shown| {
                let of_part = shown.iter().filter(|(other, _)| *other == part);
                of_part.map(|(_, label)| *label).collect::<Vec<_>>()
            })
        });
        view! {
            <tbody>
                <tr><th scope="rowgroup" class="part" colspan="4">{part.label()}</th></tr>
                <For
                    each=move || labels.get()
                    key=|label| *label
                    children=move |label| view! { <DifferenceRow lines part label/> }
                />
            </tbody>
        }
    };
    view! {
        <label class="choice">
            <input
                type="checkbox"
                prop:checked=with_alike
                on:change=move |event| with_alike.set(event_target_checked(&event))
            />
            "Show what is alike as well"
        </label>
        <Show
            when=move || !shown.with(Vec::is_empty)
            fallback=|| view! { <p class="empty">"Nothing differs that a shop could measure."</p> }
        >
            <div class="scroll" tabindex="0" role="group" aria-label="What differs">
                <table>
                    <thead>
                        <tr>
                            <th scope="col"><span class="unseen">"What is compared"</span></th>
                            <th scope="col" class="figure">{NAMES[0]}</th>
                            <th scope="col" class="figure">{NAMES[1]}</th>
                            <th scope="col" class="figure">"Change"</th>
                        </tr>
                    </thead>
                    <For each=move || parts.get() key=|part| *part children=body/>
                </table>
            </div>
        </Show>
    }
}

#[component]
fn DifferenceRow(lines: Memo<Vec<ComparedLine>>, part: Part, label: &'static str) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let line = Memo::new(move |_| {
        lines.with(|lines| {
            let mut lines = lines.iter();
            lines
                .find(|line| (line.part, line.label) == (part, label))
                .cloned()
        })
    });
    let text = move |at: usize| {
        let line = line.read();
        Some(line.as_ref()?.texts(bench.unit.get())[at].clone())
    };
    let change = move || {
        let line = line.read();
        let (line, unit) = (line.as_ref()?, bench.unit.get());
        let verdict = line.verdict(unit).map(solver::Verdict::label);
        let words = match (line.change(unit), verdict) {
            (Some(change), Some(verdict)) => format!("{change}, {verdict}"),
            (Some(change), None) => change,
            (None, Some(verdict)) => verdict.to_owned(),
            (None, None) if line.differs(unit) => "differs".to_owned(),
            (None, None) => "alike".to_owned(),
        };
        Some(words)
    };
    let verdict = move |wanted| {
        let line = line.read();
        let line = line.as_ref();
        line.and_then(|line| line.verdict(bench.unit.get())) == Some(wanted)
    };
    view! {
        <tr
            class:better=move || verdict(solver::Verdict::Better)
            class:worse=move || verdict(solver::Verdict::Worse)
        >
            <th scope="row">{label}</th>
            <td class="figure">{move || text(0)}</td>
            <td class="figure strong">{move || text(1)}</td>
            <td class="figure change">{change}</td>
        </tr>
    }
}
