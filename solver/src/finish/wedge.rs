//! The cross-section of a pencil in wedges about its axis, each with the rings of its materials.

use super::rest::halfway;
use super::surface::{Material, Sample};
use crate::quantity::{Angle, Direction, Point};
use crate::sequence::in_order;

/// Rays that are drawn whatever the outline, for a round lead.
const RAYS: u32 = 90;

/// Rays that lie closer than this are one, degrees.
const CLOSEST: f64 = 1e-7;

/// What lies between two rays from the axis with no corner of an outline between them.
pub(super) struct Wedge {
    /// The first ray, counter-clockwise.
    pub(super) from: Direction,
    /// The other one.
    pub(super) to: Direction,
    edges: Vec<Edge>,
}

/// What lies between two distances from the axis, along each of the two rays of a wedge.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ring {
    pub(super) inner: (f64, f64),
    pub(super) outer: (f64, f64),
    pub(super) material: Material,
}

/// A short piece of an outline.
#[derive(Clone, Copy)]
struct Edge {
    ends: [Point; 2],
    /// Whether it is of the outline over the coat, or of that of the wood.
    is_finished: bool,
}

/// The wedges of two outlines once round, by rays through every point that they are sampled at and
/// some more between them.
pub(super) fn wedges(finished: &[Vec<Sample>], bare: &[Vec<Sample>]) -> Vec<Wedge> {
    let even = (0..RAYS).map(|k| f64::from(k) * 360.0 / f64::from(RAYS));
    let places = [finished, bare].into_iter().flatten().flatten();
    let angles = places.map(|sample| angle(sample.place)).chain(even);
    let mut angles = in_order(angles.collect(), |one, other| one.total_cmp(other));
    angles.dedup_by(|next, last| *next - *last < CLOSEST);
    angles.push(360.0);
    let ray = |degrees: f64| Angle::degrees(degrees).direction();
    let between = angles.windows(2).map(|pair| Wedge {
        from: ray(pair[0]),
        to: ray(pair[1]),
        edges: Vec::new(),
    });
    let mut wedges: Vec<Wedge> = between.collect();
    for (strips, is_finished) in [(finished, true), (bare, false)] {
        for pair in strips.iter().flat_map(|strip| strip.windows(2)) {
            let ends = [pair[0].place, pair[1].place];
            let edge = Edge { ends, is_finished };
            let [one, other] = ends.map(angle);
            let (low, high) = if one <= other {
                (one, other)
            } else {
                (other, one)
            };
            // A piece that seems to go more than half round passes the right.
            let ranges = if high - low <= 180.0 {
                [(low, high), (0.0, -1.0)]
            } else {
                [(high, 360.0), (0.0, low)]
            };
            for (low, high) in ranges.into_iter().filter(|(low, high)| low <= high) {
                // One more on each side: whether it is crossed there is asked of the wedge itself.
                let first = angles.partition_point(|at| *at < low).saturating_sub(1);
                let last = angles.partition_point(|at| *at <= high) + 1;
                let last = last.min(wedges.len());
                for wedge in wedges.get_mut(first..last).into_iter().flatten() {
                    wedge.edges.push(edge);
                }
            }
        }
    }
    wedges
}

fn angle(place: Point) -> f64 {
    Direction::between(Point::AXIS, place).map_or(0.0, |ray| ray.angle().in_degrees())
}

/// A place where an outline is crossed, halfway between two rays and along them.
struct Crossing {
    middle: f64,
    along: (f64, f64),
    is_finished: bool,
}

impl Wedge {
    /// The rings of the wedge from the axis outwards, the first that of the lead of a radius. Where an
    /// outline has hollows, it is left and entered several times.
    pub(super) fn rings(&self, lead: f64) -> Vec<Ring> {
        let middle = halfway(self.from, self.to);
        let side = |point: Point| middle.x * point.y - middle.y * point.x;
        let crossing = |edge: &Edge| {
            let [one, other] = edge.ends;
            if (side(one) < 0.0) == (side(other) < 0.0) {
                return None;
            }
            let [at, first, last] =
                [middle, self.from, self.to].map(|ray| distance(ray, one, other));
            (at > 0.0).then_some(Crossing {
                middle: at,
                along: (first.max(0.0), last.max(0.0)),
                is_finished: edge.is_finished,
            })
        };
        let crossings = self.edges.iter().filter_map(crossing).collect();
        let crossings = in_order(crossings, |one: &Crossing, other: &Crossing| {
            one.middle.total_cmp(&other.middle)
        });
        let lead = (lead, lead);
        let mut rings = vec![Ring {
            inner: (0.0, 0.0),
            outer: lead,
            material: Material::Lead,
        }];
        let (mut inner, mut in_finished, mut in_bare) = (lead, true, true);
        for crossing in crossings {
            if in_finished {
                let outer = crossing.along;
                let material = if in_bare {
                    Material::Wood
                } else {
                    Material::Coat
                };
                rings.push(Ring {
                    inner,
                    outer,
                    material,
                });
            }
            inner = crossing.along;
            if crossing.is_finished {
                in_finished = !in_finished;
            } else {
                in_bare = !in_bare;
            }
        }
        rings
    }
}

/// How far along a ray from the axis it meets the line between two points.
fn distance(ray: Direction, one: Point, other: Point) -> f64 {
    let side = |point: Point| ray.x * point.y - ray.y * point.x;
    let (first, last) = (side(one), side(other));
    let share = if first == last {
        0.0
    } else {
        (first / (first - last)).clamp(0.0, 1.0)
    };
    one.along(ray) + (other.along(ray) - one.along(ray)) * share
}
