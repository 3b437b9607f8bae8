//! What the browser keeps for the page: the working state, saved scenarios, units. Nothing that cannot be read is lost.

mod entry;
mod json;

pub use entry::{Entry, Listed, WorkingForm, copy_of, listed, read_form, read_working};

pub use json::Value;

/// What can be stored.
pub trait Kept: Sized {
    /// As a value.
    fn to_value(&self) -> Value;
    /// Out of a value, if it is one.
    fn from_value(value: Value) -> Option<Self>;
}

impl Kept for String {
    fn to_value(&self) -> Value {
        Value::Text(self.clone())
    }

    fn from_value(value: Value) -> Option<Self> {
        value.into_text()
    }
}

/// The scenario that is one's own.
pub const WORKING: &str = "noonday.working";
/// A scenario that came in a link and is looked at or changed without having been kept.
pub const VISIT: &str = "noonday.visit";
/// The units shown.
pub const UNITS: &str = "noonday.units";
/// Begins the keys of saved scenarios.
pub const SAVED: &str = "noonday.saved.";

/// Why something was not written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StorageTrouble {
    /// The browser keeps nothing for this page.
    Blocked,
    /// It has no room left.
    Full,
}

/// What is under a key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Stored<T> {
    /// Nothing, or storage is blocked.
    Nothing,
    /// A value.
    Value(T),
    /// Something else, as it stands there.
    Unreadable(String),
}

/// The browser's store; none where it keeps nothing.
fn store() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// Reads a value.
pub fn read<T: Kept>(key: &str) -> Stored<T> {
    let Some(raw) = read_raw(key) else {
        return Stored::Nothing;
    };
    match Value::read(&raw).and_then(T::from_value) {
        Some(value) => Stored::Value(value),
        None => Stored::Unreadable(raw),
    }
}

/// Reads what stands under a key, whatever it is.
pub fn read_raw(key: &str) -> Option<String> {
    store()?.get_item(key).ok().flatten()
}

/// Writes a value.
///
/// # Errors
/// When storage is blocked or full.
pub fn write<T: Kept>(key: &str, value: &T) -> Result<(), StorageTrouble> {
    restore(key, Some(&value.to_value().written()))
}

/// Puts back what stood under a key, or nothing.
///
/// # Errors
/// When storage is blocked or full.
pub fn restore(key: &str, raw: Option<&str>) -> Result<(), StorageTrouble> {
    let store = store().ok_or(StorageTrouble::Blocked)?;
    match raw {
        Some(raw) => store.set_item(key, raw).map_err(|_| StorageTrouble::Full),
        None => {
            remove(key);
            Ok(())
        }
    }
}

/// Removes what stands under a key.
pub fn remove(key: &str) {
    if let Some(store) = store() {
        // Removing cannot fail where there is a store.
        let _ = store.remove_item(key);
    }
}

/// Every saved scenario, as it stands.
pub fn saved() -> Vec<(String, String)> {
    let Some(store) = store() else {
        return Vec::new();
    };
    let count = store.length().unwrap_or_default();
    (0..count)
        .filter_map(|index| store.key(index).ok().flatten())
        .filter(|key| key.starts_with(SAVED))
        .filter_map(|key| {
            let raw = store.get_item(&key).ok().flatten()?;
            Some((key, raw))
        })
        .collect()
}

/// A key for a new saved scenario that no other has.
pub fn new_saved_key() -> String {
    let now = js_sys::Date::now() as u64;
    let free = (now..).map(|number| format!("{SAVED}{number}"));
    free.into_iter()
        .find(|key| read_raw(key).is_none())
        .unwrap_or_else(|| format!("{SAVED}{now}"))
}
