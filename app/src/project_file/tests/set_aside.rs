//! The layout that was set aside.

use super::*;
use solver::Typed;

/// The newest fixture with its own layout set aside, and one place of that changed.
fn set_aside(pointer: &str, value: Value) -> String {
    let mut draft = read(VERSION_6).unwrap().draft;
    draft.set_layout_aside();
    let mut document: Value = serde_json::from_str(&write(&draft)).unwrap();
    *document["set_aside"].pointer_mut(pointer).unwrap() = value;
    document.to_string()
}

#[test]
fn what_was_set_aside_comes_back_and_is_left_out_where_there_is_none() {
    let mut draft = crate::demo::project();
    assert!(!write(&draft).contains("set_aside"));
    draft.set_layout_aside();
    draft.rules.land = Typed::Number(0.9);
    assert_eq!(read(&write(&draft)).unwrap().draft, draft);
}

#[test]
fn what_is_wrong_in_what_was_set_aside_is_told_with_its_place() {
    refuses(
        &set_aside("/rules/land_mm", Value::Null),
        &["set_aside.rules.land_mm: nothing (null) stands here, expected a number or a text"],
    );
    notes(
        &set_aside("/layout/top", json!(77)),
        &["set_aside.layout.top: there is no slat stock with the id 77"],
    );
    let mut document: Value = serde_json::from_str(VERSION_6).unwrap();
    document["set_aside"] = json!([]);
    let problems = lines(&read(&document.to_string()).unwrap_err());
    assert_eq!(
        problems[0],
        "set_aside: a list stands here, expected an object in braces"
    );
}

#[test]
fn one_layout_is_set_aside_and_not_one_behind_it() {
    let text = set_aside("/name", json!("x"));
    let mut document: Value = serde_json::from_str(&text).unwrap();
    let aside = document["set_aside"].clone();
    document["set_aside"]["set_aside"] = aside;
    let opened = read(&document.to_string()).unwrap();
    assert_eq!(opened.draft.set_aside.unwrap().set_aside, None);
    assert_eq!(opened.notes.len(), 1);
}
