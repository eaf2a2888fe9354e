//! Expected good pencils by integrals, and by dice.

use super::*;
use crate::accuracy::Offsets;
use crate::quantity::Length;

/// Expected good pencils by integrals and by dice, within four standard errors.
#[track_caller]
fn expectation_agrees(trial: &Trial, what: &str) {
    let expected = trial.prospect().good().unwrap();
    let good = run(trial, 21, 100).good();
    let hair = 1e-4;
    assert!(
        (good.mean - expected).abs() <= 4.0 * good.error + hair,
        "{what}: {expected} by integrals, {good:?} by dice"
    );
}

#[test]
fn the_expected_good_pencils_are_those_of_the_dice() {
    let wide = |term| (term, 6.0 * term_size(term));
    let all: Vec<(Term, f64)> = Term::ALL.map(wide).to_vec();
    let alone = |term: Term| errors(&[(term, 0.12)]);
    let mut lines: Vec<Accuracy> = Term::ALL.map(alone).to_vec();
    lines.push(errors(&all));
    lines.push(AccuracyDraft::new("").check().unwrap());
    let narrow = Offsets {
        top_width: Length::millimetres(-0.1),
        bottom_width: Length::millimetres(0.05),
        bottom_thickness: Length::millimetres(0.04),
    };
    lines.push(errors(&all).with_offsets(narrow).unwrap());
    for (at, line) in lines.iter().enumerate() {
        // Ten take 72.0 mm: from pencils that reach over an edge every other time to none.
        for width in [72.0, 72.1, 72.4, 74.0] {
            let tight = Laid::of(Shape::Hexagonal, width, 30.0, &|rules| {
                rules.edge = Typed::Number(0.0);
            });
            let trial = tight.trial(line);
            assert_eq!(trial.across(), 10);
            expectation_agrees(&trial, &format!("line {at} on {width}"));
        }
        let single = Laid::of(Shape::Round, 20.0, 0.0, &|rules| {
            rules.edge = Typed::Number(0.0);
            rules.most = Typed::Number(1.0);
        });
        let mut trial = single.trial(line);
        trial.row.first = trial.left + 0.05;
        trial.bottom_width = trial.row.first + trial.right + 0.1;
        trial.top_width = trial.row.first + trial.right + 0.12;
        expectation_agrees(&trial, &format!("a single pencil of line {at}"));
    }
}

#[test]
fn a_position_is_as_good_as_it_is_complete_where_nothing_else_can_fail() {
    // The chance of a complete pencil is an integral over other variables.
    for width in [72.0, 72.1, 72.3] {
        let line = errors(&[
            (Term::GlueShift, 0.03),
            (Term::SlatWidth, 0.05),
            (Term::ShapingPosition, 0.04),
            (Term::ShapingAcross, 0.05),
        ]);
        let trial = Laid::of(Shape::Hexagonal, width, 30.0, &|rules| {
            rules.edge = Typed::Number(0.0);
            rules.clearance = Typed::Number(0.5);
            rules.eccentricity = Typed::Number(0.6);
            rules.wall = Typed::Number(0.2);
        })
        .trial(&line);
        for position in trial.prospect().positions {
            let good = position.good.unwrap();
            assert!((good - position.complete).abs() < 1e-9, "{position:?}");
        }
    }
}
