//! How an outline lies at rest on a plane, and how far the plane can be tilted.

use crate::outline::{Arc, Reach};
use crate::quantity::{Direction, Point, greater, lesser, norm};

/// A way an outline lies at rest: its plane touches it in a direction from which the centre is nearer
/// to the plane than from any near it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Rest {
    /// The outward normal of the plane.
    pub(super) normal: Direction,
    /// Tangent of the slope on which it starts to roll, the lesser of both ways.
    pub(super) tangent: f64,
}

/// A lever shorter than this is none, mm: the centre then lies over the point that touches.
const HAIR: f64 = 1e-9;

/// A range of directions in which the height h of the centre over the plane only grows or only falls.
struct Piece {
    corner: Arc,
    /// Sign of h′, 0 where the height stays the same.
    sign: f64,
}

/// The ways an outline lies at rest, counter-clockwise, from what it reaches about a centre of mass;
/// none for a circle about its centre.
///
/// With the support function h(φ) about the centre of mass, the outline touches a plane of the normal
/// φ at a lever h′(φ) beside the foot of the centre. On a slope α it is in balance where tan α =
/// h′(φ)/h(φ); so from its rest, where h is least, it climbs as the slope grows up to the greatest
/// h′/h before the next highest h, and then rolls. In a corner h = C·cos u + ρ, u the angle from its
/// centre, of which h′/h is greatest at the ends or where cos u = −C/ρ. A sharp regular prism of n
/// sides rolls at 180°/n. Derived here from statics; friction is taken to keep it from sliding.
pub(super) fn rests(reaches: &[Reach], centre: Point) -> Vec<Rest> {
    let pieces: Vec<Piece> = reaches
        .iter()
        .flat_map(|reach| parted(reach, centre))
        .collect();
    let count = pieces.len();
    let at = |k: usize| &pieces[k % count.max(1)];
    // Whatever stays level belongs to what falls before it.
    let moving = |k: &usize| at(*k).sign != 0.0;
    let mut rests = Vec::new();
    for k in (0..count).filter(moving) {
        let before = (k..k + count).rev().find(moving);
        let Some(before) = before.filter(|before| at(*before).sign < 0.0 && at(k).sign > 0.0)
        else {
            continue;
        };
        let climb = |found: f64, piece: &Piece| greater(found, piece.steepest());
        let ahead = (k..k + count).map(at).take_while(|piece| piece.sign >= 0.0);
        let behind = (before + 1..=before + count).rev().map(at);
        let behind = behind.take_while(|piece| piece.sign <= 0.0);
        rests.push(Rest {
            normal: halfway(at(before).corner.to, at(k).corner.from),
            tangent: lesser(ahead.fold(0.0, climb), behind.fold(0.0, climb)),
        });
    }
    rests
}

/// The ranges of a corner between the directions of its centre, where h′ = 0.
fn parted(reach: &Reach, about: Point) -> Vec<Piece> {
    let centre = Point {
        x: reach.centre.x - about.x,
        y: reach.centre.y - about.y,
    };
    let corner = Arc {
        centre,
        radius: reach.radius,
        from: reach.from,
        to: reach.to,
    };
    let levels = Direction::between(Point::AXIS, centre)
        .map_or_else(Vec::new, |outwards| corner.passed([outwards, -outwards]));
    let mut pieces = Vec::new();
    let mut from = corner.from;
    for to in levels.into_iter().chain([corner.to]) {
        let corner = Arc { from, to, ..corner };
        from = to;
        // An end that is passed at once leaves a range of nothing.
        if corner.from.cross(to) > HAIR || corner.from.dot(to) < 0.0 {
            let lever = centre.along(halfway(corner.from, to).quarter_turn());
            let sign = if lever.abs() > HAIR {
                lever.signum()
            } else {
                0.0
            };
            pieces.push(Piece { corner, sign });
        }
    }
    pieces
}

impl Piece {
    /// The greatest |h′|/h.
    fn steepest(&self) -> f64 {
        let Arc {
            centre,
            radius,
            from,
            to,
        } = self.corner;
        let tangent = |normal: Direction| {
            let height = centre.along(normal) + radius;
            if height > 0.0 {
                centre.along(normal.quarter_turn()).abs() / height
            } else {
                0.0
            }
        };
        let mut steepest = greater(tangent(from), tangent(to));
        let away = norm(centre.x, centre.y);
        if let Some(outwards) = Direction::between(Point::AXIS, centre)
            && away < radius
        {
            let along = -away / radius;
            let beside = (1.0 - along * along).sqrt();
            let turns = [beside, -beside].map(|y| outwards.turned(Direction { x: along, y }));
            for normal in self.corner.passed(turns) {
                steepest = greater(steepest, tangent(normal));
            }
        }
        steepest
    }
}

/// The direction in the middle between two, counter-clockwise from the first.
pub(super) fn halfway(from: Direction, to: Direction) -> Direction {
    let sum = Point {
        x: from.x + to.x,
        y: from.y + to.y,
    };
    if norm(sum.x, sum.y) < HAIR {
        return from.quarter_turn();
    }
    Direction::between(Point::AXIS, sum).unwrap_or(from)
}
