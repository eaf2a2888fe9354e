//! Paths as they are edited.

mod edits;
mod texts;

use super::{DrawnPath, Node};
use crate::quantity::{Length, Point};

/// An outline of every kind of stretch: a flute, an ellipse, a curve, lines.
const EVERY_KIND: [&str; 6] = [
    "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z",
    "M0 3 A4 4 0 0 1 8 3 A9 9 0 0 0 7 6 L1 6 A9 9 0 0 0 0 3 Z",
    "M0 5 A5 3 20 0 1 10 5 A5 3 20 0 1 0 5 Z",
    "m0 0c3-2 6-2 9 0s2 6 0 9-6 2-9 0-2-6 0-9z",
    "M0 0 Q4 -3 8 0 T8 8 L0 8 Z",
    "M4 4 L0 4 L-4 4 L-4 -4 L0 -4 L4 -4 Z",
];

fn path(text: &str) -> DrawnPath {
    DrawnPath::read(text).unwrap()
}

/// The path round the centre of its box, as it would be edited.
fn centred(text: &str) -> DrawnPath {
    let path = path(text);
    let ends = |of: fn(&Node) -> f64| {
        let values = path.nodes().iter().map(of);
        let (least, most) = values.fold((f64::MAX, f64::MIN), |(least, most), value| {
            (value.min(least), value.max(most))
        });
        f64::midpoint(least, most)
    };
    let (x, y) = (ends(|node| node.at.x), ends(|node| node.at.y));
    path.placed(1.0, -x, -y)
}

/// Enclosed area and girth of a path that is an outline, mm² and mm.
fn measures(path: &DrawnPath) -> (f64, f64) {
    let (width, _) = path.measure();
    let outline =
        crate::outline::Outline::from_path(&path.text(), width, Length::ZERO, Length::ZERO);
    let outline = outline.unwrap();
    (
        outline.area().in_square_millimetres(),
        outline.perimeter().in_millimetres(),
    )
}

fn point(x: f64, y: f64) -> Point {
    Point { x, y }
}
