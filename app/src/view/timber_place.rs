//! What is ordered, what is in stock and how it moves, and which slats to buy.

use super::conditions::Conditions;
use super::entry_table::EntryTable;
use super::order_table::OrderTable;
use super::problem_list::ProblemList;
use super::purchase_list::PurchaseListView;
use super::species_table::SpeciesTable;
use crate::workbench::Table;
use leptos::prelude::*;

/// The place of the timber buyer.
#[component]
pub(crate) fn TimberPlace() -> impl IntoView {
    view! {
        <div class="place tables-place timber-place">
            <ProblemList/>
            <OrderTable/>
            <PurchaseListView/>
            <EntryTable
                table=Table::Slats
                empty="No slat stock yet. Without one there is nothing to lay a pencil on."
            />
            <Conditions/>
            <SpeciesTable/>
        </div>
    }
}
