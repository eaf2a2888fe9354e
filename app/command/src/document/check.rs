//! What `check` prints.

use schemars::JsonSchema;
use serde::Serialize;
use solver::LengthUnit;

use super::VERSION;
use crate::findings::{Findings, Told};

/// What `slatwright check` prints, and every other command on a file with problems.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct CheckDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-check"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the project is called; `null` where the file is no project.
    project: Option<String>,
    /// What has to be mended; empty where the file is all right.
    problems: Vec<Finding>,
    /// What is worth knowing.
    notes: Vec<Finding>,
}

/// Something that was found in the file.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct Finding {
    /// Where it stands, like `slats[2].width_mm` with members counted from 0; empty for the
    /// whole file.
    path: String,
    /// What is there, lengths in millimetres.
    message: String,
    /// What to try; `null` where the message says it.
    hint: Option<&'static str>,
}

impl From<&Findings> for CheckDocument {
    fn from(findings: &Findings) -> Self {
        Self {
            format: "slatwright-check",
            version: VERSION,
            project: findings.project.clone(),
            problems: findings.problems.iter().map(Finding::from).collect(),
            notes: findings.notes.iter().map(Finding::from).collect(),
        }
    }
}

impl From<&Told> for Finding {
    fn from(told: &Told) -> Self {
        Self {
            path: told.path.clone(),
            message: told.message(LengthUnit::Millimetre),
            hint: told.hint,
        }
    }
}
