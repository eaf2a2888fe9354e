//! Lengths, areas, volumes and angles: the quantity is the type, the unit is named at the edge.
//!
//! A number enters and leaves through a function that names its unit; in between,
//! only operations that mean something compile (a length times a length is an area,
//! an area plus a length is nothing).

mod angle;
mod number;
mod point;
mod scalar;

pub use angle::Angle;
pub(crate) use number::{greater, lesser, norm};
pub use point::{Direction, Point};
pub use scalar::{Area, Length, Volume};
