//! How many of the pencils are good, and which error to fight first.

use super::accuracy_form::AccuracyForm;
use super::error_table::ErrorTable;
use super::good_count::{DiceControls, Faults, GoodVerdict, Positions};
use super::good_curve::GoodCurves;
use super::good_map::{GoodColumns, GoodMap, Scatter};
use super::integrals::Integrals;
use super::measured_slats::MeasuredSlats;
use super::problem_list::ProblemList;
use leptos::prelude::*;

/// The place of the tolerances.
#[component]
pub(crate) fn TolerancePlace() -> impl IntoView {
    view! {
        <div class="place tolerances-place">
            <section class="board" aria-label="Good pencils of a sandwich">
                <GoodVerdict/>
                <DiceControls/>
                <GoodMap/>
            </section>
            <aside class="column" aria-label="Inputs">
                <ProblemList/>
                <AccuracyForm/>
            </aside>
            <div class="results">
                <Faults/>
                <Positions/>
                <GoodColumns/>
                <Scatter/>
                <ErrorTable/>
                <GoodCurves/>
                <Integrals/>
                <MeasuredSlats/>
            </div>
        </div>
    }
}
