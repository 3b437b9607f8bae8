//! What the page knows: one document, and everything derived from it.
//!
//! The document is the one signal that holds the consult; checking, advice and words are memos of it. Effects elsewhere
//! only save, write the address and draw.

mod edits;
mod trail;

pub use trail::Trail;

use crate::format::{Typed, UnitSystem, parse_clock, parse_number, unit};
use crate::text::{Voice, errors};
use leptos::prelude::*;
use noonday_engine::advice::sampling::Sampled;
use noonday_engine::advice::{Advice, LeverEffect, advise, advise_coarsely};
use noonday_engine::scenario::starting_points::baseline;
use noonday_engine::scenario::{
    Dimension, Field, FieldError, Kind, Scenario, ScenarioDocument, field,
};
use std::sync::Arc;
use std::time::Duration;

/// How long the inputs rest before the answer is announced and single changes are tried.
const SETTLING: Duration = Duration::from_millis(600);

/// Texts as typed, by field key: those being typed, and those that cannot be run. There are never more than a few.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedTexts(Vec<(&'static str, String)>);

impl TypedTexts {
    /// The text typed into a field.
    pub fn get(&self, key: &str) -> Option<&String> {
        self.0
            .iter()
            .find(|(of, _)| *of == key)
            .map(|(_, text)| text)
    }

    /// Whether nothing typed is waiting.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    fn insert(&mut self, key: &'static str, text: String) {
        self.remove(key);
        self.0.push((key, text));
    }

    fn remove(&mut self, key: &str) {
        self.0.retain(|(of, _)| *of != key);
    }
}

/// A document checked: the last state that could be run, and why the present one cannot, if it cannot.
#[derive(Clone, Debug, PartialEq)]
pub struct Checked {
    /// The last state that could be run.
    pub scenario: Scenario,
    /// Why the document cannot be run; empty when it can.
    pub errors: Vec<FieldError>,
}

/// The runs of the last state that could be run.
#[derive(Clone, Debug, PartialEq)]
struct Outcome {
    advice: Arc<Advice>,
    /// Whether the engine refused the present state, which no checked document should make it do.
    refused: bool,
    /// Whether it was run in coarse steps, because a slider was held.
    coarse: bool,
}

/// An entry that cannot be run, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trouble {
    /// Key of the field.
    pub key: &'static str,
    /// Why, without the name of the field.
    pub why: String,
}

/// A state kept to compare with, and what became of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Pinned {
    /// The scenario.
    pub scenario: Scenario,
    /// Its runs and verdict.
    pub advice: Arc<Advice>,
}

/// The signals of the page.
#[derive(Clone, Copy)]
pub struct AppState {
    /// The consult as edited.
    pub document: RwSignal<ScenarioDocument>,
    /// How it came to be so.
    pub trail: RwSignal<Trail>,
    /// What the inputs are put back to: the example, or the starting points picked.
    pub meant: Memo<ScenarioDocument>,
    /// Texts as typed.
    pub typed: RwSignal<TypedTexts>,
    /// Whether a slider is held: until it is let go, the run takes coarse steps and what is out of sight waits.
    pub held: RwSignal<bool>,
    /// Key of the field in which somebody is typing.
    pub typing: RwSignal<Option<&'static str>>,
    /// Units shown.
    pub units: RwSignal<UnitSystem>,
    /// The document checked.
    pub checked: Memo<Checked>,
    /// Every entry that cannot be run.
    pub troubles: Memo<Vec<Trouble>>,
    /// Runs and verdict of the last state that could be run.
    pub advice: Memo<Arc<Advice>>,
    /// How the page speaks of that state.
    pub voice: Memo<Voice>,
    /// The state at which the inputs last rested.
    pub settled: RwSignal<Option<Scenario>>,
    /// What single changes would do to that state, best first, once it is known.
    pub effects: RwSignal<Option<Vec<LeverEffect>>>,
    /// How far such days may differ, once it is known of the state shown.
    pub sampled: RwSignal<Option<Arc<Sampled>>>,
    /// A state kept to compare with.
    pub pinned: RwSignal<Option<Arc<Pinned>>>,
    /// Index of the sample that the cursor reads, once somebody has moved it.
    pub cursor: RwSignal<Option<usize>>,
}

impl AppState {
    /// Starts from a document, the last state that could be run with its advice, and units.
    pub fn new(
        document: ScenarioDocument,
        (runnable, advice): (Scenario, Advice),
        units: UnitSystem,
    ) -> Self {
        let document = RwSignal::new(document);
        let typed = RwSignal::new(TypedTexts::default());
        let typing = RwSignal::new(None);
        let units = RwSignal::new(units);
        let started = runnable.clone();
        let checked = Memo::new(move |before: Option<&Checked>| {
            let last = before.map_or(&runnable, |before| &before.scenario);
            check(document.get(), last)
        });
        let scenario = Memo::new(move |_| checked.with(|checked| checked.scenario.clone()));
        let first = Outcome {
            advice: Arc::new(advice),
            refused: false,
            coarse: false,
        };
        let held = RwSignal::new(false);
        let outcome = Memo::new(move |before: Option<&Outcome>| {
            // To take hold of a slider changes nothing; to let it go is followed by a run in full.
            let coarse = held.get_untracked();
            if coarse {
                held.track();
            }
            scenario.with(|scenario| match before {
                // What was run to start from need not be run again.
                None if *scenario == started => first.clone(),
                before => outcome(scenario, coarse, &before.unwrap_or(&first).advice),
            })
        });
        let settled = RwSignal::new(None);
        let picks = Memo::new(move |_| document.with(|document| document.starting.clone()));
        let state = Self {
            document,
            meant: Memo::new(move |_| picks.with(baseline)),
            trail: RwSignal::new(Trail::default()),
            typed,
            held,
            typing,
            units,
            checked,
            troubles: Memo::new(move |_| {
                let currency = document.with(|document| document.prices.currency.clone());
                let texts = typed.get();
                let spoken = (units.get(), currency.as_str());
                let mut found =
                    checked.with(|checked| troubles(checked, &texts, typing.get(), spoken));
                if outcome.with(|outcome| outcome.refused) {
                    found.push(Trouble {
                        key: "",
                        why: errors::REFUSED.to_owned(),
                    });
                }
                found
            }),
            advice: Memo::new(move |_| outcome.with(|outcome| outcome.advice.clone())),
            voice: Memo::new(move |_| {
                scenario.with(|scenario| Voice::new(scenario.document(), units.get()))
            }),
            settled,
            effects: RwSignal::new(None),
            sampled: RwSignal::new(None),
            pinned: RwSignal::new(None),
            cursor: RwSignal::new(None),
        };
        settle(scenario, settled, state.trail);
        state
    }

    /// The state for a part of the page that may be out of sight: there it waits while a slider is held.
    pub fn as_seen(self, seen: RwSignal<bool>) -> Self {
        let waits = move || self.held.get() && !seen.get();
        Self {
            advice: Memo::new(move |before: Option<&Arc<Advice>>| match before {
                Some(before) if waits() => before.clone(),
                _ => self.advice.get(),
            }),
            checked: Memo::new(move |before: Option<&Checked>| match before {
                Some(before) if waits() => before.clone(),
                _ => self.checked.get(),
            }),
            ..self
        }
    }
}

/// Reads a text typed into a number field, in the shown unit.
pub fn read_typed(field: &Field, text: &str, units: UnitSystem, currency: &str) -> Typed {
    match &field.kind {
        Kind::Number(number) if number.dimension == Dimension::HourOfDay => parse_clock(text),
        Kind::Number(number) => {
            let symbol = unit(number.dimension, units).label(currency);
            parse_number(text, &symbol)
        }
        // Only texts that could not be read are kept of other fields.
        _ => Typed::NotANumber,
    }
}

fn check(document: ScenarioDocument, last: &Scenario) -> Checked {
    match Scenario::new(document) {
        Ok(scenario) => Checked {
            scenario,
            errors: Vec::new(),
        },
        Err(errors) => Checked {
            scenario: last.clone(),
            errors,
        },
    }
}

/// Every entry that cannot be run; a text that has only just been begun is no trouble yet.
fn troubles(
    checked: &Checked,
    texts: &TypedTexts,
    typing: Option<&str>,
    (units, currency): (UnitSystem, &str),
) -> Vec<Trouble> {
    let unreadable = texts.0.iter().filter_map(|(key, text)| {
        let field = field(key)?;
        let begun = typing == Some(*key);
        match read_typed(field, text, units, currency) {
            Typed::Value(_) => None,
            Typed::Unfinished if begun => None,
            Typed::Unfinished | Typed::NotANumber => Some(Trouble {
                key,
                why: errors::not_a_number(field, units, currency),
            }),
        }
    });
    let mut found: Vec<Trouble> = unreadable.collect();
    for error in &checked.errors {
        if !found.iter().any(|trouble| trouble.key == error.key) {
            found.push(Trouble {
                key: error.key,
                why: errors::field_error(error, units, currency),
            });
        }
    }
    found
}

fn outcome(scenario: &Scenario, coarse: bool, last: &Arc<Advice>) -> Outcome {
    let run = if coarse { advise_coarsely } else { advise };
    let found = run(scenario).ok().map(Arc::new);
    Outcome {
        refused: found.is_none(),
        advice: found.unwrap_or_else(|| last.clone()),
        coarse,
    }
}

/// Copies the state to `settled` once it has rested, and ends the step that led to it.
fn settle(scenario: Memo<Scenario>, settled: RwSignal<Option<Scenario>>, trail: RwSignal<Trail>) {
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move |_| {
        let now = scenario.get();
        if let Some(handle) = waiting.get_value() {
            handle.clear();
        }
        let later = move || {
            settled.set(Some(now));
            trail.update_untracked(Trail::rest);
        };
        waiting.set_value(set_timeout_with_handle(later, SETTLING).ok());
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::example;

    fn runnable() -> Scenario {
        Scenario::new(example()).unwrap()
    }

    #[test]
    fn a_document_that_cannot_be_run_keeps_the_last_state_that_could() {
        let last = runnable();
        let mut document = example();
        document.shell.wall_insulation_m = 9.0;
        let checked = check(document, &last);
        assert_eq!(checked.scenario, last);
        assert_eq!(checked.errors[0].key, "shell.wall_insulation_m");
    }

    #[test]
    fn a_text_that_is_no_number_is_in_trouble_though_the_document_is_not() {
        let checked = check(example(), &runnable());
        let texts = TypedTexts(vec![("shell.wall_insulation_m", "abc".to_owned())]);
        let spoken = (UnitSystem::Metric, "USD");
        let found = troubles(&checked, &texts, None, spoken);
        assert_eq!(found.len(), 1);
        assert!(found[0].why.contains("150\u{a0}mm"), "{}", found[0].why);
        let texts = TypedTexts(vec![("shell.wall_insulation_m", "55".to_owned())]);
        assert_eq!(troubles(&checked, &texts, None, spoken), []);
    }

    #[test]
    fn an_empty_box_is_in_trouble_only_once_it_is_left() {
        let checked = check(example(), &runnable());
        let key = "shell.wall_insulation_m";
        let texts = TypedTexts(vec![(key, String::new())]);
        let spoken = (UnitSystem::Metric, "USD");
        assert_eq!(troubles(&checked, &texts, Some(key), spoken), []);
        assert_eq!(troubles(&checked, &texts, None, spoken).len(), 1);
    }

    #[test]
    fn hours_are_read_by_the_clock() {
        let hour = field("cooler.run_from_hour").unwrap();
        assert_eq!(
            read_typed(hour, "10:30 pm", UnitSystem::Metric, "USD"),
            Typed::Value(22.5)
        );
        let insulation = field("shell.wall_insulation_m").unwrap();
        assert_eq!(
            read_typed(insulation, "2 in", UnitSystem::Us, "USD"),
            Typed::Value(2.0)
        );
    }
}
