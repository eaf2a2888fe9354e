//! The text of what came of the dice.

use solver::tolerance::{Choice, Choices, Fault, Prospect, Tally};
use solver::{LengthUnit, Outcome, figure};

use super::{ErrorMade, Made, Thrown};
use crate::dice::Enough;
use crate::digits::{decimals, fine_share, pair};
use crate::names;
use crate::note::{Column, Note};

/// The text of an answer, with lengths in a unit.
pub(super) fn of(thrown: &Thrown<'_>, unit: LengthUnit) -> String {
    let mut note = Note::new();
    note.title(&thrown.draft.name);
    head(&mut note, thrown, unit);
    let Some(made) = &thrown.made else {
        failed(&mut note, thrown, unit);
        return note.finish();
    };
    histogram(&mut note, &made.tally);
    positions(&mut note, made);
    faults(&mut note, &made.tally);
    chances(&mut note, &made.prospect);
    shares(&mut note, &made.errors, unit);
    halvings(&mut note, made);
    let by_count = "By the number of pencils side by side";
    choices(&mut note, by_count, &made.by_count, made.compared, unit);
    choices(&mut note, "By pitch", &made.by_pitch, made.compared, unit);
    note.finish()
}

fn head(note: &mut Note, thrown: &Thrown<'_>, unit: LengthUnit) {
    let (draft, layout) = (thrown.draft, &thrown.layout);
    let pitch = layout.pitch().in_millimetres();
    let (across, lengths) = (layout.across(), layout.lengths());
    let mut rows = vec![
        ("Barrel", names::barrel(draft, thrown.barrel)),
        ("Top slat", names::slat(draft, thrown.top)),
        ("Bottom slat", names::slat(draft, thrown.bottom)),
        ("Line", names::line(draft, thrown.line)),
        ("Pencils", format!("{across} across, {lengths} along")),
        ("Pitch", figure::length_with_unit(pitch, unit)),
    ];
    if let Some(made) = &thrown.made {
        let (tally, seed) = (&made.tally, thrown.dice.seed);
        let (good, count) = (tally.good(), figure::count(tally.sandwiches()));
        let [mean, error] = pair(good, decimals([good]));
        rows.extend([
            ("Sandwiches", format!("{count}, from seed {seed}")),
            (
                "Good pencils",
                format!("{mean} of {across} across, standard error {error}"),
            ),
        ]);
        if let (Enough::Error(asked), false) = (thrown.dice.enough, thrown.dice.is_met(tally)) {
            let asked = figure::exact(asked);
            rows.push((
                "Stopped",
                format!("before the standard error asked for, {asked}, was kept"),
            ));
        }
        let price = made.gross_price.map(figure::money_rounded);
        rows.push((
            "Price",
            price.map_or_else(
                || "none, for no pencil is good".to_owned(),
                |price| format!("{price} for the slats of a gross of good pencils"),
            ),
        ));
    }
    let rows: Vec<[String; 2]> = (rows.into_iter())
        .map(|(name, value)| [name.to_owned(), value])
        .collect();
    note.table([Column::Words; 2], &rows);
}

fn failed(note: &mut Note, thrown: &Thrown<'_>, unit: LengthUnit) {
    note.title("No dice are thrown, for the layout does not fit");
    let failed = (thrown.layout.checks().iter()).filter(|check| check.outcome == Outcome::Failed);
    for check in failed {
        note.line(&format!(
            "{}: {}",
            check.rule.label(),
            check.statement(unit)
        ));
    }
}

fn histogram(note: &mut Note, tally: &Tally) {
    note.title("Sandwiches by their good pencils");
    let seen = (tally.histogram().iter().enumerate()).filter(|(_, count)| **count > 0);
    let rows = seen.rev().map(|(good, &count)| {
        [
            figure::count(good as u64),
            figure::count(count),
            share(count, tally.sandwiches()),
        ]
    });
    let head = ["Good", "Sandwiches", "Share"];
    table(note, [Column::Figures; 3], head, rows);
}

fn positions(note: &mut Note, made: &Made) {
    note.title("Good pencils at each position, from the datum edge");
    let shares = made.tally.good_shares();
    let lines = (1_u64..).zip(shares.into_iter().zip(&made.prospect.positions));
    let rows = lines.map(|(number, (dice, chance))| {
        [
            figure::count(number),
            fine_share(dice.mean),
            fine_share(dice.error),
            or_dash(chance.good.map(fine_share)),
            fine_share(chance.complete),
        ]
    });
    let head = [
        "Position",
        "Good",
        "Standard error",
        "Good, by integrals",
        "On its slats, by integrals",
    ];
    table(note, [Column::Figures; 5], head, rows);
}

fn faults(note: &mut Note, tally: &Tally) {
    note.title("What is wrong with pencils");
    let rows = Fault::ALL.map(|fault| {
        let (all, only) = (tally.faulty(fault), tally.only_faulty(fault));
        [
            fault.label().to_owned(),
            figure::count(all),
            share(all, tally.pencils()),
            figure::count(only),
            share(only, tally.pencils()),
        ]
    });
    let head = ["Fault", "Pencils", "Share", "And nothing else", "Share"];
    let (words, figures) = (Column::Words, Column::Figures);
    table(
        note,
        [words, figures, figures, figures, figures],
        head,
        rows,
    );
}

fn chances(note: &mut Note, prospect: &Prospect) {
    note.title("What integrals tell of a pencil");
    let rows = [
        ("Lead within its limit", fine_share(prospect.centred)),
        ("Lead goes in", fine_share(prospect.admitted)),
        (
            "Good pencils of a sandwich, were leads off centre the only fault",
            figure::plain(prospect.good_by_eccentricity(), 4),
        ),
    ];
    let rows = rows.map(|(name, value)| [name.to_owned(), value]);
    note.table([Column::Words; 2], &rows);
    if prospect.faces.is_empty() {
        return;
    }
    note.title("Wall at each flat face, by the direction in which it looks");
    let rows = (prospect.faces.iter()).map(|face| {
        let part = |part| figure::plain(part, 3);
        [
            part(face.normal.x),
            part(face.normal.y),
            fine_share(face.holds),
        ]
    });
    let head = ["To the right", "Up", "Thick enough"];
    table(note, [Column::Figures; 3], head, rows);
}

fn shares(note: &mut Note, errors: &[ErrorMade], unit: LengthUnit) {
    note.title(&format!(
        "Share of each error in what varies; standard deviations in {}",
        unit.label()
    ));
    let rows = errors.iter().map(|error| {
        let shares = &error.shares;
        [
            shares.term.field().spec().label.to_owned(),
            figure::length_fine(error.deviation.in_millimetres(), unit),
            figure::ratio(shares.across),
            figure::ratio(shares.upright),
            figure::ratio(shares.off_centre),
            figure::ratio(shares.wall),
        ]
    });
    let head = [
        "Error",
        "Deviation",
        "Lead across",
        "Lead up",
        "Off centre",
        "Thinnest wall",
    ];
    let figures = Column::Figures;
    let columns = [Column::Words, figures, figures, figures, figures, figures];
    table(note, columns, head, rows);
}

fn halvings(note: &mut Note, made: &Made) {
    note.title(&format!(
        "What halving an error gains, from {} sandwiches",
        figure::count(made.compared)
    ));
    let decimals = decimals(made.errors.iter().map(|error| error.gain));
    let rows = made.errors.iter().map(|error| {
        let [gain, spread] = pair(error.gain, decimals);
        let money = |money: Option<f64>| or_dash(money.map(figure::money_rounded));
        [
            error.shares.term.field().spec().label.to_owned(),
            gain,
            spread,
            money(error.worth.map(|worth| worth.per_gross)),
            money(error.worth.map(|worth| worth.per_year)),
        ]
    });
    let head = [
        "Error",
        "Good pencils of a sandwich",
        "Standard error",
        "Saved a gross",
        "Saved a year",
    ];
    let (words, figures) = (Column::Words, Column::Figures);
    table(
        note,
        [words, figures, figures, figures, figures],
        head,
        rows,
    );
}

fn choices(note: &mut Note, title: &str, choices: &Choices, compared: u64, unit: LengthUnit) {
    note.title(&format!(
        "{title}, from {} sandwiches; lengths in {}",
        figure::count(compared),
        unit.label()
    ));
    let decimals = decimals((choices.list.iter()).flat_map(|choice| [choice.good, choice.behind]));
    let rows = choices.list.iter().enumerate().map(|(at, choice)| {
        let [good, error] = pair(choice.good, decimals);
        let [behind, behind_error] = pair(choice.behind, decimals);
        [
            figure::count(choice.across.into()),
            figure::length(choice.pitch.in_millimetres(), unit),
            figure::length(choice.edge.in_millimetres(), unit),
            good,
            error,
            behind,
            behind_error,
            or_dash(choice.gross_price.map(figure::money_rounded)),
            marks(choices, at, choice),
        ]
    });
    let head = [
        "Across",
        "Pitch",
        "Edge",
        "Good",
        "Standard error",
        "Behind the best",
        "Standard error",
        "Price of a gross",
        "",
    ];
    let figures = Column::Figures;
    let columns = [
        figures,
        figures,
        figures,
        figures,
        figures,
        figures,
        figures,
        figures,
        Column::Words,
    ];
    table(note, columns, head, rows);
}

/// Whether a choice is the best, as good as that as far as the dice tell, and whether it is laid.
fn marks(choices: &Choices, at: usize, choice: &Choice) -> String {
    let good = if choices.best == Some(at) {
        Some("best")
    } else if choice.ties() {
        Some("as good")
    } else {
        None
    };
    let laid = (choices.laid == Some(at)).then_some("laid");
    let all: Vec<&str> = good.into_iter().chain(laid).collect();
    all.join(", ")
}

/// A table with a head.
fn table<const N: usize>(
    note: &mut Note,
    columns: [Column; N],
    head: [&str; N],
    rows: impl IntoIterator<Item = [String; N]>,
) {
    let rows: Vec<[String; N]> = [head.map(str::to_owned)].into_iter().chain(rows).collect();
    note.table(columns, &rows);
}

fn share(count: u64, of: u64) -> String {
    fine_share(count as f64 / of as f64)
}

fn or_dash(text: Option<String>) -> String {
    text.unwrap_or_else(|| figure::NO_FIGURE.to_owned())
}
