//! What a search found, or why it found nothing.

use super::question::Goal;
use crate::layout::Check;
use crate::quantity::{Angle, Length, Volume};
use crate::rules::{PitchRule, Rules};

/// A layout that was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Found {
    /// The stock above the glue plane, by its place in the list.
    pub top: usize,
    /// The stock below the glue plane.
    pub bottom: usize,
    /// The cutter set, by its place in the list; none for a new one.
    pub set: Option<usize>,
    /// The turn of the barrel, from its drawn position.
    pub turn: Angle,
    /// Height of the lead axis above the glue plane.
    pub axis_height: Length,
    /// Distance between groove centres.
    pub pitch: Length,
    /// Pencils side by side.
    pub across: u32,
    /// Pencils from one sandwich.
    pub pencils: u32,
    /// The least margin of edge, land, thicknesses and floors: by so much each of them may be off.
    pub margin: Length,
    /// Wood bought for a gross of good pencils.
    pub wood: Volume,
    /// Price of that wood, and of a cutter set still to be paid spread over the gross of a year, in
    /// hundredths of the currency.
    pub money: f64,
    /// Pencils of one sandwich that are expected to be good; none where no errors are known.
    pub good: Option<f64>,
    /// Price of the wood of a gross of pencils that are expected to be good, and of a cutter set as
    /// above, in hundredths; none where no pencil is, or no errors are known. The share of pencils
    /// thrown out that the rules tell is not counted, for the errors tell it here.
    pub good_money: Option<f64>,
}

/// What a search found.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// All that are best under each goal, in the order of [`Goal::ALL`]; empty when nothing fits, and
    /// under [`Goal::Good`] where no errors are known or they leave no pencil good.
    pub best: [Vec<Found>; Goal::COUNT],
    /// The layouts of which none has both less wood and a wider margin, least wood first.
    pub frontier: Vec<Found>,
    /// Pairs of slats with cutter sets that were compared.
    pub compared: usize,
    /// Why nothing fits, when nothing does.
    pub obstacle: Option<Obstacle>,
}

/// Why nothing fits.
#[derive(Debug, Clone, PartialEq)]
pub enum Obstacle {
    /// There is no slat stock.
    NoSlats,
    /// No cutter set fits the barrel, and none may be bought.
    NoCutters,
    /// The pair that comes nearest fails these checks, at its best turn or else as drawn.
    Nearest {
        /// The stock above the glue plane.
        top: usize,
        /// The stock below the glue plane.
        bottom: usize,
        /// The checks that fail.
        checks: Vec<Check>,
    },
}

impl Found {
    /// The rules that lay this layout.
    #[must_use]
    pub fn rules(&self, rules: &Rules) -> Rules {
        Rules {
            spacing: PitchRule::Given(self.pitch),
            most: Some(self.across),
            axis_height: self.axis_height,
            ..*rules
        }
    }
}

impl Answer {
    /// Nothing of so many pairs with sets.
    pub(super) fn nothing(compared: usize, obstacle: Obstacle) -> Self {
        Self {
            best: [const { Vec::new() }; Goal::COUNT],
            frontier: Vec::new(),
            compared,
            obstacle: Some(obstacle),
        }
    }
}
