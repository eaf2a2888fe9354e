//! How many of the pencils are good, and which error to fight first.

use super::accuracy_form::AccuracyForm;
use super::problem_list::ProblemList;
use leptos::prelude::*;

/// The place of the tolerances.
#[component]
pub(crate) fn TolerancePlace() -> impl IntoView {
    view! {
        <div class="place tolerances-place">
            <aside class="column" aria-label="Inputs">
                <ProblemList/>
                <AccuracyForm/>
            </aside>
        </div>
    }
}
