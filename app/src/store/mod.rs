//! Keeps the project in the browser, so that nothing typed is ever lost.
//!
//! The project is one opaque text here; another module writes and reads it. From the bottom up:
//!
//! * a [`Record`] is that text behind a generation number and a checksum;
//! * two [`Slots`] hold a record each and take turns, so the newest whole one survives any accident;
//! * a [`ProjectStore`] loads and saves through the browser's database, with a time limit on every
//!   answer, and opens a dropped connection once more;
//! * a [`Saver`] saves shortly after the last keystroke, and at once when the page is hidden;
//! * a [`Writer`] is the right to save at all: one tab has it, the others only look.
//!
//! What needs a browser stands behind [`Platform`], so that every failure is rehearsed in native
//! tests. Absent on purpose: the project's own format, merging what two tabs wrote, and a second
//! try after a time-out (the text stays in memory and goes with the next save).
//!
//! A tab begins like this, and again from the first line when it takes over from another:
//!
//! ```no_run
//! # use app::store::{BrowserStore, Reports, Saver, StoreProblem, Writer};
//! # async fn begin(reports: Reports) -> Result<(), StoreProblem> {
//! let store = BrowserStore::in_browser();
//! let saver = Saver::start(store.clone(), reports);
//! let stop = saver.clone();
//! let writer = Writer::take(move || stop.stop_writing()).await; // first the right to write …
//! let loaded = store.load().await?;                             // … then what there is to write over
//! match &writer {
//!     Some(_) => saver.allow_writing(loaded.as_ref()),
//!     None => saver.stop_writing(),
//! }
//! # Ok(())
//! # }
//! ```

mod answer;
mod indexed_db;
mod keeping;
mod listener;
mod platform;
mod problem;
mod project_store;
mod record;
#[cfg(test)]
mod rehearsal;
mod saver;
mod schedule;
mod slots;
mod timer;
mod transaction;
#[cfg(test)]
mod trials;
mod writer;

pub use indexed_db::Browser;
pub use keeping::Keeping;
pub use platform::{Durability, Platform};
pub use problem::{StoreProblem, StoreStep};
pub use project_store::{BrowserStore, ProjectStore};
pub use record::{Damage, Generation, Record};
pub use saver::{Reports, Saver};
pub use schedule::SaveState;
pub use slots::{Loaded, Place, Slot, Slots};
pub use writer::Writer;
