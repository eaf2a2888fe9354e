//! What the machines are set to, as tables: slats, heights, marks, cautions.

use super::cut_tables::{plain_table, row};
use super::live::live;
use crate::workbench::{Machined, Workbench};
use leptos::prelude::*;
use solver::{HeadKind, Length, LengthUnit, Setting, SlatSetting, figure};

/// How a length is shown, in millimetres.
type Show = dyn Fn(f64, LengthUnit) -> String;

/// The sizes of slats and sandwich at the machines.
pub(crate) fn slat_table(setting: &Setting, show: &Show, unit: LengthUnit) -> AnyView {
    let length = |length: Length| show(length.in_millimetres(), unit);
    let rows = [("Top slat", &setting.top), ("Bottom slat", &setting.bottom)];
    let rows = rows.map(|(name, slat)| {
        let SlatSetting {
            width,
            thickness,
            least_width,
            least_thickness,
            groove_depth,
            floor,
        } = *slat;
        let sizes = [
            width,
            least_width,
            thickness,
            least_thickness,
            groove_depth,
            floor,
        ];
        row(name.to_owned(), sizes.map(length).to_vec(), 4)
    });
    let headings = [
        ("At the groove head", false),
        ("Width", true),
        ("Least width", true),
        ("Thickness", true),
        ("Least thickness", true),
        ("Groove depth", true),
        ("Floor", true),
    ];
    plain_table(
        &headings,
        rows.into_iter().collect_view().into_any(),
        ().into_any(),
    )
}

/// What is told of slats and sandwich beside their table: names and figures.
pub(crate) fn slat_facts(setting: &Setting, unit: LengthUnit) -> Vec<(&'static str, String)> {
    let length = |length: Length| figure::length_with_unit(length.in_millimetres(), unit);
    vec![
        ("Moisture at grooving", figure::percent(setting.moisture)),
        ("Sandwich as glued", length(setting.glued)),
        ("Sandwich as planed", length(setting.planed)),
    ]
}

/// How high each knife stands.
pub(crate) fn height_table(setting: &Setting, show: &Show, unit: LengthUnit) -> AnyView {
    let length = |length: Length| show(length.in_millimetres(), unit);
    let rows = setting.heights.iter().map(|height| {
        let heights = [height.surface, height.tip, height.axis];
        row(
            height.blade.label().to_owned(),
            heights.map(length).to_vec(),
            1,
        )
    });
    let headings = [
        ("Above the table", false),
        ("Finished face", true),
        ("Tip of the knife", true),
        ("Head axis", true),
    ];
    plain_table(&headings, rows.collect_view().into_any(), ().into_any())
}

/// The marks of each head.
pub(crate) fn mark_table(machined: &Machined, setting: &Setting, unit: LengthUnit) -> AnyView {
    let heads = HeadKind::ALL.into_iter().zip(&machined.parts.heads);
    let rows = heads.zip(&setting.marks).map(|((kind, head), marks)| {
        let turns = figure::plain(head.speed(), 0);
        let rim = figure::plain(head.rim_speed(), 1);
        let marks = match marks {
            Ok(marks) => [
                figure::length(marks.pitch.in_millimetres(), unit),
                figure::length_fine(marks.wave.in_millimetres(), unit),
                figure::plain(marks.per_inch, 1),
            ],
            // The caution says why.
            Err(_) => [(); 3].map(|()| figure::NO_FIGURE.to_owned()),
        };
        let figures = [vec![turns, rim], marks.to_vec()].concat();
        row(kind.label().to_owned(), figures, 2)
    });
    let headings = [
        ("Knife marks", false),
        ("Turns, 1/min", true),
        ("Rim, m/s", true),
        ("Pitch", true),
        ("Wave", true),
        ("In an inch", true),
    ];
    plain_table(&headings, rows.collect_view().into_any(), ().into_any())
}

/// A list of names and figures.
pub(crate) fn facts(facts: Vec<(&'static str, String)>) -> AnyView {
    let facts = facts.into_iter().map(|(name, figure)| {
        view! { <div><dt>{name}</dt><dd class="figure">{figure}</dd></div> }
    });
    view! { <dl class="facts">{facts.collect_view()}</dl> }.into_any()
}

/// A part of the results that shows something of the setting; what is shown there is made anew with
/// every change.
pub(crate) fn part(
    machined: Memo<Option<Machined>>,
    (class, title): (&'static str, &'static str),
    in_unit: bool,
    show: fn(&Machined, &Setting, LengthUnit) -> AnyView,
) -> AnyView {
    let bench = expect_context::<Workbench>();
    let unit = move || in_unit.then(|| format!(", {}", bench.unit.get().label()));
    let shown = move || {
        let (machined, unit) = (machined.read(), bench.unit.get());
        let setting = machined.as_ref().and_then(Machined::setting);
        match (machined.as_ref(), setting) {
            (Some(machined), Some(setting)) => show(machined, setting, unit),
            _ => view! { <p class="empty">"Told once there is a setting."</p> }.into_any(),
        }
    };
    let id = format!("{class}-title");
    view! {
        <section class=format!("result {class}") aria-labelledby=id.clone()>
            <h2 id=id.clone()>{title}{live(unit)}</h2>
            {live(shown)}
        </section>
    }
    .into_any()
}
