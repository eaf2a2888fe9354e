//! Dice against integrals, certainty without errors, and what must grow when something shrinks.

use super::*;
use crate::accuracy::{Accuracy, AccuracyDraft, Offsets, Term};
use crate::barrel::{Barrel, BarrelDraft};
use crate::field::Typed;
use crate::layout::{Layout, Setup, lay_out};
use crate::quantity::{Angle, Length};
use crate::rules::{Rules, RulesDraft};
use crate::shape::Shape;
use crate::slat::{Slat, SlatDraft};
use proptest::prelude::*;

/// A layout and what it is laid from.
struct Laid {
    barrel: Barrel,
    slat: Slat,
    rules: Rules,
    turn: Angle,
}

impl Laid {
    /// Hexagons seam through faces on slats of a width.
    fn hexagons(width: f64) -> Self {
        Self::of(Shape::Hexagonal, width, 30.0, &|_| ())
    }

    fn of(shape: Shape, width: f64, turn: f64, change: &dyn Fn(&mut RulesDraft)) -> Self {
        let mut barrel = BarrelDraft::new("", shape);
        barrel.path = "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z".to_owned();
        let barrel = barrel.check().unwrap();
        let mut slat = SlatDraft::new("");
        slat.width = Typed::Number(width);
        let mut rules = RulesDraft::new();
        change(&mut rules);
        Self {
            barrel,
            slat: slat.check().unwrap(),
            rules: rules.check().unwrap(),
            turn: Angle::degrees(turn),
        }
    }

    fn setup(&self) -> Setup<'_> {
        Setup {
            barrel: &self.barrel,
            turn: self.turn,
            top: &self.slat,
            bottom: &self.slat,
            rules: &self.rules,
        }
    }

    fn layout(&self) -> Layout {
        lay_out(&self.setup())
    }

    fn trial(&self, accuracy: &Accuracy) -> Trial {
        Trial::new(&self.setup(), &self.layout(), accuracy)
    }
}

/// An accuracy without any error but those named.
fn errors(named: &[(Term, f64)]) -> Accuracy {
    let mut draft = AccuracyDraft::new("");
    for term in Term::ALL {
        draft.error_mut(term).size = Typed::Number(0.0);
    }
    for (term, deviation) in named {
        draft.error_mut(*term).size = Typed::Number(*deviation);
    }
    draft.check().unwrap()
}

fn run(trial: &Trial, seed: u64, blocks: u64) -> Tally {
    trial.simulate(seed, 0..blocks, &mut |_| true)
}

/// Within five standard errors of a share, and a hair for shares near 0 or 1.
fn agrees(tally: &Tally, bad: u64, pencils: u64, chance: f64) {
    let expected = (1.0 - chance) * pencils as f64;
    // Common errors make the pencils of a sandwich alike: no more is known than from sandwiches.
    let error = (expected * pencils as f64 / tally.sandwiches() as f64).sqrt();
    assert!(
        (bad as f64 - expected).abs() <= 5.0 * error + 3.0,
        "{bad} bad of {pencils}, expected {expected}"
    );
}

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
fn blocks_can_be_shared_out_and_merged_in_any_order() {
    let trial = Laid::hexagons(74.0).trial(&AccuracyDraft::new("").check().unwrap());
    let whole = run(&trial, 9, 6);
    let part = |blocks| trial.simulate(9, blocks, &mut |_| true);
    let mut shared = part(4..6);
    shared.merge(&part(0..1));
    shared.merge(&part(1..4));
    assert_eq!(shared, whole);
    assert_eq!(whole.sandwiches(), 6 * BLOCK);
    assert_eq!(whole.centres().len(), 400);
    assert_ne!(run(&trial, 10, 6), whole);
}

#[test]
fn work_ends_when_it_is_told_to() {
    let trial = Laid::hexagons(74.0).trial(&errors(&[]));
    let mut heard = 0;
    let tally = trial.simulate(1, 0..100, &mut |_| {
        heard += 1;
        heard < 3
    });
    assert_eq!(tally.sandwiches(), 3 * BLOCK);
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

#[test]
fn a_single_pencil_is_first_and_last() {
    let accuracy = errors(&[
        (Term::GlueShift, 0.3),
        (Term::SlatWidth, 0.2),
        (Term::ShapingPosition, 0.1),
        (Term::ShapingAcross, 0.2),
    ]);
    let laid = Laid::of(Shape::Hexagonal, 20.0, 30.0, &|rules| {
        rules.edge = Typed::Number(0.0);
        rules.most = Typed::Number(1.0);
        rules.pitch = Typed::Number(20.0);
    });
    let mut trial = laid.trial(&accuracy);
    // Only 0.4 mm are left beside it on the right, and 0.3 on the left.
    trial.row.first = trial.left + 0.3;
    trial.bottom_width = trial.row.first + trial.right + 0.4;
    trial.top_width = trial.bottom_width;
    let tally = run(&trial, 4, 200);
    let complete = trial.prospect().positions[0].complete;
    assert!(complete > 0.3 && complete < 0.9);
    agrees(
        &tally,
        tally.faulty(Fault::Incomplete),
        tally.pencils(),
        complete,
    );
}

#[test]
fn dice_and_integrals_agree() {
    // Errors of ten times what is usual, so that every fault is common.
    let wide = |term| (term, 10.0 * term_size(term));
    let all: Vec<(Term, f64)> = Term::ALL.map(wide).to_vec();
    let shifted = Offsets {
        top_width: Length::millimetres(-0.2),
        bottom_width: Length::millimetres(-0.9),
        bottom_thickness: Length::millimetres(0.05),
    };
    for (laid, accuracy) in [
        (Laid::hexagons(74.0), errors(&all)),
        (
            Laid::hexagons(74.0),
            errors(&all).with_offsets(shifted).unwrap(),
        ),
        (
            Laid::hexagons(72.5),
            errors(&[(Term::GlueShift, 0.08), (Term::GrooveDepth, 0.03)]),
        ),
        (
            Laid::hexagons(74.0),
            AccuracyDraft::new("").check().unwrap(),
        ),
    ] {
        let trial = laid.trial(&accuracy);
        let (prospect, tally) = (trial.prospect(), run(&trial, 11, 100));
        let pencils = tally.pencils();
        agrees(
            &tally,
            tally.faulty(Fault::Eccentric),
            pencils,
            prospect.centred,
        );
        agrees(
            &tally,
            tally.faulty(Fault::TightGroove),
            pencils,
            prospect.admitted,
        );
        let incomplete: f64 = prospect.positions.iter().map(|at| 1.0 - at.complete).sum();
        let all = 1.0 - incomplete / prospect.positions.len() as f64;
        agrees(&tally, tally.faulty(Fault::Incomplete), pencils, all);
        for (position, &good) in prospect.positions.iter().zip(tally.good_at()) {
            if let Some(chance) = position.good {
                agrees(
                    &tally,
                    tally.sandwiches() - good,
                    tally.sandwiches(),
                    chance,
                );
            }
        }
    }
}

fn term_size(term: Term) -> f64 {
    term.field().spec().initial
}

#[test]
fn a_face_fails_as_often_as_its_distribution_says() {
    // Only up and down, with 0.15 mm to spare at the level faces.
    let accuracy = errors(&[(Term::ShapingUp, 0.1)]);
    let laid = Laid::of(Shape::Hexagonal, 74.0, 0.0, &|rules| {
        rules.wall = Typed::Number(3.42 - 1.15 - 0.15);
    });
    let trial = laid.trial(&accuracy);
    let prospect = trial.prospect();
    let upright = prospect
        .faces
        .iter()
        .filter(|face| face.normal.x.abs() < 1e-9);
    let fails: f64 = upright.map(|face| 1.0 - face.holds).sum();
    let tally = run(&trial, 2, 100);
    agrees(
        &tally,
        tally.faulty(Fault::ThinWall),
        tally.pencils(),
        1.0 - fails,
    );
}

#[test]
fn each_fault_alone_is_counted_alone() {
    let accuracy = errors(&[(Term::LeadDiameter, 0.1)]);
    let tally = run(&Laid::hexagons(74.0).trial(&accuracy), 1, 4);
    let tight = tally.faulty(Fault::TightGroove);
    assert!(tight > 0);
    assert_eq!(tally.only_faulty(Fault::TightGroove), tight);
    assert_eq!(
        tally.faulty(Fault::Eccentric) + tally.faulty(Fault::Incomplete),
        0
    );
    let good: u64 = tally.good_at().iter().sum();
    assert_eq!(good + tight, tally.pencils());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn any_accuracy_up_to_the_ends_of_the_ranges_can_be_made(
        kind in 0..Shape::ALL.len(), turn in 0.0_f64..360.0, width in 20.0_f64..110.0,
        sizes in proptest::collection::vec(prop_oneof![Just(0.0), Just(5.0), 0.0_f64..5.0, 0.0_f64..0.1], Term::COUNT),
        limit in prop_oneof![Just(0.0), 0.0_f64..2.0],
    ) {
        let laid = Laid::of(Shape::ALL[kind], width, turn, &|rules| {
            rules.eccentricity = Typed::Number(limit);
        });
        let named: Vec<(Term, f64)> = Term::ALL.into_iter().zip(sizes).collect();
        let trial = laid.trial(&errors(&named));
        let tally = trial.simulate(5, 0..1, &mut |_| true);
        prop_assert_eq!(tally.histogram().iter().sum::<u64>(), BLOCK);
        let good = tally.good();
        prop_assert!((0.0..=trial.across() as f64).contains(&good.mean) && good.error.is_finite());
        prop_assert!(tally.centres().iter().all(|centre| centre.x.is_finite() && centre.y.is_finite()));
        let prospect = trial.prospect();
        let mut chances = vec![prospect.centred, prospect.admitted];
        chances.extend(prospect.positions.iter().map(|position| position.complete));
        chances.extend(prospect.positions.iter().filter_map(|position| position.good));
        chances.extend(prospect.faces.iter().map(|face| face.holds));
        prop_assert!(chances.iter().all(|chance| (-1e-12..=1.0 + 1e-12).contains(chance)), "{chances:?}");
    }

    #[test]
    fn with_the_same_dice_a_looser_limit_never_loses_a_pencil(
        limit in 0.0_f64..0.3, more in 0.0_f64..0.3, size in 0.0_f64..0.2,
    ) {
        let accuracy = errors(&Term::ALL.map(|term| (term, size)));
        let good = |limit: f64| {
            let laid = Laid::of(Shape::Hexagonal, 74.0, 30.0, &|rules| {
                rules.eccentricity = Typed::Number(limit);
            });
            run(&laid.trial(&accuracy), 8, 1).good().mean
        };
        prop_assert!(good(limit) <= good(limit + more));
    }

    #[test]
    fn with_the_same_dice_smaller_errors_never_lose_a_pencil(size in 0.0_f64..0.3, share in 0.0_f64..1.0) {
        // All errors shrink alike, towards a pencil in the middle of everything that is asked.
        let good = |size: f64| {
            let accuracy = errors(&Term::ALL.map(|term| (term, size)));
            run(&Laid::hexagons(74.0).trial(&accuracy), 8, 1).good().mean
        };
        prop_assert!(good(size) <= good(size * share));
    }
}

#[test]
fn shares_of_all_errors_add_up_to_one() {
    let trial = Laid::hexagons(74.0).trial(&AccuracyDraft::new("").check().unwrap());
    let shares = trial.shares();
    let sums = [
        shares.iter().map(|one| one.across).sum::<f64>(),
        shares.iter().map(|one| one.upright).sum::<f64>(),
        shares.iter().map(|one| one.off_centre).sum::<f64>(),
        shares.iter().map(|one| one.wall).sum::<f64>(),
    ];
    assert!(sums.iter().all(|sum| (sum - 1.0).abs() < 1e-12), "{sums:?}");
    let none = Laid::hexagons(74.0).trial(&errors(&[])).shares();
    assert!(
        none.iter()
            .all(|one| one.across + one.upright + one.off_centre + one.wall == 0.0)
    );
}

#[test]
fn the_wall_of_level_faces_is_a_matter_of_height() {
    let accuracy = errors(&[(Term::ShapingUp, 0.05), (Term::ShapingAcross, 0.01)]);
    let level = Laid::of(Shape::Hexagonal, 74.0, 0.0, &|_| ()).trial(&accuracy);
    assert!((level.shares()[Term::ShapingUp as usize].wall - 1.0).abs() < 1e-12);
}

#[test]
fn the_shares_are_those_of_the_centres_that_are_made() {
    // Variances of 100 blocks of one pencil each, within five standard errors √(2/N).
    let accuracy = errors(&Term::ALL.map(|term| (term, 10.0 * term_size(term))));
    let trial = Laid::hexagons(74.0).trial(&accuracy);
    let (across, upright) = (trial.scale.across(), trial.scale.upright);
    let (mut square, mut height, mut count) = (0.0, 0.0, 0.0);
    for seed in 0..100 {
        let tally = run(&trial, seed, 1);
        // The first pencil of each sandwich: pencils of one sandwich hang together.
        for centre in tally.centres().iter().step_by(10) {
            square += centre.x * centre.x;
            height += centre.y * centre.y;
            count += 1.0;
        }
    }
    let error = 5.0 * (2.0_f64 / count).sqrt();
    let expected = across.deviation * across.deviation;
    assert!((square / count / expected - 1.0).abs() < error);
    let expected = upright.deviation * upright.deviation;
    assert!((height / count / expected - 1.0).abs() < error);
}

#[test]
fn halving_an_error_gains_what_the_dice_say_without_it() {
    let accuracy = errors(&[(Term::ShapingUp, 0.15), (Term::LeadDiameter, 0.02)]);
    let trial = Laid::hexagons(74.0).trial(&accuracy);
    let gains = trial.halvings(3, 0..8, &mut |_| true);
    let whole = run(&trial, 3, 8).good();
    let half = run(&trial.halved(Term::ShapingUp), 3, 8).good();
    let (term, gain) = gains[Term::ShapingUp as usize];
    assert_eq!(term, Term::ShapingUp);
    assert!((gain.mean - (half.mean - whole.mean)).abs() < 1e-12 && gain.mean > 0.4);
    // Made with the same dice, the difference is known better than from two runs.
    let apart = (whole.error * whole.error + half.error * half.error).sqrt();
    assert!(gain.error < apart);
    let (_, none) = gains[Term::GlueShift as usize];
    assert_eq!((none.mean, none.error), (0.0, 0.0));
}

#[test]
fn the_laid_layout_is_among_the_choices_as_the_dice_find_it_alone() {
    let accuracy = errors(&Term::ALL.map(|term| (term, 3.0 * term_size(term))));
    for change in [
        |_: &mut RulesDraft| (),
        |rules: &mut RulesDraft| rules.spacing = crate::rules::Spacing::Spread,
        |rules: &mut RulesDraft| rules.spacing = crate::rules::Spacing::Given,
    ] {
        let laid = Laid::of(Shape::Hexagonal, 74.0, 30.0, &change);
        let alone = run(&laid.trial(&accuracy), 5, 2).good();
        let pitches = choices(
            &laid.setup(),
            &accuracy,
            Varied::Pitch,
            5,
            0..2,
            &mut |_| true,
        );
        let same = pitches.list[pitches.laid.unwrap()];
        assert!((same.pitch - laid.layout().pitch()).abs() <= Length::SLACK);
        assert_eq!(same.good, alone);
        assert!(pitches.list.len() > 5);
    }
    let laid = Laid::hexagons(74.0);
    let counts = choices(
        &laid.setup(),
        &accuracy,
        Varied::Count,
        5,
        0..2,
        &mut |_| true,
    );
    let same = counts.list[counts.laid.unwrap()];
    assert_eq!(same.good, run(&laid.trial(&accuracy), 5, 2).good());
}

#[test]
fn wider_pitches_only_bring_the_outer_pencils_nearer_to_the_edges() {
    let accuracy = AccuracyDraft::new("").check().unwrap();
    let laid = Laid::hexagons(74.0);
    let pitches = choices(
        &laid.setup(),
        &accuracy,
        Varied::Pitch,
        5,
        0..8,
        &mut |_| true,
    );
    assert_eq!(pitches.best, Some(0));
    let good: Vec<f64> = pitches.list.iter().map(|choice| choice.good.mean).collect();
    assert!(good.is_sorted_by(|one, other| one >= other), "{good:?}");
    // At the widest pitch the outer pencils touch the edges, and more than half of them fail.
    let widest = pitches.list.last().unwrap();
    assert!(widest.edge.abs() <= Length::SLACK && widest.good.mean < 9.0);
    assert!(pitches.list[0].ties() && !widest.ties());
    assert!(widest.gross_price > pitches.list[0].gross_price);
}

#[test]
fn the_price_of_a_gross_is_that_of_its_slats() {
    let laid = Laid::hexagons(74.0);
    let counts = choices(
        &laid.setup(),
        &errors(&[]),
        Varied::Count,
        1,
        0..1,
        &mut |_| true,
    );
    let needs = crate::ranking::GrossNeeds::of(&laid.setup(), &laid.layout()).unwrap();
    let best = counts.list[counts.best.unwrap()];
    assert!((best.gross_price.unwrap() / needs.price - 1.0).abs() < 1e-12);
}

#[test]
fn where_nothing_fits_there_is_no_choice() {
    let laid = Laid::of(Shape::Hexagonal, 20.0, 30.0, &|rules| {
        rules.edge = Typed::Number(9.0);
    });
    let accuracy = errors(&[]);
    let pitches = choices(
        &laid.setup(),
        &accuracy,
        Varied::Pitch,
        1,
        0..1,
        &mut |_| true,
    );
    assert_eq!(
        (pitches.list.len(), pitches.best, pitches.laid),
        (0, None, None)
    );
    // By count the allowance is put aside: two fit in 20 mm.
    let counts = choices(
        &laid.setup(),
        &accuracy,
        Varied::Count,
        1,
        0..1,
        &mut |_| true,
    );
    assert_eq!(
        (counts.list.len(), counts.best, counts.laid),
        (2, Some(1), None)
    );
}

/// Expected good pencils by integrals and by dice, within four standard errors.
#[track_caller]
fn expectation_agrees(trial: &Trial, what: &str) {
    let expected = trial.prospect().good().unwrap();
    let good = run(trial, 21, 100).good();
    let hair = 1e-4;
    assert!(
        (good.mean - expected).abs() <= 4.0 * good.error + hair,
        "{what}: {expected} by integrals, {good:?} by dice"
    );
}

#[test]
fn the_expected_good_pencils_are_those_of_the_dice() {
    let wide = |term| (term, 6.0 * term_size(term));
    let all: Vec<(Term, f64)> = Term::ALL.map(wide).to_vec();
    let alone = |term: Term| errors(&[(term, 0.12)]);
    let mut lines: Vec<Accuracy> = Term::ALL.map(alone).to_vec();
    lines.push(errors(&all));
    lines.push(AccuracyDraft::new("").check().unwrap());
    let narrow = Offsets {
        top_width: Length::millimetres(-0.1),
        bottom_width: Length::millimetres(0.05),
        bottom_thickness: Length::millimetres(0.04),
    };
    lines.push(errors(&all).with_offsets(narrow).unwrap());
    for (at, line) in lines.iter().enumerate() {
        // Ten take 72.0 mm: from pencils that reach over an edge every other time to none.
        for width in [72.0, 72.1, 72.4, 74.0] {
            let tight = Laid::of(Shape::Hexagonal, width, 30.0, &|rules| {
                rules.edge = Typed::Number(0.0);
            });
            let trial = tight.trial(line);
            assert_eq!(trial.across(), 10);
            expectation_agrees(&trial, &format!("line {at} on {width}"));
        }
        let single = Laid::of(Shape::Round, 20.0, 0.0, &|rules| {
            rules.edge = Typed::Number(0.0);
            rules.most = Typed::Number(1.0);
        });
        let mut trial = single.trial(line);
        trial.row.first = trial.left + 0.05;
        trial.bottom_width = trial.row.first + trial.right + 0.1;
        trial.top_width = trial.row.first + trial.right + 0.12;
        expectation_agrees(&trial, &format!("a single pencil of line {at}"));
    }
}

#[test]
fn a_position_is_as_good_as_it_is_complete_where_nothing_else_can_fail() {
    // The chance of a complete pencil is an integral over other variables.
    for width in [72.0, 72.1, 72.3] {
        let line = errors(&[
            (Term::GlueShift, 0.03),
            (Term::SlatWidth, 0.05),
            (Term::ShapingPosition, 0.04),
            (Term::ShapingAcross, 0.05),
        ]);
        let trial = Laid::of(Shape::Hexagonal, width, 30.0, &|rules| {
            rules.edge = Typed::Number(0.0);
            rules.clearance = Typed::Number(0.5);
            rules.eccentricity = Typed::Number(0.6);
            rules.wall = Typed::Number(0.2);
        })
        .trial(&line);
        for position in trial.prospect().positions {
            let good = position.good.unwrap();
            assert!((good - position.complete).abs() < 1e-9, "{position:?}");
        }
    }
}
