//! Worked examples of cutting stock along one length, and instances of published generators.
//!
//! The source of each stands beside it in `tests/reference/cutting_stock.json`.

use super::solved;
use serde_json::Value;
use solver::sawing::{SawingDraft, SawingLimits, SawingOutcome, saw};

fn whole(value: &Value) -> i64 {
    value.as_i64().expect("a whole number")
}

#[test]
fn every_example_is_proved_at_its_known_number_of_planks() {
    let text = include_str!("../../reference/cutting_stock.json");
    let examples: Vec<Value> = serde_json::from_str(text).expect("a list");
    assert_eq!(examples.len(), 29);
    for example in examples {
        let list = |name: &str| example[name].as_array().expect("a list").iter().map(whole);
        let demands = list("demands").map(i64::unsigned_abs);
        let pieces: Vec<(i64, u64)> = list("widths").zip(demands).collect();
        let draft = SawingDraft::along(whole(&example["length"]), whole(&example["kerf"]), &pieces);
        let data = draft.check().expect("pieces that fit");
        let (plan, _, meets) = solved(&data, 400);
        assert!(meets, "{} is not proved", example["name"]);
        assert_eq!(plan.cost, whole(&example["planks"]), "{}", example["name"]);
    }
}

#[test]
fn a_kerf_is_as_if_pieces_and_plank_were_longer_by_it() {
    // n pieces need Σ w + (n − 1)·k ≤ L, which is Σ (w + k) ≤ L + k: derived.
    let pieces = [
        (1380, 22),
        (1520, 25),
        (1560, 12),
        (1710, 14),
        (1820, 18),
        (2200, 20),
    ];
    for kerf in [1, 3, 10, 20, 101] {
        let longer: Vec<(i64, u64)> = pieces
            .iter()
            .map(|&(length, demand)| (length + kerf, demand))
            .collect();
        let planks = |draft: SawingDraft| {
            let data = draft.check().expect("pieces that fit");
            let outcome = saw(&data, &SawingLimits::default(), &mut |_| true).expect("a plan");
            let SawingOutcome::Proved { plan, .. } = outcome else {
                panic!("proved")
            };
            plan.cost
        };
        assert_eq!(
            planks(SawingDraft::along(5600, kerf, &pieces)),
            planks(SawingDraft::along(5600 + kerf, 0, &longer))
        );
    }
}
