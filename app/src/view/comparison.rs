//! The layout on the drawing beside one that was set aside, with what differs.

use super::drawing_sheet::SheetSize;
use super::drawn::{DrawnLabels, DrawnShapes, labels_of};
use super::live::live;
use crate::workbench::Workbench;
use leptos::html::Div;
use leptos::prelude::*;
use solver::{
    ComparedLine, Drawing, Laid, Layout, LayoutParts, LengthUnit, Part, Problem, ProjectDraft,
    Verdict, compare, draw_pair, lay_out,
};

/// What the two are called, first the one that was set aside.
const NAMES: [&str; 2] = ["Set aside", "On the drawing"];

/// What was set aside, as it is laid out, or what stands in its way.
type Kept = Option<Result<(LayoutParts, Layout), Vec<Problem>>>;

/// Two layouts side by side.
#[component]
pub(crate) fn Comparison() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let aside = Memo::new(move |_| bench.project().read().set_aside.clone());
    let kept: Memo<Kept> = Memo::new(move |_| {
        let draft = aside.get()?;
        Some(draft.check_layout().map(|parts| {
            let layout = lay_out(&parts.setup());
            (parts, layout)
        }))
    });
    let nothing_laid = Memo::new(move |_| {
        let shown = bench.layout().read();
        shown.as_ref().is_none_or(|shown| shown.stale)
    });
    // Whether something is set aside, and whether it can be laid out.
    let state = Memo::new(move |_| kept.with(|kept| kept.as_ref().map(Result::is_ok)));
    let body = move || {
        match state.get() {
        None => view! {
            <p class="empty">
                "Set the layout on the drawing aside, then change it or lay out another: both are shown here, with what differs."
            </p>
        }
        .into_any(),
        Some(false) => view! {
            <p class="empty problem">"What was set aside cannot be laid out:"</p>
            <ul>{live(move || problems(&kept.read(), bench.unit.get()))}</ul>
        }
        .into_any(),
        Some(true) => view! { <Drawings kept/> <Differences kept/> }.into_any(),
    }
    };
    let set_aside_label = move || match state.get() {
        None => "Set this layout aside",
        Some(_) => "Set this one aside instead",
    };
    view! {
        <section class="result comparison" aria-labelledby="comparison-title">
            <h2 id="comparison-title">"Side by side with a layout set aside"</h2>
            {live(body)}
            <div class="actions">
                <button
                    type="button"
                    disabled=nothing_laid
                    on:click=move |_| bench.change(ProjectDraft::set_layout_aside)
                >
                    {live(set_aside_label)}
                </button>
                <button
                    type="button"
                    hidden=move || state.get() != Some(true)
                    on:click=move |_| bench.change(ProjectDraft::change_places)
                >
                    "Let them change places"
                </button>
                <button
                    type="button"
                    hidden=move || state.get().is_none()
                    on:click=move |_| bench.change(|project| project.set_aside = None)
                >
                    "Take it away"
                </button>
                <span class="hint" hidden=move || !nothing_laid.get()>
                    "Only what can be laid out can be set aside."
                </span>
            </div>
        </section>
    }
}

/// What stands in the way of laying out what was set aside.
fn problems(kept: &Kept, unit: LengthUnit) -> impl IntoView + use<> {
    let problems = match kept {
        Some(Err(problems)) => problems.as_slice(),
        _ => &[],
    };
    let messages = problems.iter().map(|problem| problem.problem.message(unit));
    messages
        .map(|message| view! { <li>{message}</li> })
        .collect_view()
}

/// Hands both layouts to a reader, when there are two.
fn with_both<T>(
    bench: Workbench,
    kept: Memo<Kept>,
    read: impl FnOnce(Laid<'_>, Laid<'_>) -> T,
) -> Option<T> {
    let kept = kept.read();
    let shown = bench.layout().read();
    let (Some(Ok((parts, layout))), Some(second)) = (kept.as_ref(), shown.as_ref()) else {
        return None;
    };
    Some(read(Laid { parts, layout }, second.laid()))
}

/// Both sandwiches at one scale.
#[component]
fn Drawings(kept: Memo<Kept>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let size = SheetSize::new();
    let frame = NodeRef::<Div>::new();
    size.watch(frame);
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
                <figcaption><strong>{NAMES[at]}</strong>{live(count)}</figcaption>
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
    // Hatching is found by the name of the large drawing, which stands above.
    view! {
        <div class="sheet">
            <svg role="img" viewBox=view_box aria-label=description>
                <DrawnShapes drawing context="drawing" lit=None/>
                <DrawnLabels labels=labels_of(drawing)/>
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
    let rows = move || {
        let unit = bench.unit.get();
        let lines = lines.read();
        let mut part = None;
        let wanted = lines
            .iter()
            .filter(|line| with_alike.get() || line.differs(unit));
        let rows = wanted.map(|line| {
            let begins = part.replace(line.part) != Some(line.part);
            let heading = begins.then_some(line.part);
            difference(line, heading, unit)
        });
        rows.collect_view()
    };
    let alike =
        move || lines.with(|lines| lines.iter().all(|line| !line.differs(bench.unit.get())));
    view! {
        <label class="choice">
            <input
                type="checkbox"
                prop:checked=with_alike
                on:change=move |event| with_alike.set(event_target_checked(&event))
            />
            "Show what is alike as well"
        </label>
        <p class="empty" hidden=move || !alike()>"Nothing differs that a shop could measure."</p>
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
                <tbody>{live(rows)}</tbody>
            </table>
        </div>
    }
}

/// A line, under the heading of its part where it is the first of it.
pub(crate) fn difference(
    line: &ComparedLine,
    heading: Option<Part>,
    unit: LengthUnit,
) -> impl IntoView + use<> {
    let [first, second] = line.texts(unit);
    let verdict = line.verdict(unit);
    let mut words = Vec::from_iter(line.change(unit));
    words.extend(verdict.map(|verdict| verdict.label().to_owned()));
    if words.is_empty() {
        let word = if line.differs(unit) {
            "differs"
        } else {
            "alike"
        };
        words.push(word.to_owned());
    }
    let heading = heading.map(|part| {
        view! { <tr><th scope="rowgroup" class="part" colspan="4">{part.label()}</th></tr> }
    });
    view! {
        {heading}
        <tr class=verdict.map(Verdict::label)>
            <th scope="row">{line.label}</th>
            <td class="figure">{first}</td>
            <td class="figure strong">{second}</td>
            <td class="figure change">{words.join(", ")}</td>
        </tr>
    }
}
