//! What is told of a finished pencil, row by row.

use super::body::{self, Body};
use super::facts::PencilFacts;
use crate::csv::{Table, length, number};
use crate::figure;
use crate::unit::LengthUnit;

/// What a fact is a number of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FactQuantity {
    /// Millimetres.
    Length,
    /// Cubic millimetres.
    Volume,
    /// Grams.
    Mass,
    /// Gram square millimetres.
    Inertia,
    /// Degrees.
    Angle,
    /// Pencils, rests.
    Count,
}

/// A row of the table of facts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fact {
    /// What it is.
    pub name: &'static str,
    /// What it is a number of.
    pub quantity: FactQuantity,
    /// Of the pencil as it is made.
    pub made: Option<f64>,
    /// Of the sharpened pencil; none where it is the same or has no meaning.
    pub sharpened: Option<f64>,
}

impl Fact {
    /// A number of it as it is shown, with its unit; a dash for none.
    #[must_use]
    pub fn text(&self, value: Option<f64>, unit: LengthUnit) -> String {
        let Some(value) = value else {
            return "–".to_owned();
        };
        let spaced = |text: String, unit: &str| format!("{text}{}{unit}", figure::THIN_SPACE);
        match self.quantity {
            FactQuantity::Length => figure::length_with_unit(value, unit),
            FactQuantity::Volume => spaced(figure::volume(value, unit), unit.volume_label()),
            FactQuantity::Mass => spaced(figure::plain(value, 2), "g"),
            FactQuantity::Inertia => spaced(figure::plain(value, 1), "g·mm²"),
            FactQuantity::Angle => format!("{}°", figure::plain(value, 1)),
            FactQuantity::Count => figure::plain(value, 0),
        }
    }
}

/// A material of a pencil.
type Part = fn(&Body) -> body::Mass;

impl PencilFacts {
    /// Every row of the table of facts.
    #[must_use]
    pub fn rows(&self) -> Vec<Fact> {
        use FactQuantity::{Angle, Count, Inertia, Length, Mass, Volume};
        let mut rows = Vec::new();
        let mut row = |name, quantity, made, sharpened| {
            rows.push(Fact {
                name,
                quantity,
                made,
                sharpened,
            });
        };
        let both = [&self.made, &self.sharpened];
        let mut of_both = |name, quantity, value: &dyn Fn(&Body) -> f64| {
            let [made, sharpened] = both.map(value);
            row(name, quantity, Some(made), Some(sharpened));
        };
        of_both("Mass", Mass, &|body| body.grams);
        let (wood, lead, coat): (Part, Part, Part) =
            (|body| body.wood, |body| body.lead, |body| body.coat);
        for (mass, volume, of) in [
            ("Wood, mass", "Wood, volume", wood),
            ("Lead, mass", "Lead, volume", lead),
            ("Coat, mass", "Coat, volume", coat),
        ] {
            of_both(mass, Mass, &|body| of(body).grams);
            of_both(volume, Volume, &|body| {
                of(body).volume.in_cubic_millimetres()
            });
        }
        of_both("Balance point from the tip", Length, &|body| {
            body.balance.in_millimetres()
        });
        of_both("Moment of inertia about the lead", Inertia, &|body| {
            body.inertia
        });
        let imprint = &self.imprint;
        for (name, length) in [
            ("Lead bare from the tip", self.lead_end),
            ("Paint edge, nearest to the tip", self.paint_from),
            ("Paint edge, farthest from the tip", self.paint_to),
            ("Depth of the scallops", self.paint_to - self.paint_from),
        ] {
            row(name, Length, None, Some(length.in_millimetres()));
        }
        for (name, length) in [
            ("Width of the face for an imprint", imprint.face.width()),
            ("Largest letters", imprint.height),
            ("Grip: girth of the hull", self.grip),
        ] {
            row(name, Length, Some(length.in_millimetres()), None);
        }
        row(
            "Length for an imprint",
            Length,
            None,
            Some((imprint.to - imprint.from).in_millimetres()),
        );
        row(
            "Starts to roll on a slope of",
            Angle,
            None,
            Some(self.rolls_at.in_degrees()),
        );
        row("Faces it rests on", Count, None, Some(self.rests as f64));
        for (name, rows) in [
            ("In the tin, at least, in straight rows", &self.straight),
            ("In the tin, at least, in staggered rows", &self.staggered),
        ] {
            row(name, Count, Some(f64::from(rows.pencils)), None);
        }
        rows
    }

    /// The table of facts as CSV: a row for each, with its unit.
    ///
    /// Lengths are written to 0.0001 of the unit, volumes in cubic centimetres or inches.
    #[must_use]
    pub fn csv(&self, unit: LengthUnit) -> String {
        let mut table = Table::headed(&["Fact", "As made", "Sharpened", "Unit"].map(str::to_owned));
        for fact in self.rows() {
            let inch = unit.millimetres();
            let (written, named): (&dyn Fn(f64) -> String, &str) = match fact.quantity {
                FactQuantity::Length => (
                    &|value| length(crate::quantity::Length::millimetres(value), unit),
                    unit.label(),
                ),
                FactQuantity::Volume if unit == LengthUnit::Inch => {
                    (&|value| number(value / (inch * inch * inch)), "in3")
                }
                FactQuantity::Volume => (&|value| number(value / 1000.0), "cm3"),
                FactQuantity::Mass => (&number, "g"),
                FactQuantity::Inertia => (&number, "g mm2"),
                FactQuantity::Angle => (&number, "degrees"),
                FactQuantity::Count => (&number, ""),
            };
            let cell = |value: Option<f64>| value.map_or_else(String::new, written);
            table.row(&[
                fact.name.to_owned(),
                cell(fact.made),
                cell(fact.sharpened),
                named.to_owned(),
            ]);
        }
        table.done()
    }
}
