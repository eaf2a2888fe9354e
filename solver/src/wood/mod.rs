//! The wood of the slats: its species, and how it moves with the moisture in it.

mod conditions;
mod density;
mod equilibrium;
mod movement;
mod sawing;
mod species;

pub use conditions::{Conditions, ConditionsDraft, MoistureSource};
pub use density::density;
pub use equilibrium::equilibrium_moisture;
pub(crate) use movement::Movement;
pub use movement::change;
pub use sawing::Sawing;
pub use species::{Species, SpeciesDraft};
