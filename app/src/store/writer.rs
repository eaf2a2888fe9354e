//! The right to write the project: one tab has it, the others only look.

use std::{cell::Cell, rc::Rc};

use js_sys::{Function, Object, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue, closure::Closure, prelude::wasm_bindgen};
use wasm_bindgen_futures::JsFuture;
use web_sys::Navigator;

use super::{answer::Answer, timer};

const LOCK: &str = "slatwright project";
/// How often, and after how long a pause in milliseconds, a lock that is not free is asked for again.
const TRIES: usize = 2;
const PAUSE: u32 = 250;

/// The right to write, held until this value is dropped, the tab is closed, or another tab takes
/// over.
pub struct Writer {
    /// `None` where the browser has no locks between tabs.
    _lock: Option<HeldLock>,
}

impl Writer {
    /// Takes the right to write if no other tab has it; `None` if one has.
    ///
    /// Asks for half a second before it gives up, because a page that is being reloaded may still
    /// hold the lock. `on_lost` is called when another tab takes over later on. In browsers without
    /// locks between tabs every tab may write.
    pub async fn take(on_lost: impl FnOnce() + 'static) -> Option<Self> {
        let on_lost = OnLost::new(Cell::new(Some(Box::new(on_lost))));
        for _ in 0..TRIES {
            let writer = Self::request("ifAvailable", &on_lost).await;
            if writer.is_some() {
                return writer;
            }
            timer::wait(PAUSE).await;
        }
        Self::request("ifAvailable", &on_lost).await
    }

    /// Takes the right to write from whichever tab has it.
    ///
    /// Load the project again afterwards: the other tab may have saved until a moment ago.
    /// `None` only if yet another tab took over in the same moment.
    pub async fn take_over(on_lost: impl FnOnce() + 'static) -> Option<Self> {
        Self::request("steal", &OnLost::new(Cell::new(Some(Box::new(on_lost))))).await
    }

    async fn request(manner: &str, on_lost: &OnLost) -> Option<Self> {
        let unguarded = Some(Self { _lock: None });
        let Some(locks) = locks() else {
            return unguarded;
        };
        let options = Object::new();
        Reflect::set(&options, &manner.into(), &true.into())
            .expect("a plain object takes any property");
        let reply = Answer::new();
        // The browser calls this once, with the lock or with nothing, and holds the lock until the
        // returned promise is settled.
        let on_reply = Closure::once_into_js({
            let reply = reply.clone();
            move |lock: JsValue| {
                let (held, end) = HeldLock::new();
                let is_mine = !lock.is_null_or_undefined();
                reply.give(Reply::Answered(is_mine.then_some(held)));
                end
            }
        });
        let Ok(end) = locks.request(LOCK, &options, on_reply.unchecked_ref()) else {
            return unguarded;
        };
        wasm_bindgen_futures::spawn_local({
            let (reply, on_lost) = (reply.clone(), OnLost::clone(on_lost));
            async move {
                // Rejected at once where locks are forbidden, later on where one was taken over;
                // fulfilled where this tab gave it back or never had it.
                let is_rejected = JsFuture::from(end).await.is_err();
                if is_rejected
                    && !reply.give(Reply::Forbidden)
                    && let Some(on_lost) = on_lost.take()
                {
                    on_lost();
                }
            }
        });
        match reply.taken().await {
            Reply::Answered(None) => None,
            Reply::Answered(lock) => Some(Self { _lock: lock }),
            Reply::Forbidden => unguarded,
        }
    }
}

/// What to do when the right is lost, shared by the tries to get it.
type OnLost = Rc<Cell<Option<Box<dyn FnOnce()>>>>;

enum Reply {
    Answered(Option<HeldLock>),
    Forbidden,
}

/// Gives the lock back when dropped.
struct HeldLock {
    /// Settles the promise that holds the lock.
    release: Option<Function>,
}

impl HeldLock {
    /// The lock, and the promise that is settled when it is dropped.
    fn new() -> (Self, Promise) {
        let mut release = None;
        let end = Promise::new(&mut |resolve, _reject| release = Some(resolve));
        (Self { release }, end)
    }
}

impl Drop for HeldLock {
    fn drop(&mut self) {
        if let Some(release) = &self.release {
            release
                .call0(&JsValue::UNDEFINED)
                .expect("settling a promise does not throw");
        }
    }
}

fn locks() -> Option<LockManager> {
    let navigator = web_sys::window()?.navigator();
    navigator.unchecked_ref::<LockingNavigator>().locks()
}

#[wasm_bindgen]
extern "C" {
    /// The navigator with its locks, which the common bindings still count as unstable.
    #[wasm_bindgen(extends = Navigator)]
    type LockingNavigator;

    #[wasm_bindgen(method, getter)]
    fn locks(this: &LockingNavigator) -> Option<LockManager>;

    type LockManager;

    #[wasm_bindgen(method, catch)]
    fn request(
        this: &LockManager,
        name: &str,
        options: &Object,
        callback: &Function,
    ) -> Result<Promise, JsValue>;
}
