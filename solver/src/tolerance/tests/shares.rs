//! What each error has a share in, and what halving it gains.

use super::*;

#[test]
fn shares_of_all_errors_add_up_to_one() {
    let trial = Laid::hexagons(74.0).trial(&AccuracyDraft::new("").check().unwrap());
    let shares = trial.shares();
    let sums = [
        shares.iter().map(|one| one.across).sum::<f64>(),
        shares.iter().map(|one| one.upright).sum::<f64>(),
        shares.iter().map(|one| one.off_centre).sum::<f64>(),
        shares.iter().map(|one| one.wall).sum::<f64>(),
    ];
    assert!(sums.iter().all(|sum| (sum - 1.0).abs() < 1e-12), "{sums:?}");
    let none = Laid::hexagons(74.0).trial(&errors(&[])).shares();
    assert!(
        none.iter()
            .all(|one| one.across + one.upright + one.off_centre + one.wall == 0.0)
    );
}

#[test]
fn the_wall_of_level_faces_is_a_matter_of_height() {
    let accuracy = errors(&[(Term::ShapingUp, 0.05), (Term::ShapingAcross, 0.01)]);
    let level = Laid::of(Shape::Hexagonal, 74.0, 0.0, &|_| ()).trial(&accuracy);
    assert!((level.shares()[Term::ShapingUp as usize].wall - 1.0).abs() < 1e-12);
}

#[test]
fn the_shares_are_those_of_the_centres_that_are_made() {
    // Variances of 100 blocks of one pencil each, within five standard errors √(2/N).
    let accuracy = errors(&Term::ALL.map(|term| (term, 10.0 * term_size(term))));
    let trial = Laid::hexagons(74.0).trial(&accuracy);
    let (across, upright) = (trial.scale.across(), trial.scale.upright);
    let (mut square, mut height, mut count) = (0.0, 0.0, 0.0);
    for seed in 0..100 {
        let tally = run(&trial, seed, 1);
        // The first pencil of each sandwich: pencils of one sandwich hang together.
        for centre in tally.centres().iter().step_by(10) {
            square += centre.x * centre.x;
            height += centre.y * centre.y;
            count += 1.0;
        }
    }
    let error = 5.0 * (2.0_f64 / count).sqrt();
    let expected = across.deviation * across.deviation;
    assert!((square / count / expected - 1.0).abs() < error);
    let expected = upright.deviation * upright.deviation;
    assert!((height / count / expected - 1.0).abs() < error);
}

#[test]
fn halving_an_error_gains_what_the_dice_say_without_it() {
    let accuracy = errors(&[(Term::ShapingUp, 0.15), (Term::LeadDiameter, 0.02)]);
    let trial = Laid::hexagons(74.0).trial(&accuracy);
    let gains = trial.halvings(3, 0..8, &mut |_| true);
    let whole = run(&trial, 3, 8).good();
    let half = run(&trial.halved(Term::ShapingUp), 3, 8).good();
    let (term, gain) = gains[Term::ShapingUp as usize];
    assert_eq!(term, Term::ShapingUp);
    assert!((gain.mean - (half.mean - whole.mean)).abs() < 1e-12 && gain.mean > 0.4);
    // Made with the same dice, the difference is known better than from two runs.
    let apart = (whole.error * whole.error + half.error * half.error).sqrt();
    assert!(gain.error < apart);
    let (_, none) = gains[Term::GlueShift as usize];
    assert_eq!((none.mean, none.error), (0.0, 0.0));
}
