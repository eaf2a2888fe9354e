//! What keeps a text from being a project, in words that say where, what, and what to try.

use std::fmt;

use thiserror::Error;

/// Something in a file that does not fit.
#[derive(Clone, Debug, PartialEq)]
pub struct FileProblem {
    /// Where it stands, like `slats[2].width_mm` with members counted from 0; empty for the
    /// whole file.
    pub path: String,
    /// What is wrong there.
    pub cause: FileCause,
}

/// What is wrong at a place in a file.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FileCause {
    /// The text is larger than a project can be.
    #[error("the file has {bytes} bytes, a project has at most {most}")]
    TooLarge {
        /// Bytes of the text.
        bytes: usize,
        /// The most a file may have.
        most: usize,
    },
    /// The text is not JSON.
    #[error("the file is not JSON from line {line}, column {column}: {reason}")]
    NotJson {
        /// The line, from 1.
        line: usize,
        /// The column, from 1; 0 at the end of a line.
        column: usize,
        /// What the JSON reader says.
        reason: String,
    },
    /// The JSON is something else.
    #[error(
        "the file is not a Slatwright project: it does not begin with \"format\": \"{expected}\""
    )]
    NotAProject {
        /// The word that is missing.
        expected: &'static str,
    },
    /// The file was written by a later program.
    #[error(
        "made by a newer Slatwright, version {found} of the file; this one reads up to {newest}"
    )]
    NewerVersion {
        /// The version of the file.
        found: u64,
        /// The newest version known here.
        newest: u32,
    },
    /// A barrel is not what was sent.
    #[error("the barrel is damaged: what came is not what was sent; have it sent once more")]
    Damaged,
    /// There never was such a version.
    #[error("{found} is not a version of the file; versions count from 1 to {newest}")]
    UnknownVersion {
        /// What stands there.
        found: String,
        /// The newest version known here.
        newest: u32,
    },
    /// A field is not there.
    #[error("missing, expected {expected}")]
    Missing {
        /// What should stand there.
        expected: &'static str,
    },
    /// Something of another kind stands there.
    #[error("{found} stands here, expected {expected}")]
    OtherKind {
        /// What stands there.
        found: String,
        /// What should stand there.
        expected: &'static str,
    },
    /// The word is none of those that are known.
    #[error("\"{found}\" stands here, expected one of: {expected}")]
    UnknownWord {
        /// The word that stands there, cut when long.
        found: String,
        /// The words that are known.
        expected: String,
    },
    /// A list has too many members.
    #[error("the list has {found} entries, at most {most} can be worked with")]
    TooMany {
        /// Members of the list.
        found: usize,
        /// The most a list may have.
        most: usize,
    },
    /// A text has too many characters.
    #[error("the text has {found} characters, at most {most} are kept")]
    TooLong {
        /// Characters of the text.
        found: usize,
        /// The most a text may have.
        most: usize,
    },
    /// Two members of a list have one name.
    #[error("the id {id} stands here again, it is that of {first} already")]
    RepeatedId {
        /// The name.
        id: u32,
        /// The path of the member that has it first.
        first: String,
    },
    /// A note: there is no member of that name.
    #[error("there is no {what} with the id {id}")]
    UnknownId {
        /// The name.
        id: u32,
        /// What was looked for.
        what: &'static str,
    },
    /// A note: fields that are not known here.
    #[error("not looked at, as this Slatwright does not know it: {names}")]
    UnknownFields {
        /// The first few names, and how many more.
        names: String,
    },
}

impl FileProblem {
    /// What to try, without a full stop.
    #[must_use]
    pub const fn hint(&self) -> &'static str {
        match self.cause {
            FileCause::TooLarge { .. } | FileCause::NotAProject { .. } => {
                "choose a file that was saved by Slatwright"
            }
            FileCause::NotJson { .. } => {
                "choose another copy of the file; this one was cut off or changed"
            }
            FileCause::NewerVersion { .. } => {
                "update Slatwright: reload the page while you have a network"
            }
            FileCause::UnknownVersion { .. } => "choose another copy of the file",
            FileCause::Damaged => "have the barrel sent once more",
            FileCause::Missing { .. } => "add the field in a text editor, or choose another copy",
            FileCause::OtherKind { .. } | FileCause::UnknownWord { .. } => {
                "change it in a text editor to what is expected, or choose another copy"
            }
            FileCause::TooMany { .. } => "split the project into several files",
            FileCause::TooLong { .. } => "shorten the text in a text editor",
            FileCause::RepeatedId { .. } => "give one of the two a number that no other has",
            FileCause::UnknownId { .. } => "choose another on the page",
            FileCause::UnknownFields { .. } => {
                "nothing is lost in the file itself; a save from here leaves it out"
            }
        }
    }
}

impl fmt::Display for FileProblem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.path.is_empty() {
            write!(out, "{}", self.cause)
        } else {
            write!(out, "{}: {}", self.path, self.cause)
        }
    }
}

impl std::error::Error for FileProblem {}
