//! A table of the project: change, add, copy, move and delete its rows, to and from a spreadsheet.

use super::entry_row::{Choices, Row, focus_row};
use super::file_menu::{Files, picked};
use super::keyed::keyed;
use super::live::live;
use super::when::When;
use crate::workbench::{Table, Workbench};
use crate::{download, spreadsheet};
use leptos::html::Input;
use leptos::prelude::*;
use leptos::task::spawn_local;
use solver::{Id, figure};
use wasm_bindgen_futures::JsFuture;
use web_sys::DragEvent;

/// Rows that stand on the page at a time: each has many fields, and all follow every keystroke.
const MOST_ROWS: usize = 50;

/// A table of the project, with what can be done with it.
#[component]
pub(crate) fn EntryTable(
    /// Which one.
    table: Table,
    /// What is said while it has no row.
    empty: &'static str,
    /// More ways to add a row, beside the button.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let rows = Memo::new(move |_| table.rows(&project.read()));
    let part = RwSignal::new(0);
    let shown_part = Memo::new(move |_| part.get().min(last_part(rows.read().len())));
    let shown_rows = Memo::new(move |_| {
        let rows = rows.read().clone().into_iter();
        rows.skip(shown_part.get() * MOST_ROWS)
            .take(MOST_ROWS)
            .collect::<Vec<_>>()
    });
    Effect::new(move |_| {
        if let Some((there, row)) = bench.row_in_sight.get()
            && there == table
            && let Some(at) = table.place(&project.read_untracked(), row)
        {
            part.set(at / MOST_ROWS);
        }
    });
    let choices = Choices::of(bench);
    let title_id = format!("{}-title", table.word());
    let add = move |_| add_row(bench, table, |project| table.append(project));
    let copy_all = move |_| {
        let cells = table.cells(&project.read_untracked(), bench.unit.get_untracked());
        copy_out(bench, table, spreadsheet::write(&cells));
    };
    let save = move |_| {
        let cells = table.cells(&project.read_untracked(), bench.unit.get_untracked());
        let name = format!("{}-list.csv", table.word());
        bench.tell(&download::list(&name, &spreadsheet::write_csv(&cells)));
    };
    let files = expect_context::<Files>();
    let picker = NodeRef::<Input>::new();
    let pick = move |_| {
        if let Some(picker) = picker.get_untracked() {
            picker.click();
        }
    };
    let on_pick = move |_| {
        if let Some(file) = picked(picker) {
            files.open_table(table, &file);
        }
    };
    let on_drop = move |event: DragEvent| {
        let dropped = event.data_transfer().and_then(|data| data.files());
        if let Some(file) = dropped.and_then(|files| files.get(0)) {
            event.prevent_default();
            files.open_table(table, &file);
        }
    };
    view! {
        <section
            class=format!("result {}", table.word())
            aria-labelledby=title_id.clone()
            on:dragover=on_drag
            on:drop=on_drop
        >
            <h2 id=title_id.clone()>{table.title()}</h2>
            <div class="scroll" tabindex="0" role="group" aria-label=table.title() hidden=move || rows.read().is_empty()>
                <table class="entry">
                    <thead>
                        <tr>
                            {(!table.is_named()).then(|| view! { <th scope="col" class="figure">{table.fallback()}</th> })}
                            {table
                                .columns()
                                .iter()
                                .map(|&column| {
                                    let heading = move || column.heading(bench.unit.get());
                                    let is_wanted = Memo::new(move |_| column.is_wanted(&project.read()));
                                    view! {
                                        <th
                                            scope="col"
                                            class:figure=column.is_figure()
                                            title=column.meaning()
                                            hidden=move || !is_wanted.get()
                                        >
                                            {live(heading)}
                                        </th>
                                    }
                                })
                                .collect_view()}
                            <th scope="col"><span class="unseen">"Change the list"</span></th>
                        </tr>
                    </thead>
                    <tbody>
                        {keyed(move || shown_rows.get(), move |row| view! { <Row table row choices/> })}
                    </tbody>
                </table>
            </div>
            <When holds=move || rows.read().is_empty()>
                <p class="empty">{empty}</p>
            </When>
            <When holds=move || { rows.read().len() > MOST_ROWS }>
                <Parts count=Signal::derive(move || rows.read().len()) shown=shown_part part/>
            </When>
            <div class="actions">
                <button type="button" id=add_button_id(table) on:click=add>{format!("Add {}", table.one())}</button>
                {children.map(|children| children())}
                <button
                    type="button"
                    disabled=move || rows.read().is_empty()
                    aria-label=format!("Copy table: {}", table.title())
                    on:click=copy_all
                >
                    "Copy table"
                </button>
                <button
                    type="button"
                    disabled=move || rows.read().is_empty()
                    aria-label=format!("Save as CSV: {}", table.title())
                    on:click=save
                >
                    "Save as CSV"
                </button>
                <button type="button" aria-label=format!("Open CSV: {}", table.title()) on:click=pick>"Open CSV"</button>
                <input
                    node_ref=picker
                    type="file"
                    class="unseen"
                    tabindex="-1"
                    aria-label=format!("CSV file to open: {}", table.title())
                    accept=".csv,.txt,.tsv,text/csv,text/plain"
                    on:change=on_pick
                />
            </div>
            <p class="hint">
                "Cells copied from a spreadsheet can be pasted from any cell on, to the right and down. A CSV file, opened or dropped here, takes the place of the whole table."
            </p>
        </section>
    }
}

/// Lets files be dropped here.
pub(crate) fn on_drag(event: DragEvent) {
    let types = event.data_transfer().map(|data| data.types());
    if types.is_some_and(|types| types.includes(&"Files".into(), 0)) {
        event.prevent_default();
    }
}

/// The last part of so many rows.
fn last_part(rows: usize) -> usize {
    rows.saturating_sub(1) / MOST_ROWS
}

/// Leads through a table of more rows than stand on the page at a time.
#[component]
fn Parts(count: Signal<usize>, shown: Memo<usize>, part: RwSignal<usize>) -> impl IntoView {
    let words = move || {
        let (count, first) = (count.get(), shown.get() * MOST_ROWS);
        let number = |rows: usize| figure::count(rows as u64);
        let last = count.min(first + MOST_ROWS);
        format!(
            "Rows {} to {} of {}",
            number(first + 1),
            number(last),
            number(count)
        )
    };
    view! {
        <div class="actions parts">
            <button
                type="button"
                disabled=move || shown.get() == 0
                on:click=move |_| part.set(shown.get_untracked().saturating_sub(1))
            >
                "Rows before"
            </button>
            <span role="status">{live(words)}</span>
            <button
                type="button"
                disabled=move || shown.get() == last_part(count.get())
                on:click=move |_| part.set(shown.get_untracked() + 1)
            >
                "Rows after"
            </button>
        </div>
    }
}

/// The name of the button that adds a row.
pub(crate) fn add_button_id(table: Table) -> String {
    format!("{}-add", table.word())
}

/// Adds a row in a step of its own, and leads to it.
pub(crate) fn add_row(
    bench: Workbench,
    table: Table,
    add: impl FnOnce(&mut solver::ProjectDraft) -> Id,
) {
    let mut added = None;
    bench.change(|project| added = Some(add(project)));
    if let Some(row) = added {
        focus_row(bench, table, row, &["name"]);
    }
}

/// Puts a table on the clipboard, and tells what came of it.
fn copy_out(bench: Workbench, table: Table, text: String) {
    // Pages that are not served safely have no clipboard at all.
    if !window().is_secure_context() {
        bench.tell("The browser keeps the clipboard from a page that is not served safely.");
        return;
    }
    let writing = window().navigator().clipboard().write_text(&text);
    spawn_local(async move {
        let told = match JsFuture::from(writing).await {
            Ok(_) => format!(
                "{}: the table is on the clipboard, to be pasted in a spreadsheet.",
                table.title()
            ),
            Err(_) => "The browser did not let the table onto the clipboard.".to_owned(),
        };
        bench.tell(&told);
    });
}
