//! What every answer can do: be written for eyes, be written for programs, and end the run.

use solver::LengthUnit;

use crate::arguments::{Asked, Format};
use crate::ending::Ending;

/// An answer to a question about a project.
pub(crate) trait Answer {
    /// For eyes, with lengths in a unit.
    fn text(&self, unit: LengthUnit) -> String;

    /// For programs: one JSON document.
    fn json(&self) -> String;

    /// How the run ends with it.
    fn ending(&self) -> Ending;
}

/// The answer as it was asked for.
pub(crate) fn printed(answer: &dyn Answer, asked: &Asked) -> String {
    match asked.format {
        Format::Text => answer.text(asked.unit.into()),
        Format::Json => answer.json(),
    }
}
