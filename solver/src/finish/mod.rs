//! The finished pencil: sharpened, coated, dipped, imprinted and laid in a tin.
//!
//! The tip lies at z = 0 on the lead axis and the other end at z = L. A sharpener of the angle 2φ
//! leaves what lies behind a cone: a point of the cross-section at the distance r from the axis is
//! wood, lead or coat from z = r/tan φ on. So whatever is asked of a sharpened pencil is an integral
//! over its cross-section, and the paint edge is the outline lifted by r/tan φ, whatever its shape.

mod body;
mod colour;
mod draft;
mod face;
mod fact;
mod facts;
mod moments;
mod pencil;
mod profile;
mod rest;
mod surface;
#[cfg(test)]
mod tests;
mod tin;
mod viewpoint;
mod wedge;

pub use body::{Body, Mass};
pub use colour::Colour;
pub use draft::{Finish, FinishDraft};
pub use face::Face;
pub use fact::{Fact, FactQuantity};
pub use facts::PencilFacts;
pub use pencil::{Densities, FinishedPencil, Imprint};
pub(crate) use profile::Profile;
pub use surface::{Material, Surface};
pub use tin::{Tin, TinRows};
pub use viewpoint::{Sight, Viewpoint};
