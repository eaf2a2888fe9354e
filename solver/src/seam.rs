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
    /// A polygon with a face down.
    FaceDown,
    /// A polygon with a corner down.
    CornerDown,
    /// A flat or oval outline lying on its wide side.
    LyingFlat,
    /// A flat or oval outline standing on its narrow side.
    OnEdge,
    /// A free outline as it is drawn.
    AsDrawn,
    /// A free outline a quarter turn to the left.
    QuarterLeft,
    /// A free outline upside down.
    UpsideDown,
    /// A free outline a quarter turn to the right.
    QuarterRight,
}

impl Seam {
    /// The turn from standing on a face, or as drawn, of an outline with so many sides.
    ///
    /// ```
    /// use solver::Seam;
    /// assert_eq!(Seam::ThroughFaces.turn(6).in_degrees(), 30.0);
    /// assert_eq!(Seam::CornerDown.turn(8).in_degrees(), 22.5);
    /// ```
    #[must_use]
    pub fn turn(self, sides: u32) -> Angle {
        Angle::degrees(match self {
            Self::AnyWay
            | Self::ThroughCorners
            | Self::BaseDown
            | Self::FaceDown
            | Self::LyingFlat
            | Self::AsDrawn => 0.0,
            Self::ThroughFaces => 30.0,
            Self::BaseUp | Self::UpsideDown => 180.0,
            Self::PointSideways | Self::OnEdge | Self::QuarterLeft => 90.0,
            Self::QuarterRight => 270.0,
            Self::CornerDown => 180.0 / f64::from(sides.max(1)),
        })
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
            Self::FaceDown => "Face down",
            Self::CornerDown => "Corner down",
            Self::LyingFlat => "Lying flat",
            Self::OnEdge => "On edge",
            Self::AsDrawn => "As drawn",
            Self::QuarterLeft => "Quarter turn left",
            Self::UpsideDown => "Upside down",
            Self::QuarterRight => "Quarter turn right",
        }
    }
}
