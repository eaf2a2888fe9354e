//! What all commands have in common.

use std::io::Write;
use std::process::{Command, Stdio};

use app::demo;
use app::project_file::write;
use serde_json::{Value, json};
use solver::Typed;

use crate::program::{ask, is_described, json_of, run, told};
use crate::projects::{broken, too_thick};

#[test]
fn a_problem_elsewhere_does_not_keep_from_the_layout() {
    let mut project = demo::project();
    project.slats[2].draft.width = Typed::Number(500.0);
    assert_eq!(ask(&["layout", "-"], &project).0, 0);
    assert_eq!(ask(&["thresholds", "-"], &project).0, 0);
    assert_eq!(ask(&["barrel", "-"], &project).0, 0);
    assert_eq!(ask(&["tolerances", "-"], &project).0, 0);
    let (code, text, complaint) = ask(&["search", "-"], &project);
    assert_eq!((code, text.as_str()), (1, ""));
    assert!(complaint.contains("slats[2].width_mm: "), "{complaint}");
}

#[test]
fn exit_codes_are_those_of_the_help() {
    let code = |arguments: &[&str], input: &str| told(&run(arguments, input.as_bytes())).0;
    assert_eq!(code(&["check", "-"], &write(&demo::project())), 0);
    assert_eq!(code(&["check", "-"], "{}"), 1);
    assert_eq!(code(&["layout", "-"], "{"), 1);
    assert_eq!(code(&["lay"], ""), 2);
    assert_eq!(code(&["layout", "-", "--unit", "cubit"], ""), 2);
    assert_eq!(code(&[], ""), 2);
    assert_eq!(code(&["check", "not/there.json"], ""), 3);
    assert_eq!(code(&["check", env!("CARGO_MANIFEST_DIR")], ""), 3);
    for command in ["layout", "search", "setting", "tolerances"] {
        assert_eq!(code(&[command, "-"], &write(&too_thick())), 4, "{command}");
    }
    let (code, help, _) = told(&run(&["--help"], b""));
    assert_eq!(code, 0);
    for number in 0..=4 {
        assert!(help.contains(&format!("\n  {number}  ")), "{help}");
    }
}

#[test]
fn what_does_not_fit_is_told_with_the_checks_that_fail() {
    let (_, text, _) = ask(&["layout", "-"], &too_thick());
    assert!(text.contains("FAIL  Wall, lead off centre"), "{text}");
    assert!(!text.contains("For a gross"), "{text}");
    let (_, text, _) = ask(&["search", "-"], &too_thick());
    assert!(text.contains("Nothing fits; nearest come"), "{text}");
    assert!(text.contains("Wall, lead off centre: "), "{text}");
    let (_, text, _) = ask(&["tolerances", "-"], &too_thick());
    assert!(text.contains("No dice are thrown"), "{text}");
    assert!(text.contains("Wall, lead off centre: "), "{text}");
    let answer = json_of("tolerances", &too_thick());
    assert_eq!(
        (&answer["fits"], &answer["made"]),
        (&json!(false), &Value::Null)
    );
    assert!(!answer["failed"].as_array().unwrap().is_empty());
}

#[test]
fn a_broken_file_is_told_in_json_by_every_command() {
    for command in [
        "check",
        "layout",
        "orders",
        "search",
        "setting",
        "thresholds",
        "tolerances",
    ] {
        let answer = json_of(command, &broken());
        assert!(is_described(&["check"], &answer), "{answer:#}");
        let problems = answer["problems"].as_array().unwrap();
        assert!(
            problems
                .iter()
                .any(|problem| problem["path"] == "rules.land_mm"),
            "{answer:#}"
        );
    }
}

#[cfg(unix)]
#[test]
fn a_reader_that_has_enough_is_no_failure() {
    let mut program = Command::new(env!("CARGO_BIN_EXE_slatwright"))
        .args(["layout", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // Closed before there is anything to answer.
    drop(program.stdout.take());
    let mut input = program.stdin.take().unwrap();
    input.write_all(write(&demo::project()).as_bytes()).unwrap();
    drop(input);
    let output = program.wait_with_output().unwrap();
    assert_eq!((output.status.code(), output.stderr), (Some(0), Vec::new()));
}
