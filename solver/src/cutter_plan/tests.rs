use super::*;
use crate::barrel::BarrelDraft;
use crate::cutter_set::CutterSetDraft;
use crate::field::Typed;
use crate::project::Order;
use crate::rules::RulesDraft;
use crate::shape::Shape;
use crate::slat::SlatDraft;
use proptest::prelude::*;

fn set(pitch: f64, most: u32, barrel: Option<Id>, price: f64) -> CutterSet {
    let mut draft = CutterSetDraft::new("");
    draft.pitch = Typed::Number(pitch);
    draft.most = Typed::Number(f64::from(most));
    draft.barrel = barrel;
    draft.price = Typed::Number(price);
    draft.check().unwrap()
}

/// Hexagons and triangles on slats of these widths, some gross of each.
fn project(widths: &[f64], gross: [u32; 2]) -> Project {
    let slat = |&width: &f64| {
        let mut draft = SlatDraft::new("");
        draft.width = Typed::Number(width);
        draft.thickness = Typed::Number(6.3);
        draft.pack_price = Typed::Number(width);
        draft.check().unwrap()
    };
    Project {
        barrels: [Shape::Hexagonal, Shape::Triangular]
            .map(|shape| BarrelDraft::new("", shape).check().unwrap())
            .to_vec(),
        slats: widths.iter().map(slat).collect(),
        rules: RulesDraft::new().check().unwrap(),
        orders: gross
            .iter()
            .enumerate()
            .map(|(barrel, gross)| Order {
                barrel,
                pencils: gross * GROSS,
                on_hand: 0,
            })
            .collect(),
    }
}

const IDS: [Id; 2] = [Id(7), Id(9)];

fn planned(project: &Project, sets: &[CutterSet], new_price: Option<i64>) -> CutterPlan {
    plan_cutters(&CutterQuestion {
        project,
        barrels: &IDS,
        sets,
        new_price,
    })
}

#[test]
fn a_set_serves_what_it_is_ground_for_and_what_fits_it() {
    let project = project(&[74.0], [10, 10]);
    let sets = [
        set(8.5, 8, None, 0.0),
        set(7.3, 10, Some(Id(7)), 0.0),
        set(3.0, 10, None, 0.0),
    ];
    let plan = planned(&project, &sets, None);
    assert_eq!(plan.serving(0), [1, 0]);
    assert!(plan.uses[1][1].is_none(), "it is ground for hexagons");
    assert!(
        plan.uses[2].iter().all(Option::is_none),
        "no pencil is so narrow"
    );
    assert_eq!(plan.orders[0].made.unwrap().0, 1);
    assert!(plan.proposals.is_empty());
}

#[test]
fn an_offered_set_is_weighed_beside_one_made_to_measure() {
    let project = project(&[74.0], [1_000, 0]);
    let sets = [set(8.0, 9, None, 0.0), set(7.24, 10, None, 500.0)];
    let plan = planned(&project, &sets, Some(90_000));
    assert_eq!(plan.proposals.len(), 2);
    // Both save as much, so the cheaper one is first.
    assert_eq!(plan.best().unwrap().set, NewSet::Offered { set: 1 });
    let books = plan.proposals[0].books_to_pay_back().unwrap();
    assert!((books - 50_000.0 / plan.proposals[0].saving).abs() < 1e-12);
}

#[test]
fn a_barrel_that_no_set_makes_is_newly_served() {
    let project = project(&[74.0], [0, 12]);
    let plan = planned(&project, &[set(7.3, 10, Some(Id(7)), 0.0)], Some(1));
    assert_eq!(plan.orders[1].made, None);
    assert_eq!(plan.proposals[0].newly_served, 12.0);
    assert_eq!(plan.proposals[0].books_to_pay_back(), None);
    assert_eq!(plan.best(), None);
}

#[test]
fn the_widest_pitch_is_the_last_with_as_many() {
    let project = project(&[74.0], [10, 0]);
    let plan = planned(&project, &[set(8.0, 9, None, 0.0)], Some(1));
    let NewSet::MadeToMeasure {
        pitch,
        widest,
        most,
        ..
    } = plan.best().unwrap().set
    else {
        panic!("none is offered")
    };
    // 6.84 + 0.4, and (74 − 2 − 6.84) / 9.
    assert!((pitch.in_millimetres() - 7.24).abs() < 1e-9);
    assert!((widest.in_millimetres() - 65.16 / 9.0).abs() < 1e-9);
    assert_eq!(most, 10);
    let hair = Length::millimetres(1e-6);
    let beyond = best_use(&project, &project.barrels[0], widest + hair, 60).unwrap();
    assert_eq!(beyond.across, 9);
}

#[test]
fn without_orders_stocks_or_sets_there_is_nothing_to_plan() {
    let mut empty = project(&[], [5, 5]);
    assert!(planned(&empty, &[], Some(1)).proposals.is_empty());
    empty.orders.clear();
    assert!(
        planned(&empty, &[set(8.0, 9, None, 1.0)], Some(1))
            .orders
            .is_empty()
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn no_pitch_of_many_is_cheaper_than_the_one_proposed(
        widths in prop::collection::vec(60.0_f64..80.0, 1..4), barrel in 0_usize..2,
    ) {
        let gross = if barrel == 0 { [1, 0] } else { [0, 1] };
        let project = project(&widths, gross);
        let plan = planned(&project, &[], Some(1));
        let made = plan.proposals[0].lines[0].1;
        for tenth in 60..140 {
            let pitch = Length::millimetres(f64::from(tenth) / 10.0);
            if let Some(other) = best_use(&project, &project.barrels[barrel], pitch, 60) {
                prop_assert!(other.gross_cost >= made.gross_cost * (1.0 - 1e-12));
            }
        }
    }
}
