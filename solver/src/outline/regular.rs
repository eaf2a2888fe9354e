//! Round outlines and regular polygons with rounded corners.

use super::{Arc, Line, Outline, Segment};
use crate::quantity::{Angle, Direction, Length, Point};

impl Outline {
    /// A circle round the axis.
    #[must_use]
    pub fn round(radius: Length) -> Self {
        let half = |from: Direction, to: Direction| {
            Segment::Arc(Arc {
                centre: Point::AXIS,
                radius: radius.in_millimetres(),
                from,
                to,
            })
        };
        Self {
            segments: vec![
                half(Direction::RIGHT, Direction::LEFT),
                half(Direction::LEFT, Direction::RIGHT),
            ],
        }
    }

    /// A regular polygon with rounded corners, standing on a face and then turned.
    ///
    /// `inradius` is the distance from the axis to each face; a corner radius equal to it
    /// makes the circle. The shape is the core polygon of inradius `inradius − corner`
    /// grown by `corner` on every side (a Minkowski sum with a disc).
    ///
    /// # Panics
    /// With fewer than three sides, or a corner radius beyond the inradius: drafts are
    /// checked before an outline is made.
    #[must_use]
    pub fn regular(sides: u32, inradius: Length, corner: Length, turn: Angle) -> Self {
        assert!(sides >= 3, "a polygon has at least three sides");
        assert!(
            Length::ZERO <= corner && corner <= inradius,
            "the corner radius lies within the inradius"
        );
        let radius = corner.in_millimetres();
        let step = 360.0 / f64::from(sides);
        // The core corner between two faces lies on their bisector, at a/cos(π/sides).
        let reach = (inradius - corner).in_millimetres() / Angle::degrees(step / 2.0).direction().x;
        let face = |k: u32| (turn + Angle::degrees(-90.0 + step * f64::from(k))).direction();
        let corner_after = |k: u32| {
            Point::AXIS.towards(
                (turn + Angle::degrees(-90.0 + step * (f64::from(k) + 0.5))).direction(),
                reach,
            )
        };
        let mut segments = Vec::new();
        for k in 0..sides {
            let normal = face(k);
            let (from, to) = (
                corner_after((k + sides - 1) % sides).towards(normal, radius),
                corner_after(k).towards(normal, radius),
            );
            if reach > 0.0 {
                segments.push(Segment::Line(Line { from, to, normal }));
            }
            if radius > 0.0 {
                let to = face((k + 1) % sides);
                segments.push(Segment::Arc(Arc {
                    centre: corner_after(k),
                    radius,
                    from: normal,
                    to,
                }));
            }
        }
        Self { segments }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_segment_starts_where_the_last_one_ends() {
        for sides in 3..12 {
            for turn in [0.0, 30.0, 47.3] {
                let outline = Outline::regular(
                    sides,
                    Length::millimetres(3.5),
                    Length::millimetres(0.4),
                    Angle::degrees(turn),
                );
                let segments = outline.segments();
                for (k, segment) in segments.iter().enumerate() {
                    let gap = segment
                        .end()
                        .distance(segments[(k + 1) % segments.len()].start());
                    assert!(
                        gap.in_millimetres() < 1e-13,
                        "{sides} sides, {turn}°, segment {k}: gap {gap:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn a_corner_radius_of_the_inradius_makes_the_circle() {
        let radius = Length::millimetres(3.5);
        let area = Outline::regular(6, radius, radius, Angle::ZERO)
            .area()
            .in_square_millimetres();
        assert!((area - Outline::round(radius).area().in_square_millimetres()).abs() < 1e-13);
    }
}
