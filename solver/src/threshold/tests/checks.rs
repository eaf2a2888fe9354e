//! Where a check turns, by the formulas of the layout.

use super::*;
use crate::field::Place;
use crate::rules::Spacing;

#[test]
fn thickness_turns_where_the_planing_allowance_does() {
    let mut project = hexagons();
    // A sharp hexagon of 6.84 mm stands 6.84/√3 above the seam; corners of 0.42 take 2/√3 − 1.
    let up = 6.84 / 3.0_f64.sqrt() - 0.42 * (2.0 / 3.0_f64.sqrt() - 1.0);
    let thickness = row(&project, Field::SlatThickness);
    assert!((thickness.down[0].at - (up + 0.25)).abs() < 2e-7);
    let both = [Rule::TopThickness, Rule::BottomThickness];
    assert_eq!(
        thickness.down[0].flipped,
        both.map(|rule| (rule, Outcome::Failed))
    );
    assert_eq!(
        (
            thickness.down[0].pencils_before,
            thickness.down[0].pencils_after
        ),
        (10, 0)
    );
    assert_eq!(thickness.down[0].worth, None);
    assert_eq!((thickness.down.len(), thickness.up.len()), (1, 0));
    let planing = row(&project, Field::PlaningAllowance);
    assert!((planing.up[0].at - (5.0 - up)).abs() < 2e-7);

    // Two stocks are two inputs, and each turns its own check.
    project.layout.bottom = Id(3);
    let table = thresholds(&project, 0.0).unwrap();
    let of_slats: Vec<&Threshold> = table
        .iter()
        .filter(|row| row.input.field == Field::SlatThickness)
        .collect();
    assert_eq!(
        of_slats
            .iter()
            .map(|row| row.input.place)
            .collect::<Vec<_>>(),
        [Place::Slat(1), Place::Slat(0)]
    );
    flip(
        &of_slats[0].down[0],
        up + 0.25,
        Rule::TopThickness,
        Outcome::Failed,
    );
    flip(
        &of_slats[1].down[0],
        up + 0.25,
        Rule::BottomThickness,
        Outcome::Failed,
    );
}

#[test]
fn a_layout_that_fails_is_told_what_would_mend_it() {
    let mut project = hexagons();
    project.slats[1].draft.thickness = Typed::Number(4.0);
    let thickness = row(&project, Field::SlatThickness);
    assert_eq!(
        (
            thickness.up[0].pencils_before,
            thickness.up[0].pencils_after
        ),
        (0, 10)
    );
    assert!(
        thickness.up[0]
            .flipped
            .contains(&(Rule::TopThickness, Outcome::Passed))
    );
    // The count is told although no good pencil comes of it.
    let width = row(&project, Field::SlatWidth);
    count(&width.up[0], 81.24, (10, 11));
    assert_eq!((width.up[0].pencils_after, width.up[0].worth), (0, None));
}

#[test]
fn a_land_that_fails_is_mended_again_where_only_one_pencil_is_left() {
    // A pitch of 7.5 is too narrow for barrels over 7.26, as long as there are two of them.
    let mut project = hexagons();
    project.rules.spacing = Spacing::Given;
    project.rules.pitch = Typed::Number(7.5);
    flip(
        &row(&project, Field::AcrossFlats).up[0],
        7.26,
        Rule::Land,
        Outcome::Failed,
    );
    project.barrels[0].draft.size = Typed::Number(8.0);
    let size = row(&project, Field::AcrossFlats);
    flip(&size.down[0], 7.26, Rule::Land, Outcome::Passed);
    let edge = row(&project, Field::EdgeAllowance);
    // Two take 7.84 + 7.5 of the 74 mm.
    let at = (74.0 - 7.84 - 7.5) / 2.0;
    let single = edge
        .up
        .iter()
        .find(|change| !change.flipped.is_empty())
        .unwrap();
    flip(single, at, Rule::Land, Outcome::Passed);
    assert_eq!(
        (
            single.across_after,
            single.pencils_before,
            single.pencils_after
        ),
        (1, 0, 1)
    );
}

#[test]
fn the_end_of_what_can_be_made_is_told() {
    let project = hexagons();
    let corner = row(&project, Field::CornerRadius);
    let last = corner.up.last().unwrap();
    assert!(last.unmade && (last.at - 3.5).abs() < 2e-7);
    assert_eq!(
        (last.pencils_after, last.across_after, last.worth),
        (0, 0, None)
    );
}
