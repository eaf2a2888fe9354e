use super::*;
use crate::field::{Cause, Field, Place, Problem};
use crate::materials::Stage;
use crate::rules::{PitchRule, Spacing};
use crate::title_block::TitleBlock;
use crate::tooling::HeadKind;
use crate::wood::Sawing;

pub(crate) fn project() -> ProjectDraft {
    ProjectDraft {
        name: "Trial".into(),
        barrels: vec![
            entry(1, BarrelDraft::new("Office", Shape::Hexagonal)),
            entry(2, BarrelDraft::new("Sketch", Shape::Round)),
        ],
        slats: vec![
            entry(3, SlatDraft::new("74 × 5")),
            entry(4, SlatDraft::new("78 × 5.2")),
        ],
        species: vec![
            entry(5, SpeciesDraft::new("Cedar")),
            entry(6, SpeciesDraft::new("Lime")),
        ],
        conditions: ConditionsDraft::new(),
        cutter_sets: vec![entry(7, CutterSetDraft::new("Tens"))],
        rules: RulesDraft::new(),
        accuracies: vec![entry(8, AccuracyDraft::new("Line 1"))],
        layout: LayoutDraft {
            barrel: Id(1),
            top: Id(3),
            bottom: Id(3),
            way: Way::Usual(Seam::ThroughFaces),
            turn: Typed::Number(12.5),
            accuracy: Id(8),
        },
        search: SearchDraft::new(),
        orders: vec![order(1, 100.0), order(2, 0.5)],
        saw_shop: SawShopDraft::new(),
        heads: [const { HeadDraft::new() }; 3],
        cut: CutDraft::new(),
        run: RunDraft::new(),
        supply: SupplyDraft::new(),
        title_block: TitleBlock::new(),
        set_aside: None,
    }
}

fn entry<T>(id: u32, draft: T) -> Entry<T> {
    Entry { id: Id(id), draft }
}

fn order(barrel: u32, gross: f64) -> OrderDraft {
    OrderDraft {
        gross: Typed::Number(gross),
        ..OrderDraft::new(Id(barrel))
    }
}

/// The places and fields that are wrong after a change.
fn check(change: impl FnOnce(&mut ProjectDraft), expected: &[(Place, Field)]) {
    let mut draft = project();
    change(&mut draft);
    assert_eq!(fields(draft.check()), expected);
}

/// As [`check`], of the layout alone.
fn check_layout(change: impl FnOnce(&mut ProjectDraft), expected: &[(Place, Field)]) {
    let mut draft = project();
    change(&mut draft);
    assert_eq!(fields(draft.check_layout()), expected);
}

fn fields<T>(result: Result<T, Vec<Problem>>) -> Vec<(Place, Field)> {
    let problems = result.err().unwrap_or_default();
    problems
        .iter()
        .map(|problem| (problem.place, problem.problem.field))
        .collect()
}

/// Both stocks are of the first species.
fn of_one_species(project: &mut ProjectDraft) {
    for slat in &mut project.slats {
        slat.draft.species = Some(Id(5));
    }
}

/// The grooves are spaced by the cutter set.
pub(super) fn with_the_set(project: &mut ProjectDraft) {
    project.rules.spacing = Spacing::Set;
    project.rules.cutter_set = Some(Id(7));
}

#[test]
fn a_project_of_first_values_is_sound() {
    check(|_| (), &[]);
}

#[test]
fn every_broken_rule_is_reported_with_its_place() {
    let wrong = Typed::Number(f64::NAN);
    check(
        |project| {
            project.barrels[1].draft.size = wrong.clone();
            project.slats[0].draft.width = wrong.clone();
            project.slats[1].draft.species = Some(Id(6));
            project.species[1].draft.radial = wrong.clone();
            project.conditions.moisture = wrong.clone();
            project.cutter_sets[0].draft.most = wrong.clone();
            project.search.year_gross = wrong.clone();
            project.heads[2].hook = Typed::Number(90.0);
            project.cut.feed = wrong.clone();
            project.run.glue_spread = wrong.clone();
            project.run.yields[1] = wrong.clone();
            project.rules.land = wrong.clone();
            project.orders[1].gross = wrong.clone();
            project.layout.way = Way::Turned;
            project.layout.turn = wrong.clone();
        },
        &[
            (Place::Barrel(1), Field::Diameter),
            (Place::Slat(0), Field::SlatWidth),
            (Place::Species(1), Field::RadialShrinkage),
            (Place::Conditions, Field::GroovingMoisture),
            (Place::CutterSet(0), Field::SetMost),
            (Place::Rules, Field::Land),
            (Place::Order(1), Field::OrderGross),
            (Place::Layout, Field::Turn),
            (Place::Search, Field::YearGross),
            (Place::Head(HeadKind::Bottom), Field::HookAngle),
            (Place::Cut, Field::FeedSpeed),
            (Place::Run, Field::GlueSpread),
            (Place::Stage(Stage::Gluing), Field::StageYield),
        ],
    );
}

#[test]
fn a_setting_asks_for_the_layout_the_heads_and_the_air_and_not_for_the_run() {
    let mut draft = project();
    assert!(draft.check_setting().is_ok());
    draft.run.gross = Typed::empty();
    draft.orders[0].gross = Typed::empty();
    assert!(draft.check_setting().is_ok());
    draft.heads[0].knives = Typed::Number(0.0);
    draft.cut.draft = Typed::Number(61.0);
    draft.conditions.moisture = Typed::empty();
    draft.rules.land = Typed::empty();
    let expected = [
        (Place::Rules, Field::Land),
        (Place::Conditions, Field::GroovingMoisture),
        (Place::Head(HeadKind::Groove), Field::CuttingKnives),
        (Place::Cut, Field::OvercutDraft),
    ];
    assert_eq!(fields(draft.check_setting()), expected);
    assert_eq!(fields(draft.check_run()), [(Place::Run, Field::RunGross)]);
}

#[test]
fn air_that_is_wrong_is_told_once_where_the_slats_move_in_it_too() {
    let mut draft = project();
    of_one_species(&mut draft);
    draft.conditions.moisture = Typed::empty();
    let once = [(Place::Conditions, Field::GroovingMoisture)];
    assert_eq!(fields(draft.check_setting()), once);
}

#[test]
fn an_order_of_a_barrel_that_is_gone_is_refused() {
    check(
        |project| project.orders[0].barrel = Id(77),
        &[(Place::Order(0), Field::OrderGross)],
    );
}

#[test]
fn a_turn_that_is_not_used_may_hold_anything() {
    check(
        |project| project.layout.turn = Typed::Text("later".into()),
        &[],
    );
}

#[test]
fn orders_are_rounded_up_to_whole_pencils() {
    let mut draft = project();
    draft.orders = vec![order(1, 0.001), order(1, 100.0), order(2, 1.51)];
    let orders = draft.check().unwrap().orders;
    let pencils: Vec<_> = orders
        .iter()
        .map(|order| (order.barrel, order.pencils))
        .collect();
    assert_eq!(pencils, [(0, 1), (0, 14_400), (1, 218)]);
}

#[test]
fn the_layout_is_checked_without_the_rest() {
    let mut draft = project();
    draft.barrels[1].draft.size = Typed::empty();
    draft.slats[1].draft.width = Typed::empty();
    draft.orders[0].gross = Typed::empty();
    let parts = draft.check_layout().unwrap();
    assert_eq!(parts.top, parts.bottom);
    assert_eq!(parts.turn, Angle::degrees(30.0));
    assert_eq!(crate::layout::lay_out(&parts.setup()).pencils(), 10);
}

#[test]
fn a_slat_used_twice_is_reported_once() {
    let mut draft = project();
    draft.slats[0].draft.width = Typed::empty();
    assert_eq!(draft.check_layout().unwrap_err().len(), 1);
}

#[test]
fn a_layout_without_its_barrel_has_no_parts() {
    let mut draft = project();
    draft.layout.barrel = Id(77);
    assert_eq!(draft.check_layout(), Err(Vec::new()));
}

#[test]
fn a_way_the_shape_does_not_have_gives_its_first() {
    let mut draft = project();
    draft.layout.barrel = Id(2);
    assert_eq!(draft.layout_way(), Way::Usual(Seam::AnyWay));
    draft.layout.way = Way::Turned;
    assert_eq!(draft.layout_way(), Way::Usual(Seam::AnyWay));
    draft.layout.barrel = Id(1);
    assert_eq!(draft.layout_way(), Way::Turned);
}

#[test]
fn a_turned_layout_takes_the_angle_given() {
    let mut draft = project();
    draft.layout.way = Way::Turned;
    assert_eq!(draft.check_layout().unwrap().turn, Angle::degrees(12.5));
}

#[test]
fn every_shape_has_its_ways() {
    assert_eq!(Way::of(Shape::Round).len(), 1);
    assert_eq!(Way::of(Shape::Hexagonal).len(), 3);
    assert_eq!(Way::of(Shape::Triangular).len(), 4);
}

#[test]
fn a_free_name_is_nobody_elses() {
    let mut draft = project();
    assert_eq!(draft.free_id(), Id(9));
    draft.slats[1].id = Id(u32::MAX);
    assert_eq!(draft.free_id(), Id(0));
    draft.barrels[0].id = Id(0);
    assert_eq!(draft.free_id(), Id(1));
}

#[test]
fn every_list_takes_its_names() {
    let mut draft = project();
    draft.species[1].id = Id(20);
    assert_eq!(draft.free_id(), Id(21));
    draft.cutter_sets[0].id = Id(u32::MAX);
    draft.species[0].id = Id(0);
    assert_eq!(draft.free_id(), Id(5));
}

#[test]
fn slats_are_laid_as_they_come_to_the_groove_head() {
    let mut draft = project();
    of_one_species(&mut draft);
    draft.slats[0].draft.moisture = Typed::Number(12.0);
    let parts = draft.check_layout().unwrap();
    // 74 mm lose 74 · 0.0017956 · 4 = 0.5315 mm, and with it the tenth pencil.
    let width = parts.top.guaranteed_width().in_millimetres();
    assert!((width - 73.4685).abs() < 1e-4, "{width}");
    assert_eq!(crate::layout::lay_out(&parts.setup()).pencils(), 9);
    assert_eq!(draft.check_slat(0).unwrap(), parts.top);
    assert_eq!(draft.check().unwrap().slats[0], parts.top);
}

#[test]
fn the_sawing_of_a_stock_counts() {
    let mut draft = project();
    of_one_species(&mut draft);
    draft.slats[0].draft.sawing = Sawing::Quarter;
    draft.conditions.moisture = Typed::Number(12.0);
    let (quarter, flat) = (draft.check_slat(0).unwrap(), draft.check_slat(1).unwrap());
    let grown = |slat: &Slat| slat.grooved_width() / slat.width();
    assert!(grown(&quarter) < grown(&flat));
}

#[test]
fn a_slat_without_a_species_asks_for_no_moisture() {
    check(
        |project| project.slats[0].draft.moisture = Typed::empty(),
        &[],
    );
    check_layout(|project| project.conditions.moisture = Typed::empty(), &[]);
}

#[test]
fn what_no_layout_rests_on_is_checked_until_it_is_cleared() {
    let mut draft = project();
    draft.conditions.moisture = Typed::empty();
    draft.saw_shop.rip_kerf = Typed::empty();
    draft.heads[1].diameter = Typed::empty();
    draft.cut.overcut = Typed::empty();
    draft.run.press_load = Typed::empty();
    let expected = [
        (Place::Conditions, Field::GroovingMoisture),
        (Place::SawShop, Field::RipKerf),
        (Place::Head(HeadKind::Top), Field::HeadDiameter),
        (Place::Cut, Field::Overcut),
        (Place::Run, Field::PressLoad),
    ];
    assert_eq!(fields(draft.check()), expected);
    let mut without = draft.clone();
    without.clear_making();
    assert!(without.check().is_ok());
    // Where slats move, the air stays as it is.
    of_one_species(&mut draft);
    draft.clear_making();
    assert_eq!(fields(draft.check()), expected[..1]);
}

#[test]
fn a_species_that_is_gone_is_told_at_the_stock() {
    let mut draft = project();
    draft.slats[1].draft.species = Some(Id(77));
    let problems = draft.check().unwrap_err();
    assert_eq!(problems.len(), 1);
    assert_eq!(problems[0].place, Place::Slat(1));
    assert_eq!(problems[0].problem.cause, Cause::NoSuchSpecies);
}

#[test]
fn a_species_of_both_slats_is_told_once() {
    let expected = [
        (Place::Species(0), Field::RadialShrinkage),
        (Place::Conditions, Field::GroovingMoisture),
    ];
    let change = |project: &mut ProjectDraft| {
        of_one_species(project);
        project.species[0].draft.radial = Typed::empty();
        project.conditions.moisture = Typed::empty();
        project.layout.bottom = Id(4);
    };
    check(change, &expected);
    check_layout(change, &expected);
}

#[test]
fn a_stock_that_is_not_there_has_no_problems() {
    assert_eq!(project().check_slat(9), Err(Vec::new()));
}

#[test]
fn a_cutter_set_gives_its_pitch_and_the_smaller_of_both_limits() {
    let mut draft = project();
    with_the_set(&mut draft);
    // The pitch of the rules is not used.
    draft.rules.pitch = Typed::Text("later".into());
    let rules = draft.check_rules().unwrap();
    assert_eq!(
        rules.spacing,
        PitchRule::OfSet(crate::Length::millimetres(7.5))
    );
    assert_eq!(rules.most, Some(10));
    draft.rules.most = Typed::Number(8.0);
    assert_eq!(draft.check_rules().unwrap().most, Some(8));
    draft.rules.most = Typed::Number(12.0);
    assert_eq!(draft.check().unwrap().rules.most, Some(10));
}

#[test]
fn a_cutter_set_that_is_not_used_limits_nothing() {
    let mut draft = project();
    draft.rules.cutter_set = Some(Id(7));
    assert_eq!(draft.check_rules().unwrap().most, None);
}

#[test]
fn a_cutter_set_that_is_not_there_is_told_at_the_pitch() {
    for id in [None, Some(Id(77))] {
        let mut draft = project();
        with_the_set(&mut draft);
        draft.rules.cutter_set = id;
        let problems = draft.check_rules().unwrap_err();
        assert_eq!(
            fields::<()>(Err(problems.clone())),
            [(Place::Rules, Field::Pitch)]
        );
        assert_eq!(problems[0].problem.cause, Cause::NoSuchSet);
    }
}

#[test]
fn a_cutter_set_for_another_barrel_is_refused() {
    let mut draft = project();
    with_the_set(&mut draft);
    draft.cutter_sets[0].draft.barrel = Some(Id(1));
    assert!(draft.check_rules().is_ok());
    draft.layout.barrel = Id(2);
    let problems = draft.check_layout().unwrap_err();
    assert_eq!(problems.len(), 1);
    assert_eq!(problems[0].problem.cause, Cause::SetForOtherBarrel);
}

#[test]
fn a_broken_cutter_set_is_told_with_the_rest_of_the_rules() {
    let change = |project: &mut ProjectDraft| {
        with_the_set(project);
        project.cutter_sets[0].draft.pitch = Typed::empty();
        project.rules.land = Typed::empty();
    };
    let expected = [
        (Place::CutterSet(0), Field::SetPitch),
        (Place::Rules, Field::Land),
    ];
    check(change, &expected);
    check_layout(change, &expected);
}
