//! How many pencils the barrel gives on each slat stock of the project, while it is shaped.

use super::super::answered::answered;
use super::super::live::live;
use crate::protocol::{RankedRow, Ranking};
use crate::workbench::Jobs;
use leptos::prelude::*;
use solver::{Way, figure};

/// Rows that are shown.
const MOST_ROWS: usize = 12;

/// The best way round on each stock, best first.
#[component]
pub(crate) fn StockTable() -> impl IntoView {
    let ranking = expect_context::<Jobs>().ranking();
    let show = |ranking: Ranking| rows(ranking).into_any();
    let body = move || {
        answered(
            ranking.get(),
            Some("Laying the barrel on every stock …"),
            show,
        )
    };
    view! {
        <section class="result stocks" aria-labelledby="stocks-title">
            <h2 id="stocks-title">"On each stock"</h2>
            {live(body)}
        </section>
    }
}

fn rows(ranking: Ranking) -> impl IntoView {
    let mut shown: Vec<RankedRow> = Vec::new();
    for row in ranking.rows {
        if !shown.iter().any(|other| other.slat == row.slat) {
            shown.push(row);
        }
    }
    let more = shown.len().saturating_sub(MOST_ROWS) as u64;
    let more = (more > 0)
        .then(|| view! { <p class="empty">{figure::count(more)}" more stocks are not shown."</p> });
    let rows = shown.into_iter().take(MOST_ROWS).map(|row| {
        let way: Way = row.way.into();
        let told = row.failing.unwrap_or_else(|| way.label().to_owned());
        view! {
            <tr class:failed=row.pencils == 0>
                <th scope="row">{row.slat_name}</th>
                <td class="figure strong">{row.pencils}</td>
                <td>{told}</td>
            </tr>
        }
    });
    view! {
        <table>
            <thead>
                <tr>
                    <th scope="col">"Stock"</th>
                    <th scope="col" class="figure">"Pencils"</th>
                    <th scope="col">"Lies, or why not"</th>
                </tr>
            </thead>
            <tbody>{rows.collect_view()}</tbody>
        </table>
        {more}
    }
}
