//! Counts and pitches side by side.

use super::*;
use crate::quantity::Length;

#[test]
fn the_laid_layout_is_among_the_choices_as_the_dice_find_it_alone() {
    let accuracy = errors(&Term::ALL.map(|term| (term, 3.0 * term_size(term))));
    for change in [
        |_: &mut RulesDraft| (),
        |rules: &mut RulesDraft| rules.spacing = crate::rules::Spacing::Spread,
        |rules: &mut RulesDraft| rules.spacing = crate::rules::Spacing::Given,
    ] {
        let laid = Laid::of(Shape::Hexagonal, 74.0, 30.0, &change);
        let alone = run(&laid.trial(&accuracy), 5, 2).good();
        let pitches = choices(
            &laid.setup(),
            &accuracy,
            Varied::Pitch,
            5,
            0..2,
            &mut |_| true,
        );
        let same = pitches.list[pitches.laid.unwrap()];
        assert!((same.pitch - laid.layout().pitch()).abs() <= Length::SLACK);
        assert_eq!(same.good, alone);
        assert!(pitches.list.len() > 5);
    }
    let laid = Laid::hexagons(74.0);
    let counts = choices(
        &laid.setup(),
        &accuracy,
        Varied::Count,
        5,
        0..2,
        &mut |_| true,
    );
    let same = counts.list[counts.laid.unwrap()];
    assert_eq!(same.good, run(&laid.trial(&accuracy), 5, 2).good());
}

#[test]
fn wider_pitches_only_bring_the_outer_pencils_nearer_to_the_edges() {
    let accuracy = AccuracyDraft::new("").check().unwrap();
    let laid = Laid::hexagons(74.0);
    let pitches = choices(
        &laid.setup(),
        &accuracy,
        Varied::Pitch,
        5,
        0..8,
        &mut |_| true,
    );
    assert_eq!(pitches.best, Some(0));
    let good: Vec<f64> = pitches.list.iter().map(|choice| choice.good.mean).collect();
    assert!(good.is_sorted_by(|one, other| one >= other), "{good:?}");
    // At the widest pitch the outer pencils touch the edges, and more than half of them fail.
    let widest = pitches.list.last().unwrap();
    assert!(widest.edge.abs() <= Length::SLACK && widest.good.mean < 9.0);
    assert!(pitches.list[0].ties() && !widest.ties());
    assert!(widest.gross_price > pitches.list[0].gross_price);
}

#[test]
fn the_price_of_a_gross_is_that_of_its_slats() {
    let laid = Laid::hexagons(74.0);
    let counts = choices(
        &laid.setup(),
        &errors(&[]),
        Varied::Count,
        1,
        0..1,
        &mut |_| true,
    );
    let needs = crate::ranking::GrossNeeds::of(&laid.setup(), &laid.layout()).unwrap();
    let best = counts.list[counts.best.unwrap()];
    assert!((best.gross_price.unwrap() / needs.price - 1.0).abs() < 1e-12);
}

#[test]
fn where_nothing_fits_there_is_no_choice() {
    let laid = Laid::of(Shape::Hexagonal, 20.0, 30.0, &|rules| {
        rules.edge = Typed::Number(9.0);
    });
    let accuracy = errors(&[]);
    let pitches = choices(
        &laid.setup(),
        &accuracy,
        Varied::Pitch,
        1,
        0..1,
        &mut |_| true,
    );
    assert_eq!(
        (pitches.list.len(), pitches.best, pitches.laid),
        (0, None, None)
    );
    // By count the allowance is put aside: two fit in 20 mm.
    let counts = choices(
        &laid.setup(),
        &accuracy,
        Varied::Count,
        1,
        0..1,
        &mut |_| true,
    );
    assert_eq!(
        (counts.list.len(), counts.best, counts.laid),
        (2, Some(1), None)
    );
}
