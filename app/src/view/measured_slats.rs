//! Slats of a delivery as they were measured, and what they say of the lot.

use super::chart::{ChartPicture, Parts};
use super::drawing_sheet::SheetSize;
use super::keyed::keyed;
use super::live::live;
use crate::protocol::{SheetSizes, SizeWord};
use crate::workbench::{Delivery, JobState, Workbench, use_measured};
use leptos::html::{Input, Section, Textarea};
use leptos::prelude::*;
use leptos::task::spawn_local;
use solver::measured::MeasuredSize;
use solver::{Label, Sheet};
use wasm_bindgen_futures::JsFuture;

/// The longest list that is put in the field, bytes: a field of a million rows keeps the browser busy
/// for longer than reading them.
const LONGEST_SHOWN: usize = 200_000;

/// What the field shows of a list.
fn shown(list: &str) -> &str {
    if list.len() > LONGEST_SHOWN { "" } else { list }
}

/// A list that is pasted or opened, what it says, and a button that puts it to use.
#[component]
pub(crate) fn MeasuredSlats() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let delivery = expect_context::<Delivery>();
    let (picker, field) = (NodeRef::<Input>::new(), NodeRef::<Textarea>::new());
    let open = move |_| {
        let files = picker.get_untracked().and_then(|picker| picker.files());
        let Some(file) = files.and_then(|files| files.get(0)) else {
            return;
        };
        spawn_local(async move {
            let text = JsFuture::from(file.text()).await;
            match text.ok().and_then(|text| text.as_string()) {
                Some(text) => {
                    if let Some(field) = field.get_untracked() {
                        field.set_value(shown(&text));
                    }
                    delivery
                        .opened
                        .set((text.len() > LONGEST_SHOWN).then(|| file.name()));
                    delivery.list.set(text);
                }
                None => bench.tell("The file could not be read; try to open it again."),
            }
        });
    };
    let problems = move || {
        let told = match delivery.state().get() {
            JobState::Done(measured) => measured.problems,
            JobState::Refused(problems) => problems,
            JobState::Fault(reason) => vec![reason],
            JobState::Waiting | JobState::Running(_) | JobState::Stopped => Vec::new(),
        };
        let told = told.into_iter().map(|words| view! { <li>{words}</li> });
        view! { <ul class="empty problem">{told.collect_view()}</ul> }
    };
    let reading = move || {
        delivery.busy().get().then(|| {
            view! {
                <span>"Reading the list …"</span>
                <button type="button" on:click=move |_| delivery.stop()>"Stop reading"</button>
            }
        })
    };
    let measured = Memo::new(move |_| delivery.sizes());
    let put = move |_| {
        if let JobState::Done(measured) = delivery.state().get_untracked() {
            bench.change(|project| use_measured(project, &measured.lots));
            bench.tell("The measured spread and mean stand in the line. Undo brings back what stood there.");
        }
    };
    let nothing = move || measured.with(Vec::is_empty);
    let frame = NodeRef::<Section>::new();
    let size = SheetSize::new();
    Effect::new(move |_| {
        if let Some(frame) = frame.get() {
            size.measure(&frame);
        }
    });
    Effect::new(move |_| delivery.sheet.set(size.sheet(bench).map(SheetSizes::from)));
    let agreed_problem = Memo::new(move |_| {
        let problem = delivery.agreed().read().clone().err();
        problem.map(|problem| problem.message(bench.unit.get()))
    });
    let agreed_wrong = move || agreed_problem.with(Option::is_some);
    view! {
        <section node_ref=frame class="result measured" aria-labelledby="measured-title">
            <h2 id="measured-title">"Measured slats"</h2>
            <label for="measured-list">
                "Widths of a delivery, one to a row, with the thickness beside it where it was measured"
            </label>
            <textarea
                id="measured-list"
                rows="4"
                spellcheck="false"
                node_ref=field
                prop:value=delivery.list.with_untracked(|list| shown(list).to_owned())
                on:input=move |event| {
                    delivery.opened.set(None);
                    delivery.list.set(event_target_value(&event));
                }
            ></textarea>
            <div class="actions">
                <button
                    type="button"
                    on:click=move |_| {
                        if let Some(picker) = picker.get_untracked() {
                            picker.click();
                        }
                    }
                >
                    "Open a list"
                </button>
                <input node_ref=picker type="file" class="unseen" tabindex="-1" aria-hidden="true" accept=".csv,.txt,text/csv,text/plain" on:change=open/>
                <label class="joined">
                    "Agreed as ± "
                    <input
                        type="text"
                        class="short"
                        class:wrong=agreed_wrong
                        prop:value=move || delivery.agreed_text.get()
                        aria-invalid=move || if agreed_wrong() { "true" } else { "false" }
                        aria-describedby=move || agreed_wrong().then_some("agreed-message")
                        on:change=move |event| delivery.agreed_text.set(event_target_value(&event))
                    />
                    {live(move || bench.unit.get().label())}
                </label>
                <button type="button" disabled=nothing on:click=put>
                    "Use in place of the assumption"
                </button>
            </div>
            <p class="problem" id="agreed-message" role="status" hidden=move || !agreed_wrong()>
                {live(move || agreed_problem.get().unwrap_or_default())}
            </p>
            <div class="running" role="status">{live(reading)}</div>
            {live(move || delivery.opened.get().map(|name| {
                view! { <p class="empty">"“"{name}"” is too long to stand in the field; what is put there takes its place."</p> }
            }))}
            {live(problems)}
            {keyed(move || measured.get(), |size| view! { <Lot size/> })}
            <p class="hint">
                "The list is not kept with the project; what is used of it stands in the line. Without an agreed ± the limit is what the stock of the bottom slat may lack."
            </p>
        </section>
    }
}

/// What the measurements of one size say.
#[component]
fn Lot(size: SizeWord) -> impl IntoView {
    let delivery = expect_context::<Delivery>();
    let lot = Memo::new(move |_| delivery.lot(size));
    let rows = move || {
        let facts = lot.get()?.facts.into_iter().map(|fact| {
            view! { <tr><th scope="row">{fact.name}</th><td>{fact.value}</td></tr> }
        });
        Some(facts.collect_view())
    };
    let draw = move |_: &Sheet| {
        let chart = lot.get()?.chart;
        let mut paths = vec![
            ("grid", chart.grid),
            ("bars", chart.bars),
            ("steps", chart.curve),
            ("axes", chart.axes),
        ];
        paths.extend(chart.poles.into_iter().map(|pole| ("pole", pole)));
        Some(Parts {
            size: (chart.width, chart.height),
            paths,
            labels: chart.labels.into_iter().map(Label::from).collect(),
            description: chart.description,
        })
    };
    view! {
        <h3>{MeasuredSize::from(size).label()}</h3>
        <ChartPicture draw=Box::new(draw)/>
        <table>
            <thead class="unseen">
                <tr><th scope="col">"What"</th><th scope="col">"Of the lot"</th></tr>
            </thead>
            <tbody>{live(rows)}</tbody>
        </table>
    }
}
