//! Drawings in words, for those who do not see them.

use crate::barrel::Barrel;
use crate::figure;
use crate::finish::FinishedPencil;
use crate::layout::{Layout, Setup};
use crate::quantity::Length;
use crate::sawing::{LaidPlank, SawingNames};
use crate::unit::LengthUnit;

impl FinishedPencil {
    /// The pencil in a few sentences, for those who do not see it.
    #[must_use]
    pub fn described(&self, unit: LengthUnit) -> String {
        let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
        let (barrel, imprint) = (self.barrel(), self.imprint());
        let dip = if self.dip() > Length::ZERO {
            format!(" The last {} are dipped.", length(self.dip()))
        } else {
            String::new()
        };
        let imprint = if imprint.text.is_empty() {
            String::new()
        } else {
            let (text, height) = (&imprint.text, length(imprint.height));
            format!(" Imprinted “{text}” with letters of at most {height}.")
        };
        format!(
            "{} pencil, {} over the coat and {} long, sharpened to {}. Bare lead to {} from the tip, paint edge from {} to {}.{dip}{imprint}",
            barrel.shape().label(),
            length(barrel.size()),
            length(barrel.length()),
            figure::angle(self.half_angle().in_degrees() * 2.0),
            length(self.lead_end()),
            length(self.paint_from()),
            length(self.paint_to()),
        )
    }
}

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

/// A plank and what it is sawn into.
pub(super) fn cut(
    laid: &LaidPlank,
    names: &SawingNames<'_>,
    scales: &str,
    unit: LengthUnit,
) -> String {
    let length = |micrometres: i64| figure::length_with_unit(micrometres as f64 / 1000.0, unit);
    let size = laid.stock().size;
    let sections: Vec<String> = laid
        .sections()
        .iter()
        .map(|section| {
            let (count, word) = match section.count() {
                1 => ("One".to_owned(), "section"),
                count => (figure::count(count), "sections"),
            };
            let blanks: Vec<String> = section
                .strips()
                .iter()
                .map(|strip| {
                    let pieces = figure::count(strip.pieces);
                    format!("{pieces} × {}", names.blank(strip.blank))
                })
                .collect();
            let (long, blanks) = (length(section.length()), blanks.join(" and "));
            format!("{count} {word} of {long}, ripped into {blanks}. ")
        })
        .collect();
    let offcut = match laid.offcut() {
        0 => "Nothing is left at the end".to_owned(),
        left if laid.keeps_offcut() => format!("An offcut of {} is kept", length(left)),
        left => format!("A waste of {} is left at the end", length(left)),
    };
    format!(
        "{} from above, {} long and {} wide. {}{offcut}. {scales}.",
        names.plank(laid.plank()),
        length(size.length),
        length(size.width),
        sections.concat()
    )
}
