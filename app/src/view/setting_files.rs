//! What leaves the office as files: drawings, the outline, tables.

use super::file_menu::file_name;
use super::office::{Office, OnPaper};
use crate::download;
use crate::workbench::{Machined, Workbench, drawn_on};
use leptos::prelude::*;
use solver::{LengthUnit, TrueSize, draw_to_scale};

/// The buttons for files; those of the knives stand beside them.
#[component]
pub(crate) fn SettingFiles(
    /// The gauge on the paper that is chosen.
    gauge: OnPaper,
    /// The cross-section on the paper that is chosen.
    section: OnPaper,
) -> impl IntoView {
    let office = expect_context::<Office>();
    let bench = expect_context::<Workbench>();
    let drawing = move |name: &'static str, drawn: OnPaper| {
        move |_| {
            if let Some(Ok((_, drawing))) = drawn.get_untracked() {
                save_file(bench, name, "svg", &drawing.to_svg(&titled(bench, name)));
            }
        }
    };
    let outline = move |end: &'static str, write: fn(&TrueSize) -> String| {
        if let Some(machined) = office.machined.get_untracked() {
            let name = machined.parts.layout.barrel.name().to_owned();
            let file = TrueSize::of_outline(machined.layout.bare(), &name);
            save_file(bench, "Outline", end, &write(&file));
        }
    };
    let table = move |name: &'static str, write: fn(&Machined, LengthUnit) -> Option<String>| {
        move |_| {
            let unit = bench.unit.get_untracked();
            let machined = office.machined.get_untracked();
            if let Some(text) = machined.and_then(|machined| write(&machined, unit)) {
                save_file(bench, name, "csv", &text);
            }
        }
    };
    let no_layout = move || office.machined.with(Option::is_none);
    let no_setting = move || office.is_empty();
    let not_drawn = |drawn: OnPaper| move || !drawn.with(|drawn| matches!(drawn, Some(Ok(_))));
    view! {
        <section class="result files" aria-labelledby="files-title">
            <h2 id="files-title">"Files"</h2>
            <div class="actions" hidden=no_layout>
                <button type="button" hidden=not_drawn(section) on:click=drawing("Cross-section", section)>"Cross-section as SVG"</button>
                <button type="button" hidden=not_drawn(gauge) on:click=drawing("Gauge", gauge)>"Gauge as SVG"</button>
                <button type="button" on:click=move |_| outline("dxf", TrueSize::to_dxf)>"Outline as DXF"</button>
                <button type="button" on:click=move |_| outline("svg", TrueSize::to_svg)>"Outline as SVG"</button>
                <button type="button" hidden=no_setting on:click=table("Setting", |machined, unit| Some(machined.setting()?.csv(unit)))>"Setting as CSV"</button>
                <button type="button" hidden=no_setting on:click=table("Knives", |machined, unit| Some(machined.setting()?.knives_csv(unit)))>"Knives as CSV"</button>
            </div>
            {office.wanting("No files of setting and knives")}
            <p class="hint">"The outline is that of the bare wood, as it lies in the sandwich. DXF is of release 12, in millimetres."</p>
        </section>
    }
}

/// The cross-section at the largest standard scale at which it fits on the paper that is chosen.
pub(crate) fn section(office: Office, bench: Workbench) -> OnPaper {
    Memo::new(move |_| {
        let machined = office.machined.read();
        let machined = machined.as_ref()?;
        let setup = machined.parts.layout.setup();
        let drawn = drawn_on(office.paper.get(), |paper| {
            draw_to_scale(&setup, &machined.layout, paper, bench.unit.get())
        });
        Some(drawn.map(|(paper, drawn)| (paper, drawn.drawing)))
    })
}

/// Saves a file of the project, and tells of it.
pub(crate) fn save_file(bench: Workbench, what: &str, end: &str, text: &str) {
    let project = bench.project().read_untracked().name.clone();
    let name = format!("{}-{}.{end}", file_name(&project), file_name(what));
    bench.tell(&match download::text(&name, text) {
        Ok(()) => format!("The file goes to your downloads as {name}."),
        Err(reason) => format!("The file could not be saved: {reason}"),
    });
}

/// The title of a file.
pub(crate) fn titled(bench: Workbench, what: &str) -> String {
    format!("{}: {what}", bench.project().read_untracked().name)
}
