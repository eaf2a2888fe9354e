//! The order book: one book, at hand wherever something is bought or planned by it.

use super::entry_table::EntryTable;
use crate::workbench::Table;
use leptos::prelude::*;

/// The lines of the order book.
#[component]
pub(crate) fn OrderTable() -> impl IntoView {
    view! {
        <EntryTable
            table=Table::Orders
            empty="No orders yet. Add one, or open a CSV file with pencil, gross and period."
        />
    }
}
