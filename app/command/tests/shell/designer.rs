//! `gains` and `barrels`: what the designer of a barrel asks.

use app::demo;
use app::project_file::read_barrel_fragment;
use serde_json::json;

use crate::program::{ask, is_described, json_of, run, told};

#[test]
fn the_nearest_gain_is_the_one_of_the_formula() {
    let project = demo::project();
    let arguments = [
        "gains",
        "-",
        "--size-mm",
        "1",
        "--corner-mm",
        "0",
        "--coat-mm",
        "0",
        "--format",
        "json",
    ];
    let file = app::project_file::write(&project);
    let (code, text, complaint) = told(&run(&arguments, file.as_bytes()));
    assert_eq!((code, complaint.as_str()), (0, ""));
    let answer: serde_json::Value = serde_json::from_str(&text).unwrap();
    assert!(is_described(&["gains"], &answer), "{answer:#}");
    let gains = answer["gains"].as_array().unwrap();
    let on_usual = gains
        .iter()
        .find(|gain| gain["slat"]["id"] == 11 && gain["kind"] == "more-pencils");
    let gain = on_usual.unwrap();
    // 11·b + 10·0.4 + 2·1.0 = 74 with b the bare size, 0.16 of coat over it.
    let miss = gain["steps"][0]["to_mm"].as_f64().unwrap() - (68.0 / 11.0 + 0.16);
    assert!(miss.abs() < 1e-6, "{gain:#}");
    assert_eq!(
        (&gain["pencils_after"], &gain["proof"]),
        (&json!(11), &json!("smallest"))
    );
    let (_, text, _) = ask(&["gains", "-", "--size-mm", "1"], &project);
    assert!(
        text.contains("10 → 11 pencils") && text.contains("proved smallest"),
        "{text}"
    );
    let (_, text, _) = ask(
        &[
            "gains",
            "-",
            "--size-mm",
            "0",
            "--corner-mm",
            "0",
            "--coat-mm",
            "0",
        ],
        &project,
    );
    assert!(text.contains("Nothing within these limits"), "{text}");
}

#[test]
fn barrels_stand_side_by_side_and_go_to_others() {
    let project = demo::project();
    let answer = json_of("barrels", &project);
    assert!(is_described(&["barrels"], &answer), "{answer:#}");
    assert_eq!(answer["barrels"].as_array().unwrap().len(), 4);
    for (at, entry) in project.barrels.iter().enumerate() {
        let fragment = answer["addresses"][at]["fragment"].as_str().unwrap();
        assert_eq!(read_barrel_fragment(fragment).unwrap(), entry.draft);
    }
    let (_, text, _) = ask(&["barrels", "-"], &project);
    assert!(
        text.contains("Pencils on Seven-ply, 74") && text.contains("#barrel=1."),
        "{text}"
    );
}
