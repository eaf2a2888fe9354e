//! What the run takes: pieces stage by stage, leads, glue, clamps, coat, wood.

use super::cut_tables::scrolled;
use super::live::live;
use super::number_field::{Look, NumberField};
use super::office::Office;
use super::setting_files::save_file;
use super::setting_tables::facts;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{Length, LengthUnit, RunNeeds, Stage, figure, run_needs};

/// What the run of the layout takes, if it can be reckoned.
#[component]
pub(crate) fn RunTable() -> impl IntoView {
    let office = expect_context::<Office>();
    let bench = expect_context::<Workbench>();
    let needs = Memo::new(move |_| {
        let run = bench.project().read().check_run().ok()?;
        let machined = office.machined.read();
        let machined = machined.as_ref().filter(|machined| !machined.stale)?;
        let setup = machined.parts.layout.setup();
        run_needs(&setup, &machined.layout, &run, machined.parts.conditions)
    });
    // The rows stay while their counts change, as their yields are typed in them.
    let rows = Stage::ALL.map(|stage| {
        let count = Memo::new(move |_| Some(needs.read().as_ref()?.stages[stage as usize]));
        let pieces = move |pieces: fn(solver::StageCount) -> u64| {
            count.get().map_or_else(
                || figure::NO_FIGURE.to_owned(),
                |count| figure::count(pieces(count)),
            )
        };
        let name = Signal::stored(format!("{}: yield", stage.label()));
        view! {
            <tr>
                <th scope="row">{stage.label()}</th>
                <td>{stage.piece().label()}</td>
                <td class="figure strong">{live(move || pieces(|count| count.taken))}</td>
                <td class="yield"><NumberField at=Slot::Yield(stage) context="column" look=Look::Bare name/></td>
                <td class="figure">{live(move || pieces(|count| count.needed))}</td>
            </tr>
        }
    });
    let table = view! {
        <table>
            <thead>
                <tr>
                    <th scope="col">"Stage"</th>
                    <th scope="col">"Counts"</th>
                    <th scope="col" class="figure">"Taken in"</th>
                    <th scope="col" class="figure">"Yield, %"</th>
                    <th scope="col" class="figure">"Needed from it"</th>
                </tr>
            </thead>
            <tbody>{rows.into_iter().collect_view()}</tbody>
        </table>
    };
    let wanted = move || {
        match needs.read().as_ref() {
        Some(needs) => format!(
            "For {} good pencils:",
            figure::count(needs.pencils)
        ),
        None => "Materials are reckoned once everything listed is mended and every check of the layout passes.".to_owned(),
    }
    };
    let lists = move || Some(lists(needs.read().as_ref()?, bench.unit.get()));
    let save = move |_| {
        if let Some(needs) = needs.get_untracked() {
            let text = needs.csv(bench.unit.get_untracked());
            save_file(bench, "Run", "csv", &text);
        }
    };
    view! {
        <section class="result run" aria-labelledby="run-title">
            <h2 id="run-title">"Materials of the run"</h2>
            <p aria-live="polite">{live(wanted)}</p>
            {scrolled("Pieces, stage by stage", table.into_any())}
            {live(lists)}
            <div class="actions" hidden=move || needs.with(Option::is_none)>
                <button type="button" on:click=save>"Materials as CSV"</button>
            </div>
        </section>
    }
}

/// Leads, glue and the others, each a list.
fn lists(needs: &RunNeeds, unit: LengthUnit) -> AnyView {
    let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
    let with = |value: f64, decimals: usize, unit: &str| {
        format!(
            "{}{}{unit}",
            figure::plain(value, decimals),
            figure::THIN_SPACE
        )
    };
    let (leads, glue, clamp, coat, wood) = (
        &needs.leads,
        &needs.glue,
        &needs.clamp,
        &needs.coat,
        &needs.wood,
    );
    let diameter = format!(
        "{} ± {}",
        figure::length(leads.diameter.in_millimetres(), unit),
        length(leads.tolerance)
    );
    let lists = [
        (
            "Leads",
            vec![
                ("Grade", leads.grade.label().to_owned()),
                ("Diameter", diameter),
                ("Length", length(leads.length)),
                ("Laid", figure::count(leads.laid)),
                (
                    "To have, with those that break",
                    figure::count(leads.bought),
                ),
                ("Mass of a gross", with(leads.gross_mass, 0, "g")),
                ("Mass", with(leads.mass, 1, "kg")),
            ],
        ),
        (
            "Glue",
            vec![
                ("For a sandwich", with(glue.sandwich, 2, "g")),
                ("For the run", with(glue.mass, 2, "kg")),
            ],
        ),
        (
            "Clamps",
            vec![
                ("Sandwiches", figure::count(needs.sandwiches)),
                ("Force on a stack", with(clamp.force, 1, "kN")),
                ("Loads", figure::count(clamp.loads)),
                ("Time in one clamp", with(clamp.hours, 1, "h")),
            ],
        ),
        (
            "Coat",
            vec![
                (
                    "Build of one pass",
                    format!(
                        "{}{}{}",
                        figure::length_of_error(coat.pass.in_millimetres(), unit),
                        figure::THIN_SPACE,
                        unit.label()
                    ),
                ),
                ("For a gross", with(coat.gross, 3, "l")),
                ("For the run", with(coat.litres, 1, "l")),
            ],
        ),
        (
            "Wood and chips",
            vec![
                ("Slats", figure::count(wood.slats)),
                ("Density", with(wood.density, 0, "kg/m³")),
                ("Mass of the slats", with(wood.mass, 1, "kg")),
                (
                    "Chips, as solid wood",
                    figure::timber(wood.chips.in_cubic_millimetres(), unit),
                ),
                ("Mass of the chips", with(wood.chip_mass, 1, "kg")),
                (
                    "Strips and ends, as solid wood",
                    figure::timber(wood.strips.in_cubic_millimetres(), unit),
                ),
                ("Mass of strips and ends", with(wood.strip_mass, 1, "kg")),
            ],
        ),
    ];
    let lists = lists.map(|(title, list)| {
        view! { <div><h3>{title}</h3>{facts(list)}</div> }
    });
    view! { <div class="needs">{lists.into_iter().collect_view()}</div> }.into_any()
}
