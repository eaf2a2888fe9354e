//! `barrel`: the finished pencil of a project.

use std::fs;

use app::demo;
use app::project_file::write;
use solver::Typed;

use crate::program::{ask, is_described, json_of, number, run, told};

#[test]
fn the_demo_is_told_as_on_the_page() {
    let (code, text, complaint) = ask(&["barrel", "-"], &demo::project());
    assert_eq!((code, complaint.as_str()), (0, ""));
    for part in [
        "Writer, hexagonal",
        "sharpened to 22.0°",
        "Depth of the scallops",
        "2.39\u{202f}mm",
        "Imprinted “WRITER  invented  HB”",
    ] {
        assert!(text.contains(part), "{part} in\n{text}");
    }
}

#[test]
fn another_barrel_is_told_where_it_is_named() {
    let (code, text, _) = ask(&["barrel", "-", "--barrel", "2"], &demo::project());
    assert_eq!(code, 0);
    assert!(text.contains("Sketcher, round"), "{text}");
    let (code, text, complaint) = ask(&["barrel", "-", "--barrel", "99"], &demo::project());
    assert_eq!((code, text.as_str()), (1, ""));
    assert!(complaint.contains("no barrel 99"), "{complaint}");
}

#[test]
fn the_answer_is_as_its_schema_says_and_its_parts_add_up() {
    let mut project = demo::project();
    let answer = json_of("barrel", &project);
    assert!(is_described(&["barrel"], &answer), "{answer:#}");
    for state in ["made", "sharpened"] {
        let body = &answer[state];
        let parts = ["wood", "lead", "coat"].map(|part| number(&body[part]["mass_grams"]));
        let whole = number(&body["mass_grams"]);
        assert!((parts.iter().sum::<f64>() - whole).abs() < 1e-12 * whole);
    }
    assert_eq!(number(&answer["made"]["balance_mm"]).round(), 88.0);
    project.barrels[0].draft.finish.point_angle = Typed::Number(200.0);
    let (code, _, complaint) = ask(&["barrel", "-"], &project);
    assert_eq!(code, 1);
    assert!(
        complaint.contains("barrels[0].finish.point_degrees: "),
        "{complaint}"
    );
}

#[test]
fn the_drawing_goes_into_a_folder() {
    let folder = std::env::temp_dir().join(format!("slatwright-barrel-{}", std::process::id()));
    let svg = folder.to_str().unwrap();
    let project = write(&demo::project());
    let (code, text, _) = told(&run(&["barrel", "-", "--svg", svg], project.as_bytes()));
    assert_eq!(code, 0, "{text}");
    let drawn = fs::read_to_string(folder.join("pencil.svg")).unwrap();
    assert!(drawn.starts_with("<svg ") && drawn.contains("Looking at the point"));
    fs::remove_dir_all(&folder).unwrap();
}
