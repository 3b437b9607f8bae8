//! Other tabs with this page. All share what is one's own, and none writes over what another wrote: it asks first, and what gives way
//! is put among the saved ones.

use super::keep::NotSaved;
use super::{Desk, Notice};
use crate::storage::{self, SAVED, StorageTrouble, WORKING, WorkingForm};
use crate::text::storage as words;
use leptos::prelude::*;
use noonday_engine::scenario::{Scenario, ScenarioDocument};

impl Desk {
    /// Hears of what other tabs write from now on.
    pub(super) fn keep_beside(self) {
        window_event_listener(leptos::ev::storage, move |event| {
            let key = event.key();
            let key = key.as_deref();
            if key.is_none_or(|key| key.starts_with(SAVED)) {
                self.list();
            }
            if key == Some(WORKING) {
                self.look_beside();
            }
        });
    }

    /// Writes what is one's own, unless another tab has changed it since.
    pub(super) fn write_own(self) -> Result<(), StorageTrouble> {
        let contested = self.foreign().is_some();
        self.contested.set(contested);
        if contested {
            return Ok(());
        }
        let text = self.working_text();
        let mut written = Ok(());
        self.working
            .update_value(|working| written = working.write(text));
        written
    }

    /// Shows what the other tab has; what is shown is put by.
    pub fn take_theirs(self) {
        let Some(raw) = self.foreign() else {
            return self.contested.set(false);
        };
        match read(&raw) {
            Ok((document, _)) => {
                let Ok(name) = self.put_by_shown() else {
                    return;
                };
                self.accept();
                self.open_own(document);
                self.say(words::took_theirs(name.as_deref()), None);
            }
            Err(why) => self.notice.set(Some(Notice {
                text: words::unreadable_theirs(&why),
                raw: Some(raw),
                undo: None,
            })),
        }
    }

    /// Keeps what is shown; what the other tab has is put by.
    pub fn keep_mine(self) {
        let theirs = self.foreign().map(|raw| match read(&raw) {
            Ok((_, runnable)) => self.put_by(runnable.document()),
            Err(_) => self.put_by_text(&raw).map(|()| None),
        });
        let Ok(name) = theirs.unwrap_or(Ok(None)) else {
            return;
        };
        self.accept();
        self.write_working();
        self.say(words::kept_mine(name.as_deref()), None);
    }

    /// Puts a text that cannot be read among the saved scenarios.
    ///
    /// # Errors
    /// When it could not be saved, which is then told.
    fn put_by_text(self, raw: &str) -> Result<(), NotSaved> {
        let written = storage::put_by_raw(raw);
        self.report(written);
        self.list();
        written.map_err(|_| NotSaved)
    }

    /// Puts a log that cannot be kept where it stands among the saved scenarios; gives whether that was done.
    pub fn put_by_log(self, raw: &str) -> bool {
        let put = self.put_by_text(raw).is_ok();
        if put && self.notice.with_untracked(Option::is_none) {
            self.say(words::DAMAGED_LOG.to_owned(), None);
        }
        put
    }

    /// When the page is left before it was chosen, both remain.
    pub(super) fn leave_beside(self) {
        if self.contested.get_untracked() {
            // On the way out there is nobody to tell.
            let _ = if self.visitor.get_untracked() {
                self.put_by(&self.own.get_untracked())
            } else {
                self.put_by_shown()
            };
        }
    }

    fn look_beside(self) {
        if !self.visitor.get_untracked() {
            self.contested.set(self.foreign().is_some());
        } else if !self.contested.get_untracked() {
            self.follow_own();
        }
    }

    /// While a visitor is shown, one's own is what the other tab makes of it.
    fn follow_own(self) {
        let theirs = storage::read_raw(WORKING).and_then(|raw| read(&raw).ok());
        if let Some((document, _)) = theirs {
            self.own.set(document);
            self.accept();
        }
    }

    fn accept(self) {
        self.working.update_value(storage::Watched::accept);
        self.contested.set(false);
    }

    fn foreign(self) -> Option<String> {
        let own = self.working_text();
        self.working.with_value(|working| working.foreign(&own))
    }

    fn working_text(self) -> String {
        // Two texts can always be written.
        serde_json::to_string(&self.working_form()).unwrap_or_default()
    }

    fn put_by_shown(self) -> Result<Option<String>, NotSaved> {
        let shown = self.state.checked.get_untracked().scenario;
        self.put_by(shown.document())
    }
}

fn read(raw: &str) -> Result<(ScenarioDocument, Scenario), String> {
    let form: WorkingForm =
        serde_json::from_str(raw).map_err(|_| words::NOT_AN_ENTRY.to_owned())?;
    storage::read_working(&form)
}
