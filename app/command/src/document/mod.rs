//! The JSON of every answer: plain data, units in the names.
//!
//! These types are what other programs rely on. A field that is added leaves the version as it
//! is; one that goes or changes its meaning raises it.

mod barrel;
mod barrels;
mod check;
mod gains;
mod layout;
mod measured;
mod orders;
mod search;
mod setting;
mod thresholds;
mod timber;
mod tolerances;
mod words;

pub(crate) use barrel::BarrelDocument;
pub(crate) use barrels::BarrelsDocument;
pub(crate) use check::CheckDocument;
pub(crate) use gains::GainsDocument;
pub(crate) use layout::LayoutDocument;
pub(crate) use measured::MeasuredDocument;
pub(crate) use orders::OrdersDocument;
pub(crate) use search::SearchDocument;
pub(crate) use setting::SettingDocument;
pub(crate) use thresholds::ThresholdsDocument;
pub(crate) use timber::{RecountDocument, SawnPart, TimberDocument};
pub(crate) use tolerances::TolerancesDocument;

use schemars::JsonSchema;
use serde::Serialize;
use solver::{Entry, Worth};

/// The version of the documents.
const VERSION: u32 = 1;

/// A document as text.
pub(crate) fn write(document: &impl Serialize) -> String {
    let mut text = serde_json::to_string_pretty(document)
        .expect("texts and numbers under names of their own are always JSON");
    text.push('\n');
    text
}

/// A member of a list of the project.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct Named {
    /// Its `id` in the project file.
    id: u32,
    /// What it is called.
    name: String,
}

impl Named {
    fn of<T>(entry: &Entry<T>, name: impl Fn(&T) -> &str) -> Self {
        Self {
            id: entry.id.0,
            name: name(&entry.draft).to_owned(),
        }
    }
}

/// Price of slats saved.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct Saved {
    /// For a gross of pencils, in hundredths of the currency.
    per_gross_hundredths: f64,
    /// For the gross of a year, in hundredths of the currency.
    per_year_hundredths: f64,
}

impl From<Worth> for Saved {
    fn from(worth: Worth) -> Self {
        Self {
            per_gross_hundredths: worth.per_gross,
            per_year_hundredths: worth.per_year,
        }
    }
}
