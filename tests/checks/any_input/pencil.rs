//! Finishes that hold anything, on barrels of any outline.

use crate::path::any_path;
use crate::project::any_typed;
use crate::{UNITS, drawn, readable};
use proptest::prelude::*;
use solver::{
    BarrelDraft, FinishDraft, FinishedPencil, Paper, PaperSize, Shape, Sight, Surface, Typed,
    draw_pencil,
};

fn any_finish() -> impl Strategy<Value = FinishDraft> {
    let numbers = prop::array::uniform10(any_typed());
    (numbers, ".{0,30}").prop_map(|(numbers, imprint)| {
        let [point_angle, coat_density, dip, face, margin, ..] = numbers.clone();
        let [.., end_margin, fall, tin_width, tin_height, tin_length] = numbers;
        FinishDraft {
            point_angle,
            coat_density,
            dip,
            face,
            margin,
            end_margin,
            fall,
            tin_width,
            tin_height,
            tin_length,
            imprint,
            ..FinishDraft::new()
        }
    })
}

/// Everything that is told and shown of a pencil is readable.
fn is_shown(pencil: &FinishedPencil) -> Result<(), TestCaseError> {
    let facts = pencil.facts();
    let shown = format!("{facts:?}");
    prop_assert!(readable(&shown), "{}", shown);
    let surface = pencil.surface();
    prop_assert!(surface.corners.iter().all(|number| number.is_finite()));
    let corners = (surface.corners.len() / Surface::STRIDE) as u32;
    prop_assert!(surface.triangles.iter().all(|corner| *corner < corners));
    for sight in Sight::ALL {
        let view = pencil.viewpoint(sight).moved(0.3, -2.0).nearer(1e9);
        prop_assert!(view.matrix(pencil).iter().all(|number| number.is_finite()));
    }
    for unit in UNITS {
        let paper = Paper {
            size: PaperSize::Letter,
            landscape: false,
        };
        drawn(&draw_pencil(pencil, paper, unit).drawing)?;
        prop_assert!(readable(&facts.csv(unit)));
    }
    Ok(())
}

proptest! {
    #[test]
    fn any_finish_is_shown_or_refused_in_words(
        shape in prop::sample::select(Shape::ALL.to_vec()),
        finish in any_finish(),
        sizes in prop::array::uniform5(any_typed()),
        path in any_path(),
    ) {
        let mut draft = BarrelDraft::new("Barrel", shape);
        let good = draft.finish.clone();
        draft.path = path;
        for (finish, sizes) in [(finish.clone(), None), (good, Some(sizes.clone())), (finish, Some(sizes))] {
            let mut draft = draft.clone();
            if let Some([size, height, length, lead, coat]) = sizes {
                draft = BarrelDraft { size, height, length, coat, lead_diameter: lead, ..draft };
            }
            let Ok(barrel) = draft.check() else { continue };
            match finish.check(&barrel) {
                Ok(finish) => is_shown(&FinishedPencil::new(barrel, finish, 0.4, 2.0))?,
                Err(problems) => {
                    prop_assert!(!problems.is_empty());
                    for problem in problems {
                        for unit in UNITS {
                            prop_assert!(readable(&problem.message(unit)));
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn a_blunt_point_goes_with_any_outline(path in any_path(), angle in 10.0_f64..90.0, face in 1..6_u32) {
        let mut draft = BarrelDraft::new("Barrel", Shape::Free);
        draft.path = path;
        draft.finish.point_angle = Typed::Number(angle);
        draft.finish.face = Typed::Number(f64::from(face));
        draft.finish.imprint = "Any".to_owned();
        if let Ok(barrel) = draft.check()
            && let Ok(finish) = draft.finish.check(&barrel)
        {
            is_shown(&FinishedPencil::new(barrel, finish, 0.4, 2.0))?;
        }
    }
}
