//! Where the count turns, by the formulas of the layout.

use super::*;
use crate::rules::Spacing;

#[test]
fn ten_hexagons_with_nothing_to_spare_lose_one_at_once() {
    let project = hexagons();
    let width = row(&project, Field::SlatWidth);
    count(&width.down[0], 74.0, (10, 9));
    assert!(width.down[0].at < 74.0 && width.down[0].step < 0.0);
    count(&row(&project, Field::Land).up[0], 0.4, (10, 9));
    count(&row(&project, Field::EdgeAllowance).up[0], 1.0, (10, 9));
    count(&row(&project, Field::AcrossFlats).up[0], 7.0, (10, 9));
    count(&row(&project, Field::Coat).down[0], 0.08, (10, 9));
}

#[test]
fn the_eleventh_hexagon_takes_one_pitch_more() {
    let project = hexagons();
    count(&row(&project, Field::SlatWidth).up[0], 81.24, (10, 11));
    // 11·b + 10·land + 2·edge = 74 with b = 6.84, land 0.4 and edge 1.0, one of them changed.
    let land = row(&project, Field::Land);
    assert_eq!(
        land.down,
        [],
        "even no land at all leaves no room: 11 × 6.84 > 72"
    );
    let bare = (72.0 - 4.0) / 11.0;
    count(
        &row(&project, Field::AcrossFlats).down[0],
        bare + 0.16,
        (10, 11),
    );
}

#[test]
fn round_barrels_turn_where_the_formulas_say() {
    // 7.3 over a coat of 0.08: 7.14 bare, 7.54 from groove to groove, nine on 74 mm.
    let mut project = project(Shape::Round, Seam::AnyWay);
    count(
        &row(&project, Field::SlatWidth).down[0],
        2.0 + 7.14 + 8.0 * 7.54,
        (9, 8),
    );
    count(
        &row(&project, Field::SlatWidth).up[0],
        2.0 + 7.14 + 9.0 * 7.54,
        (9, 10),
    );
    // 10·b + 9·land = 72 and 9·b + 8·land = 72.
    count(
        &row(&project, Field::Diameter).down[0],
        (72.0 - 3.6) / 10.0 + 0.16,
        (9, 10),
    );
    count(
        &row(&project, Field::Land).down[0],
        (72.0 - 71.4) / 9.0,
        (9, 10),
    );
    count(
        &row(&project, Field::Land).up[0],
        (72.0 - 9.0 * 7.14) / 8.0,
        (9, 8),
    );
    count(
        &row(&project, Field::Coat).up[0],
        (7.3 - 6.84) / 2.0,
        (9, 10),
    );
    // A lead of 3.0: b/2 − (1.5 + clearance) − 0.3 off centre ≥ 1.0 of wall.
    project.barrels[0].draft.lead_diameter = Typed::Number(3.0);
    let clearance = row(&project, Field::Clearance);
    assert_eq!((clearance.down.len(), clearance.up.len()), (0, 1));
    flip(
        &clearance.up[0],
        3.57 - 1.5 - 0.3 - 1.0,
        Rule::Wall,
        Outcome::Failed,
    );
    // 3.57 + planing ≤ 5.
    let planing = row(&project, Field::PlaningAllowance);
    assert!((planing.up[0].at - 1.43).abs() < 2e-7);
    assert!(
        row_of(&project, Field::CornerRadius).is_none(),
        "a circle has no corners"
    );
    assert!(
        row_of(&project, Field::Pitch).is_none(),
        "no pitch is given"
    );
}

fn row_of(project: &ProjectDraft, field: Field) -> Option<Threshold> {
    let table = thresholds(project, 1.0).unwrap();
    table.into_iter().find(|row| row.input.field == field)
}

#[test]
fn a_given_pitch_has_thresholds_of_its_own() {
    let mut project = hexagons();
    project.rules.spacing = Spacing::Given;
    project.rules.pitch = Typed::Number(7.5);
    project.rules.land = Typed::Number(0.3);
    // Nine at 7.5; ten need (72 − 6.84) / 9, and the land is kept down to 6.84 + 0.3.
    let pitch = row(&project, Field::Pitch);
    count(&pitch.down[0], 7.24, (9, 10));
    flip(&pitch.down[1], 7.14, Rule::Land, Outcome::Failed);
    count(&pitch.up[0], (72.0 - 6.84) / 8.0, (9, 8));
    flip(
        &row(&project, Field::Land).up[0],
        7.5 - 6.84,
        Rule::Land,
        Outcome::Failed,
    );
}

#[test]
fn a_size_typed_in_inches_is_an_input_like_any_other() {
    let mut project = hexagons();
    project.slats[1].draft.width = Typed::Text("3 in".into());
    let width = row(&project, Field::SlatWidth);
    assert!((width.today - 76.2).abs() < 1e-12);
    count(&width.down[0], 74.0, (10, 9));
    // What comes after it in the table is told for the same width.
    count(
        &row(&project, Field::Land).up[0],
        (72.0 + 2.2 - 68.4) / 9.0,
        (10, 9),
    );
}
