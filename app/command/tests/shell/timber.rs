//! `timber`: how planks are sawn, and the recount of what was told.

use std::fs;

use app::demo;
use app::project_file::write;
use serde_json::{Value, json};
use solver::Typed;

use crate::program::{ask, is_described, json_of, run, told};

#[test]
fn the_plan_of_the_demo_is_told_with_its_bill_and_its_bound() {
    let answer = json_of("timber", &demo::project());
    assert!(is_described(&["timber"], &answer), "{answer:#}");
    let made_all = |line: &Value| line["made"].as_u64() >= line["wanted"].as_u64();
    assert!(answer["blanks"].as_array().unwrap().iter().all(made_all));
    assert!(answer["bound"].as_i64() <= answer["amount"].as_i64());
    let shares = answer["wood"].as_array().unwrap().iter();
    let all: f64 = shares.map(|line| line["share"].as_f64().unwrap()).sum();
    assert!((all - 1.0).abs() < 1e-9, "{all}");
    let (code, text, _) = ask(&["timber", "-"], &demo::project());
    assert_eq!(code, 0);
    assert!(text.contains("Where the wood goes"), "{text}");
}

#[test]
fn what_was_told_stands_its_recount_and_what_was_changed_does_not() {
    let project = write(&demo::project());
    let (_, plan, _) = told(&run(
        &["timber", "-", "--format", "json"],
        project.as_bytes(),
    ));
    let file = std::env::temp_dir().join(format!("slatwright-{}-plan.json", std::process::id()));
    let recount = |plan: &str| {
        fs::write(&file, plan).unwrap();
        let path = file.to_str().unwrap();
        told(&run(
            &["timber", "-", "--format", "json", "--recount", path],
            project.as_bytes(),
        ))
    };
    let (code, text, _) = recount(&plan);
    let answer: Value = serde_json::from_str(&text).unwrap();
    assert!(is_described(&["recount"], &answer), "{answer:#}");
    let known: Value = serde_json::from_str(&plan).unwrap();
    assert_eq!(
        (code, &answer["fault"], &answer["missing"]),
        (0, &Value::Null, &json!(0))
    );
    assert!(answer["bound"].as_i64() >= known["bound"].as_i64());

    let mut cheaper = known.clone();
    cheaper["amount"] = json!(known["amount"].as_i64().unwrap() - 1);
    let (code, text, _) = recount(&cheaper.to_string());
    assert_eq!(code, 1);
    assert!(text.contains("the plan costs"), "{text}");

    let mut wider = known.clone();
    wider["patterns"][0]["sections"][0]["sections"] = json!(1_000);
    let (code, text, _) = recount(&wider.to_string());
    assert_eq!(code, 1);
    assert!(text.contains("does not fit its plank"), "{text}");

    let (code, _, complaint) = told(&run(
        &[
            "timber",
            "-",
            "--recount",
            file.with_extension("gone").to_str().unwrap(),
        ],
        project.as_bytes(),
    ));
    assert_eq!(code, 1);
    assert!(complaint.contains("cannot be read"), "{complaint}");
    fs::remove_file(&file).unwrap();
}

#[test]
fn a_proof_of_cases_within_cases_stands_its_recount() {
    const DEPTH: u64 = 500;
    let project = write(&demo::project());
    let mut plan = json_of("timber", &demo::project());
    // Worthless blanks prove of any case that a plan costs no less than nothing.
    let shop = demo::project().saw_shop;
    let (values, tolls) = (vec!["0"; shop.blanks.len()], vec!["0"; shop.planks.len()]);
    let certified = json!({ "certified": { "values": values, "tolls": tolls, "scale": "1" } });
    let mut deep = Vec::new();
    for depth in 0..DEPTH {
        let (at_most, more, fewer) = (DEPTH - depth, 2 * depth + 1, 2 * depth + 2);
        deep.push(
            json!({ "parted": { "plank": 0, "at_most": at_most, "fewer": fewer, "more": more } }),
        );
        deep.push(certified.clone());
    }
    deep.push(certified);
    plan["proof"] = json!(deep);
    assert!(is_described(&["timber"], &plan));
    let file = std::env::temp_dir().join(format!("slatwright-{}-deep.json", std::process::id()));
    let path = file.to_str().unwrap();
    let recount = |plan: &Value| {
        fs::write(&file, plan.to_string()).unwrap();
        told(&run(
            &["timber", "-", "--recount", path],
            project.as_bytes(),
        ))
    };
    let (code, text, complaint) = recount(&plan);
    assert_eq!(code, 0, "{text}{complaint}");
    assert!(text.contains("The proof holds"), "{text}");
    // The innermost case without its certificate.
    plan["proof"][2 * DEPTH as usize]["certified"]["values"] = json!([]);
    let (code, text, _) = recount(&plan);
    assert_eq!(code, 1);
    assert!(text.contains("The proof does not hold"), "{text}");
    fs::remove_file(&file).unwrap();
}

#[test]
fn planks_that_do_not_suffice_are_told_with_what_is_missing() {
    let mut project = demo::project();
    for plank in &mut project.saw_shop.planks {
        plank.draft.on_hand = Typed::Number(1.0);
    }
    let (code, text, _) = ask(&["timber", "-"], &project);
    assert_eq!(code, 4);
    assert!(text.contains("The planks on hand do not suffice"), "{text}");
    let answer = json_of("timber", &project);
    assert!(is_described(&["timber"], &answer), "{answer:#}");
    assert_eq!(answer["outcome"], "short");
    assert!(answer["least_missing"].as_u64() > Some(0));
}

#[test]
fn a_shop_that_is_wrong_is_told_at_its_place() {
    let mut project = demo::project();
    project.saw_shop.planks[0].draft.price = Typed::Text("dear".into());
    project.saw_shop.rip_kerf = Typed::Number(-1.0);
    let (code, _, complaint) = ask(&["timber", "-"], &project);
    assert_eq!(code, 1);
    assert!(
        complaint.contains("saw_shop.planks[0].price"),
        "{complaint}"
    );
    assert!(complaint.contains("saw_shop.rip_kerf_mm"), "{complaint}");
}
