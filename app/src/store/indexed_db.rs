//! The real platform: IndexedDB, the page's timers and task queue.
//!
//! One database, one object store, two keys. The bindings are used directly, because what matters
//! here (durability, the `complete` event, what becomes of a request nobody waits for any more)
//! is what a wrapper hides.

use std::{cell::Cell, future::Future, rc::Rc};

use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use web_sys::{
    IdbDatabase, IdbFactory, IdbOpenDbRequest, IdbRequestReadyState, IdbVersionChangeEvent,
};

use super::{
    Durability, Keeping, Place, Platform, Slots, StoreProblem, StoreStep,
    answer::Answer,
    keeping,
    listener::Listener,
    timer,
    transaction::{OBJECT_STORE, Transaction, problem},
};

const DATABASE: &str = "slatwright";
/// Raised by one when the object stores change, not when the project's own format does.
const SCHEMA: u32 = 1;

/// The page's own browser.
#[derive(Default)]
pub struct Browser {
    /// Set once a newer version of the page wants the database for itself.
    is_outdated: Rc<Cell<bool>>,
}

impl Platform for Browser {
    type Connection = Connection;

    async fn open(&self, blocked: Rc<Cell<bool>>) -> Result<Connection, StoreProblem> {
        if self.is_outdated.get() {
            return Err(StoreProblem::NewerVersion);
        }
        let request = factory()?
            .open_with_u32(DATABASE, SCHEMA)
            .map_err(|error| problem(StoreStep::Open, &error))?;
        Opening::begin(request, blocked, &self.is_outdated)
            .connection
            .taken()
            .await
    }

    async fn read(&self, connection: &Connection) -> Result<Slots, StoreProblem> {
        Transaction::reading(&connection.database)?.read().await
    }

    async fn write(
        &self,
        connection: &Connection,
        text: &str,
        durability: Durability,
    ) -> Result<Place, StoreProblem> {
        Transaction::writing(&connection.database, durability)?
            .write_next(text)
            .await
    }

    async fn write_at(
        &self,
        connection: &Connection,
        place: Place,
        text: &str,
        durability: Durability,
    ) -> Result<Slots, StoreProblem> {
        Transaction::writing(&connection.database, durability)?
            .write_at(place, text)
            .await
    }

    fn ask_to_keep(&self) -> impl Future<Output = Keeping> {
        keeping::ask_to_keep()
    }

    fn wait(&self, milliseconds: u32) -> impl Future<Output = ()> {
        timer::wait(milliseconds)
    }

    fn spawn(&self, work: impl Future<Output = ()> + 'static) {
        wasm_bindgen_futures::spawn_local(work);
    }
}

/// An open database, closed when dropped.
pub struct Connection {
    database: IdbDatabase,
    _version_change: Listener,
}

impl Connection {
    fn new(database: IdbDatabase, is_outdated: Rc<Cell<bool>>) -> Self {
        let closing = database.clone();
        let version_change = Listener::new(&database, "versionchange", move |event| {
            closing.close();
            // Without a new version the database is being deleted, as when site data is cleared:
            // the next save may make it anew.
            let newer = event
                .dyn_ref::<IdbVersionChangeEvent>()
                .and_then(IdbVersionChangeEvent::new_version);
            is_outdated.set(is_outdated.get() || newer.is_some());
        });
        Self {
            database,
            _version_change: version_change,
        }
    }
}

impl Drop for Connection {
    fn drop(&mut self) {
        self.database.close();
    }
}

fn factory() -> Result<IdbFactory, StoreProblem> {
    web_sys::window()
        .and_then(|window| window.indexed_db().ok().flatten())
        .ok_or(StoreProblem::Unavailable)
}

/// An open request that somebody waits for.
struct Opening {
    request: IdbOpenDbRequest,
    connection: Answer<Result<Connection, StoreProblem>>,
    _listeners: [Listener; 4],
}

impl Opening {
    fn begin(
        request: IdbOpenDbRequest,
        blocked: Rc<Cell<bool>>,
        is_outdated: &Rc<Cell<bool>>,
    ) -> Self {
        let connection = Answer::new();
        let listeners = [
            Listener::new(&request, "upgradeneeded", {
                let (request, connection) = (request.clone(), connection.clone());
                move |_| {
                    if let Err(error) = database_of(&request).and_then(|it| bring_up_to_date(&it)) {
                        connection.give(Err(problem(StoreStep::Open, &error)));
                        undo_upgrade(&request);
                    }
                }
            }),
            Listener::new(&request, "blocked", move |_| blocked.set(true)),
            Listener::new(&request, "error", {
                let (request, connection) = (request.clone(), connection.clone());
                move |_| {
                    let error = request.error().ok().flatten().map(JsValue::from);
                    connection.give(Err(problem(StoreStep::Open, &error.unwrap_or_default())));
                }
            }),
            Listener::new(&request, "success", {
                let (request, connection) = (request.clone(), connection.clone());
                let is_outdated = Rc::clone(is_outdated);
                move |_| {
                    connection.give(
                        database_of(&request)
                            .map(|database| Connection::new(database, Rc::clone(&is_outdated)))
                            .map_err(|error| problem(StoreStep::Open, &error)),
                    );
                }
            }),
        ];
        Self {
            request,
            connection,
            _listeners: listeners,
        }
    }
}

impl Drop for Opening {
    /// A request can't be called back. Should it succeed after all, its connection is closed, lest
    /// it stand in the way of other tabs; should it upgrade, that is undone, lest an empty database
    /// pass for one of this version. Once the request is settled these handlers have no effect.
    fn drop(&mut self) {
        if self.request.ready_state() == IdbRequestReadyState::Done {
            return;
        }
        let request = self.request.clone();
        let close = Closure::once_into_js(move || {
            if let Ok(database) = database_of(&request) {
                database.close();
            }
        });
        self.request.set_onsuccess(Some(close.unchecked_ref()));
        let request = self.request.clone();
        let undo = Closure::once_into_js(move || undo_upgrade(&request));
        self.request.set_onupgradeneeded(Some(undo.unchecked_ref()));
    }
}

fn database_of(request: &IdbOpenDbRequest) -> Result<IdbDatabase, JsValue> {
    request.result()?.dyn_into()
}

fn bring_up_to_date(database: &IdbDatabase) -> Result<(), JsValue> {
    if !database.object_store_names().contains(OBJECT_STORE) {
        database.create_object_store(OBJECT_STORE)?;
    }
    Ok(())
}

fn undo_upgrade(request: &IdbOpenDbRequest) {
    if let Some(transaction) = request.transaction() {
        // It fails only for a transaction that is over, and then there is nothing to undo.
        let _ = transaction.abort();
    }
}
