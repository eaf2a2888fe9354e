//! Depths square to the table and on the face of a knife.

use crate::quantity::Length;
use crate::tooling::Head;

/// How a head stretches depths; see [`knife_stretch`](super::knife_stretch).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stretch {
    /// Cutting radius R at the farthest point, mm.
    radius: f64,
    /// Distance e of the face from the axis, mm.
    offset: f64,
    /// From the foot of the axis on the face to the farthest point: √(R² − e²), mm.
    reach: f64,
}

impl Stretch {
    pub(super) fn new(head: &Head) -> Self {
        let radius = head.radius().in_millimetres();
        let hook = head.hook().direction();
        Self {
            radius,
            offset: radius * hook.y,
            reach: radius * hook.x,
        }
    }

    /// Every depth is below this: R − e.
    pub(super) fn most(&self) -> Length {
        Length::millimetres(self.radius - self.offset)
    }

    /// Whether depths stay as they are: the face runs through the axis.
    pub(super) fn is_none(&self) -> bool {
        self.offset == 0.0
    }

    /// A depth on the face.
    pub(super) fn on_face(&self, depth: Length) -> Length {
        let depth = depth.in_millimetres();
        // (R² − (R − d)²) / (√(R² − e²) + √((R − d)² − e²)), which takes no two numbers alike from
        // one another.
        Length::millimetres(depth * (2.0 * self.radius - depth) / (self.reach + self.rest(depth)))
    }

    /// Depth on the face for each depth square to the table, at a depth.
    pub(super) fn slope(&self, depth: f64) -> f64 {
        (self.radius - depth) / self.rest(depth)
    }

    /// A depth square to the table by that on the face: R − √((√(R² − e²) − K)² + e²).
    pub(super) fn height(&self, on_face: Length) -> Length {
        let on_face = on_face.in_millimetres();
        let rest = self.reach - on_face;
        let near = (rest * rest + self.offset * self.offset).sqrt();
        // (R² − near²) / (R + near), for the same reason.
        Length::millimetres(on_face * (2.0 * self.reach - on_face) / (self.radius + near))
    }

    fn rest(&self, depth: f64) -> f64 {
        let near = self.radius - depth;
        (near * near - self.offset * self.offset).max(0.0).sqrt()
    }
}
