//! A pencil: its outline over and under the coat, its length and its lead.

mod form;
mod handle;
mod sketch;

pub use handle::SizeHandle;

use crate::field::{Cause, Field, FieldProblem, Typed};
use crate::finish::FinishDraft;
use crate::outline::{Bulged, Outline};
use crate::quantity::{Angle, Length};
use crate::seam::Seam;
use crate::shape::Shape;
use form::Form;

/// A barrel as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct BarrelDraft {
    /// What it is called.
    pub name: String,
    /// The kind of outline.
    pub shape: Shape,
    /// Finished size that defines the outline: diameter, distance across flats, height or width.
    pub size: Typed,
    /// Finished radius of the corners.
    pub corner_radius: Typed,
    /// Number of faces of a polygon.
    pub sides: Typed,
    /// Finished height of a flat or oval outline.
    pub height: Typed,
    /// Finished radius of the faces of a triangle; empty for flat faces.
    pub face_radius: Typed,
    /// SVG path data of a free outline.
    pub path: String,
    /// Lead axis to the right of the centre of area of a free outline.
    pub axis_across: Typed,
    /// Lead axis above the centre of area of a free outline.
    pub axis_up: Typed,
    /// Coat build per side.
    pub coat: Typed,
    /// Length of the pencil.
    pub length: Typed,
    /// Diameter of the lead.
    pub lead_diameter: Typed,
    /// What the finished pencil is beyond the barrel.
    pub finish: FinishDraft,
}

/// A barrel that can be made.
///
/// Invariant: the outline is one closed curve round the axis, the corner radius fits in it, the
/// coat leaves wood in one piece, and the lead is narrower than the wood.
#[derive(Debug, Clone, PartialEq)]
pub struct Barrel {
    name: String,
    shape: Shape,
    size: Length,
    corner_radius: Length,
    sides: u32,
    coat: Length,
    length: Length,
    lead_diameter: Length,
    finished: Form,
    bare: Form,
}

impl BarrelDraft {
    /// A new barrel of a kind, with the first value in every field.
    #[must_use]
    pub fn new(name: &str, shape: Shape) -> Self {
        Self {
            name: name.to_owned(),
            shape,
            size: Typed::initial(shape.size_field()),
            corner_radius: Typed::initial(Field::CornerRadius),
            sides: Typed::initial(Field::Sides),
            height: Typed::initial(Field::BarrelHeight),
            face_radius: Typed::empty(),
            path: String::new(),
            axis_across: Typed::initial(Field::AxisAcross),
            axis_up: Typed::initial(Field::AxisUp),
            coat: Typed::initial(Field::Coat),
            length: Typed::initial(Field::PencilLength),
            lead_diameter: Typed::initial(Field::LeadDiameter),
            finish: FinishDraft::new(),
        }
    }

    /// The barrel, or every rule it breaks.
    ///
    /// # Errors
    /// One problem for each field that is wrong by itself; when all are readable, one for
    /// each that does not go with the others.
    ///
    /// ```
    /// use solver::{BarrelDraft, Shape, Typed};
    /// let mut draft = BarrelDraft::new("Office", Shape::Hexagonal);
    /// assert!(draft.check().is_ok());
    /// draft.corner_radius = Typed::Number(5.0);
    /// draft.lead_diameter = Typed::Number(9.0);
    /// assert_eq!(draft.check().unwrap_err().len(), 2);
    /// ```
    pub fn check(&self) -> Result<Barrel, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let mut length = |typed, field| Length::millimetres(read(typed, field));
        // What a kind does not ask for is kept for when the shape changes back.
        let size = length(&self.size, self.shape.size_field());
        let corner_radius = if self.shape.has_corners() {
            length(&self.corner_radius, Field::CornerRadius)
        } else {
            Length::ZERO
        };
        let height = match self.shape {
            Shape::Oval | Shape::Flat => length(&self.height, Field::BarrelHeight),
            _ => size,
        };
        let (across, up) = match self.shape {
            Shape::Free => (
                length(&self.axis_across, Field::AxisAcross),
                length(&self.axis_up, Field::AxisUp),
            ),
            _ => (Length::ZERO, Length::ZERO),
        };
        let coat = length(&self.coat, Field::Coat);
        let pencil_length = length(&self.length, Field::PencilLength);
        let lead_diameter = length(&self.lead_diameter, Field::LeadDiameter);
        let sides = match self.shape {
            Shape::Hexagonal => 6,
            Shape::Triangular => 3,
            // The range of the field lies within u32.
            Shape::Polygonal => read(&self.sides, Field::Sides) as u32,
            _ => 1,
        };
        let face_radius = match self.shape {
            Shape::Triangular => self
                .face_radius
                .read_optional(Field::FaceRadius)
                .unwrap_or_else(|problem| {
                    problems.push(problem);
                    None
                })
                .map(Length::millimetres),
            _ => None,
        };
        if !problems.is_empty() {
            return Err(problems);
        }
        let mut refuse = |field, cause| problems.push(FieldProblem { field, cause });
        // A radius that is too large is told, and the rest is checked with one that fits.
        let most = size.min(height) / 2.0;
        if !corner_radius.fits_in(most) {
            let corner = corner_radius;
            refuse(Field::CornerRadius, Cause::CornerTooLarge { corner, most });
        }
        let corner = corner_radius.min(most);
        let finished = match self.shape {
            Shape::Round => Form::Round(size / 2.0),
            Shape::Hexagonal | Shape::Polygonal => Form::regular(sides, size / 2.0, corner),
            Shape::Triangular => match face_radius {
                // A triangle of inradius ρ reaches 3ρ from a face to the sharp corner opposite;
                // rounding with radius r takes r off that, as the corner's centre lies 2r below its tip.
                None => Form::regular(3, (size + corner) / 3.0, corner),
                Some(face) => {
                    let least = size - corner;
                    if !least.fits_in(face) {
                        refuse(Field::FaceRadius, Cause::FaceTooRound { face, least });
                    }
                    Form::Bulged(Bulged::new(size, corner, face.max(least)))
                }
            },
            Shape::Oval => Form::Drawn(Outline::oval(size, height)),
            Shape::Flat => Form::Drawn(Outline::flat(size, height, corner)),
            Shape::Free => match Outline::from_path(&self.path, size, across, up) {
                Ok(outline) => Form::Drawn(outline),
                Err(problem) => {
                    refuse(Field::Path, Cause::Path(problem));
                    return Err(problems);
                }
            },
        };
        let inradius = finished.inradius();
        let bare = (!inradius.fits_in(coat))
            .then(|| finished.inset(coat))
            .flatten();
        match &bare {
            None if inradius.fits_in(coat) => {
                refuse(Field::Coat, Cause::CoatTooThick { coat, inradius });
            }
            None => refuse(Field::Coat, Cause::CoatSplits { coat }),
            Some(_) => {}
        }
        let wood = bare.as_ref().map_or(Length::ZERO, Form::inradius) * 2.0;
        if wood.fits_in(lead_diameter) {
            let lead = lead_diameter;
            refuse(Field::LeadDiameter, Cause::LeadTooWide { lead, wood });
        }
        match bare {
            Some(bare) if problems.is_empty() => Ok(Barrel {
                name: self.name.clone(),
                shape: self.shape,
                size,
                corner_radius,
                sides,
                coat,
                length: pencil_length,
                lead_diameter,
                finished,
                bare,
            }),
            _ => Err(problems),
        }
    }
}

impl Barrel {
    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The kind of outline.
    #[must_use]
    pub const fn shape(&self) -> Shape {
        self.shape
    }

    /// Finished size that defines the outline: diameter, distance across flats, height or width.
    #[must_use]
    pub const fn size(&self) -> Length {
        self.size
    }

    /// Finished radius of the corners; nothing for a round barrel.
    #[must_use]
    pub const fn corner_radius(&self) -> Length {
        self.corner_radius
    }

    /// Coat build per side.
    #[must_use]
    pub const fn coat(&self) -> Length {
        self.coat
    }

    /// Length of the pencil.
    #[must_use]
    pub const fn length(&self) -> Length {
        self.length
    }

    /// Diameter of the lead.
    #[must_use]
    pub const fn lead_diameter(&self) -> Length {
        self.lead_diameter
    }

    /// The turn that lays it a usual way, from standing on a face or as drawn.
    #[must_use]
    pub fn turn(&self, seam: Seam) -> Angle {
        seam.turn(self.sides)
    }

    /// The turns of the usual ways, in the order of [`Shape::seams`].
    #[must_use]
    pub fn usual_turns(&self) -> Vec<Angle> {
        let seams = self.shape.seams().iter();
        seams.map(|&seam| self.turn(seam)).collect()
    }

    /// The least turn that leaves it as it was; nothing for a circle, which any turn leaves so.
    #[must_use]
    pub fn period(&self) -> Angle {
        Angle::degrees(match self.shape {
            Shape::Round => 0.0,
            Shape::Hexagonal | Shape::Triangular | Shape::Polygonal => {
                360.0 / f64::from(self.sides)
            }
            Shape::Oval | Shape::Flat => 180.0,
            Shape::Free => 360.0,
        })
    }

    /// The outline over the coat, turned about the lead axis.
    #[must_use]
    pub fn finished(&self, turn: Angle) -> Outline {
        self.finished.outline(turn)
    }

    /// The outline of the wood, turned about the lead axis: the finished one moved inwards by
    /// the coat. A corner radius shrinks by the coat, not below zero.
    #[must_use]
    pub fn bare(&self, turn: Angle) -> Outline {
        self.bare.outline(turn)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn barrel(
        shape: Shape,
        size: f64,
        corner: f64,
        coat: f64,
    ) -> Result<Barrel, Vec<FieldProblem>> {
        let mut draft = BarrelDraft::new("", shape);
        draft.size = Typed::Number(size);
        draft.corner_radius = Typed::Number(corner);
        draft.coat = Typed::Number(coat);
        draft.check()
    }

    fn fields(result: Result<Barrel, Vec<FieldProblem>>) -> Vec<Field> {
        result
            .unwrap_err()
            .into_iter()
            .map(|problem| problem.field)
            .collect()
    }

    #[test]
    fn a_triangle_is_as_high_as_a_caliper_reads() {
        let triangle = barrel(Shape::Triangular, 7.6, 1.2, 0.0).unwrap();
        let height = triangle
            .finished(Angle::ZERO)
            .extents()
            .height()
            .in_millimetres();
        assert!((height - 7.6).abs() < 1e-12, "{height}");
    }

    #[test]
    fn the_coat_comes_off_every_side() {
        let bare = barrel(Shape::Hexagonal, 7.0, 0.5, 0.08)
            .unwrap()
            .bare(Angle::ZERO)
            .extents();
        assert!((bare.height().in_millimetres() - 6.84).abs() < 1e-12);
    }

    #[test]
    fn a_corner_smaller_than_the_coat_is_sharp_in_the_wood() {
        let bare = barrel(Shape::Hexagonal, 7.0, 0.05, 0.08)
            .unwrap()
            .bare(Angle::ZERO);
        let across_corners = bare.extents().width().in_millimetres();
        assert!((across_corners - 6.84 * 2.0 / 3.0_f64.sqrt()).abs() < 1e-12);
    }

    #[test]
    fn a_corner_as_large_as_the_outline_allows_is_fine_and_a_hair_more_is_not() {
        assert!(barrel(Shape::Hexagonal, 7.0, 3.5, 0.08).is_ok());
        assert_eq!(
            fields(barrel(Shape::Hexagonal, 7.0, 3.501, 0.08)),
            [Field::CornerRadius]
        );
        assert!(barrel(Shape::Triangular, 7.6, 3.8, 0.08).is_ok());
        assert_eq!(
            fields(barrel(Shape::Triangular, 7.6, 3.801, 0.08)),
            [Field::CornerRadius]
        );
    }

    #[test]
    fn a_round_barrel_asks_for_no_corner_radius() {
        let mut draft = BarrelDraft::new("", Shape::Round);
        draft.corner_radius = Typed::Text("later".into());
        assert!(draft.check().is_ok());
    }

    #[test]
    fn every_unreadable_field_is_reported() {
        let mut draft = BarrelDraft::new("", Shape::Hexagonal);
        for typed in [
            &mut draft.size,
            &mut draft.corner_radius,
            &mut draft.coat,
            &mut draft.length,
        ] {
            *typed = Typed::Number(f64::NAN);
        }
        draft.lead_diameter = Typed::empty();
        assert_eq!(draft.check().unwrap_err().len(), 5);
    }
}
