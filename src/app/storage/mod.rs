//! What the browser keeps for the page: the working state, saved scenarios, units. Nothing that cannot be read is lost.

mod entry;
mod watched;

pub use entry::{
    Addition, Entry, Listed, WorkingForm, copy_of, kept_name, listed, read_form, read_working,
};
pub use watched::Watched;

use gloo_storage::errors::StorageError;
use gloo_storage::{LocalStorage, Storage};
use serde::Serialize;
use serde::de::DeserializeOwned;

/// The scenario that is one's own.
pub const WORKING: &str = "noonday.working";
/// A scenario that came in a link and is looked at or changed without having been kept.
pub const VISIT: &str = "noonday.visit";
/// A logged day, as it was pasted.
pub const LOG: &str = "noonday.log";
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

/// Whether the browser keeps anything at all. The library stops the page where it does not, so this is asked first.
fn is_available() -> bool {
    web_sys::window().is_some_and(|window| matches!(window.local_storage(), Ok(Some(_))))
}

/// Reads a value.
pub fn read<T: DeserializeOwned>(key: &str) -> Stored<T> {
    if !is_available() {
        return Stored::Nothing;
    }
    match LocalStorage::get(key) {
        Ok(value) => Stored::Value(value),
        Err(StorageError::KeyNotFound(_)) => Stored::Nothing,
        Err(_) => read_raw(key).map_or(Stored::Nothing, Stored::Unreadable),
    }
}

/// Reads what stands under a key, whatever it is.
pub fn read_raw(key: &str) -> Option<String> {
    if !is_available() {
        return None;
    }
    LocalStorage::raw().get_item(key).ok().flatten()
}

/// Writes a value.
///
/// # Errors
/// When storage is blocked or full.
pub fn write<T: Serialize>(key: &str, value: &T) -> Result<(), StorageTrouble> {
    if !is_available() {
        return Err(StorageTrouble::Blocked);
    }
    LocalStorage::set(key, value).map_err(|_| StorageTrouble::Full)
}

/// Puts back what stood under a key, or nothing.
///
/// # Errors
/// When storage is blocked or full.
pub fn restore(key: &str, raw: Option<&str>) -> Result<(), StorageTrouble> {
    if !is_available() {
        return Err(StorageTrouble::Blocked);
    }
    match raw {
        Some(raw) => LocalStorage::raw()
            .set_item(key, raw)
            .map_err(|_| StorageTrouble::Full),
        None => {
            LocalStorage::delete(key);
            Ok(())
        }
    }
}

/// Removes what stands under a key.
pub fn remove(key: &str) {
    if is_available() {
        LocalStorage::delete(key);
    }
}

/// Every saved scenario, as it stands.
pub fn saved() -> Vec<(String, String)> {
    if !is_available() {
        return Vec::new();
    }
    let store = LocalStorage::raw();
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

/// Keeps a text that cannot be read among the saved scenarios, where it is listed as it is.
///
/// # Errors
/// When storage is blocked or full.
pub fn put_by_raw(raw: &str) -> Result<(), StorageTrouble> {
    if saved().iter().any(|(_, other)| other == raw) {
        return Ok(());
    }
    restore(&new_saved_key(), Some(raw))
}

/// A key for a new saved scenario that no other has.
pub fn new_saved_key() -> String {
    let now = js_sys::Date::now() as u64;
    let free = (now..).map(|number| format!("{SAVED}{number}"));
    free.into_iter()
        .find(|key| read_raw(key).is_none())
        .unwrap_or_else(|| format!("{SAVED}{now}"))
}
