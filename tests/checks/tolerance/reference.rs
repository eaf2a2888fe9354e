//! Against a plain program of the same model, written from its definition with vectors of numpy.
//!
//! Its answers are kept beside it. Where `python3` with numpy is at hand, the program is run again
//! with other dice, so that the file cannot drift from the program.

use serde_json::Value;
use solver::tolerance::{Fault, Tally, Trial};
use solver::{
    Accuracy, AccuracyDraft, Angle, Length, Offsets, Setup, Shape, SlatDraft, Term, Typed, lay_out,
};
use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Stdio};
use tests::shop;

const SEED: u64 = 77;

fn file(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("reference")
        .join(name)
}

fn cases() -> Vec<Value> {
    let text = std::fs::read_to_string(file("tolerance.json")).expect("the file is kept");
    let stored: Value = serde_json::from_str(&text).expect("the file is JSON");
    stored["cases"].as_array().expect("a list").clone()
}

fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

fn numbers(value: &Value) -> Vec<f64> {
    value
        .as_array()
        .expect("a list")
        .iter()
        .map(number)
        .collect()
}

fn accuracy(case: &Value) -> Accuracy {
    let name = |term| match term {
        Term::GroovePosition => "groove_position",
        Term::ShapingPosition => "shaping_position",
        Term::LeadDiameter => "lead_diameter",
        Term::GrooveHead => "groove_head",
        Term::GrooveDepth => "groove_depth",
        Term::SlatWidth => "slat_width",
        Term::BottomThickness => "bottom_thickness",
        Term::GlueShift => "glue_shift",
        Term::ShapingAcross => "shaping_across",
        Term::ShapingUp => "shaping_up",
    };
    let mut draft = AccuracyDraft::new("");
    for term in Term::ALL {
        draft.error_mut(term).size = Typed::Number(number(&case["errors"][name(term)]));
    }
    let offset = |name: &str| Length::millimetres(number(&case["offsets"][name]));
    let offsets = Offsets {
        top_width: offset("top_width"),
        bottom_width: offset("bottom_width"),
        bottom_thickness: offset("bottom_thickness"),
    };
    let accuracy = draft.check().expect("the errors lie in their ranges");
    accuracy
        .with_offsets(offsets)
        .expect("the offsets are numbers")
}

/// The same case laid out and made by the solver.
fn made(case: &Value) -> Tally {
    let shape = match case["shape"].as_str() {
        Some("round") => Shape::Round,
        _ => Shape::Hexagonal,
    };
    let typed = |name: &str| Typed::Number(number(&case[name]));
    let barrel = shop::changed_barrel(
        shape,
        number(&case["size"]),
        number(&case["corner"]),
        |draft| {
            draft.coat = typed("coat");
            draft.lead_diameter = typed("lead");
        },
    );
    let mut slat = SlatDraft::new("");
    slat.width = typed("slat_width");
    let slat = slat.check().expect("the cases name slats that can be had");
    let rules = shop::rules(|rules| {
        rules.clearance = typed("clearance");
        rules.land = typed("land");
        rules.edge = typed("edge");
        rules.wall = typed("wall");
        rules.eccentricity = typed("eccentricity");
    });
    let setup = Setup {
        barrel: &barrel,
        turn: Angle::degrees(number(&case["turn"])),
        top: &slat,
        bottom: &slat,
        rules: &rules,
    };
    let trial = Trial::new(&setup, &lay_out(&setup), &accuracy(case));
    trial.simulate(SEED, 0..200, &mut |_| true)
}

/// Every number of an answer within five standard errors of the two together.
fn agree(name: &str, ours: &Tally, case: &Value, answer: &Value) {
    let (here, there) = (ours.sandwiches() as f64, number(&case["sandwiches"]));
    assert_eq!(
        ours.good_at().len() as f64,
        number(&answer["across"]),
        "{name}"
    );
    let good = ours.good();
    let error = libm::hypot(good.error, number(&answer["error"]));
    let miss = good.mean - number(&answer["good"]);
    assert!(
        miss.abs() <= 5.0 * error,
        "{name}: good {}, miss {miss}",
        good.mean
    );

    // Shares of sandwiches, with the error of a share; a hair for events that were hardly seen.
    let share = |what: &str, ours: u64, theirs: f64, most: f64| {
        let (one, other) = (ours as f64 / here, theirs / there);
        let pooled = (ours as f64 + theirs) / (here + there);
        let error = (pooled * (most - pooled).max(0.0) * (1.0 / here + 1.0 / there)).sqrt();
        let hair = 5.0 / here.min(there);
        assert!(
            (one - other).abs() <= 5.0 * error + hair,
            "{name}: {what} {one} for {other}"
        );
    };
    for (k, theirs) in numbers(&answer["histogram"]).into_iter().enumerate() {
        share("sandwiches", ours.histogram()[k], theirs, 1.0);
    }
    for (k, theirs) in numbers(&answer["good_at"]).into_iter().enumerate() {
        share("position", ours.good_at()[k], theirs, 1.0);
    }
    for (fault, theirs) in Fault::ALL.into_iter().zip(numbers(&answer["faults"])) {
        // Of n pencils that may all fail together.
        share(
            fault.label(),
            ours.faulty(fault),
            theirs,
            ours.good_at().len() as f64,
        );
    }
}

#[test]
fn the_answers_that_are_kept_are_found_again() {
    for case in cases() {
        let name = case["name"].as_str().expect("a name");
        agree(name, &made(&case), &case, &case["answer"]);
    }
}

#[test]
fn the_program_gives_the_same_answers_with_other_dice_where_it_can_be_run() {
    let with_numpy = Command::new("python3")
        .args(["-c", "import numpy"])
        .output();
    if !with_numpy.is_ok_and(|output| output.status.success()) {
        println!("python3 with numpy is not at hand: only the answers that are kept are compared");
        return;
    }
    for mut case in cases() {
        case["seed"] = Value::from(4321);
        case["sandwiches"] = Value::from(100_000);
        let mut program = Command::new("python3")
            .arg(file("tolerance.py"))
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("python3 starts");
        let mut input = program.stdin.take().expect("a pipe");
        input
            .write_all(case.to_string().as_bytes())
            .expect("it reads");
        drop(input);
        let output = program.wait_with_output().expect("it ends");
        let answer: Value = serde_json::from_slice(&output.stdout).expect("it answers in JSON");
        agree(
            case["name"].as_str().expect("a name"),
            &made(&case),
            &case,
            &answer,
        );
    }
}
