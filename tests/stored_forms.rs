//! Links and stored documents of version 1 open for ever: their defaults, field numbers and some links are frozen here.

#![expect(
    clippy::unwrap_used,
    reason = "a check that cannot read its files has to fail"
)]

use noonday_engine::scenario::{Scenario, ScenarioDocument, example, fields, from_link, to_link};
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

/// Links made once, each followed by what it changes in the defaults.
#[test]
fn links_of_version_1_still_open() {
    let text = frozen("links_v1.txt");
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
        let document = from_link(link).unwrap();
        assert_eq!(serde_json::to_value(&document).unwrap(), expected, "{link}");
        assert_eq!(to_link(&document), link);
        assert!(Scenario::new(document).is_ok(), "{link}");
    }
}
