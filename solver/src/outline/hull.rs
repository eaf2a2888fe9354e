//! The hull of an outline, as the greatest of what its pieces reach.
//!
//! A piece reaches as far as its two ends, and an arc that bulges outwards as far as its circle in
//! the directions it faces. So once round, the reach of a piece is a list of ranges in each of
//! which one corner `c·d + r` decides. The greater of two such lists is a list again: where two
//! corners meet, their difference `(c₁ − c₂)·d + (r₁ − r₂)` has a zero, at most twice, and between
//! its zeros one of them leads. Halves of the outline are joined, and halves of those (M. J. Atallah,
//! “Some dynamic computational geometry problems”, Computers & Mathematics with Applications 11,
//! 1985).
//!
//! Nothing is followed from corner to corner, so none can be lost on the way: ranges meet end to end
//! as they are made, in each of them both corners are held against each other, and where rounding
//! decides between two, both reach as far but for rounding.

use super::{Outline, Reach, Segment};
use crate::quantity::{Direction, Point, greater, lesser, norm};
use crate::sequence::in_order;

/// Corners that reach as far but for this are not told apart, mm. Every halving of the outline may
/// add it twice: with the most pieces that an outline may have, far below what is forgiven in a
/// length.
const HAIR: f64 = 1e-12;

impl Outline {
    /// The ranges in which one corner of the hull reaches farthest, counter-clockwise from the right;
    /// the first one may begin before it.
    pub(super) fn hull(&self) -> Vec<Reach> {
        let mut spans = greatest(&self.segments);
        // The corner that reaches farthest to the right does so on both sides of where the list begins.
        if let [first, .., last] = spans.as_mut_slice()
            && first
                .corner
                .lead(last.corner)
                .is_within_a_hair(last.from, last.to)
        {
            first.from = last.from;
            spans.pop();
        }
        let reach = |span: Span| Reach {
            centre: span.corner.centre,
            radius: span.corner.radius,
            from: span.from.direction,
            to: span.to.direction,
        };
        spans.into_iter().map(reach).collect()
    }
}

/// A range of directions with the corner that reaches farthest in it.
///
/// A list of them begins and ends at the right, each begins where the last one ends.
#[derive(Debug, Clone, Copy)]
struct Span {
    corner: Corner,
    from: Mark,
    to: Mark,
}

/// A direction and its angle from the right, 0 up to 360, in degrees, by which it is put in order.
#[derive(Debug, Clone, Copy)]
struct Mark {
    direction: Direction,
    degrees: f64,
}

impl Mark {
    const BEGIN: Self = Self {
        direction: Direction::RIGHT,
        degrees: 0.0,
    };
    const END: Self = Self {
        direction: Direction::RIGHT,
        degrees: 360.0,
    };

    fn new(direction: Direction) -> Self {
        let degrees = direction.angle().in_degrees();
        Self { direction, degrees }
    }

    fn is_between(self, from: Self, to: Self) -> bool {
        from.degrees < self.degrees && self.degrees < to.degrees
    }
}

/// A point, or a circle of which a part bulges outwards; and what one of them reaches beyond another.
#[derive(Debug, Clone, Copy)]
struct Corner {
    centre: Point,
    radius: f64,
}

impl Corner {
    const fn sharp(centre: Point) -> Self {
        Self {
            centre,
            radius: 0.0,
        }
    }

    fn reach(self, direction: Direction) -> f64 {
        self.centre.along(direction) + self.radius
    }

    /// How much farther it reaches than another one.
    const fn lead(self, other: Self) -> Self {
        Self {
            centre: Point {
                x: self.centre.x - other.centre.x,
                y: self.centre.y - other.centre.y,
            },
            radius: self.radius - other.radius,
        }
    }

    /// The least and the most that it reaches in a range, mm.
    fn extremes(self, from: Mark, to: Mark) -> (f64, f64) {
        let (first, last) = (self.reach(from.direction), self.reach(to.direction));
        let (mut least, mut most) = (lesser(first, last), greater(first, last));
        if let Some(farthest) = Direction::between(Point::AXIS, self.centre) {
            let size = norm(self.centre.x, self.centre.y);
            if Mark::new(farthest).is_between(from, to) {
                most = self.radius + size;
            }
            if Mark::new(-farthest).is_between(from, to) {
                least = self.radius - size;
            }
        }
        (least, most)
    }

    fn is_within_a_hair(self, from: Mark, to: Mark) -> bool {
        let (least, most) = self.extremes(from, to);
        least >= -HAIR && most <= HAIR
    }

    /// The directions between two in which it reaches just as far as the axis, in order: the points
    /// of the unit circle on the line `centre·d = −radius`.
    fn zeros(self, from: Mark, to: Mark) -> impl Iterator<Item = Mark> {
        let Point { x, y } = self.centre;
        let square = x * x + y * y;
        let beside = square - self.radius * self.radius;
        let zeros = (square > 0.0 && beside > 0.0).then(|| {
            let root = beside.sqrt();
            let zero = |root: f64| {
                Mark::new(Direction {
                    x: (-self.radius * x - root * y) / square,
                    y: (-self.radius * y + root * x) / square,
                })
            };
            let (one, other) = (zero(root), zero(-root));
            if one.degrees <= other.degrees {
                [one, other]
            } else {
                [other, one]
            }
        });
        let zeros = zeros.into_iter().flatten();
        zeros.filter(move |zero| zero.is_between(from, to))
    }
}

/// What some pieces of an outline reach together.
fn greatest(segments: &[Segment]) -> Vec<Span> {
    match segments {
        [] => Vec::new(),
        [segment] => of_piece(segment),
        _ => {
            let (one, other) = segments.split_at(segments.len() / 2);
            greater_of(&greatest(one), &greatest(other))
        }
    }
}

/// What a piece reaches: its ends, and its circle where an arc bulges outwards.
fn of_piece(segment: &Segment) -> Vec<Span> {
    /// An arc that turns by less is its chord, to 1e-12 mm and less.
    const STRAIGHT: f64 = 1e-13;
    let (start, end) = (Corner::sharp(segment.start()), Corner::sharp(segment.end()));
    let normal = match segment {
        Segment::Line(line) => Some(line.normal),
        Segment::Arc(_) => {
            Direction::between(start.centre, end.centre).map(|along| -along.quarter_turn())
        }
    };
    let Some(normal) = normal else {
        return round(vec![(Direction::RIGHT, start)]);
    };
    match segment {
        Segment::Arc(arc)
            if !arc.is_hollow()
                && (arc.from.dot(arc.to) <= 0.0 || arc.from.cross(arc.to) > STRAIGHT) =>
        {
            let circle = Corner {
                centre: arc.centre,
                radius: arc.radius,
            };
            round(vec![(arc.from, circle), (arc.to, end), (-normal, start)])
        }
        _ => round(vec![(normal, end), (-normal, start)]),
    }
}

/// A list of ranges from corners with the directions in which each begins to reach farthest.
fn round(corners: Vec<(Direction, Corner)>) -> Vec<Span> {
    let marked = corners
        .into_iter()
        .map(|(from, corner)| (Mark::new(from), corner));
    let marked = in_order(marked.collect(), |(one, _), (other, _)| {
        one.degrees.total_cmp(&other.degrees)
    });
    // The last one goes on past the right, until the first one begins.
    let Some((_, mut corner)) = marked.last().copied() else {
        return Vec::new();
    };
    let mut spans = Vec::with_capacity(marked.len() + 1);
    let mut from = Mark::BEGIN;
    for (to, next) in marked.into_iter().chain([(Mark::END, corner)]) {
        if to.degrees > from.degrees {
            spans.push(Span { corner, from, to });
        }
        (from, corner) = (to, next);
    }
    spans
}

/// The greater of what two lists reach.
fn greater_of(mut one: &[Span], mut other: &[Span]) -> Vec<Span> {
    let mut joined = Vec::with_capacity(one.len() + other.len());
    let mut from = Mark::BEGIN;
    while let ([first, one_rest @ ..], [second, other_rest @ ..]) = (one, other) {
        let to = if first.to.degrees <= second.to.degrees {
            first.to
        } else {
            second.to
        };
        if from.degrees < to.degrees {
            append_greater(&mut joined, first.corner, second.corner, from, to);
        }
        if first.to.degrees <= to.degrees {
            one = one_rest;
        }
        if second.to.degrees <= to.degrees {
            other = other_rest;
        }
        from = to;
    }
    joined
}

/// Appends the greater of two corners in a range.
fn append_greater(joined: &mut Vec<Span>, one: Corner, other: Corner, from: Mark, to: Mark) {
    let lead = other.lead(one);
    let mut start = from;
    for end in lead.zeros(from, to).chain([to]) {
        // Where they hardly differ before a zero, nothing is gained by a range of its own.
        if end.degrees < to.degrees && lead.is_within_a_hair(start, end) {
            continue;
        }
        let (least, most) = lead.extremes(start, end);
        append(joined, if most > -least { other } else { one }, start, end);
        start = end;
    }
}

/// Appends a range, to the last one where its corner reaches as far here.
fn append(joined: &mut Vec<Span>, corner: Corner, from: Mark, to: Mark) {
    match joined.last_mut() {
        Some(last) if corner.lead(last.corner).is_within_a_hair(from, to) => last.to = to,
        _ => joined.push(Span { corner, from, to }),
    }
}
