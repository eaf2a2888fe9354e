//! The search against trying out turns, heights and shares one by one.

use super::verify::{laid, margin};
use super::*;
use crate::barrel::BarrelDraft;
use crate::cutter_set::CutterSetDraft;
use crate::field::{Field as TypedField, Typed};
use crate::layout::Rule;
use crate::rules::RulesDraft;
use crate::search_rules::{AxisChoice, SearchDraft};
use crate::shape::Shape;
use crate::slat::SlatDraft;
use proptest::prelude::*;

const HOLLOWED: &str = "M0 3 A4 4 0 0 1 8 3 A9 9 0 0 0 7 6 L1 6 A9 9 0 0 0 0 3 Z";

fn barrel(shape: Shape, size: f64, corner: f64) -> Option<Barrel> {
    let mut draft = BarrelDraft::new("", shape);
    draft.size = Typed::Number(size);
    draft.corner_radius = Typed::Number(corner);
    draft.height = Typed::Number(size * 0.8);
    draft.face_radius = Typed::Number(size * 1.5);
    draft.sides = Typed::Number(5.0);
    draft.path = HOLLOWED.to_owned();
    draft.check().ok()
}

fn slat(width: f64, thickness: f64, price: f64) -> Slat {
    let mut draft = SlatDraft::new("");
    draft.width = Typed::Number(width);
    draft.thickness = Typed::Number(thickness);
    draft.pack_price = Typed::Number(price);
    draft.check().unwrap()
}

fn set(pitch: f64, most: f64, price: f64) -> CutterSet {
    let mut draft = CutterSetDraft::new("");
    draft.pitch = Typed::Number(pitch);
    draft.most = Typed::Number(most);
    draft.price = Typed::Number(price);
    draft.check().unwrap()
}

fn rules(change: impl FnOnce(&mut RulesDraft)) -> Rules {
    let mut draft = RulesDraft::new();
    change(&mut draft);
    draft.check().unwrap()
}

fn searched(turns: Turns, axis: AxisChoice, pairs: Pairs, new_set: Option<f64>) -> SearchRules {
    let mut draft = SearchDraft::new();
    (draft.turns, draft.axis, draft.pairs) = (turns, axis, pairs);
    draft.new_set_price = new_set.map_or(Typed::empty(), Typed::Number);
    draft.check().unwrap()
}

fn ask(question: &Question<'_>) -> Answer {
    search(question, &mut |_, _| ())
}

/// Every layout that trying out finds: its pair, set, pencils and margin.
struct Tried {
    wood: f64,
    money: f64,
    pencils: u32,
    margin: f64,
}

/// Heights of the axis to be tried at a turn: at a usual one as far as the groove stays open, at
/// others those at which the bond holds at every turn, the level one and the one in the rules.
fn heights(question: &Question<'_>, is_usual: bool) -> Vec<Length> {
    let Question { barrel, rules, .. } = *question;
    if question.search.axis == AxisChoice::AsInRules {
        return vec![rules.axis_height];
    }
    let groove = barrel.lead_diameter() / 2.0 + rules.clearance;
    let (near, reach) = (
        barrel.bare(Angle::ZERO).least_distance().in_millimetres(),
        (groove + rules.bond).in_millimetres(),
    );
    let shares = [-1.0, -0.8, -0.5, -0.2, 0.2, 0.5, 0.8, 1.0];
    let mut heights = shares.map(|share| groove * share).to_vec();
    heights.retain(|height| {
        let height = height.in_millimetres();
        is_usual || reach * reach + height * height <= near * near
    });
    heights.extend([Length::ZERO, rules.axis_height]);
    heights
}

fn try_out(question: &Question<'_>, step: f64) -> Vec<Tried> {
    let Question {
        barrel,
        slats,
        sets,
        rules,
        search,
    } = *question;
    let usual = barrel.usual_turns().into_iter().map(|turn| (turn, true));
    let turns: Vec<(Angle, bool)> = match search.turns {
        Turns::Usual => usual.collect(),
        Turns::Any => {
            let sampled = (0..(360.0 / step) as u32).map(|k| Angle::degrees(f64::from(k) * step));
            sampled.map(|turn| (turn, false)).chain(usual).collect()
        }
    };
    let field = Field::new(question);
    let mut tried = Vec::new();
    for (top, bottom) in field.pairs() {
        for &(turn, is_usual) in &turns {
            let width = barrel.bare(turn).extents().width();
            for axis_height in heights(question, is_usual) {
                for place in field.set_places() {
                    let cap = sets.get(place).map_or(12, CutterSet::most);
                    for across in 1..=cap {
                        let room = slats[top]
                            .guaranteed_width()
                            .min(slats[bottom].guaranteed_width());
                        let count = f64::from(across);
                        let spare =
                            room - rules.edge * 2.0 - width * count - rules.land * (count - 1.0);
                        if spare < -Length::SLACK {
                            break;
                        }
                        let pitch = sets.get(place).map_or(
                            width + rules.land + spare.max(Length::ZERO) / (count + 1.0),
                            CutterSet::pitch,
                        );
                        let rules = Rules {
                            spacing: PitchRule::Given(pitch),
                            most: Some(across),
                            axis_height,
                            ..*rules
                        };
                        let setup = Setup {
                            barrel,
                            turn,
                            top: &slats[top],
                            bottom: &slats[bottom],
                            rules: &rules,
                        };
                        let layout = lay_out(&setup);
                        if layout.pencils() == 0 || layout.across() < across {
                            continue;
                        }
                        let gross = 144.0 / f64::from(layout.pencils());
                        let price = |slat: &Slat| {
                            slat.supply().pack_price as f64 / f64::from(slat.supply().pack_slats)
                        };
                        let fee = sets
                            .get(place)
                            .map_or(search.new_set_price.unwrap_or(0), CutterSet::price);
                        tried.push(Tried {
                            wood: (slats[top].volume() + slats[bottom].volume())
                                .in_cubic_millimetres()
                                * gross,
                            money: (price(&slats[top]) + price(&slats[bottom])) * gross
                                + fee as f64 / search.year_gross,
                            pencils: layout.pencils(),
                            margin: margin(&layout),
                        });
                    }
                }
            }
        }
    }
    tried
}

/// Found layouts are what they say, and trying out finds none that is better.
fn check(question: &Question<'_>, step: f64) -> Result<(), TestCaseError> {
    const HAIR: f64 = 1e-6;
    let answer = ask(question);
    for found in answer.best.iter().flatten().chain(&answer.frontier) {
        let layout = laid(question, found);
        prop_assert!(layout.fits(), "{:?} {:?}", found, layout.checks());
        prop_assert_eq!(layout.pencils(), found.pencils);
        let miss = margin(&layout) - found.margin.in_millimetres();
        prop_assert!(miss.abs() < HAIR, "{:?}: margin off by {}", found, miss);
    }
    let tried = try_out(question, step);
    if answer.obstacle.is_some() {
        prop_assert!(tried.is_empty(), "{:?}", answer.obstacle);
        return Ok(());
    }
    let best = |goal: Goal| answer.best[goal as usize].first().unwrap();
    for Tried {
        wood,
        money,
        pencils,
        margin,
    } in tried
    {
        prop_assert!(
            pencils <= best(Goal::Pencils).pencils,
            "{} pencils",
            pencils
        );
        prop_assert!(wood >= best(Goal::Wood).wood.in_cubic_millimetres() * (1.0 - 1e-12));
        prop_assert!(money >= best(Goal::Money).money * (1.0 - 1e-12));
        prop_assert!(
            margin <= best(Goal::Margin).margin.in_millimetres() + HAIR,
            "margin {}",
            margin
        );
        let matched = answer.frontier.iter().any(|step| {
            step.wood.in_cubic_millimetres() <= wood * (1.0 + 1e-12)
                && step.margin.in_millimetres() >= margin - HAIR
        });
        prop_assert!(matched, "wood {} with margin {}", wood, margin);
    }
    Ok(())
}

#[test]
fn the_seam_through_faces_gives_ten_hexagons_on_74() {
    let (barrel, rules) = (barrel(Shape::Hexagonal, 7.0, 0.5).unwrap(), rules(|_| ()));
    let (slats, search) = (
        [slat(74.0, 5.0, 100.0)],
        searched(Turns::Usual, AxisChoice::AsInRules, Pairs::Same, Some(0.0)),
    );
    let answer = ask(&Question {
        barrel: &barrel,
        slats: &slats,
        sets: &[],
        rules: &rules,
        search: &search,
    });
    let found = answer.best[Goal::Pencils as usize][0];
    assert_eq!(
        (found.pencils, found.turn.in_degrees(), found.set),
        (10, 30.0, None)
    );
    assert!(
        (found.pitch.in_millimetres() - 7.24).abs() < 1e-9,
        "{:?}",
        found.pitch
    );
}

#[test]
fn a_triangle_standing_on_its_base_takes_a_thin_slat_below() {
    let (barrel, rules) = (barrel(Shape::Polygonal, 7.0, 0.5).unwrap(), rules(|_| ()));
    let slats = [slat(74.0, 6.8, 120.0), slat(74.0, 4.8, 100.0)];
    let search = searched(Turns::Any, AxisChoice::Any, Pairs::Any, Some(0.0));
    let answer = ask(&Question {
        barrel: &barrel,
        slats: &slats,
        sets: &[],
        rules: &rules,
        search: &search,
    });
    assert_eq!(answer.compared, 4);
    assert!(answer.obstacle.is_none());
}

#[test]
fn any_height_that_fits_is_never_worse_than_the_height_in_the_rules() {
    // The bond reaches 0.95 + 1.2 mm from the axis, and a side of this flat barrel comes as near as
    // 2.12 mm when it stands on edge; but lying flat it bears any height at which the groove is open.
    let mut draft = BarrelDraft::new("", Shape::Flat);
    draft.size = Typed::Number(12.0);
    draft.height = Typed::Number(4.4);
    draft.corner_radius = Typed::Number(0.5);
    draft.lead_diameter = Typed::Number(1.8);
    let barrel = draft.check().unwrap();
    let slats = [slat(74.0, 2.2, 100.0), slat(74.0, 3.2, 100.0)];
    for height in [-0.9, -0.3, 0.0, 0.5, 0.95] {
        let rules = rules(|draft| {
            draft.eccentricity = Typed::Number(0.1);
            draft.wall = Typed::Number(0.5);
            draft.axis_height = Typed::Number(height);
        });
        for turns in Turns::ALL {
            let best = |axis| {
                let search = searched(turns, axis, Pairs::Any, Some(0.0));
                let answer = ask(&Question {
                    barrel: &barrel,
                    slats: &slats,
                    sets: &[],
                    rules: &rules,
                    search: &search,
                });
                answer.best[Goal::Wood as usize].first().copied()
            };
            let any = best(AxisChoice::Any).unwrap();
            assert!(any.wood.in_cubic_millimetres() < 2_117_561.0, "{any:?}");
            if let Some(own) = best(AxisChoice::AsInRules) {
                assert!(any.wood <= own.wood, "{height}: {any:?} {own:?}");
                assert!(any.wood < own.wood || any.margin >= own.margin - Length::SLACK);
            }
        }
    }
}

#[test]
fn equal_wood_is_equal_whatever_rounding_leaves_in_its_last_bit() {
    // 24.01 mm hold three pencils and 72.03 mm nine: as much wood for each, to a last bit.
    let (barrel, rules) = (
        barrel(Shape::Hexagonal, 7.0, 0.5).unwrap(),
        rules(|draft| draft.most = Typed::Number(9.0)),
    );
    let (cheap, dear) = (slat(24.01, 5.0, 10.0), slat(72.03, 5.0, 90.0));
    let search = searched(Turns::Usual, AxisChoice::AsInRules, Pairs::Same, Some(0.0));
    for slats in [[cheap.clone(), dear.clone()], [dear, cheap]] {
        let answer = ask(&Question {
            barrel: &barrel,
            slats: &slats,
            sets: &[],
            rules: &rules,
            search: &search,
        });
        let [found] = answer.best[Goal::Wood as usize][..] else {
            panic!("one is cheapest: {:?}", answer.best);
        };
        assert_eq!((found.across, found.money), (3, 160.0));
        assert!(
            answer
                .frontier
                .iter()
                .all(|step| step.wood != found.wood || step.across == 3)
        );
    }
}

#[test]
fn equal_money_is_equal_whatever_rounding_leaves_in_its_last_bit() {
    // A price of a slat of 24.01 mm thrice is that of one of 72.03 mm, but for a last bit.
    let (barrel, rules) = (
        barrel(Shape::Hexagonal, 7.0, 0.5).unwrap(),
        rules(|draft| draft.most = Typed::Number(9.0)),
    );
    let search = searched(Turns::Usual, AxisChoice::AsInRules, Pairs::Same, Some(0.0));
    for cents in 1..400 {
        let price = f64::from(cents) / 100.0;
        // Thicker, so that it is worse where money decides nothing.
        let slats = [slat(72.03, 5.1, price * 3.0), slat(24.01, 5.0, price)];
        let answer = ask(&Question {
            barrel: &barrel,
            slats: &slats,
            sets: &[],
            rules: &rules,
            search: &search,
        });
        assert_eq!(answer.best[Goal::Money as usize][0].across, 3, "{cents}");
    }
}

#[test]
fn a_turn_that_fits_by_a_hair_only_is_found_within_a_range() {
    // A triangle lies with its reach upwards and downwards as the slats ask at one turn, which is
    // neither a usual one nor an end of a range.
    let (barrel, rules) = (barrel(Shape::Triangular, 7.6, 0.5).unwrap(), rules(|_| ()));
    let search = searched(Turns::Any, AxisChoice::AsInRules, Pairs::Any, Some(0.0));
    let pair = |top: f64| [slat(74.0, top, 100.0), slat(74.0, top + 0.3, 100.0)];
    let slats = pair(6.0);
    let ample = Question {
        barrel: &barrel,
        slats: &slats,
        sets: &[],
        rules: &rules,
        search: &search,
    };
    let field = Field::new(&ample);
    let widest = field.room(0, 1).widest_upright(&field.ranges).unwrap();
    for (lacking, fits) in [(0.5, true), (0.99, true), (1.5, false)] {
        let slats = pair(6.0 - widest - Length::SLACK.in_millimetres() * lacking);
        let tight = Question {
            slats: &slats,
            ..ample
        };
        let narrowest = Field::new(&tight).room(0, 1).narrowest(&field.narrow_first);
        assert_eq!(narrowest.is_some(), fits, "lacking {lacking} of the slack");
        let answer = ask(&tight);
        for found in answer.best.iter().flatten() {
            assert!(laid(&tight, found).fits(), "{found:?}");
        }
    }
}

#[test]
fn a_found_pitch_can_be_typed() {
    let hexagon = barrel(Shape::Hexagonal, 7.0, 0.5).unwrap();
    let wide = rules(|_| ());
    // A pencil of 2.8 mm bare with a land of 0.1 mm lies closer than the least pitch of 3 mm.
    let mut draft = BarrelDraft::new("", Shape::Round);
    draft.size = Typed::Number(3.0);
    draft.coat = Typed::Number(0.1);
    draft.lead_diameter = Typed::Number(0.5);
    let thin = draft.check().unwrap();
    let close = rules(|draft| {
        draft.land = Typed::Number(0.1);
        draft.wall = Typed::Number(0.3);
        draft.bond = Typed::Number(0.3);
    });
    for (barrel, rules) in [(hexagon, wide), (thin, close)] {
        for most in [None, Some(1), Some(2), Some(3)] {
            for width in [32.0, 180.0, 200.0] {
                let rules = Rules { most, ..rules };
                let slats = [slat(width, 5.0, 100.0)];
                let search = searched(Turns::Any, AxisChoice::Any, Pairs::Same, Some(0.0));
                let question = Question {
                    barrel: &barrel,
                    slats: &slats,
                    sets: &[],
                    rules: &rules,
                    search: &search,
                };
                let answer = ask(&question);
                assert!(answer.obstacle.is_none());
                for found in answer.best.iter().flatten().chain(&answer.frontier) {
                    let pitch = Typed::Number(found.pitch.in_millimetres());
                    assert!(pitch.read(TypedField::Pitch).is_ok(), "{found:?}");
                    let layout = laid(&question, found);
                    assert_eq!(layout.pencils(), found.pencils);
                    let miss = margin(&layout) - found.margin.in_millimetres();
                    assert!(miss.abs() < 1e-9, "{found:?}: margin off by {miss}");
                    let closest = layout.extents().width() + rules.land;
                    assert!(
                        found.across > 1 || found.pitch == closest.max(Length::millimetres(3.0))
                    );
                }
            }
        }
    }
}

#[test]
fn nothing_that_fits_is_told_with_the_checks_that_fail() {
    let (barrel, rules) = (barrel(Shape::Hexagonal, 7.0, 0.5).unwrap(), rules(|_| ()));
    let search = searched(Turns::Any, AxisChoice::Any, Pairs::Any, Some(0.0));
    let thin = [slat(74.0, 2.5, 100.0)];
    let question = Question {
        barrel: &barrel,
        slats: &thin,
        sets: &[],
        rules: &rules,
        search: &search,
    };
    let Some(Obstacle::Nearest { checks, .. }) = ask(&question).obstacle else {
        panic!("2.5 mm hold no half of a pencil of 7");
    };
    assert!(checks.iter().any(|check| check.rule == Rule::TopThickness));
    assert_eq!(
        ask(&Question {
            slats: &[],
            ..question
        })
        .obstacle,
        Some(Obstacle::NoSlats)
    );
    let none = searched(Turns::Any, AxisChoice::Any, Pairs::Any, None);
    assert_eq!(
        ask(&Question {
            search: &none,
            ..question
        })
        .obstacle,
        Some(Obstacle::NoCutters)
    );
}

#[test]
fn an_owned_set_keeps_its_pitch_and_its_number() {
    let (barrel, rules) = (barrel(Shape::Hexagonal, 7.0, 0.5).unwrap(), rules(|_| ()));
    let search = searched(Turns::Any, AxisChoice::Any, Pairs::Any, None);
    let (slats, sets) = (
        [slat(78.0, 5.2, 100.0)],
        [set(7.4, 9.0, 0.0), set(9.2, 12.0, 0.0)],
    );
    let answer = ask(&Question {
        barrel: &barrel,
        slats: &slats,
        sets: &sets,
        rules: &rules,
        search: &search,
    });
    let found = answer.best[Goal::Pencils as usize][0];
    assert_eq!(
        (found.set, found.pitch, found.pencils),
        (Some(0), Length::millimetres(7.4), 9)
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn trying_out_never_finds_better(
        shape in 0..Shape::ALL.len(), size in 5.0_f64..11.0, corner in 0.0_f64..1.5,
        widths in prop::collection::vec(30.0_f64..60.0, 1..3), thicknesses in prop::collection::vec(3.5_f64..8.0, 2),
        prices in prop::collection::vec(50.0_f64..200.0, 2),
        sets in prop::collection::vec((5.0_f64..14.0, 1_u32..7, 0.0_f64..1000.0), 0..2),
        any_turn in any::<bool>(), any_axis in any::<bool>(), axis in -0.6_f64..0.6,
        relief in prop::option::of(0.0_f64..25.0), bond in 0.5_f64..3.0, wall in 0.3_f64..1.0,
        land in 0.0_f64..0.8, planing in 0.0_f64..0.5, floor in 0.5_f64..2.0, new_set in any::<bool>(),
    ) {
        let Some(barrel) = barrel(Shape::ALL[shape], size, corner) else {
            return Ok(());
        };
        let slats: Vec<Slat> = (0..widths.len()).map(|k| slat(widths[k], thicknesses[k], prices[k])).collect();
        let sets: Vec<CutterSet> = sets.into_iter().map(|(pitch, most, price)| set(pitch, f64::from(most), price)).collect();
        let rules = rules(|draft| {
            draft.axis_height = Typed::Number(axis);
            draft.relief = Typed::Number(relief.unwrap_or(0.0));
            draft.bond = Typed::Number(bond);
            draft.wall = Typed::Number(wall);
            draft.eccentricity = Typed::Number(0.1);
            draft.land = Typed::Number(land);
            draft.planing = Typed::Number(planing);
            draft.floor = Typed::Number(floor);
        });
        let turns = if any_turn { Turns::Any } else { Turns::Usual };
        let axis = if any_axis { AxisChoice::Any } else { AxisChoice::AsInRules };
        let search = searched(turns, axis, Pairs::Any, (new_set || sets.is_empty()).then_some(300.0));
        check(&Question { barrel: &barrel, slats: &slats, sets: &sets, rules: &rules, search: &search }, 1.0)?;
    }
}
