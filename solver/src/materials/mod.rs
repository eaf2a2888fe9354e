//! What a run of good pencils takes beside the slats: leads, glue, time in the clamp, coat; and the
//! chips it makes.

mod csv;
mod lead;
mod needs;
mod run;
mod stage;
#[cfg(test)]
mod tests;

pub use lead::LeadGrade;
pub(crate) use needs::chips_of_sandwich;
pub use needs::{ClampNeeds, CoatNeeds, GlueNeeds, LeadNeeds, RunNeeds, WoodNeeds, run_needs};
pub use run::{Run, RunDraft, RunProblem};
pub use stage::{Stage, StageCount, StagePiece};
