//! Checks of the solver against the world outside, and native against wasm.
//!
//! The checks lie in `checks/`, each with its source beside it. [`trace()`] tells, bit for bit,
//! everything the solver shows for a fixed set of cases; it is compiled natively and to wasm,
//! and the two texts must be the same.

mod cases;
mod dice;
pub mod orders;
pub mod shop;
mod trace;
mod work;

pub use trace::trace;
pub use work::{KINDS, Kind, shop_of_two_stages, work};
