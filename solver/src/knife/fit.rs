//! Pieces of an edge, stretched and fitted with lines and smooth arcs.

use super::Knife;
use super::stretch::Stretch;
use crate::outline::{Segment, biarc};
use crate::quantity::{Angle, Direction, Length, Point, norm};

/// A piece is halved no more often than this. A knife bends far less than what would need it.
const MOST_HALVINGS: u32 = 24;

/// Points of each part that are held against the tolerance.
const PROBES: u32 = 12;

/// The share of the tolerance that the probes may use: between two of them a part may lie a little
/// farther off.
const SHARE: f64 = 0.5;

/// A piece of the section of the wood on the face of a knife.
pub(super) fn stretched(
    piece: &Segment,
    tip: Length,
    downwards: bool,
    stretch: &Stretch,
) -> Vec<Segment> {
    let tip = tip.in_millimetres();
    if stretch.is_none() {
        return vec![piece.moved(0.0, -tip)];
    }
    let curve = Curve {
        piece,
        tip,
        sign: if downwards { 1.0 } else { -1.0 },
        stretch,
    };
    let straight = match piece {
        Segment::Line(line) => line.from.x == line.to.x || line.from.y == line.to.y,
        Segment::Arc(_) => false,
    };
    let mut pieces = Vec::new();
    if straight {
        pieces.extend(Segment::line(curve.at(0.0).0, curve.at(1.0).0));
    } else {
        curve.halve((0.0, 1.0), MOST_HALVINGS, &mut pieces);
    }
    pieces
}

/// A stretched piece, run through from 0 to 1.
struct Curve<'a> {
    piece: &'a Segment,
    tip: f64,
    sign: f64,
    stretch: &'a Stretch,
}

impl Curve<'_> {
    /// The place on the face, and the way on from there.
    fn at(&self, share: f64) -> (Point, Option<Direction>) {
        let (place, along) = match self.piece {
            Segment::Line(line) => {
                let (x, y) = (line.to.x - line.from.x, line.to.y - line.from.y);
                let place = match share {
                    // The joints to the last bit.
                    0.0 => line.from,
                    1.0 => line.to,
                    _ => Point {
                        x: line.from.x + x * share,
                        y: line.from.y + y * share,
                    },
                };
                (place, line.normal.quarter_turn())
            }
            Segment::Arc(arc) => {
                let normal = match share {
                    0.0 => arc.from,
                    1.0 => arc.to,
                    _ => {
                        let turn = Angle::radians(arc.sweep() * share);
                        arc.from.turned(turn.direction())
                    }
                };
                let place = arc.centre.towards(normal, arc.radius);
                (place, normal.quarter_turn())
            }
        };
        let depth = ((place.y - self.tip) * self.sign).max(0.0);
        let on_face = self.stretch.on_face(Length::millimetres(depth));
        let (x, y) = (along.x, along.y * self.stretch.slope(depth));
        let size = norm(x, y);
        let way = (size > 0.0 && size.is_finite()).then(|| Direction {
            x: x / size,
            y: y / size,
        });
        let place = Point {
            x: place.x,
            y: on_face.in_millimetres() * self.sign,
        };
        (place, way)
    }

    fn halve(&self, (from, to): (f64, f64), halvings: u32, pieces: &mut Vec<Segment>) {
        let ((start, first), (end, last)) = (self.at(from), self.at(to));
        if let (Some(first), Some(last)) = (first, last)
            && let Some(pair) = biarc((start, first), (end, last))
            && let pair = flattened(pair, start, end)
            && self.keeps_to(&pair, (from, to))
        {
            pieces.extend(pair);
        } else if halvings == 0 {
            pieces.extend(Segment::line(start, end));
        } else {
            let middle = f64::midpoint(from, to);
            self.halve((from, middle), halvings - 1, pieces);
            self.halve((middle, to), halvings - 1, pieces);
        }
    }

    /// Whether the part keeps to some pieces within the tolerance.
    fn keeps_to(&self, pair: &[Segment], (from, to): (f64, f64)) -> bool {
        let tolerance = SHARE * Knife::TOLERANCE.in_millimetres();
        (1..PROBES).all(|k| {
            let share = f64::from(k) / f64::from(PROBES);
            let (place, _) = self.at(from + (to - from) * share);
            let nearest = pair.iter().map(|piece| distance(piece, place));
            nearest.fold(f64::INFINITY, f64::min) <= tolerance
        })
    }
}

/// Two arcs from a start to an end, lines in the place of those of so large a radius that their ends
/// would lose digits.
fn flattened(pair: [Segment; 2], start: Point, end: Point) -> Vec<Segment> {
    /// On an arc of this radius, mm, a chord of four millimetres lies a fiftieth of a micrometre off.
    const FLAT: f64 = 1e5;
    let is_flat = |piece: &Segment| match piece {
        Segment::Line(_) => true,
        Segment::Arc(arc) => arc.radius.abs() > FLAT,
    };
    let [one, other] = pair;
    match (is_flat(&one), is_flat(&other)) {
        (false, false) => vec![one, other],
        (true, true) => Segment::line(start, end).into_iter().collect(),
        (true, false) => Segment::line(start, other.start())
            .into_iter()
            .chain([other])
            .collect(),
        (false, true) => [one]
            .into_iter()
            .chain(Segment::line(one.end(), end))
            .collect(),
    }
}

/// The distance of a point from a piece, mm.
pub(super) fn distance(piece: &Segment, point: Point) -> f64 {
    let ends = [piece.start(), piece.end()].map(|end| end.distance(point).in_millimetres());
    let beside = match piece {
        Segment::Line(line) => {
            let along = line.normal.quarter_turn();
            let place = point.along(along);
            let within = place >= line.from.along(along) && place <= line.to.along(along);
            within.then(|| (point.along(line.normal) - line.from.along(line.normal)).abs())
        }
        Segment::Arc(arc) => {
            let away = arc.centre.distance(point).in_millimetres();
            let sign = arc.radius.signum();
            let normal = Direction::between(arc.centre, point).map(|normal| Direction {
                x: normal.x * sign,
                y: normal.y * sign,
            });
            normal
                .filter(|normal| arc.faces(*normal))
                .map(|_| (away - arc.radius.abs()).abs())
        }
    };
    beside.unwrap_or(f64::INFINITY).min(ends[0]).min(ends[1])
}
