//! Every way a file can be wrong, and what opens with a note.

use super::*;
use solver::Typed;

#[test]
fn a_text_that_is_no_json_is_told_with_its_place() {
    let problems = read("{\n  \"format\": ,").unwrap_err();
    assert_eq!(
        lines(&problems),
        ["the file is not JSON from line 2, column 13: expected value"]
    );
    assert!(read("").is_err());
}

#[test]
fn other_json_is_no_project() {
    for other in ["[]", "null", "12", "{}", r#"{"format": "else"}"#] {
        refuses(
            other,
            &[
                "the file is not a Slatwright project: it does not begin with \"format\": \"slatwright-project\"",
            ],
        );
    }
}

#[test]
fn a_byte_order_mark_does_no_harm() {
    assert_eq!(read(&format!("\u{feff}{VERSION_6}")), read(VERSION_6));
}

#[test]
fn a_missing_field() {
    refuses(
        &without("/slats/1", "width_mm"),
        &["slats[1].width_mm: missing, expected a number or a text"],
    );
}

#[test]
fn a_missing_part_is_told_once() {
    refuses(
        &without("", "rules"),
        &["rules: missing, expected an object in braces"],
    );
}

#[test]
fn a_field_of_another_kind() {
    refuses(
        &changed("/slats/1/width_mm", json!([74])),
        &["slats[1].width_mm: a list stands here, expected a number or a text"],
    );
    refuses(
        &changed("/barrels/0/name", json!(7)),
        &["barrels[0].name: 7 stands here, expected a text in quotes"],
    );
    refuses(
        &changed("/orders", json!({})),
        &["orders: an object stands here, expected a list in brackets"],
    );
    refuses(
        &changed("/orders/1", json!(null)),
        &["orders[1]: nothing (null) stands here, expected an object in braces"],
    );
}

#[test]
fn an_id_is_a_whole_number() {
    for id in [json!(-1), json!(1.5), json!(4_294_967_296_u64), json!("1")] {
        let problems = read(&changed("/layout/top", id)).unwrap_err();
        assert_eq!(problems[0].path, "layout.top");
        assert!(matches!(problems[0].cause, FileCause::OtherKind { .. }));
    }
    assert!(read(&changed("/layout/top", json!(2.0))).is_ok());
}

#[test]
fn an_optional_id_is_a_whole_number_or_null() {
    for place in [
        "/slats/0/species",
        "/rules/cutter_set",
        "/cutter_sets/0/barrel",
        "/saw_shop/blanks/0/slat",
    ] {
        assert!(read(&changed(place, json!(null))).is_ok());
    }
    refuses(
        &changed("/slats/0/species", json!("none")),
        &[
            "slats[0].species: the text \"none\" stands here, expected a whole number from 0 to 4294967295, or null",
        ],
    );
    refuses(
        &without("/rules", "cutter_set"),
        &["rules.cutter_set: missing, expected a whole number from 0 to 4294967295, or null"],
    );
}

#[test]
fn a_word_that_is_not_known() {
    refuses(
        &changed("/barrels/0/shape", json!("square")),
        &[
            "barrels[0].shape: \"square\" stands here, expected one of: round, hexagonal, triangular, polygonal, oval, flat, free",
        ],
    );
    refuses(
        &changed("/run/lead_grade", json!("10H")),
        &[
            "run.lead_grade: \"10H\" stands here, expected one of: 9B, 8B, 7B, 6B, 5B, 4B, 3B, 2B, B, HB, F, H, 2H, 3H, 4H, 5H, 6H, 7H, 8H, 9H, Coloured",
        ],
    );
}

#[test]
fn an_id_that_stands_twice() {
    refuses(
        &changed("/barrels/2/id", json!(1)),
        &["barrels[2].id: the id 1 stands here again, it is that of barrels[0] already"],
    );
    refuses(
        &changed("/species/1/id", json!(21)),
        &["species[1].id: the id 21 stands here again, it is that of species[0] already"],
    );
    refuses(
        &changed("/cutter_sets/1/id", json!(31)),
        &["cutter_sets[1].id: the id 31 stands here again, it is that of cutter_sets[0] already"],
    );
    refuses(
        &changed("/saw_shop/planks/1/id", json!(61)),
        &[
            "saw_shop.planks[1].id: the id 61 stands here again, it is that of saw_shop.planks[0] already",
        ],
    );
}

#[test]
fn everything_is_told_at_once() {
    let mut document: Value = serde_json::from_str(VERSION_6).unwrap();
    document["name"] = json!(null);
    document["barrels"][1]["shape"] = json!(3);
    document["slats"] = json!("none");
    document["rules"]["land_mm"] = json!(true);
    document["orders"][2]["gross"] = json!({});
    let paths: Vec<String> = read(&document.to_string())
        .unwrap_err()
        .into_iter()
        .map(|problem| problem.path)
        .collect();
    let expected = [
        "name",
        "barrels[1].shape",
        "slats",
        "rules.land_mm",
        "orders[2].gross",
    ];
    assert_eq!(paths, expected);
}

#[test]
fn what_names_nothing_opens_with_a_note() {
    let mut document: Value = serde_json::from_str(VERSION_6).unwrap();
    document["slats"][0]["species"] = json!(2);
    document["cutter_sets"][1]["barrel"] = json!(7);
    document["rules"]["cutter_set"] = json!(21);
    document["layout"]["top"] = json!(9);
    document["orders"][0]["barrel"] = json!(2);
    document["saw_shop"]["blanks"][0]["slat"] = json!(4);
    notes(
        &document.to_string(),
        &[
            "slats[0].species: there is no species with the id 2",
            "cutter_sets[1].barrel: there is no barrel with the id 7",
            "rules.cutter_set: there is no cutter set with the id 21",
            "layout.top: there is no slat stock with the id 9",
            "orders[0].barrel: there is no barrel with the id 2",
            "saw_shop.blanks[0].slat: there is no slat stock with the id 4",
        ],
    );
}

#[test]
fn unknown_fields_open_with_a_note() {
    let mut document: Value = serde_json::from_str(VERSION_6).unwrap();
    document["slats"][0]["colour"] = json!("red");
    for extra in 0..7 {
        document[format!("extra {extra}")] = json!(extra);
    }
    notes(
        &document.to_string(),
        &[
            "slats[0]: not looked at, as this Slatwright does not know it: colour",
            "not looked at, as this Slatwright does not know it: extra 0, extra 1, extra 2, extra 3, extra 4 and 2 more",
        ],
    );
}

#[test]
fn numbers_that_are_not_finite_become_text() {
    let mut draft = read(VERSION_6).unwrap().draft;
    draft.rules.land = Typed::Number(f64::NAN);
    draft.rules.edge = Typed::Number(f64::NEG_INFINITY);
    let back = read(&write(&draft)).unwrap().draft;
    assert_eq!(back.rules.land, Typed::Text("NaN".into()));
    assert_eq!(back.rules.edge, Typed::Text("-inf".into()));
    assert_eq!(back.check_rules().unwrap_err().len(), 2);
}

#[test]
fn no_message_ends_with_a_full_stop() {
    for text in [
        VERSION_6.replace('}', ""),
        changed("/version", json!(9)),
        without("", "name"),
    ] {
        for problem in read(&text).unwrap_err() {
            assert!(!problem.to_string().ends_with('.'), "{problem}");
            assert!(!problem.hint().ends_with('.'), "{problem}");
        }
    }
}
