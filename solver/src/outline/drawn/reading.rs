//! From the path data of SVG to nodes.

use super::super::curve::point;
use super::super::{MOST_PIECES, PathProblem};
use super::{DrawnArc, DrawnPath, Node, Stretch};
use kurbo::{CubicBez, QuadBez};
use svgtypes::{PathParser, PathSegment};

/// The nodes of a path, and the distance from its end to its start where nothing closes it.
///
/// An open path ends in a node of its own, from which a straight line closes it.
pub(in crate::outline) fn read(text: &str) -> Result<(DrawnPath, f64), PathProblem> {
    let mut pen = Pen::default();
    for segment in PathParser::from(text) {
        // Of what the reader says only the place is of use; it counts from 1 as well.
        let segment = segment.map_err(|error| PathProblem::Unreadable {
            at: place(&error).unwrap_or(text.chars().count()),
        })?;
        pen.follow(segment)?;
        if pen.nodes.len() > MOST_PIECES {
            let found = pen.nodes.len();
            return Err(PathProblem::TooManyPieces { found });
        }
    }
    if pen.nodes.is_empty() {
        return Err(if text.trim().is_empty() {
            PathProblem::Empty
        } else {
            PathProblem::NoArea
        });
    }
    let gap = (pen.at - pen.start).hypot();
    if gap > 0.0 {
        pen.leave(Stretch::Line);
    }
    Ok((DrawnPath { nodes: pen.nodes }, gap))
}

fn place(error: &svgtypes::Error) -> Option<usize> {
    use svgtypes::Error;
    match error {
        Error::UnexpectedData(at)
        | Error::InvalidChar(_, at)
        | Error::InvalidString(_, at)
        | Error::InvalidNumber(at) => Some(*at),
        _ => None,
    }
}

/// What has been drawn so far, y up.
#[derive(Default)]
struct Pen {
    at: kurbo::Point,
    start: kurbo::Point,
    /// The last control point, for a smooth joint, and whether it was that of a cubic curve.
    control: Option<(kurbo::Point, bool)>,
    nodes: Vec<Node>,
    closed: bool,
}

impl Pen {
    fn follow(&mut self, segment: PathSegment) -> Result<(), PathProblem> {
        let origin = if segment.is_abs() {
            kurbo::Point::ZERO
        } else {
            self.at
        };
        let to = |x: f64, y: f64| kurbo::Point::new(origin.x + x, origin.y - y);
        // The control point that continues the last curve.
        let smooth = |cubic: bool| match self.control {
            Some((control, kind)) if kind == cubic => self.at + (self.at - control),
            _ => self.at,
        };
        if self.closed {
            return match segment {
                PathSegment::ClosePath { .. } => Ok(()),
                _ => Err(PathProblem::SeveralCurves),
            };
        }
        let mut control = None;
        match segment {
            PathSegment::MoveTo { x, y, .. } => {
                if !self.nodes.is_empty() {
                    return Err(PathProblem::SeveralCurves);
                }
                self.at = to(x, y);
                self.start = self.at;
            }
            PathSegment::LineTo { x, y, .. } => self.line(to(x, y)),
            PathSegment::HorizontalLineTo { x, .. } => {
                self.line(kurbo::Point::new(origin.x + x, self.at.y));
            }
            PathSegment::VerticalLineTo { y, .. } => {
                self.line(kurbo::Point::new(self.at.x, origin.y - y));
            }
            PathSegment::CurveTo {
                x1,
                y1,
                x2,
                y2,
                x,
                y,
                ..
            } => {
                control = Some((to(x2, y2), true));
                self.curve(CubicBez::new(self.at, to(x1, y1), to(x2, y2), to(x, y)));
            }
            PathSegment::SmoothCurveTo { x2, y2, x, y, .. } => {
                control = Some((to(x2, y2), true));
                self.curve(CubicBez::new(self.at, smooth(true), to(x2, y2), to(x, y)));
            }
            PathSegment::Quadratic { x1, y1, x, y, .. } => {
                control = Some((to(x1, y1), false));
                self.curve(QuadBez::new(self.at, to(x1, y1), to(x, y)).raise());
            }
            PathSegment::SmoothQuadratic { x, y, .. } => {
                let middle = smooth(false);
                control = Some((middle, false));
                self.curve(QuadBez::new(self.at, middle, to(x, y)).raise());
            }
            PathSegment::EllipticalArc {
                rx,
                ry,
                x_axis_rotation,
                large_arc,
                sweep,
                x,
                y,
                ..
            } => {
                let to = to(x, y);
                // The standard draws nothing where the ends are one.
                if to != self.at {
                    // The mirror that turns y upwards turns angles round as well.
                    self.leave(Stretch::Arc(DrawnArc {
                        radii: (rx.abs(), ry.abs()),
                        rotation: 0.0 - x_axis_rotation,
                        long: large_arc,
                        left: !sweep,
                    }));
                }
                self.at = to;
            }
            PathSegment::ClosePath { .. } => {
                self.line(self.start);
                self.closed = true;
            }
        }
        self.control = control;
        Ok(())
    }

    /// Leads on from where the pen is.
    fn leave(&mut self, onward: Stretch) {
        let at = point(self.at);
        self.nodes.push(Node { at, onward });
    }

    fn line(&mut self, to: kurbo::Point) {
        if to != self.at {
            self.leave(Stretch::Line);
        }
        self.at = to;
    }

    fn curve(&mut self, curve: CubicBez) {
        self.leave(Stretch::Curve {
            first: point(curve.p1),
            second: point(curve.p2),
        });
        self.at = curve.p3;
    }
}
