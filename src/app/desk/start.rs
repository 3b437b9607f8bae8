//! What the page starts from: storage, address, and the example.

use super::Notice;
use super::history::Mark;
use crate::format::{UnitSystem, speak};
use crate::share_link;
use crate::storage::{self, StorageTrouble, Stored, UNITS, VISIT, WORKING, Watched, WorkingForm};
use crate::text::storage as words;
use noonday_engine::advice::{Advice, advise};
use noonday_engine::scenario::{Scenario, ScenarioDocument, example};

/// What the page starts from.
pub struct Start {
    /// What is shown.
    pub(super) document: ScenarioDocument,
    /// The last state of it that could be run, and its advice.
    pub(super) runnable: (Scenario, Advice),
    /// Units shown.
    pub(super) units: UnitSystem,
    /// What is one's own.
    pub(super) own: ScenarioDocument,
    /// Whether what is shown came in a link.
    pub(super) visitor: bool,
    /// What the link held with which the page was opened.
    pub(super) arrived: Option<ScenarioDocument>,
    /// What stands in storage as one's own.
    pub(super) working: Watched,
    /// What has to be said first.
    pub(super) notice: Option<Notice>,
}

impl Start {
    /// Reads storage and address; from then on numbers and dates are written as in the browser's language.
    pub fn read() -> Option<Self> {
        let language = web_sys::window().and_then(|window| window.navigator().language());
        let language = language.unwrap_or_default();
        speak(&language);
        let (mut own, mut notice) = (read_kept(WORKING), None);
        let mut working = Watched::new(WORKING);
        if let Some((why, raw)) = own.damage.take() {
            if storage::put_by_raw(&raw).is_err() {
                // With no room to put it by, it must not be written over either.
                working = Watched::unknown(WORKING);
            }
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
            units: read_units(&language),
            visitor: false,
            arrived: None,
            working,
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
                self.arrived = Some(document.clone());
                self.show_visitor(document, scenario);
            }
            Err(why) => self.notice = Some(damaged_link(&why, link)),
        }
    }

    fn take_visit(&mut self) {
        // After a reload it is known what this tab showed, whatever others have shown since.
        let kept = match Mark::read() {
            Some(mark) if !mark.visitor => return,
            Some(mark) => Kept {
                found: storage::read_working(&mark.working).ok(),
                damage: None,
            },
            None => read_kept(VISIT),
        };
        if let Some((document, runnable)) = kept.found {
            self.show_visitor(document, runnable);
        }
        if let Some((why, raw)) = kept.damage {
            self.notice.get_or_insert(Notice {
                text: words::damaged_visit(&why),
                raw: Some(raw),
                undo: None,
            });
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

/// Puts by what stands as a visit and cannot be read, so that another can be written there.
pub(super) fn put_by_damaged_visit() -> Result<(), StorageTrouble> {
    match read_kept(VISIT).damage {
        Some((_, raw)) => storage::put_by_raw(&raw),
        None => Ok(()),
    }
}

/// The units remembered, or else the first guess from the browser's language.
fn read_units(language: &str) -> UnitSystem {
    let remembered = match storage::read::<String>(UNITS) {
        Stored::Value(name) => UnitSystem::from_name(&name),
        Stored::Nothing | Stored::Unreadable(_) => None,
    };
    remembered.unwrap_or_else(|| UnitSystem::from_language(language))
}

/// What is said of a link that cannot be opened.
pub(super) fn damaged_link(why: &str, link: &str) -> Notice {
    Notice {
        text: words::damaged_link(why),
        raw: Some(link.to_owned()),
        undo: None,
    }
}
