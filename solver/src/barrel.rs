//! A pencil: its outline over and under the coat, its length and its lead.

use crate::field::{Cause, Field, FieldProblem, Typed};
use crate::outline::Outline;
use crate::quantity::{Angle, Length};
use crate::seam::Seam;

/// The kind of outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Shape {
    /// A circle.
    Round,
    /// Six equal faces.
    Hexagonal,
    /// Three equal faces.
    Triangular,
}

impl Shape {
    /// Every kind.
    pub const ALL: [Self; 3] = [Self::Round, Self::Hexagonal, Self::Triangular];

    /// The word for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Round => "Round",
            Self::Hexagonal => "Hexagonal",
            Self::Triangular => "Triangular",
        }
    }

    /// The size that a caliper reads and that defines the outline.
    #[must_use]
    pub const fn size_field(self) -> Field {
        match self {
            Self::Round => Field::Diameter,
            Self::Hexagonal => Field::AcrossFlats,
            Self::Triangular => Field::Height,
        }
    }

    /// The ways in common use to lay it on the glue plane.
    #[must_use]
    pub const fn seams(self) -> &'static [Seam] {
        match self {
            Self::Round => &[Seam::AnyWay],
            Self::Hexagonal => &[Seam::ThroughCorners, Seam::ThroughFaces],
            Self::Triangular => &[Seam::BaseDown, Seam::BaseUp, Seam::PointSideways],
        }
    }

    /// Whether it has corners that can be rounded.
    #[must_use]
    pub const fn has_corners(self) -> bool {
        !matches!(self, Self::Round)
    }

    /// Whether its defining size is a diameter.
    #[must_use]
    pub const fn size_is_diameter(self) -> bool {
        matches!(self, Self::Round)
    }

    /// Distance from the axis to a face, from the finished size and corner radius.
    ///
    /// A triangle of inradius ρ reaches 3ρ from a face to the sharp corner opposite; rounding
    /// with radius r takes r off that (derived: the corner's centre lies 2r below its tip).
    fn inradius(self, size: Length, corner: Length) -> Length {
        match self {
            Self::Round | Self::Hexagonal => size / 2.0,
            Self::Triangular => (size + corner) / 3.0,
        }
    }

    /// The largest corner radius that an outline of this size can have: that of the circle.
    fn most_corner(self, size: Length) -> Length {
        size / 2.0
    }

    fn outline(self, inradius: Length, corner: Length, turn: Angle) -> Outline {
        match self {
            Self::Round => Outline::round(inradius),
            Self::Hexagonal => Outline::regular(6, inradius, corner, turn),
            Self::Triangular => Outline::regular(3, inradius, corner, turn),
        }
    }
}

/// A barrel as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct BarrelDraft {
    /// What it is called.
    pub name: String,
    /// The kind of outline.
    pub shape: Shape,
    /// Finished diameter, distance across flats, inscribed diameter, height, or width.
    pub size: Typed,
    /// Sides of a polygon.
    pub sides: Typed,
    /// Finished height of an outline that is given by width and height.
    pub height: Typed,
    /// Finished radius of bulging faces; empty where they are flat.
    pub face_radius: Typed,
    /// Finished radius of the corners.
    pub corner_radius: Typed,
    /// The outline that was drawn, as the data of an SVG path; empty where none was.
    pub path: String,
    /// Lead axis to the right of the centre of area of an outline that was drawn.
    pub axis_across: Typed,
    /// Lead axis above the centre of area of an outline that was drawn.
    pub axis_up: Typed,
    /// Coat build per side.
    pub coat: Typed,
    /// Length of the pencil.
    pub length: Typed,
    /// Diameter of the lead.
    pub lead_diameter: Typed,
}

/// A barrel that can be made.
///
/// Invariant: the corner radius fits the outline, the coat leaves wood, and the lead is
/// narrower than the wood.
#[derive(Debug, Clone, PartialEq)]
pub struct Barrel {
    name: String,
    shape: Shape,
    size: Length,
    corner_radius: Length,
    coat: Length,
    length: Length,
    lead_diameter: Length,
}

impl BarrelDraft {
    /// A new barrel of a kind, with the first value in every field, flat faces, and nothing drawn.
    #[must_use]
    pub fn new(name: &str, shape: Shape) -> Self {
        Self {
            name: name.to_owned(),
            shape,
            size: Typed::initial(shape.size_field()),
            sides: Typed::initial(Field::Sides),
            height: Typed::initial(Field::BarrelHeight),
            face_radius: Typed::empty(),
            corner_radius: Typed::initial(Field::CornerRadius),
            path: String::new(),
            axis_across: Typed::initial(Field::AxisAcross),
            axis_up: Typed::initial(Field::AxisUp),
            coat: Typed::initial(Field::Coat),
            length: Typed::initial(Field::PencilLength),
            lead_diameter: Typed::initial(Field::LeadDiameter),
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
        let mut read = |typed: &Typed, field| match typed.read(field) {
            Ok(number) => Length::millimetres(number),
            Err(problem) => {
                problems.push(problem);
                Length::ZERO
            }
        };
        let size = read(&self.size, self.shape.size_field());
        // A circle has no corners: what stands there is kept for when the shape changes back.
        let corner_radius = match self.shape {
            Shape::Round => Length::ZERO,
            _ => read(&self.corner_radius, Field::CornerRadius),
        };
        let coat = read(&self.coat, Field::Coat);
        let length = read(&self.length, Field::PencilLength);
        let lead_diameter = read(&self.lead_diameter, Field::LeadDiameter);
        if !problems.is_empty() {
            return Err(problems);
        }
        let barrel = Barrel {
            name: self.name.clone(),
            shape: self.shape,
            size,
            corner_radius,
            coat,
            length,
            lead_diameter,
        };
        let problems = barrel.clashes();
        if problems.is_empty() {
            Ok(barrel)
        } else {
            Err(problems)
        }
    }
}

impl Barrel {
    /// The rules that its sizes break together.
    fn clashes(&self) -> Vec<FieldProblem> {
        let mut problems = Vec::new();
        let most = self.shape.most_corner(self.size);
        if !self.corner_radius.fits_in(most) {
            let cause = Cause::CornerTooLarge {
                corner: self.corner_radius,
                most,
            };
            problems.push(FieldProblem {
                field: Field::CornerRadius,
                cause,
            });
        }
        let inradius = self.shape.inradius(self.size, self.corner_radius);
        if inradius.fits_in(self.coat) {
            let cause = Cause::CoatTooThick {
                coat: self.coat,
                inradius,
            };
            problems.push(FieldProblem {
                field: Field::Coat,
                cause,
            });
        }
        let wood = (inradius - self.coat) * 2.0;
        if wood.fits_in(self.lead_diameter) {
            let cause = Cause::LeadTooWide {
                lead: self.lead_diameter,
                wood: wood.max(Length::ZERO),
            };
            problems.push(FieldProblem {
                field: Field::LeadDiameter,
                cause,
            });
        }
        problems
    }

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

    /// Finished diameter, distance across flats, or height.
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

    /// The outline over the coat, turned about the lead axis.
    #[must_use]
    pub fn finished(&self, turn: Angle) -> Outline {
        let inradius = self.shape.inradius(self.size, self.corner_radius);
        self.shape
            .outline(inradius, self.corner_radius.min(inradius), turn)
    }

    /// The outline of the wood, turned about the lead axis: the finished one moved inwards by
    /// the coat. A corner radius shrinks by the coat, not below zero.
    #[must_use]
    pub fn bare(&self, turn: Angle) -> Outline {
        let inradius = self.shape.inradius(self.size, self.corner_radius) - self.coat;
        let corner = (self.corner_radius - self.coat).max(Length::ZERO);
        self.shape.outline(inradius, corner.min(inradius), turn)
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
