//! The built program as a shell meets it: what it prints where, and the number it ends with.

#![expect(clippy::unwrap_used, reason = "tests stop where they fail")]

use std::io::Write;
use std::process::{Command, Output, Stdio};

use app::demo;
use app::project_file::{MOST_BYTES, write};
use boon::{Compiler, Schemas};
use proptest::prelude::*;
use serde_json::{Value, json};
use solver::{Id, ProjectDraft, Term, Typed};

/// Runs the program with a text on standard input.
fn run(arguments: &[&str], input: &[u8]) -> Output {
    let mut program = Command::new(env!("CARGO_BIN_EXE_slatwright"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // A program that does not listen closes the pipe, which is its right.
    let _ = program.stdin.take().unwrap().write_all(input);
    program.wait_with_output().unwrap()
}

/// Asks about a project on standard input: the exit code, standard output, standard error.
fn ask(arguments: &[&str], project: &ProjectDraft) -> (i32, String, String) {
    told(&run(arguments, write(project).as_bytes()))
}

fn told(output: &Output) -> (i32, String, String) {
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
    let code = output.status.code().unwrap();
    (code, text(&output.stdout), text(&output.stderr))
}

/// The demo with a slat stock that is wrong in two fields.
fn broken() -> ProjectDraft {
    let mut project = demo::project();
    project.slats[2].draft.width = Typed::Number(500.0);
    project.slats[2].draft.thickness = Typed::Text("thick".into());
    project.rules.land = Typed::Number(-1.0);
    project
}

/// The demo with a lead so thick that no wall is left.
fn too_thick() -> ProjectDraft {
    let mut project = demo::project();
    project.barrels[0].draft.lead_diameter = Typed::Number(6.0);
    project
}

/// The demo with everything in it that a search may try, and a layout of two stocks.
fn wide_search() -> ProjectDraft {
    let mut project = demo::project();
    project.search.turns = solver::Turns::Any;
    project.search.axis = solver::AxisChoice::Any;
    project.search.pairs = solver::Pairs::Any;
    project.search.new_set_price = Typed::Number(480.0);
    project.layout.top = Id(15);
    project
}

#[test]
fn the_demo_is_laid_as_on_the_page() {
    let (code, text, complaint) = ask(&["layout", "-"], &demo::project());
    assert_eq!((code, complaint.as_str()), (0, ""));
    for line in [
        "Alder Brook works (invented)",
        "Barrel         Writer, hexagonal",
        "Way            Seam through faces, 30.0°",
        "Pencils        10 from a sandwich; 10 across, 1 along",
        "Pitch          7.24\u{202f}mm",
        // An edge of 1.0 and half a bare pencil of 6.84.
        " 1   4.42",
        "Slats  28.8",
    ] {
        assert!(text.lines().any(|told| told == line), "{line} in\n{text}");
    }
    assert!(text.contains("pass  Land "), "{text}");
    assert!(!text.contains("FAIL"), "{text}");
}

#[test]
fn inches_are_told_where_they_are_asked_for() {
    let (_, text, _) = ask(&["layout", "-", "--unit", "in"], &demo::project());
    assert!(text.contains("Pitch          0.285\u{202f}in"), "{text}");
}

#[test]
fn all_problems_are_told_at_once_with_their_paths() {
    let (code, text, _) = ask(&["check", "-"], &broken());
    assert_eq!(code, 1);
    let paths = [
        "slats[2].width_mm: Slat width must be ",
        "slats[2].thickness_mm: ",
        "rules.land_mm: ",
    ];
    for path in paths {
        assert!(
            text.lines().any(|line| line.starts_with(path)),
            "{path} in\n{text}"
        );
    }
    assert!(text.ends_with("\n3 problems\n"), "{text}");
}

#[test]
fn a_problem_elsewhere_does_not_keep_from_the_layout() {
    let mut project = demo::project();
    project.slats[2].draft.width = Typed::Number(500.0);
    assert_eq!(ask(&["layout", "-"], &project).0, 0);
    assert_eq!(ask(&["thresholds", "-"], &project).0, 0);
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
    for command in ["layout", "search", "tolerances"] {
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
fn a_search_finds_at_least_the_layout_of_the_demo() {
    let (code, text, _) = ask(&["search", "-"], &demo::project());
    assert_eq!(code, 0, "{text}");
    for goal in solver::Goal::ALL {
        assert!(text.contains(goal.label()), "{text}");
    }
    let answer = json_of("search", &demo::project());
    let pencils = answer["best"]["pencils"][0]["pencils"].as_u64().unwrap();
    assert!(pencils >= 10, "{pencils}");
}

#[test]
fn the_next_pencil_asks_for_one_pitch_more_of_slat() {
    let answer = json_of("thresholds", &demo::project());
    let sizes = answer["sizes"].as_array().unwrap();
    let width = sizes
        .iter()
        .find(|size| size["path"] == "slats[0].width_mm")
        .unwrap();
    let above = &width["above"][0];
    assert_eq!(
        (&above["pencils_before"], &above["pencils_after"]),
        (&json!(10), &json!(11))
    );
    // Two edges of 1.0, a bare pencil of 6.84 and ten pitches of 7.24.
    let miss = above["at_mm"].as_f64().unwrap() - 81.24;
    assert!(miss.abs() < 1e-6, "{miss}");
    let (_, text, _) = ask(&["thresholds", "-"], &demo::project());
    assert!(text.contains("10 → 11 pencils"), "{text}");
}

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

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

#[test]
fn good_pencils_are_those_of_the_plain_program() {
    // The first case of the reference in numpy is the first pencil of the demo on the first line.
    let reference = include_str!("../../../tests/reference/tolerance.json");
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

#[test]
fn the_wood_of_the_balance_adds_up() {
    let balance = &json_of("layout", &demo::project())["balance"];
    let classes = balance["classes"].as_array().unwrap();
    let sum: f64 = classes
        .iter()
        .map(|class| class["volume_mm3"].as_f64().unwrap())
        .sum();
    let bought = balance["bought_mm3"].as_f64().unwrap();
    assert!((sum - bought).abs() < 1e-9 * bought, "{sum} of {bought}");
}

/// The JSON that a command prints.
fn json_of(command: &str, project: &ProjectDraft) -> Value {
    let (_, text, _) = ask(&[command, "-", "--format", "json"], project);
    serde_json::from_str(&text).unwrap()
}

/// Holds a document against the schema that the program prints.
#[track_caller]
fn is_described(of: &[&str], document: &Value) -> bool {
    let mut arguments = vec!["schema"];
    arguments.extend(of);
    let (code, schema, _) = told(&run(&arguments, b""));
    assert_eq!(code, 0);
    let (mut schemas, mut compiler) = (Schemas::new(), Compiler::new());
    let schema = serde_json::from_str(&schema).unwrap();
    compiler.add_resource("printed.json", schema).unwrap();
    let index = compiler.compile("printed.json", &mut schemas).unwrap();
    schemas.validate(document, index).is_ok()
}

#[test]
fn every_answer_is_as_its_schema_says() {
    for project in [demo::project(), demo::blank(), too_thick(), wide_search()] {
        for command in ["check", "layout", "search", "thresholds", "tolerances"] {
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

#[test]
fn a_broken_file_is_told_in_json_by_every_command() {
    for command in ["check", "layout", "search", "thresholds", "tolerances"] {
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

#[test]
fn a_file_that_is_no_text_or_too_large_is_told() {
    let (code, text, _) = told(&run(&["check", "-"], b"{\"format\": \"\xff\"}"));
    assert_eq!(code, 1);
    assert!(
        text.starts_with("the file is not text in UTF-8 from byte 13 on"),
        "{text}"
    );
    let large = vec![b' '; MOST_BYTES + 10];
    let (code, text, _) = told(&run(&["check", "-"], &large));
    assert_eq!(code, 1);
    assert!(
        text.starts_with("the file has more than 5000000 bytes"),
        "{text}"
    );
    let deep = "[".repeat(MOST_BYTES);
    assert_eq!(told(&run(&["check", "-"], deep.as_bytes())).0, 1);
}

#[test]
fn a_search_that_would_take_hours_is_refused() {
    let mut project = wide_search();
    let stock = project.slats[0].clone();
    for id in 1_000..2_000 {
        let mut stock = stock.clone();
        stock.id = Id(id);
        project.slats.push(stock);
    }
    let (code, _, complaint) = ask(&["search", "-"], &project);
    assert_eq!(code, 1);
    assert!(complaint.contains("search.pairs: "), "{complaint}");
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

/// Asks about measurements on standard input.
fn ask_measured(arguments: &[&str], measurements: &str) -> (i32, String, String) {
    let arguments = [&["measured", "-"], arguments].concat();
    told(&run(&arguments, measurements.as_bytes()))
}

/// The JSON about measurements, which its schema describes.
#[track_caller]
fn measured(arguments: &[&str], measurements: &str) -> Value {
    let arguments = [&["--format", "json"], arguments].concat();
    let answer = serde_json::from_str(&ask_measured(&arguments, measurements).1).unwrap();
    assert!(is_described(&["measured"], &answer), "{answer:#}");
    answer
}

#[track_caller]
fn close(found: &Value, expected: f64, within: f64) {
    let miss = number(found) - expected;
    assert!(miss.abs() <= within, "{found} for {expected}");
}

#[test]
fn measured_slats_are_told_as_by_hand() {
    let lot = "Width (mm);Thickness\n73,9;5,00\n74,0;\n74,1;\n";
    let arguments = ["--nominal", "74", "--lower", "-0.3", "--upper", "0.6"];
    let answer = measured(
        &[
            &arguments[..],
            &["--mean-within", "0.05", "--deviation-within", "0.65"],
        ]
        .concat(),
        lot,
    );
    assert_eq!(
        (&answer["headed"], &answer["separator"]),
        (&json!(true), &json!(";"))
    );
    let width = &answer["width"];
    assert_eq!(width["count"], json!(3));
    let spread = &width["spread"];
    close(&width["mean_mm"], 74.0, 1e-9);
    close(&spread["deviation_mm"], 0.1, 1e-9);
    // Tables of Student's t and of chi-squared with two degrees of freedom, NIST/SEMATECH
    // e-Handbook of Statistical Methods, sections 1.3.6.7.2 and 1.3.6.7.4 (from memory):
    // t = 4.303, χ² = 0.051 and 7.378.
    close(
        &spread["mean_bounds"]["to_mm"],
        74.0 + 4.303 * 0.1 / 3.0_f64.sqrt(),
        1e-4,
    );
    close(
        &spread["deviation_bounds"]["from_mm"],
        0.1 * (2.0 / 7.378_f64).sqrt(),
        1e-5,
    );
    close(
        &spread["deviation_bounds"]["to_mm"],
        0.1 * (2.0 / 0.051_f64).sqrt(),
        5e-3,
    );
    // 0.9 / (6 · 0.1), 0.3 / (3 · 0.1), and the normal tail beyond three standard deviations.
    let held = &width["held"];
    close(&held["cp"]["value"], 1.5, 1e-9);
    close(&held["cpk"]["value"], 1.0, 1e-9);
    close(&held["expected_share"], 0.001_35, 1e-5);
    // With 18 measurements t = 2.110 gives 0.0497, with 17 t = 2.120 gives 0.0514.
    assert_eq!(
        width["needed_for_mean"],
        json!({ "kind": "more", "count": 15 })
    );
    let thickness = &answer["thickness"];
    assert_eq!(
        (&thickness["spread"], &thickness["untold"]),
        (&Value::Null, &json!("one"))
    );
    assert_eq!(
        (&thickness["held"], &thickness["needed_for_mean"]),
        (&Value::Null, &Value::Null)
    );

    let (code, text, complaint) = ask_measured(&arguments, lot);
    assert_eq!((code, complaint.as_str()), (0, ""));
    for line in [
        "Width",
        "Cp                  1.500; 0.239 to 2.881",
        "Thickness",
    ] {
        assert!(text.lines().any(|told| told == line), "{line} in\n{text}");
    }
}

#[test]
fn measured_slats_are_read_and_told_in_inches() {
    let arguments = ["--unit", "in", "--nominal", "2 7/8", "--upper", "1/64"];
    let answer = measured(&arguments, "2.875\n2.876\n2.877\n2.878");
    close(&answer["width"]["mean_mm"], 2.8765 * 25.4, 1e-9);
    let held = &answer["width"]["held"];
    close(&held["upper_mm"], (2.875 + 1.0 / 64.0) * 25.4, 1e-9);
    assert_eq!(
        (&held["lower_mm"], &held["cp"]),
        (&Value::Null, &Value::Null)
    );
    let (_, text, _) = ask_measured(&arguments, "2.875\n2.876");
    assert!(
        text.contains("Mean                2.87550\u{202f}in; "),
        "{text}"
    );
}

#[test]
fn cells_that_cannot_be_read_are_left_out_and_told() {
    let lot = "74.0\nwide\n74.1\n7400";
    let (code, text, _) = ask_measured(&[], lot);
    assert_eq!(code, 1);
    assert!(text.contains("Measured            2"), "{text}");
    assert!(
        text.contains("\nRow 2, column 1: “wide” must be a number"),
        "{text}"
    );
    let answer = measured(&[], lot);
    let rows: Vec<&Value> = (answer["unread"].as_array().unwrap().iter())
        .map(|cell| &cell["row"])
        .collect();
    assert_eq!(rows, [&json!(2), &json!(4)]);
}

#[test]
fn what_keeps_from_the_measurements_is_told() {
    let code = |arguments: &[&str], lot: &str| ask_measured(arguments, lot).0;
    assert_eq!(code(&[], ""), 1);
    assert_eq!(code(&[], "Width (cm)\n7.4"), 1);
    let of = ["--nominal", "5", "--upper", "0.1", "--of", "thickness"];
    let (ending, text, complaint) = ask_measured(&of, "74.0\nwide");
    assert_eq!((ending, text.as_str()), (1, ""));
    assert!(
        complaint.starts_with("there is no thickness"),
        "{complaint}"
    );
    assert!(complaint.contains("\nRow 2, column 1: "), "{complaint}");
    let (_, text, _) = ask_measured(&["--format", "json"], "");
    assert!(is_described(
        &["check"],
        &serde_json::from_str(&text).unwrap()
    ));
    for wrong in [
        &["--nominal", "74"][..],
        &["--nominal", "wide", "--upper", "0.1"],
        &["--nominal", "74", "--lower", "0.1", "--upper", "-1/64"],
        &["--lower", "-0.1"],
        &["--of", "thickness"],
        &["--confidence", "1"],
        &["--mean-within", "-0.1"],
        &["--deviation-within", "0"],
    ] {
        assert_eq!(code(wrong, "74.0"), 2, "{wrong:?}");
    }
    let (_, _, complaint) = ask_measured(&["--nominal", "a", "--lower", "b"], "74.0");
    let lines: Vec<&str> = complaint.lines().collect();
    assert!(
        lines[0].starts_with("--nominal must ") && lines[1].starts_with("--lower must "),
        "{complaint}"
    );
    let program = told(&run(&["measured", "not/there.csv"], b""));
    assert_eq!(program.0, 3);
}

/// Something else at one place of a document, which is found by walking down by these steps; a
/// walk that has come to a leaf ends there.
fn put(place: &mut Value, steps: &[usize], value: Value) {
    let next = steps.split_first().and_then(|(step, rest)| {
        let member = match &mut *place {
            Value::Object(members) => {
                let at = step.checked_rem(members.len())?;
                members.values_mut().nth(at)
            }
            Value::Array(members) => {
                let at = step.checked_rem(members.len())?;
                members.get_mut(at)
            }
            _ => None,
        };
        member.map(|member| (member, rest))
    });
    match next {
        Some((member, rest)) => put(member, rest, value),
        None => *place = value,
    }
}

fn anything() -> impl Strategy<Value = Value> {
    prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        (-1e3..1e3_f64).prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        ".{0,12}".prop_map(Value::from),
        Just(json!([])),
        Just(json!({})),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn no_file_makes_it_panic(
        changes in prop::collection::vec((prop::collection::vec(0..64_usize, 1..4), anything()), 1..4),
        command in prop::sample::select(vec![
            vec!["check"],
            vec!["layout"],
            vec!["search"],
            vec!["thresholds"],
            vec!["tolerances", "--sandwiches", "1"],
        ]),
        format in prop::sample::select(vec!["text", "json"]),
    ) {
        let mut file: Value = serde_json::from_str(&write(&wide_search())).unwrap();
        for (steps, value) in changes {
            put(&mut file, &steps, value);
        }
        let arguments = [&command[..], &["-", "--format", format]].concat();
        let output = run(&arguments, file.to_string().as_bytes());
        let (code, text, complaint) = told(&output);
        prop_assert!([0, 1, 4].contains(&code), "{code}: {complaint}");
        prop_assert!(!complaint.contains("panicked"), "{complaint}");
        if format == "json" {
            prop_assert!(serde_json::from_str::<Value>(&text).is_ok(), "{text}");
        }
    }

    #[test]
    fn no_measurements_make_it_panic(
        rows in prop::collection::vec(prop_oneof!["[0-9.,;\\-a-z]{0,9}", "7[34][.,][0-9]{1,2};[45][.,][0-9]"], 0..40),
        format in prop::sample::select(vec!["text", "json"]),
    ) {
        let arguments = ["--format", format, "--nominal", "74", "--lower", "-0.2", "--mean-within", "0.01"];
        let (code, text, complaint) = ask_measured(&arguments, &rows.join("\n"));
        prop_assert!([0, 1].contains(&code), "{code}: {complaint}");
        prop_assert!(!complaint.contains("panicked"), "{complaint}");
        if format == "json" {
            prop_assert!(serde_json::from_str::<Value>(&text).is_ok(), "{text}");
        }
    }
}
