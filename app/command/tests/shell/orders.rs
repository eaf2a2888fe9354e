//! `orders`: what is run, bought and sawn in each period.

use std::fs;

use app::demo;
use serde_json::{Value, json};
use solver::{ProjectDraft, Typed};

use crate::program::{ask, is_described, number};

/// The JSON of a short search.
fn planned(project: &ProjectDraft) -> Value {
    let (_, text, _) = ask(
        &["orders", "-", "--format", "json", "--steps", "300"],
        project,
    );
    serde_json::from_str(&text).unwrap()
}

fn list<'a>(value: &'a Value, name: &str) -> &'a [Value] {
    value[name].as_array().unwrap()
}

#[test]
fn the_plan_of_the_demo_fills_the_book_and_adds_up() {
    let answer = planned(&demo::project());
    assert!(is_described(&["orders"], &answer), "{answer:#}");
    let (value, bound) = (answer["value"].as_i64(), answer["bound"].as_i64());
    assert!(bound.is_some() && bound <= value, "{answer:#}");
    let plan = &answer["plan"];
    for account in list(plan, "pencils").iter().chain(list(plan, "slats")) {
        let mut store = account["on_hand"].as_u64().unwrap();
        for period in 0..3 {
            let of = |name: &str| account[name][period].as_u64().unwrap();
            store = store + of("comes") - of("goes");
            assert_eq!(store, of("kept") + of("spare"), "{account:#}");
            store -= of("spare");
        }
    }
    let sum: f64 = list(plan, "costs")
        .iter()
        .map(|cost| number(&cost["hundredths"]))
        .sum();
    assert!((sum - number(&plan["total_hundredths"])).abs() < 1e-6);
    let paid: i64 = (list(plan, "purchases").iter())
        .map(|order| order["price_hundredths"].as_i64().unwrap())
        .sum();
    assert_eq!(paid as f64, number(&plan["costs"][0]["hundredths"]));
    let to_suppliers: i64 = (list(plan, "suppliers").iter())
        .map(|total| total["price_hundredths"].as_i64().unwrap())
        .sum();
    assert_eq!(paid, to_suppliers);
}

#[test]
fn the_text_tells_runs_purchases_stores_and_costs() {
    let (code, text, _) = ask(&["orders", "-", "--steps", "300"], &demo::project());
    assert_eq!(code, 0);
    for told in [
        "Runs in Week 1",
        "Purchase list",
        "Suppliers",
        "Pencils",
        "Costs",
        "For a gross",
    ] {
        assert!(text.contains(told), "{told}: {text}");
    }
}

#[test]
fn the_purchase_list_is_written_as_csv() {
    let file = std::env::temp_dir().join(format!("slatwright-{}-list.csv", std::process::id()));
    let path = file.to_str().unwrap();
    let (code, text, _) = ask(
        &["orders", "-", "--steps", "300", "--csv", path],
        &demo::project(),
    );
    assert_eq!(code, 0);
    assert!(text.contains("Written to"), "{text}");
    let list = fs::read_to_string(&file).unwrap();
    fs::remove_file(&file).unwrap();
    let rows: Vec<&str> = list.lines().collect();
    assert!(rows[0].starts_with("Order in,Supplier,Slat stock,Packs,"));
    let orders = planned(&demo::project())["plan"]["purchases"]
        .as_array()
        .unwrap()
        .len();
    assert_eq!(rows.len(), orders + 1);
    // Names of the demo have a comma in them, and stand in quotation marks.
    assert!(
        rows[1..].iter().all(|row| row.matches('"').count() == 2),
        "{list}"
    );
    let folder = std::env::temp_dir();
    let path = folder.to_str().unwrap();
    let (code, text, _) = ask(
        &["orders", "-", "--steps", "300", "--csv", path],
        &demo::project(),
    );
    assert_eq!(code, 3);
    assert!(text.contains("cannot be written"), "{text}");
}

#[test]
fn what_clashes_is_told_where_there_is_no_plan() {
    let mut project = demo::project();
    project.supply.periods[0].hours = Typed::Number(0.5);
    let (code, text, _) = ask(&["orders", "-", "--steps", "300"], &project);
    assert_eq!(code, 4);
    assert!(text.contains("these cannot be kept together"), "{text}");
    assert!(text.contains("Machine hours in Week 1: 0.5 h"), "{text}");
    let answer = planned(&project);
    assert!(is_described(&["orders"], &answer), "{answer:#}");
    assert_eq!(
        (&answer["outcome"], &answer["plan"]),
        (&json!("no_plan"), &Value::Null)
    );
}

#[test]
fn what_is_wrong_is_told_at_its_place() {
    let mut project = demo::project();
    project.supply.offers[1].draft.tiers[1].pack_price = Typed::Text("dear".into());
    project.supply.periods[2].hours = Typed::Number(-1.0);
    project.orders[3].due = Typed::Number(4.0);
    project.heads[0].hook = Typed::Text("steep".into());
    let (code, _, complaint) = ask(&["orders", "-", "--steps", "300"], &project);
    assert_eq!(code, 1);
    for path in [
        "supply.offers[1].tiers[1].pack_price",
        "supply.periods[2].machine_hours",
        "orders[3].due_period",
    ] {
        assert!(complaint.contains(path), "{path}: {complaint}");
    }
    assert!(!complaint.contains("hook_degrees"), "{complaint}");
}

#[test]
fn other_aims_are_told_in_their_units() {
    let mut project = demo::project();
    project.supply.aim = solver::order_plan::PlanAim::Changeovers;
    let answer = planned(&project);
    assert!(is_described(&["orders"], &answer), "{answer:#}");
    assert_eq!(answer["value"], answer["plan"]["changeovers"]);
}
