//! What blanks are sawn from what planks, and the plan of the cuts.

use super::cut_plan::CutPlan;
use super::entry_table::EntryTable;
use super::problem_list::ProblemList;
use super::saw_form::SawForm;
use crate::workbench::Table;
use leptos::prelude::*;

/// The place of the saw shop.
#[component]
pub(crate) fn PlanksPlace() -> impl IntoView {
    view! {
        <div class="place tables-place planks-place">
            <ProblemList/>
            <EntryTable
                table=Table::Planks
                empty="No plank yet. Add the kinds that are in the yard, or that a supplier offers."
            />
            <EntryTable
                table=Table::Blanks
                empty="No blank yet. Add one to see how it is best sawn."
            />
            <SawForm/>
            <CutPlan/>
        </div>
    }
}
