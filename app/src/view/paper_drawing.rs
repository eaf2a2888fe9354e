//! Drawings that are as large on paper as they say.

use super::drawn::{DrawnDimensions, DrawnLabels, DrawnShapes, labels_of};
use leptos::prelude::*;
use solver::Drawing;

/// A drawing at true size: a millimetre of it is a millimetre of paper, if the printer does not
/// change the size. Hatching is found by the name of the part of the page that holds its patterns.
#[component]
pub(crate) fn PaperDrawing(
    /// The drawing.
    drawing: Memo<Option<Drawing>>,
    /// The part of the page that holds the patterns of its hatching.
    context: &'static str,
) -> impl IntoView {
    let side = move |measure: fn(&Drawing) -> solver::Length| {
        let drawing = drawing.read();
        let length = measure(drawing.as_ref()?);
        Some(format!("{}mm", length.in_millimetres()))
    };
    let view_box = move || {
        let drawing = drawing.read();
        let drawing = drawing.as_ref()?;
        // Not rounded: the last digit would change the scale.
        Some(format!("0 0 {} {}", drawing.width, drawing.height))
    };
    let described = move || Some(drawing.read().as_ref()?.description.clone());
    view! {
        <svg
            class="true-size"
            role="img"
            viewBox=view_box
            style:width=move || side(Drawing::paper_width)
            style:height=move || side(Drawing::paper_height)
            aria-label=described
        >
            <DrawnShapes drawing context lit=None/>
            <DrawnDimensions drawing/>
            <DrawnLabels labels=labels_of(drawing)/>
        </svg>
    }
}
