//! What can be asked on the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use solver::LengthUnit;

use crate::ending;

/// Reads a Slatwright project file and answers about it: grooves, wood, the best layout.
#[derive(Debug, Parser)]
#[command(name = "slatwright", version, after_help = ending::TOLD)]
pub(crate) struct Arguments {
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// A question.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Tell everything that is wrong with the file, and what is worth knowing
    #[command(after_help = ending::TOLD)]
    Check(Asked),
    /// Lay the barrel on its slats: grooves, checks with their margins, where the wood goes
    #[command(after_help = ending::TOLD)]
    Layout(Asked),
    /// Find the best layouts of the barrel over all slat stocks and cutter sets
    #[command(after_help = ending::TOLD)]
    Search(Asked),
    /// List the nearest sizes at which the number of pencils or a check of the layout changes
    #[command(after_help = ending::TOLD)]
    Thresholds(Asked),
    /// Print the JSON Schema of the project file, or of what a command prints as JSON
    Schema {
        /// The command; the project file when left out
        #[arg(value_name = "COMMAND")]
        of: Option<Described>,
    },
}

/// Of which file, and how it is answered.
#[derive(Debug, Args)]
pub(crate) struct Asked {
    /// The project file; - for standard input
    pub(crate) file: PathBuf,
    /// How the answer is written
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub(crate) format: Format,
    /// The unit of lengths in a text; JSON is always in millimetres
    #[arg(long, value_enum, default_value_t = Unit::Mm)]
    pub(crate) unit: Unit,
}

/// How an answer is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// For eyes
    Text,
    /// For programs
    Json,
}

/// A unit of lengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Unit {
    /// Millimetres
    Mm,
    /// Inches
    In,
}

/// A command whose JSON is described by a schema.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Described {
    /// What check prints, and every other command on a file with problems
    Check,
    /// What layout prints
    Layout,
    /// What search prints
    Search,
    /// What thresholds prints
    Thresholds,
}

impl From<Unit> for LengthUnit {
    fn from(unit: Unit) -> Self {
        match unit {
            Unit::Mm => Self::Millimetre,
            Unit::In => Self::Inch,
        }
    }
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::*;

    #[test]
    fn the_arguments_do_not_contradict_each_other() {
        Arguments::command().debug_assert();
    }
}
