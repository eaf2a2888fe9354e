//! The surface of a sharpened pencil as triangles.

use super::moments::arc_normals;
use super::pencil::FinishedPencil;
use super::wedge::{Ring, wedges};
use crate::outline::{Outline, Segment};
use crate::quantity::{Direction, Point, lesser, norm};

/// What a triangle of the surface is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Material {
    /// Bare lead.
    Lead,
    /// Bare wood.
    Wood,
    /// Coat.
    Coat,
    /// Dip.
    Dip,
}

/// The surface of a sharpened pencil: tip at the origin, axis along z, in millimetres.
#[derive(Debug, Clone, PartialEq)]
pub struct Surface {
    /// Corners of triangles, [`Surface::STRIDE`] numbers each: place, outward normal, number of the
    /// [`Material`].
    pub corners: Vec<f32>,
    /// Three corners for each triangle, counter-clockwise as seen from outside.
    pub triangles: Vec<u32>,
    /// How far it reaches from the axis.
    pub radius: f32,
    /// How long it is.
    pub length: f32,
}

/// A point of an outline with its outward normal.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sample {
    pub(super) place: Point,
    normal: Direction,
}

/// An arc is parted into turns of no more than this, radians, and its chords lie no farther inside it
/// than this, mm.
const STEP: f64 = 0.05;
const SAGITTA: f64 = 0.000_5;

/// A side is parted into pieces of no more than this share of the girth, so that the paint edge bends.
const SHARE: f64 = 1.0 / 120.0;

impl Surface {
    /// Numbers of a corner: three of its place, three of its normal, one of its material.
    pub const STRIDE: usize = 7;
}

impl FinishedPencil {
    /// Its surface: the cones of lead and wood, the coat from the paint edge to the dip, the dip, and
    /// the flat end.
    ///
    /// The cone is the cross-section lifted by r/tan φ, in wedges about the axis between rays through
    /// every point that the outlines are sampled at; where an outline has hollows, a ray leaves and
    /// enters it several times. Sides of the barrel are upright strips with the normals of the outline.
    ///
    /// ```
    /// use solver::{BarrelDraft, FinishedPencil, Shape, Surface};
    /// let draft = BarrelDraft::new("Office", Shape::Hexagonal);
    /// let barrel = draft.check().unwrap();
    /// let finish = draft.finish.check(&barrel).unwrap();
    /// let surface = FinishedPencil::new(barrel, finish, 0.41, 1.98).surface();
    /// assert_eq!(surface.corners.len() % Surface::STRIDE, 0);
    /// assert_eq!(surface.length, 175.0);
    /// ```
    #[must_use]
    pub fn surface(&self) -> Surface {
        let length = self.barrel().length().in_millimetres();
        let dip = self.dip().in_millimetres();
        let girth = self.finished().perimeter().in_millimetres();
        let finished = sampled(self.finished(), girth);
        let bare = sampled(self.bare(), girth);
        let farthest = finished
            .iter()
            .flatten()
            .map(|sample| norm(sample.place.x, sample.place.y));
        let mut built = Builder {
            corners: Vec::new(),
            triangles: Vec::new(),
        };
        let (slope, end) = (self.slope(), length - dip);
        for strip in &finished {
            built.side(strip, &|r| r * slope, &|_| end, Material::Coat);
            if dip > 0.0 {
                built.side(strip, &|_| end, &|_| length, Material::Dip);
            }
        }
        let lead = self.lead_radius().in_millimetres();
        let size = norm(slope, 1.0);
        let cone = |ray: Direction| [ray.x * slope / size, ray.y * slope / size, -1.0 / size];
        for wedge in wedges(&finished, &bare) {
            let (from, to) = (wedge.from, wedge.to);
            for ring in wedge.rings(lead) {
                built.ring(&ring, (from, to), &|r| r * slope, &cone, false);
                let material = if dip > 0.0 {
                    Material::Dip
                } else {
                    ring.material
                };
                let flat = Ring { material, ..ring };
                built.ring(&flat, (from, to), &|_| length, &|_| [0.0, 0.0, 1.0], true);
            }
        }
        Surface {
            corners: built.corners,
            triangles: built.triangles,
            radius: farthest.fold(0.0, f64::max) as f32,
            length: length as f32,
        }
    }
}

/// Points of an outline, piece by piece, both ends of each.
pub(super) fn sampled(outline: &Outline, girth: f64) -> Vec<Vec<Sample>> {
    let strip = |segment: &Segment| match segment {
        Segment::Line(line) => {
            let length = line.from.distance(line.to).in_millimetres();
            let pieces = (length / (girth * SHARE)).ceil().clamp(1.0, 1000.0) as u32;
            let along = line.normal.quarter_turn();
            (0..=pieces)
                .map(|k| Sample {
                    place: line
                        .from
                        .towards(along, length * f64::from(k) / f64::from(pieces)),
                    normal: line.normal,
                })
                .collect()
        }
        // The sagitta of a chord that turns by θ is R·θ²/8 but for less than a thousandth of it.
        Segment::Arc(arc) => {
            arc_normals(arc, lesser(STEP, (8.0 * SAGITTA / arc.radius.abs()).sqrt()))
                .map(|outwards| Sample {
                    place: arc.centre.towards(outwards, arc.radius),
                    normal: outwards,
                })
                .collect()
        }
    };
    outline.segments().iter().map(strip).collect()
}

struct Builder {
    corners: Vec<f32>,
    triangles: Vec<u32>,
}

impl Builder {
    fn corner(&mut self, (x, y, z): (f64, f64, f64), normal: [f64; 3], material: Material) -> u32 {
        let number = self.corners.len() / Surface::STRIDE;
        let [across, up, along] = normal;
        self.corners
            .extend([x, y, z, across, up, along].map(|value| value as f32));
        self.corners.push(f32::from(material as u8));
        // Far fewer corners than numbers of u32.
        number as u32
    }

    /// An upright strip of the side, between two heights that may depend on the distance from the axis.
    fn side(
        &mut self,
        strip: &[Sample],
        from: &dyn Fn(f64) -> f64,
        to: &dyn Fn(f64) -> f64,
        material: Material,
    ) {
        let mut last: Option<[u32; 2]> = None;
        for Sample { place, normal } in strip {
            let r = norm(place.x, place.y);
            let outwards = [normal.x, normal.y, 0.0];
            let next =
                [from(r), to(r)].map(|z| self.corner((place.x, place.y, z), outwards, material));
            if let Some([low, high]) = last {
                self.triangles
                    .extend([low, next[0], next[1], low, next[1], high]);
            }
            last = Some(next);
        }
    }

    /// A ring between two rays, lifted to a height that may depend on the distance from the axis.
    fn ring(
        &mut self,
        ring: &Ring,
        (from, to): (Direction, Direction),
        height: &dyn Fn(f64) -> f64,
        normal: &dyn Fn(Direction) -> [f64; 3],
        is_end: bool,
    ) {
        let mut corner = |ray: Direction, r: f64| {
            self.corner(
                (ray.x * r, ray.y * r, height(r)),
                normal(ray),
                ring.material,
            )
        };
        let [one, two] = [corner(from, ring.inner.0), corner(from, ring.outer.0)];
        let [three, four] = [corner(to, ring.outer.1), corner(to, ring.inner.1)];
        // Seen from the tip the rays turn clockwise, seen from the end counter-clockwise.
        let mut triangle = |corners: [u32; 3]| {
            let [one, two, three] = corners;
            self.triangles.extend(if is_end {
                [one, two, three]
            } else {
                [one, three, two]
            });
        };
        triangle([one, two, three]);
        if ring.inner != (0.0, 0.0) {
            triangle([one, three, four]);
        }
    }
}
