//! The closed curve of a barrel in cross-section, round the lead axis.

#[cfg(test)]
pub(crate) mod any_path;
mod bulged;
mod curve;
mod drawn;
mod flat;
mod halves;
mod hull;
mod measure;
mod offset;
mod oval;
mod path;
mod reach;
mod regular;
mod segment;
mod undercut;

pub(crate) use bulged::Bulged;
pub(crate) use curve::biarc;
pub use drawn::{
    Arm, DrawnArc, DrawnPath, Edit, Joint, Node, Snap, Stretch, StretchKind, Symmetry,
};
pub use measure::Extents;
pub use path::{MOST_PIECES, PathProblem};
pub use reach::Reach;
pub use segment::{Arc, Line, Segment};
pub use undercut::Undercut;

use crate::quantity::Direction;

/// A closed curve of lines and arcs, counter-clockwise, with the lead axis at the origin.
///
/// Invariant: the curve does not cross itself, the axis lies inside, and each segment starts
/// where the last one ends.
///
/// ```
/// use solver::{Angle, Length, Outline};
/// // Seven across the flats: area (√3/2)·AF² = 42.435 mm².
/// let sharp = Outline::regular(6, Length::millimetres(3.5), Length::ZERO, Angle::ZERO);
/// assert!((sharp.area().in_square_millimetres() - 42.43524478543749).abs() < 1e-12);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    segments: Vec<Segment>,
}

impl Outline {
    /// The segments in order, counter-clockwise.
    #[must_use]
    pub fn segments(&self) -> &[Segment] {
        &self.segments
    }

    /// The outline turned about the lead axis by the angle of a direction.
    #[must_use]
    pub fn turned(&self, turn: Direction) -> Self {
        if turn == Direction::RIGHT {
            return self.clone();
        }
        Self {
            segments: self.segments.iter().map(|s| s.turned(turn)).collect(),
        }
    }

    /// The outline as it is seen from behind: mirrored in the upright line through the axis.
    pub(crate) fn mirrored(&self) -> Self {
        let pieces = self.segments.iter().rev();
        Self {
            segments: pieces.map(Segment::mirrored).collect(),
        }
    }

    /// Whether it bulges outwards everywhere.
    #[must_use]
    pub fn is_convex(&self) -> bool {
        // Opposite normals are those of a cusp, where the curve turns back.
        let bulges = |(last, next): (Direction, Direction)| {
            last.cross(next) > HAIR || (last.cross(next) >= -HAIR && last.dot(next) > 0.0)
        };
        self.corners().all(bulges) && !self.segments.iter().any(Segment::is_hollow)
    }

    /// The outward normals on both sides of each joint: the end of a segment, the start of the next.
    fn corners(&self) -> impl Iterator<Item = (Direction, Direction)> {
        let next = self.segments.iter().cycle().skip(1);
        self.segments
            .iter()
            .zip(next)
            .map(|(one, other)| (one.last_normal(), other.first_normal()))
    }
}

/// Normals whose sine differs by less are the same: a smooth joint.
const HAIR: f64 = 1e-9;
