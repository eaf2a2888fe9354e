//! Every call failing in every way, and what must be true afterwards: the stored project is
//! exactly the old or the new one, nothing hangs, and nobody said "saved" wrongly.

mod saver_trials;
mod store_trials;

use futures::executor::LocalPool;

use super::{
    Durability, Keeping, Platform, Reports, SaveState, Saver, StoreProblem, StoreStep,
    rehearsal::{Fault, Rehearsal, Way},
};

const STEPS: [StoreStep; 3] = [StoreStep::Open, StoreStep::Read, StoreStep::Write];

/// All faults: three calls, six ways, once and for ever, writes that reach the disk and not.
fn faults() -> impl Iterator<Item = Fault> {
    STEPS.into_iter().flat_map(|step| {
        Way::ALL.into_iter().flat_map(move |way| {
            [false, true].into_iter().flat_map(move |is_for_ever| {
                let lands: &[bool] = match step {
                    StoreStep::Write => &[false, true],
                    StoreStep::Open | StoreStep::Read => &[false],
                };
                lands.iter().map(move |&lands| Fault {
                    step,
                    way,
                    is_for_ever,
                    lands,
                })
            })
        })
    })
}

/// A platform whose store holds `texts`, saved one after the other.
fn stage(pool: &mut LocalPool, texts: &[&'static str]) -> Rehearsal {
    let stage = Rehearsal::new(pool);
    let store = stage.store();
    for &text in texts {
        let store = store.clone();
        let saved = stage.run(
            pool,
            async move { store.save(text, Durability::Strict).await },
        );
        saved.unwrap();
    }
    stage
}

/// What a call must come to under a fault in a step that it takes.
fn expected(fault: Fault) -> Result<(), StoreProblem> {
    if fault.way.kills_the_connection() && !fault.is_for_ever {
        Ok(()) // opened anew, and tried again
    } else {
        Err(fault.way.problem())
    }
}

fn text_on_disk(stage: &Rehearsal) -> Option<String> {
    stage.on_disk().map(|loaded| loaded.text)
}

#[test]
fn there_are_forty_eight_faults() {
    assert_eq!(faults().count(), 48);
}
