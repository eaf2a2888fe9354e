//! How large a file may be, and every part of it.

use super::*;
use solver::{Entry, Id};

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
        let order = json!({ "barrel": 1, "gross": 1, "due_period": 1, "on_hand_pencils": 0 });
        changed("/orders", Value::Array(vec![order; count]))
    };
    assert_eq!(read(&orders(2_000)).unwrap().draft.orders.len(), 2_000);
    refuses(
        &orders(2_001),
        &["orders: the list has 2001 entries, at most 2000 can be worked with"],
    );

    let spaces = |bytes: usize| format!("{VERSION_6}{}", " ".repeat(bytes - VERSION_6.len()));
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
