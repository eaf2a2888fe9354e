//! Integrals over a cross-section, of which masses and balance of a sharpened pencil are made.

use crate::outline::{Arc, Outline, Segment};
use crate::quadrature;
use crate::quantity::{Angle, Direction, Point, lesser, norm};
use std::f64::consts::PI;

/// Integrals over an area about the lead axis, with the distance r from it.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Moments {
    /// ∫ dA, mm².
    pub(super) area: f64,
    /// ∫ x dA and ∫ y dA, mm³.
    pub(super) first: Point,
    /// ∫ r dA, mm³.
    pub(super) distance: f64,
    /// ∫ x·r dA and ∫ y·r dA, mm⁴.
    pub(super) first_distance: Point,
    /// ∫ r² dA, mm⁴: the polar moment of area.
    pub(super) square: f64,
    /// ∫ r³ dA, mm⁵.
    pub(super) cube: f64,
}

/// A piece of a curve is halved no more often than this, as it may pass close by the axis.
const MOST_HALVINGS: u32 = 12;

/// An arc turns no further than this in one piece, radians.
const WIDEST: f64 = 0.5;

impl Moments {
    /// The integrals over the area inside an outline.
    ///
    /// A function f of which f(t·P) = tᵏ·f(P) has the integral 1/(k + 2)·∮ f·(P·n) ds over the area
    /// (divergence theorem for f·P), which is taken along lines and arcs by the Gauss–Legendre rule
    /// of 16 points, on pieces no longer than they are far from the axis.
    pub(super) fn of_outline(outline: &Outline) -> Self {
        let mut sum = Self::default();
        for segment in outline.segments() {
            match segment {
                Segment::Line(line) => {
                    let reach = line.from.along(line.normal);
                    let along = line.normal.quarter_turn();
                    let (from, to) = (line.from.along(along), line.to.along(along));
                    let nearest = |from: f64, to: f64| {
                        let beside = if from * to <= 0.0 {
                            0.0
                        } else {
                            lesser(from.abs(), to.abs())
                        };
                        norm(reach, beside)
                    };
                    pieces((from, to), MOST_HALVINGS, &nearest, &mut |from, to| {
                        sum.add(from, to, |place| {
                            let foot = Point::AXIS.towards(line.normal, reach);
                            (foot.towards(along, place), reach)
                        });
                    });
                }
                Segment::Arc(arc) => sum.add_arc(arc),
            }
        }
        sum
    }

    /// The integrals over a disc round the axis, in closed form: ∫ rᵏ dA = 2π·Rᵏ⁺²/(k + 2).
    pub(super) fn of_disc(radius: f64) -> Self {
        let square = radius * radius;
        Self {
            area: PI * square,
            first: Point::AXIS,
            distance: 2.0 * PI * square * radius / 3.0,
            first_distance: Point::AXIS,
            square: PI * square * square / 2.0,
            cube: 2.0 * PI * square * square * radius / 5.0,
        }
    }

    /// Those of this area without another one that lies in it.
    pub(super) fn without(self, inner: Self) -> Self {
        let less = |one: Point, other: Point| Point {
            x: one.x - other.x,
            y: one.y - other.y,
        };
        Self {
            area: self.area - inner.area,
            first: less(self.first, inner.first),
            distance: self.distance - inner.distance,
            first_distance: less(self.first_distance, inner.first_distance),
            square: self.square - inner.square,
            cube: self.cube - inner.cube,
        }
    }

    fn add_arc(&mut self, arc: &Arc) {
        let size = arc.radius.abs();
        let normal = |turned: f64| arc.from.turned(Angle::radians(turned).direction());
        let place = |normal: Direction| arc.centre.towards(normal, arc.radius);
        let nearest = |from: f64, to: f64| {
            let [one, other] = [from, to].map(|turned| place(normal(turned)));
            let ends = lesser(norm(one.x, one.y), norm(other.x, other.y));
            // Between its ends a piece comes no nearer than by half its length.
            let near = (ends / size - (to - from).abs() / 2.0).max(0.0);
            lesser(near, WIDEST)
        };
        pieces(
            (0.0, arc.sweep()),
            MOST_HALVINGS,
            &nearest,
            &mut |from, to| {
                self.add(from, to, |turned| {
                    let normal = normal(turned);
                    let place = place(normal);
                    (place, place.along(normal) * arc.radius)
                });
            },
        );
    }

    /// Adds a piece of the boundary: a point of it with (P·n)·ds for each step of what it runs over.
    fn add(&mut self, from: f64, to: f64, at: impl Fn(f64) -> (Point, f64)) {
        let integral = |value: &dyn Fn(Point, f64) -> f64| {
            quadrature::piece(from, to, |place| {
                let (point, flow) = at(place);
                value(point, norm(point.x, point.y)) * flow
            })
        };
        self.area += integral(&|_, _| 1.0) / 2.0;
        self.first.x += integral(&|point, _| point.x) / 3.0;
        self.first.y += integral(&|point, _| point.y) / 3.0;
        self.distance += integral(&|_, r| r) / 3.0;
        self.first_distance.x += integral(&|point, r| point.x * r) / 4.0;
        self.first_distance.y += integral(&|point, r| point.y * r) / 4.0;
        self.square += integral(&|_, r| r * r) / 4.0;
        self.cube += integral(&|_, r| r * r * r) / 5.0;
    }
}

/// Parts a range into pieces that are no longer than they are far from the axis.
fn pieces(
    (from, to): (f64, f64),
    halvings: u32,
    nearest: &dyn Fn(f64, f64) -> f64,
    take: &mut dyn FnMut(f64, f64),
) {
    if halvings == 0 || (to - from).abs() <= nearest(from, to) {
        take(from, to);
    } else {
        let middle = f64::midpoint(from, to);
        pieces((from, middle), halvings - 1, nearest, take);
        pieces((middle, to), halvings - 1, nearest, take);
    }
}

/// Normals along an arc from its start to its end, none further from the next than a step, radians.
pub(crate) fn arc_normals(arc: &Arc, step: f64) -> impl Iterator<Item = Direction> {
    let (arc, sweep) = (*arc, arc.sweep());
    // At most half a turn.
    let pieces = (sweep.abs() / step).ceil().max(1.0) as u32;
    (0..=pieces).map(move |k| {
        if k == pieces {
            arc.to
        } else {
            let turned = sweep * f64::from(k) / f64::from(pieces);
            arc.from.turned(Angle::radians(turned).direction())
        }
    })
}
