//! What is wrong with a project, in sentences that say where.

use solver::{LengthUnit, Place, Problem, ProjectDraft};

/// The problem with the name of the place in front, as in "Slat stock “74 × 5”: Slat width must …".
pub(super) fn sentence(problem: &Problem, draft: &ProjectDraft, unit: LengthUnit) -> String {
    let place = place_name(problem.place, draft);
    format!("{place}: {}", problem.problem.message(unit))
}

fn place_name(place: Place, draft: &ProjectDraft) -> String {
    match place {
        Place::Barrel(place) => {
            let name = draft
                .barrels
                .get(place)
                .map(|entry| entry.draft.name.as_str());
            named("Barrel", place, name)
        }
        Place::Slat(place) => {
            let name = draft
                .slats
                .get(place)
                .map(|entry| entry.draft.name.as_str());
            named("Slat stock", place, name)
        }
        Place::Species(place) => {
            let name = draft.species.get(place);
            named(
                "Species",
                place,
                name.map(|entry| entry.draft.name.as_str()),
            )
        }
        Place::Conditions => "Conditions at grooving".to_owned(),
        Place::CutterSet(place) => {
            let name = draft.cutter_sets.get(place);
            named(
                "Cutter set",
                place,
                name.map(|entry| entry.draft.name.as_str()),
            )
        }
        Place::Accuracy(place) => {
            let name = draft.accuracies.get(place);
            named("Line", place, name.map(|entry| entry.draft.name.as_str()))
        }
        Place::Rules => "Machining rules".to_owned(),
        Place::Layout => "Layout".to_owned(),
        Place::Search => "Search".to_owned(),
        Place::Order(place) => format!("Order {}", place + 1),
        Place::Plank(place) => {
            let name = draft.saw_shop.planks.get(place);
            named("Plank", place, name.map(|entry| entry.draft.name.as_str()))
        }
        Place::Blank(place) => {
            let name = draft.saw_shop.blanks.get(place);
            named("Blank", place, name.map(|entry| entry.draft.name.as_str()))
        }
        Place::SawShop => "Saw shop".to_owned(),
        Place::Head(head) => head.label().to_owned(),
        Place::Cut => "Cut".to_owned(),
        Place::Run => "Run".to_owned(),
        Place::Stage(stage) => stage.label().to_owned(),
        Place::Period(place) => {
            let period = draft.supply.periods.get(place);
            named("Period", place, period.map(|period| period.name.as_str()))
        }
        Place::Offer(place) | Place::Tier(place, _) => {
            let offer = draft.supply.offers.get(place);
            let supplier = offer.map(|entry| entry.draft.supplier.as_str());
            named("Offer", place, supplier)
        }
        Place::SawnSlats(place) => format!("Sawn slats {}", place + 1),
        Place::Supply => "Order plan".to_owned(),
    }
}

/// The kind with its name; with its number in the list when it has no name.
fn named(kind: &str, place: usize, name: Option<&str>) -> String {
    match name.map(str::trim) {
        Some(name) if !name.is_empty() => format!("{kind} “{name}”"),
        _ => format!("{kind} {}", place + 1),
    }
}
