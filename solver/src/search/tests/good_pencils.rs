//! The least money for good pencils, against trying out and against dice.

use super::*;
use crate::accuracy::{Accuracy, AccuracyDraft, Term};
use crate::layout::{Setup, lay_out};
use crate::ranking::GROSS;
use crate::rules::PitchRule;
use crate::tolerance::Trial;
use proptest::prelude::*;

fn line(scale: f64) -> Accuracy {
    let mut draft = AccuracyDraft::new("");
    for term in Term::ALL {
        let size = term.field().spec().initial;
        draft.error_mut(term).size = Typed::Number(size * scale);
    }
    draft.check().unwrap()
}

/// No errors but those of the two heads across.
fn across(deviation: f64) -> Accuracy {
    let mut line = line(0.0);
    for term in [Term::ShapingAcross, Term::GrooveHead] {
        line = line
            .with_deviation(term, Length::millimetres(deviation))
            .unwrap();
    }
    line
}

fn trial(question: &Question<'_>, found: &Found) -> Trial {
    let rules = found.rules(question.rules);
    let setup = Setup {
        barrel: question.barrel,
        turn: found.turn,
        top: &question.slats[found.top],
        bottom: &question.slats[found.bottom],
        rules: &rules,
    };
    Trial::new(&setup, &lay_out(&setup), question.accuracy.unwrap())
}

fn best(answer: &Answer) -> &Found {
    answer.best[Goal::Good as usize].first().unwrap()
}

/// Slats on which ten touch both edges, with no edge allowance.
fn touching(accuracy: Option<&Accuracy>, ask_of: impl FnOnce(&Question<'_>, Answer)) {
    let barrel = barrel(Shape::Hexagonal, 7.0, 0.5).unwrap();
    let rules = rules(|draft| draft.edge = Typed::Number(0.0));
    let slats = [slat(72.02, 5.0, 120.0)];
    let search = searched(Turns::Any, AxisChoice::Any, Pairs::Same, Some(300.0));
    let question = Question {
        barrel: &barrel,
        slats: &slats,
        sets: &[],
        rules: &rules,
        search: &search,
        accuracy,
    };
    ask_of(&question, ask(&question));
}

#[test]
fn one_pencil_more_on_a_tight_edge_can_lose() {
    touching(Some(&line(1.0)), |_, answer| {
        let found = best(&answer);
        assert_eq!((found.across, answer.best[0][0].across), (9, 10));
        assert!(found.good.unwrap() > answer.best[0][0].good.unwrap());
        assert!(found.good_money < answer.best[0][0].good_money);
    });
    // Without errors the tenth is won.
    touching(Some(&line(0.0)), |_, answer| {
        let found = best(&answer);
        assert_eq!((found.across, found.good), (10, Some(10.0)));
        assert!((found.good_money.unwrap() - found.money).abs() < 1e-9);
    });
}

#[test]
fn without_errors_or_without_a_good_pencil_the_other_goals_go_on() {
    touching(None, |_, answer| {
        assert!(answer.best[Goal::Good as usize].is_empty());
        assert!(answer.best[..4].iter().all(|best| !best.is_empty()));
        assert_eq!(
            (answer.best[0][0].good, answer.best[0][0].good_money),
            (None, None)
        );
    });
    let off = line(0.0);
    let offsets = crate::accuracy::Offsets {
        bottom_thickness: Length::millimetres(1.0),
        ..off.offsets()
    };
    touching(off.with_offsets(offsets).as_ref(), |_, answer| {
        assert!(answer.best[Goal::Good as usize].is_empty());
        assert_eq!(
            (answer.best[0][0].good, answer.best[0][0].good_money),
            (Some(0.0), None)
        );
    });
}

#[test]
fn what_is_thrown_out_by_the_rules_is_not_counted_twice() {
    let barrel = barrel(Shape::Hexagonal, 7.0, 0.5).unwrap();
    let rules = rules(|draft| {
        draft.pencil_rejects = Typed::Number(20.0);
        draft.slat_rejects = Typed::Number(10.0);
    });
    let slats = [slat(74.0, 5.0, 120.0)];
    let search = searched(
        Turns::Usual,
        AxisChoice::AsInRules,
        Pairs::Same,
        Some(300.0),
    );
    let line = line(1.0);
    let question = Question {
        barrel: &barrel,
        slats: &slats,
        sets: &[],
        rules: &rules,
        search: &search,
        accuracy: Some(&line),
    };
    let answer = ask(&question);
    let found = best(&answer);
    // The price of the slats as the place of the tolerances tells it, and the set.
    let laid_by = found.rules(&rules);
    let setup = Setup {
        barrel: &barrel,
        turn: found.turn,
        top: &slats[0],
        bottom: &slats[0],
        rules: &laid_by,
    };
    let slats = crate::tolerance::gross_price(&setup, &lay_out(&setup), found.good.unwrap());
    let expected = slats.unwrap() + 30_000.0 / search.year_gross;
    assert!((found.good_money.unwrap() / expected - 1.0).abs() < 1e-12);
}

#[test]
fn good_pencils_that_are_told_are_those_of_the_dice() {
    for accuracy in [line(1.0), line(4.0), across(0.05), across(0.15)] {
        touching(Some(&accuracy), |question, answer| {
            for found in answer.best.iter().flatten().chain(&answer.frontier) {
                let dice = trial(question, found)
                    .simulate(7, 0..60, &mut |_| true)
                    .good();
                let miss = (found.good.unwrap() - dice.mean).abs();
                assert!(
                    miss <= 4.0 * dice.error + 1e-4,
                    "{found:?} by dice {dice:?}"
                );
            }
        });
    }
}

/// Everything that trying out finds takes as much money, and what is found comes out as it is told.
fn check(question: &Question<'_>) -> Result<(), TestCaseError> {
    let answer = ask(question);
    for found in &answer.best[Goal::Good as usize] {
        prop_assert!(question.confirms(found), "{found:?}");
        let told = trial(question, found);
        let good = told.goodness().of_row(found.across, told.edges());
        let lengths = f64::from(found.pencils / found.across);
        prop_assert!(
            (found.good.unwrap() - good * lengths).abs() < 1e-7,
            "{found:?}: {good}"
        );
    }
    let least = answer.best[Goal::Good as usize]
        .first()
        .and_then(|found| found.good_money)
        .unwrap_or(f64::INFINITY);
    let Question {
        barrel,
        slats,
        sets,
        rules,
        search,
        accuracy,
    } = *question;
    let field = Field::new(question);
    let mut turns = barrel.usual_turns();
    if search.turns == Turns::Any {
        turns.extend((0..24).map(|step| Angle::degrees(f64::from(step) * 15.0)));
        // The turns that the other goals found are worth a try.
        turns.extend(answer.frontier.iter().map(|found| found.turn));
    }
    let mut goodness = None;
    for (top, bottom) in field.pairs() {
        for &turn in &turns {
            let width = barrel.bare(turn).extents().width();
            for place in field.set_places() {
                let cap = sets.get(place).map_or(12, CutterSet::most);
                let pitches = match sets.get(place) {
                    Some(set) => vec![set.pitch()],
                    None => [0.0, 0.05, 0.3]
                        .map(|more| width + rules.land + Length::millimetres(more))
                        .to_vec(),
                };
                for (across, pitch) in
                    (1..=cap).flat_map(|across| pitches.iter().map(move |pitch| (across, *pitch)))
                {
                    let laid_by = Rules {
                        spacing: PitchRule::Given(pitch),
                        most: Some(across),
                        ..*rules
                    };
                    let setup = Setup {
                        barrel,
                        turn,
                        top: &slats[top],
                        bottom: &slats[bottom],
                        rules: &laid_by,
                    };
                    let layout = lay_out(&setup);
                    if !layout.fits() || layout.across() < across {
                        continue;
                    }
                    let trial = Trial::new(&setup, &layout, accuracy.unwrap());
                    prop_assert!(trial.holds_walls());
                    let goodness = goodness.get_or_insert_with(|| trial.goodness());
                    let prices =
                        slats[top].supply().slat_price() + slats[bottom].supply().slat_price();
                    let fee = sets
                        .get(place)
                        .map_or(search.new_set_price.unwrap_or(0), CutterSet::price);
                    let money = |good: f64| {
                        let made = good * f64::from(layout.lengths()) * (1.0 - rules.slat_rejects);
                        f64::from(GROSS) * prices / made + fee as f64 / search.year_gross
                    };
                    let (_, most) = goodness.bounds_of_row(across, trial.edges());
                    if most <= 0.0 || money(most) >= least {
                        continue;
                    }
                    let good = goodness.of_row(across, trial.edges());
                    prop_assert!(
                        money(good) >= least * (1.0 - 2e-6),
                        "{} of {across} at {pitch:?} for {}, best {least}",
                        good,
                        money(good)
                    );
                }
            }
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn trying_out_never_finds_cheaper_good_pencils(
        shape in 0..Shape::ALL.len(), size in 5.0_f64..11.0, corner in 0.0_f64..1.5,
        widths in prop::collection::vec(30.0_f64..60.0, 1..3), thicknesses in prop::collection::vec(4.5_f64..8.0, 2),
        prices in prop::collection::vec(50.0_f64..200.0, 2),
        sets in prop::collection::vec((5.0_f64..14.0, 1_u32..7, 0.0_f64..1000.0), 0..2),
        any_turn in any::<bool>(), edge in prop_oneof![Just(0.0), 0.0_f64..0.5],
        land in 0.0_f64..0.8, scale in prop_oneof![Just(0.0), 0.3_f64..4.0], limit in 0.05_f64..0.4,
        rejects in 0.0_f64..20.0, new_set in any::<bool>(),
    ) {
        let Some(barrel) = barrel(Shape::ALL[shape], size, corner) else {
            return Ok(());
        };
        let slats: Vec<Slat> = (0..widths.len()).map(|k| slat(widths[k], thicknesses[k], prices[k])).collect();
        let sets: Vec<CutterSet> = sets.into_iter().map(|(pitch, most, price)| set(pitch, f64::from(most), price)).collect();
        let rules = rules(|draft| {
            draft.edge = Typed::Number(edge);
            draft.land = Typed::Number(land);
            draft.wall = Typed::Number(0.4);
            draft.bond = Typed::Number(0.5);
            draft.eccentricity = Typed::Number(limit);
            draft.pencil_rejects = Typed::Number(rejects);
            draft.slat_rejects = Typed::Number(rejects / 2.0);
        });
        let turns = if any_turn { Turns::Any } else { Turns::Usual };
        let search = searched(turns, AxisChoice::AsInRules, Pairs::Any, (new_set || sets.is_empty()).then_some(300.0));
        let line = line(scale);
        check(&Question { barrel: &barrel, slats: &slats, sets: &sets, rules: &rules, search: &search, accuracy: Some(&line) })?;
    }
}
