//! The saver under every fault, and in any order of events.

use std::{cell::RefCell, rc::Rc};

use futures::executor::LocalPool;

use super::{
    Fault, Keeping, Platform, Rehearsal, Reports, SaveState, Saver, StoreStep, expected, faults,
    stage, text_on_disk,
};

/// A saver under watch: at every "saved" the disk must hold the latest text.
struct Watched {
    saver: Saver<Rehearsal>,
    stage: Rehearsal,
    latest: Rc<RefCell<String>>,
    heard: Rc<RefCell<Vec<SaveState>>>,
    keeping: Rc<RefCell<Vec<Keeping>>>,
}

impl Watched {
    fn new(stage: &Rehearsal) -> Self {
        let latest = Rc::new(RefCell::new(text_on_disk(stage).unwrap_or_default()));
        let heard = Rc::new(RefCell::new(Vec::new()));
        let keeping = Rc::new(RefCell::new(Vec::new()));
        let reports = Reports {
            state: Box::new({
                let (stage, latest, heard) = (stage.clone(), Rc::clone(&latest), Rc::clone(&heard));
                move |state| {
                    if let SaveState::Saved { generation } = state {
                        let disk = stage.on_disk().unwrap();
                        assert_eq!(disk.text, *latest.borrow(), "said saved and was not");
                        assert_eq!(disk.generation, generation);
                    }
                    heard.borrow_mut().push(state);
                }
            }),
            keeping: Box::new({
                let keeping = Rc::clone(&keeping);
                move |answer| keeping.borrow_mut().push(answer)
            }),
        };
        let saver = Saver::new(stage.store(), reports);
        saver.allow_writing(stage.on_disk().as_ref());
        Self {
            saver,
            stage: stage.clone(),
            latest,
            heard,
            keeping,
        }
    }

    fn change(&self, text: &str) {
        *self.latest.borrow_mut() = text.to_owned();
        self.saver.change(text);
    }

    fn save_now(&self, text: &str) {
        *self.latest.borrow_mut() = text.to_owned();
        self.saver.save_now(text);
    }

    fn last(&self) -> SaveState {
        self.heard.borrow().last().cloned().unwrap()
    }

    fn is_saved(&self) -> bool {
        matches!(self.last(), SaveState::Saved { .. })
            && text_on_disk(&self.stage) == Some(self.latest.borrow().clone())
    }
}

#[test]
fn the_saver_never_says_saved_wrongly() {
    for fault in faults() {
        for is_explicit in [false, true] {
            let mut pool = LocalPool::new();
            let stage = stage(&mut pool, &["older", "old"]);
            let watched = Watched::new(&stage);
            stage.break_with(fault);
            if is_explicit {
                watched.save_now("new");
            } else {
                watched.change("new");
            }
            stage.settle(&mut pool);

            let takes_the_step = fault.step != StoreStep::Read || is_explicit;
            match expected(fault) {
                Err(problem) if takes_the_step => {
                    assert_eq!(watched.last(), SaveState::Failed(problem), "{fault:?}");
                    let text = text_on_disk(&stage);
                    assert!(matches!(text.as_deref(), Some("old" | "new")), "{fault:?}");
                }
                _ => assert!(watched.is_saved(), "{fault:?}"),
            }

            // The failed text is not forgotten, even if nothing more is typed.
            stage.heal();
            watched.saver.flush();
            stage.settle(&mut pool);
            assert!(
                watched.is_saved(),
                "{fault:?}: {:?}",
                watched.heard.borrow()
            );
        }
    }
}

#[test]
fn quick_typing_makes_one_save_after_a_pause() {
    let mut pool = LocalPool::new();
    let stage = Rehearsal::new(&pool);
    let watched = Watched::new(&stage);
    for text in ["n", "ne", "new"] {
        watched.change(text);
        let clock = stage.clone();
        stage.run(&mut pool, async move { clock.wait(100).await });
        assert_eq!(stage.on_disk(), None);
    }
    stage.settle(&mut pool);
    assert!(watched.is_saved());
    assert_eq!(stage.on_disk().unwrap().generation.number(), 1);
    assert_eq!(
        stage.now(),
        510,
        "0.2 s of typing, 0.3 s of quiet, an opening and a write"
    );
    assert_eq!(*watched.keeping.borrow(), [Keeping::Granted]);
}

#[test]
fn a_tab_that_lost_the_right_writes_no_more() {
    let mut pool = LocalPool::new();
    let stage = stage(&mut pool, &["old"]);
    let watched = Watched::new(&stage);
    watched.change("new");
    watched.saver.stop_writing();
    watched.change("newer");
    watched.saver.flush();
    stage.settle(&mut pool);
    assert_eq!(watched.last(), SaveState::ReadOnly);
    assert_eq!(text_on_disk(&stage).as_deref(), Some("old"));
}

/// Five hundred afternoons of typing, saving, hiding and trouble, in an order drawn from a seed.
#[test]
fn no_order_of_events_makes_the_saver_lie_or_forget() {
    let all: Vec<Fault> = faults().collect();
    for seed in 0..500 {
        let mut draw = Draw(seed);
        let mut pool = LocalPool::new();
        let stage = stage(&mut pool, &["old"]);
        let watched = Watched::new(&stage);
        for step in 0..40 {
            match draw.below(6) {
                0 | 1 => watched.change(&format!("typed {step}")),
                2 => watched.save_now(&format!("wanted {step}")),
                3 => watched.saver.flush(),
                4 => stage.break_with(all[draw.below(all.len())]),
                _ => stage.heal(),
            }
            let clock = stage.clone();
            let pause = [1, 7, 290, 310, 4_000, 12_000][draw.below(6)];
            stage.run(&mut pool, async move { clock.wait(pause).await });
        }
        stage.heal();
        stage.settle(&mut pool);
        watched.saver.flush();
        stage.settle(&mut pool);
        assert!(
            watched.is_saved(),
            "seed {seed}: {:?}",
            watched.heard.borrow()
        );
    }
}

/// A linear congruential generator, for orders that a failing test can repeat.
struct Draw(u64);

impl Draw {
    fn below(&mut self, bound: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % bound
    }
}
