//! Curves at true size as SVG.

use super::xml::escaped;
use super::{Curve, Layer, TrueSize, is_written, number};
use crate::outline::Segment;
use crate::quantity::Point;

/// Space round the curves, mm.
const MARGIN: f64 = 2.0;

/// The file: y runs down, so heights change their sign.
pub(super) fn write(file: &TrueSize) -> String {
    let (low, high) = file.bounds();
    let (width, height) = (high.x - low.x + 2.0 * MARGIN, high.y - low.y + 2.0 * MARGIN);
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" viewBox=\"{left} {top} {width} {height}\">\n",
        width = number(width),
        height = number(height),
        left = number(low.x - MARGIN),
        top = number(-high.y - MARGIN),
    );
    text += &format!("<title>{}</title>\n", escaped(&file.name));
    text += &format!("<desc>{}</desc>\n", escaped(&file.notes.join("\n")));
    for curve in &file.curves {
        let width = match curve.layer {
            Layer::Outline | Layer::Edge => "0.1",
            Layer::Datum => "0.05",
        };
        text += &format!(
            "<path class=\"{}\" fill=\"none\" stroke=\"#000\" stroke-width=\"{width}\" d=\"{}\"/>\n",
            curve.layer.name().to_lowercase(),
            path(curve)
        );
    }
    text + "</svg>\n"
}

/// Path data of a curve.
fn path(curve: &Curve) -> String {
    let place = |point: Point| format!("{} {}", number(point.x), number(-point.y));
    let mut data = String::new();
    for segment in curve.segments.iter().filter(|segment| is_written(segment)) {
        if data.is_empty() {
            data = format!("M{}", place(segment.start()));
        }
        match segment {
            Segment::Line(line) => data += &format!("L{}", place(line.to)),
            Segment::Arc(arc) => {
                let radius = number(arc.radius.abs());
                let clockwise = u8::from(arc.is_hollow());
                data += &format!("A{radius} {radius} 0 0 {clockwise} {}", place(arc.end()));
            }
        }
    }
    if curve.closed {
        data.push('Z');
    }
    data
}
