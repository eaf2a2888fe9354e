//! The kinds of outline a barrel can have.

use crate::field::Field;
use crate::seam::Seam;

/// The kind of outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Shape {
    /// A circle.
    Round,
    /// Six equal faces.
    Hexagonal,
    /// Three equal faces, flat or bulged.
    Triangular,
    /// Any number of equal faces.
    Polygonal,
    /// An ellipse.
    Oval,
    /// A rectangle with rounded corners, as carpenters use it.
    Flat,
    /// Any closed curve, drawn as a path.
    Free,
}

impl Shape {
    /// Every kind.
    pub const ALL: [Self; 7] = [
        Self::Round,
        Self::Hexagonal,
        Self::Triangular,
        Self::Polygonal,
        Self::Oval,
        Self::Flat,
        Self::Free,
    ];

    /// The word for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Round => "Round",
            Self::Hexagonal => "Hexagonal",
            Self::Triangular => "Triangular",
            Self::Polygonal => "Polygonal",
            Self::Oval => "Oval",
            Self::Flat => "Flat",
            Self::Free => "Free outline",
        }
    }

    /// The size that a caliper reads and that defines the outline.
    #[must_use]
    pub const fn size_field(self) -> Field {
        match self {
            Self::Round => Field::Diameter,
            Self::Hexagonal => Field::AcrossFlats,
            Self::Triangular => Field::Height,
            Self::Polygonal => Field::Inscribed,
            Self::Oval | Self::Flat | Self::Free => Field::BarrelWidth,
        }
    }

    /// The numbers that only this kind asks for beside its size and corner radius.
    #[must_use]
    pub const fn own_fields(self) -> &'static [Field] {
        match self {
            Self::Round | Self::Hexagonal => &[],
            Self::Triangular => &[Field::FaceRadius],
            Self::Polygonal => &[Field::Sides],
            Self::Oval | Self::Flat => &[Field::BarrelHeight],
            Self::Free => &[Field::AxisAcross, Field::AxisUp],
        }
    }

    /// The ways in common use to lay it on the glue plane.
    #[must_use]
    pub const fn seams(self) -> &'static [Seam] {
        match self {
            Self::Round => &[Seam::AnyWay],
            Self::Hexagonal => &[Seam::ThroughCorners, Seam::ThroughFaces],
            Self::Triangular => &[Seam::BaseDown, Seam::BaseUp, Seam::PointSideways],
            Self::Polygonal => &[Seam::FaceDown, Seam::CornerDown],
            Self::Oval | Self::Flat => &[Seam::LyingFlat, Seam::OnEdge],
            Self::Free => &[
                Seam::AsDrawn,
                Seam::QuarterLeft,
                Seam::UpsideDown,
                Seam::QuarterRight,
            ],
        }
    }

    /// Whether it can be turned to any angle with another result.
    #[must_use]
    pub const fn can_be_turned(self) -> bool {
        !matches!(self, Self::Round)
    }

    /// Whether it has corners that can be rounded by a number.
    #[must_use]
    pub const fn has_corners(self) -> bool {
        matches!(
            self,
            Self::Hexagonal | Self::Triangular | Self::Polygonal | Self::Flat
        )
    }

    /// Whether its defining size is a diameter.
    #[must_use]
    pub const fn size_is_diameter(self) -> bool {
        matches!(self, Self::Round | Self::Polygonal)
    }
}
