//! What the browser remembers beside the project: the unit a person likes to see, the paper in the
//! printer, the last plan.

use leptos::prelude::window;
use solver::{LengthUnit, PaperSize};

const UNIT: &str = "slatwright unit";
const PAPER: &str = "slatwright paper";
const PLAN: &str = "slatwright plan";

/// The unit chosen last; millimetres at first, or where the browser remembers nothing.
#[must_use]
pub(crate) fn unit() -> LengthUnit {
    match kept(UNIT).as_deref() {
        Some("in") => LengthUnit::Inch,
        _ => LengthUnit::Millimetre,
    }
}

/// Remembers the unit where the browser remembers anything.
pub(crate) fn keep_unit(unit: LengthUnit) {
    keep(UNIT, unit.label());
}

/// The paper chosen last; A4 at first, or where the browser remembers nothing.
#[must_use]
pub(crate) fn paper() -> PaperSize {
    let kept = kept(PAPER);
    let mut sizes = PaperSize::ALL.into_iter();
    sizes
        .find(|size| kept.as_deref() == Some(size.label()))
        .unwrap_or(PaperSize::A4)
}

/// Remembers the paper where the browser remembers anything.
pub(crate) fn keep_paper(size: PaperSize) {
    keep(PAPER, size.label());
}

/// The plan kept last, as its text.
#[must_use]
pub(crate) fn plan() -> Option<String> {
    kept(PLAN)
}

/// Remembers a plan where the browser remembers anything.
pub(crate) fn keep_plan(plan: &str) {
    keep(PLAN, plan);
}

fn kept(name: &str) -> Option<String> {
    let storage = window().local_storage().ok().flatten()?;
    storage.get_item(name).ok().flatten()
}

fn keep(name: &str, text: &str) {
    if let Some(storage) = window().local_storage().ok().flatten() {
        // A browser that refuses asks again at the next visit; nothing of the work is lost.
        let _ = storage.set_item(name, text);
    }
}
