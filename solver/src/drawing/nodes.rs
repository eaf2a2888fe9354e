//! The nodes of a path on the end view of a barrel, to be taken in hand.

use super::barrel::EndView;
use super::path::Path;
use crate::outline::{Arm, DrawnPath, Joint};

/// What is drawn over the end view of a barrel while its outline is edited, px.
#[derive(Debug, Clone, PartialEq)]
pub struct NodeMarks {
    /// The curve as it is drawn, SVG path data: what is being changed, even where it cannot be made.
    pub curve: String,
    /// Lines from the nodes to the ends of their arms, SVG path data.
    pub arms: String,
    /// The nodes in order, each with the middle of the stretch that leads on from it.
    pub nodes: Vec<NodeMark>,
    /// The ends of the arms of all nodes.
    pub ends: Vec<ArmMark>,
}

/// A node of a path on the sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NodeMark {
    /// Where it stands, px.
    pub at: (f64, f64),
    /// How the stretches meet in it.
    pub joint: Joint,
    /// The middle of the stretch that leads on, px.
    pub middle: (f64, f64),
}

/// The end of an arm on the sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ArmMark {
    /// The node it is an arm of.
    pub node: usize,
    /// Which one.
    pub arm: Arm,
    /// Where it ends, px.
    pub at: (f64, f64),
}

/// Draws the nodes of a path that lies round the lead axis, mm.
///
/// ```
/// use solver::{BarrelDraft, LengthUnit, Shape, Sheet, draw_end_view, draw_nodes};
/// let draft = BarrelDraft::new("Office", Shape::Hexagonal);
/// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
/// let (_, view) = draw_end_view(&draft.check().unwrap(), &sheet, None);
/// let marks = draw_nodes(&draft.drawn_path().unwrap(), &view);
/// // Six faces and six rounded corners; no curves, so no arms.
/// assert_eq!((marks.nodes.len(), marks.ends.len()), (12, 0));
/// ```
#[must_use]
pub fn draw_nodes(path: &DrawnPath, view: &EndView) -> NodeMarks {
    let mut arms = Path::new();
    let mut ends = Vec::new();
    let mut nodes = Vec::with_capacity(path.nodes().len());
    for (place, node) in path.nodes().iter().enumerate() {
        let at = view.place(node.at);
        let middle = path
            .along(place, 0.5)
            .map_or(at, |middle| view.place(middle));
        nodes.push(NodeMark {
            at,
            joint: path.joint(place),
            middle,
        });
        for arm in [Arm::Arriving, Arm::Leaving] {
            if let Some(end) = path.arm(place, arm) {
                let end = view.place(end);
                arms = arms.run(&[at, end]);
                ends.push(ArmMark {
                    node: place,
                    arm,
                    at: end,
                });
            }
        }
    }
    NodeMarks {
        curve: view.drawn(path),
        arms: arms.done(),
        nodes,
        ends,
    }
}
