//! Back and forward: an entry of the browser's history for each scenario that was opened.
//!
//! Each entry carries its scenario as it was left, so that going back shows it so, and going forward the other again. It
//! lasts as long as the browser's tab, reloads included, and never leaves the device.

use super::Desk;
use crate::share_link;
use crate::state::Trail;
use crate::storage::{self, WorkingForm};
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use std::time::Duration;

/// What an entry carries.
#[derive(Serialize, Deserialize)]
pub(super) struct Mark {
    pub(super) working: WorkingForm,
    pub(super) visitor: bool,
    /// Whether the report was looked at.
    #[serde(default)]
    report: bool,
}

/// How long going back may take.
const RETURNING: Duration = Duration::from_millis(400);

impl Mark {
    /// That of the present entry, if it has one.
    pub(super) fn read() -> Option<Self> {
        read(&share_link::entry_mark()?)
    }
}

fn read(mark: &str) -> Option<Mark> {
    serde_json::from_str(mark).ok()
}

impl Desk {
    /// Follows back and forward from now on.
    pub(super) fn keep_history(self) {
        // A report that is loaded anew stays a report.
        let left = Mark::read();
        self.report.set(left.is_some_and(|left| left.report));
        self.mark_entry();
        window_event_listener(leptos::ev::popstate, move |event| {
            let mark = event.state().as_string();
            if let Some(mark) = mark.and_then(|mark| read(&mark)) {
                self.return_to(&mark);
            }
        });
    }

    /// Writes what is shown, as it is now, into the present entry.
    pub(super) fn mark_entry(self) {
        if let Some(mark) = self.mark() {
            share_link::mark_entry(&mark);
        }
    }

    /// Begins a new entry for what is opened next.
    pub(super) fn begin_entry(self) {
        self.mark_entry();
        share_link::begin_entry();
    }

    /// Shows the report in an entry of its own; the address stays what it is, link and all.
    pub fn show_report(self) {
        self.mark_entry();
        share_link::begin_entry_here();
        self.report.set(true);
        self.mark_entry();
    }

    /// Goes back to the consult, by the browser's own way back.
    pub fn leave_report(self) {
        share_link::go_back();
        // Where there is no entry to go back to, as in a tab that was begun with the report.
        let stay = move || {
            if self.report.get_untracked() {
                self.report.set(false);
                self.mark_entry();
            }
        };
        set_timeout(stay, RETURNING);
    }

    fn mark(self) -> Option<String> {
        let mark = Mark {
            working: self.working_form(),
            visitor: self.visitor.get_untracked(),
            report: self.report.get_untracked(),
        };
        serde_json::to_string(&mark).ok()
    }

    fn return_to(self, mark: &Mark) {
        self.report.set(mark.report);
        let Ok((document, _)) = storage::read_working(&mark.working) else {
            return;
        };
        if document == self.state.document.get_untracked() {
            return;
        }
        self.notice.set(None);
        if mark.visitor {
            self.show_visitor(document, Trail::default());
        } else {
            self.show_own(document, Trail::default());
        }
    }
}
