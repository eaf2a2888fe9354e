//! Drawings in words, for those who do not see them.

use crate::barrel::Barrel;
use crate::figure;
use crate::layout::{Layout, Setup};
use crate::quantity::Length;
use crate::unit::LengthUnit;

/// The sandwich in a few sentences.
pub(super) fn sandwich(setup: &Setup<'_>, layout: &Layout, unit: LengthUnit) -> String {
    let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
    let (top, bottom) = (setup.top, setup.bottom);
    let slats = if top == bottom {
        format!(
            "two slats {} wide and {} thick",
            length(top.width()),
            length(top.thickness())
        )
    } else {
        format!(
            "a top slat {} wide and {} thick on a bottom slat {} wide and {} thick",
            length(top.width()),
            length(top.thickness()),
            length(bottom.width()),
            length(bottom.thickness())
        )
    };
    let pencil = format!(
        "{} barrels, {} over the coat",
        setup.barrel.shape().label().to_lowercase(),
        length(setup.barrel.size())
    );
    match layout.across() {
        0 => format!("Cross-section of {slats}. Not one of the {pencil}, fits across."),
        count => {
            let first = layout
                .grooves()
                .first()
                .map_or(Length::ZERO, |groove| groove.centre);
            let fit = if layout.fits() {
                ""
            } else {
                " A check fails, so the sandwich gives no good pencils."
            };
            format!(
                "Cross-section of {slats} with {count} {pencil}. First groove {} from the datum edge, pitch {}.{fit}",
                length(first),
                length(layout.pitch())
            )
        }
    }
}

/// A barrel in a sentence.
pub(super) fn barrel(barrel: &Barrel, unit: LengthUnit) -> String {
    let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
    format!(
        "End view of a {} barrel, {} over a coat of {}, round a lead of {}.",
        barrel.shape().label().to_lowercase(),
        length(barrel.size()),
        length(barrel.coat()),
        length(barrel.lead_diameter())
    )
}
