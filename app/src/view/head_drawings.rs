//! The heads over the table and under it, drawn with their heights.

use super::keyed::keyed;
use super::office::Office;
use super::paper_drawing::PaperDrawing;
use crate::workbench::{Machined, Workbench};
use leptos::prelude::*;
use solver::{Blade, draw_head};

/// A drawing of each head as it stands for a blade.
#[component]
pub(crate) fn HeadDrawings(
    /// The blades that are shown, where the setting has them.
    of: &'static [Blade],
    /// The part of the page that holds the patterns of hatching.
    context: &'static str,
) -> impl IntoView {
    let office = expect_context::<Office>();
    let bench = expect_context::<Workbench>();
    let blades = Memo::new(move |_| {
        let machined = office.machined.read();
        let setting = machined.as_ref().and_then(Machined::setting);
        let has = |blade: &Blade| {
            setting.is_some_and(|setting| setting.heights.iter().any(|had| had.blade == *blade))
        };
        of.iter().copied().filter(has).collect::<Vec<_>>()
    });
    let head = move |blade: Blade| {
        let drawing = Memo::new(move |_| {
            let machined = office.machined.read();
            draw_head(machined.as_ref()?.setting()?, blade, bench.unit.get())
        });
        let label = format!("{}, head over the table", blade.label());
        view! { <div class="sheet paper" role="group" aria-label=label><PaperDrawing drawing context/></div> }
    };
    view! { <div class="heads">{keyed(move || blades.get(), head)}</div> }
}
