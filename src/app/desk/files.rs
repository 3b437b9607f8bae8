//! What the desk gives to files, and takes from them.

use super::{Desk, Notice, Undo};
use crate::save::save_text;
use crate::storage::{self, Addition, Entry, Listed};
use crate::text::{files as words, page};
use leptos::prelude::*;
use noonday_engine::scenario::file::{Filed, MOST_SCENARIOS, to_file};
use noonday_engine::scenario::to_link;

/// Kind of the files.
const KIND: &str = "application/json";

impl Desk {
    /// Every saved scenario that can be read.
    pub fn kept(self) -> Vec<Entry> {
        self.saved.with(|lines| {
            lines
                .iter()
                .filter_map(|line| match line {
                    Listed::Good { entry, .. } => Some(entry.clone()),
                    Listed::Damaged { .. } => None,
                })
                .collect()
        })
    }

    /// Saves a scenario of the list as a file.
    pub fn file_one(self, key: &str) {
        if let Some(entry) = self.entry(key) {
            let name = words::file_name(&entry.name);
            save_files(&name, &filed(&entry).into_iter().collect::<Vec<_>>());
        }
    }

    /// Saves what is shown as a file: the last state of it that could be run.
    pub fn file_shown(self) {
        let scenario = self
            .state
            .checked
            .with_untracked(|checked| checked.scenario.clone());
        let name = words::file_name(&page::shown_name(&scenario.document().name));
        let saved = None;
        save_files(&name, &[Filed { saved, scenario }]);
    }

    /// Saves the whole list as a file, and says how many lines of it could not be read.
    pub fn file_all(self) {
        let kept = untrack(|| self.kept());
        let all: Vec<Filed> = kept.iter().filter_map(filed).collect();
        save_files(words::ALL_FILE, &all);
        let damaged = self.saved.with_untracked(Vec::len) - all.len();
        if damaged > 0 {
            self.say(words::left_out(damaged), None);
        }
    }

    /// Keeps scenarios beside those that are kept already: all of them or, where there is no room, none.
    pub fn add(self, additions: Vec<Addition>) -> bool {
        let mut undo = Undo::default();
        let count = additions.len();
        for addition in additions {
            let key = storage::new_saved_key();
            let entry = Entry {
                form: to_link(addition.scenario.document()),
                name: addition.name,
                saved_at: addition
                    .saved_at
                    .unwrap_or_else(|| js_sys::Date::new_0().to_iso_string().into()),
            };
            if let Err(trouble) = storage::write(&key, &entry) {
                for (key, _) in &undo.stored {
                    storage::remove(key);
                }
                self.list();
                self.report(Err(trouble));
                return false;
            }
            undo.stored.push((key, None));
        }
        self.list();
        self.notice.set(Some(Notice {
            text: words::added(count),
            raw: None,
            undo: Some(undo),
        }));
        true
    }
}

fn filed(entry: &Entry) -> Option<Filed> {
    let scenario = storage::read_form(&entry.form).ok()?;
    let saved = Some(entry.saved_at.clone());
    Some(Filed { saved, scenario })
}

/// Offers scenarios as one file, or as several where they are more than one may hold.
fn save_files(name: &str, scenarios: &[Filed]) {
    for part in scenarios.chunks(MOST_SCENARIOS) {
        save_text(name, KIND, &to_file(part));
    }
}
