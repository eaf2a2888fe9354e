//! What a designer asks of a finished pencil.

use super::body::Body;
use super::pencil::{FinishedPencil, Imprint};
use super::rest::rests;
use super::tin::{Tin, TinRows};
use crate::outline::{Arc, Reach};
use crate::quantity::{Angle, Length, greater};

/// What a designer asks of a finished pencil.
#[derive(Debug, Clone, PartialEq)]
pub struct PencilFacts {
    /// As it is made.
    pub made: Body,
    /// Sharpened.
    pub sharpened: Body,
    /// How much of the lead is bare at the point.
    pub lead_end: Length,
    /// Where the paint edge comes nearest to the tip.
    pub paint_from: Length,
    /// Where it goes farthest from it.
    pub paint_to: Length,
    /// What is imprinted, and the room for it.
    pub imprint: Imprint,
    /// Perimeter of the hull of the finished outline, which fingers reach round.
    pub grip: Length,
    /// Ways in which it lies at rest; 0 for one that rolls from any.
    pub rests: usize,
    /// Slope on which it starts to roll from its firmest rest; 0 for one that has none.
    pub rolls_at: Angle,
    /// The tin.
    pub tin: Tin,
    /// Pencils in straight rows in the tin.
    pub straight: TinRows,
    /// Pencils in staggered rows in the tin.
    pub staggered: TinRows,
}

impl FinishedPencil {
    /// What a designer asks of it.
    ///
    /// - Scallop: the paint edge runs at ρ/tan φ, so on a sharp hexagon its tips and hollows lie
    ///   (across corners − across flats)/(2·tan φ) apart.
    /// - Roll: see the slope α with tan α = h′(φ)/h(φ) about the centre of mass; 180°/n for a sharp
    ///   regular prism of n sides, 0 for a round one.
    /// - Grip: the perimeter of the hull, ∫h dφ (Cauchy).
    ///
    /// ```
    /// use solver::{BarrelDraft, FinishedPencil, Shape, Typed};
    /// let mut draft = BarrelDraft::new("Office", Shape::Hexagonal);
    /// draft.corner_radius = Typed::Number(0.0);
    /// let barrel = draft.check().unwrap();
    /// let finish = draft.finish.check(&barrel).unwrap();
    /// let facts = FinishedPencil::new(barrel, finish, 0.41, 1.98).facts();
    /// // (8.0829 − 7) / 2 / tan 11° = 2.7855 mm.
    /// let scallop = facts.paint_to - facts.paint_from;
    /// assert!((scallop.in_millimetres() - 2.7855).abs() < 1e-4);
    /// assert!((facts.rolls_at.in_degrees() - 30.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn facts(&self) -> PencilFacts {
        let (made, sharpened) = (Body::new(self, 0.0), Body::new(self, self.slope()));
        let reaches = self.finished().reaches();
        let rests = rests(&reaches, sharpened.centre);
        let tangent = rests.iter().map(|rest| rest.tangent).fold(0.0, greater);
        let [straight, staggered] = self.tin().rows(self.barrel());
        PencilFacts {
            made,
            sharpened,
            lead_end: self.lead_end(),
            paint_from: self.paint_from(),
            paint_to: self.paint_to(),
            imprint: self.imprint(),
            grip: Length::millimetres(reaches.iter().map(grip).sum()),
            rests: rests.len(),
            rolls_at: Angle::radians(libm::atan(tangent)),
            tin: *self.tin(),
            straight,
            staggered,
        }
    }
}

/// ∫(c·d + ρ) dφ over the directions d in which a corner reaches farthest, mm.
fn grip(reach: &Reach) -> f64 {
    let Reach {
        centre,
        radius,
        from,
        to,
    } = *reach;
    let turn = Arc {
        centre,
        radius: 1.0,
        from,
        to,
    }
    .sweep();
    centre.x * (to.y - from.y) - centre.y * (to.x - from.x) + radius * turn
}
