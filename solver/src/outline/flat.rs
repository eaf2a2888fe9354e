//! Flat outlines: rectangles with rounded corners.

use super::{Arc, Line, Outline, Segment};
use crate::quantity::{Direction, Length, Point};

impl Outline {
    /// A rectangle with rounded corners, lying flat; corners as large as half its height make
    /// half-round sides.
    ///
    /// # Panics
    /// When the corners do not fit: drafts are checked before an outline is made.
    #[must_use]
    pub fn flat(width: Length, height: Length, corner: Length) -> Self {
        let least = width.min(height) / 2.0;
        assert!(
            Length::ZERO <= corner && corner <= least,
            "the corners fit in the outline"
        );
        let radius = corner.in_millimetres();
        let (x, y) = (
            width.in_millimetres() / 2.0 - radius,
            height.in_millimetres() / 2.0 - radius,
        );
        let corners = [
            (Point { x, y: -y }, Direction::DOWN, y),
            (Point { x, y }, Direction::RIGHT, x),
            (Point { x: -x, y }, Direction::UP, y),
            (Point { x: -x, y: -y }, Direction::LEFT, x),
        ];
        let mut segments = Vec::with_capacity(8);
        for (k, &(centre, normal, _)) in corners.iter().enumerate() {
            let (last, _, half_length) = corners[(k + 3) % 4];
            if half_length > 0.0 {
                segments.push(Segment::Line(Line {
                    from: last.towards(normal, radius),
                    to: centre.towards(normal, radius),
                    normal,
                }));
            }
            if radius > 0.0 {
                segments.push(Segment::Arc(Arc {
                    centre,
                    radius,
                    from: normal,
                    to: normal.quarter_turn(),
                }));
            }
        }
        Self { segments }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::f64::consts::PI;

    #[test]
    fn corners_of_half_the_height_make_half_round_sides() {
        let outline = Outline::flat(
            Length::millimetres(12.0),
            Length::millimetres(6.0),
            Length::millimetres(3.0),
        );
        let area = outline.area().in_square_millimetres();
        assert!((area - (36.0 + 9.0 * PI)).abs() < 1e-12, "{area}");
        let girth = outline.perimeter().in_millimetres();
        assert!((girth - (12.0 + 6.0 * PI)).abs() < 1e-12, "{girth}");
    }

    proptest! {
        /// Rounding takes (4 − π)r² off a rectangle.
        #[test]
        fn a_flat_outline_closes_and_has_its_area(
            width in 3.0_f64..30.0, height in 3.0_f64..30.0, share in 0.0_f64..=1.0,
        ) {
            let corner = width.min(height) / 2.0 * share;
            let outline =
                Outline::flat(Length::millimetres(width), Length::millimetres(height), Length::millimetres(corner));
            let segments = outline.segments();
            for (k, segment) in segments.iter().enumerate() {
                let gap = segment.end().distance(segments[(k + 1) % segments.len()].start());
                prop_assert!(gap.in_millimetres() < 1e-12);
            }
            let expected = width * height - (4.0 - PI) * corner * corner;
            prop_assert!((outline.area().in_square_millimetres() - expected).abs() < 1e-9);
        }
    }
}
