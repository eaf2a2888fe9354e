//! The barrel on every slat stock, every usual way round, best first.

use super::answered::answered;
use super::live::live;
use crate::project_file::WayWord;
use crate::protocol::{AimWord, RankedRow, Ranking};
use crate::workbench::{Jobs, Workbench};
use leptos::prelude::*;
use solver::{Id, Way, figure};

/// Rows that are shown: the best.
const MOST_ROWS: usize = 100;

/// The ranked stocks; a row can be laid on the drawing.
#[component]
pub(crate) fn RankingTable() -> impl IntoView {
    let jobs = expect_context::<Jobs>();
    let ranking = jobs.ranking();
    let aims = [
        (AimWord::Pencils, "Most pencils per sandwich"),
        (AimWord::Wood, "Least wood per gross"),
    ]
    .map(|(aim, label)| {
        view! {
            <label class="choice">
                <input
                    type="radio"
                    name="aim"
                    prop:checked=move || jobs.aim.get() == aim
                    on:change=move |_| jobs.aim.set(aim)
                />
                {label}
            </label>
        }
    })
    .collect_view();
    let show = |ranking: Ranking| view! { <Rows ranking/> }.into_any();
    let waiting = Some("Laying the barrel on every stock …");
    let body = move || answered(ranking.get(), waiting, show);
    view! {
        <section class="result ranking" aria-labelledby="ranking-title">
            <h2 id="ranking-title">"Best stock for this pencil"</h2>
            <div class="choices line" role="radiogroup" aria-label="Rank by">{aims}</div>
            {live(body)}
        </section>
    }
}

#[component]
fn Rows(ranking: Ranking) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let unit = bench.unit;
    if ranking.rows.is_empty() && ranking.left_out.is_empty() {
        return view! { <p class="empty">"There are no slat stocks yet. Add one under “Timber”."</p> }.into_any();
    }
    let more = ranking.rows.len().saturating_sub(MOST_ROWS) as u64;
    let more = (more > 0).then(|| {
        view! { <p class="empty">{figure::count(more)}" more are not shown."</p> }
    });
    let rows = ranking
        .rows
        .into_iter()
        .take(MOST_ROWS)
        .map(|row| {
            let (slat, way) = (Id(row.slat), way_of(row.way));
            let laid = Memo::new(move |_| {
                let project = bench.project().read();
                let layout = &project.layout;
                layout.top == slat && layout.bottom == slat && project.layout_way() == way
            });
            let lay = move |_| {
                bench.change(|project| {
                    project.layout.top = slat;
                    project.layout.bottom = slat;
                    project.layout.way = way;
                });
            };
            let reason = row.failing.clone();
            view! {
                <tr class:chosen=move || laid.get() class:failed=row.failing.is_some()>
                    <th scope="row">{row.slat_name.clone()}</th>
                    <td class="tools">
                        {live(move || if laid.get() {
                            view! { <span class="here">"On the drawing"</span> }.into_any()
                        } else {
                            view! { <button type="button" on:click=lay>"Lay out"</button> }.into_any()
                        })}
                    </td>
                    <td>{way.label()}</td>
                    <td class="figure strong">{row.pencils}</td>
                    {match reason {
                        Some(reason) => view! { <td colspan="3" class="reason">{reason}</td> }.into_any(),
                        None => view! { <Needs row=row.clone() unit/> }.into_any(),
                    }}
                </tr>
            }
        })
        .collect_view();
    let left_out = ranking
        .left_out
        .into_iter()
        .map(|stock| view! { <li>{stock.slat_name}": "{stock.problems.join("; ")}</li> })
        .collect_view();
    view! {
        <div class="scroll" tabindex="0" role="group" aria-label="Ranked stocks">
            <table>
                <thead>
                    <tr>
                        <th scope="col">"Stock"</th>
                        <th scope="col"><span class="unseen">"Lay out"</span></th>
                        <th scope="col">"Lies"</th>
                        <th scope="col" class="figure">"Pencils"</th>
                        <th scope="col" class="figure">"Wood a gross, " {live(move || unit.get().volume_label())}</th>
                        <th scope="col" class="figure">"Slats a gross"</th>
                        <th scope="col" class="figure">"Price a gross"</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
        {more}
        <ul class="left-out">{left_out}</ul>
    }
    .into_any()
}

#[component]
fn Needs(row: RankedRow, unit: RwSignal<solver::LengthUnit>) -> impl IntoView {
    let dash = || figure::NO_FIGURE.to_owned();
    let wood = move || {
        row.wood_per_gross_mm3
            .map_or_else(dash, |wood| figure::volume(wood, unit.get()))
    };
    view! {
        <td class="figure">{live(wood)}</td>
        <td class="figure">{row.slats_per_gross.map_or_else(dash, |slats| figure::plain(slats, 1))}</td>
        <td class="figure">{row.price_per_gross.map_or_else(dash, figure::money_rounded)}</td>
    }
}

/// The way that a word of the protocol names.
fn way_of(word: WayWord) -> Way {
    word.into()
}
