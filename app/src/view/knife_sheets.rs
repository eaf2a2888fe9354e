//! The knives: drawn, with their joints as a table, and what to grind besides.

use super::cut_tables::{plain_table, row};
use super::keyed::keyed;
use super::live::live;
use super::office::{Office, OnPaper, drawing_of, paper_class};
use super::paper_drawing::PaperDrawing;
use super::setting_files::{save_file, titled};
use crate::workbench::{Machined, Workbench, drawn_on};
use leptos::prelude::*;
use solver::{Blade, Knife, KnifePoint, LengthUnit, TrueSize, draw_knife, figure};

/// Every knife of the setting.
#[component]
pub(crate) fn KnifeSheets() -> impl IntoView {
    let office = expect_context::<Office>();
    let blades: Memo<Vec<Blade>> = Memo::new(move |_| {
        let machined = office.machined.read();
        let setting = machined.as_ref().and_then(Machined::setting);
        let knives = setting.map(|setting| setting.knives.iter().map(Knife::blade).collect());
        knives.unwrap_or_default()
    });
    view! {
        <section class="result knives" aria-labelledby="knives-title">
            <h2 id="knives-title">"Knives"</h2>
            <p class="hint">
                "Each edge is drawn on the face of its knife, where depths are stretched by the hook angle. Lines and arcs lie within 0.0001 mm of the true edge. On paper the scale is told; files are at 1:1."
            </p>
            {office.wanting("No knives")}
            {keyed(move || blades.get(), |blade| view! { <KnifeSheet blade/> })}
        </section>
    }
}

/// One knife.
#[component]
fn KnifeSheet(blade: Blade) -> impl IntoView {
    let office = expect_context::<Office>();
    let bench = expect_context::<Workbench>();
    let knife = Memo::new(move |_| {
        let machined = office.machined.read();
        let setting = machined.as_ref()?.setting()?;
        let mut knives = setting.knives.iter();
        knives.find(|knife| knife.blade() == blade).cloned()
    });
    let on_paper: OnPaper = Memo::new(move |_| {
        let knife = knife.read();
        let knife = knife.as_ref()?;
        let drawn = drawn_on(office.paper.get(), |paper| {
            draw_knife(knife, paper, bench.unit.get())
        });
        Some(drawn.map(|(paper, drawn)| (paper, drawn.drawing)))
    });
    let too_wide = move || match on_paper.get()? {
        Err(problem) => Some(problem.message(bench.unit.get())),
        Ok(_) => None,
    };
    let nothing = move || !on_paper.with(|drawn| matches!(drawn, Some(Ok(_))));
    let upright = move || Some(upright(knife.read().as_ref()?, bench.unit.get()));
    let joints = move || Some(joints(knife.read().as_ref()?, bench.unit.get()));
    let count = move || {
        let knife = knife.read();
        Some(figure::count(knife.as_ref()?.pencil_points().len() as u64))
    };
    let save = move |end: &'static str, write: fn(&TrueSize) -> String| {
        if let Some(knife) = knife.get_untracked() {
            let file = TrueSize::of_knife(&knife, &titled(bench, blade.label()));
            save_file(bench, blade.label(), end, &write(&file));
        }
    };
    let title = blade.label();
    view! {
        <article class=move || format!("knife {}", paper_class(on_paper)) aria-label=title>
            <h3>{title}</h3>
            <p class="printed-name">{live(move || bench.project().read().name.clone())}</p>
            <div class="scroll" tabindex="0" role="group" aria-label=format!("{title}, drawn") hidden=nothing>
                <div class="sheet paper"><PaperDrawing drawing=drawing_of(on_paper) context="drawing"/></div>
            </div>
            <p class="problem">{live(too_wide)}</p>
            {live(upright)}
            <div class="actions">
                <button type="button" aria-label=format!("Save as DXF: {title}") on:click=move |_| save("dxf", TrueSize::to_dxf)>"Save as DXF"</button>
                <button type="button" aria-label=format!("Save as SVG: {title}") on:click=move |_| save("svg", TrueSize::to_svg)>"Save as SVG"</button>
            </div>
            <details>
                <summary>{live(count)}" joints of the first pencil"</summary>
                {live(joints)}
            </details>
        </article>
    }
}

/// The joints of the first pencil.
fn joints(knife: &Knife, unit: LengthUnit) -> AnyView {
    let length = |length: solver::Length| figure::length_fine(length.in_millimetres(), unit);
    let rows = knife.pencil_points().into_iter().enumerate();
    let rows = rows.map(|(place, point)| {
        let KnifePoint {
            across,
            height,
            on_face,
            radius,
        } = point;
        let radius = radius.map_or_else(|| "line".to_owned(), length);
        let figures = vec![length(across), length(height), length(on_face), radius];
        row((place + 1).to_string(), figures, 2)
    });
    let headings = [
        ("Joint", false),
        ("Across", true),
        ("Height", true),
        ("On the face", true),
        ("Radius to the next", true),
    ];
    let rows = rows.collect_view().into_any();
    super::cut_tables::scrolled(
        "Joints of the first pencil",
        plain_table(&headings, rows, ().into_any()),
    )
}

/// The sides that stand too upright, by where they begin and end.
fn upright(knife: &Knife, unit: LengthUnit) -> AnyView {
    let length = |mm: f64| figure::length(mm, unit);
    let sides = knife.rubbing().iter().map(|(from, to)| {
        let side = format!(
            "from {} across and {} high to {} and {}",
            length(from.x),
            length(from.y),
            length(to.x),
            length(to.y)
        );
        view! { <li>{side}</li> }
    });
    let sides = sides.collect_view();
    let any = !knife.rubbing().is_empty();
    any.then(|| {
        view! {
            <p>{format!("Sides of the first pencil that need side clearance, in {} from the datum edge and the glue plane:", unit.label())}</p>
            <ul class="upright">{sides}</ul>
        }
    })
    .into_any()
}
