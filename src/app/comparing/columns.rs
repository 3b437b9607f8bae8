//! What can be compared, and the columns that are: each run where it stands, a few milliseconds, and no text twice.

use super::{AT_FIRST, Comparing};
use crate::format::{date, parse_date};
use crate::storage::{self, Entry, Listed};
use crate::text::{comparing as text, page, storage as stored};
use leptos::prelude::*;
use noonday_engine::advice::weight::{Weight, weight};
use noonday_engine::advice::{Advice, advise};
use noonday_engine::scenario::{Scenario, ScenarioDocument, example};
use noonday_engine::simulation::Series;
use std::sync::Arc;

/// What can be compared.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Choice {
    /// What is on the page.
    Shown,
    /// One's own while a visitor is shown.
    Own,
    /// The example.
    Example,
    /// A line of the saved ones, by its key.
    Saved(String),
}

/// A choice as it is listed.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Candidate {
    pub(super) choice: Choice,
    pub(super) name: String,
    pub(super) which: String,
}

/// A scenario that was run.
#[derive(Clone, Debug)]
pub(super) struct Ran {
    pub(super) scenario: Scenario,
    pub(super) advice: Arc<Advice>,
    pub(super) weight: Weight,
}

impl Ran {
    fn of(scenario: Scenario) -> Result<Self, String> {
        let advice = advise(&scenario).map_err(|_| stored::cannot_run(""))?;
        Ok(Self::with(scenario, Arc::new(advice)))
    }

    fn with(scenario: Scenario, advice: Arc<Advice>) -> Self {
        Self {
            weight: weight(scenario.document()),
            scenario,
            advice,
        }
    }

    pub(super) fn series(&self) -> &Series {
        &self.advice.with_cooler.series
    }
}

/// A column: what stands in it, or why it cannot.
pub(super) struct Column {
    pub(super) place: usize,
    pub(super) letter: char,
    pub(super) candidate: Candidate,
    pub(super) ran: Result<Arc<Ran>, String>,
}

/// Runs of stored texts, so that none is made twice.
pub(super) type Kept = Vec<(String, Result<Arc<Ran>, String>)>;

impl Comparing {
    /// Everything that can be chosen: what is shown, what is saved, the example.
    pub(super) fn candidates(self) -> Vec<Candidate> {
        let candidate = |choice, name: &str, which: &str| Candidate {
            choice,
            name: page::shown_name(name),
            which: which.to_owned(),
        };
        let shown = self.state.document.with(|document| document.name.clone());
        let mut all = vec![candidate(Choice::Shown, &shown, text::SHOWN)];
        if let Some(own) = self.desk.own_beside_visitor() {
            all.push(candidate(Choice::Own, &own.name, text::OWN));
        }
        self.desk
            .saved
            .with(|lines| all.extend(lines.iter().map(saved)));
        all.push(candidate(Choice::Example, &example().name, text::EXAMPLE));
        all
    }

    pub(super) fn first_choice(self) -> Vec<Choice> {
        let all = self.candidates().into_iter();
        all.take(AT_FIRST)
            .map(|candidate| candidate.choice)
            .collect()
    }

    /// The columns in the order of the list, each run unless it was before.
    pub(super) fn columns(self) -> Vec<Column> {
        let mut all = self.candidates();
        self.chosen
            .with(|chosen| all.retain(|candidate| chosen.contains(&candidate.choice)));
        let before = self.kept.get_value();
        let mut kept: Kept = Vec::new();
        let columns = all
            .into_iter()
            .zip(['A', 'B', 'C', 'D'])
            .enumerate()
            .map(|(place, (candidate, letter))| {
                let ran = match &candidate.choice {
                    Choice::Shown => Ok(Arc::new(self.ran_here())),
                    Choice::Own => self.run_document(self.desk.own_beside_visitor()),
                    Choice::Example => self.run_document(Some(example())),
                    Choice::Saved(key) => {
                        let (form, ran) = self.run_saved(key, &before);
                        kept.push((form, ran.clone()));
                        ran
                    }
                };
                Column {
                    place,
                    letter,
                    candidate,
                    ran,
                }
            })
            .collect();
        self.kept.set_value(kept);
        columns
    }

    fn ran_here(self) -> Ran {
        let scenario = self.state.checked.with(|checked| checked.scenario.clone());
        Ran::with(scenario, self.state.advice.get())
    }

    fn run_document(self, document: Option<ScenarioDocument>) -> Result<Arc<Ran>, String> {
        let scenario = document.and_then(|document| Scenario::new(document).ok());
        let scenario = scenario.ok_or_else(|| stored::cannot_run(""))?;
        Ran::of(scenario).map(Arc::new)
    }

    fn run_saved(self, key: &str, before: &Kept) -> (String, Result<Arc<Ran>, String>) {
        let found = self.desk.saved.with(|lines| {
            lines.iter().find_map(|line| match line {
                Listed::Good { key: found, entry } if found == key => Some(Ok(entry.form.clone())),
                Listed::Damaged {
                    key: found, why, ..
                } if found == key => Some(Err(why.clone())),
                _ => None,
            })
        });
        let form = match found {
            Some(Ok(form)) => form,
            Some(Err(why)) => return (String::new(), Err(why)),
            None => return (String::new(), Err(stored::NOT_AN_ENTRY.to_owned())),
        };
        if let Some((_, ran)) = before.iter().find(|(known, _)| *known == form) {
            return (form, ran.clone());
        }
        let ran = storage::read_form(&form).and_then(Ran::of).map(Arc::new);
        (form, ran)
    }
}

fn saved(line: &Listed) -> Candidate {
    match line {
        Listed::Good { key, entry } => Candidate {
            choice: Choice::Saved(key.clone()),
            name: entry.name.clone(),
            which: stored::saved_at(&day_of(entry)),
        },
        Listed::Damaged { key, raw, .. } => Candidate {
            choice: Choice::Saved(key.clone()),
            name: serde_json::from_str::<Entry>(raw)
                .map_or_else(|_| text::UNNAMED.to_owned(), |entry| entry.name),
            which: String::new(),
        },
    }
}

fn day_of(entry: &Entry) -> String {
    let day = entry.saved_at.get(..10).unwrap_or_default();
    parse_date(day).map_or_else(|| day.to_owned(), date)
}

/// Those columns that were run.
pub(super) fn columns_run(columns: &[Column]) -> Vec<(char, Arc<Ran>)> {
    columns
        .iter()
        .filter_map(|column| Some((column.letter, column.ran.as_ref().ok()?.clone())))
        .collect()
}
