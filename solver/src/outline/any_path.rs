//! Paths of smooth and of broken curves, to try things out on.

use crate::quantity::{Angle, Point};
use proptest::prelude::*;

/// A point of a path about the axis.
#[derive(Debug, Clone, Copy)]
struct Knot {
    /// From the axis, in units of the path.
    distance: f64,
    /// How the curve that leaves it leans from the tangent of a circle, radians.
    lean: f64,
    /// How far the handles reach, as a share of the distance.
    handle: f64,
    /// Whether the curve that arrives leans the same way.
    smooth: bool,
}

/// Closed paths of cubic curves about the axis, in SVG; some of them cross themselves.
pub(crate) fn any_curved_path() -> impl Strategy<Value = String> {
    let knot = (1.5_f64..6.0, -0.6_f64..0.6, 0.2_f64..0.6, any::<bool>());
    let knot = knot.prop_map(|(distance, lean, handle, smooth)| Knot {
        distance,
        lean,
        handle,
        smooth,
    });
    // Points on the axes and beside them; on them the tangents are often level or upright.
    let turns = vec![0.0, 30.0, 90.0, 135.0, 180.0, 17.3, 211.9, 300.1];
    let level = any::<bool>();
    (
        prop::collection::vec(knot, 2..7),
        prop::sample::select(turns),
        level,
    )
        .prop_map(|(mut knots, turn, level)| {
            if level {
                knots.iter_mut().for_each(|knot| knot.lean = 0.0);
            }
            path(&knots, turn)
        })
}

fn path(knots: &[Knot], turn: f64) -> String {
    let step = 360.0 / knots.len() as f64;
    let at = |k: usize, lean: f64, handle: f64| {
        let distance = knots[k].distance;
        let outwards = Angle::degrees(turn + step * k as f64).direction();
        let along = outwards
            .quarter_turn()
            .turned(Angle::radians(lean).direction());
        Point::AXIS
            .towards(outwards, distance)
            .towards(along, handle * distance * (step / 60.0).min(2.0))
    };
    let start = at(0, 0.0, 0.0);
    let mut path = format!("M{} {}", start.x, start.y);
    for (k, knot) in knots.iter().enumerate() {
        let next = (k + 1) % knots.len();
        let Knot {
            lean,
            handle,
            smooth,
            ..
        } = knots[next];
        let arrival = if smooth { lean } else { -lean };
        let points = [
            at(k, knot.lean, knot.handle),
            at(next, arrival, -handle),
            at(next, 0.0, 0.0),
        ];
        let points = points.map(|point| format!("{} {}", point.x, point.y));
        path += &format!("C{}", points.join(" "));
    }
    path + "Z"
}
