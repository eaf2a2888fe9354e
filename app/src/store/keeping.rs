//! Asking the browser not to clear the store by itself.

use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// Whether the browser has promised to keep the stored project until the user deletes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// It keeps the project until the user deletes it.
    Granted,
    /// It may clear the project when the disk runs full, or after weeks without a visit.
    NotGranted,
    /// It does not say.
    Unknown,
}

/// Asks for storage that the browser does not clear by itself; may show the user a question.
pub(crate) async fn ask_to_keep() -> Keeping {
    match ask().await {
        Ok(answer) => match answer.as_bool() {
            Some(true) => Keeping::Granted,
            Some(false) => Keeping::NotGranted,
            None => Keeping::Unknown,
        },
        Err(_) => Keeping::Unknown,
    }
}

async fn ask() -> Result<JsValue, JsValue> {
    let window = web_sys::window().ok_or(JsValue::UNDEFINED)?;
    // Outside secure contexts there is no storage manager; the call then throws and is caught.
    JsFuture::from(window.navigator().storage().persist()?).await
}
