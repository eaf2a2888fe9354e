//! Any project at all: nothing changes before a threshold, and something does there.

use super::*;
use crate::layout::lay_out;
use crate::rules::Spacing;
use proptest::prelude::*;

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
