//! Back and forward: an entry of the browser's history for each scenario that was opened.
//!
//! Each entry carries its scenario as it was left, so that going back shows it so, and going forward the other again. It
//! lasts as long as the browser's tab, reloads included, and never leaves the device.

use super::Desk;
use crate::share_link;
use crate::state::Trail;
use crate::storage::{self, Kept, Value, WorkingForm};
use leptos::prelude::*;

/// What an entry carries.
struct Mark {
    working: WorkingForm,
    visitor: bool,
}

impl Kept for Mark {
    fn to_value(&self) -> Value {
        let visitor = self.visitor.then(|| Value::Text(VISITOR.to_owned()));
        Value::object(&[
            ("working", self.working.to_value()),
            ("whose", visitor.unwrap_or(Value::Null)),
        ])
    }

    fn from_value(mut value: Value) -> Option<Self> {
        Some(Self {
            visitor: value.take("whose").and_then(Value::into_text).as_deref() == Some(VISITOR),
            working: WorkingForm::from_value(value.take("working")?)?,
        })
    }
}

/// Marks an entry whose scenario came in a link.
const VISITOR: &str = "visitor";

impl Desk {
    /// Follows back and forward from now on.
    pub(super) fn keep_history(self) {
        self.mark_entry();
        window_event_listener(leptos::ev::popstate, move |event| {
            let raw = event.state().as_string();
            let value = raw.and_then(|raw| Value::read(&raw));
            if let Some(mark) = value.and_then(Mark::from_value) {
                self.return_to(&mark);
            }
        });
    }

    /// Writes what is shown, as it is now, into the present entry.
    pub(super) fn mark_entry(self) {
        share_link::mark_entry(&self.mark());
    }

    /// Begins a new entry for what is opened next.
    pub(super) fn begin_entry(self) {
        self.mark_entry();
        share_link::begin_entry();
    }

    fn mark(self) -> String {
        let state = self.state;
        let document = state.document.get_untracked();
        let working = state
            .checked
            .with_untracked(|checked| WorkingForm::new(&document, &checked.scenario));
        let mark = Mark {
            working,
            visitor: self.visitor.get_untracked(),
        };
        mark.to_value().written()
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
