//! What every answer can do: be written for eyes, be written for programs, and end the run.

use solver::LengthUnit;

use crate::arguments::Format;
use crate::ending::Ending;

/// An answer to a question.
pub(crate) trait Answer {
    /// For eyes, with lengths in a unit.
    fn text(&self, unit: LengthUnit) -> String;

    /// For programs: one JSON document.
    fn json(&self) -> String;

    /// How the run ends with it.
    fn ending(&self) -> Ending;
}

/// The answer as it was asked for.
pub(crate) fn printed(answer: &dyn Answer, format: Format, unit: LengthUnit) -> String {
    match format {
        Format::Text => answer.text(unit),
        Format::Json => answer.json(),
    }
}
