//! What the finished pencil is beyond its barrel, as it is described.

use super::colour::Colour;
use super::face::Face;
use super::tin::Tin;
use crate::barrel::Barrel;
use crate::field::{Cause, Field, FieldProblem, Typed};
use crate::quantity::{Angle, Length, Point};

/// What a finished pencil is beyond its barrel, as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct FinishDraft {
    /// Angle between the two sides of the point.
    pub point_angle: Typed,
    /// Colour of the coat.
    pub coat_colour: Colour,
    /// Density of the dry coat, g/cm³.
    pub coat_density: Typed,
    /// Colour of the lead.
    pub lead_colour: Colour,
    /// Length of the dip at the other end; 0 for none.
    pub dip: Typed,
    /// Colour of the dip.
    pub dip_colour: Colour,
    /// What is imprinted; spaces at its ends are not counted, and nothing means no imprint.
    pub imprint: String,
    /// The face that is imprinted, from 1 for the uppermost, counter-clockwise.
    pub face: Typed,
    /// What the imprint leaves free at each edge of the face.
    pub margin: Typed,
    /// What the imprint leaves free at both ends.
    pub end_margin: Typed,
    /// How far a curved face may fall away under the imprint.
    pub fall: Typed,
    /// Inner width of a tin.
    pub tin_width: Typed,
    /// Inner height of a tin.
    pub tin_height: Typed,
    /// Inner length of a tin.
    pub tin_length: Typed,
}

/// What a finished pencil is beyond its barrel, and goes with it.
#[derive(Debug, Clone, PartialEq)]
pub struct Finish {
    /// Half the angle of the point, above 0 and below 90°.
    pub(super) half_angle: Angle,
    pub(super) coat_colour: Colour,
    pub(super) coat_density: f64,
    pub(super) lead_colour: Colour,
    pub(super) dip: Length,
    pub(super) dip_colour: Colour,
    pub(super) imprint: String,
    pub(super) face: Face,
    pub(super) margin: Length,
    pub(super) end_margin: Length,
    pub(super) tin: Tin,
}

impl FinishDraft {
    /// The first value in every field; nothing dipped, nothing imprinted.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            point_angle: Typed::initial(Field::PointAngle),
            coat_colour: Colour::new(0x1f, 0x5f, 0x6b),
            coat_density: Typed::initial(Field::CoatDensity),
            lead_colour: Colour::new(0x3a, 0x3c, 0x40),
            dip: Typed::initial(Field::DipLength),
            dip_colour: Colour::new(0xe9, 0xc4, 0x6a),
            imprint: String::new(),
            face: Typed::initial(Field::ImprintFace),
            margin: Typed::initial(Field::ImprintMargin),
            end_margin: Typed::initial(Field::ImprintEnd),
            fall: Typed::initial(Field::FaceFall),
            tin_width: Typed::initial(Field::TinWidth),
            tin_height: Typed::initial(Field::TinHeight),
            tin_length: Typed::initial(Field::TinLength),
        }
    }

    /// What the pencil of a barrel is finished to, or every rule it breaks.
    ///
    /// # Errors
    /// One problem for each field that is wrong by itself; when all are readable, one where the point
    /// and the dip leave nothing of the pencil between them, and one where the barrel has no such face.
    ///
    /// ```
    /// use solver::{BarrelDraft, Cause, Shape, Typed};
    /// let mut draft = BarrelDraft::new("Office", Shape::Hexagonal);
    /// let barrel = draft.check().unwrap();
    /// assert!(draft.finish.check(&barrel).is_ok());
    /// draft.finish.face = Typed::Number(7.0);
    /// let problems = draft.finish.check(&barrel).unwrap_err();
    /// assert_eq!(problems[0].cause, Cause::NoSuchFace { faces: 6 });
    /// ```
    pub fn check(&self, barrel: &Barrel) -> Result<Finish, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let half_angle = Angle::degrees(read(&self.point_angle, Field::PointAngle) / 2.0);
        let coat_density = read(&self.coat_density, Field::CoatDensity);
        // The range of the field lies within usize.
        let number = read(&self.face, Field::ImprintFace) as usize;
        let mut length = |typed, field| Length::millimetres(read(typed, field));
        let dip = length(&self.dip, Field::DipLength);
        let margin = length(&self.margin, Field::ImprintMargin);
        let end_margin = length(&self.end_margin, Field::ImprintEnd);
        let fall = length(&self.fall, Field::FaceFall);
        let tin = Tin {
            width: length(&self.tin_width, Field::TinWidth),
            height: length(&self.tin_height, Field::TinHeight),
            length: length(&self.tin_length, Field::TinLength),
        };
        if !problems.is_empty() {
            return Err(problems);
        }
        let outline = barrel.finished(Angle::ZERO);
        let widest = outline.turning_distances().into_iter();
        let widest = widest
            .map(|point| Point::AXIS.distance(point))
            .fold(Length::ZERO, Length::max);
        let point = widest * slope(half_angle);
        if !(point + dip).fits_in(barrel.length()) {
            problems.push(FieldProblem {
                field: Field::PointAngle,
                cause: Cause::PointTooLong {
                    point,
                    dip,
                    length: barrel.length(),
                },
            });
        }
        let faces = Face::all(&outline, fall);
        let face = number.checked_sub(1).and_then(|at| faces.get(at));
        match face {
            Some(face) if problems.is_empty() => Ok(Finish {
                half_angle,
                coat_colour: self.coat_colour,
                coat_density,
                lead_colour: self.lead_colour,
                dip,
                dip_colour: self.dip_colour,
                imprint: self.imprint.trim().to_owned(),
                face: *face,
                margin,
                end_margin,
                tin,
            }),
            Some(_) => Err(problems),
            None => {
                problems.push(FieldProblem {
                    field: Field::ImprintFace,
                    // At most a few for each piece of an outline.
                    cause: Cause::NoSuchFace {
                        faces: faces.len() as u32,
                    },
                });
                Err(problems)
            }
        }
    }
}

impl Default for FinishDraft {
    fn default() -> Self {
        Self::new()
    }
}

/// How far along the axis a cone of half an angle φ runs for each millimetre off it: 1/tan φ.
pub(super) fn slope(half_angle: Angle) -> f64 {
    let direction = half_angle.direction();
    direction.x / direction.y
}
