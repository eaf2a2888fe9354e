//! The project as a JSON file: what a saved project looks like, today and in every version.
//!
//! ```text
//! draft ── write ──▶ text ── read ──▶ draft
//!            │                 │
//!            └── ProjectFile ◀─┘   (after the version is known)
//! ```
//!
//! A file keeps what a person typed, right or wrong: a field holds a number, or the text that is
//! not a number yet. What is refused is only what cannot be taken for a project at all; then every
//! problem is told at once, with the place where it stands. The limits are clear ones:
//! [`MOST_BYTES`] for the file, [`MOST_ENTRIES`] for a list, [`MOST_CHARACTERS`] for a text,
//! [`MOST_PATH_CHARACTERS`] for an outline that was drawn.
//!
//! A new version of the format gets a reader of its own beside `version_1`, a fixture, and a line
//! in `version`; the readers before it stay.

mod barrel_alone;
mod draft;
mod entered;
mod file;
mod finish;
mod lead_grade;
mod machines;
mod names;
mod problem;
mod reader;
#[cfg(feature = "schema")]
mod schema;
mod supply;
#[cfg(test)]
mod tests;
mod title_block;
mod version;
mod version_1;
mod version_2;
mod version_3;
mod version_4;
mod version_5;
mod version_6;
mod words;

pub use barrel_alone::{
    BARREL_FRAGMENT, barrel_fragment, read_barrel_file, read_barrel_fragment, write_barrel_file,
};
pub use entered::Entered;
pub use file::{
    AccuracyFile, BarrelFile, BlankFile, ConditionsFile, CutFile, CutterSetFile, ErrorFile,
    HeadFile, HeadsFile, LayoutFile, OrderFile, PlankFile, ProjectFile, RulesFile, RunFile,
    SawShopFile, SearchFile, SlatFile, SpeciesFile, YieldsFile,
};
pub use finish::{ColourWord, FinishFile};
pub use lead_grade::LeadGradeWord;
pub use problem::{FileCause, FileProblem};
#[cfg(feature = "schema")]
pub use schema::schema;
pub use supply::{OfferFile, PeriodFile, SawnSlatsFile, SupplyFile, TierFile};
pub use title_block::TitleBlockFile;
pub use words::{
    AimOfPlanWord, AimOfSawingWord, AxisWord, MoistureSourceWord, PairsWord, PricingWord,
    ReadingWord, SawingWord, ShapeWord, SpacingWord, TurnsWord, WayWord,
};

use serde::Serialize;
use solver::ProjectDraft;

use reader::Findings;

/// The most bytes a file may have.
pub const MOST_BYTES: usize = 5_000_000;

/// The most members a list may have.
pub const MOST_ENTRIES: usize = 2_000;

/// The most characters a name or another text may have.
pub const MOST_CHARACTERS: usize = 500;

/// The most characters the path of an outline may have.
pub const MOST_PATH_CHARACTERS: usize = 20_000;

/// The word that tells a project from other JSON.
const FORMAT: &str = "slatwright-project";

/// A project as it stands in a file, with the words that tell what it is.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct Document<'a> {
    /// Tells a project from other JSON.
    #[cfg_attr(feature = "schema", schemars(extend("const" = FORMAT)))]
    format: &'static str,
    /// The version of the file.
    #[cfg_attr(feature = "schema", schemars(extend("const" = version::NEWEST)))]
    version: u32,
    #[serde(flatten)]
    project: &'a ProjectFile,
}

/// A project that was opened, and what is worth knowing about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// The project.
    pub draft: ProjectDraft,
    /// What stands in the file and is not looked at, and what names a member of a list that is
    /// not there. The project opens all the same.
    pub notes: Vec<FileProblem>,
}

/// The text of a project file, in the newest version.
///
/// Equal drafts give equal texts. Within the limits of a file, [`read`] gives the draft back, but
/// for numbers that are not finite: they come back as text.
///
/// ```
/// # use app::project_file::{read, write};
/// let draft = app::demo::blank();
/// let text = write(&draft);
/// assert!(text.starts_with("{\n  \"format\": \"slatwright-project\",\n  \"version\": 6,"));
/// assert_eq!(read(&text).unwrap().draft, draft);
/// ```
#[must_use]
pub fn write(draft: &ProjectDraft) -> String {
    let document = Document {
        format: FORMAT,
        version: version::NEWEST,
        project: &ProjectFile::from(draft),
    };
    let mut text = serde_json::to_string_pretty(&document)
        .expect("texts and finite numbers under names of their own are always JSON");
    text.push('\n');
    text
}

/// A list that has more members than a file may hold, in a word.
#[must_use]
pub fn overfull(draft: &ProjectDraft) -> Option<&'static str> {
    let lists = [
        ("barrels", draft.barrels.len()),
        ("slat stocks", draft.slats.len()),
        ("species", draft.species.len()),
        ("cutter sets", draft.cutter_sets.len()),
        ("lines of machines", draft.accuracies.len()),
        ("orders", draft.orders.len()),
        ("planks", draft.saw_shop.planks.len()),
        ("blanks", draft.saw_shop.blanks.len()),
        ("periods", draft.supply.periods.len()),
        ("offers", draft.supply.offers.len()),
        ("kinds of slat sawn", draft.supply.sawn.len()),
    ];
    let overfull = lists.into_iter().find(|(_, count)| *count > MOST_ENTRIES);
    overfull.map(|(list, _)| list)
}

/// The project in the text of a file of any version so far.
///
/// # Errors
/// Everything that keeps the text from being a project, in the order of the file. The text is
/// larger than [`MOST_BYTES`], is no JSON, is no project, is of a version not known here; a field
/// is missing, of another kind, too long, or not one of its words; an `id` stands twice.
///
/// ```
/// # use app::project_file::read;
/// let problems = read(r#"{"format": "slatwright-project", "version": 7}"#).unwrap_err();
/// assert_eq!(problems[0].to_string(), "version: made by a newer Slatwright, version 7 of the file; this one reads up to 6");
/// ```
pub fn read(text: &str) -> Result<Opened, Vec<FileProblem>> {
    let mut findings = Findings::default();
    let file = version::read(text, &mut findings);
    let Findings { problems, notes } = findings;
    match file {
        Some(file) if problems.is_empty() => Ok(Opened {
            draft: file.to_draft(),
            notes,
        }),
        _ => Err(problems),
    }
}
