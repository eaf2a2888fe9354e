//! Whatever the designer of a barrel may have typed, drawn or pulled at.

use crate::path::any_path;
use crate::project::any_project;
use crate::{UNITS, drawn, readable};
use proptest::prelude::*;
use solver::{
    Arm, BarrelDraft, DrawnPath, Edit, GainLimits, Joint, Length, MOST_COMPARED, Point, Shape,
    Sheet, Snap, StretchKind, Symmetry, compare_barrels, draw_end_view, draw_nodes, draw_outlines,
    nearest_gains,
};

/// Coordinates of a pointer, those among them that no screen has.
fn any_coordinate() -> impl Strategy<Value = f64> {
    prop_oneof![
        6 => -9.0_f64..9.0,
        1 => any::<f64>(),
        1 => prop::sample::select(vec![0.0, -0.0, f64::NAN, f64::INFINITY, 1e308, 5e-324]),
    ]
}

fn any_edit() -> impl Strategy<Value = Edit> {
    let point = (any_coordinate(), any_coordinate()).prop_map(|(x, y)| Point { x, y });
    let arm = prop::sample::select(vec![Arm::Arriving, Arm::Leaving]);
    let kind = prop::sample::select(StretchKind::ALL.to_vec());
    let joint = prop::sample::select(Joint::ALL.to_vec());
    (0..9_usize, point, arm, kind, joint, any_coordinate(), 0..7).prop_map(
        |(at, point, arm, kind, joint, share, which)| match which {
            0 => Edit::ShiftNode(at, point),
            1 => Edit::ShiftArm(at, arm, point),
            2 => Edit::AddNode(at, share),
            3 => Edit::RemoveNode(at),
            4 => Edit::Bend(at, kind),
            5 => Edit::Pull(at, point),
            _ => Edit::Join(at, joint),
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_path_is_edited_in_any_way(
        text in any_path(), edits in prop::collection::vec(any_edit(), 0..6),
        symmetry in prop::sample::select(Symmetry::ALL.to_vec()),
    ) {
        let Some(path) = DrawnPath::read(&text) else { return Ok(()) };
        // Each edit goes over every node; many are as few.
        prop_assume!(path.nodes().len() <= 500);
        let mut path = path.made(symmetry);
        for edit in edits {
            path = path.edited(edit, symmetry);
            prop_assert!(!path.nodes().is_empty());
            for place in 0..path.nodes().len() {
                let _ = (path.joint(place), path.along(place, 0.5));
            }
        }
        let mut draft = BarrelDraft::new("Any", Shape::Free);
        draft.draw(&path);
        let _ = (draft.flaws(), draft.handles(), draft.drawn_path());
        if let Ok(barrel) = draft.check() {
            let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: UNITS[0] };
            let (drawing, view) = draw_end_view(&barrel, &sheet, None);
            drawn(&drawing)?;
            let marks = draw_nodes(&path, &view);
            prop_assert_eq!(marks.nodes.len(), path.nodes().len());
        }
    }

    #[test]
    fn any_barrel_is_pulled_at_anywhere(draft in any_project(), x in any_coordinate(), y in any_coordinate(), fine: bool) {
        for entry in &draft.barrels {
            for unit in UNITS {
                let snap = Snap { unit, fine, reach: 0.1 };
                for handle in entry.draft.handles() {
                    let values = [handle.value_at(Point { x, y }, &snap), handle.stepped(7, &snap)];
                    for value in values.into_iter().flatten() {
                        prop_assert!(value >= handle.range.0 && value <= handle.range.1, "{:?}", handle);
                    }
                    prop_assert!(readable(&format!("{:?}", handle.at)), "{:?}", handle);
                }
            }
            let _ = (entry.draft.flaws(), entry.draft.drawn_path());
        }
    }
}

proptest! {
    // Each lays out some hundreds of times.
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_gain_gives_what_it_says(draft in any_project(), size in -1.0_f64..2.0, corner in 0.0_f64..1.0, coat in 0.0_f64..0.2) {
        let [size, corner, coat] = [size, corner, coat].map(Length::millimetres);
        let limits = GainLimits { size, corner, coat };
        match nearest_gains(&draft, &limits, &mut |_, _| ()) {
            Ok(gains) => {
                for gain in gains {
                    let parts = gain.applied(&draft).check_layout();
                    let pencils = parts.map(|parts| solver::lay_out(&parts.setup()).pencils());
                    prop_assert_eq!(pencils.ok(), Some(gain.pencils_after), "{:?}", gain);
                    prop_assert!(readable(&format!("{gain:?}")), "{:?}", gain);
                }
            }
            Err(_) => prop_assert!(draft.check_layout().is_err()),
        }
    }

    #[test]
    fn any_barrels_stand_side_by_side(draft in any_project()) {
        let ids: Vec<_> = draft.barrels.iter().map(|entry| entry.id).collect();
        let table = compare_barrels(&draft, &ids);
        prop_assert!(table.barrels.len() <= MOST_COMPARED);
        for unit in UNITS {
            let csv = table.csv(unit);
            prop_assert_eq!(csv.matches("\r\n").count() >= table.lines.len(), true);
            let barrels: Vec<_> = table.barrels.iter().map(|(_, barrel)| barrel).collect();
            let sheet = Sheet { width: 500.0, row: 28.0, text: 64.0, unit };
            drawn(&draw_outlines(&barrels, &sheet))?;
        }
    }
}
