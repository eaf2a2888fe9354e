//! `tolerances`: good pencils, by dice and by integrals.

use app::demo;
use serde_json::{Value, json};
use solver::{Id, ProjectDraft, Term, Typed};

use crate::program::{ask, json_of, number};
use crate::projects::broken;

/// The demo with machines that make no error.
fn faultless() -> ProjectDraft {
    let mut project = demo::project();
    for term in Term::ALL {
        project.accuracies[0].draft.error_mut(term).size = Typed::Number(0.0);
    }
    project
}

/// What `tolerances` makes of a project.
fn made(arguments: &[&str], project: &ProjectDraft) -> Value {
    let arguments = [&["tolerances", "-", "--format", "json"], arguments].concat();
    let (code, text, complaint) = ask(&arguments, project);
    assert_eq!((code, complaint.as_str()), (0, ""));
    let answer: Value = serde_json::from_str(&text).unwrap();
    answer["made"].clone()
}

#[test]
fn good_pencils_are_those_of_the_plain_program() {
    // The first case of the reference in numpy is the first pencil of the demo on the first line.
    let reference = include_str!("../../../../tests/reference/tolerance.json");
    let reference: Value = serde_json::from_str(reference).unwrap();
    let case = &reference["cases"][0];
    assert_eq!(
        (&case["name"], &case["size"]),
        (&json!("a common shop"), &json!(7.0))
    );
    let found = &made(&[], &demo::project())["good"];
    let miss = number(&found["mean"]) - number(&case["answer"]["good"]);
    let errors = [&found["standard_error"], &case["answer"]["error"]].map(number);
    let error = (errors[0] * errors[0] + errors[1] * errors[1]).sqrt();
    assert!(miss.abs() < 5.0 * error, "{miss} with an error of {error}");
}

#[test]
fn dice_agree_with_integrals_and_with_themselves() {
    let made = made(&[], &demo::project());
    let sandwiches = number(&made["sandwiches"]);
    let counts = made["histogram"].as_array().unwrap().iter().map(number);
    assert_eq!(counts.clone().sum::<f64>(), sandwiches);
    let pencils: f64 = counts
        .zip(0..)
        .map(|(count, good)| count * f64::from(good))
        .sum();
    assert!((pencils / sandwiches - number(&made["good"]["mean"])).abs() < 1e-9);
    for position in made["positions"].as_array().unwrap() {
        let miss = number(&position["good"]["mean"]) - number(&position["good_chance"]);
        let error = number(&position["good"]["standard_error"]);
        assert!(miss.abs() < 5.0 * error, "{position:#}");
    }
}

#[test]
fn the_price_of_good_pencils_is_that_of_their_slats() {
    let made = made(&[], &demo::project());
    // 144 · 2 slats at 118.00 for 600 are 56.64, for one good pencil of each sandwich.
    let price = number(&made["price_per_gross_hundredths"]);
    let good = number(&made["good"]["mean"]);
    assert!((price * good - 5664.0).abs() < 1e-9, "{price}");
    // 1000 gross a year.
    let saved = &made["errors"][0]["halved_saved"];
    let gain = number(&made["errors"][0]["halved_gain"]["mean"]);
    let expected = 5664.0 / good - 5664.0 / (good + gain);
    assert!(
        (number(&saved["per_gross_hundredths"]) - expected).abs() < 1e-9,
        "{saved}"
    );
    assert!(
        (number(&saved["per_year_hundredths"]) - 1000.0 * expected).abs() < 1e-6,
        "{saved}"
    );
}

#[test]
fn machines_without_errors_make_good_pencils_only() {
    let made = made(&["--until", "0.001"], &faultless());
    assert_eq!(made["good"], json!({ "mean": 10.0, "standard_error": 0.0 }));
    assert_eq!(made["chances"]["admitted"], json!(1.0));
    // All alike: one bad sandwich unseen in 10 blocks of 1024 would still be within the error.
    assert_eq!(made["sandwiches"], json!(10_240));
    let laid = json_of("layout", &faultless());
    let miss =
        number(&laid["gross"]["price_hundredths"]) - number(&made["price_per_gross_hundredths"]);
    assert!(miss.abs() < 1e-9, "{miss}");
}

#[test]
fn a_worn_line_is_told_what_to_mend_and_what_to_lay() {
    let mut project = demo::project();
    project.layout.accuracy = project.accuracies[1].id;
    let (code, text, _) = ask(&["tolerances", "-", "--unit", "in"], &project);
    assert_eq!(code, 0);
    for part in [
        "Line          Line 2, worn (invented)",
        "Pitch         0.285\u{202f}in",
        "Sandwiches    200\u{202f}704, from seed 1",
        "Lead does not go in",
        // A sigma of 0.025 mm.
        "Groove position             0.00098 ",
        "best, laid",
        "as good",
    ] {
        assert!(text.contains(part), "{part} in\n{text}");
    }
    let made = made(&[], &project);
    assert!(number(&made["good"]["mean"]) < 9.0);
    let by_count = &made["by_count"];
    assert_eq!(
        (&by_count["best"], &by_count["laid"]),
        (&json!(9), &json!(9))
    );
    assert_eq!(by_count["list"][9]["across"], json!(10));
    // Of one pencil in the middle of the slat all errors but those of the edge count alike.
    let alone = number(&by_count["list"][0]["good"]["mean"]);
    assert!(
        (10.0 * alone - number(&made["good"]["mean"])).abs() < 0.1,
        "{alone}"
    );
}

#[test]
fn the_same_seed_gives_the_same_answer() {
    let answer = |seed| {
        ask(
            &["tolerances", "-", "--seed", seed, "--sandwiches", "5000"],
            &demo::project(),
        )
    };
    assert_eq!(answer("7"), answer("7"));
    assert_ne!(answer("7"), answer("18446744073709551615"));
}

#[test]
fn dice_are_thrown_until_the_error_is_small_enough() {
    let found = made(&["--until", "0.002"], &demo::project());
    assert_eq!(
        (&found["error_asked"], &found["error_kept"]),
        (&json!(0.002), &json!(true))
    );
    let sandwiches = number(&found["sandwiches"]);
    assert!(number(&found["good"]["standard_error"]) <= 0.002);
    assert_eq!(sandwiches % 1024.0, 0.0);
    // One block less is not enough: the same dice, one block less.
    let fewer = format!("{}", sandwiches - 1024.0);
    let fewer = made(&["--sandwiches", &fewer], &demo::project());
    assert!(number(&fewer["good"]["standard_error"]) > 0.002);
}

#[test]
fn dice_that_cannot_be_thrown_are_a_wrong_use() {
    for (arguments, told) in [
        (["--sandwiches", "0"], "0 is not in 1..=1000000000"),
        (
            ["--sandwiches", "1000000001"],
            "1000000001 is not in 1..=1000000000",
        ),
        (["--sandwiches", "many"], "invalid digit"),
        (["--until", "0"], "must be a number above 0, like 0.001"),
        (["--until", "-0.1"], "must be a number above 0, like 0.001"),
        (["--until", "NaN"], "must be a number above 0, like 0.001"),
        (["--until", "inf"], "must be a number above 0, like 0.001"),
        (["--seed", "-1"], "invalid digit"),
    ] {
        let arguments = [&["tolerances", "-"], &arguments[..]].concat();
        let (code, text, complaint) = ask(&arguments, &demo::project());
        assert_eq!((code, text.as_str()), (2, ""), "{arguments:?}");
        assert!(complaint.contains(told), "{complaint}");
    }
    let both = ["tolerances", "-", "--sandwiches", "9", "--until", "0.1"];
    assert_eq!(ask(&both, &demo::project()).0, 2);
}

#[test]
fn all_that_keeps_from_the_dice_is_told_at_once() {
    let mut project = broken();
    project.layout.top = Id(13);
    project.accuracies[0].draft.glue_shift.size = Typed::Number(-1.0);
    project.accuracies[0].draft.width_offset = Typed::Text("wide".into());
    project.search.year_gross = Typed::Number(0.0);
    let (code, text, complaint) = ask(&["tolerances", "-"], &project);
    assert_eq!((code, text.as_str()), (1, ""));
    for path in [
        "slats[2].width_mm: ",
        "slats[2].thickness_mm: ",
        "rules.land_mm: ",
        "accuracies[0].glue_shift.size_mm: ",
        "accuracies[0].width_offset_mm: ",
        "search.year_gross: ",
    ] {
        assert!(
            complaint.lines().any(|line| line.starts_with(path)),
            "{path} in\n{complaint}"
        );
    }
    assert!(complaint.ends_with("\n6 problems\n"), "{complaint}");
}

#[test]
fn without_a_line_of_machines_there_are_no_dice() {
    let mut project = demo::project();
    project.accuracies.clear();
    assert_eq!(ask(&["layout", "-"], &project).0, 0);
    let (code, text, complaint) = ask(&["tolerances", "-"], &project);
    assert_eq!((code, text.as_str()), (1, ""));
    assert!(complaint.contains("\nlayout.accuracy: "), "{complaint}");
    project.rules.land = Typed::Number(-1.0);
    let (_, _, complaint) = ask(&["tolerances", "-"], &project);
    assert!(complaint.ends_with("\n2 problems\n"), "{complaint}");
}
