//! Free outlines as they are edited: nodes, and the stretch that leads on from each.

mod arc;
mod around;
mod bending;
mod conversion;
mod editing;
mod pieces;
mod reading;
mod snapping;
mod symmetry;
#[cfg(test)]
mod tests;

pub use arc::DrawnArc;
pub use editing::{Arm, Joint, StretchKind};
pub use snapping::Snap;
pub use symmetry::{Edit, Symmetry};

pub(super) use pieces::{Piece, extent};
pub(super) use reading::read;

use super::Outline;
use crate::quantity::{Length, Point};

/// A closed curve as it is drawn, y up: nodes in order, each with the stretch that leads to the
/// next one, and from the last to the first.
///
/// It is what the path data of SVG says (W3C, Scalable Vector Graphics 2, section 9.3): lines,
/// arcs of circles and ellipses, and cubic curves; quadratic ones are written as the cubic ones
/// that they are. [`Self::text`] and [`Self::read`] give the same nodes back to the last bit.
///
/// ```
/// use solver::{DrawnPath, Point, StretchKind};
/// let mut path = DrawnPath::read("M0 0 H8 V6 H0 Z").unwrap();
/// path.bend(1, StretchKind::Curve);
/// path.shift_node(2, Point { x: 9.0, y: -6.0 });
/// let again = DrawnPath::read(&path.text()).unwrap();
/// assert_eq!(again, path);
/// assert_eq!(again.nodes()[2].at.x, 9.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct DrawnPath {
    nodes: Vec<Node>,
}

/// A point of a path, and how the curve leads on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Node {
    /// Where it lies.
    pub at: Point,
    /// How it leads on to the next node.
    pub onward: Stretch,
}

/// The curve from a node to the next one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Stretch {
    /// Straight.
    Line,
    /// An arc of a circle or an ellipse.
    Arc(DrawnArc),
    /// A cubic Bézier curve with its two control points.
    Curve {
        /// The arm of the node where it begins.
        first: Point,
        /// The arm of the node where it ends.
        second: Point,
    },
}

impl DrawnPath {
    /// The path of a text, or nothing where the text is not one curve with at least two nodes.
    ///
    /// One that is left open is closed with a straight line.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let (path, _) = reading::read(text).ok()?;
        (path.nodes.len() > 1).then_some(path)
    }

    /// The nodes in order.
    #[must_use]
    pub fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    /// The place of the node after this one.
    #[must_use]
    pub const fn after(&self, node: usize) -> usize {
        if node + 1 < self.nodes.len() {
            node + 1
        } else {
            0
        }
    }

    /// The place of the node before this one.
    #[must_use]
    pub const fn before(&self, node: usize) -> usize {
        if node == 0 {
            self.nodes.len().saturating_sub(1)
        } else {
            node - 1
        }
    }

    /// The path data of SVG: absolute commands, y down, numbers with as many digits as they need.
    #[must_use]
    pub fn text(&self) -> String {
        let mut text = String::new();
        // Subtracted, so that nothing has no sign.
        let point = |point: Point| format!("{} {}", point.x + 0.0, 0.0 - point.y);
        for (k, node) in self.nodes.iter().enumerate() {
            if k == 0 {
                text += &format!("M{}", point(node.at));
            }
            let closes = k + 1 == self.nodes.len();
            let to = self.nodes[self.after(k)].at;
            match node.onward {
                // The letter that closes the path draws it.
                Stretch::Line if closes => {}
                Stretch::Line => text += &format!(" L{}", point(to)),
                Stretch::Arc(arc) => {
                    text += &format!(
                        " A{} {} {} {} {} {}",
                        arc.radii.0,
                        arc.radii.1,
                        0.0 - arc.rotation,
                        u8::from(arc.long),
                        u8::from(!arc.left),
                        point(to)
                    );
                }
                Stretch::Curve { first, second } => {
                    text += &format!(" C{} {} {}", point(first), point(second), point(to));
                }
            }
        }
        text + " Z"
    }

    /// The path as it lies round the lead axis: larger by a factor, and then moved, mm.
    #[must_use]
    pub(crate) fn placed(mut self, factor: f64, x: f64, y: f64) -> Self {
        let place = |point: Point| Point {
            x: point.x * factor + x,
            y: point.y * factor + y,
        };
        for node in &mut self.nodes {
            node.at = place(node.at);
            node.onward = match node.onward {
                Stretch::Line => Stretch::Line,
                Stretch::Arc(arc) => Stretch::Arc(DrawnArc {
                    radii: (arc.radii.0 * factor, arc.radii.1 * factor),
                    ..arc
                }),
                Stretch::Curve { first, second } => Stretch::Curve {
                    first: place(first),
                    second: place(second),
                },
            };
        }
        self
    }

    /// Its overall width, and the centre of its area where it encloses any: what a free outline
    /// is made by, beside its path.
    #[must_use]
    pub(crate) fn measure(&self) -> (Length, Option<Point>) {
        let pieces = self.pieces();
        let width = extent(&pieces);
        let unit = 1.0 / width;
        if !unit.is_finite() || width <= 0.0 {
            return (Length::ZERO, None);
        }
        let centre = Outline::fitted(pieces, unit, width)
            .ok()
            .map(|outline| outline.centroid())
            .filter(|centre| centre.x.is_finite() && centre.y.is_finite());
        (Length::millimetres(width), centre)
    }
}
