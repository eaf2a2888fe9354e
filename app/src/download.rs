//! Hands a text to the user as a file.

use js_sys::{Array, Reflect};
use leptos::prelude::{document, set_timeout};
use std::time::Duration;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, Url};

/// How long the text of a file can be fetched.
const KEPT: Duration = Duration::from_secs(60);

/// Lets the browser save a text under a name, whose end tells what it is.
///
/// # Errors
/// With the browser's own words when it refuses.
pub(crate) fn text(name: &str, text: &str) -> Result<(), String> {
    save(name, text).map_err(|error| {
        let message = Reflect::get(&error, &"message".into())
            .ok()
            .and_then(|message| message.as_string());
        message.unwrap_or_else(|| "the browser refused".to_owned())
    })
}

/// The same for a list, and what to tell of it.
pub(crate) fn list(name: &str, list: &str) -> String {
    match text(name, list) {
        Ok(()) => format!("The list goes to your downloads as {name}."),
        Err(reason) => format!("The list could not be saved: {reason}"),
    }
}

fn save(name: &str, text: &str) -> Result<(), JsValue> {
    let kind = BlobPropertyBag::new();
    kind.set_type(kind_of(name));
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &kind)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link = document()
        .create_element("a")?
        .unchecked_into::<HtmlAnchorElement>();
    link.set_href(&address);
    link.set_download(name);
    link.click();
    // A busy browser fetches it only later, and finds nothing once the address is given up.
    let give_up = move || {
        // The browser gives it up by itself with the page.
        let _ = Url::revoke_object_url(&address);
    };
    set_timeout(give_up, KEPT);
    Ok(())
}

/// What a file is, by the end of its name.
fn kind_of(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("csv") => "text/csv",
        Some("svg") => "image/svg+xml",
        Some("dxf") => "image/vnd.dxf",
        _ => "application/json",
    }
}
