//! The service worker: the page works without a network, and changes its version when asked.

use leptos::prelude::*;
use leptos::task::spawn_local;
use send_wrapper::SendWrapper;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    ServiceWorker, ServiceWorkerContainer, ServiceWorkerRegistration, ServiceWorkerState,
};

/// A new version that waits to be used.
#[derive(Clone)]
pub(crate) struct Update(SendWrapper<ServiceWorker>);

impl Update {
    /// Changes to the new version; the page is loaded again by it.
    pub(crate) fn apply(&self) {
        if let Some(container) = container() {
            let reload = Closure::once_into_js(move || {
                // A browser that does not reload by itself shows the new version next time.
                let _ = window().location().reload();
            });
            container.set_oncontrollerchange(Some(reload.unchecked_ref()));
        }
        // A worker that has gone meanwhile has nothing left to wait for.
        let _ = self.0.post_message(&"SKIP_WAITING".into());
    }
}

/// Registers the service worker; the signal holds a new version once it is ready.
#[must_use]
pub(crate) fn start() -> RwSignal<Option<Update>> {
    let update = RwSignal::new(None);
    if let Some(container) = container() {
        spawn_local(async move {
            // Without a service worker the page works as long as there is a network.
            if let Ok(registration) = JsFuture::from(container.register("sw.js")).await {
                watch(&registration.unchecked_into(), &container, update);
            }
        });
    }
    update
}

/// The browser's service workers, where it has them.
fn container() -> Option<ServiceWorkerContainer> {
    let navigator = window().navigator();
    let has =
        js_sys::Reflect::has(&navigator, &JsValue::from_str("serviceWorker")).unwrap_or(false);
    (has && window().is_secure_context()).then(|| navigator.service_worker())
}

fn watch(
    registration: &ServiceWorkerRegistration,
    container: &ServiceWorkerContainer,
    update: RwSignal<Option<Update>>,
) {
    // The first version ever is no update.
    if let (Some(waiting), Some(_)) = (registration.waiting(), container.controller()) {
        update.set(Some(Update(SendWrapper::new(waiting))));
    }
    let (seen, container) = (registration.clone(), container.clone());
    let on_found = Closure::<dyn FnMut()>::new(move || {
        let Some(coming) = seen.installing() else {
            return;
        };
        let (worker, container) = (coming.clone(), container.clone());
        let on_state = Closure::<dyn FnMut()>::new(move || {
            if worker.state() == ServiceWorkerState::Installed && container.controller().is_some() {
                update.set(Some(Update(SendWrapper::new(worker.clone()))));
            }
        });
        coming.set_onstatechange(Some(on_state.as_ref().unchecked_ref()));
        // Lives as long as the page: a version can be found at any time.
        on_state.forget();
    });
    registration.set_onupdatefound(Some(on_found.as_ref().unchecked_ref()));
    on_found.forget();
}
