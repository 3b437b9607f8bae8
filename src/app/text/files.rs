//! Scenarios as files: what is offered, what a file would add, and why one cannot be read.

use super::errors::{field_error_named, label_of};
use crate::dropped::Refused;
use crate::format::UnitSystem;
use noonday_engine::scenario::file::{EntryError, FileError, LARGEST_FILE_BYTES, MOST_SCENARIOS};

/// Name of a file with every saved scenario.
pub const ALL_FILE: &str = "noonday scenarios.json";
/// Button: one scenario of the list as a file.
pub const FILE_ONE: &str = "As a file";
/// Button: what is shown as a file.
pub const FILE_SHOWN: &str = "Save what is shown as a file";
/// Button: the whole list as a file.
pub const FILE_ALL: &str = "Save this list as a file";
/// Picker of files.
pub const FROM_FILE: &str = "Add from a file";
/// Under the picker.
pub const DROP_HINT: &str = "Files can also be dropped anywhere on the page. Nothing is added before you have seen what it is.";
/// Heading over what a file would add.
pub const ARRIVED: &str = "What the file would add";
/// Button: add nothing.
pub const LEAVE: &str = "Add nothing";
/// Said of a scenario that is new.
pub const NEW: &str = "New.";
/// Said of a scenario that stands in the file twice.
pub const TWICE_IN_FILE: &str = "The same as another above, to the last value; it is added once.";

/// Where it comes from.
pub fn from(names: &[String]) -> String {
    format!(
        "From {}. What is saved already stays as it is.",
        super::listed(
            &names
                .iter()
                .map(|name| format!("“{name}”"))
                .collect::<Vec<_>>()
        )
    )
}

/// Button: add what is ticked.
pub fn add(count: usize) -> String {
    match count {
        0 => "Nothing to add".to_owned(),
        1 => "Add this one".to_owned(),
        count => format!("Add these {count}"),
    }
}

/// Said when scenarios were added.
pub fn added(count: usize) -> String {
    match count {
        1 => "Added one scenario to the list.".to_owned(),
        count => format!("Added {count} scenarios to the list."),
    }
}

/// Said of a scenario that is kept already.
pub fn kept_already(name: &str) -> String {
    format!("Saved already as “{name}”, the same to the last value: nothing to add.")
}

/// Said of a scenario whose name is taken.
pub fn renamed(name: &str) -> String {
    format!("Another of this name is saved; this one is added as “{name}”.")
}

/// Said of lines of the list that are not in the file.
pub fn left_out(count: usize) -> String {
    match count {
        1 => "One entry of the list cannot be read; it is not in the file.".to_owned(),
        count => format!("{count} entries of the list cannot be read; they are not in the file."),
    }
}

/// Name of the file of a scenario: its own, without what file systems do not allow.
pub fn file_name(name: &str) -> String {
    let allowed: String = name
        .chars()
        .map(|mark| match mark {
            mark if mark.is_alphanumeric() => mark,
            '-' | '_' | '(' | ')' | '\u{2019}' => mark,
            _ => ' ',
        })
        .collect();
    let words: Vec<&str> = allowed.split_whitespace().collect();
    match words.join(" ") {
        name if name.is_empty() => "noonday scenario.json".to_owned(),
        name => format!("{name}.json"),
    }
}

/// Said of a file that nobody took.
pub fn not_taken(refused: &Refused) -> String {
    match refused {
        Refused::TooLarge { name, .. } => too_large(name),
        Refused::Unknown { name } => {
            format!("“{name}” is not of a kind that this page can read. Nothing was changed.")
        }
    }
}

fn too_large(name: &str) -> String {
    format!(
        "“{name}” is larger than {}\u{a0}MB, more than the page reads. Nothing was changed.",
        LARGEST_FILE_BYTES >> 20
    )
}

/// Said of a file with no scenario in it.
pub fn nothing_in(name: &str) -> String {
    format!("There is no scenario in “{name}”. Nothing was changed.")
}

/// Said of a file that cannot be used at all.
pub fn refused(name: &str, error: &FileError) -> String {
    let why = match error {
        FileError::TooLarge { .. } => return too_large(name),
        FileError::NotJson { line, column } => {
            format!("it is not whole; reading stops at line {line}, column {column}")
        }
        FileError::OtherFormat => "it does not say that it is a file of scenarios".to_owned(),
        FileError::UnknownVersion { version } => of_version(version),
        FileError::Member { name } => {
            format!("its part “{name}” is not as files of this version have it")
        }
        FileError::TooMany => {
            format!("it holds more than {MOST_SCENARIOS} scenarios; split it into several")
        }
    };
    format!("“{name}” cannot be opened: {why}. Nothing was changed.")
}

/// Why one scenario of a file cannot be added.
pub fn entry_error(error: &EntryError, units: UnitSystem) -> String {
    let why = match error {
        EntryError::NoDocument => "there is no document in it".to_owned(),
        EntryError::UnknownVersion { version } => of_version(version),
        EntryError::UnknownMember { path } => {
            format!("it has an entry “{path}” that this page does not know")
        }
        EntryError::Twice { path } => format!("it gives “{}” twice", label_of(path)),
        EntryError::Unreadable { path, found } => {
            let found = found.trim_matches('"');
            format!("“{found}” cannot be read as “{}”", label_of(path))
        }
        EntryError::Invalid(errors) => {
            let first = errors.first();
            let first = first.map(|error| field_error_named(error, units, ""));
            super::storage::cannot_run(&first.unwrap_or_default())
        }
    };
    format!("Cannot be added: {why}.")
}

fn of_version(version: &str) -> String {
    if version.is_empty() {
        return "it does not say of which version it is".to_owned();
    }
    if version.parse::<u32>().is_ok_and(|version| version > 1) {
        return format!(
            "it has version {version} and was made by a newer build than this one. Load the page anew with a network to get it"
        );
    }
    format!("it has version “{version}”, which this page does not know")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn file_names_keep_what_every_file_system_allows() {
        assert_eq!(file_name("Zoë & Søn: #1/2"), "Zoë Søn 1 2.json");
        assert_eq!(file_name("../../x"), "x.json");
        assert_eq!(file_name(" .:/"), "noonday scenario.json");
    }

    #[test]
    fn a_newer_version_is_told_as_such() {
        let newer = |version: &str| {
            let version = version.to_owned();
            refused("a.json", &FileError::UnknownVersion { version })
        };
        assert!(newer("2").contains("newer build"));
        assert!(!newer("0").contains("newer build"));
        assert!(newer("").contains("does not say"));
    }
}
