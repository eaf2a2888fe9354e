//! Grooves laid side by side on a sandwich of two slats.
//!
//! The cross-section has x across the slat from the datum edge and y up, with the glue
//! plane at y = 0; the bottom slat lies below it, the top slat above.

mod balance;
mod check;
mod groove;

pub use balance::{WoodBalance, WoodClass};
pub use check::{Check, Measure, Outcome, Rule};
pub(crate) use check::{glue_reach, relief_holds};
pub use groove::{Groove, GrooveShape};

use crate::barrel::Barrel;
use crate::outline::{Extents, Outline};
use crate::quantity::{Angle, Length};
use crate::rules::{PitchRule, Rules};
use crate::slat::Slat;

/// What is to be laid, on what, by which rules.
#[derive(Debug, Clone, Copy)]
pub struct Setup<'a> {
    /// The pencil.
    pub barrel: &'a Barrel,
    /// Its turn about the lead axis, from standing on a face.
    pub turn: Angle,
    /// The slat above the glue plane.
    pub top: &'a Slat,
    /// The slat below the glue plane.
    pub bottom: &'a Slat,
    /// The machining rules.
    pub rules: &'a Rules,
}

/// Pencils laid on a sandwich, with every check and where the wood goes.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    bare: Outline,
    finished: Outline,
    extents: Extents,
    groove_shape: GrooveShape,
    pitch: Length,
    datum_edge: Length,
    far_edge: Length,
    lengths: u32,
    grooves: Vec<Groove>,
    checks: Vec<Check>,
    balance: Option<WoodBalance>,
}

/// Lays as many grooves side by side as the rules allow.
///
/// With the bare outline's extents l and r, a slat of guaranteed width W (the narrower of
/// the two), an edge allowance e and a land k, all in mm:
///
/// - the closest pitch is `p = l + r + k`: a shaping head turns about a level axis and
///   reaches only what it sees from above or below, so neighbours may not overlap when
///   projected on the glue plane;
/// - the count is `n = ⌊(W − 2e − (l + r)) / p⌋ + 1`, or 0 where not even one fits;
/// - where the rules allow fewer across, or the cutters are fewer, n is that many;
/// - spare width goes half to each edge, or into the pitch `(W − 2e − (l + r)) / (n − 1)`.
///
/// Along the grain a slat of length L (the shorter of the two) gives several pencils of length
/// λ where they fit between the trimmed ends t with a saw kerf s between them:
/// `m = ⌊(L − 2t + s) / (λ + s)⌋`, counted as 1 where not even one fits.
///
/// Nothing is left to fail: what does not fit is told by the checks of the layout.
///
/// ```
/// use solver::{BarrelDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, lay_out};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap(); // 7.0 across flats
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let rules = RulesDraft::new().check().unwrap(); // land 0.4, edge 1.0
/// let turn = barrel.turn(Seam::ThroughFaces);
/// let layout = lay_out(&Setup { barrel: &barrel, turn, top: &slat, bottom: &slat, rules: &rules });
/// // 6.84 bare + 0.4 land = 7.24; (74 − 2 − 6.84) / 7.24 = 9, and one more.
/// assert_eq!(layout.pencils(), 10);
/// assert!((layout.pitch().in_millimetres() - 7.24).abs() < 1e-12);
/// ```
#[must_use]
pub fn lay_out(setup: &Setup<'_>) -> Layout {
    let Setup {
        barrel,
        turn,
        top,
        bottom,
        rules,
    } = *setup;
    let bare = barrel.bare(turn);
    let extents = bare.extents();
    let groove_shape = GrooveShape::new(
        barrel.lead_diameter() / 2.0 + rules.clearance,
        rules.axis_height,
    );
    let width = top.guaranteed_width().min(bottom.guaranteed_width());
    let length = top.length().min(bottom.length());
    let row = Row::new(extents.width(), width, rules);
    let grooves = groove::row(row.datum_edge + extents.left, row.pitch, row.count);
    let mut layout = Layout {
        finished: barrel.finished(turn),
        extents,
        groove_shape,
        pitch: row.pitch,
        datum_edge: row.datum_edge,
        far_edge: row.far_edge,
        lengths: lengths(barrel.length(), length, rules),
        grooves,
        checks: Vec::new(),
        balance: None,
        bare,
    };
    layout.checks = check::all(setup, &layout);
    // A pencil that sticks out of its slat takes away wood that is not there.
    layout.balance = layout.fits().then(|| WoodBalance::new(setup, &layout));
    layout
}

/// Pencils from one slat length, at least 1.
pub(crate) fn lengths(pencil: Length, slat: Length, rules: &Rules) -> u32 {
    let room = slat - rules.end_trim * 2.0 + rules.saw_kerf;
    room.whole_steps(pencil + rules.saw_kerf).max(1)
}

/// How a row of equal boxes lies across the slat.
struct Row {
    count: u32,
    pitch: Length,
    datum_edge: Length,
    far_edge: Length,
}

impl Row {
    fn new(pencil: Length, width: Length, rules: &Rules) -> Self {
        let closest = pencil + rules.land;
        let pitch = match rules.spacing {
            PitchRule::Closest | PitchRule::Spread => closest,
            PitchRule::Given(pitch) | PitchRule::OfSet(pitch) => pitch,
        };
        // Where the first and the last groove may lie: the room for gaps between them.
        let room = width - rules.edge * 2.0 - pencil;
        let count = if Length::ZERO.fits_in(room) {
            let fit = room.whole_steps(pitch) + 1;
            rules.most.map_or(fit, |most| most.min(fit))
        } else {
            0
        };
        let gaps = f64::from(count.saturating_sub(1));
        let spread = matches!(rules.spacing, PitchRule::Spread) && count > 1;
        let pitch = if spread { room / gaps } else { pitch };
        // With no pencil laid, the edges still say how the one that does not fit would lie.
        let edge = if spread {
            rules.edge
        } else {
            (width - pencil - pitch * gaps) / 2.0
        };
        Self {
            count,
            pitch,
            datum_edge: edge,
            far_edge: edge,
        }
    }
}

impl Layout {
    /// Pencils from one sandwich: the grooves side by side times the pencils of one slat length
    /// when every check passes, otherwise 0.
    #[must_use]
    pub fn pencils(&self) -> u32 {
        if self.fits() {
            self.across() * self.lengths
        } else {
            0
        }
    }

    /// Grooves that fit side by side, whatever the other checks say.
    #[must_use]
    pub fn across(&self) -> u32 {
        self.grooves.len() as u32
    }

    /// Pencils from one slat length, end to end; 1 where not even one fits.
    #[must_use]
    pub const fn lengths(&self) -> u32 {
        self.lengths
    }

    /// Whether every check passes.
    #[must_use]
    pub fn fits(&self) -> bool {
        self.checks
            .iter()
            .all(|check| check.outcome != Outcome::Failed)
    }

    /// The outline of the wood, as it lies.
    #[must_use]
    pub const fn bare(&self) -> &Outline {
        &self.bare
    }

    /// The outline over the coat, as it lies.
    #[must_use]
    pub const fn finished(&self) -> &Outline {
        &self.finished
    }

    /// How far the bare outline reaches from the lead axis.
    #[must_use]
    pub const fn extents(&self) -> Extents {
        self.extents
    }

    /// The shape of the grooves.
    #[must_use]
    pub const fn groove_shape(&self) -> GrooveShape {
        self.groove_shape
    }

    /// Distance between neighbouring groove centres.
    #[must_use]
    pub const fn pitch(&self) -> Length {
        self.pitch
    }

    /// Wood between two neighbouring pencils at their closest.
    #[must_use]
    pub fn parting(&self) -> Length {
        self.pitch - self.extents.width()
    }

    /// Wood outside the first pencil, on the datum edge.
    #[must_use]
    pub const fn datum_edge(&self) -> Length {
        self.datum_edge
    }

    /// Wood outside the last pencil, counted on the guaranteed width.
    #[must_use]
    pub const fn far_edge(&self) -> Length {
        self.far_edge
    }

    /// The grooves from the datum edge.
    #[must_use]
    pub fn grooves(&self) -> &[Groove] {
        &self.grooves
    }

    /// Every check with its margin, in the order a lead reads them.
    #[must_use]
    pub fn checks(&self) -> &[Check] {
        &self.checks
    }

    /// The room for error that the layout has on its slats: the least margin of edge, land,
    /// thicknesses and the wood under the grooves. By so much each of them may be off; below 0
    /// one of them fails already.
    #[must_use]
    pub fn margin(&self) -> Length {
        let margins = self.checks.iter().filter_map(|check| {
            let Measure::Length(margin) = check.margin() else {
                return None;
            };
            check.rule.counts_in_margin().then_some(margin)
        });
        // The thicknesses are always checked, so there is a least.
        margins.reduce(Length::min).unwrap_or(Length::ZERO)
    }

    /// Where the wood goes, when the layout fits.
    #[must_use]
    pub const fn balance(&self) -> Option<&WoodBalance> {
        self.balance.as_ref()
    }
}

#[cfg(test)]
mod tests;
