//! Which scenario lies on the desk: one's own, or a visitor from a link; and what is saved, opened, kept and undone.
//!
//! A link never touches what is one's own: its scenario is shown and may be changed, and stays a visitor, remembered apart,
//! until it is kept or sent back.

mod arrive;
mod beside;
mod files;
mod history;
mod keep;
mod start;

pub use keep::SAVING;
pub use start::Start;

use crate::share_link;
use crate::state::{AppState, Trail};
use crate::storage::{self, Listed, StorageTrouble, UNITS, VISIT, Watched};
use crate::text::{answer::answer, page, storage as words};
use leptos::prelude::*;
use noonday_engine::scenario::{Scenario, ScenarioDocument, example, to_share_link};

/// A message with what can be done about it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Notice {
    /// What is said.
    pub text: String,
    /// A link or stored text that can be copied.
    pub raw: Option<String>,
    /// How to take back what was done.
    pub undo: Option<Undo>,
}

/// What puts things back as they were.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Undo {
    /// Keys and what stood under them.
    stored: Vec<(String, Option<String>)>,
    /// What lay on the desk.
    document: Option<ScenarioDocument>,
    /// The steps that had led to it.
    trail: Trail,
    /// Whether that was a visitor.
    visitor: bool,
}

/// The desk and its messages.
#[derive(Clone, Copy)]
pub struct Desk {
    state: AppState,
    /// Whether what is shown came in a link and is not one's own.
    pub visitor: RwSignal<bool>,
    /// What the last link held.
    arrived: StoredValue<Option<ScenarioDocument>>,
    /// One's own document while a visitor is shown.
    own: RwSignal<ScenarioDocument>,
    /// What stands in storage as one's own, as far as this tab knows.
    working: StoredValue<Watched>,
    /// Whether another tab has changed that, and nothing is written until somebody has chosen.
    pub contested: RwSignal<bool>,
    /// The message shown.
    pub notice: RwSignal<Option<Notice>>,
    /// The list of saved scenarios.
    pub saved: RwSignal<Vec<Listed>>,
    /// Whether the report stands in place of the consult.
    pub report: RwSignal<bool>,
}

impl Desk {
    /// Sets out what the page starts from, and keeps it from then on.
    pub fn new(start: Start) -> (AppState, Self) {
        let state = AppState::new(start.document, start.runnable, start.units);
        let desk = Self {
            state,
            visitor: RwSignal::new(start.visitor),
            arrived: StoredValue::new(start.arrived),
            own: RwSignal::new(start.own),
            working: StoredValue::new(start.working),
            contested: RwSignal::new(false),
            notice: RwSignal::new(start.notice),
            saved: RwSignal::new(Vec::new()),
            report: RwSignal::new(false),
        };
        desk.list();
        desk.keep_working();
        desk.keep_address();
        desk.keep_history();
        desk.keep_beside();
        desk.keep_links();
        Effect::new(move |before: Option<()>| {
            let name = state.units.get().name();
            if before.is_some() {
                desk.report(storage::write(UNITS, &name));
            }
        });
        (state, desk)
    }

    /// One's own scenario while a visitor is shown.
    pub fn own_beside_visitor(self) -> Option<ScenarioDocument> {
        self.visitor.get().then(|| self.own.get())
    }

    /// Saves what is shown under its name; a scenario saved under that name before is replaced.
    pub fn save(self) {
        let document = self
            .state
            .checked
            .with_untracked(|checked| checked.scenario.document().clone());
        let name = page::shown_name(&document.name);
        let before = self.named(&name);
        let replaces = before.is_some();
        let key = before.unwrap_or_else(storage::new_saved_key);
        let undo = self.undo_of(&[key.as_str()]);
        let text = if replaces {
            words::replaced(&name)
        } else {
            words::saved(&name)
        };
        if self.put(&key, &name, &document) {
            self.say(text, Some(undo));
        }
    }

    /// Opens a saved scenario.
    pub fn open(self, key: &str) {
        let entry = self.entry(key);
        let Some((name, scenario)) = entry.and_then(|entry| {
            let scenario = storage::read_form(&entry.form).ok()?;
            Some((entry.name, scenario))
        }) else {
            return;
        };
        let undo = self.undo_with_document(&[VISIT]);
        self.open_own(scenario.into_document());
        self.say(words::opened(&name), Some(undo));
    }

    /// Opens the example.
    pub fn open_example(self) {
        let undo = self.undo_with_document(&[VISIT]);
        self.open_own(example());
        self.say(words::opened(&example().name), Some(undo));
    }

    /// Gives a saved scenario another name.
    pub fn rename(self, key: &str, name: &str) {
        let name = storage::kept_name(name.trim(), "");
        let Some(scenario) = self
            .entry(key)
            .and_then(|entry| storage::read_form(&entry.form).ok())
        else {
            return;
        };
        if name.is_empty() {
            return;
        }
        let undo = self.undo_of(&[key]);
        let mut document = scenario.into_document();
        document.name = name.to_owned();
        match Scenario::new(document) {
            Ok(scenario) => {
                if self.put(key, name, scenario.document()) {
                    self.say(words::renamed(name), Some(undo));
                }
            }
            Err(errors) => {
                let first = errors.first().map(|error| {
                    let units = self.state.units.get_untracked();
                    crate::text::errors::field_error_named(error, units, "")
                });
                self.say(first.unwrap_or_default(), None);
            }
        }
    }

    /// Saves a second one like it.
    pub fn duplicate(self, key: &str) {
        let Some((entry, scenario)) = self.entry(key).and_then(|entry| {
            let scenario = storage::read_form(&entry.form).ok()?;
            Some((entry, scenario))
        }) else {
            return;
        };
        let name = storage::copy_of(&entry.name, &self.names());
        let mut document = scenario.into_document();
        document.name.clone_from(&name);
        let new_key = storage::new_saved_key();
        let undo = self.undo_of(&[new_key.as_str()]);
        if self.put(&new_key, &name, &document) {
            self.say(words::duplicated(&name), Some(undo));
        }
    }

    /// Deletes a line of the list.
    pub fn delete(self, key: &str) {
        let name = self
            .entry(key)
            .map_or_else(|| key.to_owned(), |entry| entry.name);
        let undo = self.undo_of(&[key]);
        storage::remove(key);
        self.list();
        self.say(words::deleted(&name), Some(undo));
    }

    /// Takes back what the message shown speaks of.
    pub fn undo(self) {
        let undo = self
            .notice
            .with_untracked(|notice| notice.as_ref()?.undo.clone());
        let Some(undo) = undo else { return };
        self.notice.set(None);
        for (key, raw) in &undo.stored {
            self.report(storage::restore(key, raw.as_deref()));
        }
        if let Some(document) = undo.document {
            if undo.visitor {
                self.show_visitor(document, undo.trail);
            } else {
                self.show_own(document, undo.trail);
            }
        }
        self.list();
    }

    /// Makes the visitor one's own; what was one's own is saved first unless it is saved or the example.
    pub fn keep_visitor(self) {
        let own = self.own.get_untracked();
        let text = match self.put_by(&own) {
            Ok(Some(name)) => words::kept(&name),
            Ok(None) => words::KEPT.to_owned(),
            // What was one's own stays so.
            Err(_) => return,
        };
        let trail = self.state.trail.get_untracked();
        self.show_own(self.state.document.get_untracked(), trail);
        self.say(text, None);
    }

    /// Sends the visitor back.
    pub fn back_to_own(self) {
        let undo = self.undo_with_document(&[VISIT]);
        let own = self.own.get_untracked();
        let name = page::shown_name(&own.name);
        self.open_own(own);
        self.say(words::opened(&name), Some(undo));
    }

    /// Puts the link into the address and hands it to the device's own way of sending.
    pub fn share(self) {
        let Some(address) = self.link_shown() else {
            return;
        };
        let (name, lead) = (
            self.state
                .document
                .with_untracked(|document| page::document_title(&document.name)),
            answer(
                &self.state.advice.get_untracked(),
                &self.state.voice.get_untracked(),
            )
            .lead,
        );
        leptos::task::spawn_local(async move {
            // Somebody who turns back from sending has been told so by the device itself.
            share_link::send(&name, &lead, &address).await;
        });
    }

    /// Puts the link into the address and the clipboard.
    pub fn copy_link(self) {
        let Some(address) = self.link_shown() else {
            return;
        };
        leptos::task::spawn_local(async move {
            if share_link::copy(&address).await {
                self.say(words::COPIED.to_owned(), None);
            } else {
                self.notice.set(Some(Notice {
                    text: words::COPY_BY_HAND.to_owned(),
                    raw: Some(address),
                    undo: None,
                }));
            }
        });
    }

    /// The link to the last state that could be run.
    pub fn share_link(self) -> String {
        self.state
            .checked
            .with(|checked| to_share_link(checked.scenario.document()))
    }

    /// The address with that link in it.
    fn link_shown(self) -> Option<String> {
        share_link::set_fragment(&untrack(|| self.share_link()))
    }

    /// Shows a scenario of one's own in an entry of its own of the browser's history.
    fn open_own(self, document: ScenarioDocument) {
        self.begin_entry();
        self.show_own(document, Trail::default());
        self.mark_entry();
    }

    fn show_own(self, document: ScenarioDocument, trail: Trail) {
        self.visitor.set(false);
        self.own.set(document.clone());
        // What cannot be read there stays, unless there was room to put it by.
        if start::put_by_damaged_visit().is_ok() {
            storage::remove(VISIT);
        }
        self.state.open(document, trail);
    }

    fn show_visitor(self, document: ScenarioDocument, trail: Trail) {
        if !self.visitor.get_untracked() {
            self.own.set(self.state.document.get_untracked());
        }
        self.visitor.set(true);
        self.state.open(document, trail);
    }

    fn undo_of(self, keys: &[&str]) -> Undo {
        Undo {
            stored: keys
                .iter()
                .map(|key| ((*key).to_owned(), storage::read_raw(key)))
                .collect(),
            ..Undo::default()
        }
    }

    fn undo_with_document(self, keys: &[&str]) -> Undo {
        Undo {
            document: Some(self.state.document.get_untracked()),
            trail: self.state.trail.get_untracked(),
            visitor: self.visitor.get_untracked(),
            ..self.undo_of(keys)
        }
    }

    fn say(self, text: String, undo: Option<Undo>) {
        self.notice.set(Some(Notice {
            text,
            raw: None,
            undo,
        }));
    }

    /// Says why something was not kept, if it was not.
    pub fn report(self, written: Result<(), StorageTrouble>) {
        let text = match written {
            Ok(()) => return,
            Err(StorageTrouble::Blocked) => words::BLOCKED,
            Err(StorageTrouble::Full) => words::FULL,
        };
        self.say(text.to_owned(), None);
    }
}
