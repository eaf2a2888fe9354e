//! The answer for eyes: a setting sheet.

use solver::{
    CutterPlan, HeadKind, Knife, KnifeMarks, Length, LengthUnit, NewSet, Proposal, RunNeeds,
    SetUse, Setting, SlatSetting, figure,
};

use super::SetUp;
use crate::findings::Told;
use crate::names;
use crate::note::{Column, Note};

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
            for knife in &setting.knives {
                coordinates(&mut note, knife, unit);
            }
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

/// The edge of a knife at the first pencil.
fn coordinates(note: &mut Note, knife: &Knife, unit: LengthUnit) {
    note.title(&format!(
        "{}, to the middle of the first land, {}",
        knife.blade().label(),
        unit.label()
    ));
    let head = ["From datum", "Height", "On the face", "Radius"];
    let mut rows = vec![head.map(str::to_owned)];
    rows.extend(knife.pencil_points().iter().map(|point| {
        let [across, height, face] =
            [point.across, point.height, point.on_face].map(|length| fine(length, unit));
        let radius = point
            .radius
            .map_or_else(String::new, |radius| fine(radius, unit));
        [across, height, face, radius]
    }));
    note.table([Column::Figures; 4], &rows);
}

/// What the run takes.
fn run(note: &mut Note, needs: &RunNeeds, unit: LengthUnit) {
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
                "{} l; {} l a gross; {} a pass",
                figure::plain(coat.litres, 1),
                figure::plain(coat.gross, 2),
                fine(coat.pass, unit)
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

/// What cutter sets make, and which one more would save most.
fn cutters(note: &mut Note, sheet: &SetUp<'_>, plan: &CutterPlan, unit: LengthUnit) {
    let draft = sheet.laid.draft;
    if plan.orders.is_empty() {
        return;
    }
    note.title("Cutter sets for the order book");
    let head = [
        "Barrel",
        "Gross",
        "With",
        "On",
        "Way",
        "Across",
        "Slats of a gross",
    ];
    let mut rows = vec![head.map(str::to_owned)];
    for order in &plan.orders {
        let (with, made) = match order.made {
            Some((at, made)) => (names::cutter_set(draft, at), use_cells(sheet, &made)),
            None => ("none that is owned".to_owned(), Default::default()),
        };
        let [on, way, across, cost] = made;
        let barrel = names::barrel(draft, order.barrel);
        rows.push([
            barrel,
            figure::plain(order.gross, 1),
            with,
            on,
            way,
            across,
            cost,
        ]);
    }
    let (words, figures) = (Column::Words, Column::Figures);
    note.table(
        [words, figures, words, words, words, figures, figures],
        &rows,
    );
    match plan.proposals.first() {
        None => note.line("No other set that can be had makes more of it, or makes it cheaper"),
        Some(proposal) => proposed(note, sheet, plan, proposal, unit),
    }
}

/// Stock, way round, pencils across and price of the slats of a gross.
fn use_cells(sheet: &SetUp<'_>, made: &SetUse) -> [String; 4] {
    [
        names::slat(sheet.laid.draft, made.stock),
        made.seam.label().to_owned(),
        figure::count(made.across.into()),
        figure::money_rounded(made.gross_cost),
    ]
}

/// The set that saves most, or serves most.
fn proposed(
    note: &mut Note,
    sheet: &SetUp<'_>,
    plan: &CutterPlan,
    proposal: &Proposal,
    unit: LengthUnit,
) {
    let draft = sheet.laid.draft;
    let what = match proposal.set {
        NewSet::Offered { set } => names::cutter_set(draft, set),
        NewSet::MadeToMeasure {
            barrel,
            pitch,
            widest,
            most,
        } => format!(
            "one made for {}, {} grooves at a pitch of {} to {}",
            names::barrel(draft, barrel),
            figure::count(most.into()),
            with_unit(pitch, unit),
            with_unit(widest, unit)
        ),
    };
    note.line(&format!(
        "Of one more set {what} does most: it costs {} and saves {} of slats in this book",
        figure::money(proposal.price),
        figure::money_rounded(proposal.saving)
    ));
    if let Some(books) = proposal.books_to_pay_back() {
        note.line(&format!(
            "It is paid back in {} such books",
            figure::plain(books, 2)
        ));
    }
    if proposal.newly_served > 0.0 {
        note.line(&format!(
            "It makes {} gross that no set that is owned makes",
            figure::plain(proposal.newly_served, 1)
        ));
    }
    let mut rows = Vec::new();
    for (line, made) in &proposal.lines {
        let barrel = plan.orders.get(*line).map(|order| order.barrel);
        let barrel = barrel.map_or_else(String::new, |barrel| names::barrel(draft, barrel));
        let [on, way, across, cost] = use_cells(sheet, made);
        rows.push([barrel, on, way, across, cost]);
    }
    let (words, figures) = (Column::Words, Column::Figures);
    note.table([words, words, words, figures, figures], &rows);
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
