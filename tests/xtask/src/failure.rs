//! Why a task stopped, and what can be done about it.

use std::fmt;

/// The end of a task: what went wrong, and a hint when there is something to try.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Failure {
    what: String,
    hint: Option<String>,
}

impl Failure {
    pub(crate) fn new(what: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            hint: None,
        }
    }

    /// Adds what the reader can do.
    pub(crate) fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = Some(hint.into());
        self
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "stopped: {}", self.what)?;
        if let Some(hint) = &self.hint {
            write!(out, "\n\n{hint}")?;
        }
        Ok(())
    }
}
