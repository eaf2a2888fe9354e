//! Waiting, by the browser's timer.

use js_sys::Function;
use wasm_bindgen::{JsCast, closure::Closure, prelude::wasm_bindgen};

use super::answer::Answer;

/// Is done after the given time; when dropped earlier, the timer is called off.
pub(crate) async fn wait(milliseconds: u32) {
    let timer = Timer::start(milliseconds);
    timer.rung.taken().await;
}

struct Timer {
    id: f64,
    rung: Answer<()>,
    _ring: Closure<dyn FnMut()>,
}

impl Timer {
    fn start(milliseconds: u32) -> Self {
        let rung = Answer::new();
        let ring = Closure::<dyn FnMut()>::new({
            let rung = rung.clone();
            move || {
                rung.give(());
            }
        });
        Self {
            id: set_timeout(ring.as_ref().unchecked_ref(), milliseconds),
            rung,
            _ring: ring,
        }
    }
}

impl Drop for Timer {
    fn drop(&mut self) {
        clear_timeout(self.id);
    }
}

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_name = setTimeout)]
    fn set_timeout(handler: &Function, milliseconds: u32) -> f64;

    #[wasm_bindgen(js_name = clearTimeout)]
    fn clear_timeout(id: f64);
}
