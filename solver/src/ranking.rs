//! One barrel on every slat stock, every way round, best first.

use crate::barrel::Barrel;
use crate::layout::{Layout, Setup, lay_out};
use crate::quantity::{Angle, Volume};
use crate::rules::Rules;
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
            let layout = lay_out(&Setup {
                barrel,
                turn,
                top: stock,
                bottom: stock,
                rules,
            });
            let needs = GrossNeeds::new(&layout, stock, rules);
            candidates.push(Candidate {
                slat,
                way,
                layout,
                needs,
            });
            each(candidates.len());
        }
    }
    // The sort is stable, so equals keep the order of the lists.
    candidates.sort_by(|one, other| compare(one, other, aim));
    candidates
}

impl GrossNeeds {
    fn new(layout: &Layout, slat: &Slat, rules: &Rules) -> Option<Self> {
        let pencils = layout.pencils();
        (pencils > 0).then(|| {
            let slats = f64::from(2 * GROSS) / (f64::from(pencils) * rules.good_share());
            let supply = slat.supply();
            let price = slats * supply.pack_price as f64 / f64::from(supply.pack_slats);
            Self {
                slats,
                wood: slat.volume() * slats,
                price,
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
