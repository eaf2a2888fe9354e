use super::*;
use crate::field::{Cause, Place, Problem};
use crate::project::{Id, ProjectDraft};
use crate::sawing::SawingProblem;

/// The project of the tests of projects, with a plank, a blank of typed sizes and one of a stock.
fn project() -> ProjectDraft {
    let mut project = crate::project::trial();
    project.slats[0].draft.species = Some(Id(5));
    let plank = PlankDraft::new("Long");
    let typed = BlankDraft::new("Typed");
    let mut of_stock = BlankDraft::new("Of a stock");
    of_stock.slat = Some(Id(3));
    let entry = |id, draft| Entry { id: Id(id), draft };
    project.saw_shop.planks = vec![Entry {
        id: Id(20),
        draft: plank,
    }];
    project.saw_shop.blanks = vec![entry(21, typed), entry(22, of_stock)];
    project
}

/// The places and fields that are wrong after a change, of the whole project and of sawing.
#[track_caller]
fn check(change: impl FnOnce(&mut ProjectDraft), expected: &[(Place, Field)]) {
    let mut draft = project();
    change(&mut draft);
    let told = |problems: Vec<Problem>| -> Vec<(Place, Field)> {
        (problems
            .iter()
            .map(|found| (found.place, found.problem.field)))
        .collect()
    };
    assert_eq!(
        told(draft.check_sawing().err().unwrap_or_default()),
        expected
    );
    assert_eq!(told(draft.check().err().unwrap_or_default()), expected);
}

#[test]
fn a_shop_in_order() {
    check(|_| {}, &[]);
    check(|project| project.saw_shop.aim = SawingAim::Planks, &[]);
}

#[test]
fn every_bad_number_is_told_at_its_place() {
    check(
        |project| {
            let shop = &mut project.saw_shop;
            shop.planks[0].draft.price = Typed::Text("dear".into());
            shop.blanks[0].draft.width = Typed::Number(0.0);
            shop.blanks[1].draft.width_dressing = Typed::Number(-1.0);
            shop.rip_kerf = Typed::Number(60.0);
            shop.shortest_offcut = Typed::Text("long".into());
            shop.offcut_price = Typed::Number(-1.0);
        },
        &[
            (Place::SawShop, Field::RipKerf),
            (Place::SawShop, Field::OffcutPrice),
            (Place::SawShop, Field::ShortestOffcut),
            (Place::Plank(0), Field::PlankPrice),
            (Place::Blank(0), Field::BlankWidth),
            (Place::Blank(1), Field::WidthDressing),
        ],
    );
}

#[test]
fn where_no_offcut_is_kept_its_worth_may_hold_anything() {
    check(
        |project| project.saw_shop.offcut_price = Typed::Text("later".into()),
        &[],
    );
}

#[test]
fn the_sizes_of_a_blank_that_becomes_a_slat_may_hold_anything() {
    check(
        |project| project.saw_shop.blanks[1].draft.length = Typed::Text("later".into()),
        &[],
    );
}

#[test]
fn the_moisture_at_sawing_is_told_once() {
    check(
        |project| {
            let copy = project.saw_shop.blanks[1].clone();
            project.saw_shop.blanks.push(copy);
            project.saw_shop.moisture = Typed::Text("wet".into());
        },
        &[(Place::SawShop, Field::SawnMoisture)],
    );
}

#[test]
fn a_stock_that_has_gone_is_told_at_the_blank() {
    check(
        |project| project.saw_shop.blanks[1].draft.slat = Some(Id(99)),
        &[(Place::Blank(1), Field::LengthDressing)],
    );
}

#[test]
fn what_is_wrong_with_the_stock_is_told_there_once() {
    let mut draft = project();
    draft.slats[0].draft.width = Typed::Text("wide".into());
    let at = (Place::Slat(0), Field::SlatWidth);
    let count = |problems: Vec<Problem>| {
        let same = |found: &&Problem| (found.place, found.problem.field) == at;
        problems.iter().filter(same).count()
    };
    assert_eq!(count(draft.check_sawing().unwrap_err()), 1);
    assert_eq!(count(draft.check().unwrap_err()), 1);
}

#[test]
fn a_blank_that_fits_no_plank_says_how_large_one_it_takes() {
    check(
        |project| project.saw_shop.blanks[0].draft.width = Typed::Number(90.0),
        &[(Place::Blank(0), Field::BlankLength)],
    );
    let mut draft = project();
    draft.saw_shop.blanks[0].draft.width = Typed::Number(90.0);
    let problems = draft.check_sawing().unwrap_err();
    assert_eq!(
        problems[0].problem.to_string(),
        "This blank fits no plank: between the trims it takes one 186.00\u{202f}mm long, 6.00\u{202f}mm wide and 90.00\u{202f}mm thick, or larger"
    );
}

#[test]
fn a_blank_that_fits_no_plank_is_told_while_other_fields_are_wrong() {
    let wrong = || Typed::Text("later".into());
    check(
        |project| {
            let shop = &mut project.saw_shop;
            shop.blanks[0].draft.width = Typed::Number(90.0);
            shop.blanks[0].draft.over_worth = wrong();
            shop.planks[0].draft.length = wrong();
            shop.rip_kerf = wrong();
        },
        &[
            (Place::SawShop, Field::RipKerf),
            (Place::Plank(0), Field::PlankLength),
            (Place::Blank(0), Field::BlankOverWorth),
            (Place::Blank(0), Field::BlankLength),
        ],
    );
    // It might fit a plank whose thickness cannot be read, and need not where none is wanted.
    check(
        |project| {
            let shop = &mut project.saw_shop;
            shop.blanks[0].draft.width = Typed::Number(90.0);
            shop.planks[0].draft.thickness = wrong();
        },
        &[(Place::Plank(0), Field::PlankThickness)],
    );
    check(
        |project| {
            let blank = &mut project.saw_shop.blanks[0].draft;
            (blank.width, blank.demand) = (Typed::Number(90.0), Typed::Number(0.0));
        },
        &[],
    );
}

#[test]
fn what_planks_and_blanks_break_together_is_told_at_once() {
    check(
        |project| {
            let shop = &mut project.saw_shop;
            shop.blanks[0].draft.width = Typed::Number(90.0);
            shop.shortest_offcut = Typed::Number(500.0);
            shop.offcut_price = Typed::Number(1_000.0);
        },
        &[
            (Place::Blank(0), Field::BlankLength),
            (Place::Plank(0), Field::PlankPrice),
        ],
    );
}

#[test]
fn a_trim_that_leaves_nothing_is_told_at_its_field() {
    check(
        |project| project.saw_shop.planks[0].draft.end_trim = Typed::Number(1_500.0),
        &[(Place::Plank(0), Field::PlankEndTrim)],
    );
    check(
        |project| project.saw_shop.planks[0].draft.edge_trim = Typed::Number(100.0),
        &[(Place::Plank(0), Field::PlankEdgeTrim)],
    );
}

#[test]
fn a_shop_that_is_not_filled_in_is_no_mistake_but_cannot_saw() {
    let mut draft = project();
    draft.saw_shop.planks.clear();
    assert!(draft.check().is_ok());
    let problems = draft.check_sawing().unwrap_err();
    let causes: Vec<&Cause> = problems.iter().map(|found| &found.problem.cause).collect();
    assert_eq!(causes, [&Cause::Sawing(SawingProblem::NoPlanks)]);
    draft.saw_shop.blanks.clear();
    assert!(draft.check().is_ok());
}

#[test]
fn more_kinds_than_can_be_planned_are_told() {
    check(
        |project| {
            let plank = project.saw_shop.planks[0].clone();
            project.saw_shop.planks = vec![plank; crate::sawing::MOST_PLANKS + 1];
        },
        &[(Place::SawShop, Field::CrosscutKerf)],
    );
}

#[test]
fn without_a_species_a_blank_is_its_slat_and_its_dressing() {
    let mut draft = project();
    draft.slats[0].draft.species = None;
    draft.saw_shop.moisture = Typed::Text("not read".into());
    let size = draft.sawn_size(1).unwrap();
    // 184 + 2, 74 + 1.5, 5 + 0.8.
    assert_eq!(
        (size.length, size.width, size.thickness),
        (186_000, 75_500, 5_800)
    );
    assert_eq!(draft.sawn_size(9), Err(Vec::new()));
}

#[test]
fn a_blank_that_becomes_no_slat_any_more_keeps_its_sizes() {
    let mut draft = project();
    let before = draft.sawn_size(1).unwrap();
    draft.set_blank_slat(1, None);
    assert_eq!(draft.saw_shop.blanks[1].draft.slat, None);
    assert_eq!(draft.sawn_size(1), Ok(before));
    let typed = draft.clone();
    draft.set_blank_slat(1, None);
    draft.set_blank_slat(9, Some(Id(3)));
    assert_eq!(draft, typed);
}

#[test]
fn wetter_wood_is_sawn_larger_and_the_rings_decide_which_way() {
    use crate::wood::Sawing;
    let size = |moisture, sawing| {
        let mut draft = project();
        draft.saw_shop.moisture = Typed::Number(moisture);
        draft.slats[0].draft.sawing = sawing;
        draft.sawn_size(1).unwrap()
    };
    let [dry, wet] = [8.0, 16.0].map(|moisture| size(moisture, Sawing::Flat));
    assert_eq!((dry.width, dry.thickness), (75_500, 5_800));
    assert!(wet.width > dry.width && wet.thickness > dry.thickness);
    assert_eq!(wet.length, dry.length);
    // Tangential shrinkage is the larger: across the width of a flat-sawn slat.
    let quarter = size(16.0, Sawing::Quarter);
    assert!(quarter.width < wet.width && quarter.thickness > wet.thickness);
    // Above fibre saturation wood does not move.
    assert_eq!(size(30.0, Sawing::Flat), size(120.0, Sawing::Flat));
}
