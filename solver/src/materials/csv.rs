//! What a run takes, as CSV text.

use super::RunNeeds;
use crate::csv::{Table, length, number};
use crate::unit::LengthUnit;

impl RunNeeds {
    /// What the run takes: a row for each number, with what it is of and its unit.
    ///
    /// Lengths are written to 0.0001 of the unit, masses and volumes in kilograms, litres and cubic
    /// metres.
    #[must_use]
    pub fn csv(&self, unit: LengthUnit) -> String {
        let mut table = Table::headed(&["Material", "Of", "Value", "Unit"].map(str::to_owned));
        let mut row = |what: &str, of: &str, value: String, unit: &str| {
            let [what, of, unit] = [what, of, unit].map(str::to_owned);
            table.row(&[what, of, value, unit]);
        };
        for count in self.stages {
            let (of, piece) = (count.stage.label(), count.stage.piece().label());
            row("Taken in", of, count.taken.to_string(), piece);
            row("Needed from it", of, count.needed.to_string(), piece);
        }
        let leads = &self.leads;
        row("Grade", "Leads", leads.grade.label().to_owned(), "");
        for (what, value) in [
            ("Diameter", leads.diameter),
            ("Tolerance", leads.tolerance),
            ("Length", leads.length),
        ] {
            row(what, "Leads", length(value, unit), unit.label());
        }
        row("Laid", "Leads", leads.laid.to_string(), "leads");
        row("To have", "Leads", leads.bought.to_string(), "leads");
        for (what, of, value, unit) in [
            ("Mass of a gross", "Leads", leads.gross_mass, "g"),
            ("Mass", "Leads", leads.mass, "kg"),
            ("Mass for a sandwich", "Glue", self.glue.sandwich, "g"),
            ("Mass", "Glue", self.glue.mass, "kg"),
            ("Force on a stack", "Clamps", self.clamp.force, "kN"),
            ("Loads", "Clamps", self.clamp.loads as f64, ""),
            ("Time in one clamp", "Clamps", self.clamp.hours, "h"),
            ("Volume for a gross", "Coat", self.coat.gross, "l"),
            ("Volume", "Coat", self.coat.litres, "l"),
            ("Density", "Wood", self.wood.density, "kg/m3"),
            ("Mass of the slats", "Wood", self.wood.mass, "kg"),
            (
                "Chips",
                "Wood",
                self.wood.chips.in_cubic_millimetres() / 1e9,
                "m3",
            ),
            ("Mass of the chips", "Wood", self.wood.chip_mass, "kg"),
            (
                "Strips and ends",
                "Wood",
                self.wood.strips.in_cubic_millimetres() / 1e9,
                "m3",
            ),
            (
                "Mass of strips and ends",
                "Wood",
                self.wood.strip_mass,
                "kg",
            ),
        ] {
            row(what, of, number(value), unit);
        }
        table.done()
    }
}
