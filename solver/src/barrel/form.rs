//! The outline of a barrel by the few numbers that make it, so that it can be made again turned
//! and smaller without a loss.

use crate::outline::{Bulged, Outline};
use crate::quantity::{Angle, Length};

/// How an outline is made.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Form {
    /// A circle of a radius.
    Round(Length),
    /// A regular polygon with rounded corners.
    Regular {
        sides: u32,
        inradius: Length,
        corner: Length,
    },
    /// A triangle with bulged faces.
    Bulged(Bulged),
    /// Any other outline, as it is drawn.
    Drawn(Outline),
}

impl Form {
    /// A regular polygon; rounding may make the corner a hair larger than the circle allows.
    pub(super) fn regular(sides: u32, inradius: Length, corner: Length) -> Self {
        Self::Regular {
            sides,
            inradius,
            corner: corner.min(inradius),
        }
    }

    /// From the axis to the nearest point of the outline.
    pub(super) fn inradius(&self) -> Length {
        match self {
            Self::Round(radius) => *radius,
            Self::Regular { inradius, .. } => *inradius,
            Self::Bulged(bulged) => bulged.inradius(),
            Self::Drawn(outline) => outline.least_distance(),
        }
    }

    /// The outline a distance inside, less than the [`inradius`](Self::inradius); nothing where
    /// what is left is not in one piece.
    pub(super) fn inset(&self, distance: Length) -> Option<Self> {
        Some(match self {
            Self::Round(radius) => Self::Round(*radius - distance),
            Self::Regular {
                sides,
                inradius,
                corner,
            } => {
                let corner = (*corner - distance).max(Length::ZERO);
                Self::regular(*sides, *inradius - distance, corner)
            }
            Self::Bulged(bulged) => Self::Bulged(bulged.inset(distance)),
            Self::Drawn(outline) => Self::Drawn(outline.inset(distance)?),
        })
    }

    /// The outline, turned from standing on a face or as drawn.
    pub(super) fn outline(&self, turn: Angle) -> Outline {
        match self {
            Self::Round(radius) => Outline::round(*radius),
            Self::Regular {
                sides,
                inradius,
                corner,
            } => Outline::regular(*sides, *inradius, *corner, turn),
            Self::Bulged(bulged) => bulged.outline(turn),
            Self::Drawn(outline) => outline.turned(turn.direction()),
        }
    }
}
