//! Projects that are asked about.

use app::demo;
use solver::{Id, ProjectDraft, Typed};

/// The demo with a slat stock that is wrong in two fields.
pub(crate) fn broken() -> ProjectDraft {
    let mut project = demo::project();
    project.slats[2].draft.width = Typed::Number(500.0);
    project.slats[2].draft.thickness = Typed::Text("thick".into());
    project.rules.land = Typed::Number(-1.0);
    project
}

/// The demo with a lead so thick that no wall is left.
pub(crate) fn too_thick() -> ProjectDraft {
    let mut project = demo::project();
    project.barrels[0].draft.lead_diameter = Typed::Number(6.0);
    project
}

/// The demo with everything in it that a search may try, and a layout of two stocks.
pub(crate) fn wide_search() -> ProjectDraft {
    let mut project = demo::project();
    project.search.turns = solver::Turns::Any;
    project.search.axis = solver::AxisChoice::Any;
    project.search.pairs = solver::Pairs::Any;
    project.search.new_set_price = Typed::Number(480.0);
    project.layout.top = Id(15);
    project
}
