//! What is ordered, what is in stock, and which slats to buy.

use super::order_table::OrderTable;
use super::problem_list::ProblemList;
use super::purchase_list::PurchaseListView;
use super::slat_table::SlatTable;
use leptos::prelude::*;

/// The place of the timber buyer.
#[component]
pub(crate) fn TimberPlace() -> impl IntoView {
    view! {
        <div class="place timber-place">
            <ProblemList/>
            <OrderTable/>
            <PurchaseListView/>
            <SlatTable/>
        </div>
    }
}
