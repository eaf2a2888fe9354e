//! What the schedule does about each event, one after the other.

use super::Action::{AskToKeep, Report, Save, WaitForQuiet};
use super::Durability::{Relaxed, Strict};
use super::Event::*;
use super::SaveState::{Failed, ReadOnly, Saved, Saving, Unsaved};
use super::*;

/// A schedule that may write to an empty store and has had its first save.
fn writing() -> Schedule {
    let mut schedule = Schedule::new();
    schedule.on(MayWrite(None));
    schedule.on(SaveWanted("first".into()));
    schedule.on(done(1));
    schedule
}

fn generation(number: u64) -> Generation {
    Generation::new(number)
}

fn done(number: u64) -> Event {
    Finished(Ok(generation(number)))
}

fn saved(number: u64) -> Action {
    Report(Saved {
        generation: generation(number),
    })
}

fn loaded(text: &str, number: u64) -> Loaded {
    Loaded {
        text: text.to_owned(),
        generation: generation(number),
        is_older_copy: false,
    }
}

fn check<const N: usize>(schedule: &mut Schedule, event: Event, expected: [Action; N]) {
    let shown = format!("{event:?}");
    assert_eq!(schedule.on(event), expected, "after {shown}");
}

#[test]
fn a_change_is_saved_after_a_pause() {
    let mut schedule = writing();
    check(
        &mut schedule,
        Changed("a".into()),
        [Report(Unsaved), WaitForQuiet(1)],
    );
    check(
        &mut schedule,
        Quiet(1),
        [Report(Saving), Save("a".into(), Relaxed)],
    );
    check(&mut schedule, done(2), [saved(2)]);
}

#[test]
fn only_the_last_pause_of_quick_typing_counts() {
    let mut schedule = writing();
    schedule.on(Changed("a".into()));
    check(
        &mut schedule,
        Changed("ab".into()),
        [Report(Unsaved), WaitForQuiet(2)],
    );
    check(&mut schedule, Quiet(1), []);
    check(
        &mut schedule,
        Quiet(2),
        [Report(Saving), Save("ab".into(), Relaxed)],
    );
}

#[test]
fn a_change_during_a_save_waits_for_it() {
    let mut schedule = writing();
    schedule.on(Changed("a".into()));
    schedule.on(Quiet(1));
    check(&mut schedule, Changed("ab".into()), [WaitForQuiet(2)]);
    check(&mut schedule, Quiet(2), []);
    check(
        &mut schedule,
        done(2),
        [Report(Saving), Save("ab".into(), Relaxed)],
    );
    check(&mut schedule, done(3), [saved(3)]);
}

#[test]
fn an_older_text_saved_is_not_the_latest_saved() {
    let mut schedule = writing();
    schedule.on(Changed("a".into()));
    schedule.on(Quiet(1));
    schedule.on(Changed("ab".into()));
    check(&mut schedule, done(2), [Report(Unsaved)]);
    check(
        &mut schedule,
        Quiet(2),
        [Report(Saving), Save("ab".into(), Relaxed)],
    );
}

#[test]
fn hiding_the_page_saves_at_once() {
    let mut schedule = writing();
    check(&mut schedule, Hidden, []);
    schedule.on(Changed("a".into()));
    check(
        &mut schedule,
        Hidden,
        [Report(Saving), Save("a".into(), Relaxed)],
    );
    check(&mut schedule, Hidden, []);
    check(&mut schedule, Quiet(1), []);
    check(&mut schedule, done(2), [saved(2)]);
}

#[test]
fn an_explicit_save_is_strict_even_when_nothing_changed() {
    let mut schedule = writing();
    check(
        &mut schedule,
        SaveWanted("first".into()),
        [Report(Saving), Save("first".into(), Strict)],
    );
}

#[test]
fn an_explicit_save_that_waits_stays_strict() {
    let mut schedule = writing();
    schedule.on(Changed("a".into()));
    schedule.on(Quiet(1));
    check(&mut schedule, SaveWanted("ab".into()), []);
    check(&mut schedule, Changed("abc".into()), [WaitForQuiet(2)]);
    check(
        &mut schedule,
        done(2),
        [Report(Saving), Save("abc".into(), Strict)],
    );
}

#[test]
fn a_failed_text_goes_with_the_next_save() {
    let mut schedule = writing();
    schedule.on(SaveWanted("a".into()));
    check(
        &mut schedule,
        Finished(Err(StoreProblem::Full)),
        [Report(Failed(StoreProblem::Full))],
    );
    check(
        &mut schedule,
        Hidden,
        [Report(Saving), Save("a".into(), Strict)],
    );
}

#[test]
fn a_newer_text_takes_the_place_of_a_failed_one() {
    let mut schedule = writing();
    schedule.on(SaveWanted("a".into()));
    schedule.on(Changed("ab".into()));
    schedule.on(Quiet(1));
    check(
        &mut schedule,
        Finished(Err(StoreProblem::Full)),
        [
            Report(Failed(StoreProblem::Full)),
            Report(Saving),
            Save("ab".into(), Strict),
        ],
    );
}

#[test]
fn what_is_stored_is_not_stored_again() {
    let mut schedule = writing();
    check(&mut schedule, Changed("first".into()), []);
    let mut schedule = Schedule::new();
    schedule.on(MayWrite(Some(loaded("old", 7))));
    check(&mut schedule, Changed("old".into()), []);
}

#[test]
fn the_browser_is_asked_once_to_keep_the_project() {
    let mut schedule = Schedule::new();
    check(&mut schedule, MayWrite(None), [Report(Unsaved)]);
    schedule.on(SaveWanted("a".into()));
    schedule.on(Finished(Err(StoreProblem::Aborted)));
    schedule.on(Hidden);
    check(&mut schedule, done(1), [saved(1), AskToKeep]);
    schedule.on(SaveWanted("b".into()));
    check(&mut schedule, done(2), [saved(2)]);
}

#[test]
fn a_tab_without_the_right_saves_nothing() {
    let mut schedule = Schedule::new();
    check(&mut schedule, Changed("a".into()), [Report(ReadOnly)]);
    check(&mut schedule, SaveWanted("a".into()), [Report(ReadOnly)]);
    check(&mut schedule, Hidden, []);
    check(&mut schedule, MayWrite(Some(loaded("old", 7))), [saved(7)]);
}

#[test]
fn losing_the_right_drops_what_waits_and_hears_no_more_of_the_rest() {
    let mut schedule = writing();
    schedule.on(Changed("a".into()));
    schedule.on(Quiet(1));
    schedule.on(Changed("ab".into()));
    check(&mut schedule, MayNotWrite, [Report(ReadOnly)]);
    check(&mut schedule, Quiet(2), []);
    check(&mut schedule, done(2), []);
}

#[test]
fn a_late_save_from_before_is_written_over_with_what_was_loaded() {
    let mut schedule = writing();
    schedule.on(SaveWanted("a".into()));
    schedule.on(MayNotWrite);
    check(
        &mut schedule,
        MayWrite(Some(loaded("theirs", 7))),
        [saved(7)],
    );
    check(
        &mut schedule,
        done(8),
        [Report(Saving), Save("theirs".into(), Relaxed)],
    );
    check(&mut schedule, done(9), [saved(9)]);
}

#[test]
fn a_newer_version_elsewhere_ends_all_saving() {
    let mut schedule = writing();
    let outdated = || Report(Failed(StoreProblem::NewerVersion));
    schedule.on(SaveWanted("a".into()));
    schedule.on(SaveWanted("ab".into()));
    check(
        &mut schedule,
        Finished(Err(StoreProblem::NewerVersion)),
        [outdated()],
    );
    check(&mut schedule, Changed("abc".into()), [outdated()]);
    check(&mut schedule, Hidden, []);
    check(&mut schedule, MayWrite(None), [outdated()]);
}
