//! Slats of a delivery as they were measured, and what they say of the lot.

use super::chart::{ChartPicture, Parts};
use super::live::live;
use crate::workbench::{Delivery, Measured, Workbench, stock, use_measured};
use leptos::html::Input;
use leptos::prelude::*;
use leptos::task::spawn_local;
use solver::measured::{
    Confidence, Interval, Limits, MeasuredSize, Needed, Normality, Outliers, Sample,
};
use solver::{Length, LengthUnit, Sheet, draw_histogram, figure};
use wasm_bindgen_futures::JsFuture;

/// A list that is pasted or opened, what it says, and a button that puts it to use.
#[component]
pub(crate) fn MeasuredSlats() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let delivery = expect_context::<Delivery>();
    let measured = delivery.measured();
    let picker = NodeRef::<Input>::new();
    let open = move |_| {
        let files = picker.get_untracked().and_then(|picker| picker.files());
        let Some(file) = files.and_then(|files| files.get(0)) else {
            return;
        };
        spawn_local(async move {
            let text = JsFuture::from(file.text()).await;
            match text.ok().and_then(|text| text.as_string()) {
                Some(text) => delivery.text.set(text),
                None => bench.tell("The file could not be read; try to open it again."),
            }
        });
    };
    let problems = move || {
        let measured = measured.read();
        let told = match measured.as_ref()? {
            Err(problem) => vec![format!("Nothing was read: {problem}")],
            Ok(Measured { readings, .. }) => {
                let unit = bench.unit.get();
                let mut told: Vec<String> =
                    readings.bad.iter().map(|cell| cell.message(unit)).collect();
                if readings.more_bad > 0 {
                    let more = figure::count(readings.more_bad as u64);
                    told.push(format!("{more} more cells were left out"));
                }
                told
            }
        };
        let told = told.into_iter().map(|words| view! { <li>{words}</li> });
        Some(view! { <ul class="empty problem">{told.collect_view()}</ul> })
    };
    let is_measured = move |size| {
        Memo::new(move |_| {
            let measured = measured.read();
            matches!(measured.as_ref(), Some(Ok(measured)) if measured.sample(size).is_some())
        })
    };
    let lots = MeasuredSize::ALL.map(|size| (size, is_measured(size)));
    let put = move |_| {
        let read = measured.get_untracked();
        if let Some(Ok(measured)) = read {
            bench.change(|project| use_measured(project, &measured));
            bench.tell("The measured spread and mean stand in the line. Undo brings back what stood there.");
        }
    };
    let sizes = move || {
        lots.into_iter()
            .filter(|(_, is_measured)| is_measured.get())
            .map(|(size, _)| view! { <Lot size/> })
            .collect_view()
    };
    let nothing = move || lots.iter().all(|(_, is_measured)| !is_measured.get());
    let agreed_problem = Memo::new(move |_| {
        let problem = delivery.agreed().read().clone().err();
        problem.map(|problem| problem.message(bench.unit.get()))
    });
    let agreed_wrong = move || agreed_problem.with(Option::is_some);
    view! {
        <section class="result measured" aria-labelledby="measured-title">
            <h2 id="measured-title">"Measured slats"</h2>
            <label for="measured-list">
                "Widths of a delivery, one to a row, with the thickness beside it where it was measured"
            </label>
            <textarea
                id="measured-list"
                rows="4"
                spellcheck="false"
                prop:value=move || delivery.text.get()
                on:input=move |event| delivery.text.set(event_target_value(&event))
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
            {live(problems)}
            {live(sizes)}
            <p class="hint">
                "The list is not kept with the project; what is used of it stands in the line. Without an agreed ± the limit is what the stock of the bottom slat may lack."
            </p>
        </section>
    }
}

/// What the measurements of one size say.
#[component]
fn Lot(size: MeasuredSize) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let delivery = expect_context::<Delivery>();
    let measured = delivery.measured();
    let limits = Memo::new(move |_| {
        let project = bench.project().read();
        let agreed = delivery.agreed().get().ok()?;
        size.limits(&stock(&project)?, agreed)
    });
    let rows = move || {
        let measured = measured.read();
        let Some(Ok(measured)) = measured.as_ref() else {
            return None;
        };
        let facts = facts(
            measured.sample(size)?,
            limits.get().as_ref(),
            bench.unit.get(),
        );
        let rows = facts.into_iter().map(|(name, value)| {
            view! { <tr><th scope="row">{name}</th><td>{value}</td></tr> }
        });
        Some(rows.collect_view())
    };
    let draw = move |sheet: &Sheet| {
        let measured = measured.read();
        let Some(Ok(measured)) = measured.as_ref() else {
            return None;
        };
        let limits = limits.get();
        let chart = draw_histogram(measured.sample(size)?, limits.as_ref(), size.label(), sheet);
        let mut paths = vec![
            ("grid", chart.grid),
            ("bars", chart.bars),
            ("steps", chart.curve),
            ("axes", chart.axes),
        ];
        let mut labels = chart.labels;
        for limit in chart.limits {
            paths.push(("pole", limit.line));
            labels.extend(limit.label);
        }
        Some(Parts {
            size: (chart.width, chart.height),
            paths,
            labels,
            description: chart.description,
        })
    };
    view! {
        <h3>{size.label()}</h3>
        <ChartPicture draw=Box::new(draw)/>
        <table>
            <thead class="unseen">
                <tr><th scope="col">"What"</th><th scope="col">"Of the lot"</th></tr>
            </thead>
            <tbody>{live(rows)}</tbody>
        </table>
    }
}

/// What is told of a sample, a line each.
fn facts(
    sample: &Sample,
    limits: Option<&Limits>,
    unit: LengthUnit,
) -> Vec<(&'static str, String)> {
    let confidence = Confidence::USUAL;
    let length = |length: Length| {
        let number = figure::length_fine(length.in_millimetres(), unit);
        format!("{number}{}{}", figure::THIN_SPACE, unit.label())
    };
    let between = |bounds: Interval<Length>| {
        format!(
            "{} to {} in 95 of 100 lots",
            length(bounds.from),
            length(bounds.to)
        )
    };
    let mut facts = vec![
        ("Measured", figure::count(sample.count() as u64)),
        (
            "Mean",
            match sample.mean_interval(confidence) {
                Ok(bounds) => format!("{}; {}", length(sample.mean()), between(bounds)),
                Err(untold) => format!("{}; {untold}", length(sample.mean())),
            },
        ),
        (
            "Standard deviation",
            match (sample.deviation(), sample.deviation_interval(confidence)) {
                (Ok(deviation), Ok(bounds)) => {
                    format!("{}; {}", length(deviation), between(bounds))
                }
                (Err(untold), _) | (_, Err(untold)) => untold.to_string(),
            },
        ),
        (
            "Least, median, greatest",
            format!(
                "{}, {}, {}",
                length(sample.least()),
                length(sample.median()),
                length(sample.greatest())
            ),
        ),
        ("Spread", Normality::label(sample.normality()).to_owned()),
        (
            "Far out",
            match sample.outliers() {
                Outliers::TooFew => "too few measurements to tell".to_owned(),
                Outliers::Alike => "half of them are the same, so it cannot be told".to_owned(),
                Outliers::Told {
                    below: 0, above: 0, ..
                } => "none".to_owned(),
                Outliers::Told {
                    fence,
                    below,
                    above,
                } => format!(
                    "{} below {}, {} above {}: look at those slats again",
                    figure::count(below as u64),
                    length(fence.from),
                    figure::count(above as u64),
                    length(fence.to)
                ),
            },
        ),
    ];
    if let Some(limits) = limits {
        let outside = sample.outside(limits);
        let expected = match outside.expected {
            Ok(share) => format!("; {} of a normal lot", figure::ratio_fine(share)),
            Err(_) => String::new(),
        };
        facts.push((
            "Outside the limits",
            format!("{}{expected}", figure::ratio_fine(outside.counted)),
        ));
        if let Ok(capability) = sample.capability(limits, confidence) {
            let ratio = |ratio: solver::measured::Ratio| {
                let [value, from, to] = [ratio.value, ratio.interval.from, ratio.interval.to]
                    .map(|number| figure::plain(number, 2));
                format!("{value}; {from} to {to} in 95 of 100 lots")
            };
            facts.extend(capability.cp.map(|cp| ("Cp", ratio(cp))));
            facts.push(("Cpk", ratio(capability.cpk)));
        }
    }
    let wanted = Needed::WANTED_OF_MEAN;
    let needed = match sample.needed_for_mean(wanted, confidence) {
        Ok(Needed::Enough) => "none".to_owned(),
        Ok(Needed::More(more)) => figure::count(more as u64),
        Ok(Needed::OutOfReach) => "more than a million".to_owned(),
        Err(untold) => untold.to_string(),
    };
    let needed = format!("{needed}, for a mean within ± {}", length(wanted));
    facts.push(("More to measure", needed));
    facts
}
