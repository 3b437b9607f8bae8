//! Links that arrive while the page is open.

use super::Desk;
use super::start::damaged_link;
use crate::share_link;
use crate::state::Trail;
use crate::storage;
use leptos::prelude::*;
use noonday_engine::scenario::ScenarioDocument;
use std::time::Duration;

impl Desk {
    /// Opens links from now on. Of many that arrive at once, as only a program sends them, the last one is opened.
    pub(super) fn keep_links(self) {
        let waits = StoredValue::new(false);
        let open = move || {
            waits.set_value(false);
            self.link_arrived();
        };
        window_event_listener(leptos::ev::hashchange, move |_| {
            if !waits.get_value() {
                waits.set_value(true);
                set_timeout(open, Duration::ZERO);
            }
        });
    }

    fn link_arrived(self) {
        let Some(link) = share_link::fragment() else {
            return;
        };
        self.report.set(false);
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
        // A visitor that was changed is kept; one that was not can be had again from its link.
        let changed = self
            .arrived
            .with_value(|arrived| arrived.as_ref() != Some(&shown));
        if self.visitor.get_untracked() && changed {
            // Should it not be kept, that is told, and back leads to it.
            let _ = self.put_by(&shown);
        }
        self.arrived.set_value(Some(document.clone()));
        self.notice.set(None);
        self.show_visitor(document, Trail::default());
        self.mark_entry();
    }
}
