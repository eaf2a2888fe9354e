//! The search on single cases, each of which says what it should find.

mod good_pencils;
mod trying_out;

use super::room::Pitches;
use super::verify::{laid, margin};
use super::*;
use crate::barrel::{Barrel, BarrelDraft};
use crate::cutter_set::{CutterSet, CutterSetDraft};
use crate::field::{Field as TypedField, Typed};
use crate::layout::Rule;
use crate::quantity::{Angle, Length};
use crate::rules::{Rules, RulesDraft};
use crate::search_rules::{AxisChoice, Pairs, SearchDraft, SearchRules, Turns};
use crate::shape::Shape;
use crate::slat::{Slat, SlatDraft};

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
        accuracy: None,
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
        accuracy: None,
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
                    accuracy: None,
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
            accuracy: None,
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
            accuracy: None,
        });
        assert_eq!(answer.best[Goal::Money as usize][0].across, 3, "{cents}");
    }
}

#[test]
fn of_turns_that_are_as_good_the_usual_one_is_taken_whatever_the_number_of_sides() {
    // The floor decides the margin wherever the top slat is thick enough; lying on a side, with a
    // corner up, it is not. An odd number of sides has a side up when it stands on a corner.
    for (shape, sides) in [3, 5, 7, 9, 11, 13, 15, 17, 23]
        .map(|sides| (Shape::Polygonal, sides))
        .into_iter()
        .chain([(Shape::Triangular, 3)])
    {
        let mut draft = BarrelDraft::new("", shape);
        draft.sides = Typed::Number(f64::from(sides));
        draft.corner_radius = Typed::Number(0.0);
        draft.size = Typed::Number(7.0);
        draft.coat = Typed::Number(0.0);
        draft.lead_diameter = Typed::Number(1.0);
        let barrel = draft.check().unwrap();
        let up = |turn: Angle| barrel.bare(turn).extents().up.in_millimetres();
        let usual = barrel.usual_turns();
        let between = Angle::degrees(90.0 / f64::from(sides));
        let top = f64::midpoint(up(usual[0]), up(between)) + 0.2;
        let rules = rules(|draft| {
            draft.wall = Typed::Number(0.2);
            draft.bond = Typed::Number(0.1);
            draft.floor = Typed::Number(top - 0.55 - 0.2);
            draft.planing = Typed::Number(0.0);
            draft.most = Typed::Number(1.0);
        });
        let slats = [slat(74.0, top, 100.0), slat(74.0, 9.0, 100.0)];
        let search = searched(Turns::Any, AxisChoice::AsInRules, Pairs::Any, Some(0.0));
        let question = Question {
            barrel: &barrel,
            slats: &slats,
            sets: &[],
            rules: &rules,
            search: &search,
            accuracy: None,
        };
        let field = Field::new(&question);
        let lie = field
            .room(0, 1)
            .best(&field.ranges, 1, Pitches::typed(), f64::NEG_INFINITY);
        assert_eq!(
            lie.map(|lie| lie.turn),
            Some(usual[1]),
            "{shape:?} of {sides}"
        );
        for turn in usual {
            let mut told = field.ranges.iter().flat_map(|range| range.usual);
            assert!(
                told.any(|usual| usual == Some(turn)),
                "{shape:?} of {sides}: {turn:?}"
            );
        }
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
        accuracy: None,
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
                    accuracy: None,
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
        accuracy: None,
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
            accuracy: None,
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
        accuracy: None,
    });
    let found = answer.best[Goal::Pencils as usize][0];
    assert_eq!(
        (found.set, found.pitch, found.pencils),
        (Some(0), Length::millimetres(7.4), 9)
    );
}
