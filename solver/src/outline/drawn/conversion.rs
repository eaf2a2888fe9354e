//! Outlines of every kind as paths that can be edited.

use super::super::{Outline, Segment};
use super::{DrawnArc, DrawnPath, Node, Stretch};
use crate::quantity::{Length, Point};
use std::f64::consts::FRAC_PI_2;

impl DrawnPath {
    /// The path of an outline: its lines and arcs, kept as they are.
    ///
    /// Arcs of more than a quarter turn become two, as the ends of half a turn do not tell its
    /// centre exactly.
    ///
    /// ```
    /// use solver::{Angle, DrawnPath, Length, Outline};
    /// let (half, corner) = (Length::millimetres(3.5), Length::millimetres(0.5));
    /// let hexagon = Outline::regular(6, half, corner, Angle::ZERO);
    /// let path = DrawnPath::of_outline(&hexagon);
    /// assert_eq!(path.nodes().len(), 12);
    /// let width = hexagon.extents().width();
    /// let again = Outline::from_path(&path.text(), width, Length::ZERO, Length::ZERO).unwrap();
    /// let miss = (again.area() - hexagon.area()).in_square_millimetres();
    /// assert!(miss.abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn of_outline(outline: &Outline) -> Self {
        let mut nodes = Vec::new();
        for segment in outline.segments() {
            match segment {
                Segment::Line(line) => nodes.push(Node {
                    at: line.from,
                    onward: Stretch::Line,
                }),
                Segment::Arc(arc) => {
                    let onward = Stretch::Arc(DrawnArc::circle(arc.radius.abs(), !arc.is_hollow()));
                    let at = arc.start();
                    nodes.push(Node { at, onward });
                    // Rounding makes no quarter turn two.
                    if arc.sweep().abs() > FRAC_PI_2 + 1e-9 {
                        let at = arc.middle();
                        nodes.push(Node { at, onward });
                    }
                }
            }
        }
        Self { nodes }
    }

    /// An ellipse lying flat, as four arcs: exact, where the outline of an oval follows it within a
    /// millionth.
    #[must_use]
    pub fn ellipse(width: Length, height: Length) -> Self {
        let (a, b) = (width.in_millimetres() / 2.0, height.in_millimetres() / 2.0);
        let arc = DrawnArc {
            radii: (a, b),
            rotation: 0.0,
            long: false,
            left: true,
        };
        let nodes = [(a, 0.0), (0.0, b), (-a, 0.0), (0.0, -b)].map(|(x, y)| Node {
            at: Point { x, y },
            onward: Stretch::Arc(arc),
        });
        Self {
            nodes: nodes.to_vec(),
        }
    }
}
