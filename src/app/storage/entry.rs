//! The form in which scenarios are stored, and how it is read back.

use crate::format::UnitSystem;
use crate::text::errors::{field_error_named, link_error};
use crate::text::page::shown_name;
use crate::text::storage as words;
use noonday_engine::quantity::sort_few;
use noonday_engine::scenario::{
    Kind, Scenario, ScenarioDocument, field, from_any_link, from_link, to_link,
};
use serde::{Deserialize, Serialize};

/// A saved scenario.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    /// Its name; empty where a working state was put by as it stood.
    #[serde(default)]
    pub name: String,
    /// When it was saved, ISO 8601; empty where that is not known.
    #[serde(default)]
    pub saved_at: String,
    /// The scenario in the form that links have.
    pub form: String,
}

/// The working state: the document, and while that cannot be run the last one that could.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WorkingForm {
    /// The document in the form that links have.
    pub form: String,
    /// The last document that could be run, if it is another.
    pub runnable: Option<String>,
}

impl WorkingForm {
    /// The form of a document whose last runnable state is given.
    pub fn new(document: &ScenarioDocument, runnable: &Scenario) -> Self {
        let differs = document != runnable.document();
        Self {
            form: to_link(document),
            runnable: differs.then(|| to_link(runnable.document())),
        }
    }
}

/// A scenario that is to be kept beside the others.
#[derive(Clone, Debug, PartialEq)]
pub struct Addition {
    /// Its name, which no other has.
    pub name: String,
    /// When it was saved, if that is known.
    pub saved_at: Option<String>,
    /// The scenario.
    pub scenario: Scenario,
}

/// A line of the list of saved scenarios.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Listed {
    /// A scenario that can be opened.
    Good {
        /// Its key.
        key: String,
        /// What is stored.
        entry: Entry,
    },
    /// Something that cannot be read: kept, and told why.
    Damaged {
        /// Its key.
        key: String,
        /// A clause that says why.
        why: String,
        /// What stands there.
        raw: String,
    },
}

/// Reads a scenario in any form that links have or had, whole and runnable.
///
/// # Errors
/// A clause that says what is wrong with it.
pub fn read_form(form: &str) -> Result<Scenario, String> {
    let document = from_any_link(form).map_err(|error| link_error(&error))?;
    Scenario::new(document).map_err(|errors| {
        let first = errors
            .first()
            .map(|error| field_error_named(error, UnitSystem::Metric, ""));
        words::cannot_run(&first.unwrap_or_default())
    })
}

/// Reads a working state: the document as edited, and the last one that could be run.
///
/// # Errors
/// A clause that says what is wrong with it.
pub fn read_working(stored: &WorkingForm) -> Result<(ScenarioDocument, Scenario), String> {
    let document = from_link(&stored.form).map_err(|error| link_error(&error))?;
    if let Ok(scenario) = Scenario::new(document.clone()) {
        return Ok((document, scenario));
    }
    let runnable = read_form(stored.runnable.as_deref().unwrap_or_default())?;
    Ok((document, runnable))
}

/// The list of saved scenarios, newest first, damaged ones last.
pub fn listed(pairs: Vec<(String, String)>) -> Vec<Listed> {
    let mut lines: Vec<Listed> = pairs
        .into_iter()
        .map(|(key, raw)| match read_entry(&raw) {
            Ok(entry) => Listed::Good { key, entry },
            Err(why) => Listed::Damaged { key, why, raw },
        })
        .collect();
    sort_few(&mut lines, |one, other| order(one) < order(other));
    lines
}

/// What is kept of a name: as much as there is room for, with something behind it.
pub fn kept_name<'a>(name: &'a str, behind: &str) -> &'a str {
    let room_bytes = match field("name").map(|field| &field.kind) {
        Some(Kind::Text(text)) => text.room_bytes,
        _ => name.len(),
    };
    let most = room_bytes.saturating_sub(behind.len());
    name.get(..name.floor_char_boundary(most))
        .unwrap_or_default()
}

/// A name for a copy that no other scenario has.
pub fn copy_of(name: &str, taken: &[String]) -> String {
    (2..)
        .map(|number| {
            let behind = words::copy_name("", number);
            words::copy_name(kept_name(name, &behind), number)
        })
        .find(|candidate| !taken.contains(candidate))
        .unwrap_or_default()
}

fn read_entry(raw: &str) -> Result<Entry, String> {
    let mut entry: Entry = serde_json::from_str(raw).map_err(|_| words::NOT_AN_ENTRY.to_owned())?;
    let scenario = read_form(&entry.form)?;
    if entry.name.is_empty() {
        entry.name = shown_name(&scenario.document().name);
    }
    Ok(entry)
}

fn order(line: &Listed) -> (bool, &str, &str) {
    match line {
        Listed::Good { key, entry } => (true, &entry.saved_at, key),
        Listed::Damaged { key, .. } => (false, "", key),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::example;

    fn stored(name: &str, saved_at: &str, form: &str) -> String {
        let entry = Entry {
            name: name.to_owned(),
            saved_at: saved_at.to_owned(),
            form: form.to_owned(),
        };
        serde_json::to_string(&entry).unwrap()
    }

    #[test]
    fn good_entries_come_newest_first_and_damaged_ones_last() {
        let lines = listed(vec![
            ("a".to_owned(), stored("old", "2026-01-01T00:00:00Z", "v=1")),
            ("b".to_owned(), "{rubbish".to_owned()),
            (
                "c".to_owned(),
                stored("new", "2026-02-01T00:00:00Z", "v=1&18=0.06"),
            ),
            (
                "d".to_owned(),
                stored("broken", "2026-03-01T00:00:00Z", "v=1&18=x"),
            ),
            (
                "e".to_owned(),
                stored("wild", "2026-03-01T00:00:00Z", "v=1&18=7"),
            ),
        ]);
        let key = |line: &Listed| match line {
            Listed::Good { key, .. } | Listed::Damaged { key, .. } => key.clone(),
        };
        let keys: Vec<String> = lines.iter().map(key).collect();
        assert_eq!(keys, ["c", "a", "e", "d", "b"]);
        let damaged: Vec<&Listed> = lines
            .iter()
            .filter(|line| matches!(line, Listed::Damaged { .. }))
            .collect();
        assert_eq!(damaged.len(), 3);
        match damaged[2] {
            Listed::Damaged { raw, .. } => assert_eq!(raw, "{rubbish"),
            Listed::Good { .. } => panic!("rubbish was read"),
        }
    }

    #[test]
    fn a_working_state_that_cannot_be_run_brings_the_last_that_could() {
        let runnable = Scenario::new(example()).unwrap();
        let mut document = example();
        document.shell.wall_insulation_m = 7.0;
        let form = WorkingForm::new(&document, &runnable);
        assert_eq!(read_working(&form), Ok((document, runnable.clone())));
        let form = WorkingForm::new(&example(), &runnable);
        assert_eq!(form.runnable, None);
        assert_eq!(read_working(&form), Ok((example(), runnable)));
    }

    #[test]
    fn a_working_state_that_was_put_by_as_it_stood_can_be_opened() {
        let runnable = Scenario::new(example()).unwrap();
        let raw = serde_json::to_string(&WorkingForm::new(&example(), &runnable)).unwrap();
        let lines = listed(vec![("a".to_owned(), raw)]);
        let Listed::Good { entry, .. } = &lines[0] else {
            panic!("it was not read");
        };
        assert_eq!((&entry.name, entry.form.as_str()), (&example().name, "v=1"));
    }

    #[test]
    fn damage_is_told_in_words() {
        assert!(read_form("v=1&18=7").unwrap_err().contains("150\u{a0}mm"));
        assert!(read_form("v=7").unwrap_err().contains("newer version"));
        assert!(
            read_form("v=1&60000=1")
                .unwrap_err()
                .contains("newer version")
        );
        assert!(!read_form("v=0").unwrap_err().contains("newer"));
    }

    #[test]
    fn copies_get_names_of_their_own() {
        let taken = ["van".to_owned(), "van (2)".to_owned()];
        assert_eq!(copy_of("van", &taken), "van (3)");
        let long = "é".repeat(30);
        assert_eq!(copy_of(&long, &[]), format!("{} (2)", "é".repeat(28)));
        assert_eq!(kept_name(&long, ""), long);
    }
}
