//! The edges of the knives in the section of the wood, square to the table.

use super::{Blade, KnifeProblem};
use crate::layout::{Layout, Setup};
use crate::outline::{Arc, Segment};
use crate::quantity::{Angle, Direction, Length, Point, greater, lesser};
use crate::tooling::Cut;

/// What a knife cuts, from the datum edge across; y from the glue plane.
pub(super) struct Section {
    pub(super) blade: Blade,
    pub(super) pieces: Vec<Segment>,
    /// Sides that lean too little.
    pub(super) rubbing: Vec<(Point, Point)>,
}

/// The cutters of both slats; a slat that no groove reaches has none.
pub(super) fn grooves(setup: &Setup<'_>, layout: &Layout) -> Result<Vec<Section>, KnifeProblem> {
    let shape = layout.groove_shape();
    let land = layout.pitch() - shape.radius() * 2.0;
    if layout.across() > 1 && !Length::ZERO.fits_in(land) {
        let (blade, needed) = (Blade::TopGrooves, Length::ZERO);
        return Err(KnifeProblem::LandTooNarrow {
            blade,
            land,
            needed,
        });
    }
    let axis = shape.axis_height().in_millimetres();
    let halves = [
        (Blade::TopGrooves, shape.top_depth(), axis >= 0.0),
        (Blade::BottomGrooves, shape.bottom_depth(), axis <= 0.0),
    ];
    let cut = halves
        .into_iter()
        .filter(|(_, depth, _)| *depth > Length::ZERO);
    let sections = cut.map(|(blade, _, deeper)| {
        let sign = if blade.cuts_downwards() { -1.0 } else { 1.0 };
        let groove = groove(shape.radius().in_millimetres(), axis, sign, deeper);
        let mut run = Run::starting(Point::AXIS);
        for place in layout.grooves() {
            let x = place.centre.in_millimetres();
            run.extend(groove.iter().map(|piece| piece.moved(x, axis)));
        }
        Section {
            blade,
            pieces: run.to(width(setup), 0.0),
            rubbing: Vec::new(),
        }
    });
    Ok(sections.collect())
}

/// One groove round the lead axis, from left to right, below the glue plane or above it where the
/// sign is −1 or 1. The slat that holds the larger part has upright sides.
fn groove(radius: f64, axis: f64, sign: f64, deeper: bool) -> Vec<Segment> {
    let rise = if deeper { 0.0 } else { -axis / radius };
    let run = (1.0 - rise * rise).max(0.0).sqrt();
    let (left, right) = (
        Direction { x: -run, y: rise },
        Direction { x: run, y: rise },
    );
    // Below, the normals of the circle turn counter-clockwise from left to right; above, they turn
    // clockwise, which is what hollow arcs do.
    let arc = if sign < 0.0 {
        Arc {
            centre: Point::AXIS,
            radius,
            from: left,
            to: right,
        }
    } else {
        Arc {
            centre: Point::AXIS,
            radius: -radius,
            from: -left,
            to: -right,
        }
    };
    let mouth = |x: f64| Point { x, y: -axis };
    let (start, end) = (arc.start(), arc.end());
    let mut pieces = Vec::new();
    pieces.extend(Segment::line(mouth(start.x), start).filter(|_| deeper));
    pieces.push(Segment::Arc(arc));
    pieces.extend(Segment::line(end, mouth(end.x)).filter(|_| deeper));
    pieces
}

/// The two shaping knives.
pub(super) fn shaping(
    setup: &Setup<'_>,
    layout: &Layout,
    cut: &Cut,
) -> Result<[Section; 2], KnifeProblem> {
    let halves = layout.bare().halves();
    let axis = layout.groove_shape().axis_height().in_millimetres();
    let overcut = cut.overcut().in_millimetres();
    let lean = cut.draft().direction();
    // How far a side of the overcut leans away from its pencil.
    let run = overcut * lean.y / lean.x;
    let land = layout.parting();
    let needed = Length::millimetres(2.0 * run);
    if layout.across() > 1 && !needed.fits_in(land) {
        let blade = Blade::Top;
        return Err(KnifeProblem::LandTooNarrow {
            blade,
            land,
            needed,
        });
    }
    let first = layout.grooves().first();
    let first = first.map_or(0.0, |groove| groove.centre.in_millimetres());
    let section = |blade: Blade, half: &[Segment]| {
        let past = if blade.cuts_downwards() {
            -overcut
        } else {
            overcut
        };
        let (left, right) = (halves.left(), halves.right());
        let foot = |side: Point, x: f64| Point {
            x,
            y: side.y + axis + past,
        };
        let mut edge = Run::starting(foot(left, 0.0));
        for place in layout.grooves() {
            let x = place.centre.in_millimetres();
            edge.line_to(foot(left, x + left.x - run));
            edge.extend(half.iter().map(|piece| piece.moved(x, axis)));
            edge.line_to(foot(right, x + right.x + run));
        }
        // A lopsided pencil parts at two heights, so that the land between two of them slopes.
        let next = layout.pitch().in_millimetres();
        let land = Segment::line(foot(right, right.x + run), foot(left, next + left.x - run));
        let land = land.filter(|_| layout.across() > 1);
        let land = land.map(|land| land.moved(0.0, -axis));
        let sides = half.iter().copied().chain(land);
        Section {
            blade,
            pieces: edge.to(width(setup), right.y + axis + past),
            rubbing: rubbing(sides, setup.rules.relief, (first, axis)),
        }
    };
    Ok([
        section(Blade::Top, &halves.upper),
        section(Blade::Bottom, &halves.lower),
    ])
}

/// The straight sides of the first pencil, whose axis lies at a place of the section, and of the land
/// behind it, that stand upright or lean less than the relief.
fn rubbing(
    sides: impl Iterator<Item = Segment>,
    relief: Angle,
    axis: (f64, f64),
) -> Vec<(Point, Point)> {
    /// The lean that still counts as upright, degrees.
    const UPRIGHT: f64 = 1e-6;
    let least = relief.in_degrees().max(UPRIGHT);
    let sides = sides.filter_map(|piece| match piece {
        Segment::Line(line)
            if Angle::radians(libm::asin(line.normal.y.abs())).in_degrees() < least =>
        {
            let moved = |point: Point| Point {
                x: point.x + axis.0,
                y: point.y + axis.1,
            };
            Some((moved(line.from), moved(line.to)))
        }
        _ => None,
    });
    sides.collect()
}

/// The width over which a knife cuts: that of the wider slat at the groove head.
fn width(setup: &Setup<'_>) -> f64 {
    let (top, bottom) = (setup.top.grooved_width(), setup.bottom.grooved_width());
    top.max(bottom).in_millimetres()
}

/// An edge in the making, without gaps.
struct Run {
    at: Point,
    pieces: Vec<Segment>,
}

impl Run {
    const fn starting(at: Point) -> Self {
        let pieces = Vec::new();
        Self { at, pieces }
    }

    /// A straight side; none where it would be shorter than rounding can tell. At the edges a pencil
    /// without room for its draft begins before the slat does.
    fn line_to(&mut self, to: Point) {
        if self.pieces.is_empty() && to.x < self.at.x {
            self.at = to;
        }
        if !self.at.distance(to).fits_in(Length::SLACK) {
            self.pieces.extend(Segment::line(self.at, to));
            self.at = to;
        }
    }

    fn extend(&mut self, pieces: impl Iterator<Item = Segment>) {
        for piece in pieces {
            self.line_to(piece.start());
            self.at = piece.end();
            self.pieces.push(piece);
        }
    }

    /// The edge, level to the end of the width.
    fn to(mut self, width: f64, level: f64) -> Vec<Segment> {
        if width > self.at.x {
            self.line_to(Point { x: width, y: level });
        }
        self.pieces
    }
}

impl Section {
    /// Heights of its farthest point and of its nearest.
    pub(super) fn reach(&self) -> (f64, f64) {
        let heights = || self.pieces.iter().flat_map(heights);
        let least = heights().fold(f64::INFINITY, lesser);
        let most = heights().fold(f64::NEG_INFINITY, greater);
        if self.blade.cuts_downwards() {
            (least, most)
        } else {
            (most, least)
        }
    }
}

/// The heights of both ends of a piece, and of the highest and the lowest point between them.
fn heights(piece: &Segment) -> Vec<f64> {
    let mut heights = vec![piece.start().y, piece.end().y];
    if let Segment::Arc(arc) = piece {
        let level = arc.passed([Direction::UP, Direction::DOWN]);
        let level = level.into_iter();
        heights.extend(level.map(|normal| arc.centre.towards(normal, arc.radius).y));
    }
    heights
}
