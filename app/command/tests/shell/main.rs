//! The built program as a shell meets it: what it prints where, and the number it ends with.

#![expect(clippy::unwrap_used, reason = "tests stop where they fail")]

mod anything;
mod barrel;
mod check;
mod designer;
mod every_command;
mod layout;
mod measured;
mod orders;
mod program;
mod projects;
mod schema;
mod search;
mod setting;
mod thresholds;
mod timber;
mod tolerances;
