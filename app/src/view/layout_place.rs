//! How a pencil lies on the slats: drawing, inputs, checks, grooves, wood, stocks.

use super::Place;
use super::checks::Checks;
use super::comparison::Comparison;
use super::drawing_sheet::{DrawingSheet, SheetSize, homeless_slots};
use super::entry_table::EntryTable;
use super::expected_good::ExpectedGood;
use super::groove_table::GrooveTable;
use super::keyed::keyed;
use super::live::live;
use super::number_field::NumberField;
use super::problem_list::{ProblemList, named};
use super::ranking_table::RankingTable;
use super::search_table::SearchTable;
use super::stairs::Stairs;
use super::threshold_table::ThresholdTable;
use super::when::When;
use super::wood_balance::{Lit, WoodBalanceTable};
use crate::workbench::{Shown, Slot, Table, Workbench, barrel_shape};
use leptos::prelude::*;
use solver::{
    CutterSetDraft, Entry, Field, Id, Outcome, Size, Spacing, Way, draw_sandwich, figure,
};

/// The sizes that are typed over on the drawing.
const DRIVING: [Size; 7] = [
    Size::SlatWidth,
    Size::TopWidth,
    Size::TopThickness,
    Size::BottomThickness,
    Size::Barrel,
    Size::CornerRadius,
    Size::Lead,
];

/// The place of the woodshop lead.
#[component]
pub(crate) fn LayoutPlace() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let size = SheetSize::new();
    let lit = Lit::new();
    let drawing = Memo::new(move |_| {
        let sheet = size.sheet(bench)?;
        bench.layout().with(|shown| {
            shown
                .as_ref()
                .map(|shown| draw_sandwich(&shown.parts.setup(), &shown.layout, &sheet))
        })
    });
    let stale = Signal::derive(move || {
        bench
            .layout()
            .with(|shown| shown.as_ref().is_some_and(|shown| shown.stale))
    });
    let homeless = Memo::new(move |_| {
        let nothing_to_draw = bench.layout().with(Option::is_none);
        let all = if nothing_to_draw {
            DRIVING.as_slice()
        } else {
            &[]
        };
        drawing.with(|drawing| homeless_slots(drawing.as_ref(), all, &bench.project().read()))
    });
    view! {
        <div class="place layout-place">
            <section class="board" aria-label="Cross-section of the sandwich">
                <Verdict/>
                <ExpectedGood/>
                <DrawingSheet drawing size title="Sandwich with its grooves" context="drawing" stale lit/>
                <Meaning/>
            </section>
            <aside class="column" aria-label="Inputs">
                <ProblemList/>
                <Pencil homeless/>
                <Slats/>
                <Machining/>
            </aside>
            <div class="results" class:stale=stale>
                <p class="before" hidden=move || !stale.get()>
                    "What stands behind a dotted line is from before the last change; something is to be mended."
                </p>
                <Checks title="Checks" only=&[]/>
                <GrooveTable/>
                <WoodBalanceTable lit/>
                <Comparison/>
                <RankingTable/>
                <SearchTable/>
                <ThresholdTable/>
                <Stairs/>
                <EntryTable
                    table=Table::CutterSets
                    empty="No cutter set yet. Grooves can be spaced by a set once one stands here."
                />
            </div>
        </div>
    }
}

/// The answer to the first question, in a line.
#[component]
fn Verdict() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let words = move || {
        if bench.project().read().slats.is_empty() {
            return view! {
                <p class="verdict">
                    "There is no slat to lay the pencil on. "
                    <a href=Place::Timber.fragment()>"Add a slat stock"</a>
                </p>
            }
            .into_any();
        }
        bench.layout().with(|shown| match shown {
            None => {
                view! { <p class="verdict">"Nothing to draw yet: mend what is listed beside."</p> }
                    .into_any()
            }
            Some(shown) => verdict(shown).into_any(),
        })
    };
    view! { <div aria-live="polite">{live(words)}</div> }
}

fn verdict(shown: &Shown) -> impl IntoView + use<> {
    let layout = &shown.layout;
    let pencils = layout.pencils();
    let noun = if pencils == 1 { "pencil" } else { "pencils" };
    let reason = match (shown.stale, layout.fits()) {
        (true, _) => {
            "from one sandwich before the last change; something is to be mended".to_owned()
        }
        (false, true) => {
            let yielded = layout.balance().map_or(0.0, solver::WoodBalance::yielded);
            format!(
                "from one sandwich; {} of the wood bought is in them",
                figure::ratio(yielded)
            )
        }
        (false, false) => match layout.across() {
            0 => "from one sandwich: not one fits across".to_owned(),
            across => {
                let failing = layout
                    .checks()
                    .iter()
                    .find(|check| check.outcome == Outcome::Failed)
                    .map_or("a check", |check| check.rule.label());
                format!("from one sandwich: {across} fit across, but this check fails: {failing}")
            }
        },
    };
    view! {
        <p class="verdict" class:fails=!layout.fits() class:stale=shown.stale>
            <strong>{pencils}" "{noun}</strong>
            " "
            <span>{reason}</span>
        </p>
    }
}

/// What the field in use means.
#[component]
fn Meaning() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let words = move || {
        bench.meaning.get().map_or_else(
            || "Dimensions in colour can be typed over and gauges can be slid; the others follow from them.".to_owned(),
            |field| {
                let spec = field.spec();
                format!("{}: {}", spec.label, spec.meaning)
            },
        )
    };
    view! { <p class="hint">{live(words)}</p> }
}

#[component]
fn Pencil(homeless: Memo<Vec<Slot>>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let barrel = Memo::new(move |_| project.read().layout.barrel);
    let shape = Memo::new(move |_| barrel_shape(&project.read()));
    let names = Memo::new(move |_| {
        let project = project.read();
        let barrels = project.barrels.iter().enumerate();
        barrels
            .map(|(at, entry)| (entry.id, named(&entry.draft.name, "Barrel", at)))
            .collect::<Vec<_>>()
    });
    let way = Memo::new(move |_| project.read().layout_way());
    let ways = move || {
        let ways = shape.get().map(Way::of).unwrap_or_default();
        let chosen = way.get();
        let single = ways.len() == 1;
        ways.into_iter()
            .map(|way| {
                let pick = move |_| bench.change(|project| project.layout.way = way);
                view! {
                    <label class="choice">
                        <input type="radio" name="way" prop:checked=way == chosen disabled=single on:change=pick/>
                        {way.label()}
                    </label>
                }
            })
            .collect_view()
    };
    let turned = move || way.get() == Way::Turned;
    view! {
        <fieldset>
            <legend>"Pencil"</legend>
            <div class="field row">
                <label for="layout-barrel">"Barrel"</label>
                <select
                    id="layout-barrel"
                    on:change=move |event| {
                        if let Some(id) = read_id(&event_target_value(&event)) {
                            bench.change(|project| project.layout.barrel = id);
                        }
                    }
                >
                    {live(move || choices(names.get(), barrel.get()))}
                </select>
            </div>
            <div class="choices" role="radiogroup" aria-label="How the barrel lies">{live(ways)}</div>
            <When holds=turned><NumberField at=Slot::Turn context="column"/></When>
            // Sizes that have no place on the drawing are asked for here.
            {keyed(move || homeless.get(), |at| view! { <NumberField at context="column"/> })}
            {live(move || {
                let id = barrel.get();
                view! {
                    <NumberField at=Slot::Barrel(id, Field::Coat) context="column"/>
                    <NumberField at=Slot::Barrel(id, Field::PencilLength) context="column"/>
                }
            })}
            <NumberField at=Slot::Rules(Field::Clearance) context="column"/>
        </fieldset>
    }
}

#[component]
fn Slats() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let names = Memo::new(move |_| {
        let project = project.read();
        let slats = project.slats.iter().enumerate();
        slats
            .map(|(at, entry)| (entry.id, named(&entry.draft.name, "Slat", at)))
            .collect::<Vec<_>>()
    });
    let (top, bottom) = (
        Memo::new(move |_| project.read().layout.top),
        Memo::new(move |_| project.read().layout.bottom),
    );
    view! {
        <fieldset>
            <legend>"Slats"</legend>
            <div class="field row">
                <label for="layout-top">"Top slat"</label>
                <select
                    id="layout-top"
                    on:change=move |event| {
                        if let Some(id) = read_id(&event_target_value(&event)) {
                            bench.change(|project| {
                                // While both are alike, they stay alike.
                                if project.layout.bottom == project.layout.top {
                                    project.layout.bottom = id;
                                }
                                project.layout.top = id;
                            });
                        }
                    }
                >
                    {live(move || choices(names.get(), top.get()))}
                </select>
            </div>
            {live(move || (top.get() != bottom.get()).then(|| slat_fields(top.get(), "Top slat")))}
            <div class="field row">
                <label for="layout-bottom">"Bottom slat"</label>
                <select
                    id="layout-bottom"
                    on:change=move |event| {
                        if let Some(id) = read_id(&event_target_value(&event)) {
                            bench.change(|project| project.layout.bottom = id);
                        }
                    }
                >
                    {live(move || choices(names.get(), bottom.get()))}
                </select>
            </div>
            {live(move || {
                let whose = if top.get() == bottom.get() { "Both slats" } else { "Bottom slat" };
                slat_fields(bottom.get(), whose)
            })}
        </fieldset>
    }
}

/// The sizes of a slat that have no place on the drawing.
fn slat_fields(id: Id, whose: &'static str) -> impl IntoView + use<> {
    [
        Field::SlatLength,
        Field::WidthTolerance,
        Field::ThicknessTolerance,
    ]
    .map(|field| {
        let name = Signal::derive(move || format!("{whose}: {}", field.spec().label));
        view! { <NumberField at=Slot::Slat(id, field) context="column" name/> }
    })
    .collect_view()
}

#[component]
fn Machining() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let spacing = Memo::new(move |_| project.read().rules.spacing);
    let spacings = move || {
        let chosen = spacing.get();
        Spacing::ALL
            .into_iter()
            .chain([Spacing::Set])
            .map(|spacing| {
                let pick = move |_| bench.change(|project| take_spacing(project, spacing));
                view! {
                    <label class="choice">
                        <input type="radio" name="spacing" prop:checked=spacing == chosen on:change=pick/>
                        {spacing.label()}
                    </label>
                }
            })
            .collect_view()
    };
    view! {
        <fieldset>
            <legend>"Machining"</legend>
            <div class="choices" role="radiogroup" aria-label="How grooves are spaced">{live(spacings)}</div>
            <When holds=move || spacing.get() == Spacing::Set>
                <SetChoice/>
            </When>
            // On the drawing the land can be typed over only where it sets the pitch, and only
            // between two pencils.
            <When holds=move || spacing.get() != Spacing::Closest || bench.layout().with(few_pencils)>
                <NumberField at=Slot::Rules(Field::Land) context="column"/>
            </When>
            <When holds=move || spacing.get() == Spacing::Given && bench.layout().with(few_pencils)>
                <NumberField at=Slot::Rules(Field::Pitch) context="column"/>
            </When>
            {rule_fields(&[
                Field::MostAcross,
                Field::EdgeAllowance,
                Field::PlaningAllowance,
                Field::Floor,
                Field::Wall,
                Field::Eccentricity,
                Field::Bond,
                Field::Relief,
                Field::AxisHeight,
            ])}
        </fieldset>
        <fieldset>
            <legend>"Lengths and rejects"</legend>
            {rule_fields(&[Field::EndTrim, Field::SawKerf, Field::SlatRejects, Field::PencilRejects])}
            <button type="button" on:click=move |_| bench.change(|project| project.rules = solver::RulesDraft::new())>
                "Machining rules as at first"
            </button>
        </fieldset>
    }
}

fn rule_fields(fields: &[Field]) -> impl IntoView + use<> {
    fields
        .iter()
        .map(|field| view! { <NumberField at=Slot::Rules(*field) context="column"/> })
        .collect_view()
}

/// The cutter set that sets the pitch. What is wrong with the choice leads here.
#[component]
fn SetChoice() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let slot = Slot::Rules(Field::Pitch);
    let element_id = slot.element_id("column");
    let message_id = format!("{element_id}-message");
    let options = move || {
        let project = project.read();
        let chosen = project.rules.cutter_set;
        let sets = project.cutter_sets.iter().enumerate();
        let sets = sets.map(|(at, entry)| {
            let name = named(&entry.draft.name, "Cutter set", at);
            let ground_for = entry.draft.barrel;
            let serves = ground_for.is_none_or(|barrel| barrel == project.layout.barrel);
            let note = if serves { "" } else { " (for another barrel)" };
            (entry.id, format!("{name}{note}"))
        });
        optional_choices(sets.collect(), chosen, "None chosen", "One that is gone")
    };
    let pick = move |event| {
        let chosen = read_id(&event_target_value(&event));
        bench.change(|project| project.rules.cutter_set = chosen);
    };
    let message = Memo::new(move |_| bench.message_at(slot));
    let wrong = move || message.with(Option::is_some);
    let described = {
        let message_id = message_id.clone();
        move || wrong().then(|| message_id.clone())
    };
    view! {
        <div class="field row">
            <label for=element_id.clone()>"Cutter set"</label>
            <select
                id=element_id
                class:wrong=wrong
                aria-invalid=move || if wrong() { "true" } else { "false" }
                aria-describedby=described
                on:change=pick
            >
                {live(options)}
            </select>
            <p class="problem" id=message_id role="status" hidden=move || !wrong()>
                {live(move || message.get().unwrap_or_default())}
            </p>
        </div>
    }
}

/// Whether the drawing has no two pencils between which a land or a pitch can be shown.
fn few_pencils(shown: &Option<Shown>) -> bool {
    shown.as_ref().is_none_or(|shown| shown.layout.across() < 2)
}

/// Changes the spacing; a given pitch starts from the one that is laid now, and a cutter set from
/// one that serves the barrel.
fn take_spacing(project: &mut solver::ProjectDraft, spacing: Spacing) {
    if spacing == Spacing::Given
        && project.rules.spacing != Spacing::Given
        && let Ok(parts) = project.check_layout()
    {
        let pitch = solver::lay_out(&parts.setup()).pitch();
        project.rules.pitch = solver::Typed::Number(pitch.in_millimetres());
    }
    let chosen = project.rules.cutter_set;
    if spacing == Spacing::Set && chosen.is_none_or(|id| project.cutter_set_place(id).is_none()) {
        let barrel = project.layout.barrel;
        let serves = |set: &&Entry<CutterSetDraft>| set.draft.barrel.is_none_or(|id| id == barrel);
        project.rules.cutter_set = project.cutter_sets.iter().find(serves).map(|set| set.id);
    }
    project.rules.spacing = spacing;
}

/// The options of a select that picks from a list.
pub(crate) fn choices(options: Vec<(Id, String)>, chosen: Id) -> impl IntoView {
    options
        .into_iter()
        .map(|(id, name)| view! { <option value=id.0.to_string() selected=id == chosen prop:selected=id == chosen>{name}</option> })
        .collect_view()
}

/// The options of a select that picks from a list or nothing; what has gone from the list is told.
pub(crate) fn optional_choices(
    options: Vec<(Id, String)>,
    chosen: Option<Id>,
    none: &'static str,
    gone: &'static str,
) -> impl IntoView {
    let is_gone = chosen.is_some_and(|id| options.iter().all(|(option, _)| *option != id));
    let rows = [(None, none.to_owned())]
        .into_iter()
        .chain(
            chosen
                .filter(|_| is_gone)
                .map(|id| (Some(id), gone.to_owned())),
        )
        .chain(options.into_iter().map(|(id, name)| (Some(id), name)));
    rows.map(|(id, name)| {
        let value = id.map(|id| id.0.to_string()).unwrap_or_default();
        view! { <option value=value selected=id == chosen prop:selected=id == chosen>{name}</option> }
    })
    .collect_view()
}

/// The lasting name behind an option.
pub(crate) fn read_id(value: &str) -> Option<Id> {
    value.parse().ok().map(Id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;

    #[test]
    fn spacing_by_a_set_begins_with_one_that_serves_the_barrel() {
        let mut project = demo::project();
        project.layout.barrel = Id(2);
        take_spacing(&mut project, Spacing::Set);
        assert_eq!(project.rules.cutter_set, Some(Id(32)));
        project.layout.barrel = Id(3);
        take_spacing(&mut project, Spacing::Set);
        assert_eq!(
            project.rules.cutter_set,
            Some(Id(32)),
            "what was chosen is kept"
        );
    }

    #[test]
    fn a_given_pitch_begins_with_the_one_that_is_laid() {
        let mut project = demo::project();
        let laid = solver::lay_out(&project.check_layout().unwrap().setup()).pitch();
        take_spacing(&mut project, Spacing::Given);
        assert_eq!(
            project.rules.pitch,
            solver::Typed::Number(laid.in_millimetres())
        );
    }
}
