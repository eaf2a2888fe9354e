//! From where a finished pencil is looked at.

use super::pencil::FinishedPencil;
use crate::quantity::{Angle, Direction, Length};

/// From where a finished pencil is looked at: how it is turned, and what of it is in sight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Viewpoint {
    /// Turn about the axis of the pencil from where the reader faces the imprint, 0 up to 360 degrees:
    /// above 0 the imprint goes down.
    pub roll: f64,
    /// Turn about the upright of the screen, degrees: above 0 the tip comes nearer.
    pub swing: f64,
    /// How long a piece of the pencil fills the width, mm.
    pub span: f64,
    /// The place along the pencil that is looked at, mm from the tip.
    pub along: f64,
}

/// A part of the pencil that is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sight {
    /// The sharpened point.
    Point,
    /// All of it.
    Whole,
    /// The other end.
    End,
}

impl Sight {
    /// Every part.
    pub const ALL: [Self; 3] = [Self::Point, Self::Whole, Self::End];

    /// The word for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Point => "Point",
            Self::Whole => "Whole pencil",
            Self::End => "End",
        }
    }
}

impl Viewpoint {
    /// A step of a key or a button, degrees.
    pub const STEP: f64 = 10.0;

    /// Looking a little from above, degrees.
    const TILT: f64 = 18.0;

    /// Turned by moving across a picture by so many shares of its width, to the right and down: what is
    /// nearest to the reader goes along.
    #[must_use]
    pub fn moved(self, right: f64, down: f64) -> Self {
        self.turned(right * 180.0, down * 180.0)
    }

    /// Turned by so many degrees more.
    #[must_use]
    pub fn turned(self, swing: f64, roll: f64) -> Self {
        Self {
            swing: (self.swing + swing).clamp(-90.0, 90.0),
            roll: (self.roll + roll).rem_euclid(360.0),
            ..self
        }
    }

    /// Nearer by a factor above 0; farther where it is below 1.
    #[must_use]
    pub fn nearer(self, factor: f64) -> Self {
        Self {
            span: (self.span / factor).clamp(5.0, 1000.0),
            ..self
        }
    }

    /// What turns a place of the [`Surface`](super::Surface) on the pencil's axes into one on the
    /// screen's, to the right, up and towards the reader: three rows of three, by columns.
    #[must_use]
    pub fn matrix(&self, pencil: &FinishedPencil) -> [f32; 9] {
        // The face of the imprint is turned to the left of the cross-section, where the reader stands.
        let roll = pencil
            .turn_to_reader()
            .turned(Angle::degrees(self.roll).direction());
        let (swing, tilt) = (
            Angle::degrees(self.swing).direction(),
            Angle::degrees(Self::TILT).direction(),
        );
        let column = |[x, y, z]: [f64; 3]| {
            let Direction { x, y } = Direction { x, y }.turned(roll);
            // To the right lies what is farther from the tip; nearer what lies to the left.
            let (right, up, near) = (z, y, -x);
            let (right, near) = (
                right * swing.x + near * swing.y,
                near * swing.x - right * swing.y,
            );
            let (up, near) = (up * tilt.x - near * tilt.y, near * tilt.x + up * tilt.y);
            [right, up, near].map(|value| value as f32)
        };
        let [[a, b, c], [d, e, f], [g, h, i]] = [
            column([1.0, 0.0, 0.0]),
            column([0.0, 1.0, 0.0]),
            column([0.0, 0.0, 1.0]),
        ];
        [a, b, c, d, e, f, g, h, i]
    }
}

impl FinishedPencil {
    /// A good place to look at a part of it from.
    #[must_use]
    pub fn viewpoint(&self, sight: Sight) -> Viewpoint {
        let length = self.barrel().length().in_millimetres();
        let point = self
            .paint_to()
            .max(Length::millimetres(5.0))
            .in_millimetres();
        let near = (point * 3.0).min(length);
        let (roll, swing, span, along) = match sight {
            Sight::Point => (338.0, 32.0, near, near * 0.42),
            Sight::Whole => (338.0, 20.0, length * 1.04, length / 2.0),
            Sight::End => (338.0, -35.0, near, length - near * 0.4),
        };
        Viewpoint {
            roll,
            swing,
            span,
            along,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::pencil;
    use super::*;
    use crate::shape::Shape;

    #[test]
    fn a_view_keeps_lengths_and_hands() {
        let pencil = pencil(Shape::Hexagonal, |_| {});
        for sight in Sight::ALL {
            let view = pencil.viewpoint(sight).turned(7.0, 123.0).moved(0.1, -0.3);
            let m = view.matrix(&pencil).map(f64::from);
            let column = |k: usize| [m[3 * k], m[3 * k + 1], m[3 * k + 2]];
            let dot = |a: [f64; 3], b: [f64; 3]| (0..3).map(|k| a[k] * b[k]).sum::<f64>();
            let [a, b, c] = [0, 1, 2].map(column);
            for (one, other, expected) in [(a, a, 1.0), (b, b, 1.0), (a, b, 0.0), (b, c, 0.0)] {
                assert!((dot(one, other) - expected).abs() < 1e-6);
            }
            let cross = [
                a[1] * b[2] - a[2] * b[1],
                a[2] * b[0] - a[0] * b[2],
                a[0] * b[1] - a[1] * b[0],
            ];
            assert!((dot(cross, c) - 1.0).abs() < 1e-6);
        }
    }

    #[test]
    fn the_reader_sees_the_imprint_with_the_tip_on_the_left() {
        let pencil = pencil(Shape::Hexagonal, |_| {});
        let straight = Viewpoint {
            roll: 0.0,
            swing: 0.0,
            ..pencil.viewpoint(Sight::Whole)
        };
        let m = straight.matrix(&pencil);
        // Farther from the tip is to the right.
        assert!(m[6] > 0.99);
        // The uppermost face, that of the imprint, looks at the reader from a little below.
        assert!(m[5] > 0.9);
        let nearer = straight.turned(30.0, 0.0).matrix(&pencil);
        assert!(nearer[8] < m[8], "the tip comes nearer, the end goes away");
    }
}
