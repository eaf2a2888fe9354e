use super::*;

fn project() -> ProjectDraft {
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
        rules: RulesDraft::new(),
        layout: LayoutDraft {
            barrel: Id(1),
            top: Id(3),
            bottom: Id(3),
            way: Way::Usual(Seam::ThroughFaces),
            turn: Typed::Number(12.5),
        },
        orders: vec![order(1, 100.0), order(2, 0.5)],
    }
}

fn entry<T>(id: u32, draft: T) -> Entry<T> {
    Entry { id: Id(id), draft }
}

fn order(barrel: u32, gross: f64) -> OrderDraft {
    OrderDraft {
        barrel: Id(barrel),
        gross: Typed::Number(gross),
    }
}

/// The places and fields that are wrong after a change.
fn check(change: impl FnOnce(&mut ProjectDraft), expected: &[(Place, Field)]) {
    let mut draft = project();
    change(&mut draft);
    let problems = draft.check().err().unwrap_or_default();
    let found: Vec<_> = problems
        .iter()
        .map(|problem| (problem.place, problem.problem.field))
        .collect();
    assert_eq!(found, expected);
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
            project.rules.land = wrong.clone();
            project.orders[1].gross = wrong.clone();
            project.layout.way = Way::Turned;
            project.layout.turn = wrong.clone();
        },
        &[
            (Place::Barrel(1), Field::Diameter),
            (Place::Slat(0), Field::SlatWidth),
            (Place::Rules, Field::Land),
            (Place::Order(1), Field::OrderGross),
            (Place::Layout, Field::Turn),
        ],
    );
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
    assert_eq!(draft.free_id(), Id(5));
    draft.slats[1].id = Id(u32::MAX);
    assert_eq!(draft.free_id(), Id(0));
    draft.barrels[0].id = Id(0);
    assert_eq!(draft.free_id(), Id(1));
}
