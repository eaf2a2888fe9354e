//! The fields a person fills in: what each is called, may hold, and what is wrong with it.

mod problem;
mod spec;
mod typed;

pub use problem::{Cause, FieldProblem, Place, Problem};
pub use spec::{Field, Spec};
pub use typed::Typed;
