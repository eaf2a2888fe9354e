//! The answer for eyes.

use solver::sawing::{SawingAim, SawingBalance, SawingList, SawingOutcome, SawingPlan, SawnClass};
use solver::{LengthUnit, SawnReckoning, figure};

use super::Sawn;
use crate::note::{Column, Note};

/// The plan, the bill, the blanks and where the wood goes.
pub(super) fn write(sawn: &Sawn<'_>, unit: LengthUnit) -> String {
    let mut note = Note::new();
    note.title(&sawn.draft.name);
    let Some(plan) = sawn.plan() else {
        note.line("The plan did not stand its recount, so it is not told. Change a number of blanks a little and try again");
        return note.finish();
    };
    for line in verdict(sawn, plan, unit) {
        note.line(&line);
    }
    if let Some(list) = SawingList::of(&sawn.data, plan) {
        cuts(&mut note, sawn, &list, unit);
        bill(&mut note, sawn, &list);
    }
    blanks(&mut note, sawn, plan);
    if let Some(balance) = SawingBalance::of(&sawn.data, plan) {
        wood(&mut note, &balance, unit);
    }
    note.finish()
}

/// How good the plan is.
fn verdict(sawn: &Sawn<'_>, plan: &SawingPlan, unit: LengthUnit) -> Vec<String> {
    let aim = sawn.data.draft().aim;
    let amount = |sum| amount(aim, sum, unit);
    let comes_to = amount(plan.cost);
    match &sawn.outcome {
        Ok(SawingOutcome::Proved { proof, .. }) => vec![match proof.certificates() {
            1 => format!("Proved best: {comes_to}, by a certificate in whole numbers"),
            parts => format!(
                "Proved best: {comes_to}, by certificates in whole numbers for {} parts of all plans",
                figure::count(parts as u64)
            ),
        }],
        Ok(SawingOutcome::WithinGap { bound, .. }) => {
            let gap = SawnReckoning::gap(plan.cost, *bound);
            let gap = gap.map_or_else(String::new, |gap| {
                format!(", a gap of {}", figure::ratio_fine(gap))
            });
            vec![
                format!("A good plan, not proved best: {comes_to}"),
                format!("No plan comes to less than {}{gap}", amount(*bound)),
            ]
        }
        Ok(SawingOutcome::Short { at_least, .. }) => {
            let missing = plan.short(&sawn.data);
            let lines = missing
                .iter()
                .enumerate()
                .filter(|(_, missing)| **missing > 0);
            let lines = lines.map(|(blank, missing)| {
                format!(
                    "Short by {} of {}",
                    figure::count(*missing),
                    sawn.blanks[blank]
                )
            });
            let told = format!(
                "The planks on hand do not suffice: at least {} blanks will be missing",
                figure::count(*at_least)
            );
            std::iter::once(told).chain(lines).collect()
        }
        Ok(SawingOutcome::NoneFound { bound, .. }) => vec![
            "No plan was found that makes all blanks; there may be one. This makes a part"
                .to_owned(),
            format!("No plan comes to less than {}", amount(*bound)),
        ],
        Err(_) => Vec::new(),
    }
}

fn amount(aim: SawingAim, amount: i64, unit: LengthUnit) -> String {
    match aim {
        SawingAim::Cost => figure::money(amount),
        SawingAim::Planks => format!("planks: {}", figure::count(amount.unsigned_abs())),
        SawingAim::Volume => figure::timber(amount as f64, unit),
    }
}

/// A length of whole micrometres.
fn length(micrometres: i64, unit: LengthUnit) -> String {
    figure::length(micrometres as f64 / 1000.0, unit)
}

/// Pattern by pattern.
fn cuts(note: &mut Note, sawn: &Sawn<'_>, list: &SawingList, unit: LengthUnit) {
    note.title(&format!("Cuts, lengths in {}", unit.label()));
    let head = [
        "Planks",
        "Of",
        "Sections",
        "Length",
        "Ripped into",
        "Offcut",
    ];
    let mut rows = vec![head.map(str::to_owned)];
    for cut in &list.cuts {
        let laid = &cut.laid;
        let mut first = [figure::count(cut.planks), sawn.names().plank(laid.plank())];
        let mut offcut = length(laid.offcut(), unit);
        for section in laid.sections() {
            let pieces = section.strips().iter().map(|strips| {
                format!(
                    "{} × {}",
                    figure::count(strips.pieces),
                    sawn.names().blank(strips.blank)
                )
            });
            let pieces: Vec<String> = pieces.collect();
            let [planks, plank] = std::mem::take(&mut first);
            rows.push([
                planks,
                plank,
                figure::count(section.count()),
                length(section.length(), unit),
                pieces.join(", "),
                std::mem::take(&mut offcut),
            ]);
        }
    }
    let (words, figures) = (Column::Words, Column::Figures);
    note.table([figures, words, figures, figures, words, figures], &rows);
}

/// What is bought.
fn bill(note: &mut Note, sawn: &Sawn<'_>, list: &SawingList) {
    note.title("Planks");
    let mut rows = vec![["Plank", "Number", "Price", "In all"].map(str::to_owned)];
    for line in &list.bill {
        rows.push([
            sawn.names().plank(line.plank),
            figure::count(line.planks),
            figure::money(line.price),
            figure::money(line.cost),
        ]);
    }
    let number = figure::count(list.planks);
    rows.push([
        "All".to_owned(),
        number,
        String::new(),
        figure::money(list.cost),
    ]);
    let figures = Column::Figures;
    note.table([Column::Words, figures, figures, figures], &rows);
}

/// What comes of it.
fn blanks(note: &mut Note, sawn: &Sawn<'_>, plan: &SawingPlan) {
    note.title("Blanks");
    let mut rows = vec![["Blank", "Wanted", "Made"].map(str::to_owned)];
    let reckoning = SawnReckoning::of(&sawn.data, plan);
    for (blank, line) in reckoning.blanks.iter().enumerate() {
        let (wanted, made) = (figure::count(line.wanted), figure::count(line.made));
        rows.push([sawn.names().blank(blank), wanted, made]);
    }
    note.table([Column::Words, Column::Figures, Column::Figures], &rows);
}

/// Where the wood goes.
fn wood(note: &mut Note, balance: &SawingBalance, unit: LengthUnit) {
    note.title("Where the wood goes");
    let mut rows = Vec::new();
    for class in SawnClass::ALL {
        rows.push([
            class.label().to_owned(),
            figure::timber(balance.volume(class).in_cubic_millimetres(), unit),
            figure::ratio_fine(balance.share(class)),
        ]);
    }
    let planks = balance.planks().in_cubic_millimetres();
    rows.push([
        "Planks".to_owned(),
        figure::timber(planks, unit),
        figure::ratio_fine(1.0),
    ]);
    note.table([Column::Words, Column::Figures, Column::Figures], &rows);
    let yielded = figure::ratio_fine(balance.yielded());
    note.line(&format!("Yield in blanks {yielded}"));
}
