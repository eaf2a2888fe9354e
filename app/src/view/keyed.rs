//! Rows that stay on the page while others come and go.

use leptos::prelude::*;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::sync::Arc;

/// A row that has not been made yet.
#[derive(Clone)]
struct Row {
    key: u64,
    make: Arc<dyn Fn() -> AnyView + Send + Sync>,
}

/// A row for each key, in their order. A row is made once and stays on the page as long as its
/// key is among them.
///
/// This is leptos' `For` for keys and rows of every kind: it is compiled once, and not once for
/// each list of the page.
pub(crate) fn keyed<Key, View>(
    keys: impl Fn() -> Vec<Key> + Send + Sync + 'static,
    row: impl Fn(Key) -> View + Send + Sync + 'static,
) -> impl IntoView
where
    Key: Hash + Copy + Send + Sync + 'static,
    View: IntoView + 'static,
{
    let row = Arc::new(row);
    erased(Signal::derive(move || {
        let rows = keys().into_iter().map(|key| {
            let row = Arc::clone(&row);
            Row {
                key: hashed(&key),
                make: Arc::new(move || row(key).into_any()),
            }
        });
        rows.collect()
    }))
}

fn erased(rows: Signal<Vec<Row>>) -> AnyView {
    view! {
        <For each=move || rows.get() key=|row| row.key children=|row| (row.make)()/>
    }
    .into_any()
}

fn hashed(key: &impl Hash) -> u64 {
    let mut hasher = DefaultHasher::new();
    key.hash(&mut hasher);
    hasher.finish()
}
