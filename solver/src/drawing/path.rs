//! Path data from millimetres: one transform from the cross-section to the sheet.

use crate::layout::GrooveShape;
use crate::outline::{Arc, Line, Outline, Segment};
use crate::quantity::{Direction, Length, Point};

/// Where the cross-section lies on the sheet: a scale and the place of its origin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct View {
    /// Pixels per millimetre.
    pub(super) scale: f64,
    /// Sheet place of the origin, px.
    pub(super) origin: Point,
}

/// SVG path data in the making, with two decimals: a hundredth of a pixel is not seen.
#[derive(Debug, Default)]
pub(super) struct Path(String);

impl View {
    /// The sheet x of a place across the slat.
    pub(super) fn x(&self, across: Length) -> f64 {
        self.origin.x + across.in_millimetres() * self.scale
    }

    /// The sheet y of a height; the sheet runs down.
    pub(super) fn y(&self, height: Length) -> f64 {
        self.origin.y - height.in_millimetres() * self.scale
    }

    /// This view with its origin moved to a place of the cross-section.
    pub(super) fn at(&self, across: Length, height: Length) -> Self {
        Self {
            scale: self.scale,
            origin: Point {
                x: self.x(across),
                y: self.y(height),
            },
        }
    }

    fn point(&self, point: Point) -> (f64, f64) {
        (
            self.origin.x + point.x * self.scale,
            self.origin.y - point.y * self.scale,
        )
    }
}

impl Path {
    pub(super) fn new() -> Self {
        Self::default()
    }

    pub(super) fn done(self) -> String {
        self.0
    }

    fn command(&mut self, letter: char, (x, y): (f64, f64)) {
        self.0.push(letter);
        self.number(x);
        self.0.push(' ');
        self.number(y);
    }

    /// A number with two decimals. Most of the time of a drawing goes into its numbers, so the
    /// digits are written here, which takes a fraction of what formatting takes.
    fn number(&mut self, value: f64) {
        // What is no number or too large becomes one that can be written.
        let hundredths = (value * 100.0).round() as i64;
        if hundredths < 0 {
            self.0.push('-');
        }
        let mut digits = [b'0'; 20];
        let mut rest = hundredths.unsigned_abs();
        let mut start = digits.len();
        // At least the two decimals and a digit before them.
        while rest > 0 || start > digits.len() - 3 {
            start -= 1;
            digits[start] += (rest % 10) as u8;
            rest /= 10;
        }
        for (place, digit) in digits[start..].iter().enumerate() {
            if place + 2 == digits.len() - start {
                self.0.push('.');
            }
            self.0.push(char::from(*digit));
        }
    }

    /// An open run of straight lines in sheet pixels.
    pub(super) fn run(mut self, points: &[(f64, f64)]) -> Self {
        for (k, point) in points.iter().enumerate() {
            self.command(if k == 0 { 'M' } else { 'L' }, *point);
        }
        self
    }

    /// A closed run of straight lines in sheet pixels.
    pub(super) fn polygon(self, points: &[(f64, f64)]) -> Self {
        let mut path = self.run(points);
        path.0.push('Z');
        path
    }

    /// A rectangle of the cross-section.
    pub(super) fn rectangle(
        self,
        view: &View,
        left: Length,
        bottom: Length,
        right: Length,
        top: Length,
    ) -> Self {
        let (x1, x2, y1, y2) = (view.x(left), view.x(right), view.y(bottom), view.y(top));
        self.polygon(&[(x1, y1), (x2, y1), (x2, y2), (x1, y2)])
    }

    /// A circle round the origin of a view.
    pub(super) fn circle(self, view: &View, radius: Length) -> Self {
        self.outline(view, &Outline::round(radius))
    }

    /// A closed outline round the origin of a view.
    pub(super) fn outline(mut self, view: &View, outline: &Outline) -> Self {
        self.chain(view, outline.segments());
        self.0.push('Z');
        self
    }

    /// Joined segments, open.
    pub(super) fn open(mut self, view: &View, segments: &[Segment]) -> Self {
        self.chain(view, segments);
        self
    }

    /// One straight side, open.
    pub(super) fn side(mut self, view: &View, side: Line) -> Self {
        self.command('M', view.point(side.from));
        self.command('L', view.point(side.to));
        self
    }

    /// The part of an outline above a level line, closed along it.
    pub(super) fn above(mut self, view: &View, outline: &Outline, level: Length) -> Self {
        self.cap(view, outline, level, |height, level| height > level);
        self
    }

    /// The part of an outline below a level line, closed along it.
    pub(super) fn below(mut self, view: &View, outline: &Outline, level: Length) -> Self {
        self.cap(view, outline, level, |height, level| height < level);
        self
    }

    /// Both grooves of one pencil; the origin of the view is the lead axis.
    pub(super) fn groove(mut self, view: &View, shape: GrooveShape) -> Self {
        let (radius, axis) = (
            shape.radius().in_millimetres(),
            shape.axis_height().in_millimetres(),
        );
        // The slat that holds the larger part has upright groove sides from the axis to the
        // glue plane at −axis; where the axis lies in the plane both are half discs.
        for (slat, deeper) in [(1.0, axis >= 0.0), (-1.0, axis <= 0.0)] {
            let half = if deeper || axis.abs() >= radius {
                radius
            } else {
                (radius * radius - axis * axis).sqrt()
            };
            let mouth = [
                Point {
                    x: half * slat,
                    y: -axis,
                },
                Point {
                    x: -half * slat,
                    y: -axis,
                },
            ];
            self.command('M', view.point(mouth[0]));
            if deeper {
                self.command(
                    'L',
                    view.point(Point {
                        x: half * slat,
                        y: 0.0,
                    }),
                );
                self.arc(
                    view,
                    radius,
                    Point {
                        x: -half * slat,
                        y: 0.0,
                    },
                );
                self.command('L', view.point(mouth[1]));
            } else {
                self.arc(view, radius, mouth[1]);
            }
        }
        self
    }

    /// Joined segments, starting with a move.
    fn chain(&mut self, view: &View, segments: &[Segment]) {
        for (k, segment) in segments.iter().enumerate() {
            if k == 0 {
                self.command('M', view.point(segment.start()));
            }
            match segment {
                Segment::Line(line) => self.command('L', view.point(line.to)),
                Segment::Arc(arc) => self.arc(view, arc.radius, arc.end()),
            }
        }
    }

    /// An arc of at most half a turn to a point, counter-clockwise to the eye; clockwise where the
    /// radius is below 0.
    fn arc(&mut self, view: &View, radius: f64, to: Point) {
        let clockwise = radius < 0.0;
        let radius = radius.abs() * view.scale;
        let (x, y) = view.point(to);
        self.command('A', (radius, radius));
        self.0
            .push_str(if clockwise { " 0 0 1 " } else { " 0 0 0 " });
        self.number(x);
        self.0.push(' ');
        self.number(y);
    }

    fn cap(&mut self, view: &View, outline: &Outline, level: Length, keep: fn(f64, f64) -> bool) {
        let level = level.in_millimetres();
        let pieces: Vec<Segment> = outline
            .segments()
            .iter()
            .flat_map(|segment| split(segment, level))
            .collect();
        let kept = |piece: &Segment| keep(middle(piece).y, level);
        // Begin where a run of kept pieces begins; an outline with hollows may have several.
        let first = (0..pieces.len())
            .find(|&k| kept(&pieces[k]) && !kept(&pieces[(k + pieces.len() - 1) % pieces.len()]));
        let start = first.unwrap_or(0);
        let mut run: Vec<Segment> = Vec::new();
        for k in 0..=pieces.len() {
            let piece = pieces[(start + k) % pieces.len()];
            if k < pieces.len() && kept(&piece) {
                run.push(piece);
            } else if !run.is_empty() {
                self.chain(view, &run);
                self.0.push('Z');
                run.clear();
            }
        }
    }
}

/// A segment cut where it crosses a level line.
fn split(segment: &Segment, level: f64) -> Vec<Segment> {
    match segment {
        Segment::Line(line) => {
            let (from, to) = (line.from, line.to);
            if (from.y - level) * (to.y - level) >= 0.0 {
                return vec![*segment];
            }
            let share = (level - from.y) / (to.y - from.y);
            let cut = Point {
                x: from.x + (to.x - from.x) * share,
                y: level,
            };
            let mut pieces = [*line; 2];
            pieces[0].to = cut;
            pieces[1].from = cut;
            pieces.map(Segment::Line).to_vec()
        }
        Segment::Arc(arc) => {
            let rise = (level - arc.centre.y) / arc.radius;
            let run = (1.0 - rise * rise).max(0.0).sqrt();
            let cuts = if rise.abs() < 1.0 {
                arc.passed([
                    Direction { x: run, y: rise },
                    Direction { x: -run, y: rise },
                ])
            } else {
                Vec::new()
            };
            let mut from = arc.from;
            let mut pieces = Vec::new();
            for to in cuts.into_iter().chain([arc.to]) {
                let piece = Arc { from, to, ..*arc };
                if piece.start().distance(piece.end()).in_millimetres() > 1e-9 {
                    pieces.push(Segment::Arc(piece));
                }
                from = to;
            }
            pieces
        }
    }
}

/// A point of a segment that is not one of its ends.
fn middle(segment: &Segment) -> Point {
    match segment {
        Segment::Line(line) => Point {
            x: (line.from.x + line.to.x) / 2.0,
            y: (line.from.y + line.to.y) / 2.0,
        },
        Segment::Arc(arc) => arc.middle(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Angle;

    const VIEW: View = View {
        scale: 1.0,
        origin: Point { x: 0.0, y: 0.0 },
    };

    #[test]
    fn numbers_have_two_decimals() {
        let written = |value| {
            let mut path = Path::new();
            path.number(value);
            path.done()
        };
        for (value, expected) in [
            (0.0, "0.00"),
            (-0.001, "0.00"),
            (0.05, "0.05"),
            (-0.5, "-0.50"),
            (9.996, "10.00"),
            (-123.456, "-123.46"),
            (1234.5, "1234.50"),
        ] {
            assert_eq!(written(value), expected, "{value}");
        }
    }

    #[test]
    fn a_rectangle_runs_down_the_sheet() {
        let millimetre = Length::millimetres(1.0);
        let path = Path::new()
            .rectangle(&VIEW, Length::ZERO, Length::ZERO, millimetre, millimetre)
            .done();
        assert_eq!(path, "M0.00 0.00L1.00 0.00L1.00 -1.00L0.00 -1.00Z");
    }

    #[test]
    fn a_circle_is_two_half_turns() {
        let path = Path::new().circle(&VIEW, Length::millimetres(2.0)).done();
        assert_eq!(
            path,
            "M2.00 0.00A2.00 2.00 0 0 0 -2.00 0.00A2.00 2.00 0 0 0 2.00 0.00Z"
        );
    }

    #[test]
    fn half_a_circle_is_closed_along_the_level() {
        let circle = Outline::round(Length::millimetres(2.0));
        assert_eq!(
            Path::new().above(&VIEW, &circle, Length::ZERO).done(),
            "M2.00 0.00A2.00 2.00 0 0 0 -2.00 0.00Z"
        );
        assert_eq!(
            Path::new().below(&VIEW, &circle, Length::ZERO).done(),
            "M-2.00 0.00A2.00 2.00 0 0 0 2.00 0.00Z"
        );
    }

    #[test]
    fn a_square_is_cut_at_half_height() {
        let square = Outline::regular(4, Length::millimetres(1.0), Length::ZERO, Angle::ZERO);
        assert_eq!(
            Path::new().above(&VIEW, &square, Length::ZERO).done(),
            "M1.00 0.00L1.00 -1.00L-1.00 -1.00L-1.00 0.00Z"
        );
    }

    #[test]
    fn nothing_lies_above_a_level_over_the_top() {
        let circle = Outline::round(Length::millimetres(2.0));
        assert_eq!(
            Path::new()
                .above(&VIEW, &circle, Length::millimetres(2.5))
                .done(),
            ""
        );
    }
}
