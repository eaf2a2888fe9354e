//! Stretches made straight, round or free, and joints made smooth or sharp.

use super::editing::{ARM, between};
use super::{Arm, DrawnArc, DrawnPath, Joint, Stretch, StretchKind};
use crate::quantity::{Direction, Point};

impl DrawnPath {
    /// Makes a stretch straight, an arc of a circle, or a curve, as near to what it was as can be:
    /// the arc passes the middle of a curve, the curve keeps the tangents of an arc. A line becomes
    /// an arc of a sixth of a turn that bulges outwards.
    pub fn bend(&mut self, stretch: usize, kind: StretchKind) {
        let Some(node) = self.nodes.get(stretch).copied() else {
            return;
        };
        if node.onward.kind() == kind {
            return;
        }
        let (from, to) = (node.at, self.nodes[self.after(stretch)].at);
        let span = from.distance(to).in_millimetres();
        let straight = Stretch::Curve {
            first: between(from, to, ARM),
            second: between(to, from, ARM),
        };
        self.nodes[stretch].onward = match (kind, node.onward) {
            (StretchKind::Line, _) => Stretch::Line,
            (StretchKind::Arc, Stretch::Curve { .. }) => {
                let middle = self.along(stretch, 0.5).unwrap_or(from);
                circle_through(from, middle, to).map_or(Stretch::Line, Stretch::Arc)
            }
            (StretchKind::Arc, _) => Stretch::Arc(DrawnArc::circle(span, self.runs_left())),
            (StretchKind::Curve, Stretch::Arc(arc)) => {
                let sweep = arc.between(from, to).map(|arc| arc.sweep_angle.abs());
                match (arc.tangents(from, to), sweep) {
                    (Some((leaves, arrives)), Some(sweep)) => {
                        // The arms of a circle: 4/3·tan(φ/4)·r, with the chord 2·r·sin(φ/2).
                        let (quarter, half) = (sweep / 4.0, sweep / 2.0);
                        let sine = libm::sin(half).max(1e-3);
                        let arm = span * 2.0 / 3.0 * libm::tan(quarter) / sine;
                        Stretch::Curve {
                            first: from.towards(leaves, arm),
                            second: to.towards(arrives, -arm),
                        }
                    }
                    _ => straight,
                }
            }
            (StretchKind::Curve, _) => straight,
        };
    }

    /// Draws a stretch so that its middle comes to a point: a line or an arc becomes the arc of a
    /// circle through it, a line where the three lie in a row; both arms of a curve move alike.
    pub fn pull(&mut self, stretch: usize, to: Point) {
        let Some(node) = self.nodes.get(stretch).copied() else {
            return;
        };
        let (from, end) = (node.at, self.nodes[self.after(stretch)].at);
        self.nodes[stretch].onward = match node.onward {
            Stretch::Curve { first, second } => {
                let middle = self.along(stretch, 0.5).unwrap_or(to);
                // The middle of a cubic moves by three quarters of what its arms do.
                let (x, y) = ((to.x - middle.x) * 4.0 / 3.0, (to.y - middle.y) * 4.0 / 3.0);
                let shift = |point: Point| Point {
                    x: point.x + x,
                    y: point.y + y,
                };
                Stretch::Curve {
                    first: shift(first),
                    second: shift(second),
                }
            }
            _ => circle_through(from, to, end).map_or(Stretch::Line, Stretch::Arc),
        };
    }

    /// Makes a joint smooth or a corner.
    ///
    /// Smooth: curves on both sides lean to the mean of their tangents, one beside a line or an arc
    /// to that, and lines or arcs that meet at an angle become curves. Corner: the arms point
    /// straight to the neighbours.
    pub fn join(&mut self, node: usize, joint: Joint) {
        if node >= self.nodes.len() || self.joint(node) == joint {
            return;
        }
        let before = self.before(node);
        let (last, at, next) = (
            self.nodes[before].at,
            self.nodes[node].at,
            self.nodes[self.after(node)].at,
        );
        if joint == Joint::Corner {
            for (arm, to) in [(Arm::Arriving, last), (Arm::Leaving, next)] {
                if self.arm(node, arm).is_some() {
                    self.put_arm(node, arm, between(at, to, ARM));
                }
            }
            return;
        }
        let curved = [Arm::Arriving, Arm::Leaving].map(|arm| self.arm(node, arm).is_some());
        let along = match curved {
            [true, false] => self.leaving(node),
            [false, true] => self.arriving(node),
            _ => {
                for stretch in [before, node] {
                    self.bend(stretch, StretchKind::Curve);
                }
                let tangents = self.arriving(node).zip(self.leaving(node));
                tangents
                    .and_then(|(one, other)| {
                        let sum = Point::AXIS.towards(one, 1.0).towards(other, 1.0);
                        Direction::between(Point::AXIS, sum)
                    })
                    .or_else(|| Direction::between(last, next))
            }
        };
        let Some(along) = along else {
            return;
        };
        for (arm, way) in [(Arm::Arriving, -1.0), (Arm::Leaving, 1.0)] {
            if let Some(end) = self.arm(node, arm) {
                let length = at.distance(end).in_millimetres();
                self.put_arm(node, arm, at.towards(along, way * length));
            }
        }
    }
}

/// The arc from one point through a second to a third; nothing where they lie in a line.
fn circle_through(from: Point, through: Point, to: Point) -> Option<DrawnArc> {
    let side = |one: Point, other: Point, point: Point| {
        (other.x - one.x) * (point.y - one.y) - (other.y - one.y) * (point.x - one.x)
    };
    let twice = side(from, through, to);
    let [a, b, c] = [(from, through), (through, to), (to, from)]
        .map(|(one, other)| one.distance(other).in_millimetres());
    // The radius of the circle round a triangle: the product of its sides over four times its area.
    let radius = a * b * c / (2.0 * twice.abs());
    (radius.is_finite() && radius < c * 1e6).then_some(DrawnArc {
        radii: (radius, radius),
        rotation: 0.0,
        // The angle over the chord is blunt where the arc is the shorter one.
        long: a * a + b * b > c * c,
        left: twice > 0.0,
    })
}
