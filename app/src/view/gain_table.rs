//! The nearest change of the barrel that gains a pencil, or keeps the count on a cheaper stock.

use super::answered::answered;
use super::live::live;
use crate::protocol::{GainRow, Progress};
use crate::workbench::{Gains, Slot, Workbench};
use leptos::prelude::*;
use solver::{Field, Id, Typed, Way, figure};

/// What the three limits are of.
const LIMITS: [(&str, &str); 3] = [
    ("Size, by at most", "gain-size"),
    ("Corner radius, by at most", "gain-corner"),
    ("Coat, by at most", "gain-coat"),
];

/// The limits, the search, and what it found, each with a button that uses it.
#[component]
pub(crate) fn GainTable() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let gains = expect_context::<Gains>();
    let busy = move || gains.busy().read().is_some();
    let progress = move || match gains.busy().get()? {
        Some(Progress::Laid { done, of }) => Some(format!("{done} of {of} stocks are done …")),
        _ => Some("Looking …".to_owned()),
    };
    let show = move |rows: Vec<GainRow>| rows_of(bench, rows);
    let body = move || answered(gains.state().get(), None, show);
    let fields = LIMITS
        .into_iter()
        .zip(gains.limits)
        .map(|((label, id), limit)| view! { <LimitField label id limit/> });
    let ask = move |_| gains.ask();
    view! {
        <section class="result gains" aria-labelledby="gains-title">
            <h2 id="gains-title">"Best near this"</h2>
            <p class="empty">"The least change of the barrel that gives one more pencil on a stock, or as many as now on a cheaper one."</p>
            <div class="limits">{fields.collect_view()}</div>
            <div class="actions">
                <button type="button" hidden=busy on:click=ask>"Look for it"</button>
                <button type="button" hidden=move || !busy() on:click=move |_| gains.stop()>"Stop"</button>
                <span role="status">{live(progress)}</span>
            </div>
            {live(body)}
        </section>
    }
}

#[component]
fn LimitField(label: &'static str, id: &'static str, limit: RwSignal<Typed>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let unit = bench.unit;
    let field = Field::GainReach;
    let typing = RwSignal::new(None::<String>);
    let shown = move || {
        typing
            .get()
            .unwrap_or_else(|| limit.read().shown(field, unit.get()))
    };
    let problem = move || {
        let read = limit.read().read(field);
        read.err().map(|problem| problem.message(unit.get()))
    };
    let wrong = move || problem().is_some();
    let told = format!("{id}-problem");
    let described = told.clone();
    let on_input = move |event| {
        let text = event_target_value(&event);
        limit.set(Typed::new(&text, field, unit.get_untracked()));
        typing.set(Some(text));
    };
    view! {
        <div class="field row">
            <label for=id>{label}<span class="unit">{live(move || format!(", {}", unit.get().label()))}</span></label>
            <input
                type="text"
                id=id
                class="number"
                class:wrong=wrong
                inputmode="decimal"
                autocomplete="off"
                prop:value=shown
                aria-invalid=move || if wrong() { "true" } else { "false" }
                aria-describedby=move || wrong().then(|| described.clone())
                on:input=on_input
                on:blur=move |_| typing.set(None)
            />
            <p class="problem" id=told role="status" hidden=move || !wrong()>{live(problem)}</p>
        </div>
    }
}

fn rows_of(bench: Workbench, rows: Vec<GainRow>) -> AnyView {
    if rows.is_empty() {
        return view! {
            <p class="empty">"Nothing within these limits gains a pencil, or keeps the count on a cheaper stock."</p>
        }
        .into_any();
    }
    let rows = rows.into_iter().map(|row| view! { <Row bench row/> });
    view! {
        <div class="scroll" tabindex="0" role="group" aria-label="Nearest gains">
            <table>
                <thead>
                    <tr>
                        <th scope="col">"Stock"</th>
                        <th scope="col"><span class="unseen">"Use it"</span></th>
                        <th scope="col">"Change"</th>
                        <th scope="col">"Gain"</th>
                        <th scope="col" class="figure">"Price a gross"</th>
                        <th scope="col">"How sure"</th>
                    </tr>
                </thead>
                <tbody>{rows.collect_view()}</tbody>
            </table>
        </div>
    }
    .into_any()
}

#[component]
fn Row(bench: Workbench, row: GainRow) -> impl IntoView {
    let unit = bench.unit.get_untracked();
    let length = |millimetres: f64| figure::length_with_unit(millimetres, unit);
    let steps = row.steps.iter().filter_map(|step| {
        let field = *Field::ALL.get(step.field as usize)?;
        let (from, to) = (length(step.from_mm), length(step.to_mm));
        Some(format!("{} {from} → {to}", field.spec().label))
    });
    let change = steps.collect::<Vec<_>>().join(", ");
    let gain = if row.cheaper {
        format!("{} pencils, as now, from cheaper slats", row.pencils_after)
    } else {
        format!("{} pencils, not {}", row.pencils_after, row.pencils_before)
    };
    let money = |price: Option<f64>| {
        price.map_or_else(|| figure::NO_FIGURE.to_owned(), figure::money_rounded)
    };
    let price = format!("{} → {}", money(row.price_before), money(row.price_after));
    let way: Way = row.way.into();
    let (slat, steps) = (Id(row.slat), row.steps.clone());
    let used = move |_| {
        bench.change(|project| {
            let barrel = project.layout.barrel;
            for step in &steps {
                if let Some(field) = Field::ALL.get(step.field as usize) {
                    Slot::Barrel(barrel, *field).set(project, Typed::Number(step.to_mm));
                }
            }
            if project.slat_place(slat).is_some() {
                (project.layout.top, project.layout.bottom) = (slat, slat);
                project.layout.way = way;
            }
        });
        bench.tell("The barrel and its layout are changed. Undo brings back what they were.");
    };
    let spoken = format!("Use this: {change}");
    view! {
        <tr>
            <th scope="row">{row.slat_name}<br/><span class="here">{way.label()}</span></th>
            <td class="tools"><button type="button" aria-label=spoken on:click=used>"Use this"</button></td>
            <td>{change}</td>
            <td class="strong">{gain}</td>
            <td class="figure">{price}</td>
            <td class="reason">{row.proof}</td>
        </tr>
    }
}
