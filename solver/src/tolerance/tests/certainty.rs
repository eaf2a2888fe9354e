//! Without errors all is certain.

use super::*;
use crate::accuracy::Offsets;
use crate::quantity::Length;

#[test]
fn without_errors_every_pencil_is_good_for_certain() {
    for shape in Shape::ALL {
        let laid = Laid::of(shape, 74.0, 10.0, &|rules| {
            rules.wall = Typed::Number(0.2);
        });
        let trial = laid.trial(&errors(&[]));
        let tally = run(&trial, 1, 1);
        let good = tally.good();
        assert_eq!(
            (good.mean, good.error),
            (trial.across() as f64, 0.0),
            "{shape:?}"
        );
        let prospect = trial.prospect();
        assert_eq!((prospect.centred, prospect.admitted), (1.0, 1.0));
        assert!(
            prospect
                .positions
                .iter()
                .all(|position| position.complete == 1.0)
        );
        assert!(
            tally
                .centres()
                .iter()
                .all(|centre| (centre.x, centre.y) == (0.0, 0.0))
        );
    }
}

#[test]
fn limits_that_are_just_kept_are_kept() {
    // Nothing to spare anywhere: no edge, no clearance, no eccentricity, the whole wall asked.
    let barrel = BarrelDraft::new("", Shape::Hexagonal).check().unwrap();
    let bare = barrel.bare(Angle::degrees(30.0));
    let wall = bare.least_distance() - barrel.lead_diameter() / 2.0;
    let laid = Laid::of(Shape::Hexagonal, 10.0 * 6.84, 30.0, &|rules| {
        for zero in [
            &mut rules.edge,
            &mut rules.land,
            &mut rules.clearance,
            &mut rules.eccentricity,
        ] {
            *zero = Typed::Number(0.0);
        }
        rules.wall = Typed::Number(wall.in_millimetres());
    });
    let trial = laid.trial(&errors(&[]));
    assert_eq!(trial.across(), 10);
    assert_eq!(run(&trial, 3, 1).good().mean, 10.0);
    let prospect = trial.prospect();
    assert_eq!((prospect.centred, prospect.admitted), (1.0, 1.0));
    assert!(prospect.faces.iter().all(|face| face.holds == 1.0));
    assert!(
        prospect
            .positions
            .iter()
            .all(|position| position.complete == 1.0)
    );
}

#[test]
fn where_nothing_fits_nothing_is_good() {
    let trial = Laid::of(Shape::Hexagonal, 20.0, 30.0, &|rules| {
        rules.edge = Typed::Number(9.0);
    })
    .trial(&AccuracyDraft::new("").check().unwrap());
    assert_eq!((trial.across(), run(&trial, 1, 1).good().mean), (0, 0.0));
    assert!(trial.prospect().positions.is_empty());
}

#[test]
fn a_thicker_bottom_slat_lifts_the_lead_and_its_mean_counts() {
    let offset = Offsets {
        bottom_thickness: Length::millimetres(0.1),
        ..Offsets::default()
    };
    let accuracy = errors(&[]).with_offsets(offset).unwrap();
    let trial = Laid::hexagons(74.0).trial(&accuracy);
    let centre = run(&trial, 1, 1).centres()[0];
    assert_eq!((centre.x, centre.y), (0.0, 0.1));
}

#[test]
fn a_narrow_slat_loses_the_last_pencil_only() {
    let offsets = |top: f64, bottom: f64| Offsets {
        top_width: Length::millimetres(top),
        bottom_width: Length::millimetres(bottom),
        ..Offsets::default()
    };
    // The ten take 72.0 mm, in the middle of 74.
    for (offsets, good) in [
        (offsets(-0.9, -0.9), 10.0),
        (offsets(-1.1, 0.0), 9.0),
        (offsets(0.0, -1.1), 9.0),
    ] {
        let accuracy = errors(&[]).with_offsets(offsets).unwrap();
        let tally = run(&Laid::hexagons(74.0).trial(&accuracy), 1, 1);
        assert_eq!(tally.good().mean, good);
        assert_eq!(tally.good_at()[0], BLOCK);
    }
}
