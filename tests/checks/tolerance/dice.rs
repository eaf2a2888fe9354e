//! Dice against integrals, over many accuracies.

use crate::{errors, lifted, only_off_centre, roomy};
use solver::Term;

/// Numbers spread evenly from 0 to 1: multiples of the golden section.
fn spread(place: usize) -> f64 {
    (place as f64 * 0.618_033_988_749_895).fract()
}

#[test]
fn the_dice_agree_with_the_integral_within_five_standard_errors() {
    let (mut squares, mut compared) = (0.0, 0.0);
    for case in 0..60 {
        // Sizes from 1 µm to 0.3 mm, evenly in their logarithm, and one in five none at all.
        let size = |term: Term| {
            let place = case * 11 + term as usize;
            let size = 1e-3 * libm::exp(5.7 * spread(place));
            (term, if place.is_multiple_of(5) { 0.0 } else { size })
        };
        // Leads keep to their size, so that off centre is all that can be wrong.
        let named: Vec<(Term, f64)> = Term::ALL
            .into_iter()
            .filter(|term| !matches!(term, Term::LeadDiameter | Term::SlatWidth))
            .map(size)
            .collect();
        let accuracy = lifted(errors(&named), 0.2 * spread(case) - 0.1);
        let limit = 0.05 + 0.6 * spread(case + 500);
        let trial = roomy(&only_off_centre(limit, 6.0), &accuracy);
        let expected = trial.prospect().good_by_eccentricity();
        let tally = trial.simulate(case as u64, 0..20, &mut |_| true);
        let good = tally.good();
        // With few bad pencils, or few good ones, their number is that of rare events.
        let pencils = trial.across() as f64;
        let rare = (expected.min(pencils - expected) * pencils / tally.sandwiches() as f64).sqrt();
        let error = good.error.max(rare);
        let miss = good.mean - expected;
        assert!(
            miss.abs() <= 5.0 * error + 1e-9,
            "case {case}: {} for {expected}, error {error}",
            good.mean
        );
        if good.error > 1e-3 {
            squares += miss * miss / (good.error * good.error);
            compared += 1.0;
        }
    }
    // Misses in standard errors have a mean square of 1: the errors told are not too small, and
    // not too large. Within five standard errors √(2/n) of that mean.
    let spread = 5.0 * libm::sqrt(2.0 / compared);
    assert!(
        compared > 30.0 && (squares / compared - 1.0).abs() < spread,
        "{squares} of {compared}"
    );
}
