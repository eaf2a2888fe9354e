//! The project file described for other programs.

use std::borrow::Cow;

use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};

use super::{Document, Entered, LeadGradeWord};

/// The JSON Schema of a project file in the newest version.
///
/// A file that it takes is one that [`read`](super::read) opens, but for what a schema cannot
/// say: that no `id` stands twice in a list, and the limits of the file.
///
/// ```
/// let schema = app::project_file::schema();
/// assert_eq!(schema.pointer("/properties/version/const").unwrap(), 6);
/// ```
#[must_use]
pub fn schema() -> Schema {
    // A file is read as strictly as it is written: every field has to be there.
    SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<Document<'static>>()
}

impl JsonSchema for Entered {
    fn schema_name() -> Cow<'static, str> {
        "Entered".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "A number in the unit that the name of the field tells, or the text that stands in its place; an optional field is empty as an empty text.",
            "type": ["number", "string"],
        })
    }
}

impl JsonSchema for LeadGradeWord {
    fn schema_name() -> Cow<'static, str> {
        "LeadGradeWord".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        let words: Vec<&str> = Self::words().iter().map(|(word, _)| *word).collect();
        json_schema!({
            "description": "A grade of lead from soft to hard as the trade writes it, or coloured lead.",
            "type": "string",
            "enum": words,
        })
    }
}
