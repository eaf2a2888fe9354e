//! What the next pencil costs: the nearest values of each input at which something changes.

use super::answered::answered;
use super::live::live;
use crate::protocol::{ChangeLine, InputAddress, OwnerWord, ThresholdRow};
use crate::workbench::{Searches, Slot, Workbench};
use leptos::prelude::*;
use solver::{Field, Id, ProjectDraft, Typed, figure};

/// A row for each change, down before up; a press puts the value in.
#[component]
pub(crate) fn ThresholdTable() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let unit = bench.unit;
    let state = expect_context::<Searches>().thresholds.state();
    let show = move |rows: Vec<ThresholdRow>| {
        let rows = rows.into_iter().flat_map(lines);
        let rows = rows.map(|(input, today, line)| view! { <Line input today line/> });
        let rows = rows.collect_view();
        view! {
            <div class="scroll" tabindex="0" role="group" aria-label="Changes of one input">
                <table>
                    <thead>
                        <tr>
                            <th scope="col">"Input"</th>
                            <th scope="col" class="figure">"Today, " {live(move || unit.get().label())}</th>
                            <th scope="col" class="figure">"Changes at, " {live(move || unit.get().label())}</th>
                            <th scope="col"><span class="unseen">"Put it in"</span></th>
                            <th scope="col">"What happens"</th>
                            <th scope="col" class="figure">"Saved a gross"</th>
                            <th scope="col" class="figure">"Saved a year"</th>
                        </tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
            </div>
        }
        .into_any()
    };
    let body = move || answered(state.get(), Some("Trying every input …"), show);
    view! {
        <section class="result steps" aria-labelledby="steps-title">
            <h2 id="steps-title">"What the next pencil costs"</h2>
            {live(body)}
        </section>
    }
}

/// The changes of one input, each with the input and today's value.
fn lines(row: ThresholdRow) -> impl Iterator<Item = (InputAddress, f64, ChangeLine)> {
    let (input, today) = (row.input, row.today_mm);
    let changes = row.down.into_iter().chain(row.up);
    changes.map(move |line| (input, today, line))
}

#[component]
fn Line(input: InputAddress, today: f64, line: ChangeLine) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let unit = bench.unit;
    let slot = slot_of(input);
    let name = slot.map_or_else(String::new, |slot| {
        name_of(slot, &bench.project().read_untracked())
    });
    let value = line.shown_mm;
    let put = move |_| {
        if let Some(slot) = slot {
            bench.change(|project| slot.set(project, Typed::Number(value)));
        }
    };
    let money = |saved: Option<f64>| {
        saved.map_or_else(|| figure::NO_FIGURE.to_owned(), figure::money_rounded)
    };
    let at = line.at_mm;
    let direction = if at < today { "down to" } else { "up to" };
    let spoken = {
        let name = name.clone();
        move || {
            let length = figure::length_with_unit(value, unit.get());
            format!("Put in {name}, {length}")
        }
    };
    view! {
        <tr>
            <th scope="row">{name}</th>
            <td class="figure">{live(move || figure::length(today, unit.get()))}</td>
            <td class="figure strong" title=move || figure::length_exact(at, unit.get())>
                <span class="here">{direction}" "</span>
                {live(move || figure::length(value, unit.get()))}
            </td>
            <td class="tools"><button type="button" aria-label=spoken on:click=put>"Put in"</button></td>
            <td>{effect(&line)}</td>
            <td class="figure">{money(line.saved_per_gross)}</td>
            <td class="figure">{money(line.saved_per_year)}</td>
        </tr>
    }
}

/// Where an input stands, as the page addresses it.
fn slot_of(input: InputAddress) -> Option<Slot> {
    let field = *Field::ALL.get(input.field as usize)?;
    Some(match input.owner {
        OwnerWord::Slat(id) => Slot::Slat(Id(id), field),
        OwnerWord::Rules => Slot::Rules(field),
        OwnerWord::CutterSet(id) => Slot::CutterSet(Id(id), field),
        OwnerWord::Barrel(id) => Slot::Barrel(Id(id), field),
    })
}

/// The label of an input; of two different slats with the name of the stock.
fn name_of(slot: Slot, project: &ProjectDraft) -> String {
    let label = slot.field().spec().label;
    match slot {
        Slot::Slat(id, _) if project.layout.top != project.layout.bottom => {
            let slat = project
                .slat_place(id)
                .map(|at| &project.slats[at].draft.name);
            slat.map_or_else(|| label.to_owned(), |name| format!("{label}, {name}"))
        }
        _ => label.to_owned(),
    }
}

/// What happens there, in words.
fn effect(line: &ChangeLine) -> String {
    if line.unmade {
        return "The barrel cannot be made".to_owned();
    }
    let mut words = Vec::new();
    if line.pencils_after != line.pencils_before {
        words.push(format!(
            "{} pencils, not {}",
            line.pencils_after, line.pencils_before
        ));
    } else if line.across_after != line.across_before {
        words.push(format!(
            "{} side by side, not {}",
            line.across_after, line.across_before
        ));
    }
    words.extend(line.broken.iter().map(|check| format!("fails: {check}")));
    words.extend(line.mended.iter().map(|check| format!("passes: {check}")));
    words.join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;

    fn line(pencils: (u32, u32), across: (u32, u32), broken: &[&str]) -> ChangeLine {
        ChangeLine {
            at_mm: 81.24,
            shown_mm: 81.24,
            pencils_before: pencils.0,
            pencils_after: pencils.1,
            across_before: across.0,
            across_after: across.1,
            mended: Vec::new(),
            broken: broken.iter().map(|&check| check.to_owned()).collect(),
            unmade: false,
            saved_per_gross: None,
            saved_per_year: None,
        }
    }

    #[test]
    fn what_happens_is_told_in_words() {
        assert_eq!(effect(&line((10, 11), (10, 11), &[])), "11 pencils, not 10");
        assert_eq!(
            effect(&line((10, 0), (10, 10), &["Edge"])),
            "0 pencils, not 10; fails: Edge"
        );
        assert_eq!(
            effect(&line((0, 0), (9, 10), &[])),
            "10 side by side, not 9"
        );
        let unmade = ChangeLine {
            unmade: true,
            ..line((10, 0), (10, 0), &[])
        };
        assert_eq!(effect(&unmade), "The barrel cannot be made");
    }

    #[test]
    fn an_input_is_named_with_its_stock_where_the_slats_differ() {
        let mut project = demo::project();
        let slot = Slot::Slat(Id(11), Field::SlatWidth);
        assert_eq!(name_of(slot, &project), "Slat width");
        project.layout.bottom = Id(12);
        assert_eq!(name_of(slot, &project), "Slat width, Seven-ply, 74");
    }
}
