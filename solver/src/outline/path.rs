//! Free outlines: the path data of SVG (W3C, Scalable Vector Graphics 2, section 9.3), fitted to millimetres.
//!
//! Lines and circular arcs are kept exact; other curves become smooth chains of arcs, within a
//! millionth of the width of the drawn curve, the same ones for every width.

use super::drawn::{self, Piece};
use super::{Outline, Segment, curve, offset};
use crate::quantity::{Length, Point};

/// The most lines and arcs an outline may have.
pub const MOST_PIECES: usize = 2_000;

/// What keeps a path from being an outline.
#[derive(Debug, Clone, PartialEq)]
pub enum PathProblem {
    /// There is none.
    Empty,
    /// The text stops making sense.
    Unreadable {
        /// The first character that does not belong there, from 1; the end of the text where it breaks off.
        at: usize,
    },
    /// It lifts the pen: more than one curve.
    SeveralCurves,
    /// It does not come back to its start.
    Open {
        /// From the end to the start, once fitted.
        gap: Length,
    },
    /// It has more pieces than [`MOST_PIECES`].
    TooManyPieces {
        /// How many were read before giving up.
        found: usize,
    },
    /// It encloses nothing, or its numbers are out of all measure.
    NoArea,
    /// It meets itself.
    CrossesItself {
        /// Where, from the centre of its area, once fitted.
        at: Point,
    },
    /// The lead axis lies outside it.
    AxisOutside,
}

impl Outline {
    /// The outline that a path draws, made as wide as `width`, with the lead axis `across` to the
    /// right of the centre of its area and `up` above it.
    ///
    /// # Errors
    /// What keeps the path from being one closed curve, not crossing itself, round the axis.
    ///
    /// ```
    /// use solver::{Length, Outline};
    /// let circle = "M0 5 A5 5 0 0 1 10 5 A5 5 0 0 1 0 5 Z";
    /// let outline = Outline::from_path(circle, Length::millimetres(7.0), Length::ZERO, Length::ZERO).unwrap();
    /// assert!((outline.area().in_square_millimetres() - std::f64::consts::PI * 3.5 * 3.5).abs() < 1e-12);
    /// ```
    pub fn from_path(
        text: &str,
        width: Length,
        across: Length,
        up: Length,
    ) -> Result<Self, PathProblem> {
        let (mut path, gap) = drawn::read(text)?;
        let drawn_width = drawn::extent(&path.pieces());
        let unit = 1.0 / drawn_width;
        if !unit.is_finite() || drawn_width <= 0.0 {
            return Err(PathProblem::NoArea);
        }
        if gap * unit > curve::TOLERANCE {
            let gap = width * (gap * unit);
            return Err(PathProblem::Open { gap });
        }
        if gap > 0.0 {
            path.close_gap();
        }
        let outline = Self::fitted(path.pieces(), unit, width.in_millimetres())?;
        let centre = outline.centroid();
        let outline = outline.moved(-centre.x, -centre.y);
        if !outline.is_measurable() {
            return Err(PathProblem::NoArea);
        }
        if let Some(at) = offset::crossing(&outline) {
            return Err(PathProblem::CrossesItself { at });
        }
        let outline = outline.moved(-across.in_millimetres(), -up.in_millimetres());
        if offset::encloses_axis(&outline) {
            Ok(outline)
        } else {
            Err(PathProblem::AxisOutside)
        }
    }

    /// The outline of pieces, made as wide as 1 by a unit and then as wide as `width`, mm.
    pub(super) fn fitted(pieces: Vec<Piece>, unit: f64, width: f64) -> Result<Self, PathProblem> {
        let mut segments = Vec::new();
        for piece in pieces {
            match piece {
                Piece::Exact(segment) => segments.push(segment.scaled(unit)),
                Piece::Curve(cubic) => {
                    let cubic = kurbo::Affine::scale(unit) * cubic;
                    curve::append(&cubic, &mut segments);
                }
            }
            if segments.len() > MOST_PIECES {
                let found = segments.len();
                return Err(PathProblem::TooManyPieces { found });
            }
        }
        let segments = segments.iter().map(|s| s.scaled(width)).collect();
        Self { segments }.counter_clockwise()
    }

    fn counter_clockwise(mut self) -> Result<Self, PathProblem> {
        let area = self.area().in_square_millimetres();
        if !area.is_finite() || area == 0.0 {
            return Err(PathProblem::NoArea);
        }
        if area < 0.0 {
            self.segments = self.segments.iter().rev().map(Segment::reversed).collect();
        }
        Ok(self)
    }

    /// Whether its sizes are such that their squares and products are still numbers.
    fn is_measurable(&self) -> bool {
        /// A kilometre: nothing that is as wide as a pencil reaches farther, mm.
        const FARTHEST: f64 = 1e6;
        let within = |point: Point| point.x.abs() <= FARTHEST && point.y.abs() <= FARTHEST;
        // Written so that what is no number lies outside.
        self.segments
            .iter()
            .all(|segment| within(segment.start()) && within(segment.end()))
    }

    /// The outline moved against the axis, mm.
    fn moved(mut self, x: f64, y: f64) -> Self {
        self.segments = self.segments.iter().map(|s| s.moved(x, y)).collect();
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Areas of similar figures are as the squares of their widths (Euclid VI 20). A curve that is
        /// fitted anew to every width gains and loses arcs, and jumps where it does.
        #[test]
        fn a_curve_is_made_of_the_same_arcs_whatever_its_width(width in 3.0_f64..40.0) {
            let path = "M0 0 C2 -3 6 -2 8 0 C10 4 7 8 4 7 C1 8 -2 4 0 0 Z";
            let drawn = |width| {
                let width = Length::millimetres(width);
                Outline::from_path(path, width, Length::ZERO, Length::ZERO).unwrap()
            };
            let (one, other) = (drawn(10.0), drawn(width));
            prop_assert_eq!(one.segments().len(), other.segments().len());
            let square = (width / 10.0) * (width / 10.0);
            let miss = one.area().in_square_millimetres() * square - other.area().in_square_millimetres();
            prop_assert!(miss.abs() < 1e-10, "{miss}");
        }
    }
}
