//! Integrals against the distributions of the crate statrs.

use crate::{close, errors, lifted, only_off_centre, roomy};
use solver::tolerance::Trial;
use solver::{Angle, Setup, Shape, Term, Typed, lay_out};
use statrs::distribution::{ChiSquared, ContinuousCDF, Discrete, Normal, Poisson};
use tests::shop;

#[test]
fn one_error_alone_is_normal_at_every_quantile() {
    let standard = Normal::standard();
    for share in [0.01, 0.3, 0.5, 0.9, 0.999, 1.0 - 1e-9] {
        // Within ± limit with this chance: the limit is the quantile of (1 + share)/2.
        let sigmas = standard.inverse_cdf((1.0 + share) / 2.0);
        let limit = 0.05;
        let accuracy = errors(&[(Term::ShapingAcross, limit / sigmas)]);
        let trial = roomy(&only_off_centre(limit, 1.0), &accuracy);
        close(trial.prospect().centred, share, 1e-9);
    }
}

#[test]
fn off_the_middle_of_a_circle_it_is_the_noncentral_chi_squared_distribution() {
    // With equal deviations σ and an offset δ, (x² + y²)/σ² is noncentral chi-squared with two
    // degrees of freedom: a Poisson mixture with the mean δ²/2σ² of chi-squared ones with 2 + 2j.
    for (deviation, offset) in [
        (0.1, 0.0),
        (0.1, 0.1),
        (0.2, 0.3),
        (0.05, 0.25),
        (0.03, 0.3),
        (1.0, 0.5),
    ] {
        let accuracy = errors(&[
            (Term::ShapingAcross, deviation),
            (Term::ShapingUp, deviation),
        ]);
        let trial = roomy(&only_off_centre(0.3, 1.0), &lifted(accuracy, offset));
        let square = 0.3 * 0.3 / (deviation * deviation);
        let chance = |degrees: f64| {
            let distribution = ChiSquared::new(degrees).expect("degrees above 0");
            distribution.cdf(square)
        };
        let mean = offset * offset / (2.0 * deviation * deviation);
        let expected = if mean > 0.0 {
            let weights = Poisson::new(mean).expect("a mean above 0");
            (0..400_u32)
                .map(|j| weights.pmf(u64::from(j)) * chance(2.0 + 2.0 * f64::from(j)))
                .sum()
        } else {
            chance(2.0)
        };
        close(trial.prospect().centred, expected, 1e-9);
    }
}

#[test]
fn walls_of_flat_faces_are_normal() {
    // A hexagon of 7.0 across flats under a coat of 0.08 mm: 3.42 mm from the middle to a face,
    // 1.15 mm of groove, 1.8 mm of wall asked; 0.47 mm to spare.
    let barrel = shop::barrel(Shape::Hexagonal, 7.0, 0.5);
    let slat = shop::slat(74.0, 5.0);
    let rules = shop::rules(|rules| rules.wall = Typed::Number(1.8));
    let accuracy = errors(&[(Term::ShapingAcross, 0.2), (Term::ShapingUp, 0.1)]);
    let accuracy = lifted(accuracy, 0.1);
    for turn in [0.0, 30.0, 17.0] {
        let setup = Setup {
            barrel: &barrel,
            turn: Angle::degrees(turn),
            top: &slat,
            bottom: &slat,
            rules: &rules,
        };
        let faces = Trial::new(&setup, &lay_out(&setup), &accuracy)
            .prospect()
            .faces;
        assert_eq!(faces.len(), 6);
        for face in faces {
            let (x, y) = (face.normal.x, face.normal.y);
            let spread = (x * x * 0.04 + y * y * 0.01).sqrt();
            let expected = Normal::new(y * 0.1, spread)
                .expect("a spread above 0")
                .cdf(0.47);
            close(face.holds, expected, 1e-9);
        }
    }
}
