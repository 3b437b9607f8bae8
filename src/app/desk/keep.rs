//! How the desk writes: what is shown across reloads, what is saved under a name, and the address.

use super::{Desk, start};
use crate::share_link;
use crate::storage::{self, Entry, Listed, StorageTrouble, VISIT, WorkingForm};
use crate::text::page;
use leptos::prelude::*;
use noonday_engine::scenario::{ScenarioDocument, example, from_any_link, to_link};
use std::time::Duration;

/// How long after a change it is kept: writing takes a millisecond, too long for every step of a drag.
pub const SAVING: Duration = Duration::from_millis(250);

/// Said already: there was no room, or storage is blocked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct NotSaved;

impl Desk {
    /// Saves a document under a name of its own unless it is saved already or the example; gives the name.
    ///
    /// # Errors
    /// When it could not be saved, which is then told.
    pub(super) fn put_by(self, document: &ScenarioDocument) -> Result<Option<String>, NotSaved> {
        let form = to_link(document);
        let is_saved = self.saved.with_untracked(|lines| {
            lines.iter().any(|line| match line {
                Listed::Good { entry, .. } => entry.form == form,
                Listed::Damaged { .. } => false,
            })
        });
        if is_saved || *document == example() {
            return Ok(None);
        }
        let mut name = page::shown_name(&document.name);
        if self.named(&name).is_some() {
            name = storage::copy_of(&name, &self.names());
        }
        let mut document = document.clone();
        document.name.clone_from(&name);
        if self.put(&storage::new_saved_key(), &name, &document) {
            Ok(Some(name))
        } else {
            Err(NotSaved)
        }
    }

    pub(super) fn put(self, key: &str, name: &str, document: &ScenarioDocument) -> bool {
        let entry = Entry {
            name: name.to_owned(),
            saved_at: js_sys::Date::new_0().to_iso_string().into(),
            form: to_link(document),
        };
        let written = storage::write(key, &entry);
        self.report(written);
        self.list();
        written.is_ok()
    }

    pub(super) fn entry(self, key: &str) -> Option<Entry> {
        self.saved.with_untracked(|lines| {
            lines.iter().find_map(|line| match line {
                Listed::Good { key: found, entry } if found == key => Some(entry.clone()),
                _ => None,
            })
        })
    }

    pub(super) fn named(self, name: &str) -> Option<String> {
        self.saved.with_untracked(|lines| {
            lines.iter().find_map(|line| match line {
                Listed::Good { key, entry } if entry.name == name => Some(key.clone()),
                _ => None,
            })
        })
    }

    pub(super) fn names(self) -> Vec<String> {
        self.saved.with_untracked(|lines| {
            lines
                .iter()
                .filter_map(|line| match line {
                    Listed::Good { entry, .. } => Some(entry.name.clone()),
                    Listed::Damaged { .. } => None,
                })
                .collect()
        })
    }

    pub(super) fn list(self) {
        self.saved.set(storage::listed(storage::saved()));
    }

    /// Keeps what is shown across reloads: shortly after a change, and at the latest when the page is left.
    pub(super) fn keep_working(self) {
        let waiting = StoredValue::new(None::<TimeoutHandle>);
        let write = move || {
            waiting.set_value(None);
            self.write_working();
        };
        Effect::new(move |before: Option<()>| {
            self.state.document.track();
            self.state.checked.track();
            let visits = self.visitor.get();
            if let Some(handle) = waiting.get_value() {
                handle.clear();
            }
            // What was just read from storage need not be written back; what came in a link has to be.
            if before.is_some() || visits {
                waiting.set_value(set_timeout_with_handle(write, SAVING).ok());
            }
        });
        window_event_listener_untyped("pagehide", move |_| {
            if waiting.get_value().is_some() {
                write();
            }
            self.leave_beside();
        });
    }

    /// What is shown, in the form in which it is kept.
    pub(super) fn working_form(self) -> WorkingForm {
        let document = self.state.document.get_untracked();
        self.state
            .checked
            .with_untracked(|checked| WorkingForm::new(&document, &checked.scenario))
    }

    /// Writes what is shown, a visitor apart from one's own. Storage that is blocked is told of when something is saved.
    pub(super) fn write_working(self) {
        self.mark_entry();
        let written = if self.visitor.get_untracked() {
            start::put_by_damaged_visit().and_then(|()| storage::write(VISIT, &self.working_form()))
        } else {
            self.write_own()
        };
        if written == Err(StorageTrouble::Full) {
            self.report(written);
        }
    }

    /// Takes a link out of the address as soon as it no longer says what is shown.
    pub(super) fn keep_address(self) {
        Effect::new(move |before: Option<()>| {
            self.state.document.track();
            let shown = before.and_then(|()| share_link::fragment());
            let says_so = |link: String| {
                let said = from_any_link(&link);
                self.state
                    .document
                    .with_untracked(|document| said.as_ref() == Ok(document))
            };
            if shown.is_some_and(|link| !says_so(link)) {
                share_link::drop_fragment();
            }
        });
    }
}
