//! A platform for tests that fails on cue and has time in hand.

use std::{
    cell::{Cell, RefCell},
    future::{Future, pending},
    rc::{Rc, Weak},
};

use futures::{
    executor::{LocalPool, LocalSpawner},
    task::LocalSpawnExt,
};

use super::{
    Durability, Keeping, Loaded, Place, Platform, ProjectStore, Slot, Slots, StoreProblem,
    StoreStep, answer::Answer,
};

/// The ways in which a call can fail.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    Quota,
    Abort,
    Closing,
    Lost,
    Blocked,
    NeverSettles,
}

impl Way {
    pub(super) const ALL: [Self; 6] = [
        Self::Quota,
        Self::Abort,
        Self::Closing,
        Self::Lost,
        Self::Blocked,
        Self::NeverSettles,
    ];

    /// What the store makes of it when it does not go away.
    pub(super) fn problem(self) -> StoreProblem {
        match self {
            Self::Quota => StoreProblem::Full,
            Self::Abort => StoreProblem::Aborted,
            Self::Closing | Self::Lost => StoreProblem::ConnectionLost,
            Self::Blocked => StoreProblem::Blocked,
            Self::NeverSettles => StoreProblem::NoAnswer { seconds: 10 },
        }
    }

    pub(super) fn kills_the_connection(self) -> bool {
        matches!(self, Self::Closing | Self::Lost)
    }
}

/// A failure to come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Fault {
    pub(super) step: StoreStep,
    pub(super) way: Way,
    pub(super) is_for_ever: bool,
    /// A write that fails for the caller and reaches the disk all the same.
    pub(super) lands: bool,
}

/// The acted platform; clones share disk, clock and faults.
#[derive(Clone)]
pub(super) struct Rehearsal(Rc<Stage>);

struct Stage {
    disk: RefCell<Slots>,
    fault: Cell<Option<Fault>>,
    garbles: Cell<bool>,
    now: Cell<u64>,
    sleepers: RefCell<Vec<Sleeper>>,
    spawner: LocalSpawner,
    open_connections: Cell<u32>,
    writes_under_way: Cell<u32>,
}

struct Sleeper {
    wakes_at: u64,
    alarm: Answer<()>,
    /// Gone when nobody waits any more.
    waiting: Weak<()>,
}

/// How long a call takes when nothing is wrong, in milliseconds.
const CALL: u32 = 5;

impl Rehearsal {
    pub(super) fn new(pool: &LocalPool) -> Self {
        Self(Rc::new(Stage {
            disk: RefCell::default(),
            fault: Cell::new(None),
            garbles: Cell::new(false),
            now: Cell::new(0),
            sleepers: RefCell::default(),
            spawner: pool.spawner(),
            open_connections: Cell::new(0),
            writes_under_way: Cell::new(0),
        }))
    }

    /// A store that has nothing open yet.
    pub(super) fn store(&self) -> ProjectStore<Self> {
        ProjectStore::new(self.clone())
    }

    pub(super) fn break_with(&self, fault: Fault) {
        self.0.fault.set(Some(fault));
    }

    pub(super) fn heal(&self) {
        self.0.fault.set(None);
    }

    pub(super) fn disk(&self) -> Slots {
        self.0.disk.borrow().clone()
    }

    /// What a tab opened at this moment would load.
    pub(super) fn on_disk(&self) -> Option<Loaded> {
        self.disk().newest().unwrap()
    }

    /// Cuts the end off the newest copy.
    pub(super) fn damage_newest(&self) {
        let next = self.disk().next_place().slot;
        let mut disk = self.0.disk.borrow_mut();
        if let Some(stored) = slot_of(&mut disk, next.other()) {
            stored.pop();
        }
    }

    /// From now on, written copies lose their end on the way to the disk.
    pub(super) fn garble_writes(&self) {
        self.0.garbles.set(true);
    }

    /// Milliseconds since the beginning.
    pub(super) fn now(&self) -> u64 {
        self.0.now.get()
    }

    pub(super) fn open_connections(&self) -> u32 {
        self.0.open_connections.get()
    }

    /// Runs `work` to its end, moving the clock on whenever all wait for it.
    pub(super) fn run<T: 'static>(
        &self,
        pool: &mut LocalPool,
        work: impl Future<Output = T> + 'static,
    ) -> T {
        let result = Rc::new(RefCell::new(None));
        let keep = Rc::clone(&result);
        self.spawn(async move {
            let done = work.await;
            *keep.borrow_mut() = Some(done);
        });
        loop {
            pool.run_until_stalled();
            if let Some(done) = result.borrow_mut().take() {
                return done;
            }
            assert!(self.wake_next(), "stuck with nothing to wait for");
        }
    }

    /// Runs what was spawned until nothing more will happen by itself.
    pub(super) fn settle(&self, pool: &mut LocalPool) {
        pool.run_until_stalled();
        while self.wake_next() {
            pool.run_until_stalled();
        }
    }

    fn wake_next(&self) -> bool {
        let mut sleepers = self.0.sleepers.borrow_mut();
        sleepers.retain(|sleeper| sleeper.waiting.strong_count() > 0);
        let next = (0..sleepers.len()).min_by_key(|&index| sleepers[index].wakes_at);
        let Some(next) = next else { return false };
        let sleeper = sleepers.remove(next);
        drop(sleepers);
        self.0.now.set(self.now().max(sleeper.wakes_at));
        sleeper.alarm.give(());
        true
    }

    fn cue(&self, step: StoreStep) -> Option<Fault> {
        let fault = self.0.fault.get().filter(|fault| fault.step == step)?;
        if !fault.is_for_ever {
            self.heal();
        }
        Some(fault)
    }

    async fn fail(&self, fault: Fault, blocked: Option<Rc<Cell<bool>>>) -> StoreProblem {
        let (name, message) = match fault.way {
            Way::Quota => ("QuotaExceededError", ""),
            Way::Abort => ("AbortError", ""),
            Way::Closing => ("InvalidStateError", "The database connection is closing."),
            Way::Lost => (
                "UnknownError",
                "Connection to Indexed Database server lost.",
            ),
            Way::Blocked => match blocked {
                Some(blocked) => {
                    blocked.set(true);
                    pending().await
                }
                None => return StoreProblem::Blocked,
            },
            Way::NeverSettles => pending().await,
        };
        StoreProblem::from_exception(fault.step, name, message)
    }

    fn put(&self, place: Place, text: &str) {
        let mut stored = place.stored(text);
        if self.0.garbles.get() {
            stored.pop();
        }
        *slot_of(&mut self.0.disk.borrow_mut(), place.slot) = Some(stored);
    }

    /// The common beginning of reading and writing.
    async fn act(
        &self,
        connection: &Connection,
        step: StoreStep,
        effect: impl Fn(),
    ) -> Result<(), StoreProblem> {
        if connection.is_dead.get() {
            return Err(StoreProblem::from_exception(step, "InvalidStateError", ""));
        }
        self.wait(CALL).await;
        let Some(fault) = self.cue(step) else {
            effect();
            return Ok(());
        };
        if fault.lands {
            effect();
        }
        connection.is_dead.set(fault.way.kills_the_connection());
        Err(self.fail(fault, None).await)
    }
}

fn slot_of(disk: &mut Slots, slot: Slot) -> &mut Option<String> {
    match slot {
        Slot::A => &mut disk.a,
        Slot::B => &mut disk.b,
    }
}

/// An acted connection; one that was lost stays lost.
pub(super) struct Connection {
    stage: Rc<Stage>,
    is_dead: Cell<bool>,
}

impl Drop for Connection {
    fn drop(&mut self) {
        let open = &self.stage.open_connections;
        open.set(open.get() - 1);
    }
}

/// Counts a write for as long as somebody waits for it.
struct WriteUnderWay(Rc<Stage>);

impl WriteUnderWay {
    fn begin(stage: &Rc<Stage>) -> Self {
        assert_eq!(stage.writes_under_way.get(), 0, "two saves at a time");
        stage.writes_under_way.set(1);
        Self(Rc::clone(stage))
    }
}

impl Drop for WriteUnderWay {
    fn drop(&mut self) {
        self.0.writes_under_way.set(0);
    }
}

impl Platform for Rehearsal {
    type Connection = Connection;

    async fn open(&self, blocked: Rc<Cell<bool>>) -> Result<Connection, StoreProblem> {
        self.wait(CALL).await;
        if let Some(fault) = self.cue(StoreStep::Open) {
            return Err(self.fail(fault, Some(blocked)).await);
        }
        let open = &self.0.open_connections;
        open.set(open.get() + 1);
        Ok(Connection {
            stage: Rc::clone(&self.0),
            is_dead: Cell::new(false),
        })
    }

    async fn read(&self, connection: &Connection) -> Result<Slots, StoreProblem> {
        self.act(connection, StoreStep::Read, || {}).await?;
        Ok(self.disk())
    }

    async fn write(
        &self,
        connection: &Connection,
        text: &str,
        _durability: Durability,
    ) -> Result<Place, StoreProblem> {
        let _under_way = WriteUnderWay::begin(&self.0);
        let written = Cell::new(None);
        self.act(connection, StoreStep::Write, || {
            let place = self.disk().next_place();
            written.set(Some(place));
            self.put(place, text);
        })
        .await?;
        Ok(written.get().unwrap())
    }

    async fn write_at(
        &self,
        connection: &Connection,
        place: Place,
        text: &str,
        _durability: Durability,
    ) -> Result<Slots, StoreProblem> {
        let _under_way = WriteUnderWay::begin(&self.0);
        let before = RefCell::default();
        self.act(connection, StoreStep::Write, || {
            before.replace(self.disk());
            self.put(place, text);
        })
        .await?;
        Ok(before.into_inner())
    }

    async fn ask_to_keep(&self) -> Keeping {
        Keeping::Granted
    }

    async fn wait(&self, milliseconds: u32) {
        let waiting = Rc::new(());
        let alarm = Answer::new();
        self.0.sleepers.borrow_mut().push(Sleeper {
            wakes_at: self.now() + u64::from(milliseconds),
            alarm: alarm.clone(),
            waiting: Rc::downgrade(&waiting),
        });
        alarm.taken().await;
        drop(waiting);
    }

    fn spawn(&self, work: impl Future<Output = ()> + 'static) {
        self.0.spawner.spawn_local(work).unwrap();
    }
}
