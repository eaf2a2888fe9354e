//! Glue, clamps, density and leads against guides and handbooks.

use solver::wood::density;
use solver::{Conditions, RunDraft, RunNeeds, Seam, Setup, Shape, Typed, lay_out, run_needs};
use tests::shop;

/// What ten gross take of hexagons on slats of 184 × 73 mm.
fn needs(change: impl FnOnce(&mut RunDraft)) -> RunNeeds {
    let barrel = shop::barrel(Shape::Hexagonal, 7.0, 0.5);
    let slat = shop::slat(73.0, 5.0);
    let rules = shop::rules(|_| ());
    let setup = Setup {
        barrel: &barrel,
        turn: barrel.turn(Seam::ThroughFaces),
        top: &slat,
        bottom: &slat,
        rules: &rules,
    };
    let mut draft = RunDraft::new();
    change(&mut draft);
    let run = draft.check().expect("the case lies in the ranges");
    let conditions = Conditions { moisture: 8.0 };
    run_needs(&setup, &lay_out(&setup), &run, conditions).expect("it can be laid")
}

#[test]
fn glue_and_clamp_force_of_a_sandwich_by_a_guide_of_a_glue_maker() {
    // 170 to 250 g/m², 100 to 150 psi on woods of low density; one sandwich of 184 × 73 mm is
    // 0.013432 m²: 2.28 to 3.36 g, 9.26 to 13.89 kN (computed).
    for (spread, grams, psi, kilonewtons) in [
        (170.0, "2.28", 100.0, "9.26"),
        (250.0, "3.36", 150.0, "13.89"),
    ] {
        let needs = needs(|draft| {
            draft.glue_spread = Typed::Number(spread);
            draft.clamp_pressure = Typed::Number(psi * 0.006_894_757_293_168);
        });
        assert!((needs.glue.area.in_square_millimetres() - 13_432.0).abs() < 1e-9);
        assert_eq!(format!("{:.2}", needs.glue.sandwich), grams);
        assert_eq!(format!("{:.2}", needs.clamp.force), kilonewtons);
    }
}

#[test]
fn density_at_a_moisture_content_is_that_of_the_handbook() {
    // USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190, chapter 4 (recalled), from basic
    // specific gravity (Table 5-3, recalled) and volumetric shrinkage (Table 4-3), at 12 %.
    for (gravity, shrinkage, printed) in
        [(0.35, 7.7, 411.0), (0.32, 15.8, 395.9), (0.40, 12.7, 485.0)]
    {
        let found = density(gravity, shrinkage, 12.0);
        assert!((found - printed).abs() < 0.05, "{found} for {printed}");
    }
    // Ovendry wood has shrunk whole, and green wood not at all.
    assert!((density(0.35, 7.7, 0.0) - 350.0 / 0.923).abs() < 1e-9);
    assert!((density(0.35, 7.7, 60.0) - 560.0).abs() < 1e-9);
}

#[test]
fn the_mass_of_leads_is_that_of_cylinders() {
    // 2.2 mm and 1.98 g/cm³ (a supplier's density): π/4 · 0.22² · length in cm · 1.98, a gross of them.
    let needs = needs(|draft| draft.lead_density = Typed::Number(1.98));
    let each =
        std::f64::consts::PI / 4.0 * 0.22 * 0.22 * 1.98 * needs.leads.length.in_millimetres()
            / 10.0;
    assert!((needs.leads.gross_mass - 144.0 * each).abs() < 1e-9);
    // 2 % break.
    let laid = needs.leads.laid as f64;
    assert_eq!(needs.leads.bought, (laid / 0.98).ceil() as u64);
}
