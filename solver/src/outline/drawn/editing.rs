//! What can be done to a path: nodes and their arms moved, nodes added and taken out.
//!
//! A node or stretch that is not there is left alone, so that an old name harms nothing.

use super::pieces::pen_point;
use super::{DrawnArc, DrawnPath, Node, Stretch};
use crate::quantity::{Direction, Point};
use kurbo::{CubicBez, ParamCurve};

/// One of the two arms of a node: the control points of the curves that meet in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Arm {
    /// Of the curve that arrives.
    Arriving,
    /// Of the curve that leaves.
    Leaving,
}

/// How two stretches meet in a node.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Joint {
    /// At an angle.
    Corner,
    /// Without one.
    Smooth,
}

/// The kinds of stretch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum StretchKind {
    /// Straight.
    Line,
    /// An arc of a circle, or of an ellipse that was drawn so.
    Arc,
    /// A free curve.
    Curve,
}

/// Tangents whose sine differs by less make a smooth joint: a thousandth of a degree is not seen.
const SMOOTH: f64 = 2e-5;
/// How long an arm is as a share of the way between its nodes, where nothing says otherwise: a
/// curve with both in line with it is the straight line, evenly run through.
pub(super) const ARM: f64 = 1.0 / 3.0;

impl StretchKind {
    /// Every kind.
    pub const ALL: [Self; 3] = [Self::Line, Self::Arc, Self::Curve];

    /// The word for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Line => "Line",
            Self::Arc => "Arc",
            Self::Curve => "Curve",
        }
    }
}

impl Joint {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Corner, Self::Smooth];

    /// The word for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Corner => "Corner",
            Self::Smooth => "Smooth",
        }
    }
}

impl Stretch {
    /// Its kind.
    #[must_use]
    pub const fn kind(&self) -> StretchKind {
        match self {
            Self::Line => StretchKind::Line,
            Self::Arc(_) => StretchKind::Arc,
            Self::Curve { .. } => StretchKind::Curve,
        }
    }
}

impl DrawnPath {
    /// Where an arm of a node ends; nothing where no curve meets the node there.
    #[must_use]
    pub fn arm(&self, node: usize, arm: Arm) -> Option<Point> {
        if node >= self.nodes.len() {
            return None;
        }
        let stretch = match arm {
            Arm::Leaving => node,
            Arm::Arriving => self.before(node),
        };
        match (self.nodes.get(stretch)?.onward, arm) {
            (Stretch::Curve { first, .. }, Arm::Leaving) => Some(first),
            (Stretch::Curve { second, .. }, Arm::Arriving) => Some(second),
            _ => None,
        }
    }

    /// How the stretches meet in a node: what is smooth is kept so while an arm is moved.
    #[must_use]
    pub fn joint(&self, node: usize) -> Joint {
        let tangents = self.arriving(node).zip(self.leaving(node));
        let is_smooth = |(last, next): (Direction, Direction)| {
            last.cross(next).abs() <= SMOOTH && last.dot(next) > 0.0
        };
        if tangents.is_some_and(is_smooth) {
            Joint::Smooth
        } else {
            Joint::Corner
        }
    }

    /// The point at a share of the way along a stretch.
    #[must_use]
    pub fn along(&self, stretch: usize, share: f64) -> Option<Point> {
        let node = self.nodes.get(stretch)?;
        let (from, to) = (node.at, self.nodes[self.after(stretch)].at);
        Some(match node.onward {
            Stretch::Line => between(from, to, share),
            Stretch::Arc(arc) => arc.at(from, to, share),
            Stretch::Curve { first, second } => {
                let [from, first, second, to] = [from, first, second, to].map(pen_point);
                let at = CubicBez::new(from, first, second, to).eval(share);
                super::super::curve::point(at)
            }
        })
    }

    /// Moves a node, with its arms. Arcs keep their radii as long as they reach.
    pub fn shift_node(&mut self, node: usize, to: Point) {
        let Some(from) = self.nodes.get(node).map(|node| node.at) else {
            return;
        };
        let (x, y) = (to.x - from.x, to.y - from.y);
        let shift = |point: Point| Point {
            x: point.x + x,
            y: point.y + y,
        };
        for arm in [Arm::Arriving, Arm::Leaving] {
            if let Some(end) = self.arm(node, arm) {
                self.put_arm(node, arm, shift(end));
            }
        }
        self.nodes[node].at = to;
    }

    /// Moves the end of an arm. Where the joint was smooth the other arm turns with it, and keeps
    /// its length.
    pub fn shift_arm(&mut self, node: usize, arm: Arm, to: Point) {
        if self.arm(node, arm).is_none() {
            return;
        }
        let was_smooth = self.joint(node) == Joint::Smooth;
        self.put_arm(node, arm, to);
        let other = match arm {
            Arm::Arriving => Arm::Leaving,
            Arm::Leaving => Arm::Arriving,
        };
        let at = self.nodes[node].at;
        if let (true, Some(end), Some(along)) = (
            was_smooth,
            self.arm(node, other),
            Direction::between(to, at),
        ) {
            let length = at.distance(end).in_millimetres();
            self.put_arm(node, other, at.towards(along, length));
        }
    }

    /// Puts a node on a stretch at a share of its way, between 0 and 1; the curve stays as it is.
    /// Gives the place of the new node; nothing where there is no such stretch or share.
    pub fn add_node(&mut self, stretch: usize, share: f64) -> Option<usize> {
        let at = self.along(stretch, share)?;
        // Written so that what is no number is left out.
        if !(share > 0.0 && share < 1.0) {
            return None;
        }
        let (from, to) = (self.nodes[stretch].at, self.nodes[self.after(stretch)].at);
        let (before, after) = match self.nodes[stretch].onward {
            Stretch::Line => (Stretch::Line, Stretch::Line),
            Stretch::Arc(arc) => {
                let (before, after) = arc.split(from, to, share);
                (Stretch::Arc(before), Stretch::Arc(after))
            }
            Stretch::Curve { first, second } => {
                // After de Casteljau.
                let middle = between(first, second, share);
                let (one, other) = (between(from, first, share), between(second, to, share));
                let before = Stretch::Curve {
                    first: one,
                    second: between(one, middle, share),
                };
                let after = Stretch::Curve {
                    first: between(middle, other, share),
                    second: other,
                };
                (before, after)
            }
        };
        self.nodes[stretch].onward = before;
        self.nodes.insert(stretch + 1, Node { at, onward: after });
        Some(stretch + 1)
    }

    /// Takes a node out; its neighbours are joined by a curve where one met it, by an arc where two
    /// of one circle did, and otherwise by a line. The last two nodes stay: says whether it is gone.
    pub fn remove_node(&mut self, node: usize) -> bool {
        if node >= self.nodes.len() || self.nodes.len() < 3 {
            return false;
        }
        let before = self.before(node);
        let (from, to) = (self.nodes[before].at, self.nodes[self.after(node)].at);
        let onward = match (self.nodes[before].onward, self.nodes[node].onward) {
            (Stretch::Arc(one), Stretch::Arc(other))
                if one.radii == other.radii && one.left == other.left =>
            {
                let turns = |arc: DrawnArc, from: Point, to: Point| {
                    arc.between(from, to)
                        .map_or(0.0, |arc| arc.sweep_angle.abs())
                };
                let at = self.nodes[node].at;
                let sweep = turns(one, from, at) + turns(other, at, to);
                let long = sweep > std::f64::consts::PI;
                Stretch::Arc(DrawnArc { long, ..one })
            }
            (Stretch::Curve { first, .. }, Stretch::Curve { second, .. }) => {
                Stretch::Curve { first, second }
            }
            (Stretch::Curve { first, .. }, _) => Stretch::Curve {
                first,
                second: between(to, from, ARM),
            },
            (_, Stretch::Curve { second, .. }) => Stretch::Curve {
                first: between(from, to, ARM),
                second,
            },
            _ => Stretch::Line,
        };
        self.nodes[before].onward = onward;
        self.nodes.remove(node);
        true
    }

    pub(super) fn put_arm(&mut self, node: usize, arm: Arm, to: Point) {
        let stretch = match arm {
            Arm::Leaving => node,
            Arm::Arriving => self.before(node),
        };
        if let Some(node) = self.nodes.get_mut(stretch)
            && let Stretch::Curve { first, second } = &mut node.onward
        {
            match arm {
                Arm::Leaving => *first = to,
                Arm::Arriving => *second = to,
            }
        }
    }

    /// The direction in which the curve leaves a node.
    pub(super) fn leaving(&self, node: usize) -> Option<Direction> {
        let from = self.nodes.get(node)?;
        let to = self.nodes[self.after(node)].at;
        match from.onward {
            Stretch::Line => Direction::between(from.at, to),
            Stretch::Arc(arc) => arc.tangents(from.at, to).map(|(leaves, _)| leaves),
            Stretch::Curve { first, second } => [first, second, to]
                .into_iter()
                .find_map(|next| Direction::between(from.at, next)),
        }
    }

    /// The direction in which the curve arrives at a node.
    pub(super) fn arriving(&self, node: usize) -> Option<Direction> {
        let to = self.nodes.get(node)?.at;
        let from = self.nodes[self.before(node)];
        match from.onward {
            Stretch::Line => Direction::between(from.at, to),
            Stretch::Arc(arc) => arc.tangents(from.at, to).map(|(_, arrives)| arrives),
            Stretch::Curve { first, second } => [second, first, from.at]
                .into_iter()
                .find_map(|last| Direction::between(last, to)),
        }
    }

    /// Whether it runs round what it encloses with that to its left.
    pub(super) fn runs_left(&self) -> bool {
        let corners = (0..self.nodes.len()).flat_map(|stretch| {
            let middle = self.along(stretch, 0.5);
            [Some(self.nodes[stretch].at), middle]
        });
        let corners: Vec<Point> = corners.flatten().collect();
        let next = corners.iter().cycle().skip(1);
        let twice = corners.iter().zip(next);
        let area: f64 = twice
            .map(|(one, other)| one.x * other.y - one.y * other.x)
            .sum();
        area >= 0.0
    }
}

/// The point at a share of the way between two.
pub(super) fn between(from: Point, to: Point, share: f64) -> Point {
    Point {
        x: from.x + (to.x - from.x) * share,
        y: from.y + (to.y - from.y) * share,
    }
}
