//! The store under every fault.

use std::{future::Future, pin::pin, task::Context};

use futures::{executor::LocalPool, task::noop_waker};

use super::{
    Durability, Fault, Platform, Rehearsal, StoreProblem, StoreStep, Way, expected, faults, stage,
    text_on_disk,
};

const DURABILITIES: [Durability; 2] = [Durability::Relaxed, Durability::Strict];

#[test]
fn a_failing_save_leaves_the_old_project_or_the_new_one() {
    for before in [
        &[][..],
        &["old"],
        &["older", "old"],
        &["oldest", "older", "old"],
    ] {
        for durability in DURABILITIES {
            for knows_the_place in [false, true] {
                for fault in faults() {
                    save_under(before, durability, knows_the_place, fault);
                }
            }
        }
    }
}

fn save_under(
    before: &[&'static str],
    durability: Durability,
    knows_the_place: bool,
    fault: Fault,
) {
    let context = format!("{fault:?}, {durability:?}, {knows_the_place}, after {before:?}");
    let mut pool = LocalPool::new();
    let stage = stage(&mut pool, before);
    let store = stage.store();
    if knows_the_place {
        let loading = store.clone();
        stage
            .run(&mut pool, async move { loading.load().await })
            .unwrap();
    }
    stage.break_with(fault);
    let began = stage.now();
    let saving = store.clone();
    let outcome = stage.run(
        &mut pool,
        async move { saving.save("new", durability).await },
    );

    let takes_the_step = match fault.step {
        StoreStep::Open => !knows_the_place, // loading has left the connection open
        StoreStep::Read => durability == Durability::Strict,
        StoreStep::Write => true,
    };
    let expected = if takes_the_step {
        expected(fault)
    } else {
        Ok(())
    };
    assert_eq!(outcome.clone().map(|_| ()), expected, "{context}");
    assert!(
        stage.now() - began <= 21_000,
        "{context}: took {} ms",
        stage.now() - began
    );
    assert!(
        stage.open_connections() <= 1,
        "{context}: a connection is left open"
    );

    stage.heal();
    let reading = stage.store();
    let loaded = stage.run(&mut pool, async move { reading.load().await });
    let loaded = loaded.unwrap_or_else(|problem| panic!("{context}: {problem}"));
    let text = loaded.as_ref().map(|loaded| &*loaded.text);
    assert!(
        text == before.last().copied() || text == Some("new"),
        "{context}: {text:?}"
    );
    assert!(
        loaded.as_ref().is_none_or(|loaded| !loaded.is_older_copy),
        "{context}"
    );
    if let Ok(generation) = outcome {
        let loaded = loaded.unwrap();
        assert_eq!(
            (&*loaded.text, loaded.generation),
            ("new", generation),
            "{context}"
        );
    }

    // The same store is of use again.
    let saved = stage.run(
        &mut pool,
        async move { store.save("newer", durability).await },
    );
    assert!(saved.is_ok(), "{context}: {saved:?}");
    assert_eq!(text_on_disk(&stage).as_deref(), Some("newer"), "{context}");
}

#[test]
fn a_failing_load_changes_nothing_and_says_so() {
    for fault in faults() {
        let mut pool = LocalPool::new();
        let stage = stage(&mut pool, &["older", "old"]);
        let (store, before) = (stage.store(), stage.disk());
        stage.break_with(fault);
        let outcome = stage.run(&mut pool, async move { store.load().await });

        let expected = match fault.step {
            StoreStep::Write => Ok(()),
            StoreStep::Open | StoreStep::Read => expected(fault),
        };
        let text = outcome.map(|loaded| loaded.map(|loaded| loaded.text));
        assert_eq!(text, expected.map(|()| Some("old".to_owned())), "{fault:?}");
        assert_eq!(stage.disk(), before, "{fault:?}");
    }
}

#[test]
fn a_blocked_open_settles_in_three_seconds() {
    let mut pool = LocalPool::new();
    let stage = Rehearsal::new(&pool);
    let store = stage.store();
    stage.break_with(Fault {
        step: StoreStep::Open,
        way: Way::Blocked,
        is_for_ever: true,
        lands: false,
    });
    let outcome = stage.run(&mut pool, async move { store.load().await });
    assert_eq!(outcome, Err(StoreProblem::Blocked));
    assert_eq!(stage.now(), 3_000);
}

#[test]
fn a_tab_that_dies_at_any_moment_leaves_the_old_project_or_the_new_one() {
    for durability in DURABILITIES {
        let mut has_seen = [false; 2];
        for wakes in 0..20 {
            let mut pool = LocalPool::new();
            let stage = stage(&mut pool, &["older", "old"]);
            let store = stage.store();
            let waker = noop_waker();
            {
                let mut saving = pin!(store.save("new", durability));
                for _ in 0..wakes {
                    if saving
                        .as_mut()
                        .poll(&mut Context::from_waker(&waker))
                        .is_ready()
                    {
                        break;
                    }
                    // One call's time passes; the save notices at its next poll.
                    let clock = stage.clone();
                    stage.run(&mut pool, async move { clock.wait(5).await });
                }
            }
            let text = text_on_disk(&stage);
            has_seen[0] |= text.as_deref() == Some("old");
            has_seen[1] |= text.as_deref() == Some("new");
            assert!(
                matches!(text.as_deref(), Some("old" | "new")),
                "{durability:?} ended after {wakes}: {text:?}"
            );
        }
        assert_eq!(
            has_seen, [true; 2],
            "the moments tried lie before and after the writing"
        );
    }
}

#[test]
fn a_place_that_another_tab_has_moved_on_from_is_found_again() {
    for steps_ahead in 1..4 {
        let mut pool = LocalPool::new();
        let stage = stage(&mut pool, &["older", "old"]);
        let (mine, theirs) = (stage.store(), stage.store());
        let loading = mine.clone();
        stage
            .run(&mut pool, async move { loading.load().await })
            .unwrap();
        for _ in 0..steps_ahead {
            let theirs = theirs.clone();
            let saved = async move { theirs.save("theirs", Durability::Relaxed).await };
            stage.run(&mut pool, saved).unwrap();
        }
        let saved = async move { mine.save("mine", Durability::Strict).await };
        let generation = stage.run(&mut pool, saved).unwrap();
        let loaded = stage.on_disk().unwrap();
        assert_eq!(
            (&*loaded.text, loaded.generation),
            ("mine", generation),
            "{steps_ahead}"
        );
    }
}

#[test]
fn a_damaged_newest_copy_falls_back_and_the_next_save_mends_it() {
    let mut pool = LocalPool::new();
    let stage = stage(&mut pool, &["older", "old"]);
    stage.damage_newest();
    let store = stage.store();
    let loading = store.clone();
    let loaded = stage.run(&mut pool, async move { loading.load().await });
    let loaded = loaded.unwrap().unwrap();
    assert_eq!((&*loaded.text, loaded.is_older_copy), ("older", true));
    let saved = stage.run(&mut pool, async move {
        store.save("new", Durability::Strict).await
    });
    assert!(saved.is_ok());
    let loaded = stage.on_disk().unwrap();
    assert_eq!((&*loaded.text, loaded.is_older_copy), ("new", false));
}

#[test]
fn a_strict_save_notices_a_copy_that_changed_on_the_way() {
    let mut pool = LocalPool::new();
    let stage = stage(&mut pool, &["older", "old"]);
    stage.garble_writes();
    for (durability, expected) in [
        (Durability::Relaxed, None),
        (Durability::Strict, Some(StoreProblem::ReadBackDiffers)),
    ] {
        let store = stage.store();
        let outcome = stage.run(
            &mut pool,
            async move { store.save("new", durability).await },
        );
        assert_eq!(outcome.err(), expected);
        assert_eq!(text_on_disk(&stage).as_deref(), Some("old"));
    }
}
