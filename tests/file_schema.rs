//! Files of scenarios: what is written validates against the published schema by a validator that is not ours, and what is broken is
//! refused by schema and reader alike.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a check that cannot read its schema has to fail"
)]

use jsonschema::Validator;
use noonday_engine::scenario::file::{EntryError, Filed, from_file, to_file};
use noonday_engine::scenario::{Problem, Scenario, example, from_link};
use noonday_tests::golden_path;
use noonday_tests::scenarios::{config, scenarios};
use proptest::prelude::*;
use serde_json::{Value, json};

fn schema() -> Validator {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../public/scenarios.schema.json"
    );
    let schema: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    jsonschema::draft202012::meta::validate(&schema).unwrap_or_else(|error| panic!("{error}"));
    jsonschema::draft202012::new(&schema).unwrap()
}

fn file_of(scenario: Scenario) -> String {
    let saved = Some("2026-07-21T10:00:00Z".to_owned());
    to_file(&[Filed { saved, scenario }])
}

fn example_file() -> Value {
    serde_json::from_str(&file_of(Scenario::new(example()).unwrap())).unwrap()
}

/// Why the reader refuses a file; nothing if it takes all of it.
fn refusal(text: &str) -> Option<String> {
    match from_file(text) {
        Err(error) => Some(format!("{error:?}")),
        Ok(entries) => entries
            .iter()
            .find_map(|entry| entry.read.as_ref().err().map(|error| format!("{error:?}"))),
    }
}

/// Whether a file is refused only for values at odds with one another or a day that does not exist, which no schema can say.
fn beyond_a_schema(text: &str) -> bool {
    from_file(text).is_ok_and(|entries| {
        entries.iter().all(|entry| match &entry.read {
            Ok(_) => true,
            Err(EntryError::Invalid(errors)) => errors.iter().all(|error| {
                !matches!(
                    error.problem,
                    Problem::NotFinite
                        | Problem::OutOfRange { .. }
                        | Problem::NotWhole { .. }
                        | Problem::TooLong { .. }
                        | Problem::UnknownVersion { .. }
                )
            }),
            Err(EntryError::Unreadable { path, .. }) => path == "day.date",
            Err(_) => false,
        })
    })
}

/// Every value in a JSON value by its pointer, objects and arrays included.
fn pointers(value: &Value) -> Vec<String> {
    fn walk(value: &Value, at: &str, found: &mut Vec<String>) {
        found.push(at.to_owned());
        match value {
            Value::Object(members) => members
                .iter()
                .for_each(|(name, value)| walk(value, &format!("{at}/{name}"), found)),
            Value::Array(items) => (0..)
                .zip(items)
                .for_each(|(index, value)| walk(value, &format!("{at}/{index}"), found)),
            _ => {}
        }
    }
    let mut found = Vec::new();
    walk(value, "", &mut found);
    found
}

/// Breaks a file at a place in one of a few ways; some of them leave it whole.
fn broken(mut file: Value, place: usize, way: u8) -> Value {
    let pointers = pointers(&file);
    let pointer = pointers[place % pointers.len()].clone();
    if way == 0 {
        let (parent, name) = pointer.rsplit_once('/').unwrap_or_default();
        match file.pointer_mut(parent) {
            Some(Value::Object(members)) => drop(members.remove(name)),
            Some(Value::Array(items)) => drop(items.pop()),
            _ => {}
        }
        return file;
    }
    let value = file.pointer_mut(&pointer).unwrap();
    match (way, &mut *value) {
        (1, Value::Object(members)) => drop(members.insert("surplus".to_owned(), json!(1))),
        (1, Value::Array(items)) => items.push(json!({})),
        (1, Value::String(text)) => text.push_str(&"x".repeat(300)),
        (1, number) => *number = json!(1e9),
        (2, _) => *value = Value::Null,
        (3, _) => *value = json!("surplus"),
        (4, _) => *value = json!(0.5),
        (5, _) => *value = json!(-1e6),
        (6, _) => *value = json!([]),
        (7, _) => *value = json!({}),
        (8, _) => *value = json!(true),
        (_, _) => *value = json!(2),
    }
    file
}

#[test]
fn example_and_old_links_written_as_files_validate() {
    let schema = schema();
    let links = std::fs::read_to_string(golden_path("links_v1.txt")).unwrap();
    let links = links.lines().filter(|line| line.starts_with("v="));
    let mut count = 0;
    for link in links.chain(["v=1"]) {
        let scenario = Scenario::new(from_link(link).unwrap()).unwrap();
        let text = file_of(scenario);
        let file: Value = serde_json::from_str(&text).unwrap();
        schema
            .validate(&file)
            .unwrap_or_else(|error| panic!("{link}: {error} at {}", error.instance_path()));
        assert_eq!(refusal(&text), None);
        count += 1;
    }
    assert!(count > 10);
}

/// The smallest file: every value is the default of its version.
#[test]
fn a_file_may_name_only_what_differs() {
    let file = json!({
        "format": "noonday-scenarios",
        "version": 1,
        "scenarios": [{ "document": { "version": 1, "shell": { "wall_insulation_m": 0.05 } } }],
    });
    assert!(schema().is_valid(&file));
    assert_eq!(refusal(&file.to_string()), None);
}

/// Each kind of mistake once, at a place where it is one.
#[test]
fn schema_and_reader_refuse_the_same_mistakes() {
    let schema = schema();
    for (pointer, value) in [
        ("/format", json!("other")),
        ("/version", json!(2)),
        ("/scenarios", json!({})),
        ("/scenarios/0/saved", json!("yesterday")),
        ("/scenarios/0/document/version", json!(2)),
        ("/scenarios/0/document/name", json!("x".repeat(61))),
        (
            "/scenarios/0/document/shell/wall_insulation_m",
            json!(0.151),
        ),
        (
            "/scenarios/0/document/shell/wall_insulation_m",
            json!("0.1"),
        ),
        (
            "/scenarios/0/document/shell/insulation_material",
            json!("feathers"),
        ),
        ("/scenarios/0/document/occupants/people", json!(1.5)),
        ("/scenarios/0/document/place/summer_time", json!(1)),
        ("/scenarios/0/document/day/date/month", json!(13)),
        ("/scenarios/0/document/need/windows", json!({})),
        ("/scenarios/0/document/starting/vehicle", json!("airship")),
    ] {
        let mut file = example_file();
        *file.pointer_mut(pointer).unwrap() = value.clone();
        assert!(!schema.is_valid(&file), "{pointer} {value}");
        assert!(refusal(&file.to_string()).is_some(), "{pointer} {value}");
    }
}

proptest! {
    #![proptest_config(config(400))]

    /// Whatever can be run can be written, validates, and reads back to the bit.
    #[test]
    fn random_scenarios_validate_and_return(drawn in scenarios(7.0)) {
        let text = file_of(drawn.0.clone());
        let file: Value = serde_json::from_str(&text).unwrap();
        prop_assert!(schema().is_valid(&file));
        let read = from_file(&text).unwrap().remove(0).read;
        prop_assert_eq!(read.map(|filed| filed.scenario), Ok(drawn.0));
    }
}

proptest! {
    #![proptest_config(config(4_000))]

    /// Broken at two places at random: what the schema refuses the reader refuses, and the other way round but for what a schema
    /// cannot say.
    #[test]
    fn schema_and_reader_agree_on_broken_files(
        places in [any::<u16>(), any::<u16>()],
        ways in [0_u8..10, 0_u8..10],
    ) {
        thread_local! {
            static SCHEMA: (Validator, Value) = (schema(), example_file());
        }
        let (accepted, text) = SCHEMA.with(|(schema, file)| {
            let once = broken(file.clone(), places[0].into(), ways[0]);
            let twice = broken(once, places[1].into(), ways[1]);
            (schema.is_valid(&twice), twice.to_string())
        });
        let refused = refusal(&text);
        if accepted {
            prop_assert!(refused.is_none() || beyond_a_schema(&text), "{:?}", refused);
        } else {
            prop_assert!(refused.is_some(), "{}", text);
        }
    }

    /// No text makes the reader panic, nor one that was damaged on its way.
    #[test]
    fn no_text_is_too_much(place in any::<prop::sample::Index>(), rubbish in ".{0,40}", cut in any::<bool>()) {
        thread_local! {
            static TEXT: String = file_of(Scenario::new(example()).unwrap());
        }
        let damaged = TEXT.with(|text| {
            let places: Vec<usize> = text.char_indices().map(|(place, _)| place).collect();
            let (before, after) = text.split_at(places[place.index(places.len())]);
            let after = if cut { "" } else { after.get(rubbish.len()..).unwrap_or_default() };
            format!("{before}{rubbish}{after}")
        });
        drop(from_file(&damaged));
        drop(from_file(&rubbish));
    }
}
