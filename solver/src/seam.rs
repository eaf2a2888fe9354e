//! How a barrel is laid on the glue plane.

use crate::quantity::Angle;

/// A usual way to lay an outline on the glue plane.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Seam {
    /// A round barrel looks the same every way.
    AnyWay,
    /// A hexagon with faces up and down: the glue line runs out at two corners.
    ThroughCorners,
    /// A hexagon with corners up and down: the glue line runs out at two faces.
    ThroughFaces,
    /// A triangle standing on a face.
    BaseDown,
    /// A triangle standing on a corner.
    BaseUp,
    /// A triangle with one face upright.
    PointSideways,
}

impl Seam {
    /// The turn from standing on a face.
    #[must_use]
    pub const fn turn(self) -> Angle {
        match self {
            Self::AnyWay | Self::ThroughCorners | Self::BaseDown => Angle::ZERO,
            Self::ThroughFaces => Angle::degrees(30.0),
            Self::BaseUp => Angle::degrees(180.0),
            Self::PointSideways => Angle::degrees(90.0),
        }
    }

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::AnyWay => "Any way round",
            Self::ThroughCorners => "Seam through corners",
            Self::ThroughFaces => "Seam through faces",
            Self::BaseDown => "Base down",
            Self::BaseUp => "Base up",
            Self::PointSideways => "Point sideways",
        }
    }
}
