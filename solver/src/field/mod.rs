//! The fields a person fills in: what each is called, may hold, and what is wrong with it.

mod list;
mod problem;
mod spec;
mod typed;

pub use list::Field;
pub use problem::{Cause, FieldProblem, Place, Problem};
pub use spec::Spec;
pub use typed::Typed;
