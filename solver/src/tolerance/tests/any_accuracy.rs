//! Any accuracy at all, and what must grow when something shrinks.

use super::*;
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn any_accuracy_up_to_the_ends_of_the_ranges_can_be_made(
        kind in 0..Shape::ALL.len(), turn in 0.0_f64..360.0, width in 20.0_f64..110.0,
        sizes in proptest::collection::vec(prop_oneof![Just(0.0), Just(5.0), 0.0_f64..5.0, 0.0_f64..0.1], Term::COUNT),
        limit in prop_oneof![Just(0.0), 0.0_f64..2.0],
    ) {
        let laid = Laid::of(Shape::ALL[kind], width, turn, &|rules| {
            rules.eccentricity = Typed::Number(limit);
        });
        let named: Vec<(Term, f64)> = Term::ALL.into_iter().zip(sizes).collect();
        let trial = laid.trial(&errors(&named));
        let tally = trial.simulate(5, 0..1, &mut |_| true);
        prop_assert_eq!(tally.histogram().iter().sum::<u64>(), BLOCK);
        let good = tally.good();
        prop_assert!((0.0..=trial.across() as f64).contains(&good.mean) && good.error.is_finite());
        prop_assert!(tally.centres().iter().all(|centre| centre.x.is_finite() && centre.y.is_finite()));
        let prospect = trial.prospect();
        let mut chances = vec![prospect.centred, prospect.admitted];
        chances.extend(prospect.positions.iter().map(|position| position.complete));
        chances.extend(prospect.positions.iter().filter_map(|position| position.good));
        chances.extend(prospect.faces.iter().map(|face| face.holds));
        prop_assert!(chances.iter().all(|chance| (-1e-12..=1.0 + 1e-12).contains(chance)), "{chances:?}");
    }

    #[test]
    fn with_the_same_dice_a_looser_limit_never_loses_a_pencil(
        limit in 0.0_f64..0.3, more in 0.0_f64..0.3, size in 0.0_f64..0.2,
    ) {
        let accuracy = errors(&Term::ALL.map(|term| (term, size)));
        let good = |limit: f64| {
            let laid = Laid::of(Shape::Hexagonal, 74.0, 30.0, &|rules| {
                rules.eccentricity = Typed::Number(limit);
            });
            run(&laid.trial(&accuracy), 8, 1).good().mean
        };
        prop_assert!(good(limit) <= good(limit + more));
    }

    #[test]
    fn with_the_same_dice_smaller_errors_never_lose_a_pencil(size in 0.0_f64..0.3, share in 0.0_f64..1.0) {
        // All errors shrink alike, towards a pencil in the middle of everything that is asked.
        let good = |size: f64| {
            let accuracy = errors(&Term::ALL.map(|term| (term, size)));
            run(&Laid::hexagons(74.0).trial(&accuracy), 8, 1).good().mean
        };
        prop_assert!(good(size) <= good(size * share));
    }
}
