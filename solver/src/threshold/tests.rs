use super::*;
use crate::barrel::BarrelDraft;
use crate::field::{Field, Place, Typed};
use crate::layout::lay_out;
use crate::project::{Entry, Id, LayoutDraft, Way};
use crate::rules::{RulesDraft, Spacing};
use crate::seam::Seam;
use crate::search_rules::SearchDraft;
use crate::shape::Shape;
use crate::slat::SlatDraft;
use crate::wood::ConditionsDraft;
use proptest::prelude::*;

/// One barrel on one stock of 74 × 5, 100.00 a pack of 600; a second stock lies beside it.
fn project(shape: Shape, seam: Seam) -> ProjectDraft {
    let entry = |id, name| Entry {
        id: Id(id),
        draft: SlatDraft::new(name),
    };
    ProjectDraft {
        name: String::new(),
        barrels: vec![Entry {
            id: Id(7),
            draft: BarrelDraft::new("", shape),
        }],
        slats: vec![entry(3, "other"), entry(4, "usual")],
        rules: RulesDraft::new(),
        layout: LayoutDraft {
            barrel: Id(7),
            top: Id(4),
            bottom: Id(4),
            way: Way::Usual(seam),
            turn: Typed::Number(0.0),
            accuracy: Id(0),
        },
        orders: Vec::new(),
        species: Vec::new(),
        conditions: ConditionsDraft::new(),
        cutter_sets: Vec::new(),
        search: SearchDraft::new(),
        set_aside: None,
        accuracies: Vec::new(),
    }
}

/// Hexagons of 7.0 mm, corners 0.5, coat 0.08, corners up and down: ten on 74 mm with nothing
/// to spare.
fn hexagons() -> ProjectDraft {
    project(Shape::Hexagonal, Seam::ThroughFaces)
}

fn row(project: &ProjectDraft, field: Field) -> Threshold {
    thresholds(project, 1000.0)
        .unwrap()
        .into_iter()
        .find(|row| row.input.field == field)
        .unwrap()
}

/// A change of the count.
#[track_caller]
fn count(change: &Change, at: f64, pencils: (u32, u32)) {
    assert!((change.at - at).abs() < 2e-7, "at {}, not {at}", change.at);
    assert_eq!((change.across_before, change.across_after), pencils);
    assert!(change.flipped.is_empty(), "{:?}", change.flipped);
}

/// A change of one check.
#[track_caller]
fn flip(change: &Change, at: f64, rule: Rule, outcome: Outcome) {
    assert!((change.at - at).abs() < 2e-7, "at {}, not {at}", change.at);
    assert_eq!(change.flipped, [(rule, outcome)]);
}

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

#[test]
fn a_pencil_more_saves_its_share_of_the_slats() {
    // 100.00 for 600 slats; 288 slats of a gross over ten and over eleven.
    let up = row(&hexagons(), Field::SlatWidth).up[0].worth.unwrap();
    let per_gross = 288.0 * 10_000.0 / 600.0 * (1.0 / 10.0 - 1.0 / 11.0);
    assert!((up.per_gross - per_gross).abs() < 1e-9, "{}", up.per_gross);
    assert!((up.per_year - 1000.0 * per_gross).abs() < 1e-6);
    assert!(
        row(&hexagons(), Field::SlatWidth).down[0]
            .worth
            .unwrap()
            .per_gross
            < 0.0
    );
}

#[test]
fn each_slat_of_a_pair_has_its_own_price() {
    let mut project = hexagons();
    project.layout.bottom = Id(3);
    project.slats[0].draft.pack_price = Typed::Number(300.0);
    let worth = row(&project, Field::AcrossFlats).up[0].worth.unwrap();
    let per_gross = 144.0 * 40_000.0 / 600.0 * (1.0 / 10.0 - 1.0 / 9.0);
    assert!(
        (worth.per_gross - per_gross).abs() < 1e-9,
        "{}",
        worth.per_gross
    );
}

#[test]
fn a_layout_that_cannot_be_laid_out_today_is_refused() {
    let mut project = hexagons();
    project.rules.land = Typed::Text("wide".into());
    project.barrels[0].draft.coat = Typed::Number(-1.0);
    assert_eq!(
        thresholds(&project, 1.0).unwrap_err(),
        project.check_layout().unwrap_err()
    );
    project = hexagons();
    project.slats.clear();
    assert_eq!(thresholds(&project, 1.0), Err(Vec::new()));
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

/// The bond width of a triangle on its point, with the axis off the glue plane, rises and falls
/// as its corners are rounded.
fn triangle_with_a_hump(corner: f64, bond: f64) -> ProjectDraft {
    let mut project = project(Shape::Triangular, Seam::BaseDown);
    let barrel = &mut project.barrels[0].draft;
    barrel.size = Typed::Number(9.0);
    barrel.corner_radius = Typed::Number(corner);
    barrel.lead_diameter = Typed::Number(1.0);
    project.rules.axis_height = Typed::Number(HUMP_AXIS);
    project.rules.wall = Typed::Number(0.2);
    project.rules.bond = Typed::Number(bond);
    project
}

/// Height of the lead axis at which the hump lies well inside the range of the corner radius.
const HUMP_AXIS: f64 = 2.2;

fn bond_of(corner: f64) -> f64 {
    let parts = triangle_with_a_hump(corner, 0.0).check_layout().unwrap();
    let layout = lay_out(&parts.setup());
    let check = layout
        .checks()
        .iter()
        .find(|check| check.rule == Rule::Bond);
    match check.unwrap().found {
        crate::layout::Measure::Length(bond) => bond.in_millimetres(),
        crate::layout::Measure::Angle(_) => f64::NAN,
    }
}

#[test]
fn a_bond_width_that_passes_between_two_failures_is_found() {
    // From 4.09 with sharp corners up to 4.40 near a radius of 0.9, and down to 3.32 at 4.4:
    // 4.35 is there only on the hump between.
    let (asked, today) = (4.35, 0.2);
    assert!(bond_of(today) < asked && bond_of(0.9) > asked && bond_of(4.4) < asked);
    let corner = row(&triangle_with_a_hump(today, asked), Field::CornerRadius);
    let checked = corner.up.iter().find(|change| !change.flipped.is_empty());
    let at = checked.unwrap().at;
    assert_eq!(checked.unwrap().flipped, [(Rule::Bond, Outcome::Passed)]);
    assert!(
        bond_of(at) >= asked - 1e-9 && bond_of(at - 1e-6) < asked,
        "{at}"
    );
    // From beyond the hump it is found on the way down.
    let corner = row(&triangle_with_a_hump(3.0, asked), Field::CornerRadius);
    let checked = corner.down.iter().find(|change| !change.flipped.is_empty());
    let at = checked.unwrap().at;
    assert!(
        bond_of(at) >= asked - 1e-9 && bond_of(at + 1e-6) < asked,
        "{at}"
    );
}

#[test]
fn a_width_that_grows_and_shrinks_again_loses_a_pencil_between() {
    // The bare width of a bulged triangle on its face rises from 7.51 to 7.64 at a corner radius
    // of 2.2 and falls to 7.44: ten of 7.58 at a land of 0.4 and edges of 1.0 do not fit there.
    let mut project = project(Shape::Triangular, Seam::BaseDown);
    let barrel = &mut project.barrels[0].draft;
    barrel.size = Typed::Number(7.6);
    barrel.face_radius = Typed::Number(8.0);
    barrel.corner_radius = Typed::Number(0.3);
    project.slats[1].draft.width = Typed::Number(10.0 * 7.58 + 9.0 * 0.4 + 2.0);
    project.slats[1].draft.thickness = Typed::Number(8.0);
    let barrel = project.barrels[0].draft.clone();
    let width = |corner: f64| {
        let mut draft = barrel.clone();
        draft.corner_radius = Typed::Number(corner);
        let bare = draft.check().unwrap().bare(crate::quantity::Angle::ZERO);
        bare.extents().width().in_millimetres()
    };
    let check = |change: &Change, sign: f64| {
        assert_eq!((change.across_before, change.across_after), (10, 9));
        assert!((width(change.at) - 7.58).abs() < 1e-6, "{}", change.at);
        assert!(width(change.at + sign * 1e-6) > 7.58 && width(change.at - sign * 1e-6) < 7.58);
    };
    check(&row(&project, Field::CornerRadius).up[0], 1.0);
    // From beyond the summit it is found on the way down.
    project.barrels[0].draft.corner_radius = Typed::Number(3.5);
    check(&row(&project, Field::CornerRadius).down[0], -1.0);
}

/// A free outline with room for a lead of 0.5 mm.
fn drawn(path: &str, width: f64) -> ProjectDraft {
    let mut project = project(Shape::Free, Seam::AsDrawn);
    let barrel = &mut project.barrels[0].draft;
    path.clone_into(&mut barrel.path);
    barrel.size = Typed::Number(width);
    barrel.lead_diameter = Typed::Number(0.5);
    project.rules.wall = Typed::Number(0.2);
    project.rules.bond = Typed::Number(0.0);
    project
}

/// A block of 8 mm with a knob of 1 mm at the end of a neck 0.4 mm thick.
const KNOB: &str = "M0 0 H8 V3.8 H8.6 V3.5 H9.6 V4.5 H8.6 V4.2 H8 V8 H0 Z";
/// A horseshoe that is open below.
const HORSESHOE: &str = "M0 0 H3 V8 H9 V0 H12 V12 H0 Z";

#[test]
fn a_knob_that_a_coat_parts_and_a_thicker_one_swallows_is_told_with_what_follows() {
    let mut project = drawn(KNOB, 9.6);
    project.barrels[0].draft.coat = Typed::Number(0.05);
    let coat = row(&project, Field::Coat);
    // Half the neck is 0.2; half the knob is 0.5, and without it 9 of 7.0 mm fit where 7 did.
    let [parted, swallowed] = &coat.up[..] else {
        panic!("{:?}", coat.up)
    };
    assert!(
        parted.unmade && (parted.at - 0.2).abs() < 1e-5,
        "{parted:?}"
    );
    assert!(!swallowed.unmade && (swallowed.at - 0.5).abs() < 1e-5);
    assert_eq!((swallowed.across_before, swallowed.across_after), (7, 9));
    // From beyond the gap the other way.
    project.barrels[0].draft.coat = Typed::Number(0.6);
    let coat = row(&project, Field::Coat);
    let parted = coat.down.iter().find(|change| change.unmade).unwrap();
    assert!((parted.at - 0.5).abs() < 2e-5, "{parted:?}");
}

#[test]
fn a_wall_of_a_horseshoe_that_is_mended_and_fails_again_is_found_from_both_sides() {
    // Twelve wide its centre of area lies 1 above the slab between its arms, which is 4 thick.
    // With the axis 3.0 below that and k = w/12, the axis is 3 − k from the top of the slab and
    // 5k − 3 from its bottom. Coat, lead, clearance, eccentricity and wall ask for 0.88.
    let mut project = drawn(HORSESHOE, 8.0);
    project.barrels[0].draft.axis_up = Typed::Number(-3.0);
    project.slats[1].draft.thickness = Typed::Number(20.0);
    let checked = |changes: &[Change]| {
        let checked = changes.iter().find(|change| !change.flipped.is_empty());
        checked.unwrap().clone()
    };
    let up = checked(&row(&project, Field::BarrelWidth).up);
    flip(&up, 12.0 * 3.88 / 5.0, Rule::Wall, Outcome::Passed);
    project.barrels[0].draft.size = Typed::Number(26.0);
    let down = checked(&row(&project, Field::BarrelWidth).down);
    flip(&down, 12.0 * 2.12, Rule::Wall, Outcome::Passed);
}

/// Free outlines with a fluted back, a hollow, a curve, a gap and a neck.
const PATHS: [&str; 5] = [
    "M0 3 A4 4 0 0 1 8 3 A9 9 0 0 0 7 6 L1 6 A9 9 0 0 0 0 3 Z",
    "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z",
    "M0 0 C2 -3 6 -2 8 0 C10 4 7 8 4 7 C1 8 -2 4 0 0 Z",
    HORSESHOE,
    KNOB,
];

/// Any project a shop could have, and some that none would.
fn any_project() -> impl Strategy<Value = ProjectDraft> {
    let barrel = (
        0..Shape::ALL.len(),
        4.0_f64..14.0,
        0.0_f64..1.0,
        0.0_f64..0.6,
        0.6_f64..3.0,
        // Faces from as round as they may be to all but flat, or flat; a drawing, its axis.
        (
            prop_oneof![Just(None), (0.0_f64..1.0).prop_map(Some)],
            0..PATHS.len(),
            prop_oneof![Just(0.0), -1.5_f64..1.5],
        ),
    );
    let way = (0..4_usize, -180.0_f64..180.0);
    let slats = || (20.0_f64..120.0, 2.5_f64..12.0);
    let rules = (
        0..3_usize,
        4.0_f64..14.0,
        prop_oneof![Just(0.0), -2.0_f64..2.0],
        0.0_f64..1.0,
        0.0_f64..12.0,
        (
            0.0_f64..1.0,
            0.0_f64..2.0,
            0.0_f64..3.0,
            prop_oneof![Just(0.0), 0.0_f64..8.0],
        ),
    );
    (barrel, way, slats(), slats(), any::<bool>(), rules).prop_filter_map(
        "a layout that can be laid out",
        |(barrel, (way, turn), top, bottom, alike, rules)| {
            let (shape, size, share, coat, lead, (face, path, up)) = barrel;
            let (spacing, pitch, axis, land, edge, (planing, floor, bond, relief)) = rules;
            let mut project = project(Shape::ALL[shape], Seam::AnyWay);
            let draft = &mut project.barrels[0].draft;
            draft.size = Typed::Number(size);
            draft.corner_radius = Typed::Number(share * size / 2.0);
            draft.coat = Typed::Number(coat);
            draft.lead_diameter = Typed::Number(lead);
            if let Some(more) = face {
                let least = size * (1.0 - share / 2.0);
                draft.face_radius = Typed::Number(least + 60.0 * more * more * more);
            }
            PATHS[path].clone_into(&mut draft.path);
            draft.axis_up = Typed::Number(up);
            let ways = Way::of(draft.shape);
            project.layout.way = ways[way % ways.len()];
            project.layout.turn = Typed::Number(turn);
            for (entry, (width, thickness)) in project.slats.iter_mut().zip([bottom, top]) {
                entry.draft.width = Typed::Number(width);
                entry.draft.thickness = Typed::Number(thickness);
            }
            if !alike {
                project.layout.bottom = Id(3);
            }
            let draft = &mut project.rules;
            draft.spacing = Spacing::ALL[spacing];
            draft.pitch = Typed::Number(pitch);
            draft.axis_height = Typed::Number(axis);
            draft.land = Typed::Number(land);
            draft.edge = Typed::Number(edge);
            draft.planing = Typed::Number(planing);
            draft.floor = Typed::Number(floor);
            draft.bond = Typed::Number(bond);
            draft.relief = Typed::Number(relief);
            project.check_layout().is_ok().then_some(project)
        },
    )
}

/// The count and the failed checks at a value of an input; nothing where nothing can be made.
fn answer(project: &ProjectDraft, input: Input, value: f64) -> Option<(u32, Vec<Rule>)> {
    let mut project = project.clone();
    *input.typed_mut(&mut project).unwrap() = Typed::Number(value);
    let layout = lay_out(&project.check_layout().ok()?.setup());
    let failed = |check: &&crate::layout::Check| check.outcome == Outcome::Failed;
    let rules = layout
        .checks()
        .iter()
        .filter(failed)
        .map(|check| check.rule);
    Some((layout.across(), rules.collect()))
}

/// Values scanned between today's and a threshold.
const SCANNED: u32 = 60;
/// Twice the bracket: how near a threshold is known, mm.
const NEAR: f64 = 2e-7;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn nothing_changes_before_a_threshold_and_something_does_there(project in any_project(), shift in 0.0_f64..1.0) {
        for row in thresholds(&project, 1.0).unwrap() {
            let (input, today) = (row.input, row.today);
            let before = answer(&project, input, today).unwrap();
            let spec = input.field.spec();
            for (changes, bound) in [(&row.down, spec.least), (&row.up, spec.most)] {
                for pair in changes.windows(2) {
                    prop_assert!((pair[0].at - today).abs() <= (pair[1].at - today).abs());
                }
                let counted = changes.iter().find(|change| !change.unmade && change.across_after != change.across_before);
                let checked = changes.iter().find(|change| change.unmade || !change.flipped.is_empty());
                let ways = [
                    (counted, true),
                    (checked, false),
                ];
                for (change, by_count) in ways {
                    let same = |after: &Option<(u32, Vec<Rule>)>| match after {
                        Some(after) if by_count => after.0 == before.0,
                        Some(after) => after.1 == before.1,
                        // Where the barrel cannot be made there is no count to change.
                        None => by_count,
                    };
                    let end = change.map_or(bound, |change| change.at);
                    for k in 0..SCANNED {
                        let value = today + (end - today) * (f64::from(k) + shift) / f64::from(SCANNED);
                        if change.is_none() || (value - end).abs() > NEAR {
                            let after = answer(&project, input, value);
                            prop_assert!(same(&after), "{:?} at {value} before {end}, today {today}: {after:?} after {before:?}", input);
                        }
                    }
                    if let Some(change) = change {
                        let after = answer(&project, input, change.at);
                        let differs = after.is_none() || !same(&after);
                        prop_assert!(differs, "{:?} at {}", input, change.at);
                        prop_assert_eq!(after.is_none(), change.unmade);
                    }
                }
            }
        }
    }
}
