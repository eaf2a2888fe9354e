//! Arcs between two nodes.

use super::super::curve::point;
use crate::quantity::{Direction, Point};
use kurbo::{ParamCurve, SvgArc, Vec2};

/// An arc of a circle or an ellipse, as it is drawn from one node to another.
///
/// Where the radii do not reach from node to node both grow until they do, as the standard says
/// (W3C, Scalable Vector Graphics 2, section 9.5.1).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnArc {
    /// The two radii; a circle has equal ones.
    pub radii: (f64, f64),
    /// How far the first radius is turned from level, degrees, counter-clockwise.
    pub rotation: f64,
    /// Whether it is the longer one of the two ways round.
    pub long: bool,
    /// Whether it turns to the left on its way.
    pub left: bool,
}

impl DrawnArc {
    /// An arc of a circle, the shorter way round.
    pub(super) const fn circle(radius: f64, left: bool) -> Self {
        Self {
            radii: (radius, radius),
            rotation: 0.0,
            long: false,
            left,
        }
    }

    /// Whether it is a part of a circle.
    #[must_use]
    pub const fn is_circular(&self) -> bool {
        self.radii.0 == self.radii.1
    }

    /// The arc between two points; nothing where it is all but straight.
    pub(super) fn between(&self, from: Point, to: Point) -> Option<kurbo::Arc> {
        let (from, to) = (
            kurbo::Point::new(from.x, from.y),
            kurbo::Point::new(to.x, to.y),
        );
        let span = (to - from).hypot();
        // An arc that is all but straight has a centre beyond what numbers can hold, and the
        // standard draws a line where a radius is nothing.
        let flat = self.radii.0.min(self.radii.1) <= span * 1e-12
            || self.radii.0.max(self.radii.1) >= span * 1e9;
        let arc = SvgArc {
            from,
            to,
            radii: Vec2::new(self.radii.0, self.radii.1),
            x_rotation: self.rotation.to_radians(),
            large_arc: self.long,
            sweep: self.left,
        };
        (!flat).then(|| kurbo::Arc::from_svg_arc(&arc)).flatten()
    }

    /// The point at a share of the way.
    pub(super) fn at(&self, from: Point, to: Point, share: f64) -> Point {
        match self.between(from, to) {
            Some(arc) => point(arc.eval(share)),
            None => Point {
                x: from.x + (to.x - from.x) * share,
                y: from.y + (to.y - from.y) * share,
            },
        }
    }

    /// The directions in which it leaves and in which it arrives.
    pub(super) fn tangents(&self, from: Point, to: Point) -> Option<(Direction, Direction)> {
        let Some(arc) = self.between(from, to) else {
            let along = Direction::between(from, to)?;
            return Some((along, along));
        };
        let tangent = |angle: f64| {
            let (sine, cosine) = libm::sincos(angle);
            let way = arc.sweep_angle.signum();
            let (x, y) = (-arc.radii.x * sine * way, arc.radii.y * cosine * way);
            let (turn_y, turn_x) = libm::sincos(arc.x_rotation);
            let turned = Point { x, y }.turned(Direction {
                x: turn_x,
                y: turn_y,
            });
            Direction::between(Point::AXIS, turned)
        };
        Some((
            tangent(arc.start_angle)?,
            tangent(arc.start_angle + arc.sweep_angle)?,
        ))
    }

    /// The two parts of it that meet at a share of the way.
    pub(super) fn split(&self, from: Point, to: Point, share: f64) -> (Self, Self) {
        let sweep = self
            .between(from, to)
            .map_or(0.0, |arc| arc.sweep_angle.abs());
        let radii = self
            .between(from, to)
            .map_or(self.radii, |arc| (arc.radii.x, arc.radii.y));
        let part = |sweep: f64| Self {
            radii,
            long: sweep > std::f64::consts::PI,
            ..*self
        };
        (part(sweep * share), part(sweep * (1.0 - share)))
    }

    /// The same arc as it is seen in the upright line through the axis: run through the other way.
    pub(super) fn mirrored_and_reversed(&self) -> Self {
        Self {
            rotation: 0.0 - self.rotation,
            ..*self
        }
    }
}
