//! Any file and any measurements at all are answered or refused.

use app::project_file::write;
use proptest::prelude::*;
use serde_json::{Value, json};

use crate::measured::ask_measured;
use crate::program::{run, told};
use crate::projects::wide_search;

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
            vec!["setting"],
            vec!["gains", "--size-mm", "0.1"],
            vec!["barrels"],
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
