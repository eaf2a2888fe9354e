//! Files for other programs: drawings as SVG, outlines and knives as SVG and DXF at true size.

mod drawing;
mod dxf;
mod svg;
#[cfg(test)]
mod tests;
mod xml;

pub use xml::escaped as escaped_xml;

use crate::knife::Knife;
use crate::outline::{Outline, Segment};
use crate::quantity::{Direction, Length, Point, greater, lesser};

/// Curves at true size, in millimetres, with a name and notes.
///
/// ```
/// use solver::{Length, Outline, TrueSize, Angle};
/// let hexagon = Outline::regular(6, Length::millimetres(3.5), Length::ZERO, Angle::ZERO);
/// let file = TrueSize::of_outline(&hexagon, "Office <7 mm>");
/// assert!(file.to_svg().contains("<title>Office &lt;7 mm&gt;</title>"));
/// assert!(file.to_dxf().starts_with("0\nSECTION\n"));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct TrueSize {
    name: String,
    notes: Vec<String>,
    curves: Vec<Curve>,
}

/// A curve and what it stands for.
#[derive(Debug, Clone, PartialEq)]
struct Curve {
    layer: Layer,
    segments: Vec<Segment>,
    closed: bool,
}

/// What a curve stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Layer {
    /// The outline of a pencil.
    Outline,
    /// The edge on the face of a knife.
    Edge,
    /// Axes, and the line at which depths begin.
    Datum,
}

impl Layer {
    const ALL: [Self; 3] = [Self::Outline, Self::Edge, Self::Datum];

    /// Its name in a file.
    const fn name(self) -> &'static str {
        match self {
            Self::Outline => "OUTLINE",
            Self::Edge => "EDGE",
            Self::Datum => "DATUM",
        }
    }
}

impl TrueSize {
    /// The outline of a pencil with a cross at its lead axis.
    #[must_use]
    pub fn of_outline(outline: &Outline, name: &str) -> Self {
        /// Half the length of the strokes of the cross, mm.
        const CROSS: f64 = 1.0;
        let stroke = |direction: Direction| {
            let end = |reach| Point::AXIS.towards(direction, reach);
            line(end(-CROSS), end(CROSS))
        };
        Self {
            name: name.to_owned(),
            notes: vec!["Millimetres, 1:1; the cross is the lead axis".to_owned()],
            curves: vec![
                Curve {
                    layer: Layer::Outline,
                    segments: outline.segments().to_vec(),
                    closed: true,
                },
                stroke(Direction::RIGHT),
                stroke(Direction::UP),
            ],
        }
    }

    /// The edge of a knife on its face, with the datum edge of the slats at x = 0 and the farthest
    /// point of the edge at y = 0.
    #[must_use]
    pub fn of_knife(knife: &Knife, name: &str) -> Self {
        let head = knife.head();
        let depth = knife.stretched_depth().in_millimetres();
        let end = knife.edge().last().map_or(0.0, |piece| piece.end().x);
        let top = if knife.blade().cuts_downwards() {
            depth
        } else {
            -depth
        };
        let at = |x, y| Point { x, y };
        Self {
            name: name.to_owned(),
            notes: vec![
                format!("{}, millimetres, 1:1", knife.blade().label()),
                format!(
                    "Cutting radius {:.3} at the deepest cut, hook angle {:.2} deg, depth {:.4} of a cut {:.4} deep",
                    head.radius().in_millimetres(),
                    head.hook().in_degrees(),
                    depth,
                    knife.depth().in_millimetres()
                ),
                "x from the datum edge, y on the face of the knife from its farthest point"
                    .to_owned(),
            ],
            curves: vec![
                Curve {
                    layer: Layer::Edge,
                    segments: knife.edge().to_vec(),
                    closed: false,
                },
                line(at(0.0, 0.0), at(0.0, top)),
                line(at(0.0, 0.0), at(end, 0.0)),
            ],
        }
    }

    /// The corners of the box round all curves: left and low, right and high, mm.
    fn bounds(&self) -> (Point, Point) {
        let nothing = (
            Point {
                x: f64::INFINITY,
                y: f64::INFINITY,
            },
            Point {
                x: f64::NEG_INFINITY,
                y: f64::NEG_INFINITY,
            },
        );
        let segments = self.curves.iter().flat_map(|curve| &curve.segments);
        let points = segments.flat_map(|segment| {
            let mut points = vec![segment.start(), segment.end()];
            if let Segment::Arc(arc) = segment {
                let extremes = [
                    arc.passed([Direction::LEFT, Direction::RIGHT]),
                    arc.passed([Direction::UP, Direction::DOWN]),
                ];
                let normals = extremes.into_iter().flatten();
                points.extend(normals.map(|normal| arc.centre.towards(normal, arc.radius)));
            }
            points
        });
        points.fold(nothing, |(low, high), point| {
            let low = Point {
                x: lesser(low.x, point.x),
                y: lesser(low.y, point.y),
            };
            let high = Point {
                x: greater(high.x, point.x),
                y: greater(high.y, point.y),
            };
            (low, high)
        })
    }

    /// A standalone SVG (W3C, Scalable Vector Graphics 2) in millimetres: one unit is one millimetre,
    /// and it is as large as it says. Lines and arcs are kept; coordinates have six decimals.
    #[must_use]
    pub fn to_svg(&self) -> String {
        svg::write(self)
    }

    /// A DXF file of release 12 (Autodesk, *DXF Reference*, AC1009), in millimetres: polylines whose
    /// arcs are bulges, one layer for each kind, names and notes as texts under the drawing.
    ///
    /// Any program that reads DXF reads this release. Letters beyond ASCII are written as `\U+` and
    /// four hexadecimal digits of UTF-16; long texts go on in a second one.
    #[must_use]
    pub fn to_dxf(&self) -> String {
        dxf::write(self)
    }
}

/// A straight stroke of the datum.
fn line(from: Point, to: Point) -> Curve {
    Curve {
        layer: Layer::Datum,
        segments: Segment::line(from, to).into_iter().collect(),
        closed: false,
    }
}

/// Whether a piece is too short to be written.
fn is_written(segment: &Segment) -> bool {
    segment.start().distance(segment.end()) > Length::ZERO
}

/// A number with six decimals; nothing has no sign.
fn number(value: f64) -> String {
    let text = format!("{value:.6}");
    if text == "-0.000000" {
        "0.000000".to_owned()
    } else {
        text
    }
}
