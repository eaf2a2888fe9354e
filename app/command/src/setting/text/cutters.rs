//! What cutter sets make of the order book.

use solver::{CutterPlan, LengthUnit, NewSet, Proposal, SetUse, figure};

use super::with_unit;
use crate::names;
use crate::note::{Column, Note};
use crate::setting::SetUp;

/// What cutter sets make, and which one more would save most.
pub(super) fn cutters(note: &mut Note, sheet: &SetUp<'_>, plan: &CutterPlan, unit: LengthUnit) {
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
        "Slats for a gross, price",
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
            "made for {}, {} grooves at a pitch of {} to {}",
            names::barrel(draft, barrel),
            figure::count(most.into()),
            with_unit(pitch, unit),
            with_unit(widest, unit)
        ),
    };
    note.title("One more cutter set, that does most");
    let mut told = vec![("Set", what), ("Price", figure::money(proposal.price))];
    if let Some(books) = proposal.books_to_pay_back() {
        told.push(("Saves in this book", figure::money_rounded(proposal.saving)));
        told.push((
            "Paid back in",
            format!("{} such books", figure::plain(books, 2)),
        ));
    }
    if proposal.newly_served > 0.0 {
        let gross = figure::plain(proposal.newly_served, 1);
        told.push((
            "Newly made",
            format!("{gross} gross that no set that is owned makes"),
        ));
    }
    let told: Vec<[String; 2]> = (told.into_iter())
        .map(|(name, value)| [name.to_owned(), value])
        .collect();
    note.table([Column::Words; 2], &told);
    note.line("");
    let head = ["For", "On", "Way", "Across", "Slats for a gross, price"];
    let mut rows = vec![head.map(str::to_owned)];
    for (line, made) in &proposal.lines {
        let barrel = plan.orders.get(*line).map(|order| order.barrel);
        let barrel = barrel.map_or_else(String::new, |barrel| names::barrel(draft, barrel));
        let [on, way, across, cost] = use_cells(sheet, made);
        rows.push([barrel, on, way, across, cost]);
    }
    let (words, figures) = (Column::Words, Column::Figures);
    note.table([words, words, words, figures, figures], &rows);
}
