//! What a file would add: each of its scenarios beside what is kept, and beside the others of the file.

use crate::format::UnitSystem;
use crate::storage::{Addition, Entry, copy_of};
use crate::text::files as words;
use crate::text::page;
use noonday_engine::scenario::file::{FileEntry, Filed};
use noonday_engine::scenario::{Scenario, to_link};

/// What becomes of one scenario of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Its name in the file.
    pub name: String,
    /// What is said of it.
    pub fate: String,
    /// What would be added, if it can be and is not kept already.
    pub addition: Option<Addition>,
}

/// What would become of each, in order. A scenario that is kept already to the last value is not added again; one that only has
/// the name of another gets a name of its own.
pub fn plan(entries: &[FileEntry], kept: &[Entry]) -> Vec<Line> {
    let mut names: Vec<String> = kept.iter().map(|entry| entry.name.clone()).collect();
    let mut forms: Vec<String> = kept.iter().map(|entry| entry.form.clone()).collect();
    entries
        .iter()
        .map(|entry| {
            let line = line(entry, shown_name(entry), (&names, &forms), kept.len());
            if let Some(addition) = &line.addition {
                names.push(addition.name.clone());
                forms.push(to_link(addition.scenario.document()));
            }
            line
        })
        .collect()
}

/// The name that the scenario has once it is read; of one that cannot be, what stands in the file.
fn shown_name(entry: &FileEntry) -> String {
    match &entry.read {
        Ok(filed) => page::shown_name(&filed.scenario.document().name),
        Err(_) => page::shown_name(entry.name.as_deref().unwrap_or_default()),
    }
}

fn line(
    entry: &FileEntry,
    name: String,
    (names, forms): (&[String], &[String]),
    kept: usize,
) -> Line {
    let without = |name, fate| Line {
        name,
        fate,
        addition: None,
    };
    let filed = match &entry.read {
        Ok(filed) => filed,
        Err(error) => return without(name, words::entry_error(error, UnitSystem::Metric)),
    };
    let form = to_link(filed.scenario.document());
    if let Some(same) = forms.iter().position(|other| *other == form) {
        let fate = match names.get(same) {
            Some(other) if same < kept => words::kept_already(other),
            _ => words::TWICE_IN_FILE.to_owned(),
        };
        return without(name, fate);
    }
    let addition = |name, scenario| Addition {
        name,
        saved_at: filed.saved.clone(),
        scenario,
    };
    if !names.contains(&name) {
        return Line {
            addition: Some(addition(name.clone(), filed.scenario.clone())),
            fate: words::NEW.to_owned(),
            name,
        };
    }
    let other = copy_of(&name, names);
    Line {
        fate: words::renamed(&other),
        addition: called(&other, filed).map(|scenario| addition(other, scenario)),
        name,
    }
}

/// The scenario under another name.
fn called(name: &str, filed: &Filed) -> Option<Scenario> {
    let mut document = filed.scenario.document().clone();
    document.name = name.to_owned();
    Scenario::new(document).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::file::{from_file, to_file};
    use noonday_engine::scenario::{ScenarioDocument, example};

    fn document(name: &str, wall_m: f64) -> ScenarioDocument {
        let mut document = example();
        document.name = name.to_owned();
        document.shell.wall_insulation_m = wall_m;
        document
    }

    fn kept(name: &str, wall_m: f64) -> Entry {
        Entry {
            name: page::shown_name(name),
            saved_at: String::new(),
            form: to_link(&document(name, wall_m)),
        }
    }

    fn of_file(documents: &[ScenarioDocument]) -> Vec<FileEntry> {
        let filed: Vec<Filed> = documents
            .iter()
            .map(|document| Filed {
                saved: None,
                scenario: Scenario::new(document.clone()).unwrap(),
            })
            .collect();
        from_file(&to_file(&filed)).unwrap()
    }

    fn added(lines: &[Line]) -> Vec<Option<&str>> {
        let name = |line| -> Option<&str> {
            let line: &Line = line;
            line.addition
                .as_ref()
                .map(|addition| addition.name.as_str())
        };
        lines.iter().map(name).collect()
    }

    #[test]
    fn nothing_kept_is_added_again_and_no_name_is_taken_twice() {
        let kept = [kept("van", 0.03), kept("van (2)", 0.04), kept("", 0.05)];
        let entries = of_file(&[
            document("van", 0.03),
            document("van", 0.06),
            document("van", 0.07),
            document("bus", 0.03),
            document("bus", 0.03),
            document("", 0.05),
            document("", 0.06),
        ]);
        let lines = plan(&entries, &kept);
        assert_eq!(
            added(&lines),
            [
                None,
                Some("van (3)"),
                Some("van (4)"),
                Some("bus"),
                None,
                None,
                Some("Without a name (2)"),
            ]
        );
        assert_eq!(lines[0].fate, words::kept_already("van"));
        assert_eq!(lines[4].fate, words::TWICE_IN_FILE);
        let renamed = lines[1].addition.as_ref().unwrap();
        assert_eq!(renamed.scenario.document(), &document("van (3)", 0.06));
    }

    #[test]
    fn a_name_as_long_as_can_be_still_gets_another() {
        let long = "m".repeat(60);
        let kept = [kept(&long, 0.03)];
        let lines = plan(&of_file(&[document(&long, 0.04)]), &kept);
        let name = &lines[0].addition.as_ref().unwrap().name;
        assert_eq!(name.chars().count(), 60);
        assert!(name.ends_with(" (2)"));
    }

    #[test]
    fn what_cannot_be_read_is_listed_with_the_reason() {
        let text = to_file(&[Filed {
            saved: None,
            scenario: Scenario::new(example()).unwrap(),
        }]);
        let broken = text.replace("\"ground\": \"asphalt\"", "\"ground\": \"ice\"");
        let lines = plan(&from_file(&broken).unwrap(), &[]);
        assert_eq!(added(&lines), [None]);
        assert_eq!(lines[0].name, example().name);
        assert!(lines[0].fate.contains("ice"), "{}", lines[0].fate);
    }
}
