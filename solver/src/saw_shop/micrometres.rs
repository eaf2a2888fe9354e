//! From what is typed to the whole numbers that sawing is counted in.

use crate::quantity::Length;

/// Micrometres in a millimetre.
const STEPS: f64 = 1000.0;

/// A length in millimetres as whole micrometres, rounded down; what lies within [`Length::SLACK`]
/// of a micrometre is that micrometre.
pub(super) fn down(millimetres: f64) -> i64 {
    // The ranges of the fields lie far within i64.
    ((millimetres + Length::SLACK.in_millimetres()) * STEPS).floor() as i64
}

/// The same, rounded up.
pub(super) fn up(millimetres: f64) -> i64 {
    ((millimetres - Length::SLACK.in_millimetres()) * STEPS).ceil() as i64
}

/// An amount of money in whole hundredths, rounded to the nearest.
pub(super) fn hundredths(amount: f64) -> i64 {
    (amount * 100.0).round() as i64
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn between_two_micrometres_the_way_is_told() {
        assert_eq!((down(1.5875), up(1.5875)), (1_587, 1_588));
        assert_eq!((down(0.0), up(0.0)), (0, 0));
    }

    #[test]
    fn the_rounding_of_inches_is_forgiven() {
        // 0.1 in and 0.7 in are not whole binary fractions of a millimetre.
        for inches in [0.1, 0.2, 0.3, 0.7, 1.1] {
            let typed = inches * 25.4;
            assert_eq!(down(typed), up(typed), "{inches}");
        }
    }

    proptest! {
        #[test]
        fn whole_micrometres_stay_as_they_are(steps in 0_i64..30_000_000) {
            let typed = steps as f64 / STEPS;
            prop_assert_eq!((down(typed), up(typed)), (steps, steps));
        }

        #[test]
        fn both_ways_lie_a_step_apart_at_most(millimetres in 0.0_f64..30_000.0) {
            let (down, up) = (down(millimetres), up(millimetres));
            prop_assert!(down == up || down + 1 == up);
            prop_assert!((down as f64 / STEPS - millimetres).abs() < 0.001 + 1e-6);
        }
    }
}
