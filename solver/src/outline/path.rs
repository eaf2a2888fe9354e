//! Free outlines: the path data of SVG (W3C, Scalable Vector Graphics 2, section 9.3), fitted to millimetres.
//!
//! Lines and circular arcs are kept exact; other curves become smooth chains of arcs, within a
//! millionth of the width of the drawn curve, the same ones for every width.

use super::{Arc, Outline, Segment, curve, offset};
use crate::quantity::{Direction, Length, Point};
use kurbo::{CubicBez, ParamCurveExtrema, QuadBez, SvgArc, Vec2};
use std::f64::consts::FRAC_PI_2;
use svgtypes::{PathParser, PathSegment};

/// The most lines and arcs an outline may have.
pub const MOST_PIECES: usize = 2_000;

/// What keeps a path from being an outline.
#[derive(Debug, Clone, PartialEq)]
pub enum PathProblem {
    /// There is none.
    Empty,
    /// The text stops making sense.
    Unreadable {
        /// The first character that does not belong there, from 1; the end of the text where it breaks off.
        at: usize,
    },
    /// It lifts the pen: more than one curve.
    SeveralCurves,
    /// It does not come back to its start.
    Open {
        /// From the end to the start, once fitted.
        gap: Length,
    },
    /// It has more pieces than [`MOST_PIECES`].
    TooManyPieces {
        /// How many were read before giving up.
        found: usize,
    },
    /// It encloses nothing, or its numbers are out of all measure.
    NoArea,
    /// It meets itself.
    CrossesItself {
        /// Where, from the centre of its area, once fitted.
        at: Point,
    },
    /// The lead axis lies outside it.
    AxisOutside,
}

/// A piece of a path: y up, in the units of the path.
enum Piece {
    /// A line or a circular arc.
    Exact(Segment),
    /// Any other curve.
    Curve(CubicBez),
}

impl Outline {
    /// The outline that a path draws, made as wide as `width`, with the lead axis `across` to the
    /// right of the centre of its area and `up` above it.
    ///
    /// # Errors
    /// What keeps the path from being one closed curve, not crossing itself, round the axis.
    ///
    /// ```
    /// use solver::{Length, Outline};
    /// let circle = "M0 5 A5 5 0 0 1 10 5 A5 5 0 0 1 0 5 Z";
    /// let outline = Outline::from_path(circle, Length::millimetres(7.0), Length::ZERO, Length::ZERO).unwrap();
    /// assert!((outline.area().in_square_millimetres() - std::f64::consts::PI * 3.5 * 3.5).abs() < 1e-12);
    /// ```
    pub fn from_path(
        text: &str,
        width: Length,
        across: Length,
        up: Length,
    ) -> Result<Self, PathProblem> {
        let (pieces, gap) = read(text)?;
        let drawn_width = extent(&pieces);
        let unit = 1.0 / drawn_width;
        if !unit.is_finite() || drawn_width <= 0.0 {
            return Err(PathProblem::NoArea);
        }
        if gap * unit > curve::TOLERANCE {
            let gap = width * (gap * unit);
            return Err(PathProblem::Open { gap });
        }
        // As wide as 1, and then as wide as is asked.
        let mut segments = Vec::new();
        for piece in pieces {
            match piece {
                Piece::Exact(segment) => segments.push(segment.scaled(unit)),
                Piece::Curve(cubic) => {
                    let cubic = kurbo::Affine::scale(unit) * cubic;
                    curve::append(&cubic, &mut segments);
                }
            }
            if segments.len() > MOST_PIECES {
                let found = segments.len();
                return Err(PathProblem::TooManyPieces { found });
            }
        }
        let width = width.in_millimetres();
        let segments = segments.iter().map(|s| s.scaled(width)).collect();
        let outline = Self { segments }.counter_clockwise()?;
        let centre = outline.centroid();
        let outline = outline.moved(-centre.x, -centre.y);
        if !outline.is_measurable() {
            return Err(PathProblem::NoArea);
        }
        if let Some(at) = offset::crossing(&outline) {
            return Err(PathProblem::CrossesItself { at });
        }
        let outline = outline.moved(-across.in_millimetres(), -up.in_millimetres());
        if offset::encloses_axis(&outline) {
            Ok(outline)
        } else {
            Err(PathProblem::AxisOutside)
        }
    }

    fn counter_clockwise(mut self) -> Result<Self, PathProblem> {
        let area = self.area().in_square_millimetres();
        if !area.is_finite() || area == 0.0 {
            return Err(PathProblem::NoArea);
        }
        if area < 0.0 {
            self.segments = self.segments.iter().rev().map(Segment::reversed).collect();
        }
        Ok(self)
    }

    /// Whether its sizes are such that their squares and products are still numbers.
    fn is_measurable(&self) -> bool {
        /// A kilometre: nothing that is as wide as a pencil reaches farther, mm.
        const FARTHEST: f64 = 1e6;
        let within = |point: Point| point.x.abs() <= FARTHEST && point.y.abs() <= FARTHEST;
        // Written so that what is no number lies outside.
        self.segments
            .iter()
            .all(|segment| within(segment.start()) && within(segment.end()))
    }

    /// The outline moved against the axis, mm.
    fn moved(mut self, x: f64, y: f64) -> Self {
        self.segments = self.segments.iter().map(|s| s.moved(x, y)).collect();
        self
    }
}

/// The pieces of a path, and the distance from its end to its start, in its own units.
fn read(text: &str) -> Result<(Vec<Piece>, f64), PathProblem> {
    let mut pen = Pen::default();
    for segment in PathParser::from(text) {
        // Of what the reader says only the place is of use; it counts from 1 as well.
        let segment = segment.map_err(|error| PathProblem::Unreadable {
            at: place(&error).unwrap_or(text.chars().count()),
        })?;
        pen.follow(segment)?;
        if pen.pieces.len() > MOST_PIECES {
            let found = pen.pieces.len();
            return Err(PathProblem::TooManyPieces { found });
        }
    }
    if pen.pieces.is_empty() {
        return Err(if text.trim().is_empty() {
            PathProblem::Empty
        } else {
            PathProblem::NoArea
        });
    }
    let gap = (pen.at - pen.start).hypot();
    Ok((pen.pieces, gap))
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
    pieces: Vec<Piece>,
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
                if !self.pieces.is_empty() {
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
                self.arc(&SvgArc {
                    from: self.at,
                    to,
                    radii: Vec2::new(rx, ry),
                    // The mirror that turns y upwards turns angles round as well.
                    x_rotation: -x_axis_rotation.to_radians(),
                    large_arc,
                    sweep: !sweep,
                });
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

    fn line(&mut self, to: kurbo::Point) {
        let line = Segment::line(curve::point(self.at), curve::point(to));
        self.pieces.extend(line.map(Piece::Exact));
        self.at = to;
    }

    fn curve(&mut self, curve: CubicBez) {
        self.pieces.push(Piece::Curve(curve));
        self.at = curve.p3;
    }

    /// An arc: circles stay exact, ellipses become curves.
    fn arc(&mut self, arc: &SvgArc) {
        /// How far the curves may lie from an ellipse, as a share of its radius.
        const SHARE: f64 = 1e-9;
        let span = (arc.to - arc.from).hypot();
        let radii = (arc.radii.x.abs(), arc.radii.y.abs());
        // The standard draws a line where a radius is nothing, and nothing where the ends are one.
        if span == 0.0 {
            return;
        }
        // An arc that is all but straight has a centre beyond what numbers can hold.
        let flat = radii.0.min(radii.1) <= span * 1e-12 || radii.0.max(radii.1) >= span * 1e9;
        let Some(ellipse) = (!flat).then(|| kurbo::Arc::from_svg_arc(arc)).flatten() else {
            let line = Segment::line(curve::point(arc.from), curve::point(arc.to));
            self.pieces.extend(line.map(Piece::Exact));
            return;
        };
        if radii.0 == radii.1 {
            self.circular(arc, &ellipse);
            return;
        }
        let mut at = arc.from;
        let tolerance = SHARE * radii.0.max(radii.1);
        for part in ellipse.append_iter(tolerance) {
            if let kurbo::PathEl::CurveTo(first, second, to) = part {
                self.pieces
                    .push(Piece::Curve(CubicBez::new(at, first, second, to)));
                at = to;
            }
        }
    }

    /// A circular arc in parts of at most a quarter turn, its ends exactly those of the path.
    fn circular(&mut self, arc: &SvgArc, circle: &kurbo::Arc) {
        let parts = (circle.sweep_angle.abs() / FRAC_PI_2 - 1e-9)
            .ceil()
            .clamp(1.0, 4.0);
        let bulge = circle.sweep_angle.signum();
        let centre = curve::point(circle.center);
        let outwards = |to: kurbo::Point| Direction::between(centre, curve::point(to));
        let (Some(first), Some(last)) = (outwards(arc.from), outwards(arc.to)) else {
            return;
        };
        let mut from = first;
        for part in 1..=parts as u32 {
            let turn = circle.sweep_angle * f64::from(part) / parts;
            let (y, x) = libm::sincos(turn);
            let to = if f64::from(part) == parts {
                last
            } else {
                first.turned(Direction { x, y })
            };
            // Run through clockwise, the same circle is hollow: its outward normals point in.
            self.pieces.push(Piece::Exact(Segment::Arc(Arc {
                centre,
                radius: circle.radii.x * bulge,
                from: if bulge < 0.0 { -from } else { from },
                to: if bulge < 0.0 { -to } else { to },
            })));
            from = to;
        }
    }
}

/// The width of what is drawn, in its own units.
fn extent(pieces: &[Piece]) -> f64 {
    let (mut left, mut right) = (f64::INFINITY, f64::NEG_INFINITY);
    for piece in pieces {
        let (from, to) = match piece {
            Piece::Exact(segment) => segment.span(),
            Piece::Curve(curve) => {
                let bounds = ParamCurveExtrema::bounding_box(curve);
                (bounds.x0, bounds.x1)
            }
        };
        (left, right) = (left.min(from), right.max(to));
    }
    right - left
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Areas of similar figures are as the squares of their widths (Euclid VI 20). A curve that is
        /// fitted anew to every width gains and loses arcs, and jumps where it does.
        #[test]
        fn a_curve_is_made_of_the_same_arcs_whatever_its_width(width in 3.0_f64..40.0) {
            let path = "M0 0 C2 -3 6 -2 8 0 C10 4 7 8 4 7 C1 8 -2 4 0 0 Z";
            let drawn = |width| {
                let width = Length::millimetres(width);
                Outline::from_path(path, width, Length::ZERO, Length::ZERO).unwrap()
            };
            let (one, other) = (drawn(10.0), drawn(width));
            prop_assert_eq!(one.segments().len(), other.segments().len());
            let square = (width / 10.0) * (width / 10.0);
            let miss = one.area().in_square_millimetres() * square - other.area().in_square_millimetres();
            prop_assert!(miss.abs() < 1e-10, "{miss}");
        }
    }
}
