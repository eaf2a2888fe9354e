//! The closed curve of a barrel in cross-section, round the lead axis.

mod measure;
mod regular;
mod segment;

pub use measure::Extents;
pub use segment::{Arc, Line, Segment};

/// A closed curve of lines and arcs, counter-clockwise, with the lead axis at the origin.
///
/// Invariant: convex, the axis lies inside, and each segment starts where the last one ends.
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
}
