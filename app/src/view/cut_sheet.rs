//! The sheet for the saw shop: pattern by pattern, drawn, with boxes to tick and running totals.

use super::answered::lines;
use super::cut_tables::{plain_table, row};
use super::drawing_sheet::SheetSize;
use super::drawn::{DrawnDimensions, DrawnLabels, DrawnShapes, Hatching, labels_of};
use super::live::live;
use crate::workbench::{Planned, Workbench};
use leptos::html::Div;
use leptos::prelude::*;
use solver::sawing::{CutLine, LaidSection};
use solver::{LengthUnit, draw_cut, figure};
use std::sync::Arc;

/// More planks of a pattern than this have one box to tick, and not one each.
const MOST_BOXES: u64 = 60;

/// Which part of the page the drawings are: hatching is found by it.
const CONTEXT: &str = "cut";

/// Every pattern of a plan, the most used first.
#[component]
pub(crate) fn CutSheet(planned: Arc<Planned>) -> impl IntoView {
    let size = SheetSize::new();
    let frame = NodeRef::<Div>::new();
    size.watch(frame);
    let patterns = (0..planned.list.cuts.len()).map(|at| {
        let planned = Arc::clone(&planned);
        view! { <Pattern planned at size/> }
    });
    view! {
        <h3>"Saw-shop sheet"</h3>
        <p class="hint">
            "Cut the trims off each plank, crosscut the sections from the left, rip each section. Totals count the planks of a pattern and of all before it."
        </p>
        <div node_ref=frame>
            <svg class="unseen" aria-hidden="true"><Hatching context=CONTEXT/></svg>
            <ol class="patterns">{patterns.collect_view()}</ol>
        </div>
    }
}

/// Planks that are sawn alike.
#[component]
fn Pattern(planned: Arc<Planned>, at: usize, size: SheetSize) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let cut = planned.list.cuts[at].clone();
    let planks = match cut.planks {
        1 => "1 plank".to_owned(),
        planks => format!("{} planks", figure::count(planks)),
    };
    let plank = planned.names().plank(cut.laid.plank());
    let blanks = planned.data().blanks();
    let totals = cut.blanks.iter().map(|line| {
        let (so_far, wanted) = (line.so_far, blanks[line.blank].demand);
        let so_far = format!("{} of {}", figure::count(so_far), figure::count(wanted));
        let figures = vec![figure::count(line.made), so_far];
        row(planned.names().blank(line.blank), figures, 1)
    });
    let headings = [
        ("Blank", false),
        ("From this pattern", true),
        ("Sawn by then", true),
    ];
    let totals = totals.collect_view().into_any();
    let totals = plain_table(&headings, totals, ().into_any());
    let boxes = if cut.planks > MOST_BOXES {
        1
    } else {
        cut.planks
    };
    let boxes = (0..boxes).map(|_| view! { <i></i> }).collect_view();
    let drawing = {
        let planned = Arc::clone(&planned);
        let place = cut.cut;
        Memo::new(move |_| {
            let sheet = size.sheet(bench)?;
            let (pattern, _) = planned.plan.cuts.get(place)?;
            draw_cut(pattern, planned.data(), &planned.names(), &sheet)
        })
    };
    let view_box = move || {
        let drawing = drawing.read();
        let drawing = drawing.as_ref()?;
        Some(format!("0 0 {:.0} {:.0}", drawing.width, drawing.height))
    };
    let described = move || Some(drawing.read().as_ref()?.description.clone());
    let words = move || in_words(&planned, &cut, bench.unit.get());
    view! {
        <li class="pattern">
            <h4>{format!("Pattern {}: {planks} of {plank}", at + 1)}</h4>
            <div class="sheet">
                <svg role="img" viewBox=view_box aria-label=described>
                    <DrawnShapes drawing context=CONTEXT lit=None/>
                    <DrawnDimensions drawing/>
                    <DrawnLabels labels=labels_of(drawing)/>
                </svg>
            </div>
            {live(words)}
            {totals}
            <p class="boxes" aria-hidden="true">{boxes}</p>
        </li>
    }
}

/// What is sawn from one plank, line by line.
fn in_words(planned: &Planned, cut: &CutLine, unit: LengthUnit) -> AnyView {
    let sections = cut.laid.sections().iter();
    let sections = sections.map(|section| section_words(planned, section, unit));
    let offcut = cut.laid.offcut();
    let offcut = (offcut > 0).then(|| {
        let length = with_unit(offcut, unit);
        if cut.laid.keeps_offcut() {
            format!("Offcut to keep: {length}")
        } else {
            format!("Left at the end: {length}")
        }
    });
    lines("sections", sections.chain(offcut).collect())
}

/// A section in words, as in “9 sections of 186.00 mm, each 19 × Long + 2 × Short”.
fn section_words(planned: &Planned, section: &LaidSection, unit: LengthUnit) -> String {
    let blanks: Vec<String> = (section.strips().iter())
        .map(|strips| {
            let name = planned.names().blank(strips.blank);
            format!("{} × {name}", figure::count(strips.pieces))
        })
        .collect();
    let (length, blanks) = (with_unit(section.length(), unit), blanks.join(" + "));
    match section.count() {
        1 => format!("1 section of {length}: {blanks}"),
        count => format!(
            "{} sections of {length}, each {blanks}",
            figure::count(count)
        ),
    }
}

fn with_unit(micrometres: i64, unit: LengthUnit) -> String {
    let length = figure::micrometres(micrometres, unit);
    format!("{length}{}{}", figure::THIN_SPACE, unit.label())
}
