//! There and back, every way a file can be wrong, and files of every version.

mod drafts;
mod faults;
mod limits;
mod properties;
mod set_aside;
mod versions;

use super::*;
use serde_json::{Value, json};

const VERSION_1: &str = include_str!("fixtures/version_1.json");

const VERSION_2: &str = include_str!("fixtures/version_2.json");

const VERSION_3: &str = include_str!("fixtures/version_3.json");

const VERSION_4: &str = include_str!("fixtures/version_4.json");

const VERSION_5: &str = include_str!("fixtures/version_5.json");

const VERSION_6: &str = include_str!("fixtures/version_6.json");

/// The newest fixture with one place changed.
fn changed(pointer: &str, value: Value) -> String {
    let mut document: Value = serde_json::from_str(VERSION_6).unwrap();
    *document.pointer_mut(pointer).unwrap() = value;
    document.to_string()
}

/// The newest fixture without one field.
fn without(pointer: &str, name: &str) -> String {
    let mut document: Value = serde_json::from_str(VERSION_6).unwrap();
    let object = document.pointer_mut(pointer).unwrap();
    object.as_object_mut().unwrap().remove(name).unwrap();
    document.to_string()
}

fn lines(problems: &[FileProblem]) -> Vec<String> {
    problems.iter().map(ToString::to_string).collect()
}

#[track_caller]
fn refuses(text: &str, expected: &[&str]) {
    assert_eq!(lines(&read(text).unwrap_err()), expected);
}

#[track_caller]
fn notes(text: &str, expected: &[&str]) {
    assert_eq!(lines(&read(text).unwrap().notes), expected);
}
