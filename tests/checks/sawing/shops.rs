//! Small shops of two stages, whose least price a general solver found over every pattern:
//! HiGHS, by `tests/reference/sawing.py`.

use super::solved;
use serde_json::Value;
use solver::sawing::{BlankOrder, Dimensions, PlankStock, SawingAim, SawingDraft};

fn millimetres(value: &Value) -> i64 {
    value.as_i64().expect("a whole number") * 1000
}

fn size(one: &Value) -> Dimensions {
    Dimensions {
        length: millimetres(&one["length"]),
        width: millimetres(&one["width"]),
        thickness: millimetres(&one["thickness"]),
    }
}

fn draft(shop: &Value) -> SawingDraft {
    let list = |name: &str| shop[name].as_array().expect("a list").iter();
    SawingDraft {
        planks: list("planks")
            .map(|plank| PlankStock {
                size: size(plank),
                end_trim: millimetres(&plank["end_trim"]),
                edge_trim: millimetres(&plank["edge_trim"]),
                price: plank["price"].as_i64().expect("a price"),
                on_hand: None,
            })
            .collect(),
        blanks: list("blanks")
            .map(|blank| BlankOrder {
                size: size(blank),
                demand: blank["demand"].as_u64().expect("a number"),
                over_worth: 0,
                most_over: 0,
            })
            .collect(),
        crosscut_kerf: millimetres(&shop["crosscut_kerf"]),
        rip_kerf: millimetres(&shop["rip_kerf"]),
        offcuts: None,
        aim: SawingAim::Cost,
    }
}

#[test]
fn no_plan_is_cheaper_than_the_general_solver_s_and_no_bound_above_it() {
    let text = include_str!("../../reference/sawing.json");
    let shops: Vec<Value> = serde_json::from_str(text).expect("a list");
    let (mut proved, mut found) = (0, 0);
    for shop in &shops {
        let data = draft(shop).check().expect("blanks that fit");
        let (plan, bound, meets) = solved(&data, 150);
        let least = shop["least"].as_i64().expect("a price");
        assert!(bound <= least && least <= plan.cost, "{}", shop["seed"]);
        proved += usize::from(meets);
        found += usize::from(plan.cost == least);
    }
    // 54 and 59 of 60 when this was written.
    assert!(
        proved >= 50 && found >= 57,
        "{proved} proved, {found} found"
    );
}
