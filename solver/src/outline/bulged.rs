//! Triangles with bulged faces, from nearly flat ones up to the curve of constant width.

use super::{Arc, Outline, Segment};
use crate::quantity::{Angle, Direction, Length, Point};

/// Three equal faces of a radius that run smoothly into three rounded corners.
///
/// With the corner centres at the distance q from the axis, corners of radius r and faces of
/// radius R, the centre of a face lies f behind the axis, where
/// `(f + q/2)² + ¾q² = (R − r)²`: the face touches both corners from outside. A caliper reads
/// the height `h = (R − f) + q + r` from the middle of a face to the opposite corner, so
/// `3q² + 3Kq + K² − (R − r)² = 0` with `K = R + r − h` (derived). For K = 0 the curve has
/// constant width; with sharp corners it is then the Reuleaux triangle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Bulged {
    face: f64,
    corner: f64,
    /// From the axis to the centre of a corner, mm.
    corner_reach: f64,
    /// From the axis to the centre of a face, on the far side, mm.
    face_reach: f64,
}

impl Bulged {
    /// By its height, corner radius and face radius; the face radius is at least the height
    /// less the corner radius, and the corner radius at most half the height.
    pub(crate) fn new(height: Length, corner: Length, face: Length) -> Self {
        let (height, corner, face) = (
            height.in_millimetres(),
            corner.in_millimetres(),
            face.in_millimetres(),
        );
        let (excess, reach) = (face + corner - height, face - corner);
        let root = (12.0 * reach * reach - 3.0 * excess * excess)
            .max(0.0)
            .sqrt();
        let core = height - 2.0 * corner;
        // The root of the quadratic above 0, in the form that loses no digits with flat faces.
        let corner_reach = if core > 0.0 {
            2.0 * core * (2.0 * face - height) / (root + 3.0 * excess)
        } else {
            0.0
        };
        Self {
            face,
            corner,
            corner_reach,
            face_reach: face + corner + corner_reach - height,
        }
    }

    /// The triangle that lies a distance inside; the faces meet in sharp corners where the
    /// distance swallows the rounding. The distance is less than the [`inradius`](Self::inradius).
    pub(crate) fn inset(self, distance: Length) -> Self {
        let distance = distance.in_millimetres();
        let face = self.face - distance;
        if self.corner >= distance {
            return Self {
                face,
                corner: self.corner - distance,
                ..self
            };
        }
        // Two faces meet where q² + fq + f² = R².
        let reach = self.face_reach;
        let root = (4.0 * face * face - 3.0 * reach * reach).max(0.0).sqrt();
        Self {
            face,
            corner: 0.0,
            corner_reach: (root - reach) / 2.0,
            ..self
        }
    }

    /// From the axis to the middle of a face.
    pub(crate) fn inradius(self) -> Length {
        Length::millimetres(self.face - self.face_reach)
    }

    /// Where its lower face runs into the corner to the right, standing on a face, mm.
    pub(crate) fn face_end(self) -> Point {
        let corner = Point::AXIS.towards(Angle::degrees(-30.0).direction(), self.corner_reach);
        let centre = Point::AXIS.towards(Direction::UP, self.face_reach);
        let normal = Direction::between(centre, corner).unwrap_or(Direction::DOWN);
        corner.towards(normal, self.corner)
    }

    /// Its outline, standing on a face and then turned.
    pub(crate) fn outline(self, turn: Angle) -> Outline {
        let direction = |degrees: f64| (turn + Angle::degrees(degrees)).direction();
        let mut segments = Vec::with_capacity(6);
        for k in 0..3 {
            let step = 120.0 * f64::from(k);
            let centre = Point::AXIS.towards(direction(-90.0 + step), -self.face_reach);
            let corner =
                |degrees| Point::AXIS.towards(direction(degrees + step), self.corner_reach);
            let (before, after) = (corner(-150.0), corner(-30.0));
            let middle = direction(-90.0 + step);
            let normal = |corner| Direction::between(centre, corner).unwrap_or(middle);
            let (from, to) = (normal(before), normal(after));
            // Corners of half the height meet, and the outline is their circle.
            if self.corner_reach > 0.0 {
                segments.push(Segment::Arc(Arc {
                    centre,
                    radius: self.face,
                    from,
                    to,
                }));
            }
            if self.corner > 0.0 {
                let third = Angle::degrees(120.0).direction();
                segments.push(Segment::Arc(Arc {
                    centre: after,
                    radius: self.corner,
                    from: to,
                    to: from.turned(third),
                }));
            }
        }
        Outline { segments }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::f64::consts::PI;

    fn bulged(height: f64, corner: f64, face: f64) -> Bulged {
        Bulged::new(
            Length::millimetres(height),
            Length::millimetres(corner),
            Length::millimetres(face),
        )
    }

    #[test]
    fn sharp_corners_and_faces_as_round_as_it_is_wide_make_the_reuleaux_triangle() {
        // Width 1: area ½(π − √3) = 0.704770923010458, girth π (Blaschke and Lebesgue).
        let outline = bulged(1.0, 0.0, 1.0).outline(Angle::ZERO);
        assert!((outline.area().in_square_millimetres() - 0.704_770_923_010_458).abs() < 1e-14);
        assert!((outline.perimeter().in_millimetres() - PI).abs() < 1e-14);
    }

    #[test]
    fn faces_all_but_flat_make_the_plain_triangle() {
        let plain = Outline::regular(
            3,
            Length::millimetres((7.6 + 1.2) / 3.0),
            Length::millimetres(1.2),
            Angle::ZERO,
        );
        let outline = bulged(7.6, 1.2, 1e5).outline(Angle::ZERO);
        let miss = (outline.area() - plain.area()).in_square_millimetres();
        assert!(miss.abs() < 5e-3, "{miss}");
    }

    #[test]
    fn corners_that_leave_nothing_of_the_faces_make_the_circle() {
        // Half the height of 7.6 is 3.8: π·3.8², and π·3.72² under a coat of 0.08. With faces of
        // 3.8 as well the centres of corners and faces are one.
        for face in [20.0_f64, 3.8, 3.8 + 1e-13, 1e3] {
            for corner in [3.8, 3.8 - 1e-13, 3.8 - 1e-9] {
                let triangle = bulged(7.6, corner, face.max(7.6 - corner));
                for (inset, radius) in [(0.0, 3.8), (0.08, 3.72)] {
                    for turn in [0.0, 17.3, 90.0, 211.0] {
                        let outline = triangle
                            .inset(Length::millimetres(inset))
                            .outline(Angle::degrees(turn));
                        let area = outline.area().in_square_millimetres();
                        assert!((area - PI * radius * radius).abs() < 1e-6, "{area}");
                        let girth = outline.perimeter().in_millimetres();
                        assert!((girth - 2.0 * PI * radius).abs() < 1e-6, "{girth}");
                        let width = outline.extents().width().in_millimetres();
                        assert!((width - 2.0 * radius).abs() < 1e-6, "{width}");
                        assert!(outline.segments().iter().all(|segment| match segment {
                            Segment::Arc(arc) => arc.sweep() <= PI,
                            Segment::Line(_) => false,
                        }));
                    }
                }
            }
        }
    }

    /// Shares of a whole, often the whole itself.
    fn up_to(whole: f64) -> impl Strategy<Value = f64> {
        prop_oneof![Just(whole), 0.0..whole]
    }

    proptest! {
        #[test]
        fn it_is_as_high_as_a_caliper_reads_and_its_parts_join_smoothly(
            height in 3.0_f64..20.0, share in up_to(1.0), more in 0.0_f64..100.0, turn in 0.0_f64..360.0,
        ) {
            let corner = height / 2.0 * share;
            let outline = bulged(height, corner, height - corner + more).outline(Angle::ZERO);
            prop_assert!((outline.extents().height().in_millimetres() - height).abs() < 1e-9);
            let turned = bulged(height, corner, height - corner + more).outline(Angle::degrees(turn));
            let segments = turned.segments();
            for (k, segment) in segments.iter().enumerate() {
                let gap = segment.end().distance(segments[(k + 1) % segments.len()].start());
                prop_assert!(gap.in_millimetres() < 1e-9, "{gap:?}");
            }
            prop_assert!((turned.area() - outline.area()).abs().in_square_millimetres() < 1e-9);
        }

        #[test]
        fn rounding_as_large_as_needed_gives_constant_width(
            height in 3.0_f64..20.0, share in up_to(1.0), view in 0.0_f64..360.0,
        ) {
            let corner = height / 2.0 * share;
            let outline = bulged(height, corner, height - corner).outline(Angle::ZERO);
            let direction = Angle::degrees(view).direction();
            let width = outline.support(direction) + outline.support(-direction);
            prop_assert!((width.in_millimetres() - height).abs() < 1e-9);
        }

        #[test]
        fn its_inset_is_the_parallel_one(
            height in 5.0_f64..20.0, share in up_to(1.0), more in 0.0_f64..30.0, coat in 0.001_f64..0.5,
        ) {
            let corner = height / 2.0 * share;
            let triangle = bulged(height, corner, height - corner + more);
            let closed_form = triangle.inset(Length::millimetres(coat)).outline(Angle::ZERO);
            let found = triangle.outline(Angle::ZERO).inset(Length::millimetres(coat)).unwrap();
            let miss = (closed_form.area() - found.area()).in_square_millimetres();
            prop_assert!(miss.abs() < 1e-7, "{miss}");
        }
    }
}
