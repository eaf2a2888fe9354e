//! How a run ends, told to the shell by a number.

use std::io::{Error, ErrorKind};
use std::process::ExitCode;

/// How a run ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Ending {
    /// The question was answered.
    Fine = 0,
    /// The file has problems, and all of them were told.
    Problems = 1,
    /// The command was called wrongly.
    WrongUse = 2,
    /// The file could not be read, or the answer could not be written.
    Unread = 3,
    /// The answer is that no pencil can be laid, no knife can be made, that blanks are missing, or that
    /// no plan was found.
    NothingFits = 4,
}

/// The numbers, as the help tells them.
pub(crate) const TOLD: &str = "\
Exit codes:
  0  the question was answered
  1  the file has problems; all of them are told, each with its place in the file
  2  the command was called wrongly
  3  the file cannot be read, or the answer cannot be written
  4  layout, search, tolerances and setting: no pencil can be laid, or no knife be made; timber:
     blanks are missing; orders: no plan was found; the answer says why";

impl Ending {
    /// The ending when an answer was not written whole. A reader that closed the pipe has what it
    /// wanted.
    pub(crate) fn unless_unwritten(self, error: &Error) -> Self {
        if error.kind() == ErrorKind::BrokenPipe {
            self
        } else {
            Self::Unread
        }
    }
}

impl From<Ending> for ExitCode {
    fn from(ending: Ending) -> Self {
        Self::from(ending as u8)
    }
}
