//! Lasting names that stand twice, and those that name nothing.

use std::collections::BTreeMap;

use super::reader::Findings;
use super::{FileCause, ProjectFile};

/// Refuses names that stand twice in a list, and notes those that name no member of one.
pub(super) fn check(file: &ProjectFile, findings: &mut Findings) {
    // With a problem noted, a name may be a stand-in, of which nothing should be said.
    if !findings.problems.is_empty() {
        return;
    }
    check_at("", file, findings);
    if let Some(aside) = &file.set_aside {
        check_at("set_aside.", aside, findings);
    }
}

fn check_at(place: &str, file: &ProjectFile, findings: &mut Findings) {
    let names = Names::of(file);
    for (list, ids) in [
        ("barrels", &names.barrels),
        ("slats", &names.slats),
        ("species", &names.species),
        ("cutter_sets", &names.cutter_sets),
        ("accuracies", &names.accuracies),
        ("saw_shop.planks", &names.planks),
        ("saw_shop.blanks", &names.blanks),
        ("supply.offers", &names.offers),
    ] {
        refuse_repeated(&format!("{place}{list}"), ids, findings);
    }
    note_unknown(place, file, &names, findings);
}

/// The names of the members of each list.
struct Names {
    barrels: Vec<u32>,
    slats: Vec<u32>,
    species: Vec<u32>,
    cutter_sets: Vec<u32>,
    accuracies: Vec<u32>,
    planks: Vec<u32>,
    blanks: Vec<u32>,
    offers: Vec<u32>,
}

impl Names {
    fn of(file: &ProjectFile) -> Self {
        Self {
            barrels: file.barrels.iter().map(|barrel| barrel.id).collect(),
            slats: file.slats.iter().map(|slat| slat.id).collect(),
            species: file.species.iter().map(|species| species.id).collect(),
            cutter_sets: file.cutter_sets.iter().map(|set| set.id).collect(),
            accuracies: file.accuracies.iter().map(|line| line.id).collect(),
            planks: (file.saw_shop.planks.iter())
                .map(|plank| plank.id)
                .collect(),
            blanks: (file.saw_shop.blanks.iter())
                .map(|blank| blank.id)
                .collect(),
            offers: file.supply.offers.iter().map(|offer| offer.id).collect(),
        }
    }
}

fn refuse_repeated(list: &str, ids: &[u32], findings: &mut Findings) {
    let mut places = BTreeMap::new();
    for (place, &id) in ids.iter().enumerate() {
        let first = *places.entry(id).or_insert(place);
        if first < place {
            let first = format!("{list}[{first}]");
            let cause = FileCause::RepeatedId { id, first };
            findings.refuse(format!("{list}[{place}].id"), cause);
        }
    }
}

/// What was taken out of the project leaves its name behind where it was used. The page shows
/// that and lets another be chosen, so the file must open.
fn note_unknown(owner: &str, file: &ProjectFile, names: &Names, findings: &mut Findings) {
    let mut note = |path: String, what, id: u32, known: &[u32]| {
        if !known.contains(&id) {
            findings.note(format!("{owner}{path}"), FileCause::UnknownId { id, what });
        }
    };
    let layout = &file.layout;
    for (place, slat) in file.slats.iter().enumerate() {
        if let Some(id) = slat.species {
            note(
                format!("slats[{place}].species"),
                "species",
                id,
                &names.species,
            );
        }
    }
    for (place, set) in file.cutter_sets.iter().enumerate() {
        if let Some(id) = set.barrel {
            note(
                format!("cutter_sets[{place}].barrel"),
                "barrel",
                id,
                &names.barrels,
            );
        }
    }
    if let Some(id) = file.rules.cutter_set {
        note(
            "rules.cutter_set".into(),
            "cutter set",
            id,
            &names.cutter_sets,
        );
    }
    note(
        "layout.barrel".into(),
        "barrel",
        layout.barrel,
        &names.barrels,
    );
    note("layout.top".into(), "slat stock", layout.top, &names.slats);
    note(
        "layout.bottom".into(),
        "slat stock",
        layout.bottom,
        &names.slats,
    );
    note(
        "layout.accuracy".into(),
        "accuracy",
        layout.accuracy,
        &names.accuracies,
    );
    for (place, order) in file.orders.iter().enumerate() {
        note(
            format!("orders[{place}].barrel"),
            "barrel",
            order.barrel,
            &names.barrels,
        );
    }
    for (place, blank) in file.saw_shop.blanks.iter().enumerate() {
        if let Some(id) = blank.slat {
            note(
                format!("saw_shop.blanks[{place}].slat"),
                "slat stock",
                id,
                &names.slats,
            );
        }
    }
    let offers = file.supply.offers.iter().enumerate();
    let offers = offers.map(|(place, offer)| (format!("supply.offers[{place}].slat"), offer.slat));
    let sawn = file.supply.sawn_slats.iter().enumerate();
    let sawn = sawn.map(|(place, sawn)| (format!("supply.sawn_slats[{place}].slat"), sawn.slat));
    for (path, id) in offers.chain(sawn) {
        note(path, "slat stock", id, &names.slats);
    }
}
