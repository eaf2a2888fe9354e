//! Free outlines, both as the text of a path and as points.

use crate::region::{Contour, arc, centroid, reach};
use proptest::prelude::*;
use std::fmt::Write;

/// Points of a drawn curve; with pieces up to 6 mm long they lie closer than 0.03 mm.
const POINTS: u32 = 240;

/// A closed line round the origin, from corner to corner, in units of any size; y up.
#[derive(Debug, Clone)]
pub(crate) struct FreeDrawing {
    /// Where the lead axis lies, from the centre of area, mm.
    pub(crate) axis: [f64; 2],
    corners: Vec<[f64; 2]>,
    pieces: Vec<Piece>,
}

/// How one corner is joined to the next. Bends are shares of the distance between the two, to the
/// right of the way, which is outwards.
#[derive(Debug, Clone, Copy)]
enum Piece {
    Line,
    /// A circular arc that bends so far halfway, by less than half a circle.
    Arc(f64),
    /// A cubic curve whose control points lie so far out at a third and two thirds of the way.
    Cubic(f64, f64),
}

impl FreeDrawing {
    /// Three to ten corners at equal angles, joined any way; the arcs and curves are hollow as
    /// often as they are not.
    pub(crate) fn any() -> impl Strategy<Value = Self> {
        let bend = -0.15_f64..0.15;
        let piece = prop_oneof![
            Just(Piece::Line),
            bend.clone().prop_map(Piece::Arc),
            (bend.clone(), bend).prop_map(|(first, last)| Piece::Cubic(first, last)),
        ];
        let corner = (80.0_f64..110.0, piece);
        let axis = (-0.3_f64..0.3, -0.3_f64..0.3);
        (axis, prop::collection::vec(corner, 3..=10)).prop_map(|((across, up), corners)| {
            let step = 360.0 / corners.len() as f64;
            let place = |(k, (radius, _)): (usize, &(f64, Piece))| {
                let (sine, cosine) = libm::sincos((step * k as f64).to_radians());
                [radius * cosine, radius * sine]
            };
            Self {
                axis: [across, up],
                corners: corners.iter().enumerate().map(place).collect(),
                pieces: corners.into_iter().map(|(_, piece)| piece).collect(),
            }
        })
    }

    /// Each piece with its two ends.
    fn ways(&self) -> impl Iterator<Item = (Piece, [f64; 2], [f64; 2])> {
        let next = self.corners.iter().cycle().skip(1);
        let ends = self.corners.iter().zip(next);
        self.pieces
            .iter()
            .zip(ends)
            .map(|(&piece, (&from, &to))| (piece, from, to))
    }

    /// The path data: y down, every second piece relative to where it begins.
    pub(crate) fn path(&self) -> String {
        let mut text = String::new();
        // Writing to a string cannot fail.
        let _ = write!(text, "M{} {}", self.corners[0][0], -self.corners[0][1]);
        for (k, (piece, from, to)) in self.ways().enumerate() {
            let relative = k % 2 == 1;
            let seen = |[x, y]: [f64; 2]| {
                let origin = if relative { from } else { [0.0, 0.0] };
                format!("{} {}", x - origin[0], origin[1] - y)
            };
            let letter = |absolute: char| {
                if relative {
                    absolute.to_ascii_lowercase()
                } else {
                    absolute
                }
            };
            let _ = match piece {
                Piece::Line => write!(text, " {} {}", letter('L'), seen(to)),
                Piece::Arc(bend) => {
                    // To the right of the way is counter-clockwise with y up: a falling angle
                    // with y down, which is sweep 0.
                    let (radius, sweep) = (radius(bend, from, to), u8::from(bend < 0.0));
                    let letter = letter('A');
                    write!(text, " {letter} {radius} {radius} 0 0 {sweep} {}", seen(to))
                }
                Piece::Cubic(..) => {
                    let [first, last] = controls(piece, from, to);
                    write!(
                        text,
                        " {} {}, {}, {}",
                        letter('C'),
                        seen(first),
                        seen(last),
                        seen(to)
                    )
                }
            };
        }
        text + " Z"
    }

    /// Its points, as wide as `width`, round the lead axis.
    pub(crate) fn fitted(&self, width: f64) -> Contour {
        let drawn: Contour = self
            .ways()
            .flat_map(|(piece, from, to)| points(piece, from, to))
            .collect();
        let [left, _, right, _] = reach(&drawn);
        let scale = width / (right - left);
        let [x, y] = centroid(&drawn);
        let fit = |point: [f64; 2]| {
            [
                (point[0] - x) * scale - self.axis[0],
                (point[1] - y) * scale - self.axis[1],
            ]
        };
        drawn.into_iter().map(fit).collect()
    }
}

/// A place so far along the way from one point to another and so far to the right of it, in shares
/// of its length.
fn beside(from: [f64; 2], to: [f64; 2], along: f64, right: f64) -> [f64; 2] {
    let (x, y) = (to[0] - from[0], to[1] - from[1]);
    [
        from[0] + x * along + y * right,
        from[1] + y * along - x * right,
    ]
}

/// The radius of an arc over a chord c that rises s at its middle: (c²/4 + s²) / 2s.
fn radius(bend: f64, from: [f64; 2], to: [f64; 2]) -> f64 {
    let chord = libm::hypot(to[0] - from[0], to[1] - from[1]);
    let rise = bend.abs();
    chord * (0.25 + rise * rise) / (2.0 * rise)
}

fn controls(piece: Piece, from: [f64; 2], to: [f64; 2]) -> [[f64; 2]; 2] {
    let (first, last) = match piece {
        Piece::Cubic(first, last) => (first, last),
        Piece::Line | Piece::Arc(_) => (0.0, 0.0),
    };
    [
        beside(from, to, 1.0 / 3.0, first),
        beside(from, to, 2.0 / 3.0, last),
    ]
}

/// Points of a piece without its last one.
fn points(piece: Piece, from: [f64; 2], to: [f64; 2]) -> Vec<[f64; 2]> {
    match piece {
        Piece::Line => vec![from],
        Piece::Arc(bend) => {
            let (radius, top) = (radius(bend, from, to), beside(from, to, 0.5, bend));
            // The centre lies below the top of the arc, on its hollow side.
            let middle = beside(from, to, 0.5, 0.0);
            let rise = libm::hypot(top[0] - middle[0], top[1] - middle[1]);
            let centre = [0, 1].map(|k| top[k] + (middle[k] - top[k]) / rise * radius);
            let angle = |point: [f64; 2]| {
                libm::atan2(point[1] - centre[1], point[0] - centre[0]).to_degrees()
            };
            let start = angle(from);
            let turn = (angle(to) - start + 180.0).rem_euclid(360.0) - 180.0;
            let mut points: Vec<[f64; 2]> = arc(centre, radius, start, start + turn).collect();
            points.pop();
            points
        }
        Piece::Cubic(..) => {
            let [first, last] = controls(piece, from, to);
            (0..POINTS)
                .map(|k| {
                    let t = f64::from(k) / f64::from(POINTS);
                    let s = 1.0 - t;
                    [0, 1].map(|k| {
                        s * s * s * from[k]
                            + 3.0 * s * t * (s * first[k] + t * last[k])
                            + t * t * t * to[k]
                    })
                })
                .collect()
        }
    }
}
