//! A finished pencil seen from the side, towards the face of its imprint.

use super::pencil::FinishedPencil;
use super::surface::sampled;
use crate::outline::Segment;
use crate::quantity::{Direction, Point, norm};
use crate::sequence::in_order;

/// A pencil seen from the side: places along it, mm from the tip, and heights over its axis, mm.
///
/// The tip is on the left. The reader looks at the face of the imprint, which is turned to the left of
/// the cross-section.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Profile {
    /// The edge of what is seen, closed.
    pub(crate) contour: Vec<(f64, f64)>,
    /// The edge of the bare wood, closed: from the tip along the paint edge that is seen.
    pub(crate) wood: Vec<(f64, f64)>,
    /// Corners that are seen: where they begin, and their height; whether they are sharp.
    pub(crate) corners: Vec<(f64, f64, bool)>,
}

/// Corners of a larger radius than this share of the least distance are no lines to the eye.
const ROUND: f64 = 0.4;
/// Normals that turn by less are no corner to the eye: the sine of 6°.
const SMOOTH: f64 = 0.1;
/// Heights and places closer than this are the same, mm.
const HAIR: f64 = 1e-6;

impl FinishedPencil {
    /// The pencil seen from the side.
    pub(crate) fn profile(&self) -> Profile {
        let outline = self.finished().turned(self.turn_to_reader());
        let length = self.barrel().length().in_millimetres();
        let slope = self.slope();
        let girth = outline.perimeter().in_millimetres();
        let samples: Vec<Point> = sampled(&outline, girth)
            .into_iter()
            .flatten()
            .map(|sample| sample.place)
            .collect();
        let along = |point: Point| norm(point.x, point.y) * slope;

        // Behind the point lies what of the cross-section is within a circle: as high as the circle
        // while that lies inside, then as high as the highest point that it has passed.
        let contour_on = |up: f64| {
            let straight = |point: &&Point| point.y * up > 0.0 && point.x.abs() < HAIR;
            let inside = samples.windows(2).filter_map(|pair| crossing(pair, up));
            let inside = inside.chain(samples.iter().filter(straight).map(|point| point.y.abs()));
            let first = inside.fold(f64::INFINITY, f64::min);
            let mut height = if first.is_finite() { first } else { 0.0 };
            let mut contour = vec![(height * slope, height * up)];
            let farther = in_order(samples.clone(), |one, other| {
                along(*one).total_cmp(&along(*other))
            });
            for point in farther {
                if point.y * up > height + HAIR && along(point) >= height * slope {
                    height = point.y * up;
                    contour.push((along(point), height * up));
                }
            }
            contour.push((length, height * up));
            contour
        };
        let mut contour = vec![(0.0, 0.0)];
        contour.extend(contour_on(1.0));
        contour.extend(contour_on(-1.0).into_iter().rev());

        let mut wood = vec![(0.0, 0.0)];
        // Once round from the right, what the reader sees of the cone comes between up and down.
        let angle = |point: &Point| {
            Direction::between(Point::AXIS, *point).map_or(0.0, |ray| ray.angle().in_degrees())
        };
        let seen = samples
            .iter()
            .copied()
            .filter(|point| point.x <= HAIR)
            .collect();
        let seen = in_order(seen, |one, other| angle(one).total_cmp(&angle(other)));
        wood.extend(seen.into_iter().map(|point| (along(point), point.y)));

        let least = outline.least_distance().in_millimetres();
        let hidden = |point: Point| {
            let level = crate::quantity::Length::millimetres(point.y);
            outline
                .level_crossings(level)
                .into_iter()
                .any(|x| x < point.x - 1e-3)
        };
        let segments = outline.segments();
        let next = segments.iter().cycle().skip(1);
        let mut corners = Vec::new();
        for (segment, next) in segments.iter().zip(next) {
            let (last, first) = (segment.last_normal(), next.first_normal());
            if last.cross(first).abs() > SMOOTH && (last.x < -HAIR || first.x < -HAIR) {
                corners.push((segment.end(), true));
            }
            if let Segment::Arc(arc) = segment
                && arc.radius.abs() < ROUND * least
                && arc.sweep().abs() > SMOOTH
                && arc.from.x + arc.to.x < 0.0
            {
                corners.push((arc.middle(), false));
            }
        }
        corners.retain(|(point, _)| !hidden(*point));
        let corners = corners
            .into_iter()
            .map(|(point, sharp)| (along(point), point.y, sharp));
        Profile {
            contour,
            wood,
            corners: corners.collect(),
        }
    }
}

/// How far from the axis a piece of an outline crosses the upright line through it, on one side.
fn crossing(pair: &[Point], up: f64) -> Option<f64> {
    let &[one, other] = pair else { return None };
    if (one.x < 0.0) == (other.x < 0.0) {
        return None;
    }
    let share = one.x / (one.x - other.x);
    let height = (one.y + (other.y - one.y) * share) * up;
    (height > 0.0).then_some(height)
}
