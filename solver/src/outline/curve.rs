//! Curves as smooth chains of arcs.
//!
//! A piece of a curve between two points with given tangents is replaced by two arcs that meet
//! smoothly and keep both tangents (a biarc: K. M. Bolton, “Biarc curves”, Computer-Aided Design
//! 7, 1975; the joint at equal tangent lengths). Pieces are halved until every arc lies within
//! [`TOLERANCE`] of the curve, so that whatever is computed of an outline is exact for a curve
//! that differs from the drawn one by no more than that. The outline is as wide as 1 here: so
//! the same arcs are found whatever its size, and it has no jumps where it grows.

use super::Segment;
use crate::quantity::{Direction, Point, norm};
use kurbo::{CubicBez, ParamCurve};

/// How far an arc may lie from the curve it stands for, as a share of the width of the outline: a
/// hundredth of a micrometre on 10 mm.
pub(super) const TOLERANCE: f64 = 1e-6;

/// Pieces shorter than this become lines, as a share of the width of the outline.
const SHORTEST: f64 = 1e-8;

/// A curve is halved no more often than this: a cusp would never end.
const MOST_HALVINGS: u32 = 16;

/// Points of each piece that are held against the tolerance.
const PROBES: u32 = 6;

/// Appends a cubic curve as arcs and lines; y up, the outline as wide as 1.
pub(super) fn append(curve: &CubicBez, segments: &mut Vec<Segment>) {
    // Between inflections a piece bends one way only.
    let mut from = 0.0;
    for to in curve.inflections().into_iter().chain([1.0]) {
        if to > from {
            halve(&curve.subsegment(from..to), MOST_HALVINGS, segments);
            from = to;
        }
    }
}

fn halve(curve: &CubicBez, halvings: u32, segments: &mut Vec<Segment>) {
    let (from, to) = (point(curve.p0), point(curve.p3));
    let (one, other) = (curve.p1 - curve.p0, curve.p2 - curve.p0);
    let reach = norm(one.x, one.y).max(norm(other.x, other.y));
    if from.distance(to).in_millimetres() < SHORTEST && (reach < SHORTEST || halvings == 0) {
        return;
    }
    let (first, last) = (tangent_at_start(curve), tangent_at_end(curve));
    if let (Some(first), Some(last)) = (first, last)
        && let Some(pieces) = biarc((from, first), (to, last))
        && pieces.iter().all(|piece| follows(piece, curve))
    {
        segments.extend(pieces);
    } else if halvings == 0 {
        segments.extend(Segment::line(from, to));
    } else {
        let (first, second) = curve.subdivide();
        halve(&first, halvings - 1, segments);
        halve(&second, halvings - 1, segments);
    }
}

/// Two arcs from one end of a curve to the other, keeping the tangents there; none where it is
/// too bent.
pub(crate) fn biarc(
    (from, first): (Point, Direction),
    (to, last): (Point, Direction),
) -> Option<[Segment; 2]> {
    let (x, y) = (to.x - from.x, to.y - from.y);
    let chord = x * x + y * y;
    let along = x * (first.x + last.x) + y * (first.y + last.y);
    // Half the coefficient of d² in 2d²(1 − t₀·t₁) + 2d v·(t₀ + t₁) − v·v = 0.
    let bend = 1.0 - first.dot(last);
    // The root above 0, in the form that loses no digits when the tangents are nearly alike.
    let length = chord / (along + (along * along + 2.0 * bend * chord).sqrt());
    if !length.is_finite() || length <= 0.0 || bend > 1.0 {
        return None;
    }
    let joint = Point {
        x: (from.x + to.x + length * (first.x - last.x)) / 2.0,
        y: (from.y + to.y + length * (first.y - last.y)) / 2.0,
    };
    Some([
        Segment::leaving(from, first, joint)?,
        Segment::leaving(to, -last, joint)?.reversed(),
    ])
}

/// Whether a curve keeps within the tolerance of a piece over the part that the piece covers.
fn follows(piece: &Segment, curve: &CubicBez) -> bool {
    (1..2 * PROBES).all(|k| {
        let place = point(curve.eval(f64::from(k) / f64::from(2 * PROBES)));
        match piece {
            Segment::Line(line) => {
                let foot = place.along(line.normal) - line.from.along(line.normal);
                let along = line.normal.quarter_turn();
                let inside = place.along(along) >= line.from.along(along)
                    && place.along(along) <= line.to.along(along);
                !inside || foot.abs() <= TOLERANCE
            }
            Segment::Arc(arc) => {
                let away = arc.centre.distance(place).in_millimetres();
                let normal = Direction {
                    x: (place.x - arc.centre.x) / away * arc.radius.signum(),
                    y: (place.y - arc.centre.y) / away * arc.radius.signum(),
                };
                !arc.faces(normal) || (away - arc.radius.abs()).abs() <= TOLERANCE
            }
        }
    })
}

fn tangent_at_start(curve: &CubicBez) -> Option<Direction> {
    [curve.p1, curve.p2, curve.p3]
        .into_iter()
        .find_map(|next| Direction::between(point(curve.p0), point(next)))
}

fn tangent_at_end(curve: &CubicBez) -> Option<Direction> {
    [curve.p2, curve.p1, curve.p0]
        .into_iter()
        .find_map(|last| Direction::between(point(last), point(curve.p3)))
}

pub(super) fn point(point: kurbo::Point) -> Point {
    Point {
        x: point.x,
        y: point.y,
    }
}
