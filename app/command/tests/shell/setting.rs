//! `setting`: how the machines are set, and the drawings that go with it.

use std::fs;
use std::path::PathBuf;

use app::demo;
use app::project_file::write;
use serde_json::{Value, json};
use solver::{ProjectDraft, Typed};

use crate::program::{ask, is_described, json_of, number, run, told};
use crate::projects::too_thick;

/// A folder of this test run that is not there yet.
fn folder(name: &str) -> PathBuf {
    std::env::temp_dir().join(format!("slatwright-{}-{name}", std::process::id()))
}

#[test]
fn the_setting_of_the_demo_is_told_as_a_sheet() {
    let (code, text, complaint) = ask(&["setting", "-"], &demo::project());
    assert_eq!((code, complaint.as_str()), (0, ""));
    for line in [
        "Alder Brook works (invented)",
        "Barrel         Writer, hexagonal",
        // An edge of 1.0 and half a bare pencil of 6.84 mm.
        " 1   4.42",
        "Slats at the machine, mm at a moisture content of 8.0\u{202f}%",
        "Heights above the table, mm",
        "Run of 60\u{202f}480 good pencils",
        "Cutter sets for the order book",
        "Mind",
    ] {
        assert!(text.lines().any(|told| told == line), "{line} in\n{text}");
    }
    assert!(text.contains("Never turn a head faster"), "{text}");
    assert!(
        text.contains("Top knife; Bottom knife: to the first land, mm"),
        "{text}"
    );
    let (_, inches, _) = ask(&["setting", "-", "--unit", "in"], &demo::project());
    assert!(
        inches.contains("Sandwich as glued 0.394\u{202f}in"),
        "{inches}"
    );
}

#[test]
fn every_setting_is_as_its_schema_says() {
    let mut uncut = demo::project();
    uncut.heads[0].speed = Typed::Number(1.0);
    uncut.cut.feed = Typed::Number(100.0);
    let mut without_a_run = demo::project();
    without_a_run.run.gross = Typed::empty();
    without_a_run.orders[0].gross = Typed::empty();
    let mut new_set = demo::project();
    new_set.search.new_set_price = Typed::Number(480.0);
    let projects = [
        demo::project(),
        demo::blank(),
        too_thick(),
        deep_knife(),
        uncut,
        without_a_run,
        new_set,
    ];
    for project in projects {
        let answer = json_of("setting", &project);
        assert!(is_described(&["setting"], &answer), "{answer:#}");
        assert_eq!(answer["format"], "slatwright-setting");
    }
    let mut answer = json_of("setting", &demo::project());
    answer.as_object_mut().unwrap().remove("heads");
    assert!(!is_described(&["setting"], &answer));
}

/// The demo with a hook angle at which no knife is as deep as a pencil is high.
fn deep_knife() -> ProjectDraft {
    let mut project = demo::project();
    project.heads[1].hook = Typed::Number(89.0);
    project
}

#[test]
fn heights_and_marks_follow_from_sizes_and_speeds() {
    let answer = json_of("setting", &demo::project());
    let setting = &answer["setting"];
    // Plane geometry: a groove cutter stands a slat less its depth above the table, its axis a radius
    // above that.
    let (groove, slat) = (&setting["heights"][1], &setting["bottom"]);
    let tip = number(&slat["thickness_mm"]) - number(&slat["groove_depth_mm"]);
    assert!((number(&groove["tip_mm"]) - tip).abs() < 1e-9, "{groove}");
    let radius = number(&answer["heads"][0]["diameter_mm"]) / 2.0;
    assert!((number(&groove["axis_mm"]) - tip - radius).abs() < 1e-9);
    // Trade formula: p = 1000·v/(n·z).
    for head in answer["heads"].as_array().unwrap() {
        let feed = number(&answer["cut"]["feed_metres_per_minute"]);
        let cuts = number(&head["speed_per_minute"]) * number(&head["knives"]);
        let pitch = number(&head["marks"]["pitch_mm"]);
        assert!((pitch - 1000.0 * feed / cuts).abs() < 1e-9, "{head}");
    }
    // Ten pencils: the edge ends where the slats end.
    let points = setting["knives"][3]["points"].as_array().unwrap();
    assert!((number(&points.last().unwrap()["across_mm"]) - 74.0).abs() < 1e-9);
}

#[test]
fn a_stage_takes_what_the_next_one_needs() {
    let answer = json_of("setting", &demo::project());
    let stages = answer["run"]["stages"].as_array().unwrap();
    assert_eq!(stages.len(), 5);
    assert_eq!(stages[4]["needed"], json!(420 * 144));
    // Shaping, coating and finishing all count pencils.
    for pair in stages[2..].windows(2) {
        assert_eq!(pair[0]["needed"], pair[1]["taken"]);
    }
    // 97.5 % of what finishing takes is what is wanted.
    let taken = number(&stages[4]["taken"]);
    assert!((taken * 0.975 - 60_480.0).abs() < 1.0, "{taken}");
}

#[test]
fn a_set_that_saves_is_told_with_what_it_saves() {
    let mut project = demo::project();
    // Nines where tens fit: a tenth of the slats is given away.
    project.cutter_sets.truncate(1);
    project.cutter_sets[0].draft.most = Typed::Number(9.0);
    project.slats.truncate(1);
    project.orders.truncate(1);
    project.search.new_set_price = Typed::Number(480.0);
    let cutters = &json_of("setting", &project)["cutters"];
    let now = number(&cutters["orders"][0]["made"]["price_per_gross_hundredths"]);
    let best = &cutters["proposals"][0];
    assert_eq!(best["made_to_measure"]["most"], json!(10));
    let saving = number(&best["saving_hundredths"]);
    assert!(
        (saving - now * 400.0 / 10.0).abs() < 1e-6 * saving,
        "{cutters:#}"
    );
    assert_eq!(best["price_hundredths"], json!(48_000));
    let (_, text, _) = ask(&["setting", "-"], &project);
    assert!(
        text.contains("Set                 made for Writer, hexagonal, 10 grooves"),
        "{text}"
    );
}

#[test]
fn drawings_are_written_where_they_are_asked_for() {
    let (svg, dxf) = (folder("svg"), folder("dxf"));
    let arguments = [
        "setting",
        "-",
        "--format",
        "json",
        "--svg",
        svg.to_str().unwrap(),
        "--dxf",
        dxf.to_str().unwrap(),
        "--paper",
        "letter",
    ];
    let (code, text, _) = ask(&arguments, &demo::project());
    assert_eq!(code, 0, "{text}");
    let answer: Value = serde_json::from_str(&text).unwrap();
    assert!(is_described(&["setting"], &answer), "{answer:#}");
    let files = answer["files"].as_array().unwrap();
    assert_eq!(files.len(), 11 + 5);
    for file in files {
        assert_eq!(file["problem"], Value::Null);
        let path = file["file"].as_str().unwrap();
        let held = fs::read_to_string(path).unwrap();
        let begins = if path.ends_with(".svg") {
            "<svg "
        } else {
            "0\nSECTION\n"
        };
        assert!(held.starts_with(begins), "{path}");
    }
    let gauge = fs::read_to_string(svg.join("gauge.svg")).unwrap();
    assert!(
        gauge.contains("Alder Brook works (invented): Writer, hexagonal"),
        "{gauge}"
    );
    fs::remove_dir_all(&svg).unwrap();
    fs::remove_dir_all(&dxf).unwrap();
}

#[test]
fn a_gauge_too_wide_for_upright_paper_lies_along_it() {
    let width = |project: &ProjectDraft, name: &str| {
        let svg = folder(name);
        let (code, text, _) = ask(&["setting", "-", "--svg", svg.to_str().unwrap()], project);
        assert_eq!(code, 0, "{text}");
        let gauge = fs::read_to_string(svg.join("gauge.svg")).unwrap();
        fs::remove_dir_all(&svg).unwrap();
        let (_, rest) = gauge.split_once(" width=\"").unwrap();
        let (width, _) = rest.split_once("mm").unwrap();
        width.parse::<f64>().unwrap()
    };
    let mut wide = demo::project();
    wide.slats[0].draft.width = Typed::Number(200.0);
    // ISO 216: A4 is 210 mm wide, and 297 mm the other way round.
    assert!(width(&demo::project(), "upright") <= 210.0);
    let lying = width(&wide, "lying");
    assert!((200.0..=297.0).contains(&lying), "{lying}");
}

#[test]
fn what_can_be_drawn_is_written_where_a_knife_cannot_be_made() {
    let svg = folder("without-knives");
    let (code, text, _) = ask(
        &["setting", "-", "--svg", svg.to_str().unwrap()],
        &deep_knife(),
    );
    assert_eq!(code, 4, "{text}");
    let names = fs::read_dir(&svg)
        .unwrap()
        .map(|entry| entry.unwrap().file_name());
    let mut names: Vec<String> = names.map(|name| name.into_string().unwrap()).collect();
    names.sort();
    assert_eq!(names, ["gauge.svg", "outline.svg", "section.svg"]);
    fs::remove_dir_all(&svg).unwrap();
}

#[test]
fn a_folder_that_cannot_be_made_is_told_by_the_exit_code() {
    let file = folder("file");
    fs::write(&file, "no folder").unwrap();
    let (code, text, _) = ask(
        &["setting", "-", "--dxf", file.to_str().unwrap()],
        &demo::project(),
    );
    assert_eq!(code, 3);
    assert!(text.contains("It cannot be written: "), "{text}");
    fs::remove_file(&file).unwrap();
}

#[test]
fn what_keeps_from_a_setting_is_told_and_ends_so() {
    let (code, text, _) = ask(&["setting", "-"], &deep_knife());
    assert_eq!(code, 4);
    assert!(
        text.contains("take a larger head or a smaller hook angle"),
        "{text}"
    );
    let (code, text, _) = ask(&["setting", "-"], &too_thick());
    assert_eq!(code, 4);
    assert!(text.contains("FAIL"), "{text}");

    let mut project = demo::project();
    project.heads[2].hook = Typed::Number(90.0);
    project.heads[0].speed = Typed::Number(13_000.0);
    project.cut.feed = Typed::Number(0.0);
    let (code, _, complaint) = ask(&["setting", "-"], &project);
    assert_eq!(code, 1);
    for place in [
        "heads.bottom.hook_degrees: ",
        "heads.groove.speed_per_minute: ",
        "cut.feed_metres_per_minute: ",
    ] {
        assert!(complaint.contains(place), "{complaint}");
    }
    let arguments = ["setting", "-", "--paper", "letter"];
    let (code, ..) = told(&run(&arguments, write(&demo::project()).as_bytes()));
    assert_eq!(code, 2, "paper without a drawing that goes on it");
}

#[test]
fn a_run_that_is_wrong_keeps_only_the_run_from_being_told() {
    let mut project = demo::project();
    project.run.yields[2] = Typed::Number(0.0);
    project.orders[0].gross = Typed::Text("many".into());
    let (code, text, _) = ask(&["setting", "-"], &project);
    assert_eq!(code, 0);
    assert!(text.contains("Of the run nothing is told"), "{text}");
    assert!(text.contains("run.yields_percent.shaping: "), "{text}");
    assert!(text.contains("orders[0].gross: "), "{text}");
    assert!(text.contains("Heights above the table"), "{text}");
}
