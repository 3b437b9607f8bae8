//! Files of the reader's own: put together in the page, sent nowhere.

use js_sys::Array;
use leptos::prelude::document;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, Url};

/// Offers a text as a download; where the browser refuses, nothing happens.
pub fn save_text(name: &str, kind: &str, text: &str) {
    let options = BlobPropertyBag::new();
    options.set_type(kind);
    let parts = Array::of1(&JsValue::from_str(text));
    if let Ok(blob) = Blob::new_with_str_sequence_and_options(&parts, &options) {
        save(name, &blob);
    }
}

/// Offers what a blob holds as a download; where the browser refuses, nothing happens.
pub fn save(name: &str, blob: &Blob) {
    // A browser that cannot download says so itself.
    let _ = offer(name, blob);
}

fn offer(name: &str, blob: &Blob) -> Result<(), JsValue> {
    let address = Url::create_object_url_with_blob(blob)?;
    let link: HtmlAnchorElement = document().create_element("a")?.dyn_into()?;
    link.set_href(&address);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&address)
}
