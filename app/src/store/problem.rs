//! What can go wrong when the project is stored or read back, in words for the shop.

use thiserror::Error;

/// Why the stored project could not be opened, read or written.
///
/// Nothing typed is lost by any of these: the project stays in the page's memory.
/// [`StoreProblem::hint`] says what to try.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum StoreProblem {
    /// The disk is full, or the browser's share of it.
    #[error("there is no room left in this browser to store the project")]
    Full,
    /// The browser stores nothing for this page.
    #[error("this browser stores nothing for this page, as in a private window")]
    Unavailable,
    /// Another tab holds the store open and does not let go.
    #[error("another tab keeps the stored project locked")]
    Blocked,
    /// The browser dropped the connection, and again after it was opened anew.
    #[error("the browser lost its connection to the stored project, twice in a row")]
    ConnectionLost,
    /// The browser gave up the step and undid it.
    #[error("the browser broke off before the work on the stored project was done")]
    Aborted,
    /// No stored copy of the project is whole.
    #[error("no stored copy of the project is whole")]
    Damaged,
    /// After a save the store held something else.
    #[error("the project read back after saving is not the one that was saved")]
    ReadBackDiffers,
    /// The browser did not answer in time.
    #[error("the browser did not answer within {seconds} s")]
    NoAnswer {
        /// How long the page waited, in seconds.
        seconds: u32,
    },
    /// A newer version of this page has taken over the store, so this tab no longer writes.
    #[error("a newer version of this page now looks after the stored project")]
    NewerVersion,
    /// Anything else the browser reports, in its own words.
    #[error("the browser refused with {name}: {message}")]
    Unexpected {
        /// The name of the browser's exception.
        name: String,
        /// The text of the browser's exception.
        message: String,
    },
}

/// The step during which the browser reported an exception; some names mean different things.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StoreStep {
    /// Opening the database.
    Open,
    /// Reading the stored copies.
    Read,
    /// Writing a copy.
    Write,
}

impl StoreProblem {
    /// What the user can try.
    ///
    /// ```
    /// # use app::store::StoreProblem;
    /// assert!(StoreProblem::Full.hint().starts_with("save the project as a file"));
    /// ```
    pub fn hint(&self) -> &'static str {
        match self {
            Self::Full => {
                "save the project as a file, then free some disk space or clear the data of other sites"
            }
            Self::Unavailable => {
                "save the project as a file before you close the page, or open the page in an ordinary window"
            }
            Self::Blocked => "close the other tabs of this page, then save again",
            Self::ConnectionLost => "save the project as a file, then reload the page",
            Self::Aborted => "save again; if that fails too, save the project as a file",
            Self::Damaged => "open your last backup file",
            Self::ReadBackDiffers => "save the project as a file, then save again",
            Self::NoAnswer { .. } => "save again; if that fails too, save the project as a file",
            Self::NewerVersion => {
                "save the project as a file if you changed it here, then reload this tab"
            }
            Self::Unexpected { .. } => "save the project as a file, then reload the page",
        }
    }

    /// Whether opening the database anew may cure it.
    pub(crate) fn is_cured_by_reopening(&self) -> bool {
        *self == Self::ConnectionLost
    }

    /// Sorts an exception by its `name`, and by its `message` where engines share a name.
    ///
    /// ```
    /// # use app::store::{StoreProblem, StoreStep};
    /// let full = StoreProblem::from_exception(StoreStep::Write, "QuotaExceededError", "");
    /// assert_eq!(full, StoreProblem::Full);
    /// ```
    pub fn from_exception(step: StoreStep, name: &str, message: &str) -> Self {
        let words = message.to_lowercase();
        let says = |parts: &[&str]| parts.iter().any(|part| words.contains(part));
        let out_of_room = says(&["quota", "disk is full", "no space", "not enough space"]);
        let connection_gone =
            words.contains("connection") && says(&["closing", "closed", "lost", "terminated"]);

        match name {
            "QuotaExceededError"
            | "QUOTA_EXCEEDED_ERR"
            | "NS_ERROR_DOM_QUOTA_REACHED"
            | "NS_ERROR_DOM_INDEXEDDB_QUOTA_ERR"
            | "NS_ERROR_FILE_NO_DEVICE_SPACE" => Self::Full,
            "VersionError" => Self::NewerVersion,
            "SecurityError" => Self::Unavailable,
            // Safari says "UnknownError" both for a full disk and for a lost connection.
            "UnknownError" | "AbortError" if out_of_room => Self::Full,
            _ if connection_gone => Self::ConnectionLost,
            // Firefox refuses to open in a private window with this name …
            "InvalidStateError" if step == StoreStep::Open => Self::Unavailable,
            // … and every engine says so of a closed connection later on.
            "InvalidStateError" => Self::ConnectionLost,
            // A "TimeoutError" is the browser's own limit; it aborts the transaction as well.
            "AbortError" | "TimeoutError" => Self::Aborted,
            // Large values lie in files of their own, which can go missing.
            "NotReadableError" | "DataError" if step == StoreStep::Read => Self::Damaged,
            _ => Self::Unexpected {
                name: name.to_owned(),
                message: message.to_owned(),
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::StoreStep::{Open, Read, Write};
    use super::*;

    fn check(step: StoreStep, name: &str, message: &str, expected: StoreProblem) {
        assert_eq!(
            StoreProblem::from_exception(step, name, message),
            expected,
            "{name}: {message}"
        );
    }

    #[test]
    fn every_engine_says_full_in_its_own_way() {
        for (name, message) in [
            ("QuotaExceededError", ""),
            (
                "QuotaExceededError",
                "The current transaction exceeded its quota limitations.",
            ),
            ("NS_ERROR_DOM_QUOTA_REACHED", ""),
            ("NS_ERROR_DOM_INDEXEDDB_QUOTA_ERR", ""),
            ("NS_ERROR_FILE_NO_DEVICE_SPACE", ""),
            ("UnknownError", "Database or disk is full"),
            ("AbortError", "Transaction aborted: not enough space"),
        ] {
            check(Write, name, message, StoreProblem::Full);
        }
    }

    #[test]
    fn a_lost_connection_has_many_names() {
        for (name, message) in [
            ("InvalidStateError", "The database connection is closing."),
            ("InvalidStateError", ""),
            (
                "UnknownError",
                "Connection to Indexed Database server lost. Refresh the page to try again",
            ),
            ("AbortError", "The connection was closed."),
        ] {
            check(Write, name, message, StoreProblem::ConnectionLost);
            check(Read, name, message, StoreProblem::ConnectionLost);
        }
        check(
            Open,
            "UnknownError",
            "Connection to Indexed Database server lost. Refresh the page to try again",
            StoreProblem::ConnectionLost,
        );
    }

    #[test]
    fn private_windows_and_blocked_site_data_are_unavailable() {
        check(Open, "SecurityError", "", StoreProblem::Unavailable);
        check(
            Open,
            "InvalidStateError",
            "A mutation operation was attempted on a database that did not allow mutations.",
            StoreProblem::Unavailable,
        );
    }

    #[test]
    fn the_other_names() {
        check(Open, "VersionError", "", StoreProblem::NewerVersion);
        check(Write, "AbortError", "", StoreProblem::Aborted);
        check(Write, "TimeoutError", "", StoreProblem::Aborted);
        check(Read, "NotReadableError", "", StoreProblem::Damaged);
        check(
            Write,
            "DataError",
            "m",
            StoreProblem::Unexpected {
                name: "DataError".into(),
                message: "m".into(),
            },
        );
    }

    #[test]
    fn messages_and_hints_end_without_a_full_stop() {
        for problem in [
            StoreProblem::Full,
            StoreProblem::Unavailable,
            StoreProblem::Blocked,
            StoreProblem::ConnectionLost,
            StoreProblem::Aborted,
            StoreProblem::Damaged,
            StoreProblem::ReadBackDiffers,
            StoreProblem::NoAnswer { seconds: 10 },
            StoreProblem::NewerVersion,
        ] {
            assert!(!problem.to_string().ends_with('.'), "{problem}");
            assert!(
                !problem.hint().is_empty() && !problem.hint().ends_with('.'),
                "{problem}"
            );
        }
    }
}
