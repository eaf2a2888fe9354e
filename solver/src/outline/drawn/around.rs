//! Paths that come to themselves when they are turned by a part of a whole turn.

use super::symmetry::{Edit, SAME, turned_arc};
use super::{Arm, DrawnPath, Node, Stretch};
use crate::quantity::{Angle, Direction, Point};

/// A part of a path that comes again all round the axis.
#[derive(Debug, Clone, Copy)]
struct Part {
    /// How many nodes it has, one or more.
    nodes: usize,
    /// How many parts make a whole turn.
    parts: u32,
    /// 1 where the next part lies counter-clockwise, and −1 where it lies clockwise.
    way: f64,
}

impl Part {
    /// The turn from the first part to another, and in degrees.
    fn turn(self, number: u32) -> (Direction, f64) {
        let angle = part_angle(self.parts, number);
        let (turn, degrees) = (angle.direction(), angle.in_degrees());
        if self.way < 0.0 {
            (turn.mirrored(), -degrees)
        } else {
            (turn, degrees)
        }
    }
}

/// The angle that so many parts of a whole turn take.
pub(super) fn part_angle(parts: u32, times: u32) -> Angle {
    Angle::degrees(360.0 * f64::from(times % parts) / f64::from(parts))
}

impl DrawnPath {
    /// The part that begins with the first node, all round.
    pub(super) fn made_around(&self, parts: u32) -> Self {
        self.repeated(0, self.part(parts), false)
    }

    /// The path after an edit that is done to the image in every part of a turn as well.
    pub(super) fn edited_around(&self, edit: Edit, parts: u32) -> Self {
        let part = self.part(parts);
        let whole = self.nodes.len();
        let changed = self.changed(edit);
        let after = changed.nodes.len();
        match edit {
            Edit::ShiftNode(node, _) | Edit::ShiftArm(node, _, _) | Edit::Join(node, _)
                if node < whole =>
            {
                let from = (node + whole - part.nodes / 2 % whole) % whole;
                changed.repeated(from, part, true)
            }
            Edit::Bend(stretch, _) | Edit::Pull(stretch, _) if stretch < whole => {
                changed.repeated(stretch, part, false)
            }
            Edit::AddNode(stretch, _) if after > whole => {
                let nodes = part.nodes + 1;
                changed.repeated(stretch, Part { nodes, ..part }, false)
            }
            Edit::RemoveNode(node) if after < whole && part.nodes > 1 => {
                let before = if node == 0 { after - 1 } else { node - 1 };
                let nodes = part.nodes - 1;
                changed.repeated(before, Part { nodes, ..part }, false)
            }
            _ => self.clone(),
        }
    }

    /// The part of a whole turn that begins with the first node.
    fn part(&self, parts: u32) -> Part {
        let whole = self.nodes.len();
        let number = parts as usize;
        if whole.is_multiple_of(number) && whole >= number {
            let nodes = whole / number;
            for way in [1.0, -1.0] {
                let turn = part_angle(parts, 1).direction();
                let turn = if way < 0.0 { turn.mirrored() } else { turn };
                let alike = (0..whole).all(|k| {
                    let image = self.nodes[k].at.turned(turn);
                    let there = self.nodes[(k + nodes) % whole].at;
                    image.distance(there).in_millimetres() <= SAME
                });
                if alike {
                    return Part { nodes, parts, way };
                }
            }
        }
        let way = if self.runs_left() { 1.0 } else { -1.0 };
        let outwards = |node: &Node| Direction::between(Point::AXIS, node.at);
        let first = self.nodes.first().and_then(outwards);
        let first = first.unwrap_or(Direction::RIGHT);
        let end = part_angle(parts, 1).in_degrees() - 1e-6;
        let within = |node: &&Node| {
            outwards(node).is_some_and(|there| {
                let turn = Direction {
                    x: first.dot(there),
                    y: first.cross(there) * way,
                };
                let angle = turn.angle().in_degrees();
                angle > 0.0 && angle < end
            })
        };
        let nodes = 1 + self.nodes.iter().skip(1).take_while(within).count();
        Part { nodes, parts, way }
    }

    /// A part that begins with a node, over and over, all round. By nodes each goes with both of its
    /// arms, and otherwise each stretch goes with both of its own.
    fn repeated(&self, from: usize, part: Part, by_nodes: bool) -> Self {
        let whole = self.nodes.len();
        if whole == 0 {
            return self.clone();
        }
        let place = |k: usize| (from + k) % whole;
        let mut nodes = Vec::with_capacity(part.nodes * part.parts as usize);
        for number in 0..part.parts {
            let (turn, degrees) = part.turn(number);
            for k in 0..part.nodes {
                let node = self.nodes[place(k)];
                let onward = match node.onward {
                    Stretch::Line => Stretch::Line,
                    Stretch::Arc(arc) => Stretch::Arc(turned_arc(arc, degrees)),
                    Stretch::Curve { first, second } => {
                        // After the last node of a part comes the image of its first one.
                        let (next, way) = if k + 1 < part.nodes {
                            (place(k + 1), turn)
                        } else {
                            (place(0), part.turn(number + 1).0)
                        };
                        let arm = self.arm(next, Arm::Arriving).filter(|_| by_nodes);
                        Stretch::Curve {
                            first: first.turned(turn),
                            second: arm.map_or_else(|| second.turned(turn), |arm| arm.turned(way)),
                        }
                    }
                };
                let at = node.at.turned(turn);
                nodes.push(Node { at, onward });
            }
        }
        // The nodes stand where they stood before.
        let shift = from % nodes.len();
        nodes.rotate_right(shift);
        Self { nodes }
    }
}
