//! One barrel on every slat stock, every way round, best first.

use crate::barrel::Barrel;
use crate::layout::{Layout, Setup, lay_out};
use crate::quantity::{Angle, Volume};
use crate::rules::Rules;
use crate::sequence::in_order;
use crate::slat::Slat;
use std::cmp::Ordering;

/// Pencils in a gross.
pub const GROSS: u32 = 144;

/// What makes one layout better than another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Aim {
    /// Most pencils from a sandwich; of equals, least wood.
    Pencils,
    /// Least wood bought for a gross; of equals, most pencils.
    Wood,
}

/// One stock with one way round.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// The stock, by its place in the list that was ranked.
    pub slat: usize,
    /// The way round, by its place in the list that was ranked.
    pub way: usize,
    /// The layout, both slats of this stock.
    pub layout: Layout,
    /// Slats and wood for a gross, when the layout fits.
    pub needs: Option<GrossNeeds>,
}

/// What a gross of good pencils takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GrossNeeds {
    /// Slats, not rounded: 2 · 144 / (n · m · (1 − r) · (1 − q)), with n pencils across, m along,
    /// and the shares r of pencils and q of slats thrown out.
    pub slats: f64,
    /// Wood of those slats as bought.
    pub wood: Volume,
    /// Price of those slats at the pack price, in hundredths of the currency.
    pub price: f64,
}

/// Lays a barrel on each stock each way round and ranks them by an aim.
///
/// Layouts that fit come first, best first; those that do not fit follow in the order of the
/// lists. Equals keep the order of the lists. `each` hears how many are done.
#[must_use]
pub fn rank(
    barrel: &Barrel,
    slats: &[Slat],
    ways: &[Angle],
    rules: &Rules,
    aim: Aim,
    each: &mut dyn FnMut(usize),
) -> Vec<Candidate> {
    let mut candidates = Vec::with_capacity(slats.len() * ways.len());
    for (slat, stock) in slats.iter().enumerate() {
        for (way, &turn) in ways.iter().enumerate() {
            let setup = Setup {
                barrel,
                turn,
                top: stock,
                bottom: stock,
                rules,
            };
            let layout = lay_out(&setup);
            let needs = GrossNeeds::of(&setup, &layout);
            candidates.push(Candidate {
                slat,
                way,
                layout,
                needs,
            });
            each(candidates.len());
        }
    }
    // Equals keep the order of the lists.
    in_order(candidates, |one, other| compare(one, other, aim))
}

impl GrossNeeds {
    /// What a gross takes of a layout and the setup it was laid from; nothing where a check fails.
    ///
    /// Half of the slats are of the top stock and half of the bottom stock.
    ///
    /// ```
    /// use solver::{BarrelDraft, GrossNeeds, RulesDraft, Seam, Setup, Shape, SlatDraft, lay_out};
    /// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
    /// let slat = SlatDraft::new("74 × 5").check().unwrap();
    /// let rules = RulesDraft::new().check().unwrap();
    /// let turn = barrel.turn(Seam::ThroughFaces);
    /// let setup = Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules };
    /// // Ten pencils from two slats: 2 · 144 / 10.
    /// assert_eq!(GrossNeeds::of(&setup, &lay_out(&setup)).unwrap().slats, 28.8);
    /// ```
    #[must_use]
    pub fn of(setup: &Setup<'_>, layout: &Layout) -> Option<Self> {
        let pencils = layout.pencils();
        (pencils > 0).then(|| {
            let slats = f64::from(2 * GROSS) / (f64::from(pencils) * setup.rules.good_share());
            let half = slats / 2.0;
            let price = |slat: &Slat| half * slat.supply().slat_price();
            Self {
                slats,
                wood: setup.top.volume() * half + setup.bottom.volume() * half,
                price: price(setup.top) + price(setup.bottom),
            }
        })
    }
}

fn compare(one: &Candidate, other: &Candidate, aim: Aim) -> Ordering {
    let (Some(a), Some(b)) = (one.needs, other.needs) else {
        return other.needs.is_some().cmp(&one.needs.is_some());
    };
    let pencils = other.layout.pencils().cmp(&one.layout.pencils());
    let wood = a
        .wood
        .in_cubic_millimetres()
        .total_cmp(&b.wood.in_cubic_millimetres());
    match aim {
        Aim::Pencils => pencils.then(wood),
        Aim::Wood => wood.then(pencils),
    }
}

#[cfg(test)]
mod tests;
