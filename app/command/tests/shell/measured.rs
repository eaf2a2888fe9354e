//! `measured`: slats of a delivery.

use serde_json::{Value, json};

use crate::program::{is_described, number, run, told};

/// Asks about measurements on standard input.
pub(crate) fn ask_measured(arguments: &[&str], measurements: &str) -> (i32, String, String) {
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
