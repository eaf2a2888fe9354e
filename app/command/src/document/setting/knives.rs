//! The knives of a setting.

use schemars::JsonSchema;
use serde::Serialize;
use solver::{Knife, KnifePoint, Point};

use crate::document::words::{HeadWord, KnifeWord};

/// A knife.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct KnifeLine {
    /// Which one.
    knife: KnifeWord,
    /// The head it stands in.
    head: HeadWord,
    /// The farthest point of its edge above the glue plane, mm.
    tip_mm: f64,
    /// Depth of the edge square to the table, mm.
    depth_mm: f64,
    /// The same depth on the face of the knife, mm.
    depth_on_face_mm: f64,
    /// How far the edge that is told may lie from the true one, mm.
    tolerance_mm: f64,
    /// Every joint of the edge, from the datum edge across.
    points: Vec<PointLine>,
    /// Sides that stand too upright and need side clearance, in the section of the sandwich.
    rubbing: Vec<RubbingLine>,
}

/// A joint of an edge.
#[derive(Debug, Serialize, JsonSchema)]
struct PointLine {
    /// From the datum edge of the slats, mm.
    across_mm: f64,
    /// Above the farthest point of the edge, square to the table, mm.
    height_mm: f64,
    /// Above the farthest point of the edge, on the face of the knife, mm.
    on_face_mm: f64,
    /// Radius of the arc to the next joint, on the face, mm; `null` where a straight line leads there.
    radius_mm: Option<f64>,
}

/// A side that stands too upright: from the datum edge and above the glue plane, both ends.
#[derive(Debug, Serialize, JsonSchema)]
struct RubbingLine {
    /// One end from the datum edge, mm.
    from_across_mm: f64,
    /// That end above the glue plane, mm.
    from_height_mm: f64,
    /// The other end from the datum edge, mm.
    to_across_mm: f64,
    /// That end above the glue plane, mm.
    to_height_mm: f64,
}

impl From<&Knife> for KnifeLine {
    fn from(knife: &Knife) -> Self {
        Self {
            knife: knife.blade().into(),
            head: knife.blade().head().into(),
            tip_mm: knife.tip().in_millimetres(),
            depth_mm: knife.depth().in_millimetres(),
            depth_on_face_mm: knife.stretched_depth().in_millimetres(),
            tolerance_mm: Knife::TOLERANCE.in_millimetres(),
            points: knife.points().iter().map(PointLine::from).collect(),
            rubbing: knife.rubbing().iter().map(RubbingLine::from).collect(),
        }
    }
}

impl From<&KnifePoint> for PointLine {
    fn from(point: &KnifePoint) -> Self {
        Self {
            across_mm: point.across.in_millimetres(),
            height_mm: point.height.in_millimetres(),
            on_face_mm: point.on_face.in_millimetres(),
            radius_mm: point.radius.map(solver::Length::in_millimetres),
        }
    }
}

impl From<&(Point, Point)> for RubbingLine {
    fn from((from, to): &(Point, Point)) -> Self {
        Self {
            from_across_mm: from.x,
            from_height_mm: from.y,
            to_across_mm: to.x,
            to_height_mm: to.y,
        }
    }
}
