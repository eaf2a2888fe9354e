//! A finished pencil: a barrel with its finish.

use super::colour::Colour;
use super::draft::{Finish, slope};
use super::face::Face;
use crate::barrel::Barrel;
use crate::outline::Outline;
use crate::quantity::{Angle, Direction, Length, Point};

/// Densities of what a pencil is made of, g/cm³, above 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Densities {
    /// Wood.
    pub wood: f64,
    /// Lead.
    pub lead: f64,
    /// Dry coat.
    pub coat: f64,
}

/// A pencil that can be shown and weighed.
///
/// Invariant: point and dip lie within its length, and its barrel has the face of the imprint.
#[derive(Debug, Clone, PartialEq)]
pub struct FinishedPencil {
    barrel: Barrel,
    finish: Finish,
    densities: Densities,
    finished: Outline,
    bare: Outline,
}

/// What is imprinted, and where.
#[derive(Debug, Clone, PartialEq)]
pub struct Imprint {
    /// The text.
    pub text: String,
    /// The face.
    pub face: Face,
    /// Where it may begin, from the tip.
    pub from: Length,
    /// Where it must end.
    pub to: Length,
    /// The largest height of its letters.
    pub height: Length,
}

impl Imprint {
    /// Whether there is anything to imprint, and room for it.
    #[must_use]
    pub fn has_room(&self) -> bool {
        !self.text.is_empty() && self.to > self.from && self.height > Length::ZERO
    }

    /// The edges of its letters beside the foot of the axis on its face, the clockwise one first.
    #[must_use]
    pub fn edges(&self) -> [Length; 2] {
        let half = self.height / 2.0;
        [self.face.middle() - half, self.face.middle() + half]
    }

    /// Length of its room over the height of its letters.
    #[must_use]
    pub fn aspect(&self) -> f64 {
        (self.to - self.from) / self.height
    }
}

impl FinishedPencil {
    /// A barrel with its finish; densities of wood and lead in g/cm³. The finish must have been checked
    /// with this barrel.
    #[must_use]
    pub fn new(barrel: Barrel, finish: Finish, wood: f64, lead: f64) -> Self {
        let densities = Densities {
            wood,
            lead,
            coat: finish.coat_density,
        };
        let (finished, bare) = (barrel.finished(Angle::ZERO), barrel.bare(Angle::ZERO));
        Self {
            barrel,
            finish,
            densities,
            finished,
            bare,
        }
    }

    /// The barrel.
    #[must_use]
    pub const fn barrel(&self) -> &Barrel {
        &self.barrel
    }

    /// Densities of its materials.
    #[must_use]
    pub const fn densities(&self) -> Densities {
        self.densities
    }

    /// Half the angle φ of the point.
    #[must_use]
    pub const fn half_angle(&self) -> Angle {
        self.finish.half_angle
    }

    /// Colour of the coat.
    #[must_use]
    pub const fn coat_colour(&self) -> Colour {
        self.finish.coat_colour
    }

    /// Colour of the lead.
    #[must_use]
    pub const fn lead_colour(&self) -> Colour {
        self.finish.lead_colour
    }

    /// Colour of the dip.
    #[must_use]
    pub const fn dip_colour(&self) -> Colour {
        self.finish.dip_colour
    }

    /// Length of the dip at the end; 0 for none.
    #[must_use]
    pub const fn dip(&self) -> Length {
        self.finish.dip
    }

    /// How much of the lead is bare: (d_L/2)/tan φ from the tip.
    #[must_use]
    pub fn lead_end(&self) -> Length {
        self.lead_radius() * self.slope()
    }

    /// Where the paint edge comes nearest to the tip: the least distance ρ from the axis to the outline,
    /// over tan φ.
    #[must_use]
    pub fn paint_from(&self) -> Length {
        self.finished.least_distance() * self.slope()
    }

    /// Where the paint edge goes farthest from the tip: the greatest distance ρ over tan φ. All is
    /// painted from there on.
    #[must_use]
    pub fn paint_to(&self) -> Length {
        let points = self.finished.turning_distances().into_iter();
        let distances = points.map(|point| Point::AXIS.distance(point));
        distances.fold(Length::ZERO, Length::max) * self.slope()
    }

    /// What is imprinted, or would be: the text may be nothing. On the narrow room between the paint
    /// edge and the end, without margins, nothing may be left.
    #[must_use]
    pub fn imprint(&self) -> Imprint {
        let Finish {
            imprint,
            face,
            margin,
            end_margin,
            dip,
            ..
        } = &self.finish;
        let from = self.paint_to() + *end_margin;
        Imprint {
            text: imprint.clone(),
            face: *face,
            from,
            to: (self.barrel.length() - *dip - *end_margin).max(from),
            height: (face.width() - *margin * 2.0).max(Length::ZERO),
        }
    }

    /// The turn that lays the face of the imprint to the left: towards a reader for whom the tip is on
    /// the left and the outline upright.
    pub(crate) fn turn_to_reader(&self) -> Direction {
        self.finish.face.normal.mirrored().turned(Direction::LEFT)
    }

    /// The outline over the coat, as the barrel stands on a face or is drawn.
    pub(crate) const fn finished(&self) -> &Outline {
        &self.finished
    }

    /// The outline of the wood.
    pub(crate) const fn bare(&self) -> &Outline {
        &self.bare
    }

    pub(crate) fn lead_radius(&self) -> Length {
        self.barrel.lead_diameter() / 2.0
    }

    /// How far along the axis the point runs for each millimetre off it: 1/tan φ.
    pub(crate) fn slope(&self) -> f64 {
        slope(self.finish.half_angle)
    }

    pub(super) const fn tin(&self) -> &super::tin::Tin {
        &self.finish.tin
    }
}
