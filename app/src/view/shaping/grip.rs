//! What can be taken in the hand.

use super::Shaping;
use crate::workbench::Slot;
use leptos::prelude::*;
use solver::{Arm, DrawnPath, Field, Id, Joint, LengthUnit, Point, figure};

/// A point of the drawing that can be moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum Grip {
    /// The handle of a size.
    Size(Field),
    /// A point of the outline.
    Node(usize),
    /// The end of an arm of such a point.
    Arm(usize, Arm),
    /// The middle of the stretch that leads on from a point.
    Middle(usize),
}

impl Grip {
    /// The number it changes, by which its moves are one step.
    pub(super) const fn slot(self, barrel: Id) -> Slot {
        match self {
            Self::Size(field) => Slot::Barrel(barrel, field),
            Self::Node(_) | Self::Arm(..) | Self::Middle(_) => Slot::Barrel(barrel, Field::Path),
        }
    }

    /// The point it belongs to.
    pub(super) const fn node(self) -> Option<usize> {
        match self {
            Self::Size(_) => None,
            Self::Node(node) | Self::Arm(node, _) | Self::Middle(node) => Some(node),
        }
    }

    /// Where it lies on a path.
    pub(super) fn at(self, path: &DrawnPath) -> Option<Point> {
        match self {
            Self::Size(_) => None,
            Self::Node(node) => path.nodes().get(node).map(|node| node.at),
            Self::Arm(node, arm) => path.arm(node, arm),
            Self::Middle(stretch) => path.along(stretch, 0.5),
        }
    }

    /// The words for it.
    pub(super) fn name(self) -> String {
        match self {
            Self::Size(field) => format!("{}, handle", field.spec().label),
            Self::Node(node) => format!("Point {}", node + 1),
            Self::Arm(node, Arm::Arriving) => format!("Arm before point {}", node + 1),
            Self::Arm(node, Arm::Leaving) => format!("Arm after point {}", node + 1),
            Self::Middle(node) => format!("Middle of the stretch after point {}", node + 1),
        }
    }

    /// Its classes in the style sheet.
    pub(super) fn class(self, shaping: Shaping) -> String {
        let kind = match self {
            Self::Size(_) => "size",
            Self::Arm(..) => "arm",
            Self::Middle(_) => "middle",
            Self::Node(node) => {
                let marks = shaping.marks.read();
                let mark = marks.as_ref().and_then(|marks| marks.nodes.get(node));
                match mark.map(|mark| mark.joint) {
                    Some(Joint::Smooth) => "node smooth",
                    _ => "node",
                }
            }
        };
        let held = if shaping.is_held(self) { " held" } else { "" };
        let is_chosen = matches!(self, Self::Node(node) if shaping.chosen.get() == node);
        let chosen = if is_chosen { " chosen" } else { "" };
        format!("handle {kind}{held}{chosen}")
    }

    /// What is told of where it stands: a size, or how far across and up.
    pub(super) fn told(self, shaping: Shaping, unit: LengthUnit) -> Option<String> {
        let length = |millimetres: f64| figure::length(millimetres, unit);
        if let Self::Size(field) = self {
            let handles = shaping.handles.read();
            let handle = handles.iter().find(|handle| handle.field == field)?;
            return Some(handle.value.map_or_else(
                || "flat".to_owned(),
                |value| figure::length_with_unit(value.in_millimetres(), unit),
            ));
        }
        let path = shaping.path.read();
        let at = self.at(path.as_ref()?)?;
        Some(format!("{}; {}", length(at.x), length(at.y)))
    }
}
