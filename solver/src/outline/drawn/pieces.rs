//! From nodes to the pieces an outline is made of.

use super::super::{Arc, Segment, curve};
use super::{DrawnArc, DrawnPath, Stretch};
use crate::quantity::{Direction, Point};
use kurbo::{CubicBez, ParamCurveExtrema};
use std::f64::consts::FRAC_PI_2;

/// A piece of a path: y up, in the units of the path.
pub(in crate::outline) enum Piece {
    /// A line or a circular arc.
    Exact(Segment),
    /// Any other curve.
    Curve(CubicBez),
}

impl DrawnPath {
    /// The pieces of the path, in order.
    pub(in crate::outline) fn pieces(&self) -> Vec<Piece> {
        let mut pieces = Vec::with_capacity(self.nodes.len());
        for (k, node) in self.nodes.iter().enumerate() {
            let (from, to) = (node.at, self.nodes[self.after(k)].at);
            match node.onward {
                Stretch::Line => pieces.extend(Segment::line(from, to).map(Piece::Exact)),
                Stretch::Arc(arc) => append_arc(&arc, from, to, &mut pieces),
                Stretch::Curve { first, second } => {
                    let [from, first, second, to] = [from, first, second, to].map(pen_point);
                    pieces.push(Piece::Curve(CubicBez::new(from, first, second, to)));
                }
            }
        }
        pieces
    }

    /// Lets the last stretch but one end where the path begins, for a gap that counts as none.
    pub(in crate::outline) fn close_gap(&mut self) {
        self.nodes.pop();
    }
}

/// An arc: circles stay exact, ellipses become curves.
fn append_arc(arc: &DrawnArc, from: Point, to: Point, pieces: &mut Vec<Piece>) {
    /// How far the curves may lie from an ellipse, as a share of its radius.
    const SHARE: f64 = 1e-9;
    let Some(ellipse) = arc.between(from, to) else {
        pieces.extend(Segment::line(from, to).map(Piece::Exact));
        return;
    };
    if arc.is_circular() {
        append_circular(&ellipse, from, to, pieces);
        return;
    }
    let mut at = pen_point(from);
    let tolerance = SHARE * arc.radii.0.max(arc.radii.1);
    for part in ellipse.append_iter(tolerance) {
        if let kurbo::PathEl::CurveTo(first, second, to) = part {
            pieces.push(Piece::Curve(CubicBez::new(at, first, second, to)));
            at = to;
        }
    }
}

/// A circular arc in parts of at most a quarter turn, its ends exactly those of the path.
fn append_circular(circle: &kurbo::Arc, from: Point, to: Point, pieces: &mut Vec<Piece>) {
    let parts = (circle.sweep_angle.abs() / FRAC_PI_2 - 1e-9)
        .ceil()
        .clamp(1.0, 4.0);
    let bulge = circle.sweep_angle.signum();
    let centre = curve::point(circle.center);
    let outwards = |to: Point| Direction::between(centre, to);
    let (Some(first), Some(last)) = (outwards(from), outwards(to)) else {
        return;
    };
    let mut from = first;
    for part in 1..=parts as u32 {
        let turn = circle.sweep_angle * f64::from(part) / parts;
        let (y, x) = libm::sincos(turn);
        let to = if f64::from(part) == parts {
            last
        } else {
            first.turned(Direction { x, y })
        };
        // Run through clockwise, the same circle is hollow: its outward normals point in.
        pieces.push(Piece::Exact(Segment::Arc(Arc {
            centre,
            radius: circle.radii.x * bulge,
            from: if bulge < 0.0 { -from } else { from },
            to: if bulge < 0.0 { -to } else { to },
        })));
        from = to;
    }
}

/// The width of what is drawn, in its own units.
pub(in crate::outline) fn extent(pieces: &[Piece]) -> f64 {
    let (mut left, mut right) = (f64::INFINITY, f64::NEG_INFINITY);
    for piece in pieces {
        let (from, to) = match piece {
            Piece::Exact(segment) => segment.span(),
            Piece::Curve(curve) => {
                let bounds = ParamCurveExtrema::bounding_box(curve);
                (bounds.x0, bounds.x1)
            }
        };
        (left, right) = (left.min(from), right.max(to));
    }
    right - left
}

pub(super) const fn pen_point(point: Point) -> kurbo::Point {
    kurbo::Point::new(point.x, point.y)
}
