//! The unit a person likes to see, remembered by the browser; no part of the project.

use leptos::prelude::window;
use solver::LengthUnit;

const UNIT: &str = "slatwright unit";

/// The unit chosen last; millimetres at first, or where the browser remembers nothing.
#[must_use]
pub(crate) fn unit() -> LengthUnit {
    let kept = window()
        .local_storage()
        .ok()
        .flatten()
        .and_then(|storage| storage.get_item(UNIT).ok().flatten());
    match kept.as_deref() {
        Some("in") => LengthUnit::Inch,
        _ => LengthUnit::Millimetre,
    }
}

/// Remembers the unit where the browser remembers anything.
pub(crate) fn keep_unit(unit: LengthUnit) {
    if let Some(storage) = window().local_storage().ok().flatten() {
        // A browser that refuses asks again at the next visit; nothing of the work is lost.
        let _ = storage.set_item(UNIT, unit.label());
    }
}
