//! How many side by side, and how far apart, give the most good pencils for the money.

use super::answered::answered;
use super::chart::{ChartPicture, Parts};
use super::live::live;
use crate::protocol::{Curve, Outlook, Progress};
use crate::workbench::{Searches, Workbench};
use leptos::prelude::*;
use solver::tolerance::{Choice, Varied};
use solver::{Field, Length, LengthUnit, ProjectDraft, Sheet, Spacing, Typed, draw_curve, figure};

/// Good pencils by count and by pitch, with the best of each.
#[component]
pub(crate) fn GoodCurves() -> impl IntoView {
    let question = expect_context::<Searches>().outlook;
    let show = |outlook: Outlook| {
        view! {
            <CurveTable curve=outlook.by_count varied=Varied::Count/>
            <CurveTable curve=outlook.by_pitch varied=Varied::Pitch/>
        }
        .into_any()
    };
    let body = move || answered(question.state().get(), None, show);
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
fn CurveTable(curve: Curve, varied: Varied) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let unit = bench.unit;
    let title = match varied {
        Varied::Count => "By how many lie side by side",
        Varied::Pitch => "By their pitch",
    };
    let choices = StoredValue::new(curve.choices());
    let rows = move || {
        choices.with_value(|choices| {
            let rows = choices.list.iter().enumerate();
            rows.map(|(at, choice)| {
                let (best, laid) = (choices.best == Some(at), choices.laid == Some(at));
                row(bench, *choice, varied, (best, laid), unit.get())
            })
            .collect_view()
        })
    };
    let draw = move |sheet: &Sheet| {
        let chart = choices.with_value(|choices| draw_curve(choices, varied, sheet));
        let mut paths = vec![
            ("grid", chart.grid),
            ("axes", chart.axes),
            ("steps", chart.line),
            ("axes", chart.errors),
            ("marks", chart.points),
        ];
        let mut labels = chart.labels;
        for pick in chart.picks {
            paths.push(("pole", pick.pole));
            labels.extend(pick.label);
        }
        Some(Parts {
            size: (chart.width, chart.height),
            paths,
            labels,
            description: chart.description,
        })
    };
    view! {
        <h3>{title}</h3>
        <ChartPicture draw=Box::new(draw)/>
        <div class="scroll" tabindex="0" role="group" aria-label=title>
            <table>
                <thead>
                    <tr>
                        <th scope="col" class="figure">"Side by side"</th>
                        <th scope="col"><span class="unseen">"Lay out"</span></th>
                        <th scope="col" class="figure">"Pitch"</th>
                        <th scope="col" class="figure">"Edge"</th>
                        <th scope="col" class="figure">"Good a sandwich"</th>
                        <th scope="col" class="figure">"Money a gross"</th>
                        <th scope="col">"Verdict"</th>
                    </tr>
                </thead>
                <tbody>{live(rows)}</tbody>
            </table>
        </div>
    }
}

fn row(
    bench: Workbench,
    choice: Choice,
    varied: Varied,
    (best, laid): (bool, bool),
    unit: LengthUnit,
) -> impl IntoView + use<> {
    let verdict = match (best, choice.ties()) {
        (true, _) => "best",
        (false, true) => "as good, as far as the dice tell",
        (false, false) => "",
    };
    let good = figure::plain(choice.good.mean, 3);
    let error = figure::plain(choice.good.error, 4);
    let money = choice
        .gross_price
        .map_or_else(|| figure::NO_FIGURE.to_owned(), figure::money_rounded);
    let tools = if laid {
        view! { <span class="here">"On the drawing"</span> }.into_any()
    } else {
        let lay = move |_| bench.change(|project| lay_choice(project, &choice, varied));
        view! { <button type="button" on:click=lay>"Lay out"</button> }.into_any()
    };
    let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
    view! {
        <tr class:chosen=laid>
            <th scope="row" class="figure">{choice.across}</th>
            <td class="tools">{tools}</td>
            <td class="figure">{length(choice.pitch)}</td>
            <td class="figure">{length(choice.edge)}</td>
            <td class="figure strong">{format!("{good} ± {error}")}</td>
            <td class="figure">{money}</td>
            <td>{verdict}</td>
        </tr>
    }
}

/// Lays a choice out; the edge allowance, which the dice have put aside, gives way where it must.
fn lay_choice(project: &mut ProjectDraft, choice: &Choice, varied: Varied) {
    let rules = &mut project.rules;
    match varied {
        Varied::Count => rules.most = Typed::Number(f64::from(choice.across)),
        Varied::Pitch => {
            rules.spacing = Spacing::Given;
            rules.pitch = Typed::Number(choice.pitch.in_millimetres());
        }
    }
    let edge = choice.edge.in_millimetres();
    let allowed = rules.edge.read(Field::EdgeAllowance);
    if allowed.is_ok_and(|allowed| allowed > edge) {
        rules.edge = Typed::Number(edge);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;
    use solver::lay_out;
    use solver::tolerance::choices;

    #[test]
    fn every_choice_is_laid_out_as_it_was_told() {
        for varied in [Varied::Count, Varied::Pitch] {
            let project = demo::project();
            let parts = project.check_layout().unwrap();
            let accuracy = project.check_accuracy().unwrap();
            let told = choices(&parts.setup(), &accuracy, varied, 1, 0..1, &mut |_| true);
            for choice in &told.list {
                let mut project = project.clone();
                lay_choice(&mut project, choice, varied);
                let layout = lay_out(&project.check_layout().unwrap().setup());
                assert_eq!(layout.across(), choice.across);
                let apart = (layout.pitch() - choice.pitch).abs();
                assert!(choice.across == 1 || apart.in_millimetres() < 1e-9);
            }
        }
    }
}
