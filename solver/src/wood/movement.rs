//! How wood moves when the moisture in it changes.

use super::{Sawing, Species};
use crate::quantity::Length;

/// How much a dimension across the grain changes from one moisture content to another.
///
/// With the dimension D at the moisture content `from` = Mᵢ, the shrinkage S in percent from
/// green to ovendry, the moisture content F at which shrinkage begins, and `to` = M_f, all
/// moisture contents in percent:
///
/// - with both ends from 6 to 14 %, ΔD = D·C·(M_f − Mᵢ), where the coefficient of the species is
///   C = (S/F) / (1 − S·(F − 10)/(100·F)) / 100, the change for each percent of a dimension taken
///   at 10 % (Eq. 13-2 and Table 13-5);
/// - beyond that, ΔD = D·(M_f − Mᵢ) / (100·F/S − F + Mᵢ), as shrinkage is even from F down to
///   ovendry wood (Eq. 13-3).
///
/// Above F wood does not move, so both ends count at most as F. The two forms differ by a few
/// hundredths of the change. Source: USDA Forest Products Laboratory, *Wood Handbook*,
/// FPL-GTR-190, chapter 13, where F is 30 for most species.
///
/// Valid for a shrinkage from 0 to 20 % and F from 15 to 35 %. Without a change of moisture the
/// answer is exactly 0.
///
/// ```
/// use solver::{Length, wood::change};
/// // Basswood, tangential, 9.3 %: C = 0.31 / 0.938 / 100 = 0.003305.
/// let moved = change(Length::millimetres(74.0), 9.3, 30.0, 8.0, 12.0);
/// assert!((moved.in_millimetres() - 74.0 * 0.003305 * 4.0).abs() < 1e-4);
/// ```
#[must_use]
pub fn change(
    dimension: Length,
    shrinkage: f64,
    fibre_saturation: f64,
    from: f64,
    to: f64,
) -> Length {
    /// Where the coefficient holds, percent.
    const COEFFICIENT: std::ops::RangeInclusive<f64> = 6.0..=14.0;
    /// The moisture content at which the coefficient takes the dimension, percent.
    const TAKEN_AT: f64 = 10.0;
    let (from, to) = (from.min(fibre_saturation), to.min(fibre_saturation));
    let difference = to - from;
    if COEFFICIENT.contains(&from) && COEFFICIENT.contains(&to) {
        let rate = shrinkage / fibre_saturation;
        let coefficient = rate / (1.0 - rate * (fibre_saturation - TAKEN_AT) / 100.0) / 100.0;
        dimension * (coefficient * difference)
    } else {
        // Without shrinkage the divisor is infinite and the change is 0.
        dimension * (difference / (100.0 * fibre_saturation / shrinkage - fibre_saturation + from))
    }
}

/// What the sizes of a slat are multiplied by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Movement {
    /// The factor of the width, above 0.
    pub(crate) width: f64,
    /// The factor of the thickness, above 0.
    pub(crate) thickness: f64,
}

impl Movement {
    /// Wood that stays as it is.
    pub(crate) const NONE: Self = Self {
        width: 1.0,
        thickness: 1.0,
    };

    /// A slat of a species that goes from one moisture content to another, percent.
    pub(crate) fn new(species: &Species, sawing: Sawing, from: f64, to: f64) -> Self {
        let factor = |shrinkage| {
            let one = Length::millimetres(1.0);
            1.0 + change(one, shrinkage, species.fibre_saturation(), from, to) / one
        };
        let (radial, tangential) = (factor(species.radial()), factor(species.tangential()));
        match sawing {
            Sawing::Flat => Self {
                width: tangential,
                thickness: radial,
            },
            Sawing::Quarter => Self {
                width: radial,
                thickness: tangential,
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn moved(shrinkage: f64, from: f64, to: f64) -> f64 {
        change(Length::millimetres(100.0), shrinkage, 30.0, from, to).in_millimetres()
    }

    #[test]
    fn wood_that_does_not_shrink_does_not_move() {
        assert_eq!(moved(0.0, 2.0, 25.0), 0.0);
        assert_eq!(moved(0.0, 8.0, 12.0), 0.0);
    }

    #[test]
    fn above_fibre_saturation_nothing_moves() {
        assert_eq!(moved(5.2, 30.0, 60.0), 0.0);
        assert_eq!(moved(5.2, 12.0, 60.0), moved(5.2, 12.0, 30.0));
    }

    #[test]
    fn from_green_to_ovendry_the_whole_shrinkage_is_lost() {
        assert!((moved(5.2, 30.0, 0.0) + 5.2).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn wetter_wood_is_larger_and_the_way_back_leads_back(
            shrinkage in 0.1_f64..20.0, saturation in 15.0_f64..35.0,
            from in 0.0_f64..40.0, to in 0.0_f64..40.0,
        ) {
            let before = Length::millimetres(74.0);
            let there = change(before, shrinkage, saturation, from, to);
            let moves = from.min(saturation) - to.min(saturation);
            prop_assert_eq!(there < Length::ZERO, moves > 0.0);
            let back = change(before + there, shrinkage, saturation, to, from);
            // The general form is exact; the coefficient takes both dimensions at 10 %, so the
            // way back is off by the square of the change.
            let off = (there + back).abs() / before;
            let share = there / before;
            prop_assert!(off <= share * share + 1e-12, "{off} of {share}");
        }

        #[test]
        fn both_forms_nearly_agree(
            shrinkage in 0.1_f64..12.0, from in 6.0_f64..14.0, to in 6.0_f64..14.0,
        ) {
            let general = 100.0 * (to - from) / (3000.0 / shrinkage - 30.0 + from);
            let coefficient = moved(shrinkage, from, to);
            prop_assert!((coefficient - general).abs() <= 0.03 * general.abs(), "{coefficient} {general}");
        }

        #[test]
        fn sawing_only_exchanges_width_and_thickness(from in 0.0_f64..30.0, to in 0.0_f64..30.0) {
            let species = super::super::SpeciesDraft::new("").check().unwrap();
            let flat = Movement::new(&species, Sawing::Flat, from, to);
            let quarter = Movement::new(&species, Sawing::Quarter, from, to);
            prop_assert_eq!((flat.width, flat.thickness), (quarter.thickness, quarter.width));
            // Tangential movement is the larger in every wood.
            prop_assert!((flat.width - 1.0).abs() >= (flat.thickness - 1.0).abs());
        }
    }
}
