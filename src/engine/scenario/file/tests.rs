use super::*;
use crate::scenario::{Kind, ScenarioDocument, example, fields};

fn filed(document: ScenarioDocument) -> Filed {
    Filed {
        saved: Some("2026-07-21T10:00:00.125Z".to_owned()),
        scenario: Scenario::new(document).unwrap(),
    }
}

fn one(document: &str) -> Result<Filed, EntryError> {
    let text = format!(
        r#"{{"format":"noonday-scenarios","version":1,"scenarios":[{{"document":{document}}}]}}"#
    );
    from_file(&text).unwrap().remove(0).read
}

#[test]
fn what_is_written_reads_back_to_the_bit() {
    let mut document = example();
    document.name = "Zoë \"\\ \u{1}\u{1f600}\nline".to_owned();
    document.day.high_c = 36.100_000_000_000_01;
    document.place.longitude_deg = -0.1 - 0.2;
    let two = [
        filed(document),
        Filed {
            saved: None,
            ..filed(example())
        },
    ];
    let read = from_file(&to_file(&two)).unwrap();
    assert_eq!(read.len(), 2);
    for (entry, filed) in read.iter().zip(&two) {
        assert_eq!(entry.read.as_ref(), Ok(filed));
    }
    assert_eq!(read[1].name.as_deref(), Some(example().name.as_str()));
    assert_eq!(from_file(&to_file(&[])), Ok(vec![]));
}

/// Read by a library of its own, every value stands at the path that is its field's key.
#[test]
fn every_value_stands_at_its_key() {
    let text = to_file(&[filed(example())]);
    let whole: serde_json::Value = serde_json::from_str(&text).unwrap();
    let document = &whole["scenarios"][0]["document"];
    for field in fields() {
        let pointer = format!("/{}", field.key.replace('.', "/"));
        let value = document.pointer(&pointer).unwrap();
        match &field.kind {
            Kind::Number(number) => assert_eq!(value.as_f64(), Some((number.read)(&example()))),
            Kind::Choice(choice) => {
                assert_eq!(
                    value.as_str(),
                    Some(choice.options[(choice.read)(&example())])
                );
            }
            Kind::Switch(switch) => assert_eq!(value.as_bool(), Some((switch.read)(&example()))),
            Kind::Text(text) => assert_eq!(value.as_str(), Some((text.read)(&example()))),
            Kind::Date(date) => assert_eq!(
                *value,
                serde_json::to_value((date.read)(&example())).unwrap()
            ),
        }
    }
}

#[test]
fn what_an_older_build_did_not_write_has_the_frozen_default() {
    assert_eq!(
        one(r#"{"version":1}"#),
        Ok(Filed {
            saved: None,
            ..filed(example())
        })
    );
    let read = one(r#"{"version":1,"need":{"windows":[{},{"highest_felt_c":25}]}}"#).unwrap();
    let mut expected = example();
    expected.need.windows[1].highest_felt_c = 25.0;
    assert_eq!(*read.scenario.document(), expected);
}

#[test]
fn whole_files_are_refused_with_the_reason() {
    let refused = |text: &str| from_file(text).unwrap_err();
    assert_eq!(
        refused("{\n \"a\" 1}"),
        FileError::NotJson { line: 2, column: 6 }
    );
    for other in [
        "[]",
        "3",
        "{}",
        r#"{"format":"other","version":1,"scenarios":[]}"#,
    ] {
        assert_eq!(refused(other), FileError::OtherFormat);
    }
    assert_eq!(
        refused(r#"{"format":"noonday-scenarios","version":2,"more":{}}"#),
        FileError::UnknownVersion {
            version: "2".to_owned()
        }
    );
    assert_eq!(
        refused(r#"{"format":"noonday-scenarios","version":1,"scenarios":[],"more":1}"#),
        FileError::Member {
            name: "more".to_owned()
        }
    );
    assert_eq!(
        refused(r#"{"format":"noonday-scenarios","version":1}"#),
        FileError::Member {
            name: "scenarios".to_owned()
        }
    );
    let many = format!(
        r#"{{"format":"noonday-scenarios","version":1,"scenarios":[0{}]}}"#,
        ",0".repeat(MOST_SCENARIOS)
    );
    assert_eq!(refused(&many), FileError::TooMany);
    let large = " ".repeat(LARGEST_FILE_BYTES + 1);
    assert_eq!(
        refused(&large),
        FileError::TooLarge {
            bytes: LARGEST_FILE_BYTES + 1
        }
    );
    let deep = "[".repeat(LARGEST_FILE_BYTES / 2);
    assert!(matches!(refused(&deep), FileError::NotJson { .. }));
}

#[test]
fn one_scenario_is_refused_with_the_reason() {
    let unreadable = |path: &str, found: &str| EntryError::Unreadable {
        path: path.to_owned(),
        found: found.to_owned(),
    };
    for (document, error) in [
        ("3", EntryError::NoDocument),
        (
            r#"{}"#,
            EntryError::UnknownVersion {
                version: String::new(),
            },
        ),
        (
            r#"{"later":1,"version":7}"#,
            EntryError::UnknownVersion {
                version: "7".to_owned(),
            },
        ),
        (
            r#"{"version":1,"shell":{"wall":1}}"#,
            EntryError::UnknownMember {
                path: "shell.wall".to_owned(),
            },
        ),
        (
            r#"{"version":1,"shell":{"filled_share":1,"filled_share":1}}"#,
            EntryError::Twice {
                path: "shell.filled_share".to_owned(),
            },
        ),
        (r#"{"version":1,"shell":[]}"#, unreadable("shell", "[]")),
        (
            r#"{"version":1,"need":{"windows":{}}}"#,
            unreadable("need.windows", "{}"),
        ),
        (
            r#"{"version":1,"need":{"windows":[{},{},{},{}]}}"#,
            EntryError::UnknownMember {
                path: "need.windows.3".to_owned(),
            },
        ),
        (
            r#"{"version":1,"shell":{"filled_share":"1"}}"#,
            unreadable("shell.filled_share", "\"1\""),
        ),
        (
            r#"{"version":1,"place":{"ground":"ice"}}"#,
            unreadable("place.ground", "\"ice\""),
        ),
        (
            r#"{"version":1,"place":{"summer_time":1}}"#,
            unreadable("place.summer_time", "1"),
        ),
        (
            r#"{"version":1,"day":{"date":{"year":2026,"month":2,"day":29}}}"#,
            unreadable("day.date", r#"{"year":2026,"month":2,"day":29}"#),
        ),
    ] {
        assert_eq!(one(document), Err(error), "{document}");
    }
    assert!(matches!(
        one(r#"{"version":1,"day":{"high_c":1e999}}"#),
        Err(EntryError::Invalid(_))
    ));
}

#[test]
fn instants_are_those_of_rfc_3339_in_universal_time() {
    for (saved, reads) in [
        ("2026-07-21T10:00:00Z", true),
        ("2026-07-21T10:00:00.5Z", true),
        ("2026-07-21T10:00:00.Z", false),
        ("2026-07-21", false),
        ("2026-07-21T10:00:00+02:00", false),
        ("yesterday", false),
    ] {
        let text = format!(
            r#"{{"format":"noonday-scenarios","version":1,"scenarios":[{{"saved":"{saved}","document":{{"version":1}}}}]}}"#
        );
        let read = from_file(&text).unwrap().remove(0).read;
        assert_eq!(read.is_ok(), reads, "{saved}");
    }
}

/// Room for the largest file that the page writes: as many scenarios as fit, with every number and text as long as can be.
#[test]
fn as_many_scenarios_as_are_allowed_fit_into_the_largest_file() {
    let mut document = example();
    for field in fields() {
        match &field.kind {
            Kind::Number(number) if !number.dimension.is_whole() => {
                let value = number.minimum + (number.maximum - number.minimum) / 3.0;
                (number.write)(&mut document, value);
            }
            Kind::Text(text) => (text.write)(&mut document, "\u{1}".repeat(text.longest)),
            _ => {}
        }
    }
    // These would be at odds with one another.
    document.glass = example().glass;
    document.cooler = example().cooler;
    let size = to_file(&[filed(document)]).len();
    assert!(size * MOST_SCENARIOS < LARGEST_FILE_BYTES, "{size}");
}
