//! What the search rests on, tried out.

use crate::barrel::BarrelDraft;
use crate::field::Typed;
use crate::outline::Outline;
use crate::quantity::{Angle, Length};
use crate::shape::Shape;
use proptest::prelude::*;

/// Rounding that is let pass, mm.
const ROUNDING: f64 = 1e-9;

/// A drawn curve with a corner and a hollow, seen from every point of the lead axis as a whole.
const CURVE: &str = "M0 0 C2 -3 6 -2 8 0 C10 4 7 8 4 7 C1 8 -2 4 0 0 Z";

fn draft(shape: Shape, size: f64, corner: f64, coat: f64) -> BarrelDraft {
    let mut draft = BarrelDraft::new("", shape);
    draft.size = Typed::Number(size);
    draft.corner_radius = Typed::Number(corner);
    draft.coat = Typed::Number(coat);
    draft.lead_diameter = Typed::Number(0.5);
    CURVE.clone_into(&mut draft.path);
    draft
}

/// Width, both heights, nearest distance, and the nearer end of the chord at a level, mm.
fn measures(outline: &Outline, level: Length) -> [f64; 5] {
    let extents = outline.extents();
    let nearer = |(left, right): (Length, Length)| (-left).min(right);
    let chord = outline
        .chord(level)
        .map_or(Length::millimetres(-100.0), nearer);
    [
        extents.width(),
        extents.up,
        extents.down,
        outline.least_distance(),
        chord,
    ]
    .map(Length::in_millimetres)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]

    /// On every side but through a chord: a level line may lie beside a shape that is turned.
    #[test]
    fn a_larger_barrel_and_a_thinner_coat_leave_more_wood_on_every_side(
        shape in 0..Shape::ALL.len(), size in 4.0_f64..14.0, share in 0.0_f64..=1.0,
        coat in 0.0_f64..0.6, face in prop_oneof![Just(None), (0.0_f64..60.0).prop_map(Some)],
        turn in 0.0_f64..360.0, step in prop_oneof![1e-7_f64..1e-4, 1e-3_f64..0.5], by_coat: bool,
    ) {
        let corner = share * size / 2.0;
        // Not too round for the larger of the two.
        let face_of = size + 0.5 - corner;
        let made = |size: f64, coat: f64| {
            let mut draft = draft(Shape::ALL[shape], size, corner, coat);
            if let Some(more) = face {
                draft.face_radius = Typed::Number(face_of + more);
            }
            draft.check().ok().map(|barrel| barrel.bare(Angle::degrees(turn)))
        };
        let (size_after, coat_after) = if by_coat { (size, coat - step) } else { (size + step, coat) };
        if let (Some(one), Some(other)) = (made(size, coat), made(size_after, coat_after)) {
            let (one, other) = (measures(&one, Length::ZERO), measures(&other, Length::ZERO));
            for (one, other) in one.into_iter().zip(other) {
                prop_assert!(other >= one - ROUNDING, "{one} and then {other}");
            }
        }
    }

    #[test]
    fn what_a_bulged_triangle_measures_has_one_summit_as_its_corners_are_rounded(
        size in 4.0_f64..14.0, more in 0.0_f64..1.0, coat in 0.0_f64..0.6,
        turn in prop_oneof![Just(0.0), Just(180.0), Just(90.0), 0.0_f64..360.0], level in -3.0_f64..3.0,
    ) {
        // From as round as can be to all but flat.
        let face = size * (0.5 + more * more * more * 50.0);
        let least = (size - face).max(0.0);
        let mut draft = draft(Shape::Triangular, size, 0.0, coat);
        draft.face_radius = Typed::Number(face);
        let mut measured = |corner: f64| {
            draft.corner_radius = Typed::Number(corner);
            let bare = draft.check().ok()?.bare(Angle::degrees(turn));
            Some(measures(&bare, Length::millimetres(level)))
        };
        let mut last: Option<[f64; 5]> = None;
        let mut falls = [false; 5];
        for k in 0..=120 {
            let corner = least + (size / 2.0 - least) * f64::from(k) / 120.0;
            let Some(now) = measured(corner) else { continue };
            if let Some(last) = last {
                for (which, (last, now)) in last.into_iter().zip(now).enumerate() {
                    let rises = now > last + ROUNDING;
                    prop_assert!(!(rises && falls[which]), "{which} rises again to {now} at {corner}");
                    falls[which] |= now < last - ROUNDING;
                    let must_rise = corner <= coat || which == 3;
                    prop_assert!(!must_rise || !falls[which], "{which} falls to {now} at {corner}");
                }
            }
            last = Some(now);
        }
    }
}
