//! Which scenario lies on the desk: one's own, or a visitor from a link; and what is saved, opened, kept and undone.
//!
//! A link never touches what is one's own: its scenario is shown and may be changed, and stays a visitor, remembered apart,
//! until it is kept or sent back.

use crate::share_link;
use crate::state::AppState;
use crate::storage::{
    self, Entry, Listed, StorageTrouble, Stored, UNITS, VISIT, WORKING, WorkingForm,
};
use crate::text::{page, storage as words};
use leptos::prelude::*;
use noonday_engine::advice::{Advice, advise};
use noonday_engine::scenario::{Scenario, ScenarioDocument, example, to_link};
use std::time::Duration;

/// How long after a change it is kept: writing takes a millisecond, too long for every step of a drag.
const SAVING: Duration = Duration::from_millis(250);

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
    /// Whether that was a visitor.
    visitor: bool,
}

/// The desk and its messages.
#[derive(Clone, Copy)]
pub struct Desk {
    state: AppState,
    /// Whether what is shown came in a link and is not one's own.
    pub visitor: RwSignal<bool>,
    /// One's own document while a visitor is shown.
    own: RwSignal<ScenarioDocument>,
    /// The message shown.
    pub notice: RwSignal<Option<Notice>>,
    /// The list of saved scenarios.
    pub saved: RwSignal<Vec<Listed>>,
}

/// What the page starts from.
pub struct Start {
    document: ScenarioDocument,
    runnable: (Scenario, Advice),
    units: crate::format::UnitSystem,
    own: ScenarioDocument,
    visitor: bool,
    notice: Option<Notice>,
}

impl Start {
    /// Reads storage and address.
    pub fn read() -> Option<Self> {
        let (mut own, mut notice) = (read_kept(WORKING), None);
        if let Some((why, raw)) = own.damage.take() {
            put_by_raw(&raw);
            notice = Some(Notice {
                text: words::damaged_working(&why),
                raw: Some(raw),
                undo: None,
            });
        }
        let (document, runnable) = match own.found {
            Some(found) => found,
            None => (example(), Scenario::new(example()).ok()?),
        };
        let mut start = Self {
            own: document.clone(),
            document,
            runnable: with_advice(runnable)?,
            units: read_units(),
            visitor: false,
            notice,
        };
        match share_link::fragment() {
            Some(link) => start.take_link(&link),
            None => start.take_visit(),
        }
        Some(start)
    }

    fn take_link(&mut self, link: &str) {
        match storage::read_form(link) {
            Ok(scenario) if *scenario.document() == self.own => {}
            Ok(scenario) => {
                let document = scenario.document().clone();
                self.show_visitor(document, scenario);
            }
            Err(why) => self.notice = Some(damaged_link(&why, link)),
        }
    }

    fn take_visit(&mut self) {
        if let Some((document, runnable)) = read_kept(VISIT).found {
            self.show_visitor(document, runnable);
        }
    }

    fn show_visitor(&mut self, document: ScenarioDocument, runnable: Scenario) {
        if let Some(runnable) = with_advice(runnable) {
            self.document = document;
            self.runnable = runnable;
            self.visitor = true;
        }
    }
}

impl Desk {
    /// Sets out what the page starts from, and keeps it from then on.
    pub fn new(start: Start) -> (AppState, Self) {
        let state = AppState::new(start.document, start.runnable, start.units);
        let desk = Self {
            state,
            visitor: RwSignal::new(start.visitor),
            own: RwSignal::new(start.own),
            notice: RwSignal::new(start.notice),
            saved: RwSignal::new(Vec::new()),
        };
        desk.list();
        desk.keep_working();
        desk.keep_address();
        Effect::new(move |before: Option<()>| {
            let name = state.units.get().name();
            if before.is_some() {
                desk.report(storage::write(UNITS, &name));
            }
        });
        window_event_listener(leptos::ev::hashchange, move |_| desk.link_arrived());
        window_event_listener(leptos::ev::storage, move |_| desk.list());
        (state, desk)
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
        self.show_own(scenario.into_document());
        self.say(words::opened(&name), Some(undo));
    }

    /// Opens the example.
    pub fn open_example(self) {
        let undo = self.undo_with_document(&[VISIT]);
        self.show_own(example());
        self.say(words::opened(&example().name), Some(undo));
    }

    /// Gives a saved scenario another name.
    pub fn rename(self, key: &str, name: &str) {
        let name = name.trim();
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
                self.show_visitor(document);
            } else {
                self.show_own(document);
            }
        }
        self.list();
    }

    /// Makes the visitor one's own; what was one's own is saved first unless it is saved or the example.
    pub fn keep_visitor(self) {
        let own = self.own.get_untracked();
        let text = match self.put_by(&own) {
            Some(name) => words::kept(&name),
            None => words::KEPT.to_owned(),
        };
        self.show_own(self.state.document.get_untracked());
        self.say(text, None);
    }

    /// Sends the visitor back.
    pub fn back_to_own(self) {
        let undo = self.undo_with_document(&[VISIT]);
        let own = self.own.get_untracked();
        let name = page::shown_name(&own.name);
        self.show_own(own);
        self.say(words::opened(&name), Some(undo));
    }

    /// Puts the link into the address and the clipboard.
    pub fn copy_link(self) {
        let link = self
            .state
            .checked
            .with_untracked(|checked| to_link(checked.scenario.document()));
        let Some(address) = share_link::set_fragment(&link) else {
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

    fn link_arrived(self) {
        let Some(link) = share_link::fragment() else {
            return;
        };
        match storage::read_form(&link) {
            Ok(scenario) => self.receive(scenario.into_document()),
            Err(why) => self.notice.set(Some(damaged_link(&why, &link))),
        }
    }

    fn receive(self, document: ScenarioDocument) {
        let shown = self.state.document.get_untracked();
        if document == shown {
            return;
        }
        if self.visitor.get_untracked() {
            self.put_by(&shown);
        }
        self.notice.set(None);
        self.show_visitor(document);
    }

    fn show_own(self, document: ScenarioDocument) {
        self.visitor.set(false);
        self.own.set(document.clone());
        storage::remove(VISIT);
        self.state.open(document);
    }

    fn show_visitor(self, document: ScenarioDocument) {
        if !self.visitor.get_untracked() {
            self.own.set(self.state.document.get_untracked());
        }
        self.visitor.set(true);
        self.state.open(document);
    }

    /// Saves a document under a name of its own unless it is saved already or the example; gives the name.
    fn put_by(self, document: &ScenarioDocument) -> Option<String> {
        let form = to_link(document);
        let is_saved = self.saved.with_untracked(|lines| {
            lines.iter().any(|line| match line {
                Listed::Good { entry, .. } => entry.form == form,
                Listed::Damaged { .. } => false,
            })
        });
        if is_saved || *document == example() {
            return None;
        }
        let mut name = page::shown_name(&document.name);
        if self.named(&name).is_some() {
            name = storage::copy_of(&name, &self.names());
        }
        let mut document = document.clone();
        document.name.clone_from(&name);
        self.put(&storage::new_saved_key(), &name, &document)
            .then_some(name)
    }

    fn put(self, key: &str, name: &str, document: &ScenarioDocument) -> bool {
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

    fn entry(self, key: &str) -> Option<Entry> {
        self.saved.with_untracked(|lines| {
            lines.iter().find_map(|line| match line {
                Listed::Good { key: found, entry } if found == key => Some(entry.clone()),
                _ => None,
            })
        })
    }

    fn named(self, name: &str) -> Option<String> {
        self.saved.with_untracked(|lines| {
            lines.iter().find_map(|line| match line {
                Listed::Good { key, entry } if entry.name == name => Some(key.clone()),
                _ => None,
            })
        })
    }

    fn names(self) -> Vec<String> {
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

    fn list(self) {
        self.saved.set(storage::listed(storage::saved()));
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

    fn report(self, written: Result<(), StorageTrouble>) {
        let text = match written {
            Ok(()) => return,
            Err(StorageTrouble::Blocked) => words::BLOCKED,
            Err(StorageTrouble::Full) => words::FULL,
        };
        self.say(text.to_owned(), None);
    }

    /// Keeps what is shown across reloads: shortly after a change, and at the latest when the page is left.
    fn keep_working(self) {
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
        });
    }

    /// Writes what is shown, a visitor apart from one's own. Storage that is blocked is told of when something is saved.
    fn write_working(self) {
        let document = self.state.document.get_untracked();
        let form = self
            .state
            .checked
            .with_untracked(|checked| WorkingForm::new(&document, &checked.scenario));
        let key = if self.visitor.get_untracked() {
            VISIT
        } else {
            WORKING
        };
        if storage::write(key, &form) == Err(StorageTrouble::Full) {
            self.report(Err(StorageTrouble::Full));
        }
    }

    /// Takes a link out of the address as soon as it no longer says what is shown.
    fn keep_address(self) {
        Effect::new(move |before: Option<()>| {
            let link = self.state.document.with(to_link);
            if before.is_some() && share_link::fragment().is_some_and(|shown| shown != link) {
                share_link::drop_fragment();
            }
        });
    }
}

fn with_advice(scenario: Scenario) -> Option<(Scenario, Advice)> {
    let advice = advise(&scenario).ok()?;
    Some((scenario, advice))
}

/// What was read under a key of a working state.
struct Kept {
    found: Option<(ScenarioDocument, Scenario)>,
    damage: Option<(String, String)>,
}

fn read_kept(key: &str) -> Kept {
    let damaged = |why: String, raw: Option<String>| Kept {
        found: None,
        damage: raw.map(|raw| (why, raw)),
    };
    match storage::read::<WorkingForm>(key) {
        Stored::Nothing => damaged(String::new(), None),
        Stored::Unreadable(raw) => damaged(words::NOT_AN_ENTRY.to_owned(), Some(raw)),
        Stored::Value(form) => match storage::read_working(&form) {
            Ok(found) => Kept {
                found: Some(found),
                damage: None,
            },
            Err(why) => damaged(why, storage::read_raw(key)),
        },
    }
}

/// Keeps a text that cannot be read among the saved scenarios, where it is listed as it is.
fn put_by_raw(raw: &str) {
    let already = storage::saved().iter().any(|(_, other)| other == raw);
    if !already {
        // Should there be no room, the message still holds the text.
        let _ = storage::restore(&storage::new_saved_key(), Some(raw));
    }
}

fn read_units() -> crate::format::UnitSystem {
    use crate::format::UnitSystem;
    let remembered = match storage::read::<String>(UNITS) {
        Stored::Value(name) => UnitSystem::from_name(&name),
        Stored::Nothing | Stored::Unreadable(_) => None,
    };
    remembered.unwrap_or_else(|| {
        let language = web_sys::window().and_then(|window| window.navigator().language());
        UnitSystem::from_language(&language.unwrap_or_default())
    })
}

fn damaged_link(why: &str, link: &str) -> Notice {
    Notice {
        text: words::damaged_link(why),
        raw: Some(link.to_owned()),
        undo: None,
    }
}
