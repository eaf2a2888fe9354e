//! What a list of measured slats says of its lot.

use super::JOB;
use crate::answer::answer;
use crate::demo;
use crate::project_file;
use crate::protocol::{MeasuredList, Reply, Request, SheetSizes, SizeWord, UnitWord};

fn ask(list: &str, agreed_mm: Option<f64>) -> Reply {
    let request = Request::Measure {
        job: JOB,
        project: project_file::write(&demo::project()),
        unit: UnitWord::Millimetre,
        list: list.to_owned(),
        agreed_mm,
        sheet: SheetSizes {
            width: 600.0,
            row: 26.0,
            text: 66.0,
        },
    };
    answer(request, &mut |_| ())
}

#[track_caller]
fn measured(list: &str, agreed_mm: Option<f64>) -> MeasuredList {
    match ask(list, agreed_mm) {
        Reply::Measured { job: JOB, measured } => measured,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_list_is_told_in_lines_and_drawn() {
    let list = "74.0;5.00\n74.1;5.02\n74.2;5.04\nwide;5.01\n";
    let found = measured(list, Some(0.15));
    assert_eq!(found.problems.len(), 1);
    assert!(found.problems[0].starts_with("Row 4, column 1: “wide”"));
    let [width, thickness] = found.lots.as_slice() else {
        panic!("{found:?}");
    };
    assert_eq!(
        (width.size, thickness.size),
        (SizeWord::Width, SizeWord::Thickness)
    );
    assert!((width.mean_mm - 74.1).abs() < 1e-9);
    assert!((width.deviation_mm.unwrap() - 0.1).abs() < 1e-9);
    let told = |name: &str| {
        let mut facts = width.facts.iter();
        let fact = facts.find(|fact| fact.name == name);
        fact.map(|fact| fact.value.clone()).unwrap()
    };
    assert_eq!(told("Measured"), "3");
    // 74.2 lies outside 74 ± 0.15: one of three.
    assert!(told("Outside the limits").starts_with("33.3"), "{width:?}");
    assert!(!width.chart.bars.is_empty() && width.chart.poles.len() == 3);
}

#[test]
fn a_list_that_says_nothing_says_why() {
    let found = measured("no\nnumbers\n", None);
    assert!(found.lots.is_empty() && !found.problems.is_empty());
    let found = measured("74.0", None);
    assert_eq!(found.lots[0].deviation_mm, None);
}

#[test]
fn a_told_list_survives_the_way_as_json() {
    let said = ask("74.0;5.00\n74.1;5.02\n", None);
    let text = serde_json::to_string(&said).unwrap();
    assert_eq!(serde_json::from_str::<Reply>(&text).unwrap(), said);
}
