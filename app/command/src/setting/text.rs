//! The answer for eyes: a setting sheet.

mod cutters;
mod materials;

use solver::{
    HeadKind, Knife, KnifeMarks, KnifePoint, Length, LengthUnit, Setting, SlatSetting, figure,
};

use super::SetUp;
use crate::findings::Told;
use crate::note::{Column, Note};
use cutters::cutters;
use materials::run;

/// The sheet.
pub(super) fn write(sheet: &SetUp<'_>, unit: LengthUnit) -> String {
    let mut note = Note::new();
    note.title(&sheet.laid.draft.name);
    sheet.laid.head(&mut note, unit);
    match &sheet.setting {
        Ok(setting) => {
            sheet.laid.grooves(&mut note, unit);
            slats(&mut note, sheet, setting, unit);
            heights(&mut note, setting, unit);
            heads(&mut note, sheet, setting, unit);
            sheet.laid.checks(&mut note, unit);
            coordinates(&mut note, &setting.knives, unit);
        }
        Err(problems) => {
            note.title("No machine can be set for this layout");
            for problem in problems {
                note.line(&problem.message(unit));
            }
            sheet.laid.checks(&mut note, unit);
        }
    }
    match &sheet.run {
        Ok(Some(needs)) => run(&mut note, needs, unit),
        Ok(None) => {}
        Err(found) => untold(&mut note, "Of the run nothing is told", found, unit),
    }
    match &sheet.cutters {
        Ok(plan) => cutters(&mut note, sheet, plan, unit),
        Err(found) => untold(&mut note, "Of cutter sets nothing is told", found, unit),
    }
    files(&mut note, sheet, unit);
    if let Ok(setting) = &sheet.setting {
        note.title("Mind");
        for caution in &setting.cautions {
            note.line(&caution.text());
        }
    }
    note.finish()
}

/// Why a part is missing.
fn untold(note: &mut Note, title: &str, found: &[Told], unit: LengthUnit) {
    note.title(title);
    for told in found {
        let message = told.message(unit);
        let path = match told.path.as_str() {
            "" => String::new(),
            path => format!("{path}: "),
        };
        note.line(&format!("{path}{message}"));
    }
}

fn shown(length: Length, unit: LengthUnit) -> String {
    figure::length(length.in_millimetres(), unit)
}

fn with_unit(length: Length, unit: LengthUnit) -> String {
    figure::length_with_unit(length.in_millimetres(), unit)
}

/// Finer than a caliper: what is ground, and marks.
fn fine(length: Length, unit: LengthUnit) -> String {
    figure::length_of_error(length.in_millimetres(), unit)
}

/// The slats that are asked for at the machine.
fn slats(note: &mut Note, sheet: &SetUp<'_>, setting: &Setting, unit: LengthUnit) {
    note.title(&format!(
        "Slats at the machine, {} at a moisture content of {}",
        unit.label(),
        figure::percent(setting.moisture)
    ));
    let head = [
        "Slat",
        "Width",
        "At least",
        "Thickness",
        "At least",
        "Groove depth",
        "Under it",
    ];
    let row = |name: &str, slat: &SlatSetting| {
        let lengths = [
            slat.width,
            slat.least_width,
            slat.thickness,
            slat.least_thickness,
            slat.groove_depth,
            slat.floor,
        ];
        let [a, b, c, d, e, f] = lengths.map(|length| shown(length, unit));
        [name.to_owned(), a, b, c, d, e, f]
    };
    let rows = [
        head.map(str::to_owned),
        row("Top", &setting.top),
        row("Bottom", &setting.bottom),
    ];
    let figures = Column::Figures;
    let columns = [
        Column::Words,
        figures,
        figures,
        figures,
        figures,
        figures,
        figures,
    ];
    note.table(columns, &rows);
    note.line(&format!(
        "Sandwich as glued {}, planed {}",
        with_unit(setting.glued, unit),
        with_unit(setting.planed, unit)
    ));
    if let Some(name) = &sheet.laid.cutter_set {
        note.line(&format!("Grooves spaced by the cutter set {name}"));
    }
}

/// How high the knives stand.
fn heights(note: &mut Note, setting: &Setting, unit: LengthUnit) {
    note.title(&format!("Heights above the table, {}", unit.label()));
    let mut rows = vec![["Knife", "Tip", "Surface", "Axis"].map(str::to_owned)];
    rows.extend(setting.heights.iter().map(|height| {
        let [tip, surface, axis] =
            [height.tip, height.surface, height.axis].map(|length| shown(length, unit));
        [height.blade.label().to_owned(), tip, surface, axis]
    }));
    let figures = Column::Figures;
    note.table([Column::Words, figures, figures, figures], &rows);
}

/// The heads with their speeds and marks.
fn heads(note: &mut Note, sheet: &SetUp<'_>, setting: &Setting, unit: LengthUnit) {
    note.title(&format!(
        "Heads at a feed of {} m/min; overcut {}, draft {}",
        figure::plain(sheet.cut.feed(), 2),
        with_unit(sheet.cut.overcut(), unit),
        figure::angle(sheet.cut.draft().in_degrees())
    ));
    let head = [
        "Head".to_owned(),
        format!("Circle, {}", unit.label()),
        "Hook".to_owned(),
        "Knives".to_owned(),
        "1/min".to_owned(),
        "m/s".to_owned(),
        format!("Marks, {}", unit.label()),
        format!("Waves, {}", unit.label()),
        "Marks per inch".to_owned(),
    ];
    let mut rows = vec![head];
    for ((kind, head), marks) in HeadKind::ALL
        .into_iter()
        .zip(&sheet.heads)
        .zip(&setting.marks)
    {
        let [pitch, wave, per_inch] = match marks {
            Ok(KnifeMarks {
                pitch,
                wave,
                per_inch,
                ..
            }) => [
                fine(*pitch, unit),
                figure::length_fine(wave.in_millimetres(), unit),
                figure::plain(*per_inch, 1),
            ],
            Err(_) => ["–"; 3].map(str::to_owned),
        };
        rows.push([
            kind.label().to_owned(),
            shown(head.diameter(), unit),
            figure::angle(head.hook().in_degrees()),
            figure::count(head.knives().into()),
            figure::plain(head.speed(), 0),
            figure::plain(head.rim_speed(), 1),
            pitch,
            wave,
            per_inch,
        ]);
    }
    let figures = Column::Figures;
    let mut columns = [figures; 9];
    columns[0] = Column::Words;
    note.table(columns, &rows);
    for problem in setting
        .marks
        .iter()
        .filter_map(|marks| marks.as_ref().err())
    {
        note.line(&problem.message(unit));
    }
}

/// The edges at the first pencil; knives that are ground alike, as far as it is told, stand together.
fn coordinates(note: &mut Note, knives: &[Knife], unit: LengthUnit) {
    let mut alike: Vec<(String, Vec<[String; 4]>)> = Vec::new();
    for knife in knives {
        let label = knife.blade().label();
        let points = knife.pencil_points();
        let rows: Vec<_> = points.iter().map(|point| joint(point, unit)).collect();
        match alike.last_mut() {
            Some((labels, others)) if *others == rows => *labels += &format!("; {label}"),
            _ => alike.push((label.to_owned(), rows)),
        }
    }
    for (labels, mut rows) in alike {
        note.title(&format!("{labels}: to the first land, {}", unit.label()));
        let head = ["From datum", "Height", "On the face", "Radius"];
        rows.insert(0, head.map(str::to_owned));
        note.table([Column::Figures; 4], &rows);
    }
}

/// A joint of an edge.
fn joint(point: &KnifePoint, unit: LengthUnit) -> [String; 4] {
    let [across, height, face] =
        [point.across, point.height, point.on_face].map(|length| fine(length, unit));
    let radius = point
        .radius
        .map_or_else(String::new, |radius| fine(radius, unit));
    [across, height, face, radius]
}

/// The files that were asked for.
fn files(note: &mut Note, sheet: &SetUp<'_>, unit: LengthUnit) {
    if sheet.files.is_empty() {
        return;
    }
    note.title("Files");
    let rows: Vec<[String; 2]> = (sheet.files.iter())
        .map(|written| {
            let outcome = match &written.outcome {
                Ok(()) => "written".to_owned(),
                Err(problem) => problem.message(unit),
            };
            [written.file.display().to_string(), outcome]
        })
        .collect();
    note.table([Column::Words; 2], &rows);
}
