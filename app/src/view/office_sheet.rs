//! The setting sheet on paper: all that a setter needs, and boxes to be written in. It is one page, but
//! for names of hundreds of letters; the number of each page, and how many there are, stand at its foot,
//! where the browser that lays out the pages writes them.

use super::drawn::Hatching;
use super::head_drawings::HeadDrawings;
use super::live::live;
use super::office::{Office, OnPaper, drawing_of, paper_class};
use super::paper_drawing::PaperDrawing;
use super::setting_tables::{facts, height_table, mark_table, slat_facts, slat_table};
use crate::protocol::Expected;
use crate::workbench::{JobState, Machined, Searches, Workbench};
use leptos::prelude::*;
use solver::{Blade, LengthUnit, Outcome, Setting, TitleField, figure};
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// The part of the page that holds the patterns of hatching for paper.
pub(crate) const CONTEXT: &str = "office";

/// Who signs that the machines are set.
const SIGNATURES: [&str; 3] = [
    "Groove head set",
    "Shaping heads set",
    "First sandwich checked",
];

/// The setting sheet.
#[component]
pub(crate) fn OfficeSheet(
    /// The cross-section on the paper that is chosen.
    section: OnPaper,
) -> impl IntoView {
    let office = expect_context::<Office>();
    let bench = expect_context::<Workbench>();
    let class = move || format!("office-sheet {}", paper_class(section));
    let too_wide = move || match section.get()? {
        Err(problem) => Some(problem.message(bench.unit.get())),
        Ok(_) => None,
    };
    let body = move || {
        let (machined, unit) = (office.machined.read(), bench.unit.get());
        let Some(machined) = machined.as_ref() else {
            return view! { <p>"There is no setting: something in the project is to be mended."</p> }.into_any();
        };
        match &machined.setting {
            Ok(setting) => body(machined, setting, unit),
            Err(problems) => {
                let problems = problems.iter().map(|problem| problem.message(unit));
                super::answered::lines("", problems.collect())
            }
        }
    };
    let stale = move || {
        let machined = office.machined.read();
        machined.as_ref().is_some_and(|machined| machined.stale)
    };
    view! {
        <svg class="unseen" aria-hidden="true"><Hatching context=CONTEXT/></svg>
        <article class=class aria-label="Setting sheet">
            <p class="void" hidden=move || !stale()>"Not to be used: this is from before the last change, and something is to be mended."</p>
            <div class="sheet paper"><PaperDrawing drawing=drawing_of(section) context=CONTEXT/></div>
            <p>{live(too_wide)}</p>
            {live(body)}
            <HeadDrawings of=&[Blade::TopGrooves, Blade::BottomGrooves] context=CONTEXT/>
            <div class="signatures">
                {SIGNATURES.map(|what| view! { <div><span>{what}</span><span>"Name, date"</span></div> }).into_iter().collect_view()}
            </div>
            <TitleBlock section/>
        </article>
    }
}

/// The fields of ISO 7200; those that are empty are left to be written in.
#[component]
fn TitleBlock(section: OnPaper) -> impl IntoView {
    let office = expect_context::<Office>();
    let bench = expect_context::<Workbench>();
    let block = Memo::new(move |_| bench.project().read().title_block.clone());
    let title = move || {
        let typed = block.with(|block| block.title.clone());
        if !typed.trim().is_empty() {
            return Some(typed);
        }
        let machined = office.machined.read();
        let parts = &machined.as_ref()?.parts.layout;
        let slats = if parts.top.name() == parts.bottom.name() {
            parts.top.name().to_owned()
        } else {
            format!("{} over {}", parts.top.name(), parts.bottom.name())
        };
        Some(format!("{} on {slats}", parts.barrel.name()))
    };
    foot(move || {
        let number = block.with(|block| block.number.clone());
        Some(number)
            .filter(|number| !number.trim().is_empty())
            .or_else(title)
            .unwrap_or_default()
    });
    let size = move || match section.get() {
        Some(Ok((paper, _))) => Some(paper.size.label()),
        _ => None,
    };
    let typed = |class: &'static str, field: TitleField| {
        let text = move || block.with(|block| block.at(field).to_owned());
        view! { <div class=class><dt>{field.label()}</dt><dd>{live(text)}</dd></div> }
    };
    view! {
        <dl class="title-block">
            {typed("owner", TitleField::Owner)}
            <div class="title"><dt>{TitleField::Title.label()}</dt><dd>{live(title)}</dd></div>
            <div class="works"><dt>"Project"</dt><dd>{live(move || bench.project().read().name.clone())}</dd></div>
            <div class="type"><dt>"Document type"</dt><dd>"Setting sheet"</dd></div>
            <div class="format"><dt>"Paper, unit"</dt><dd>{live(size)}", "{live(move || bench.unit.get().label())}</dd></div>
            {typed("number", TitleField::Number)}
            {typed("date", TitleField::Issued)}
            {typed("creator", TitleField::Creator)}
            {typed("approver", TitleField::Approver)}
        </dl>
    }
}

/// Letters of the foot of a page: as many as stand in a line of it.
const MOST_OF_FOOT: usize = 70;

/// What tells at the foot of every page which document it is of, as a string of CSS.
fn foot(text: impl Fn() -> String + 'static) {
    let root = || {
        document()
            .document_element()?
            .dyn_into::<HtmlElement>()
            .ok()
    };
    Effect::new(move |_| {
        let text = text();
        let mut letters = text.chars();
        let mut foot: String = letters.by_ref().take(MOST_OF_FOOT).collect();
        if letters.next().is_some() {
            foot.push('…');
        }
        let foot = foot.replace('\\', "\\\\").replace('"', "\\\"");
        let foot = foot.replace(char::is_control, " ");
        if let Some(root) = root() {
            // Without it the title block still tells.
            let _ = root
                .style()
                .set_property("--document", &format!("\"{foot}\""));
        }
    });
}

/// Tables and statements.
fn body(machined: &Machined, setting: &Setting, unit: LengthUnit) -> AnyView {
    let grooves = setting.grooves.iter().map(|groove| {
        let centre = groove.centre.in_millimetres();
        let fraction = (unit == LengthUnit::Inch)
            .then(|| view! { <small>{figure::sixty_fourths(centre)}</small> });
        let centre = figure::length(centre, unit);
        view! { <div><dt>{groove.number}</dt><dd class="figure">{centre}{fraction}</dd></div> }
    });
    let grooves = grooves.collect_view();
    let checks = machined.layout.checks().iter().map(|check| {
        let outcome = match check.outcome {
            Outcome::Passed => "Pass",
            Outcome::Noted => "Note",
            Outcome::Failed => "Fail",
        };
        view! {
            <tr>
                <td class="strong">{outcome}</td>
                <th scope="row">{check.rule.label()}</th>
                <td>{check.statement(unit)}</td>
            </tr>
        }
    });
    let checks = checks.collect_view();
    let cautions = setting.cautions.iter().map(|caution| caution.text());
    let cautions = super::answered::lines("cautions", cautions.collect());
    let feed = figure::plain(machined.parts.cut.feed(), 2);
    let mut told = slat_facts(setting, unit);
    for (name, value) in [
        ("Groove radius", setting.groove_radius),
        ("Pitch", setting.pitch),
    ] {
        told.push((name, figure::length_with_unit(value.in_millimetres(), unit)));
    }
    let parts = &machined.parts.layout;
    let mut lengths = vec![parts.top.length(), parts.bottom.length()];
    lengths.dedup();
    let lengths = lengths
        .into_iter()
        .map(|length| figure::length(length.in_millimetres(), unit));
    let lengths = lengths.collect::<Vec<_>>().join(" over ");
    told.push((
        "Slat length",
        format!("{lengths}{}{}", figure::THIN_SPACE, unit.label()),
    ));
    let set = parts.cutter_set.clone();
    told.push((
        "Cutter set",
        set.unwrap_or_else(|| "none chosen".to_owned()),
    ));
    told.push(("Feed", format!("{feed}{}m/min", figure::THIN_SPACE)));
    view! {
        <section>
            <h3>{format!("Groove centres from the datum edge, {}", unit.label())}</h3>
            <dl class="centres">{grooves}</dl>
            {facts(told)}
        </section>
        <section>
            <h3>{format!("Slats and sandwich, {}", unit.label())}</h3>
            {slat_table(setting, &figure::length_to_set, unit)}
        </section>
        <div class="halves">
            <section>
                <h3>{format!("Heights of the knives, {}", unit.label())}</h3>
                {height_table(setting, &figure::length_to_set, unit)}
            </section>
            <section>
                <h3>{format!("Knife marks, {}", unit.label())}</h3>
                {mark_table(machined, setting, unit)}
            </section>
        </div>
        <section class="check-list">
            <h3>{pencils(machined)}</h3>
            <table><tbody>{checks}</tbody></table>
        </section>
        <section>
            <h3>"To mind"</h3>
            {cautions}
        </section>
    }
    .into_any()
}

/// The pencils of a sandwich, and how many are expected to be good.
fn pencils(machined: &Machined) -> String {
    let pencils = machined.layout.pencils();
    let state = expect_context::<Searches>().expected.state().get();
    let good = match state {
        JobState::Done(Expected {
            good: Some(good),
            line,
            ..
        }) => format!(
            "; {} are expected to be good with the errors of “{line}”",
            figure::plain(good, 3)
        ),
        _ => String::new(),
    };
    format!("{pencils} pencils from one sandwich{good}")
}
