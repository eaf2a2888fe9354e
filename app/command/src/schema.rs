//! The JSON Schema of what is read and what is printed: the answer of `schema`.

use app::project_file;
use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema};

use crate::arguments::Described;
use crate::document::{
    self, BarrelDocument, BarrelsDocument, CheckDocument, GainsDocument, LayoutDocument,
    MeasuredDocument, OrdersDocument, RecountDocument, SearchDocument, SettingDocument,
    ThresholdsDocument, TimberDocument, TolerancesDocument,
};

/// The schema of what a command prints; of the project file where none is named.
pub(crate) fn text(of: Option<Described>) -> String {
    document::write(&match of {
        None => project_file::schema(),
        Some(Described::Check) => printed::<CheckDocument>(),
        Some(Described::Layout) => printed::<LayoutDocument>(),
        Some(Described::Search) => printed::<SearchDocument>(),
        Some(Described::Gains) => printed::<GainsDocument>(),
        Some(Described::Barrels) => printed::<BarrelsDocument>(),
        Some(Described::Thresholds) => printed::<ThresholdsDocument>(),
        Some(Described::Tolerances) => printed::<TolerancesDocument>(),
        Some(Described::Setting) => printed::<SettingDocument>(),
        Some(Described::Barrel) => printed::<BarrelDocument>(),
        Some(Described::Timber) => printed::<TimberDocument>(),
        Some(Described::Recount) => printed::<RecountDocument>(),
        Some(Described::Orders) => printed::<OrdersDocument>(),
        Some(Described::Measured) => printed::<MeasuredDocument>(),
    })
}

/// Everything that is printed is always there, so every field is required.
fn printed<T: JsonSchema>() -> Schema {
    SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<T>()
}
