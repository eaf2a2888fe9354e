//! What the run takes.

use solver::{LengthUnit, RunNeeds, figure};

use super::{fine, with_unit};
use crate::note::{Column, Note};

/// What the run takes.
pub(super) fn run(note: &mut Note, needs: &RunNeeds, unit: LengthUnit) {
    note.title(&format!(
        "Run of {} good pencils",
        figure::count(needs.pencils)
    ));
    let mut rows = vec![["Stage", "Takes", "Lets through", ""].map(str::to_owned)];
    rows.extend(needs.stages.iter().map(|count| {
        [
            count.stage.label().to_owned(),
            figure::count(count.taken),
            figure::count(count.needed),
            count.stage.piece().label().to_owned(),
        ]
    }));
    let (words, figures) = (Column::Words, Column::Figures);
    note.table([words, figures, figures, words], &rows);
    note.title("Materials of the run");
    let mass = |kilograms: f64| format!("{} kg", figure::plain(kilograms, 1));
    let (leads, glue, clamp) = (&needs.leads, &needs.glue, &needs.clamp);
    let (coat, wood) = (&needs.coat, &needs.wood);
    let rows = [
        (
            "Leads",
            format!(
                "{} of {}, {} ± {}, {} long; {} laid; {}",
                figure::count(leads.bought),
                leads.grade.label(),
                with_unit(leads.diameter, unit),
                with_unit(leads.tolerance, unit),
                with_unit(leads.length, unit),
                figure::count(leads.laid),
                mass(leads.mass)
            ),
        ),
        (
            "Glue",
            format!(
                "{}; {} g a sandwich",
                mass(glue.mass),
                figure::plain(glue.sandwich, 2)
            ),
        ),
        (
            "Clamps",
            format!(
                "{} kN; {} loads, {} hours in one clamp",
                figure::plain(clamp.force, 1),
                figure::count(clamp.loads),
                figure::plain(clamp.hours, 1)
            ),
        ),
        (
            "Coat",
            format!(
                "{} l; {} l a gross; {}{}{} a pass",
                figure::plain(coat.litres, 1),
                figure::plain(coat.gross, 2),
                fine(coat.pass, unit),
                figure::THIN_SPACE,
                unit.label()
            ),
        ),
        (
            "Slats",
            format!("{}; {}", figure::count(wood.slats), mass(wood.mass)),
        ),
        (
            "Chips",
            format!(
                "{}; {}",
                figure::timber(wood.chips.in_cubic_millimetres(), unit),
                mass(wood.chip_mass)
            ),
        ),
        (
            "Strips and ends",
            format!(
                "{}; {}",
                figure::timber(wood.strips.in_cubic_millimetres(), unit),
                mass(wood.strip_mass)
            ),
        ),
    ];
    let rows = rows.map(|(name, value)| [name.to_owned(), value]);
    note.table([words, words], &rows);
}
