//! There and back, every way a file can be wrong, and files of every version.

use proptest::prelude::*;
use serde_json::{Value, json};
use solver::{
    AccuracyDraft, AxisChoice, BarrelDraft, ConditionsDraft, CutterSetDraft, Entry, ErrorDraft, Id,
    LayoutDraft, MoistureSource, OrderDraft, Pairs, ProjectDraft, Reading, RulesDraft, Sawing,
    SearchDraft, Shape, SlatDraft, Spacing, SpeciesDraft, Term, Turns, Typed, Way,
};

use super::words::Word;
use super::*;

const VERSION_1: &str = include_str!("fixtures/version_1.json");
const VERSION_2: &str = include_str!("fixtures/version_2.json");
const VERSION_3: &str = include_str!("fixtures/version_3.json");

/// The newest fixture with one place changed.
fn changed(pointer: &str, value: Value) -> String {
    let mut document: Value = serde_json::from_str(VERSION_3).unwrap();
    *document.pointer_mut(pointer).unwrap() = value;
    document.to_string()
}

/// The newest fixture without one field.
fn without(pointer: &str, name: &str) -> String {
    let mut document: Value = serde_json::from_str(VERSION_3).unwrap();
    let object = document.pointer_mut(pointer).unwrap();
    object.as_object_mut().unwrap().remove(name).unwrap();
    document.to_string()
}

fn lines(problems: &[FileProblem]) -> Vec<String> {
    problems.iter().map(ToString::to_string).collect()
}

#[track_caller]
fn refuses(text: &str, expected: &[&str]) {
    assert_eq!(lines(&read(text).unwrap_err()), expected);
}

#[track_caller]
fn notes(text: &str, expected: &[&str]) {
    assert_eq!(lines(&read(text).unwrap().notes), expected);
}

/// The newest fixture with its own layout set aside, and one place of that changed.
fn set_aside(pointer: &str, value: Value) -> String {
    let mut draft = read(VERSION_3).unwrap().draft;
    draft.set_layout_aside();
    let mut document: Value = serde_json::from_str(&write(&draft)).unwrap();
    *document["set_aside"].pointer_mut(pointer).unwrap() = value;
    document.to_string()
}

#[test]
fn what_was_set_aside_comes_back_and_is_left_out_where_there_is_none() {
    let mut draft = crate::demo::project();
    assert!(!write(&draft).contains("set_aside"));
    draft.set_layout_aside();
    draft.rules.land = Typed::Number(0.9);
    assert_eq!(read(&write(&draft)).unwrap().draft, draft);
}

#[test]
fn what_is_wrong_in_what_was_set_aside_is_told_with_its_place() {
    refuses(
        &set_aside("/rules/land_mm", Value::Null),
        &["set_aside.rules.land_mm: nothing (null) stands here, expected a number or a text"],
    );
    notes(
        &set_aside("/layout/top", json!(77)),
        &["set_aside.layout.top: there is no slat stock with the id 77"],
    );
    let mut document: Value = serde_json::from_str(VERSION_3).unwrap();
    document["set_aside"] = json!([]);
    let problems = lines(&read(&document.to_string()).unwrap_err());
    assert_eq!(
        problems[0],
        "set_aside: a list stands here, expected an object in braces"
    );
}

#[test]
fn one_layout_is_set_aside_and_not_one_behind_it() {
    let text = set_aside("/name", json!("x"));
    let mut document: Value = serde_json::from_str(&text).unwrap();
    let aside = document["set_aside"].clone();
    document["set_aside"]["set_aside"] = aside;
    let opened = read(&document.to_string()).unwrap();
    assert_eq!(opened.draft.set_aside.unwrap().set_aside, None);
    assert_eq!(opened.notes.len(), 1);
}

#[test]
fn a_file_of_version_1_still_opens() {
    let Opened { draft, notes } = read(VERSION_1).unwrap();
    assert_eq!(notes, []);
    assert_eq!(draft.name, "Made-up works");
    assert_eq!(draft.barrels[1].draft.shape, Shape::Triangular);
    assert_eq!(
        draft.barrels[1].draft.corner_radius,
        Typed::Text("1,".into())
    );
    assert_eq!(draft.slats[0].draft.pack_limit, Typed::empty());
    assert_eq!(draft.slats[1].draft.pack_price, Typed::Number(137.5));
    assert_eq!(draft.rules.spacing, Spacing::Given);
    assert_eq!(draft.rules.axis_height, Typed::Number(-0.1));
    assert_eq!(draft.layout.way, Way::Turned);
    assert_eq!(draft.layout.bottom, Id(3));
    assert_eq!(draft.orders[1].gross, Typed::Number(0.5));
}

#[test]
fn what_version_1_does_not_know_is_as_in_a_new_project() {
    let draft = read(VERSION_1).unwrap().draft;
    assert_eq!((draft.species.len(), draft.cutter_sets.len()), (0, 0));
    assert_eq!(draft.conditions, ConditionsDraft::new());
    assert_eq!(draft.search, SearchDraft::new());
    let (barrel, new) = (
        &draft.barrels[0].draft,
        BarrelDraft::new("", Shape::Hexagonal),
    );
    assert_eq!(
        (
            &barrel.sides,
            &barrel.height,
            &barrel.face_radius,
            &barrel.path
        ),
        (&new.sides, &new.height, &new.face_radius, &new.path)
    );
    let slat = &draft.slats[1].draft;
    assert_eq!((slat.species, slat.sawing), (None, Sawing::Flat));
    assert_eq!(draft.rules.most, Typed::empty());
    assert_eq!(draft.rules.pencil_rejects, Typed::Number(0.0));
}

#[test]
fn a_file_of_version_2_still_opens() {
    let Opened { draft, notes } = read(VERSION_2).unwrap();
    assert_eq!(notes, []);
    assert_eq!(draft.name, "Made-up works");
    let barrel = &draft.barrels[1].draft;
    assert_eq!(barrel.sides, Typed::Number(5.0));
    assert_eq!(barrel.face_radius, Typed::Number(25.0));
    assert_eq!(barrel.path, "M 0 0 H 9 V 7 H 0 Z");
    assert_eq!(barrel.axis_up, Typed::Number(-0.5));
    let slat = &draft.slats[0].draft;
    assert_eq!((slat.species, slat.sawing), (Some(Id(21)), Sawing::Quarter));
    assert_eq!(slat.moisture, Typed::Number(10.5));
    assert_eq!(draft.slats[1].draft.species, None);
    assert_eq!(
        draft.species[1].draft.fibre_saturation,
        Typed::Text("dry".into())
    );
    assert_eq!(draft.conditions.source, MoistureSource::Air);
    assert_eq!(draft.conditions.humidity, Typed::Number(45.0));
    assert_eq!(draft.cutter_sets[0].draft.barrel, Some(Id(4)));
    assert_eq!(draft.cutter_sets[1].draft.price, Typed::Number(640.0));
    assert_eq!(draft.rules.spacing, Spacing::Set);
    assert_eq!(draft.rules.cutter_set, Some(Id(31)));
    assert_eq!(draft.rules.pencil_rejects, Typed::Number(2.5));
    let search = &draft.search;
    let choices = (search.turns, search.axis, search.pairs);
    assert_eq!(choices, (Turns::Any, AxisChoice::AsInRules, Pairs::Any));
    assert_eq!(search.new_set_price, Typed::empty());
}

#[test]
fn a_list_that_is_full_is_told_before_it_overflows() {
    let mut draft = crate::demo::blank();
    let slat = draft.slats[0].clone();
    draft.slats = (0..MOST_ENTRIES as u32)
        .map(|id| Entry {
            id: Id(id),
            ..slat.clone()
        })
        .collect();
    assert_eq!(overfull(&draft), None);
    assert!(read(&write(&draft)).is_ok());
    draft.slats.push(Entry {
        id: Id(u32::MAX),
        ..slat
    });
    assert_eq!(overfull(&draft), Some("slat stocks"));
    assert!(read(&write(&draft)).is_err());
}

#[test]
fn what_version_2_does_not_know_is_as_in_a_new_project() {
    let draft = read(VERSION_2).unwrap().draft;
    assert_eq!(
        draft.accuracies[0].draft,
        AccuracyDraft::new(crate::demo::FIRST_LINE)
    );
    assert_eq!(draft.layout.accuracy, draft.accuracies[0].id);
    assert_eq!(draft.set_aside, None);
}

#[test]
fn a_file_of_version_3_still_opens() {
    let Opened { draft, notes } = read(VERSION_3).unwrap();
    assert_eq!(notes, []);
    assert_eq!(draft.layout.accuracy, Id(51));
    let [first, second] = [0, 1].map(|at| &draft.accuracies[at].draft);
    assert_eq!(first.groove_position.size, Typed::Number(0.01));
    assert_eq!(first.thickness_offset, Typed::Number(0.05));
    assert_eq!(second.glue_shift.reading, Reading::Limits);
    assert_eq!(second.lead_diameter.size, Typed::Text("0,0".into()));
    assert_eq!(second.sigmas, Typed::Text("three".into()));
}

#[test]
fn what_is_written_is_what_the_fixture_holds() {
    assert_eq!(write(&read(VERSION_3).unwrap().draft), VERSION_3);
}

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
fn a_newer_version_asks_for_an_update() {
    let problems = read(&changed("/version", json!(4))).unwrap_err();
    assert_eq!(
        lines(&problems),
        ["version: made by a newer Slatwright, version 4 of the file; this one reads up to 3"]
    );
    assert!(problems[0].hint().starts_with("update Slatwright"));
}

#[test]
fn a_version_that_never_was() {
    let told = "is not a version of the file; versions count from 1 to 3";
    for (version, found) in [
        (json!(0), "0"),
        (json!(-1), "-1"),
        (json!(1.5), "1.5"),
        (json!("1"), "the text \"1\""),
        (json!(null), "nothing (null)"),
    ] {
        refuses(
            &changed("/version", version),
            &[&format!("version: {found} {told}")],
        );
    }
    refuses(
        &without("", "version"),
        &["version: missing, expected the version of the file, a whole number from 1"],
    );
}

#[test]
fn a_byte_order_mark_does_no_harm() {
    assert_eq!(read(&format!("\u{feff}{VERSION_3}")), read(VERSION_3));
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
}

#[test]
fn everything_is_told_at_once() {
    let mut document: Value = serde_json::from_str(VERSION_3).unwrap();
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
    let mut document: Value = serde_json::from_str(VERSION_3).unwrap();
    document["slats"][0]["species"] = json!(2);
    document["cutter_sets"][1]["barrel"] = json!(7);
    document["rules"]["cutter_set"] = json!(21);
    document["layout"]["top"] = json!(9);
    document["orders"][0]["barrel"] = json!(2);
    notes(
        &document.to_string(),
        &[
            "slats[0].species: there is no species with the id 2",
            "cutter_sets[1].barrel: there is no barrel with the id 7",
            "rules.cutter_set: there is no cutter set with the id 21",
            "layout.top: there is no slat stock with the id 9",
            "orders[0].barrel: there is no barrel with the id 2",
        ],
    );
}

#[test]
fn unknown_fields_open_with_a_note() {
    let mut document: Value = serde_json::from_str(VERSION_3).unwrap();
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
fn the_limits_hold_to_the_last() {
    let name = |length: usize| changed("/name", json!("é".repeat(length)));
    assert!(read(&name(500)).is_ok());
    refuses(
        &name(501),
        &["name: the text has 501 characters, at most 500 are kept"],
    );

    let path = |length: usize| changed("/barrels/0/path", json!("Z".repeat(length)));
    assert!(read(&path(20_000)).is_ok());
    refuses(
        &path(20_001),
        &["barrels[0].path: the text has 20001 characters, at most 20000 are kept"],
    );

    let orders = |count: usize| {
        let order = json!({ "barrel": 1, "gross": 1 });
        changed("/orders", Value::Array(vec![order; count]))
    };
    assert_eq!(read(&orders(2_000)).unwrap().draft.orders.len(), 2_000);
    refuses(
        &orders(2_001),
        &["orders: the list has 2001 entries, at most 2000 can be worked with"],
    );

    let spaces = |bytes: usize| format!("{VERSION_3}{}", " ".repeat(bytes - VERSION_3.len()));
    assert!(read(&spaces(5_000_000)).is_ok());
    refuses(
        &spaces(5_000_001),
        &["the file has 5000001 bytes, a project has at most 5000000"],
    );
}

#[test]
fn deep_nesting_is_refused() {
    let deep = "[".repeat(100_000);
    assert!(matches!(
        read(&deep).unwrap_err()[0].cause,
        FileCause::NotJson { .. }
    ));
}

#[test]
fn numbers_that_are_not_finite_become_text() {
    let mut draft = read(VERSION_3).unwrap().draft;
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
        VERSION_3.replace('}', ""),
        changed("/version", json!(9)),
        without("", "name"),
    ] {
        for problem in read(&text).unwrap_err() {
            assert!(!problem.to_string().ends_with('.'), "{problem}");
            assert!(!problem.hint().ends_with('.'), "{problem}");
        }
    }
}

fn word<W: Word + std::fmt::Debug>() -> impl Strategy<Value = W> {
    (0..W::WORDS.len()).prop_map(|place| W::WORDS[place].1)
}

fn typed() -> impl Strategy<Value = Typed> {
    prop_oneof![
        any::<f64>().prop_map(Typed::Number),
        (0_u32..100_000).prop_map(|hundredths| Typed::Number(f64::from(hundredths) / 100.0)),
        any::<String>().prop_map(Typed::Text),
    ]
}

fn numbers<const N: usize>() -> impl Strategy<Value = [Typed; N]> {
    proptest::collection::vec(typed(), N)
        .prop_map(|list| list.try_into().expect("the list has this length"))
}

fn barrel() -> impl Strategy<Value = BarrelDraft> {
    let parts = (any::<[String; 2]>(), word::<ShapeWord>(), numbers::<10>());
    parts.prop_map(|([name, path], shape, numbers)| {
        let [size, sides, height, face_radius, corner_radius, ..] = numbers.clone();
        let [.., axis_across, axis_up, coat, length, lead_diameter] = numbers;
        let shape = shape.into();
        BarrelDraft {
            name,
            shape,
            size,
            sides,
            height,
            face_radius,
            corner_radius,
            path,
            axis_across,
            axis_up,
            coat,
            length,
            lead_diameter,
        }
    })
}

fn slat() -> impl Strategy<Value = SlatDraft> {
    let parts = (
        any::<String>(),
        any::<Option<u32>>(),
        word::<SawingWord>(),
        numbers::<10>(),
    );
    parts.prop_map(|(name, species, sawing, numbers)| {
        let [
            length,
            width,
            thickness,
            width_tolerance,
            thickness_tolerance,
            ..,
        ] = numbers.clone();
        let [.., moisture, pack_slats, pack_price, on_hand, pack_limit] = numbers;
        SlatDraft {
            name,
            length,
            width,
            thickness,
            width_tolerance,
            thickness_tolerance,
            species: species.map(Id),
            moisture,
            sawing: sawing.into(),
            pack_slats,
            pack_price,
            on_hand,
            pack_limit,
        }
    })
}

fn species() -> impl Strategy<Value = SpeciesDraft> {
    (any::<String>(), numbers::<3>()).prop_map(|(name, numbers)| {
        let [radial, tangential, fibre_saturation] = numbers;
        SpeciesDraft {
            name,
            radial,
            tangential,
            fibre_saturation,
        }
    })
}

fn conditions() -> impl Strategy<Value = ConditionsDraft> {
    (word::<MoistureSourceWord>(), numbers::<3>()).prop_map(|(source, numbers)| {
        let [moisture, temperature, humidity] = numbers;
        ConditionsDraft {
            source: source.into(),
            moisture,
            temperature,
            humidity,
        }
    })
}

fn cutter_set() -> impl Strategy<Value = CutterSetDraft> {
    let parts = (any::<String>(), any::<Option<u32>>(), numbers::<3>());
    parts.prop_map(|(name, barrel, [pitch, most, price])| CutterSetDraft {
        name,
        pitch,
        most,
        barrel: barrel.map(Id),
        price,
    })
}

fn rules() -> impl Strategy<Value = RulesDraft> {
    let parts = (
        word::<SpacingWord>(),
        any::<Option<u32>>(),
        numbers::<6>(),
        numbers::<10>(),
    );
    parts.prop_map(|(spacing, cutter_set, few, many)| {
        let [pitch, most, clearance, axis_height, land, edge] = few;
        let [planing, floor, wall, eccentricity, bond, ..] = many.clone();
        let [.., relief, end_trim, saw_kerf, slat_rejects, pencil_rejects] = many;
        RulesDraft {
            spacing: spacing.into(),
            pitch,
            cutter_set: cutter_set.map(Id),
            most,
            clearance,
            axis_height,
            land,
            edge,
            planing,
            floor,
            wall,
            eccentricity,
            bond,
            relief,
            end_trim,
            saw_kerf,
            slat_rejects,
            pencil_rejects,
        }
    })
}

fn accuracy() -> impl Strategy<Value = AccuracyDraft> {
    let readings = proptest::array::uniform10(word::<ReadingWord>());
    let parts = (any::<String>(), numbers::<10>(), readings, numbers::<3>());
    parts.prop_map(
        |(name, sizes, readings, [sigmas, width_offset, thickness_offset])| {
            let mut draft = AccuracyDraft {
                sigmas,
                width_offset,
                thickness_offset,
                ..AccuracyDraft::new(&name)
            };
            for (term, (size, reading)) in
                Term::ALL.into_iter().zip(sizes.into_iter().zip(readings))
            {
                *draft.error_mut(term) = ErrorDraft {
                    size,
                    reading: reading.into(),
                };
            }
            draft
        },
    )
}

fn search() -> impl Strategy<Value = SearchDraft> {
    let words = (word::<TurnsWord>(), word::<AxisWord>(), word::<PairsWord>());
    (words, numbers::<2>()).prop_map(|((turns, axis, pairs), [new_set_price, year_gross])| {
        SearchDraft {
            turns: turns.into(),
            axis: axis.into(),
            pairs: pairs.into(),
            new_set_price,
            year_gross,
        }
    })
}

fn layout() -> impl Strategy<Value = LayoutDraft> {
    let parts = (any::<[u32; 4]>(), word::<WayWord>(), typed());
    parts.prop_map(|([barrel, top, bottom, accuracy], way, turn)| LayoutDraft {
        accuracy: Id(accuracy),
        barrel: Id(barrel),
        top: Id(top),
        bottom: Id(bottom),
        way: way.into(),
        turn,
    })
}

/// Members with names that are told apart.
fn entries<T: std::fmt::Debug>(
    member: impl Strategy<Value = T>,
) -> impl Strategy<Value = Vec<Entry<T>>> {
    proptest::collection::btree_map(any::<u32>(), member, 0..4).prop_map(|members| {
        let entry = |(id, draft)| Entry { id: Id(id), draft };
        members.into_iter().map(entry).collect()
    })
}

fn draft() -> impl Strategy<Value = ProjectDraft> {
    let order = (any::<u32>(), typed()).prop_map(|(barrel, gross)| OrderDraft {
        barrel: Id(barrel),
        gross,
    });
    let orders = proptest::collection::vec(order, 0..4);
    let wood = (entries(slat()), entries(species()), conditions());
    let machines = (entries(cutter_set()), rules(), entries(accuracy()));
    let parts = (
        any::<String>(),
        entries(barrel()),
        wood,
        machines,
        layout(),
        search(),
        orders,
    );
    parts.prop_map(
        |(name, barrels, (slats, species, conditions), machines, layout, search, orders)| {
            let (cutter_sets, rules, accuracies) = machines;
            ProjectDraft {
                name,
                barrels,
                slats,
                species,
                conditions,
                cutter_sets,
                rules,
                layout,
                search,
                orders,
                accuracies,
                set_aside: None,
            }
        },
    )
}

fn any_json() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        any::<String>().prop_map(Value::from),
    ];
    leaf.prop_recursive(3, 24, 5, |inner| {
        let name = prop_oneof![
            any::<String>(),
            Just("id".to_owned()),
            Just("name".to_owned()),
            Just("barrels".to_owned()),
        ];
        prop_oneof![
            proptest::collection::vec(inner.clone(), 0..5).prop_map(Value::Array),
            proptest::collection::hash_map(name, inner, 0..5)
                .prop_map(|members| Value::Object(members.into_iter().collect())),
        ]
    })
}

/// Every place in a document, as a pointer.
fn places(value: &Value, place: &str, found: &mut Vec<String>) {
    found.push(place.to_owned());
    match value {
        Value::Array(members) => {
            for (number, member) in members.iter().enumerate() {
                places(member, &format!("{place}/{number}"), found);
            }
        }
        Value::Object(members) => {
            for (name, member) in members {
                places(member, &format!("{place}/{name}"), found);
            }
        }
        _ => {}
    }
}

proptest! {
    /// A number that is not finite comes back as its text; after that, nothing changes.
    #[test]
    fn there_and_back(draft in draft()) {
        let draft = ProjectFile::from(&draft).to_draft();
        let text = write(&draft);
        let opened = read(&text).expect("the draft keeps the limits");
        prop_assert_eq!(&opened.draft, &draft);
        prop_assert_eq!(write(&opened.draft), text);
    }

    #[test]
    fn any_text_is_read_or_refused(text in ".*") {
        prop_assert!(read(&text).is_err());
    }

    /// Whatever stands in one place of a good file, it is read or refused with a reason; what is
    /// read can be written and read again.
    #[test]
    fn anything_anywhere_is_read_or_refused(place in any::<prop::sample::Index>(), value in any_json()) {
        let document: Value = serde_json::from_str(VERSION_3).unwrap();
        let mut all = Vec::new();
        places(&document, "", &mut all);
        match read(&changed(&all[place.index(all.len())], value)) {
            Ok(opened) => {
                let again = read(&write(&opened.draft)).expect("what was read is within the limits");
                prop_assert_eq!(again.draft, opened.draft);
            }
            Err(problems) => prop_assert!(!problems.is_empty()),
        }
    }

    /// As above, of a file of version 1.
    #[test]
    fn anything_anywhere_in_version_1(place in any::<prop::sample::Index>(), value in any_json()) {
        let mut document: Value = serde_json::from_str(VERSION_1).unwrap();
        let mut all = Vec::new();
        places(&document, "", &mut all);
        *document.pointer_mut(&all[place.index(all.len())]).unwrap() = value;
        match read(&document.to_string()) {
            Ok(opened) => {
                let again = read(&write(&opened.draft)).expect("what was read is within the limits");
                prop_assert_eq!(again.draft, opened.draft);
            }
            Err(problems) => prop_assert!(!problems.is_empty()),
        }
    }

    #[test]
    fn a_file_that_was_cut_off_is_refused(end in 0..VERSION_3.len() - 2) {
        let cut = VERSION_3.char_indices().map(|(at, _)| at).take_while(|&at| at <= end).last();
        prop_assert!(read(&VERSION_3[..cut.unwrap_or(0)]).is_err());
    }
}
