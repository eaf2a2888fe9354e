//! Parallel offsets, crossings and containment, by a library of polylines with arcs.
//!
//! The library keeps arcs as *bulges* (the tangent of a quarter of their sweep) and treats
//! points nearer than its tolerance as one. Only the corners it finds are taken over: they
//! come from sums, products and roots. Centres and radii are those of the outline that was offset, so
//! arcs stay exact and alike on every machine.

use super::{Arc, HAIR, Line, Outline, Segment};
use crate::quantity::{Direction, Length, Point};
use cavalier_contours::core::math::Vector2;
use cavalier_contours::polyline::{
    PlineCreation, PlineIntersect, PlineOffsetOptions, PlineSelfIntersectOptions, PlineSource,
    PlineSourceMut, Polyline,
};

/// Points nearer than this are one to the library, mm: a line that all but touches a circle meets
/// it in points that rounding moves by the root of what it moves the rest.
const SAME: f64 = 1e-6;

/// What a millimetre measures to the library. It checks itself to a hundred-thousandth of its
/// unit, whatever tolerance it is given: [`SAME`] has to be more than that. A power of two, so
/// that nothing is rounded on the way there and back.
const UNIT: f64 = 16.0;

/// How far a corner may lie from the circle it is said to lie on, mm.
const ON_CIRCLE: f64 = 1e-5;

impl Outline {
    /// The outline that lies a distance inside this one, everywhere: what is left of a pencil
    /// without its coat. Nothing where the distance leaves nothing round the axis, or several pieces.
    ///
    /// Corners that the distance swallows are gone, and their neighbours meet.
    ///
    /// ```
    /// use solver::{Angle, Length, Outline};
    /// // Seven across the flats, a millimetre less on every side: (√3/2)·5².
    /// let hexagon = Outline::regular(6, Length::millimetres(3.5), Length::ZERO, Angle::ZERO);
    /// let inner = hexagon.inset(Length::millimetres(1.0)).unwrap();
    /// assert!((inner.area().in_square_millimetres() - 21.650635094610966).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn inset(&self, distance: Length) -> Option<Self> {
        if distance == Length::ZERO {
            return Some(self.clone());
        }
        if self.is_smooth() && self.is_convex() && self.bends_more_gently_than(distance) {
            return Some(self.shrunk(distance));
        }
        let options = PlineOffsetOptions {
            pos_equal_eps: SAME * UNIT,
            offset_dist_eps: 10.0 * SAME * UNIT,
            ..PlineOffsetOptions::new()
        };
        let inner = polyline(self).parallel_offset_opt(distance.in_millimetres() * UNIT, &options);
        match inner.as_slice() {
            [inner] => self.take_over(inner, distance).filter(encloses_axis),
            _ => None,
        }
    }

    /// Whether every joint is smooth.
    fn is_smooth(&self) -> bool {
        self.corners()
            .all(|(last, next)| last.cross(next).abs() <= HAIR)
    }

    fn bends_more_gently_than(&self, distance: Length) -> bool {
        self.segments.iter().all(|segment| match segment {
            Segment::Line(_) => true,
            Segment::Arc(arc) => arc.radius > distance.in_millimetres() + SAME,
        })
    }

    /// Every piece moved inwards along its normals. Of a smooth convex outline that nowhere bends
    /// more sharply than the distance this is the whole offset: no part of it meets another.
    fn shrunk(&self, distance: Length) -> Self {
        let distance = distance.in_millimetres();
        let shrink = |segment: &Segment| match *segment {
            Segment::Line(line) => Segment::Line(Line {
                from: line.from.towards(line.normal, -distance),
                to: line.to.towards(line.normal, -distance),
                normal: line.normal,
            }),
            Segment::Arc(arc) => Segment::Arc(Arc {
                radius: arc.radius - distance,
                ..arc
            }),
        };
        Self {
            segments: self.segments.iter().map(shrink).collect(),
        }
    }

    /// An offset polyline as an outline, its arcs on the circles of this one's.
    fn take_over(&self, inner: &Polyline<f64>, distance: Length) -> Option<Self> {
        let circles: Vec<(Point, f64)> = self
            .segments
            .iter()
            .filter_map(|segment| match segment {
                Segment::Arc(arc) => Some((arc.centre, arc.radius - distance.in_millimetres())),
                Segment::Line(_) => None,
            })
            .chain(
                self.concave_corners()
                    .map(|at| (at, -distance.in_millimetres())),
            )
            .collect();
        let mut segments = Vec::new();
        for (one, other) in inner.iter_segments() {
            let (from, to) = (point(one.pos()), point(other.pos()));
            if from.distance(to).in_millimetres() <= 2.0 * SAME {
                continue;
            }
            if one.bulge_is_zero() {
                segments.extend(Segment::line(from, to));
                continue;
            }
            let miss = |&(centre, radius): &(Point, f64)| {
                let off = |point| (centre.distance(point).in_millimetres() - radius.abs()).abs();
                // An arc that has turned over is no part of the offset.
                let turned = (radius > 0.0) != (one.bulge > 0.0);
                off(from).max(off(to)) + if turned { 1.0 } else { 0.0 }
            };
            let &(centre, radius) = circles
                .iter()
                .min_by(|one, other| miss(one).total_cmp(&miss(other)))
                .filter(|circle| miss(circle) < ON_CIRCLE)?;
            let normal = |point| {
                let outwards = Direction::between(centre, point)?;
                Some(if radius < 0.0 { -outwards } else { outwards })
            };
            segments.push(Segment::Arc(Arc {
                centre,
                radius,
                from: normal(from)?,
                to: normal(to)?,
            }));
        }
        (segments.len() > 1).then_some(Self { segments })
    }

    /// Corners that point inwards: an offset runs round them on a circle.
    fn concave_corners(&self) -> impl Iterator<Item = Point> {
        self.segments
            .iter()
            .zip(self.corners())
            .filter(|(_, (last, next))| last.cross(*next) < 0.0)
            .map(|(segment, _)| segment.end())
    }
}

/// Where an outline meets itself, if it does.
pub(super) fn crossing(outline: &Outline) -> Option<Point> {
    let mut found = None;
    let options = PlineSelfIntersectOptions {
        pos_equal_eps: SAME * UNIT,
        ..PlineSelfIntersectOptions::new()
    };
    polyline(outline).visit_self_intersects_opt(
        &mut |intersect: PlineIntersect<f64>| {
            let at = match intersect {
                PlineIntersect::Basic(basic) => basic.point,
                PlineIntersect::Overlapping(overlapping) => overlapping.point1,
            };
            found.get_or_insert(point(at));
        },
        &options,
    );
    found
}

/// Whether the lead axis lies inside, and not on the curve.
pub(super) fn encloses_axis(outline: &Outline) -> bool {
    let axis = Vector2::new(0.0, 0.0);
    outline.least_distance() > Length::millimetres(SAME)
        && polyline(outline).winding_number(axis) > 0
}

/// The outline as the library takes it.
fn polyline(outline: &Outline) -> Polyline<f64> {
    let mut polyline = Polyline::with_capacity(outline.segments.len(), true);
    for segment in &outline.segments {
        let (start, bulge) = match segment {
            Segment::Line(line) => (line.from, 0.0),
            Segment::Arc(arc) => (arc.start(), libm::tan(arc.sweep() / 4.0)),
        };
        polyline.add(start.x * UNIT, start.y * UNIT, bulge);
    }
    polyline
}

/// A point of the library in millimetres.
fn point(at: Vector2<f64>) -> Point {
    Point {
        x: at.x / UNIT,
        y: at.y / UNIT,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn shrinking_is_the_offset_where_nothing_meets(
            width in 5.0_f64..12.0, share in 0.5_f64..1.0, distance in 0.001_f64..0.3,
        ) {
            let outline = Outline::oval(Length::millimetres(width), Length::millimetres(width * share));
            let distance = Length::millimetres(distance);
            let shrunk = outline.inset(distance).unwrap();
            let options = PlineOffsetOptions { pos_equal_eps: SAME * UNIT, ..PlineOffsetOptions::new() };
            let offset = polyline(&outline).parallel_offset_opt(distance.in_millimetres() * UNIT, &options);
            let found = outline.take_over(&offset[0], distance).unwrap();
            let miss = (shrunk.area() - found.area()).in_square_millimetres();
            prop_assert!(miss.abs() < 1e-4, "{miss}");
        }
    }

    /// What is eaten off inwards everywhere comes nearer to the axis by just that.
    #[track_caller]
    fn check_bezier(width: f64, coat: f64) {
        let path = "M0 0 C2 -3 6 -2 8 0 C10 4 7 8 4 7 C1 8 -2 4 0 0 Z";
        let outline =
            Outline::from_path(path, Length::millimetres(width), Length::ZERO, Length::ZERO)
                .unwrap();
        let coat = Length::millimetres(coat);
        let inner = outline.inset(coat).unwrap();
        let miss = (outline.least_distance() - coat - inner.least_distance()).in_millimetres();
        assert!(miss.abs() < 1e-5, "{miss}");
        // Steiner's A − P·c + π·c² is the least that can be left of a shape with corners.
        let least = outline.area().in_square_millimetres()
            - (outline.perimeter() * coat).in_square_millimetres()
            + std::f64::consts::PI * coat.in_millimetres() * coat.in_millimetres();
        let area = inner.area().in_square_millimetres();
        assert!(least - 1e-4 < area && area < outline.area().in_square_millimetres());
    }

    #[test]
    fn a_curve_whose_offset_meets_itself_beside_a_joint_does_not_stop_the_library() {
        check_bezier(6.0536, 0.47);
        check_bezier(6.0536, 0.470_001);
        check_bezier(6.945_848_348_644_54, 0.537_467_340_432_838_3);
    }

    proptest! {
        #[test]
        fn a_curve_with_a_corner_and_a_hollow_is_inset_whatever_its_size(
            width in 5.0_f64..13.0, coat in 0.001_f64..1.0,
        ) {
            check_bezier(width, coat);
        }
    }
}
