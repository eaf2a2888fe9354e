//! A found layout put into the project, and told apart from what lies there.

use crate::protocol::FoundRow;
use solver::{Field, Id, ProjectDraft, Spacing, Typed, lay_out};

/// Lays a found layout: slats, way round, height of the axis, and the cutter set or, for a new
/// one, its pitch. The count is limited only where more would fit.
pub fn lay_found(project: &mut ProjectDraft, row: &FoundRow) {
    project.layout.top = Id(row.top);
    project.layout.bottom = Id(row.bottom);
    project.layout.way = row.way.into();
    project.layout.turn = Typed::Number(row.turn_degrees);
    let rules = &mut project.rules;
    if !reads(&rules.axis_height, Field::AxisHeight, row.axis_height_mm) {
        rules.axis_height = Typed::Number(row.axis_height_mm);
    }
    match row.set {
        Some(set) => {
            rules.spacing = Spacing::Set;
            rules.cutter_set = Some(Id(set));
        }
        None => {
            rules.spacing = Spacing::Given;
            rules.pitch = Typed::Number(row.pitch_mm);
        }
    }
    if across(project).is_some_and(|across| across > row.across) {
        project.rules.most = Typed::Number(f64::from(row.across));
    }
}

/// Whether the project is laid out as found.
#[must_use]
pub fn is_laid(project: &ProjectDraft, row: &FoundRow) -> bool {
    let (layout, rules) = (&project.layout, &project.rules);
    let spaced = match row.set {
        Some(set) => rules.spacing == Spacing::Set && rules.cutter_set == Some(Id(set)),
        None => rules.spacing == Spacing::Given && reads(&rules.pitch, Field::Pitch, row.pitch_mm),
    };
    let way = project.layout_way();
    let turned = way == row.way.into()
        && (way != solver::Way::Turned || reads(&layout.turn, Field::Turn, row.turn_degrees));
    (layout.top, layout.bottom) == (Id(row.top), Id(row.bottom))
        && spaced
        && turned
        && reads(&rules.axis_height, Field::AxisHeight, row.axis_height_mm)
        && across(project) == Some(row.across)
}

/// How many lie side by side, when the layout can be laid out.
fn across(project: &ProjectDraft) -> Option<u32> {
    let parts = project.check_layout().ok()?;
    Some(lay_out(&parts.setup()).across())
}

fn reads(typed: &Typed, field: Field, value: f64) -> bool {
    typed.read(field) == Ok(value)
}
