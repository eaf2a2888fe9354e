//! The nearest gain against formulas worked out by hand, and against trying values out one by one.

use super::*;
use crate::layout::lay_out;
use crate::quantity::Length;
use crate::threshold::{Gain, GainKind, GainLimits, GainProof, nearest_gains};
use proptest::prelude::*;

fn limits(size: f64, corner: f64, coat: f64) -> GainLimits {
    let [size, corner, coat] = [size, corner, coat].map(Length::millimetres);
    GainLimits { size, corner, coat }
}

fn gains(project: &ProjectDraft, limits: &GainLimits) -> Vec<Gain> {
    nearest_gains(project, limits, &mut |_, _| ()).unwrap()
}

/// Pencils that a project gives on one stock, whichever usual way they lie.
fn best_on(project: &ProjectDraft, slat: usize) -> u32 {
    let mut project = project.clone();
    let id = project.slats[slat].id;
    (project.layout.top, project.layout.bottom) = (id, id);
    let shape = project.barrels[0].draft.shape;
    let ways = shape.seams().iter().map(|seam| {
        project.layout.way = Way::Usual(*seam);
        let parts = project.check_layout().ok();
        parts.map_or(0, |parts| lay_out(&parts.setup()).pencils())
    });
    ways.max().unwrap_or(0)
}

#[test]
fn the_eleventh_hexagon_asks_for_less_across_flats() {
    // 11·b + 10·0.4 + 2·1.0 = 74 with b the bare size: b = 68/11, and 0.16 of coat over it.
    let project = hexagons();
    let found = gains(&project, &limits(1.0, 0.0, 0.0));
    let gain = found.iter().find(|gain| gain.slat == 1).unwrap();
    let expected = 68.0 / 11.0 + 0.16;
    assert_eq!(gain.steps.len(), 1);
    assert!((gain.steps[0].to - expected).abs() < 2e-7, "{gain:?}");
    assert_eq!((gain.pencils_before, gain.pencils_after), (10, 11));
    assert_eq!(gain.proof, GainProof::Smallest);
    assert!((gain.distance - (7.0 - expected)).abs() < 1e-6);
    // And what is applied gives that many.
    let applied = gain
        .rounded(&project, crate::LengthUnit::Millimetre)
        .applied(&project);
    assert_eq!(best_on(&applied, 1), 11);
    assert_eq!(applied.barrels[0].draft.size, Typed::Number(6.34));
    // It asks for more than the limit allows.
    let narrow = limits(0.65, 0.0, 0.0);
    assert_eq!(gains(&project, &narrow).len(), 0);
}

#[test]
fn where_one_size_is_not_enough_two_are_tried() {
    // 0.6 off the size leaves 0.0582 to go; a thicker coat takes twice its growth off the wood.
    let project = hexagons();
    let found = gains(&project, &limits(0.6, 0.0, 0.1));
    let gain = found.iter().find(|gain| gain.slat == 1).unwrap();
    assert_eq!(gain.proof, GainProof::Tried);
    assert_eq!(gain.steps.len(), 2);
    let (size, coat) = (gain.steps[0], gain.steps[1]);
    assert_eq!((size.field, coat.field), (Field::AcrossFlats, Field::Coat));
    // Together they leave what eleven ask for.
    assert!(
        (size.to - 2.0 * coat.to - 68.0 / 11.0).abs() < 2e-7,
        "{gain:?}"
    );
}

#[test]
fn a_cheaper_stock_gives_as_many_after_the_least_change() {
    let mut project = hexagons();
    let cheap = &mut project.slats[0].draft;
    cheap.width = Typed::Number(73.5);
    cheap.pack_price = Typed::Number(60.0);
    let found = gains(&project, &limits(0.3, 0.0, 0.0));
    let gain = found
        .iter()
        .find(|gain| gain.kind == GainKind::CheaperStock)
        .unwrap();
    // Ten on 73.5: 10·b + 9·0.4 + 2 = 73.5.
    let expected = (73.5 - 5.6) / 10.0 + 0.16;
    assert!((gain.steps[0].to - expected).abs() < 2e-7, "{gain:?}");
    assert_eq!(
        (gain.slat, gain.pencils_before, gain.pencils_after),
        (0, 10, 10)
    );
    assert!(gain.price_after.unwrap() < gain.price_before.unwrap());
}

#[test]
fn nothing_that_may_move_gains_nothing() {
    assert_eq!(gains(&hexagons(), &limits(0.0, 0.0, 0.0)), []);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// No value nearer than the one found gains as much, and where none is found none within the limit
    /// does: tried at 400 values either way.
    #[test]
    fn no_nearer_change_of_one_size_does_as_much(
        shape in prop::sample::select(vec![Shape::Round, Shape::Hexagonal, Shape::Triangular, Shape::Flat, Shape::Oval]),
        size in 620..800_u32, corner in 0..150_u32, width in 600..800_u32, coat in 0..15_u32,
        which in 0..3_usize, wall in 100..180_u32,
    ) {
        let mut project = project(shape, shape.seams()[0]);
        let barrel = &mut project.barrels[0].draft;
        barrel.size = Typed::Number(f64::from(size) / 100.0);
        barrel.height = Typed::Number(6.5);
        barrel.corner_radius = Typed::Number(f64::from(corner) / 100.0);
        barrel.coat = Typed::Number(f64::from(coat) / 100.0);
        project.rules.wall = Typed::Number(f64::from(wall) / 100.0);
        project.slats[0].draft.width = Typed::Number(f64::from(width) / 10.0);
        project.slats.truncate(1);
        (project.layout.top, project.layout.bottom) = (Id(3), Id(3));
        let reach = [0.4, 0.5, 0.1][which];
        let mut allowed = [0.0; 3];
        allowed[which] = reach;
        let found = nearest_gains(&project, &limits(allowed[0], allowed[1], allowed[2]), &mut |_, _| ());
        let Ok(found) = found else { return Ok(()) };
        let field = [shape.size_field(), Field::CornerRadius, Field::Coat][which];
        let before = best_on(&project, 0);
        let spec = field.spec();
        let nearest = found.first().map_or(reach, |gain| (gain.steps[0].to - gain.steps[0].from).abs());
        if let Some(gain) = found.first() {
            prop_assert_eq!(gain.pencils_before, before);
            let parts = gain.applied(&project).check_layout().unwrap();
            prop_assert_eq!(lay_out(&parts.setup()).pencils(), gain.pencils_after);
            prop_assert!(gain.pencils_after > before && nearest <= reach + 1e-9);
        }
        for k in 1..400_u32 {
            let step = f64::from(k) / 400.0 * nearest - 1e-6;
            for sign in [-1.0, 1.0] {
                let mut tried = project.clone();
                let barrel = &mut tried.barrels[0].draft;
                let typed = match field {
                    Field::CornerRadius => &mut barrel.corner_radius,
                    Field::Coat => &mut barrel.coat,
                    _ => &mut barrel.size,
                };
                let Ok(today) = typed.read(field) else { break };
                let value = today + sign * step;
                if value < spec.least || value > spec.most || (field == Field::CornerRadius && !shape.has_corners()) {
                    continue;
                }
                *typed = Typed::Number(value);
                prop_assert!(best_on(&tried, 0) <= before, "{:?} at {} gives more: {:?}", field, value, found);
            }
        }
    }
}
