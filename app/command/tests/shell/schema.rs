//! `schema`: every answer is as its schema says.

use app::demo;
use app::project_file::write;
use serde_json::{Value, json};

use crate::program::{is_described, json_of};
use crate::projects::{too_thick, wide_search};

#[test]
fn every_answer_is_as_its_schema_says() {
    for project in [demo::project(), demo::blank(), too_thick(), wide_search()] {
        for command in [
            "barrel",
            "check",
            "layout",
            "orders",
            "search",
            "setting",
            "thresholds",
            "tolerances",
        ] {
            let answer = json_of(command, &project);
            assert!(is_described(&[command], &answer), "{command}: {answer:#}");
            assert_eq!(answer["format"], format!("slatwright-{command}"));
        }
        let file = serde_json::from_str(&write(&project)).unwrap();
        assert!(is_described(&[], &file));
    }
}

#[test]
fn a_schema_refuses_what_is_not_so() {
    let mut answer = json_of("layout", &demo::project());
    answer.as_object_mut().unwrap().remove("pitch_mm");
    assert!(!is_described(&["layout"], &answer));
    assert!(!is_described(
        &["search"],
        &json_of("layout", &demo::project())
    ));
    let mut file: Value = serde_json::from_str(&write(&demo::project())).unwrap();
    file["barrels"][0]["shape"] = json!("square");
    assert!(!is_described(&[], &file));
}
