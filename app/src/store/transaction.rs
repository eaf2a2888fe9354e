//! One transaction on the two slots.
//!
//! All its requests are made in the event handlers themselves, never after an `await`: a transaction
//! takes no more of them once the browser is back at its own work.

use std::{cell::Cell, rc::Rc};

use js_sys::{Object, Reflect};
use wasm_bindgen::{JsCast, JsValue, prelude::wasm_bindgen};
use web_sys::{IdbDatabase, IdbObjectStore, IdbRequest, IdbTransaction};

use super::{
    Durability, Place, Slot, Slots, StoreProblem, StoreStep, answer::Answer, listener::Listener,
};

/// The object store that holds the two slots.
pub(crate) const OBJECT_STORE: &str = "project";

/// A transaction that somebody waits for. Dropped early, it is undone if that is still possible.
pub(crate) struct Transaction {
    inner: IdbTransaction,
    outcome: Answer<Result<(), StoreProblem>>,
    step: StoreStep,
    _listeners: [Listener; 2],
}

impl Transaction {
    /// A transaction that only reads.
    pub(crate) fn reading(database: &IdbDatabase) -> Result<Self, StoreProblem> {
        Self::begin(database, "readonly", Durability::Relaxed, StoreStep::Read)
    }

    /// A transaction that reads and writes.
    pub(crate) fn writing(
        database: &IdbDatabase,
        durability: Durability,
    ) -> Result<Self, StoreProblem> {
        Self::begin(database, "readwrite", durability, StoreStep::Write)
    }

    /// Reads both slots.
    pub(crate) async fn read(self) -> Result<Slots, StoreProblem> {
        let [a, b] = self.request_slots()?;
        self.outcome.taken().await?;
        Ok(slots_of(&a, &b))
    }

    /// Reads both slots, writes `text` to the next place, and tells that place.
    pub(crate) async fn write_next(self, text: &str) -> Result<Place, StoreProblem> {
        let [a, b] = self.request_slots()?;
        let written = Rc::new(Cell::new(None));
        // The second of two reads succeeds last. The copy is put within that very event, while the
        // transaction still takes requests.
        let _putting = Listener::new(&b.clone(), "success", {
            let (text, written) = (text.to_owned(), Rc::clone(&written));
            let (inner, outcome) = (self.inner.clone(), self.outcome.clone());
            move |_| {
                let place = slots_of(&a, &b).next_place();
                match put(&inner, place, &text) {
                    Ok(()) => written.set(Some(place)),
                    Err(problem) => {
                        outcome.give(Err(problem));
                        // It fails only if the browser has aborted it already.
                        let _ = inner.abort();
                    }
                }
            }
        });
        self.outcome.taken().await?;
        written.get().ok_or(StoreProblem::Aborted)
    }

    /// Writes `text` to `place` at once, and tells what lay in both slots before.
    pub(crate) async fn write_at(self, place: Place, text: &str) -> Result<Slots, StoreProblem> {
        // Requests are served in order: these two still see what lay there before.
        let [a, b] = self.request_slots()?;
        put(&self.inner, place, text)?;
        self.outcome.taken().await?;
        Ok(slots_of(&a, &b))
    }

    fn begin(
        database: &IdbDatabase,
        mode: &str,
        durability: Durability,
        step: StoreStep,
    ) -> Result<Self, StoreProblem> {
        let inner = database
            .unchecked_ref::<DurableDatabase>()
            .transaction(OBJECT_STORE, mode, &transaction_options(durability))
            .map_err(|error| problem(step, &error))?;
        let outcome = Answer::new();
        let listeners = [
            Listener::new(&inner, "complete", {
                let outcome = outcome.clone();
                move |_| {
                    outcome.give(Ok(()));
                }
            }),
            Listener::new(&inner, "abort", {
                let (inner, outcome) = (inner.clone(), outcome.clone());
                move |_| {
                    outcome.give(Err(match inner.error() {
                        Some(error) => problem(step, &error),
                        None => StoreProblem::Aborted,
                    }));
                }
            }),
        ];
        Ok(Self {
            inner,
            outcome,
            step,
            _listeners: listeners,
        })
    }

    fn request_slots(&self) -> Result<[IdbRequest; 2], StoreProblem> {
        let request = |slot: Slot| {
            object_store(&self.inner)
                .and_then(|store| store.get(&slot.key().into()))
                .map_err(|error| problem(self.step, &error))
        };
        Ok([request(Slot::A)?, request(Slot::B)?])
    }
}

impl Drop for Transaction {
    fn drop(&mut self) {
        // It fails for a transaction that is over, which is the usual case.
        let _ = self.inner.abort();
    }
}

fn object_store(transaction: &IdbTransaction) -> Result<IdbObjectStore, JsValue> {
    transaction.object_store(OBJECT_STORE)
}

/// Puts the copy and tells the transaction that nothing more will come, so that it commits even if
/// the page is gone by the time the copy is written.
fn put(transaction: &IdbTransaction, place: Place, text: &str) -> Result<(), StoreProblem> {
    let stored = JsValue::from_str(&place.stored(text));
    let key = JsValue::from_str(place.slot.key());
    object_store(transaction)
        .and_then(|store| store.put_with_key(&stored, &key))
        .map_err(|error| problem(StoreStep::Write, &error))?;
    // Browsers without it, and those that refuse, commit by themselves a moment later.
    let _ = transaction.unchecked_ref::<PromptTransaction>().commit();
    Ok(())
}

fn slots_of(a: &IdbRequest, b: &IdbRequest) -> Slots {
    Slots::new(stored_in(a), stored_in(b))
}

/// Anything but a string was not put there by this page: it counts as a damaged copy.
fn stored_in(request: &IdbRequest) -> Option<String> {
    match request.result() {
        Ok(value) if value.is_undefined() => None,
        Ok(value) => Some(value.as_string().unwrap_or_default()),
        Err(_) => Some(String::new()),
    }
}

fn transaction_options(durability: Durability) -> Object {
    let options = Object::new();
    let durability = match durability {
        Durability::Relaxed => "relaxed",
        Durability::Strict => "strict",
    };
    Reflect::set(&options, &"durability".into(), &durability.into())
        .expect("a plain object takes any property");
    options
}

/// Sorts what the browser has thrown or reported.
pub(crate) fn problem(step: StoreStep, error: &JsValue) -> StoreProblem {
    let text = |property: &str| {
        Reflect::get(error, &property.into())
            .ok()
            .and_then(|value| value.as_string())
            .unwrap_or_default()
    };
    StoreProblem::from_exception(step, &text("name"), &text("message"))
}

#[wasm_bindgen]
extern "C" {
    /// A database whose transactions take a durability; the common bindings leave that out.
    #[wasm_bindgen(extends = IdbDatabase)]
    type DurableDatabase;

    #[wasm_bindgen(method, catch)]
    fn transaction(
        this: &DurableDatabase,
        object_store: &str,
        mode: &str,
        options: &Object,
    ) -> Result<IdbTransaction, JsValue>;

    /// A transaction that can be told that nothing more will come.
    #[wasm_bindgen(extends = IdbTransaction)]
    type PromptTransaction;

    #[wasm_bindgen(method, catch)]
    fn commit(this: &PromptTransaction) -> Result<(), JsValue>;
}
