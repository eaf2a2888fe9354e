use super::*;
use crate::barrel::BarrelDraft;
use crate::field::Typed;
use crate::rules::RulesDraft;
use crate::seam::Seam;
use crate::shape::Shape;
use crate::slat::SlatDraft;
use proptest::prelude::*;

fn slat(width: f64, thickness: f64, price: f64) -> Slat {
    let mut draft = SlatDraft::new("");
    draft.width = Typed::Number(width);
    draft.thickness = Typed::Number(thickness);
    draft.pack_price = Typed::Number(price);
    draft.check().unwrap()
}

fn hexagon() -> Barrel {
    BarrelDraft::new("", Shape::Hexagonal).check().unwrap()
}

fn ways() -> [Angle; 2] {
    [Seam::ThroughCorners.turn(6), Seam::ThroughFaces.turn(6)]
}

fn ranked(slats: &[Slat], aim: Aim) -> Vec<Candidate> {
    let rules = RulesDraft::new().check().unwrap();
    rank(&hexagon(), slats, &ways(), &rules, aim, &mut |_| ())
}

/// Stock, way and pencils of each candidate, best first.
fn check(slats: &[Slat], aim: Aim, expected: &[(usize, usize, u32)]) {
    let found: Vec<_> = ranked(slats, aim)
        .iter()
        .map(|candidate| (candidate.slat, candidate.way, candidate.layout.pencils()))
        .collect();
    assert_eq!(found, expected);
}

#[test]
fn most_pencils_come_first() {
    let slats = [slat(70.0, 5.0, 1.0), slat(74.0, 5.0, 1.0)];
    check(
        &slats,
        Aim::Pencils,
        &[(1, 1, 10), (0, 1, 9), (0, 0, 8), (1, 0, 8)],
    );
}

#[test]
fn of_equally_many_pencils_the_least_wood_comes_first() {
    let slats = [slat(75.0, 5.0, 1.0), slat(74.0, 5.0, 1.0)];
    let best = &ranked(&slats, Aim::Pencils)[0];
    assert_eq!((best.slat, best.layout.pencils()), (1, 10));
}

#[test]
fn least_wood_may_be_had_from_fewer_pencils() {
    // 9 on 66.76 mm are 7.418 mm of slat each, 10 on 78 mm are 7.8 mm each.
    let slats = [slat(78.0, 5.0, 1.0), slat(66.76, 5.0, 1.0)];
    let best = &ranked(&slats, Aim::Wood)[0];
    assert_eq!((best.slat, best.layout.pencils()), (1, 9));
    assert_eq!(ranked(&slats, Aim::Pencils)[0].slat, 0);
}

#[test]
fn layouts_that_do_not_fit_come_last_in_the_order_of_the_lists() {
    let slats = [slat(74.0, 3.0, 1.0), slat(74.0, 5.0, 1.0)];
    check(
        &slats,
        Aim::Wood,
        &[(1, 1, 10), (1, 0, 8), (0, 0, 0), (0, 1, 0)],
    );
    assert!(ranked(&slats, Aim::Wood)[2].needs.is_none());
}

#[test]
fn equals_keep_the_order_of_the_lists() {
    let slats = [slat(74.0, 5.0, 1.0), slat(74.0, 5.0, 2.0)];
    check(
        &slats,
        Aim::Pencils,
        &[(0, 1, 10), (1, 1, 10), (0, 0, 8), (1, 0, 8)],
    );
}

#[test]
fn a_gross_takes_its_slats_with_their_wood_and_price() {
    // Ten a sandwich: 28.8 slats of 184 × 74 × 5 mm, at 120.00 for a pack of 600.
    let needs = ranked(&[slat(74.0, 5.0, 120.0)], Aim::Pencils)[0]
        .needs
        .unwrap();
    assert!((needs.slats - 28.8).abs() < 1e-12);
    assert!((needs.wood.in_cubic_millimetres() - 28.8 * 184.0 * 74.0 * 5.0).abs() < 1e-6);
    assert!((needs.price - 576.0).abs() < 1e-9, "{}", needs.price);
}

#[test]
fn rejects_and_lengths_change_what_a_gross_takes() {
    let mut rules = RulesDraft::new();
    rules.slat_rejects = Typed::Number(20.0);
    rules.pencil_rejects = Typed::Number(10.0);
    let mut barrel = BarrelDraft::new("", Shape::Hexagonal);
    barrel.length = Typed::Number(90.0);
    let ranked = rank(
        &barrel.check().unwrap(),
        &[slat(74.0, 5.0, 1.0)],
        &ways(),
        &rules.check().unwrap(),
        Aim::Pencils,
        &mut |_| (),
    );
    // Ten across, two along: 288 / (20 · 0.9 · 0.8) = 20 slats.
    let slats = ranked[0].needs.unwrap().slats;
    assert!((slats - 20.0).abs() < 1e-12, "{slats}");
}

#[test]
fn each_candidate_is_counted_as_it_is_done() {
    let slats = vec![slat(74.0, 5.0, 1.0); 3];
    let rules = RulesDraft::new().check().unwrap();
    let mut heard = Vec::new();
    let aim = Aim::Pencils;
    let ranked = rank(&hexagon(), &slats, &ways(), &rules, aim, &mut |done| {
        heard.push(done);
    });
    assert_eq!(heard, [1, 2, 3, 4, 5, 6]);
    assert_eq!(ranked.len(), 6);
}

#[test]
fn nothing_to_rank_gives_nothing() {
    assert_eq!(ranked(&[], Aim::Pencils), []);
}

proptest! {
    #[test]
    fn no_candidate_is_lost_and_none_stands_before_a_better_one(
        sizes in prop::collection::vec((30.0_f64..90.0, 3.0_f64..6.0), 0..8), wood in any::<bool>(),
    ) {
        let slats: Vec<Slat> = sizes.iter().map(|&(width, thickness)| slat(width, thickness, 1.0)).collect();
        let found = ranked(&slats, if wood { Aim::Wood } else { Aim::Pencils });
        let mut places: Vec<_> = found.iter().map(|candidate| (candidate.slat, candidate.way)).collect();
        places.sort_unstable();
        places.dedup();
        prop_assert_eq!(places.len(), 2 * slats.len());
        for pair in found.windows(2) {
            match (pair[0].needs, pair[1].needs) {
                (Some(a), Some(b)) if wood => prop_assert!(a.wood <= b.wood),
                (Some(_), Some(_)) => prop_assert!(pair[0].layout.pencils() >= pair[1].layout.pencils()),
                (None, after) => prop_assert!(after.is_none()),
                (Some(_), None) => {}
            }
        }
    }
}
