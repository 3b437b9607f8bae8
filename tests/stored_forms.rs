//! Links and stored documents of every version open for ever: their defaults, field numbers and some links are frozen here.

#![expect(
    clippy::unwrap_used,
    reason = "a check that cannot read its files has to fail"
)]

use noonday_engine::scenario::{
    Field, Kind, Scenario, ScenarioDocument, example, fields, from_any_link, from_link, to_link,
    to_share_link,
};
use noonday_tests::golden_path;
use serde_json::Value;

fn frozen(name: &str) -> String {
    std::fs::read_to_string(golden_path(name)).unwrap()
}

fn frozen_defaults() -> Value {
    serde_json::from_str(&frozen("defaults_v1.json")).unwrap()
}

/// A link of version 1 holds only what differs from these values. Should the example change, old links would silently change
/// with it: a new example needs a new version with its own defaults, and these stay for reading version 1.
#[test]
fn the_defaults_of_version_1_never_change() {
    assert_eq!(
        serde_json::to_value(example()).unwrap(),
        frozen_defaults(),
        "the example has moved under the links of version 1"
    );
}

/// The stored form of the defaults reads back as the example, byte for byte and bit for bit.
#[test]
fn the_stored_defaults_open() {
    let text = frozen("defaults_v1.json");
    let document: ScenarioDocument = serde_json::from_str(&text).unwrap();
    assert_eq!(document, example());
    assert_eq!(
        serde_json::to_string_pretty(&document).unwrap(),
        text.trim_end()
    );
}

/// Numbers of fields stand in links: none is reused, none changes, and new ones are added at the end of the file.
#[test]
fn field_numbers_of_version_1_never_change() {
    let text = frozen("field_ids_v1.csv");
    let kept = text.lines().filter(|line| !line.starts_with('#')).skip(1);
    let now: Vec<String> = fields()
        .map(|field| format!("{},{}", field.id, field.key))
        .collect();
    let mut count = 0;
    for line in kept {
        assert!(now.iter().any(|entry| entry == line), "{line} is gone");
        count += 1;
    }
    assert_eq!(count, now.len(), "new fields belong into field_ids_v1.csv");
}

/// Puts a value at a dotted path of a stored document.
fn put(document: &mut Value, path: &str, value: &Value) {
    let pointer = format!("/{}", path.replace('.', "/"));
    *document.pointer_mut(&pointer).unwrap() = value.clone();
}

/// What a packed link rests on besides field numbers and defaults: the order of options and the grain of numbers. Options are only
/// added at the end, and nothing else changes; should it have to, that is another form with another first mark.
fn packed_by(field: &Field) -> String {
    let kind = match &field.kind {
        Kind::Number(number) => format!("grain {}", number.dimension.grain_power()),
        Kind::Choice(choice) => choice.options.join(" "),
        Kind::Switch(_) => "switch".to_owned(),
        Kind::Text(_) => "text".to_owned(),
        Kind::Date(_) => "date".to_owned(),
    };
    format!("{},{kind}", field.id)
}

#[test]
fn what_packed_links_rest_on_never_changes() {
    let text = frozen("packed_fields_v2.csv");
    let kept: Vec<&str> = text
        .lines()
        .filter(|line| !line.starts_with('#'))
        .skip(1)
        .collect();
    for field in fields() {
        let now = packed_by(field);
        let begins = format!("{},", field.id);
        let before = kept.iter().find(|line| line.starts_with(&begins));
        assert!(
            before.is_some_and(|before| now.starts_with(before)),
            "{before:?} is now {now}; a new field belongs into packed_fields_v2.csv, and so does a new option"
        );
    }
}

/// Links made once, each followed by what it changes in the defaults.
fn check_links(
    name: &str,
    read: impl Fn(&str) -> ScenarioDocument,
    write: impl Fn(&ScenarioDocument) -> String,
) {
    let text = frozen(name);
    let lines: Vec<&str> = text
        .lines()
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
        .collect();
    assert!(lines.len() >= 20 && lines.len().is_multiple_of(2));
    for pair in lines.chunks_exact(2) {
        let (link, differences) = (pair[0], pair[1].trim());
        let changes: serde_json::Map<String, Value> = serde_json::from_str(differences).unwrap();
        let mut expected = frozen_defaults();
        for (path, value) in &changes {
            put(&mut expected, path, value);
        }
        let document = read(link);
        assert_eq!(serde_json::to_value(&document).unwrap(), expected, "{link}");
        assert_eq!(write(&document), link);
        assert!(Scenario::new(document).is_ok(), "{link}");
    }
}

#[test]
fn links_of_version_1_still_open() {
    check_links("links_v1.txt", |link| from_link(link).unwrap(), to_link);
    check_links("links_v1.txt", |link| from_any_link(link).unwrap(), to_link);
}

#[test]
fn packed_links_of_version_2_still_open() {
    check_links(
        "links_v2.txt",
        |link| from_any_link(link).unwrap(),
        to_share_link,
    );
}
