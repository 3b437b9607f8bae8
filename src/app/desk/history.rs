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

/// What an entry carries.
#[derive(Serialize, Deserialize)]
struct Mark {
    working: WorkingForm,
    visitor: bool,
}

impl Desk {
    /// Follows back and forward from now on.
    pub(super) fn keep_history(self) {
        self.mark_entry();
        window_event_listener(leptos::ev::popstate, move |event| {
            let mark = event.state().as_string();
            if let Some(mark) = mark.and_then(|mark| serde_json::from_str(&mark).ok()) {
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

    fn mark(self) -> Option<String> {
        let mark = Mark {
            working: self.working_form(),
            visitor: self.visitor.get_untracked(),
        };
        serde_json::to_string(&mark).ok()
    }

    fn return_to(self, mark: &Mark) {
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
