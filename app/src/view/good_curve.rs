//! How many side by side, and how far apart, give the most good pencils for the money.

use super::live::live;
use crate::protocol::{Curve, CurvePoint, Outlook, Progress};
use crate::workbench::{JobState, Searches, Workbench};
use leptos::prelude::*;
use solver::{Field, LengthUnit, Typed, figure};

/// Good pencils by count and by pitch, with the best of each.
#[component]
pub(crate) fn GoodCurves() -> impl IntoView {
    let question = expect_context::<Searches>().outlook;
    let body = move || match question.state().get() {
        JobState::Waiting | JobState::Running(_) => ().into_any(),
        JobState::Done(outlook) => {
            let Outlook {
                by_count, by_pitch, ..
            } = outlook;
            view! {
                <CurveTable curve=by_count by_count=true/>
                <CurveTable curve=by_pitch by_count=false/>
            }
            .into_any()
        }
        JobState::Refused(problems) => {
            let problems = problems
                .into_iter()
                .map(|problem| view! { <li>{problem}</li> });
            view! { <ul class="empty">{problems.collect_view()}</ul> }.into_any()
        }
        JobState::Stopped => {
            view! { <p class="empty">"Stopped. The next change starts it again."</p> }.into_any()
        }
        JobState::Fault(reason) => view! { <p class="empty problem">{reason}</p> }.into_any(),
    };
    let running = move || {
        question.busy().get().map(|progress| {
            let words = match progress {
                Some(Progress::Laid { done, of }) => {
                    format!("{done} of {of} rounds of dice thrown …")
                }
                _ => "Throwing the dice for every way …".to_owned(),
            };
            view! {
                <span>{words}</span>
                <button type="button" on:click=move |_| question.stop()>"Stop comparing"</button>
            }
        })
    };
    view! {
        <section class="result curves" aria-labelledby="curves-title">
            <h2 id="curves-title">"Most good pencils for the money"</h2>
            <div class="running" role="status">{live(running)}</div>
            {live(body)}
        </section>
    }
}

#[component]
fn CurveTable(curve: Curve, by_count: bool) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let unit = bench.unit;
    let title = if by_count {
        "By how many lie side by side"
    } else {
        "By their pitch"
    };
    let curve = StoredValue::new(curve);
    let rows = move || {
        curve.with_value(|curve| {
            let rows = (0_u32..).zip(&curve.points);
            rows.map(|(at, point)| {
                let (best, laid) = (curve.best == Some(at), curve.laid == Some(at));
                row(bench, *point, by_count, (best, laid), unit.get())
            })
            .collect_view()
        })
    };
    view! {
        <div class="scroll" tabindex="0" role="group" aria-label=title>
            <table>
                <caption>{title}</caption>
                <thead>
                    <tr>
                        <th scope="col" class="figure">"Side by side"</th>
                        <th scope="col" class="figure">"Pitch"</th>
                        <th scope="col" class="figure">"Edge"</th>
                        <th scope="col" class="figure">"Good a sandwich"</th>
                        <th scope="col" class="figure">"Money a gross"</th>
                        <th scope="col">"Verdict"</th>
                        <th scope="col"><span class="unseen">"Lay out"</span></th>
                    </tr>
                </thead>
                <tbody>{live(rows)}</tbody>
            </table>
        </div>
    }
}

fn row(
    bench: Workbench,
    point: CurvePoint,
    by_count: bool,
    (best, laid): (bool, bool),
    unit: LengthUnit,
) -> impl IntoView + use<> {
    let verdict = match (best, point.ties) {
        (true, _) => "best",
        (false, true) => "as good, as far as the dice tell",
        (false, false) => "",
    };
    let [good, error] = [(point.good, 3), (point.error, 4)]
        .map(|(number, decimals)| figure::plain(number, decimals));
    let money = point
        .gross_price
        .map_or_else(|| figure::NO_FIGURE.to_owned(), figure::money_rounded);
    let lay = move |_| {
        bench.change(|project| {
            if by_count {
                project.rules.most = Typed::Number(f64::from(point.across));
                // The dice have put the edge allowance aside.
                let allowed = project.rules.edge.read(Field::EdgeAllowance);
                if allowed.is_ok_and(|allowed| allowed > point.edge_mm) {
                    project.rules.edge = Typed::Number(point.edge_mm);
                }
            } else {
                project.rules.spacing = solver::Spacing::Given;
                project.rules.pitch = Typed::Number(point.pitch_mm);
            }
        });
    };
    let tools = if laid {
        view! { <span class="here">"On the drawing"</span> }.into_any()
    } else {
        let what = if by_count {
            Field::MostAcross
        } else {
            Field::Pitch
        };
        let spoken = format!("Lay out: {}", what.spec().label);
        view! { <button type="button" aria-label=spoken on:click=lay>"Lay out"</button> }.into_any()
    };
    view! {
        <tr class:chosen=laid>
            <td class="figure">{point.across}</td>
            <td class="figure">{figure::length_with_unit(point.pitch_mm, unit)}</td>
            <td class="figure">{figure::length_with_unit(point.edge_mm, unit)}</td>
            <td class="figure strong">{format!("{good} ± {error}")}</td>
            <td class="figure">{money}</td>
            <td>{verdict}</td>
            <td class="tools">{tools}</td>
        </tr>
    }
}
