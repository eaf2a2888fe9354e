//! Handles on the end view of a barrel: where each stands, and which size it gives where it is
//! moved to.

use super::BarrelDraft;
use crate::field::{Field, Typed};
use crate::outline::{Bulged, Snap};
use crate::quantity::{Angle, Direction, Length, Point};
use crate::shape::Shape;

/// A size of a barrel that is set by moving a point of its end view.
///
/// The point lies on the outline, or on the edge of the lead or of the wood, and moves along one
/// direction from the lead axis. Most sizes are straight in how far it lies along that direction
/// (derived, with finished size s, corner radius r, coat c and n faces):
///
/// - the middle of a face, or the end of an axis of symmetry, at s/2; the top of a triangle with flat
///   faces at (2s − r)/3;
/// - where a face runs into a rounded corner, at (s/2 − r)·tan(π/n) from its middle, of a triangle at
///   (s − 2r)/√3, of a flat outline at w/2 − r;
/// - the edge of the wood at c below the middle of a face, the edge of the lead at d/2.
///
/// Of a triangle with bulged faces the size is found by bisection, to the last step of the grid.
#[derive(Debug, Clone, PartialEq)]
pub struct SizeHandle {
    /// The size it sets.
    pub field: Field,
    /// The size now; nothing where a face is flat.
    pub value: Option<Length>,
    /// Where it stands, mm from the lead axis.
    pub at: Point,
    /// The direction in which it moves out of the barrel.
    pub along: Direction,
    /// The least and the greatest size: the range of the field, and of a corner or a face what the
    /// outline allows.
    pub range: (Length, Length),
    law: Law,
}

/// How a size follows from how far its handle lies along its direction, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Law {
    /// `(along − zero) · rate`.
    Straight { zero: f64, rate: f64 },
    /// The height of a bulged triangle of this corner and face radius, by its top.
    BulgedHeight { corner: f64, face: f64 },
    /// The corner radius of a bulged triangle of this height and face radius, by where its lower face
    /// ends.
    BulgedCorner { height: f64, face: f64 },
    /// The face radius of a triangle of this height and corner radius, by the middle of its lower face.
    Face { height: f64, corner: f64 },
}

/// Halvings of a range: from a kilometre to far below a micrometre.
const HALVINGS: u32 = 60;

impl BarrelDraft {
    /// The handles of the barrel, standing on a face or as drawn; none while it cannot be made.
    ///
    /// ```
    /// use solver::{BarrelDraft, Field, LengthUnit, Point, Shape, Snap};
    /// let handles = BarrelDraft::new("Office", Shape::Hexagonal).handles();
    /// let size = handles.iter().find(|handle| handle.field == Field::AcrossFlats).unwrap();
    /// assert_eq!((size.at.x, size.at.y), (0.0, 3.5));
    /// let snap = Snap { unit: LengthUnit::Millimetre, fine: false, reach: 0.0 };
    /// // The upper face a tenth of a millimetre higher: two tenths more across flats.
    /// let wider = size.value_at(Point { x: 0.4, y: 3.61 }, &snap).unwrap();
    /// assert_eq!(wider.in_millimetres(), 7.2);
    /// ```
    #[must_use]
    pub fn handles(&self) -> Vec<SizeHandle> {
        let Ok(barrel) = self.check() else {
            return Vec::new();
        };
        let mm = Length::in_millimetres;
        let (size, corner) = (mm(barrel.size()), mm(barrel.corner_radius()));
        let height = self.height.read(Field::BarrelHeight).unwrap_or(size);
        let inradius = mm(barrel.finished(Angle::ZERO).least_distance());
        let field = self.shape.size_field();
        let half = |field, value, along| straight(field, value, along, (0.0, 2.0), None);
        let mut handles = Vec::with_capacity(5);
        let corner_most = size.min(height) / 2.0;
        let corner_handle = |middle: Point, end: f64, rate: f64| SizeHandle {
            at: Point {
                x: middle.x + end - corner * rate,
                y: middle.y,
            },
            ..straight(
                Field::CornerRadius,
                corner,
                Direction::RIGHT,
                (end, -1.0 / rate),
                Some((0.0, corner_most)),
            )
        };
        // The face whose middle is nearest to the left, for the coat; the axes of the others are level.
        let mut left = Direction::LEFT;
        match self.shape {
            Shape::Round => handles.push(half(field, size, Direction::RIGHT)),
            Shape::Hexagonal | Shape::Polygonal => {
                let sides = if self.shape == Shape::Hexagonal {
                    6.0
                } else {
                    self.sides.read(Field::Sides).unwrap_or(6.0)
                };
                let up = if sides % 2.0 == 0.0 {
                    Direction::UP
                } else {
                    Direction::DOWN
                };
                handles.push(half(field, size, up));
                let bisector = Angle::degrees(180.0 / sides).direction();
                let tangent = bisector.y / bisector.x;
                let lower = Point {
                    x: 0.0,
                    y: -size / 2.0,
                };
                handles.push(corner_handle(lower, size / 2.0 * tangent, tangent));
                let step = 360.0 / sides;
                let face = (270.0 / step).floor() * step - 90.0;
                left = Angle::degrees(face).direction();
            }
            Shape::Triangular => {
                let face = self.face_radius.read_optional(Field::FaceRadius);
                handles.extend(triangle(size, corner, face.ok().flatten()));
                left = Angle::degrees(150.0).direction();
            }
            Shape::Oval | Shape::Flat => {
                handles.push(half(field, size, Direction::RIGHT));
                handles.push(half(Field::BarrelHeight, height, Direction::UP));
                if self.shape == Shape::Flat {
                    let lower = Point {
                        x: 0.0,
                        y: -height / 2.0,
                    };
                    handles.push(corner_handle(lower, size / 2.0, 1.0));
                }
            }
            // The points of its path are its handles.
            Shape::Free => {}
        }
        if self.shape != Shape::Free {
            // Beside the handle of the size, and where its own direction is a normal.
            let away = if self.shape == Shape::Oval || self.shape == Shape::Flat {
                size / 2.0
            } else {
                inradius
            };
            let coat = mm(barrel.coat());
            handles.push(SizeHandle {
                at: Point::AXIS.towards(left, away - coat),
                ..straight(Field::Coat, coat, left, (away, -1.0), None)
            });
        }
        let lead = mm(barrel.lead_diameter());
        let slanted = Angle::degrees(45.0).direction();
        handles.push(half(Field::LeadDiameter, lead, slanted));
        handles
    }
}

/// The handles of a triangle of a height, a corner radius, and a face radius or flat faces, mm.
fn triangle(height: f64, corner: f64, face: Option<f64>) -> [SizeHandle; 3] {
    let least_face = height - corner;
    let (top, end, middle, laws) = match face {
        None => {
            let root = 3.0_f64.sqrt();
            let middle = (height + corner) / 3.0;
            let laws = [
                Law::Straight {
                    zero: -corner / 3.0,
                    rate: 1.5,
                },
                Law::Straight {
                    zero: height / root,
                    rate: -root / 2.0,
                },
            ];
            let end = Point {
                x: (height - 2.0 * corner) / root,
                y: -middle,
            };
            ((2.0 * height - corner) / 3.0, end, middle, laws)
        }
        Some(face) => {
            let bulged = bulged(height, corner, face);
            let laws = [
                Law::BulgedHeight { corner, face },
                Law::BulgedCorner { height, face },
            ];
            let middle = bulged.inradius().in_millimetres();
            (height - middle, bulged.face_end(), middle, laws)
        }
    };
    let handle = |field: Field, value: Option<f64>, at, along, law| {
        let spec = field.spec();
        SizeHandle {
            field,
            value: value.map(Length::millimetres),
            at,
            along,
            range: (
                Length::millimetres(spec.least),
                Length::millimetres(spec.most),
            ),
            law,
        }
    };
    let upper = Point { x: 0.0, y: top };
    let lower = Point { x: 0.0, y: -middle };
    let least_corner = face.map_or(0.0, |face| (height - face).max(0.0));
    [
        handle(Field::Height, Some(height), upper, Direction::UP, laws[0]),
        SizeHandle {
            range: (
                Length::millimetres(least_corner),
                Length::millimetres(height / 2.0),
            ),
            ..handle(
                Field::CornerRadius,
                Some(corner),
                end,
                Direction::RIGHT,
                laws[1],
            )
        },
        SizeHandle {
            range: (
                Length::millimetres(least_face.max(Field::FaceRadius.spec().least)),
                Length::millimetres(Field::FaceRadius.spec().most),
            ),
            ..handle(
                Field::FaceRadius,
                face,
                lower,
                Direction::DOWN,
                Law::Face { height, corner },
            )
        },
    ]
}

/// A handle whose size is `(along − zero) · rate`, in a range that may be narrower than its field's.
fn straight(
    field: Field,
    value: f64,
    along: Direction,
    (zero, rate): (f64, f64),
    range: Option<(f64, f64)>,
) -> SizeHandle {
    let spec = field.spec();
    let (least, most) = range.unwrap_or((spec.least, spec.most));
    SizeHandle {
        field,
        value: Some(Length::millimetres(value)),
        at: Point::AXIS.towards(along, zero + value / rate),
        along,
        range: (
            Length::millimetres(least.max(spec.least)),
            Length::millimetres(most.min(spec.most)),
        ),
        law: Law::Straight { zero, rate },
    }
}

fn bulged(height: f64, corner: f64, face: f64) -> Bulged {
    let [height, corner, face] = [height, corner, face].map(Length::millimetres);
    Bulged::new(height, corner, face)
}

impl SizeHandle {
    /// The size where the handle is moved to a point, mm from the lead axis: on the grid, within the
    /// range. Nothing for a face that has become flat.
    #[must_use]
    pub fn value_at(&self, point: Point, snap: &Snap) -> Option<Length> {
        let along = point.along(self.along);
        let (least, most) = (self.range.0.in_millimetres(), self.range.1.in_millimetres());
        let wanted = match self.law {
            Law::Straight { zero, rate } => (along - zero) * rate,
            Law::BulgedHeight { corner, face } => {
                let top =
                    |height: f64| height - bulged(height, corner, face).inradius().in_millimetres();
                let highest = (face + corner).min(most);
                solve(2.0 * corner.max(least / 2.0), highest, |height| {
                    top(height) < along
                })
            }
            Law::BulgedCorner { height, face } => {
                let end = |corner: f64| bulged(height, corner, face).face_end().x;
                solve(least, most, |corner| end(corner) > along)
            }
            Law::Face { height, corner } => {
                let flat = (height + corner) / 3.0;
                if along <= flat {
                    return None;
                }
                let middle = |bend: f64| {
                    bulged(height, corner, 1.0 / bend)
                        .inradius()
                        .in_millimetres()
                };
                let bend = solve(1.0 / most, 1.0 / least, |bend| middle(bend) < along);
                if bend <= 1.0 / most {
                    return None;
                }
                1.0 / bend
            }
        };
        Some(self.kept(wanted, snap))
    }

    /// The size after so many steps of the grid, or the other way for less than 0. The steps of a face
    /// are those of its middle.
    #[must_use]
    pub fn stepped(&self, steps: i32, snap: &Snap) -> Option<Length> {
        let step = self.grid(snap).step() * f64::from(steps);
        match (self.law, self.value) {
            (Law::Face { .. }, _) | (_, None) => {
                self.value_at(self.at.towards(self.along, step), snap)
            }
            (_, Some(value)) => Some(self.kept(value.in_millimetres() + step, snap)),
        }
    }

    /// What stands in the field for a size.
    #[must_use]
    pub fn typed(value: Option<Length>) -> Typed {
        value.map_or_else(Typed::empty, |value| Typed::Number(value.in_millimetres()))
    }

    /// A coat is set by the finer grid.
    fn grid(&self, snap: &Snap) -> Snap {
        Snap {
            fine: snap.fine || self.field == Field::Coat,
            ..*snap
        }
    }

    fn kept(&self, millimetres: f64, snap: &Snap) -> Length {
        let value = Length::millimetres(self.grid(snap).on_grid(millimetres));
        value.max(self.range.0).min(self.range.1)
    }
}

/// Where a condition that holds from the least on ceases to, within a range.
fn solve(least: f64, most: f64, holds: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (least, most.max(least));
    if !holds(low) {
        return low;
    }
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if holds(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

#[cfg(test)]
mod tests;
