//! Any draft there and back; any text, and anything anywhere in a file, read or refused.

use super::drafts::draft;
use super::*;
use proptest::prelude::*;

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
        let document: Value = serde_json::from_str(VERSION_6).unwrap();
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
    fn a_file_that_was_cut_off_is_refused(end in 0..VERSION_6.len() - 2) {
        let cut = VERSION_6.char_indices().map(|(at, _)| at).take_while(|&at| at <= end).last();
        prop_assert!(read(&VERSION_6[..cut.unwrap_or(0)]).is_err());
    }
}
