//! Sandwiches made by dice in as many workers as the machine has room for.

use super::Workbench;
use super::jobs::Asker;
use super::pause::Pause;
use super::rounds::{Enough, PORTION, Rounds};
use super::searches::layout_of;
use crate::project_file;
use crate::protocol::{Reply, Request};
use crate::view::Place;
use leptos::prelude::*;
use solver::figure;
use solver::tolerance::Tally;

/// Workers beyond this many would wait for each other.
const MOST_WORKERS: f64 = 8.0;

/// How the count stands.
#[derive(Debug, Clone, PartialEq)]
pub enum Count {
    /// Not asked for yet.
    Waiting,
    /// Under way.
    Running,
    /// No more is needed.
    Done(Enough),
    /// Stopped by the user.
    Stopped,
    /// The project cannot be worked with, for these reasons.
    Refused(Vec<String>),
    /// Something broke that is no fault of the project.
    Fault(String),
}

/// Sandwiches of the layout, counted. A handle.
#[derive(Clone, Copy)]
pub struct Dice {
    bench: Workbench,
    /// Which dice.
    seed: RwSignal<u32>,
    /// What is wrong with the number that was typed for the dice.
    seed_problem: RwSignal<Option<String>>,
    /// The standard error of good pencils a sandwich that is wanted.
    pub wanted: RwSignal<f64>,
    count: RwSignal<Count>,
    tally: RwSignal<Option<Tally>>,
    rounds: StoredValue<Rounds>,
    /// The project that is made, as the text of a file.
    project: StoredValue<String>,
    workers: StoredValue<Vec<DiceWorker>>,
}

/// A worker, and the portion it was asked for.
#[derive(Clone, Copy)]
struct DiceWorker {
    asker: Asker,
    portion: StoredValue<u32>,
}

impl Dice {
    /// Counts anew whenever what the count rests on has changed and good pencils are looked at.
    #[must_use]
    pub fn start(bench: Workbench) -> Self {
        let dice = Self {
            bench,
            seed: RwSignal::new(1),
            seed_problem: RwSignal::new(None),
            wanted: RwSignal::new(0.003),
            count: RwSignal::new(Count::Waiting),
            tally: RwSignal::new(None),
            rounds: StoredValue::new(Rounds::new(0.0)),
            project: StoredValue::new(String::new()),
            workers: StoredValue::new(Vec::new()),
        };
        let cores = window().navigator().hardware_concurrency();
        // A browser that does not tell has one.
        let workers = 0..cores.clamp(1.0, MOST_WORKERS) as usize;
        let workers = workers.map(|at| DiceWorker {
            asker: Asker::at_rest(move |reply| dice.hear(at, reply)),
            portion: StoredValue::new(0),
        });
        dice.workers.set_value(workers.collect());
        dice.count_when_changed();
        dice
    }

    /// How the count stands.
    #[must_use]
    pub fn count(&self) -> ReadSignal<Count> {
        self.count.read_only()
    }

    /// What is counted; while the next count begins, the last one.
    #[must_use]
    pub fn tally(&self) -> ReadSignal<Option<Tally>> {
        self.tally.read_only()
    }

    /// Which dice.
    #[must_use]
    pub fn seed(&self) -> ReadSignal<u32> {
        self.seed.read_only()
    }

    /// What is wrong with the number that was typed last for the dice, if anything.
    #[must_use]
    pub fn seed_problem(&self) -> ReadSignal<Option<String>> {
        self.seed_problem.read_only()
    }

    /// Takes other dice, by their number as it is typed; where it is none, the dice stay and the
    /// problem is told.
    pub fn pick(&self, typed: &str) {
        match typed.trim().parse() {
            Ok(seed) => {
                self.seed.set(seed);
                self.seed_problem.set(None);
            }
            Err(_) => self.seed_problem.set(Some(format!(
                "Dice number must be a whole number from 0 to {}, like 12; it is “{}”. Dice {} are thrown until then",
                figure::count(u32::MAX.into()),
                typed.trim(),
                self.seed.get_untracked()
            ))),
        }
    }

    /// Counts from the beginning.
    pub fn throw(&self) {
        self.break_off();
        let project = project_file::write(&self.bench.project().read_untracked());
        self.project.set_value(project);
        self.rounds
            .set_value(Rounds::new(self.wanted.get_untracked()));
        self.count.set(Count::Running);
        for worker in self.workers.get_value() {
            self.ask(worker);
        }
    }

    /// Stops counting; what is counted stays.
    pub fn stop(&self) {
        self.break_off();
        self.count.set(Count::Stopped);
    }

    fn break_off(&self) {
        if *self.count.read_untracked() == Count::Running {
            for worker in self.workers.get_value() {
                worker.asker.stop();
            }
        }
    }

    fn ask(&self, worker: DiceWorker) {
        let portion = self.rounds.try_update_value(Rounds::hand_out).flatten();
        let Some(portion) = portion else {
            return;
        };
        worker.portion.set_value(portion);
        let project = self.project.get_value();
        let unit = self.bench.unit.get_untracked().into();
        let seed = self.seed.get_untracked();
        worker.asker.ask(|job| Request::Throw {
            job,
            project,
            unit,
            seed,
            first: portion * PORTION,
            blocks: PORTION,
        });
    }

    fn hear(&self, at: usize, reply: Reply) {
        let Some(worker) = self.workers.with_value(|workers| workers.get(at).copied()) else {
            return;
        };
        let end = match reply {
            Reply::Thrown { thrown, .. } => match thrown.tally() {
                Some(tally) => {
                    let portion = worker.portion.get_value();
                    self.rounds
                        .update_value(|rounds| rounds.take(portion, tally));
                    let tally = self.rounds.with_value(|rounds| rounds.tally().cloned());
                    if tally.is_some() {
                        self.tally.set(tally);
                    }
                    let enough = self.rounds.with_value(Rounds::enough);
                    if enough.is_none() {
                        self.ask(worker);
                    }
                    enough.map(Count::Done)
                }
                None => Some(Count::Fault("A worker miscounted. Try again".to_owned())),
            },
            Reply::Refused { problems, .. } => Some(Count::Refused(problems)),
            Reply::Fault { reason, .. } => Some(Count::Fault(reason)),
            _ => None,
        };
        if let Some(end) = end {
            self.break_off();
            self.count.set(end);
        }
    }

    fn count_when_changed(self) {
        let (project, place) = (self.bench.project(), self.bench.place);
        let rests_on = Memo::new(move |_| layout_of(&project.read()));
        let pause = Pause::new();
        // What was counted last is not counted again when its place is only looked at once more.
        Effect::new(move |asked: Option<Option<_>>| {
            let asked = asked.flatten();
            let wanted = (rests_on.get(), self.seed.get(), self.wanted.get());
            if place.get() != Place::Tolerances || asked.as_ref() == Some(&wanted) {
                return asked;
            }
            pause.then(move || self.throw());
            Some(wanted)
        });
    }
}
