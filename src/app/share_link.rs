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

/// The whole address under which a link opens, wherever the page is now.
pub fn address_of(link: &str) -> Option<String> {
    let origin = web_sys::window()?.location().origin().ok()?;
    Some(format!("{origin}{}#{link}", bare_address()?))
}

/// Puts a link into the address without a new entry in the history; gives the whole address.
pub fn set_fragment(link: &str) -> Option<String> {
    replace(&format!("{}#{link}", bare_address()?));
    address_of(link)
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

/// Whether the device has a way of its own to send a link.
pub fn can_send() -> bool {
    web_sys::window().is_some_and(|window| {
        let share = JsValue::from_str("share");
        js_sys::Reflect::has(&window.navigator(), &share).unwrap_or(false)
    })
}

/// Sends a link the device's own way.
pub async fn send(title: &str, text: &str, address: &str) {
    if let Some(window) = web_sys::window().filter(|_| can_send()) {
        let data = web_sys::ShareData::new();
        data.set_title(title);
        data.set_text(text);
        data.set_url(address);
        // Refused or called off, nothing was sent and nothing is lost.
        let _ = JsFuture::from(window.navigator().share_with_data(&data)).await;
    }
}

/// Begins a new entry in the browser's history, without a link in the address.
pub fn begin_entry() {
    if let (Some(history), Some(address)) = (history(), bare_address()) {
        // Browsers limit how many entries a page may begin; past that, back goes further.
        let _ = history.push_state_with_url(&JsValue::NULL, "", Some(&address));
    }
}

/// Begins a new entry in the browser's history at the same address.
pub fn begin_entry_here() {
    if let Some(history) = history() {
        // Without an entry of its own the way back goes further.
        let _ = history.push_state(&JsValue::NULL, "");
    }
}

/// Goes one entry back.
pub fn go_back() {
    if let Some(history) = history() {
        // Where there is none, nothing happens.
        let _ = history.back();
    }
}

/// The text in the present entry.
pub fn entry_mark() -> Option<String> {
    history()?.state().ok()?.as_string()
}

/// Writes a text into the present entry of the browser's history.
pub fn mark_entry(mark: &str) {
    if let Some(history) = history() {
        // An entry without its mark is left alone by back and forward.
        let _ = history.replace_state(&JsValue::from_str(mark), "");
    }
}

fn history() -> Option<web_sys::History> {
    web_sys::window()?.history().ok()
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
    if let Some(history) = history() {
        let mark = history.state().unwrap_or(JsValue::NULL);
        // A browser that refuses leaves the old address; nothing else depends on it.
        let _ = history.replace_state_with_url(&mark, "", Some(address));
    }
}
