//! Which version a file is of, and who reads it.

use serde_json::Value;

use super::reader::{Findings, described};
use super::{
    FORMAT, FileCause, MOST_BYTES, ProjectFile, version_1, version_2, version_3, version_4,
    version_5, version_6,
};

/// The version that is written.
pub(super) const NEWEST: u32 = 6;

/// Reads a text by the reader of its version; the result counts only when no problem was noted.
///
/// A later version either has [`ProjectFile`] grown by fields, for which the readers of earlier
/// versions fill in what was meant then, or keeps the older shape in a type of its own.
pub(super) fn read(text: &str, findings: &mut Findings) -> Option<ProjectFile> {
    if text.len() > MOST_BYTES {
        let (bytes, most) = (text.len(), MOST_BYTES);
        findings.refuse("", FileCause::TooLarge { bytes, most });
        return None;
    }
    // Some editors put a byte order mark in front of every text.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let document: Value = match serde_json::from_str(text) {
        Ok(document) => document,
        Err(error) => {
            findings.refuse("", not_json(&error));
            return None;
        }
    };
    if document.get("format").and_then(Value::as_str) != Some(FORMAT) {
        findings.refuse("", FileCause::NotAProject { expected: FORMAT });
        return None;
    }
    let version = document.get("version");
    match version.and_then(Value::as_u64) {
        Some(1) => Some(with_offers(&version_1::read(&document, findings))),
        Some(2) => Some(with_offers(&version_2::read(&document, findings))),
        Some(3) => Some(with_offers(&version_3::read(&document, findings))),
        Some(4) => Some(with_offers(&version_4::read(&document, findings))),
        Some(5) => Some(with_offers(&version_5::read(&document, findings))),
        Some(6) => Some(version_6::read(&document, findings)),
        Some(found) if found > u64::from(NEWEST) => {
            let newest = NEWEST;
            findings.refuse("version", FileCause::NewerVersion { found, newest });
            None
        }
        _ => {
            let cause = version.map_or(
                FileCause::Missing {
                    expected: "the version of the file, a whole number from 1",
                },
                |value| FileCause::UnknownVersion {
                    found: described(value),
                    newest: NEWEST,
                },
            );
            findings.refuse("version", cause);
            None
        }
    }
}

/// Files before version 6 know of no offers: each stock is offered as its pack and price say.
fn with_offers(file: &ProjectFile) -> ProjectFile {
    let mut draft = file.to_draft();
    draft.offer_each_stock();
    ProjectFile::from(&draft)
}

fn not_json(error: &serde_json::Error) -> FileCause {
    let (line, column) = (error.line(), error.column());
    let told = error.to_string();
    // The reader repeats the place at the end of its message.
    let place = format!(" at line {line} column {column}");
    let reason = told.strip_suffix(&place).unwrap_or(&told).to_owned();
    FileCause::NotJson {
        line,
        column,
        reason,
    }
}
