//! The scenario in the address: only in the fragment, which no server ever sees.

use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// What follows the `#` of the address, if anything does.
pub fn fragment() -> Option<String> {
    let hash = web_sys::window()?.location().hash().ok()?;
    let text = hash.strip_prefix('#').unwrap_or(&hash);
    // An anchor on the page is no scenario.
    let is_link = !text.is_empty() && !text.chars().all(|mark| mark.is_ascii_alphabetic());
    is_link.then(|| text.to_owned())
}

/// Puts a link into the address without a new entry in the history; gives the whole address.
pub fn set_fragment(link: &str) -> Option<String> {
    replace(&format!("{}#{link}", bare_address()?));
    web_sys::window()?.location().href().ok()
}

/// Takes a link that no longer says what is shown out of the address.
pub fn drop_fragment() {
    if fragment().is_some()
        && let Some(address) = bare_address()
    {
        replace(&address);
    }
}

/// Copies a text; tells whether the browser allowed it.
pub async fn copy(text: &str) -> bool {
    let Some(window) = web_sys::window() else {
        return false;
    };
    let navigator = window.navigator();
    // Where the page is not served securely there is no clipboard to ask.
    let clipboard = js_sys::Reflect::get(&navigator, &JsValue::from_str("clipboard"));
    if clipboard.map_or(true, |clipboard| clipboard.is_undefined()) {
        return false;
    }
    JsFuture::from(navigator.clipboard().write_text(text))
        .await
        .is_ok()
}

fn bare_address() -> Option<String> {
    let location = web_sys::window()?.location();
    Some(format!(
        "{}{}",
        location.pathname().ok()?,
        location.search().ok()?
    ))
}

fn replace(address: &str) {
    let history = web_sys::window().and_then(|window| window.history().ok());
    if let Some(history) = history {
        // A browser that refuses leaves the old address; nothing else depends on it.
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(address));
    }
}
