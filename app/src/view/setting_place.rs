//! What the machines are set to for the layout that is chosen, and what leaves the office for them.

use super::cut_tables::scrolled;
use super::cutter_plan::CutterSets;
use super::drawing_sheet::{DrawingSheet, SheetSize};
use super::expected_good::ExpectedGood;
use super::feed_form::FeedForm;
use super::gauge_strip::{GaugeStrip, gauge};
use super::groove_table::GrooveTable;
use super::head_drawings::HeadDrawings;
use super::head_form::HeadForm;
use super::knife_sheets::KnifeSheets;
use super::live::live;
use super::office::{Office, Print};
use super::office_sheet::OfficeSheet;
use super::problem_list::ProblemList;
use super::radios::radios;
use super::run_form::RunForm;
use super::run_needs::RunTable;
use super::setting_files::{SettingFiles, section};
use super::setting_tables::{facts, height_table, mark_table, part, slat_facts, slat_table};
use super::title_form::TitleForm;
use crate::workbench::{Workbench, machined};
use leptos::prelude::*;
use solver::{Blade, PaperSize, draw_sandwich, figure};
use std::sync::Arc;

/// The place of the setter.
#[component]
pub(crate) fn SettingPlace() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let office = Office::new(machined(bench));
    provide_context(office);
    let machined = office.machined;
    let size = SheetSize::new();
    let drawing = Memo::new(move |_| {
        let sheet = size.sheet(bench)?;
        let machined = machined.read();
        let machined = machined.as_ref()?;
        Some(draw_sandwich(
            &machined.parts.layout.setup(),
            &machined.layout,
            &sheet,
        ))
    });
    let stale = Signal::derive(move || {
        let machined = machined.read();
        machined.as_ref().is_some_and(|machined| machined.stale)
    });
    let gauge = gauge(office, bench);
    let section = section(office, bench);
    let heights = part(
        machined,
        ("heights", "Heights above the table"),
        true,
        |_, setting, unit| {
            scrolled(
                "Heights of the knives",
                height_table(setting, &figure::length, unit),
            )
        },
    );
    let slats = part(
        machined,
        ("asked", "Slats and sandwich"),
        true,
        |_, setting, unit| {
            let table = scrolled(
                "Slats at the groove head",
                slat_table(setting, &figure::length, unit),
            );
            view! { {table} {facts(slat_facts(setting, unit))} }.into_any()
        },
    );
    let marks = part(
        machined,
        ("marked", "Knife marks"),
        true,
        |machined, setting, unit| {
            scrolled(
                "Knife marks of each head",
                mark_table(machined, setting, unit),
            )
        },
    );
    let cautions = part(machined, ("to-mind", "To mind"), false, |_, setting, _| {
        let cautions = setting.cautions.iter().map(|caution| caution.text());
        super::answered::lines("cautions", cautions.collect())
    });
    view! {
        <div class="place setting-place" data-print=move || office.print.get().name()>
            <section class="board" aria-label="Cross-section of the sandwich">
                <Answer/>
                <ExpectedGood/>
                <DrawingSheet drawing size title="Sandwich with its grooves" context="drawing" stale/>
            </section>
            <aside class="column" aria-label="Inputs">
                <ProblemList/>
                <FeedForm/>
                <HeadForm/>
                <RunForm/>
                <TitleForm/>
            </aside>
            <div class="results" class:stale=stale>
                <p class="before" hidden=move || !stale.get()>
                    "What stands behind a dotted line is from before the last change; something is to be mended."
                </p>
                <PaperChoice/>
                <div class="set">{heights}{slats}{marks}{cautions}</div>
                <GrooveTable/>
                <section class="result stands" aria-labelledby="stands-title">
                    <h2 id="stands-title">"Heads over the table"</h2>
                    <HeadDrawings of=&Blade::ALL context="drawing"/>
                </section>
                <KnifeSheets/>
                <GaugeStrip on_paper=gauge/>
                <RunTable/>
                <CutterSets/>
                <SettingFiles gauge section/>
            </div>
            <OfficeSheet section/>
        </div>
    }
}

/// Whether there is a setting, in a line, or what keeps a knife from being made.
#[component]
fn Answer() -> impl IntoView {
    let office = expect_context::<Office>();
    let bench = expect_context::<Workbench>();
    let words = move || {
        let machined = office.machined.read();
        let Some(machined) = machined.as_ref() else {
            return view! { <p class="verdict">"Nothing to set yet: mend what is listed beside."</p> }
                .into_any();
        };
        match &machined.setting {
            Ok(setting) => {
                let grooves = setting.grooves.len();
                let parts = &machined.parts.layout;
                let whose = format!("for {} on {}", parts.barrel.name(), parts.bottom.name());
                let noun = if grooves == 1 { "groove" } else { "grooves" };
                view! {
                    <p class="verdict" class:stale=machined.stale class:fails=!machined.layout.fits()>
                        <strong>{grooves}" "{noun}</strong>
                        " "
                        <span>{whose}</span>
                    </p>
                }
                .into_any()
            }
            Err(problems) => {
                let unit = bench.unit.get();
                let problems = problems.iter().map(|problem| problem.message(unit));
                let problems = super::answered::lines("", problems.collect());
                view! {
                    <div class="problem">
                        <p class="verdict fails"><strong>"No knives"</strong></p>
                        {problems}
                    </div>
                }
                .into_any()
            }
        }
    };
    view! { <div aria-live="polite">{live(words)}</div> }
}

/// The paper in the printer, and what prints the sheet.
#[component]
fn PaperChoice() -> impl IntoView {
    let office = expect_context::<Office>();
    let paper = office.paper;
    let no_layout = move || office.machined.with(Option::is_none);
    let no_setting = move || office.is_empty();
    let chosen = Signal::derive(move || {
        let chosen = paper.get();
        PaperSize::ALL.iter().position(|size| *size == chosen)
    });
    let pick = move |place: usize| {
        if let Some(size) = PaperSize::ALL.get(place) {
            paper.set(*size);
        }
    };
    let sizes = radios(
        "paper",
        "Paper in the printer",
        PaperSize::ALL.map(PaperSize::label).to_vec(),
        chosen,
        Arc::new(pick),
    );
    view! {
        <section class="result printing" aria-labelledby="printing-title">
            <h2 id="printing-title">"On paper"</h2>
            <div class="actions" hidden=no_layout>
                <button type="button" hidden=no_setting on:click=move |_| office.print(Print::Sheet)>"Print the setting sheet"</button>
                <button type="button" on:click=move |_| office.print(Print::Gauge)>"Print the gauge"</button>
                <button type="button" hidden=no_setting on:click=move |_| office.print(Print::Knives)>"Print the knives"</button>
                {sizes}
            </div>
            {office.wanting("No setting sheet and no knives to print")}
        </section>
    }
}
