//! Barrels drawn from the definition of their outline, without the solver.

use crate::drawing::FreeDrawing;
use crate::region::{Contour, arc, inset, turned};
use proptest::prelude::*;
use solver::{Barrel, Shape, Typed};
use tests::shop;

/// A barrel by the numbers that define it, mm.
#[derive(Debug, Clone)]
pub(crate) struct Described {
    shape: Shape,
    size: f64,
    corner: f64,
    coat: f64,
    lead: f64,
    /// Faces of a polygon.
    sides: u32,
    /// Height of a flat or oval outline.
    height: f64,
    /// Radius of the faces of a triangle, where they are not flat.
    face_radius: Option<f64>,
    /// A free outline, as drawn.
    drawing: FreeDrawing,
}

impl Described {
    /// The barrel as the solver makes it, or nothing where it cannot be made: a free outline that
    /// crosses itself.
    pub(crate) fn barrel(&self) -> Option<Barrel> {
        let mut draft = shop::barrel_draft(self.shape, self.size, self.corner);
        draft.coat = Typed::Number(self.coat);
        draft.lead_diameter = Typed::Number(self.lead);
        draft.sides = Typed::Number(f64::from(self.sides));
        draft.height = Typed::Number(self.height);
        draft.face_radius = self.face_radius.map_or(Typed::empty(), Typed::Number);
        draft.path = self.drawing.path();
        let [across, up] = self.drawing.axis;
        draft.axis_across = Typed::Number(across);
        draft.axis_up = Typed::Number(up);
        match (self.shape, draft.check()) {
            (_, Ok(barrel)) => Some(barrel),
            (Shape::Free, Err(_)) => None,
            (_, Err(problems)) => panic!("{self:?}: {problems:?}"),
        }
    }

    /// The wood round its lead axis: the finished outline moved in by the coat, then turned.
    pub(crate) fn bare(&self, degrees: f64) -> Contour {
        let (size, coat) = (self.size, self.coat);
        let contour: Contour = match self.shape {
            Shape::Round => arc([0.0, 0.0], size / 2.0 - coat, 0.0, 360.0).collect(),
            Shape::Hexagonal => self.regular(6, size / 2.0),
            Shape::Polygonal => self.regular(self.sides, size / 2.0),
            // A triangle of inradius ρ is 3ρ high, less r for the rounding of its upper corner.
            Shape::Triangular => match self.face_radius {
                None => self.regular(3, (size + self.corner) / 3.0),
                Some(face) => self.bulged(face),
            },
            Shape::Oval => self.oval(),
            Shape::Flat => self.flat(),
            Shape::Free => {
                let drawn = self.drawing.fitted(size);
                if coat == 0.0 {
                    drawn
                } else {
                    // Barrels whose wood would be in several pieces are not made.
                    inset(&drawn, coat).swap_remove(0)
                }
            }
        };
        turned(&contour, degrees)
    }

    /// What is left of the corner radius under the coat.
    fn corner_under_coat(&self) -> f64 {
        (self.corner - self.coat).max(0.0)
    }

    /// A core polygon grown by a disc.
    fn regular(&self, sides: u32, inradius: f64) -> Contour {
        let corner = self.corner_under_coat();
        let half = 180.0 / f64::from(sides);
        let reach = (inradius - self.coat - corner) / libm::cos(half.to_radians());
        let round_corner = |side| {
            let middle = -90.0 + half * (2.0 * f64::from(side) + 1.0);
            let (sine, cosine) = libm::sincos(middle.to_radians());
            arc(
                [reach * cosine, reach * sine],
                corner,
                middle - half,
                middle + half,
            )
        };
        (0..sides).flat_map(round_corner).collect()
    }

    /// A core rectangle grown by a disc.
    fn flat(&self) -> Contour {
        let corner = self.corner_under_coat();
        let half = |size: f64| size / 2.0 - self.coat - corner;
        let (x, y) = (half(self.size), half(self.height));
        let centres = [[x, -y], [x, y], [-x, y], [-x, -y]];
        (0_u32..)
            .zip(centres)
            .flat_map(|(k, centre)| {
                let from = -90.0 + 90.0 * f64::from(k);
                arc(centre, corner, from, from + 90.0)
            })
            .collect()
    }

    /// An ellipse moved in along its normals, (cos φ / a, sin φ / b) at the point
    /// (a cos φ, b sin φ). This is all of it while the coat is thinner than the least radius of
    /// curvature, b² / a or a² / b.
    fn oval(&self) -> Contour {
        let (a, b) = (self.size / 2.0, self.height / 2.0);
        let tightest = (a * a / b).min(b * b / a);
        assert!(self.coat < tightest, "{} under {tightest}", self.coat);
        (0..3600)
            .map(|tenth| {
                let (sine, cosine) = libm::sincos((f64::from(tenth) / 10.0).to_radians());
                let (x, y) = (cosine / a, sine / b);
                let inwards = self.coat / (x * x + y * y).sqrt();
                [a * cosine - inwards * x, b * sine - inwards * y]
            })
            .collect()
    }

    /// What three discs have in common, grown by another disc.
    ///
    /// With faces of radius R, corners r and a coat t the discs have the radius ρ = R − max(r, t)
    /// and the other one max(r − t, 0). Each disc is centred f behind the axis; two of their
    /// circles meet at q from it, where q² + q·f + f² = ρ². Without a coat the height is
    /// R − f + q + r, which falls as f grows from 0 to R − r.
    fn bulged(&self, face: f64) -> Contour {
        let meet =
            |f: f64, radius: f64| (libm::sqrt(4.0 * radius * radius - 3.0 * f * f) - f) / 2.0;
        let core = face - self.corner;
        let height = |f: f64| face - f + meet(f, core) + self.corner;
        let (mut near, mut far) = (0.0, core);
        for _ in 0..100 {
            let middle = f64::midpoint(near, far);
            if height(middle) > self.size {
                near = middle;
            } else {
                far = middle;
            }
        }
        let behind = near;
        let radius = face - self.corner.max(self.coat);
        let corner = self.corner_under_coat();
        let reach = meet(behind, radius);
        // The half angle that a face takes of its disc: the corner lies 60° from it.
        let (sine, cosine) = libm::sincos(60.0_f64.to_radians());
        let half = libm::atan2(reach * sine, behind + reach * cosine).to_degrees();
        (0..3_u32)
            .flat_map(|k| {
                let middle = -90.0 + 120.0 * f64::from(k);
                let (sine, cosine) = libm::sincos(middle.to_radians());
                let centre = [-behind * cosine, -behind * sine];
                let (rise, run) = libm::sincos((middle + 60.0).to_radians());
                let next = [reach * run, reach * rise];
                let side = arc(centre, radius + corner, middle - half, middle + half);
                side.chain(arc(next, corner, middle + half, middle + 120.0 - half))
            })
            .collect()
    }
}

/// Any barrel of any kind; bare ones, and corners smaller than the coat, among them.
pub(crate) fn any_described() -> impl Strategy<Value = Described> {
    let shape = prop::sample::select(Shape::ALL.to_vec());
    let sizes = (5.5_f64..11.0, 0.0_f64..0.9, 1.0_f64..2.4);
    let coat = prop_oneof![1 => Just(0.0), 4 => 0.0_f64..0.2];
    let own = (3_u32..=24, 0.6_f64..1.2, prop::option::of(0.0_f64..20.0));
    (shape, sizes, coat, own, FreeDrawing::any()).prop_map(
        |(shape, (size, share, lead), coat, (sides, aspect, more), drawing)| {
            let height = size * aspect;
            let corner = share * size.min(height) / 3.0;
            Described {
                shape,
                size,
                corner,
                coat,
                lead,
                sides,
                height,
                // From constant width on.
                face_radius: more.map(|more| size - corner + more),
                drawing,
            }
        },
    )
}
