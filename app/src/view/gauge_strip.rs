//! The gauge: a strip of paper at true size.

use super::live::live;
use super::office::{Office, OnPaper, drawing_of, paper_class};
use super::paper_drawing::PaperDrawing;
use crate::workbench::{Workbench, drawn_on};
use leptos::prelude::*;
use solver::{LengthUnit, draw_gauge};

/// The gauge, and how to check the printer.
#[component]
pub(crate) fn GaugeStrip(
    /// The gauge on the paper that is chosen.
    on_paper: OnPaper,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let bar = move || match bench.unit.get() {
        LengthUnit::Millimetre => "100 mm long within 0.1 mm",
        LengthUnit::Inch => "4 in long within 0.004 in",
    };
    let too_wide = move || match on_paper.get()? {
        Err(problem) => Some(problem.message(bench.unit.get())),
        Ok(_) => None,
    };
    let nothing = move || !on_paper.with(|drawn| matches!(drawn, Some(Ok(_))));
    let class = move || format!("result gauge-strip {}", paper_class(on_paper));
    view! {
        <section class=class aria-labelledby="gauge-title">
            <h2 id="gauge-title">"Gauge at 1:1"</h2>
            <p class="printed-name">{live(move || bench.project().read().name.clone())}</p>
            <p class="empty" hidden=move || on_paper.with(Option::is_some)>"The gauge is drawn once there is a layout."</p>
            <div class="scroll" tabindex="0" role="group" aria-label="Gauge, drawn" hidden=nothing>
                <div class="sheet paper"><PaperDrawing drawing=drawing_of(on_paper) context="drawing"/></div>
            </div>
            <p class="problem">{live(too_wide)}</p>
            <p hidden=nothing>
                "Print at 100 %, or “actual size”, with no fitting to the page. Measure the bar with a steel rule: it must be "
                {live(bar)}
                ", else the gauge is not used. Lay it with its left end on the datum edge; the upper half is the top slat."
            </p>
        </section>
    }
}

/// The gauge on the paper that is chosen.
pub(crate) fn gauge(office: Office, bench: Workbench) -> OnPaper {
    Memo::new(move |_| {
        let machined = office.machined.read();
        let machined = machined.as_ref()?;
        let setup = machined.parts.layout.setup();
        Some(drawn_on(office.paper.get(), |paper| {
            draw_gauge(&setup, &machined.layout, paper, bench.unit.get())
        }))
    })
}
