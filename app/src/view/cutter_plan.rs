//! Which cutter sets serve which pencils, and the new one that saves most.

use super::answered::answered;
use super::cut_tables::{plain_table, scrolled};
use super::live::live;
use super::number_field::NumberField;
use crate::protocol::{CutterPlan, NewCutterSet, NewSetKind, ServingSet};
use crate::workbench::{Searches, Slot, Workbench};
use leptos::prelude::*;
use solver::{Field, LengthUnit, figure};

/// Which cutter sets serve which pencils, planned anew with every change.
#[component]
pub(crate) fn CutterSets() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let question = expect_context::<Searches>().cutters;
    let (state, busy) = (question.state(), question.busy());
    let body = move || {
        let unit = bench.unit.get();
        answered(state.get(), Some("Planning cutter sets …"), |plan| {
            shown(plan, unit)
        })
    };
    view! {
        <section class="result cutters" aria-labelledby="cutters-title">
            <h2 id="cutters-title">"Cutter sets for the order book"</h2>
            <NumberField at=Slot::Search(Field::NewSetPrice) context="column"/>
            <p class="hint">"A set made to measure is reckoned with once it has a price. Slats cost here what a pack costs for each slat in it: whole packs, stores and limits of what can be had are left to the purchase."</p>
            <div class:stale=move || busy.get().is_some() aria-live="polite">{live(body)}</div>
        </section>
    }
}

fn shown(plan: CutterPlan, unit: LengthUnit) -> AnyView {
    let ordered = plan.barrels.iter().any(|barrel| barrel.gross > 0.0);
    let best = match &plan.best {
        _ if !ordered => "The order book is empty, so no set saves anything yet.".to_owned(),
        None => "No further set saves slats over this order book.".to_owned(),
        Some(best) => proposed(best, unit),
    };
    let rows = plan.barrels.into_iter().map(|barrel| {
        let sets = if barrel.sets.is_empty() {
            view! { <span class="none">"No set makes it."</span> }.into_any()
        } else {
            super::answered::lines("serving", barrel.sets.iter().map(serving).collect())
        };
        view! {
            <tr>
                <th scope="row">{barrel.name}</th>
                <td class="figure">{figure::plain(barrel.gross, 0)}</td>
                <td>{sets}</td>
            </tr>
        }
    });
    let headings = [
        ("Pencil", false),
        ("Ordered, gross", true),
        ("Made by, the cheapest slats first", false),
    ];
    let table = plain_table(&headings, rows.collect_view().into_any(), ().into_any());
    view! {
        <p class="proof">{best}</p>
        {scrolled("Cutter sets, by pencil", table)}
    }
    .into_any()
}

/// A set that makes a pencil, in words.
fn serving(set: &ServingSet) -> String {
    let owned = match set.price.hundredths() {
        0 => String::new(),
        price => format!(" (not owned, {})", figure::money(price)),
    };
    format!(
        "{}{owned}: {} a sandwich on {}, slats of a gross {}",
        set.name,
        set.pencils,
        set.stock,
        figure::money_rounded(set.gross_cost)
    )
}

/// The set that saves most, in words.
fn proposed(best: &NewCutterSet, unit: LengthUnit) -> String {
    let length = |mm| figure::length_with_unit(mm, unit);
    let what = match &best.kind {
        NewSetKind::Offered { name } => format!("“{name}”"),
        NewSetKind::MadeToMeasure {
            barrel,
            pitch_mm,
            widest_mm,
            most,
        } => format!(
            "a set of {most} made to measure for “{barrel}”, pitch {} to {}",
            length(*pitch_mm),
            length(*widest_mm)
        ),
    };
    let price = figure::money(best.price.hundredths());
    let gross = figure::plain(best.newly_served, 0);
    if best.saving <= 0.0 {
        return format!(
            "No further set saves slats, but {what} for {price} makes {gross} gross that no owned set makes."
        );
    }
    let saving = figure::money_rounded(best.saving);
    let back = best.books_to_pay_back.map_or_else(String::new, |books| {
        format!(
            ", and has paid for itself when it has been made {} times",
            figure::plain(books, 2)
        )
    });
    let served = if best.newly_served > 0.0 {
        format!(" It also makes {gross} gross that no owned set makes.")
    } else {
        String::new()
    };
    format!(
        "The set that saves most is {what}. It costs {price}, saves {saving} of slats each time the order book is made{back}.{served}"
    )
}
