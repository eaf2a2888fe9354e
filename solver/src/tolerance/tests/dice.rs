//! Dice, shared out among workers, against the integrals.

use super::*;
use crate::accuracy::Offsets;
use crate::quantity::Length;

/// Within five standard errors of a share, and a hair for shares near 0 or 1.
fn agrees(tally: &Tally, bad: u64, pencils: u64, chance: f64) {
    let expected = (1.0 - chance) * pencils as f64;
    // Common errors make the pencils of a sandwich alike: no more is known than from sandwiches.
    let error = (expected * pencils as f64 / tally.sandwiches() as f64).sqrt();
    assert!(
        (bad as f64 - expected).abs() <= 5.0 * error + 3.0,
        "{bad} bad of {pencils}, expected {expected}"
    );
}

#[test]
fn blocks_can_be_shared_out_and_merged_in_any_order() {
    let trial = Laid::hexagons(74.0).trial(&AccuracyDraft::new("").check().unwrap());
    let whole = run(&trial, 9, 6);
    let part = |blocks| trial.simulate(9, blocks, &mut |_| true);
    let mut shared = part(4..6);
    shared.merge(&part(0..1));
    shared.merge(&part(1..4));
    assert_eq!(shared, whole);
    assert_eq!(whole.sandwiches(), 6 * BLOCK);
    assert_eq!(whole.centres().len(), 400);
    assert_ne!(run(&trial, 10, 6), whole);
}

#[test]
fn work_ends_when_it_is_told_to() {
    let trial = Laid::hexagons(74.0).trial(&errors(&[]));
    let mut heard = 0;
    let tally = trial.simulate(1, 0..100, &mut |_| {
        heard += 1;
        heard < 3
    });
    assert_eq!(tally.sandwiches(), 3 * BLOCK);
}

#[test]
fn a_single_pencil_is_first_and_last() {
    let accuracy = errors(&[
        (Term::GlueShift, 0.3),
        (Term::SlatWidth, 0.2),
        (Term::ShapingPosition, 0.1),
        (Term::ShapingAcross, 0.2),
    ]);
    let laid = Laid::of(Shape::Hexagonal, 20.0, 30.0, &|rules| {
        rules.edge = Typed::Number(0.0);
        rules.most = Typed::Number(1.0);
        rules.pitch = Typed::Number(20.0);
    });
    let mut trial = laid.trial(&accuracy);
    // Only 0.4 mm are left beside it on the right, and 0.3 on the left.
    trial.row.first = trial.left + 0.3;
    trial.bottom_width = trial.row.first + trial.right + 0.4;
    trial.top_width = trial.bottom_width;
    let tally = run(&trial, 4, 200);
    let complete = trial.prospect().positions[0].complete;
    assert!(complete > 0.3 && complete < 0.9);
    agrees(
        &tally,
        tally.faulty(Fault::Incomplete),
        tally.pencils(),
        complete,
    );
}

#[test]
fn dice_and_integrals_agree() {
    // Errors of ten times what is usual, so that every fault is common.
    let wide = |term| (term, 10.0 * term_size(term));
    let all: Vec<(Term, f64)> = Term::ALL.map(wide).to_vec();
    let shifted = Offsets {
        top_width: Length::millimetres(-0.2),
        bottom_width: Length::millimetres(-0.9),
        bottom_thickness: Length::millimetres(0.05),
    };
    for (laid, accuracy) in [
        (Laid::hexagons(74.0), errors(&all)),
        (
            Laid::hexagons(74.0),
            errors(&all).with_offsets(shifted).unwrap(),
        ),
        (
            Laid::hexagons(72.5),
            errors(&[(Term::GlueShift, 0.08), (Term::GrooveDepth, 0.03)]),
        ),
        (
            Laid::hexagons(74.0),
            AccuracyDraft::new("").check().unwrap(),
        ),
    ] {
        let trial = laid.trial(&accuracy);
        let (prospect, tally) = (trial.prospect(), run(&trial, 11, 100));
        let pencils = tally.pencils();
        agrees(
            &tally,
            tally.faulty(Fault::Eccentric),
            pencils,
            prospect.centred,
        );
        agrees(
            &tally,
            tally.faulty(Fault::TightGroove),
            pencils,
            prospect.admitted,
        );
        let incomplete: f64 = prospect.positions.iter().map(|at| 1.0 - at.complete).sum();
        let all = 1.0 - incomplete / prospect.positions.len() as f64;
        agrees(&tally, tally.faulty(Fault::Incomplete), pencils, all);
        for (position, &good) in prospect.positions.iter().zip(tally.good_at()) {
            if let Some(chance) = position.good {
                agrees(
                    &tally,
                    tally.sandwiches() - good,
                    tally.sandwiches(),
                    chance,
                );
            }
        }
    }
}

#[test]
fn a_face_fails_as_often_as_its_distribution_says() {
    // Only up and down, with 0.15 mm to spare at the level faces.
    let accuracy = errors(&[(Term::ShapingUp, 0.1)]);
    let laid = Laid::of(Shape::Hexagonal, 74.0, 0.0, &|rules| {
        rules.wall = Typed::Number(3.42 - 1.15 - 0.15);
    });
    let trial = laid.trial(&accuracy);
    let prospect = trial.prospect();
    let upright = prospect
        .faces
        .iter()
        .filter(|face| face.normal.x.abs() < 1e-9);
    let fails: f64 = upright.map(|face| 1.0 - face.holds).sum();
    let tally = run(&trial, 2, 100);
    agrees(
        &tally,
        tally.faulty(Fault::ThinWall),
        tally.pencils(),
        1.0 - fails,
    );
}

#[test]
fn each_fault_alone_is_counted_alone() {
    let accuracy = errors(&[(Term::LeadDiameter, 0.1)]);
    let tally = run(&Laid::hexagons(74.0).trial(&accuracy), 1, 4);
    let tight = tally.faulty(Fault::TightGroove);
    assert!(tight > 0);
    assert_eq!(tally.only_faulty(Fault::TightGroove), tight);
    assert_eq!(
        tally.faulty(Fault::Eccentric) + tally.faulty(Fault::Incomplete),
        0
    );
    let good: u64 = tally.good_at().iter().sum();
    assert_eq!(good + tight, tally.pencils());
}
