//! The search against trying out turns, heights and shares one by one.

use super::*;
use crate::layout::{Setup, lay_out};
use crate::rules::PitchRule;
use proptest::prelude::*;

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
        ..
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
        check(&Question { barrel: &barrel, slats: &slats, sets: &sets, rules: &rules, search: &search, accuracy: None }, 1.0)?;
    }
}
