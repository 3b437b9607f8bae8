//! The log as it is kept, and the fit that is made of it beside the page.

use crate::desk::{Desk, SAVING};
use crate::live::derived;
use crate::state::AppState;
use crate::storage::{self, StorageTrouble, Stored, Watched};
use crate::text::proving as text;
use crate::text::storage::DAMAGED_LOG;
use crate::worker::{Answer, Asker, Extent, Found, Lesson, Request};
use leptos::prelude::*;
use noonday_engine::advice::learning::{Assumed, Learned, Learning, Log, read_log};
use noonday_engine::scenario::{Scenario, ScenarioDocument, to_link};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// What the browser keeps of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub(super) struct Kept {
    pub(super) text: String,
    pub(super) assumed: Assumed,
}

impl Kept {
    fn empty() -> Self {
        Self {
            text: String::new(),
            assumed: Assumed::USUAL,
        }
    }
}

/// How far the fit is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Phase {
    Idle,
    Working(f64),
    Done,
    Stopped,
    Refused,
    Failed,
    Unavailable,
}

/// The log, its fit, and what became of it.
#[derive(Clone, Copy)]
pub(super) struct Teaching {
    pub(super) state: AppState,
    desk: Desk,
    /// What stands in storage, as far as this tab knows.
    log: StoredValue<Watched>,
    /// What writes it there once it rests.
    waiting: StoredValue<Option<TimeoutHandle>>,
    pub(super) kept: RwSignal<Kept>,
    pub(super) phase: RwSignal<Phase>,
    /// What was found, and of which scenario.
    pub(super) learned: RwSignal<Option<Arc<(Scenario, Learned)>>>,
    /// Why a file was not taken.
    pub(super) refused_file: RwSignal<Option<String>>,
    /// The document that the fitted values made.
    pub(super) adopted: RwSignal<Option<ScenarioDocument>>,
    asker: Asker,
    of: StoredValue<Option<Scenario>>,
}

impl Teaching {
    /// Begins with what the browser kept.
    pub(super) fn new() -> Self {
        let (desk, mut log) = (expect_context::<Desk>(), Watched::new(storage::LOG));
        let (kept, damage) = match storage::read(storage::LOG) {
            Stored::Value(kept) => (kept, None),
            Stored::Nothing => (Kept::empty(), None),
            Stored::Unreadable(raw) => {
                if !desk.put_by_log(&raw) {
                    // With no room to put it by, it must not be written over either.
                    log = Watched::unknown(storage::LOG);
                }
                (Kept::empty(), Some(DAMAGED_LOG.to_owned()))
            }
        };
        let teaching = Self {
            desk,
            log: StoredValue::new(log),
            waiting: StoredValue::new(None),
            state: expect_context::<AppState>(),
            kept: RwSignal::new(kept),
            phase: RwSignal::new(Phase::Idle),
            learned: RwSignal::new(None),
            refused_file: RwSignal::new(damage),
            adopted: RwSignal::new(None),
            asker: Asker::new(),
            of: StoredValue::new(None),
        };
        window_event_listener_untyped("pagehide", move |_| {
            if teaching.waiting.get_value().is_some() {
                teaching.write();
            }
        });
        teaching
    }

    /// Changes the log or what is taken of it; a fit of what it was is given up.
    pub(super) fn change(self, change: impl FnOnce(&mut Kept)) {
        self.kept.update(change);
        self.refused_file.set(None);
        self.learned.set(None);
        if let Phase::Working(_) = self.phase.get_untracked() {
            self.ask(Extent::Nothing);
        }
        self.phase.set(Phase::Idle);
        if let Some(handle) = self.waiting.get_value() {
            handle.clear();
        }
        let later = set_timeout_with_handle(move || self.write(), SAVING);
        self.waiting.set_value(later.ok());
    }

    /// Keeps the log; what another tab has put there since is put by.
    fn write(self) {
        self.waiting.set_value(None);
        // A text and a few numbers can always be written.
        let text = self.kept.with_untracked(serde_json::to_string);
        let text = text.unwrap_or_default();
        let foreign = self.log.with_value(|log| log.foreign(&text));
        if foreign.is_some_and(|raw| !self.desk.put_by_log(&raw)) {
            return;
        }
        let mut written = Ok(());
        self.log.update_value(|log| written = log.write(text));
        // Without storage the log lasts as long as the page, as everything else does then, which the page says elsewhere.
        if written == Err(StorageTrouble::Full) {
            self.desk.report(written);
        }
    }

    /// What the log holds, or why it cannot be fitted; nothing of an empty box. The text is read anew when it changes, and only
    /// held against the scenario when that does.
    pub(super) fn read(self) -> Memo<Option<Result<Log, String>>> {
        let log = derived(move || {
            self.kept.with(|kept| {
                let given = !kept.text.trim().is_empty();
                given.then(|| {
                    let log = read_log(&kept.text, &kept.assumed.unsaid);
                    log.map_err(|error| text::log_error(&error))
                })
            })
        });
        derived(move || {
            let log = log.get()?;
            Some(log.and_then(|log| self.begun(&log).map(|()| log)))
        })
    }

    /// Whether a fit to a log can begin, or why not.
    fn begun(self, log: &Log) -> Result<(), String> {
        let assumed = self.kept.with(|kept| kept.assumed);
        let checked = self.state.checked;
        let begun = checked.with(|checked| Learning::new(&checked.scenario, log, &assumed));
        begun
            .map(|_| ())
            .map_err(|error| text::learning_error(&error))
    }

    /// Begins the fit.
    pub(super) fn fit(self) {
        self.learned.set(None);
        self.adopted.set(None);
        let scenario = self
            .state
            .checked
            .with_untracked(|checked| checked.scenario.clone());
        self.of.set_value(Some(scenario));
        self.ask(Extent::Everything);
    }

    /// Gives it up.
    pub(super) fn stop(self) {
        self.ask(Extent::Nothing);
        self.phase.set(Phase::Stopped);
    }

    /// Puts the fitted values into the scenario as it is now, with a way back.
    pub(super) fn adopt(self) {
        let Some(found) = self.learned.get_untracked() else {
            return;
        };
        let mut document = self.state.document.get_untracked();
        found.1.apply(&mut document);
        self.state.exchange(document);
        self.adopted.set(Some(self.state.document.get_untracked()));
    }

    fn ask(self, extent: Extent) {
        let link = self.of.with_value(|of| {
            of.as_ref()
                .map_or_else(String::new, |of| to_link(of.document()))
        });
        let lesson = self.kept.with_untracked(|kept| Lesson {
            text: kept.text.clone(),
            assumed: kept.assumed,
        });
        let request = Request {
            lesson: (extent == Extent::Everything).then_some(lesson),
            ..Request::new(extent, link)
        };
        let asked = self.asker.ask(
            request,
            move |answer| self.take(answer),
            move || self.fail(),
        );
        self.phase.set(if asked {
            Phase::Working(0.0)
        } else {
            Phase::Unavailable
        });
    }

    /// The worker has ended by itself: another begins with the next fit, unless that has been tried.
    fn fail(self) {
        self.phase.set(if self.asker.has_ended_again() {
            Phase::Unavailable
        } else {
            Phase::Failed
        });
    }

    fn take(self, answer: Answer) {
        let waiting = matches!(self.phase.get_untracked(), Phase::Working(_));
        if !self.asker.is_to_last(&answer) || !waiting {
            return;
        }
        match answer.found {
            Found::Learned(learned) => {
                let of = self.of.with_value(Option::clone);
                self.learned.set(of.map(|of| Arc::new((of, *learned))));
                self.asker.has_brought();
                self.phase.set(Phase::Done);
            }
            Found::Refused => self.phase.set(Phase::Refused),
            _ => self.phase.set(Phase::Working(answer.progress)),
        }
    }
}
