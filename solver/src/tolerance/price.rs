//! What good pencils cost in slats, and what more of them are worth.

use crate::layout::{Layout, Setup};
use crate::ranking::GROSS;
use crate::threshold::Worth;

/// Price of the slats of a gross of good pencils, in hundredths of the currency: with the good
/// pencils γ of a sandwich side by side, m lengths of a slat, slat prices P_t and P_b, and a share q
/// of slats thrown out, 144·(P_t + P_b) / (γ·m·(1 − q)). The share of pencils thrown out that the
/// rules tell is not counted, for γ tells it here. None where no pencil is good.
///
/// ```
/// use solver::tolerance::gross_price;
/// use solver::{BarrelDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, Typed, lay_out};
/// # let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let mut slat = SlatDraft::new("74 × 5");
/// (slat.pack_slats, slat.pack_price) = (Typed::Number(600.0), Typed::Number(120.0)); // 0.20 each
/// let slat = slat.check().unwrap();
/// # let rules = RulesDraft::new().check().unwrap();
/// # let turn = barrel.turn(Seam::ThroughFaces);
/// # let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
/// // 144 / 9.6 = 15 sandwiches of two slats.
/// let price = gross_price(&setup, &lay_out(&setup), 9.6).unwrap();
/// assert!((price - 600.0).abs() < 1e-9);
/// assert_eq!(gross_price(&setup, &lay_out(&setup), 0.0), None);
/// ```
#[must_use]
pub fn gross_price(setup: &Setup<'_>, layout: &Layout, good: f64) -> Option<f64> {
    let made = good * f64::from(layout.lengths()) * (1.0 - setup.rules.slat_rejects);
    let sandwich = setup.top.supply().slat_price() + setup.bottom.supply().slat_price();
    // So few may be good that no amount is left that can be counted.
    Some(f64::from(GROSS) * sandwich / made).filter(|price| price.is_finite())
}

/// What so many more good pencils of a sandwich save in slats, for a gross and for the gross of a
/// year: the [`gross_price`] today less the one with them. None where no pencil is good, today or
/// then.
///
/// ```
/// use solver::tolerance::worth_of_more;
/// # use solver::{BarrelDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, Typed, lay_out};
/// # let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// # let mut slat = SlatDraft::new("74 × 5");
/// # (slat.pack_slats, slat.pack_price) = (Typed::Number(600.0), Typed::Number(120.0));
/// # let slat = slat.check().unwrap();
/// # let rules = RulesDraft::new().check().unwrap();
/// # let turn = barrel.turn(Seam::ThroughFaces);
/// # let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
/// // From 9 to 9.6 good pencils: from 16 to 15 sandwiches of two slats at 0.20.
/// let worth = worth_of_more(&setup, &lay_out(&setup), 9.0, 0.6, 500.0).unwrap();
/// assert!((worth.per_gross - 40.0).abs() < 1e-9 && (worth.per_year - 20_000.0).abs() < 1e-6);
/// ```
#[must_use]
pub fn worth_of_more(
    setup: &Setup<'_>,
    layout: &Layout,
    good: f64,
    more: f64,
    year_gross: f64,
) -> Option<Worth> {
    let today = gross_price(setup, layout, good)?;
    let per_gross = today - gross_price(setup, layout, good + more)?;
    Some(Worth {
        per_gross,
        per_year: per_gross * year_gross,
    })
}
