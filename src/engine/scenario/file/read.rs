//! From the text of a file to scenarios, each by itself: one that cannot be read does not keep the others away.

use super::json::{items, members, string};
use super::{
    EntryError, FILE_FORMAT, FILE_VERSION, FileEntry, FileError, Filed, LARGEST_FILE_BYTES,
    MOST_SCENARIOS,
};
use crate::quantity::parse_decimal;
use crate::scenario::document::{DOCUMENT_VERSION, ScenarioDocument};
use crate::scenario::example::example;
use crate::scenario::field::{Field, Kind};
use crate::scenario::fields::{field, fields};
use crate::scenario::validate::Scenario;
use crate::solar::Date;
use serde_json::value::RawValue;

/// Most characters of an unreadable value that an error repeats.
const SHOWN_CHARACTERS: usize = 40;

type Object<'text> = Vec<(String, &'text RawValue)>;

/// Reads a file of scenarios of at most [`LARGEST_FILE_BYTES`]; the documents are validated.
///
/// # Errors
/// [`FileError`] where nothing of it can be used. What is wrong with one scenario stands in its [`FileEntry`].
pub fn from_file(text: &str) -> Result<Vec<FileEntry>, FileError> {
    if text.len() > LARGEST_FILE_BYTES {
        return Err(FileError::TooLarge { bytes: text.len() });
    }
    // Some editors put a byte order mark in front, which RFC 8259 lets a reader pass over.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let whole: &RawValue = serde_json::from_str(text).map_err(|error| FileError::NotJson {
        line: error.line(),
        column: error.column(),
    })?;
    let file = members(whole).ok_or(FileError::OtherFormat)?;
    if find(&file, "format").and_then(string).as_deref() != Some(FILE_FORMAT) {
        return Err(FileError::OtherFormat);
    }
    check_version(find(&file, "version"), FILE_VERSION)
        .map_err(|version| FileError::UnknownVersion { version })?;
    only(&file, &["format", "version", "scenarios"]).map_err(|name| FileError::Member { name })?;
    let scenarios = find(&file, "scenarios").and_then(items);
    let scenarios = scenarios.ok_or_else(|| FileError::Member {
        name: "scenarios".to_owned(),
    })?;
    if scenarios.len() > MOST_SCENARIOS {
        return Err(FileError::TooMany);
    }
    Ok(scenarios.into_iter().map(entry).collect())
}

fn entry(value: &RawValue) -> FileEntry {
    let parts = members(value).unwrap_or_default();
    let document = find(&parts, "document").and_then(members);
    let name = document
        .as_ref()
        .and_then(|document| find(document, "name").and_then(string));
    let read = document
        .ok_or(EntryError::NoDocument)
        .and_then(|document| filed(&parts, &document));
    FileEntry { name, read }
}

fn filed(parts: &Object<'_>, document: &Object<'_>) -> Result<Filed, EntryError> {
    // A later version may have members that this one does not: that it is later is said first.
    check_version(find(document, "version"), DOCUMENT_VERSION)
        .map_err(|version| EntryError::UnknownVersion { version })?;
    only(parts, &["saved", "document"]).map_err(|path| EntryError::UnknownMember { path })?;
    let saved = match find(parts, "saved") {
        None => None,
        Some(value) => Some(read_instant(value).ok_or_else(|| unreadable("saved", value))?),
    };
    let mut read = example();
    let mut seen = Vec::new();
    for (name, value) in document.iter().filter(|(name, _)| name != "version") {
        take(name, value, &mut seen, &mut read)?;
    }
    let scenario = Scenario::new(read).map_err(EntryError::Invalid)?;
    Ok(Filed { saved, scenario })
}

/// Takes what stands at a path of the document, down to its values.
fn take(
    path: &str,
    value: &RawValue,
    seen: &mut Vec<String>,
    document: &mut ScenarioDocument,
) -> Result<(), EntryError> {
    if seen.iter().any(|other| other == path) {
        return Err(EntryError::Twice {
            path: path.to_owned(),
        });
    }
    seen.push(path.to_owned());
    if let Some(field) = field(path) {
        return set(field, value, document).ok_or_else(|| unreadable(path, value));
    }
    match Within::of(path) {
        Within::Nothing => Err(EntryError::UnknownMember {
            path: path.to_owned(),
        }),
        Within::Members => members(value)
            .ok_or_else(|| unreadable(path, value))?
            .into_iter()
            .try_for_each(|(name, value)| take(&format!("{path}.{name}"), value, seen, document)),
        Within::Items => items(value)
            .ok_or_else(|| unreadable(path, value))?
            .into_iter()
            .enumerate()
            .try_for_each(|(index, value)| take(&format!("{path}.{index}"), value, seen, document)),
    }
}

/// What a path leads to that is not itself a value.
enum Within {
    Nothing,
    Members,
    Items,
}

impl Within {
    fn of(path: &str) -> Self {
        let rest = fields().find_map(|field| field.key.strip_prefix(path)?.strip_prefix('.'));
        match rest {
            None => Self::Nothing,
            Some(rest) if rest.starts_with("0.") => Self::Items,
            Some(_) => Self::Members,
        }
    }
}

fn set(field: &Field, value: &RawValue, document: &mut ScenarioDocument) -> Option<()> {
    match &field.kind {
        Kind::Number(number) => (number.write)(document, number_of(value)?),
        Kind::Choice(choice) => {
            let name = string(value)?;
            let index = choice.options.iter().position(|option| *option == name)?;
            (choice.write)(document, index);
        }
        Kind::Switch(switch) => match value.get() {
            "true" => (switch.write)(document, true),
            "false" => (switch.write)(document, false),
            _ => return None,
        },
        Kind::Text(text) => (text.write)(document, string(value)?),
        Kind::Date(date) => (date.write)(document, read_date(value)?),
    }
    Some(())
}

fn number_of(value: &RawValue) -> Option<f64> {
    // Everything else that JSON has is no decimal.
    parse_decimal(value.get())
}

fn whole_of(value: &RawValue) -> Option<i32> {
    let number = number_of(value)?;
    let is_whole = number.fract() == 0.0 && number.abs() < f64::from(i32::MAX);
    is_whole.then_some(number as i32)
}

fn read_date(value: &RawValue) -> Option<Date> {
    let parts = members(value)?;
    only(&parts, &["year", "month", "day"]).ok()?;
    let part = |name| find(&parts, name).and_then(whole_of);
    let (month, day) = (part("month")?, part("day")?);
    Date::new(part("year")?, month.try_into().ok()?, day.try_into().ok()?).ok()
}

/// An instant of universal time as RFC 3339 writes it, to the second or finer.
fn read_instant(value: &RawValue) -> Option<String> {
    const PATTERN: &[u8] = b"0000-00-00T00:00:00";
    const LONGEST_FRACTION: usize = 9;
    let text = string(value)?;
    let (second, rest) = text.as_bytes().split_at_checked(PATTERN.len())?;
    let fits = |(mark, pattern): (&u8, &u8)| match pattern {
        b'0' => mark.is_ascii_digit(),
        _ => mark == pattern,
    };
    let fraction = match rest.strip_suffix(b"Z")? {
        [] => &b"0"[..],
        [b'.', fraction @ ..] => fraction,
        _ => return None,
    };
    let is_fraction = !fraction.is_empty()
        && fraction.len() <= LONGEST_FRACTION
        && fraction.iter().all(u8::is_ascii_digit);
    (is_fraction && second.iter().zip(PATTERN).all(fits)).then_some(text)
}

fn find<'text>(object: &Object<'text>, name: &str) -> Option<&'text RawValue> {
    let member = object.iter().find(|(own, _)| own == name);
    member.map(|(_, value)| *value)
}

/// Whether an object has none but these members, each once; gives the first that is too much.
fn only(object: &Object<'_>, names: &[&str]) -> Result<(), String> {
    for (index, (name, _)) in object.iter().enumerate() {
        let is_known = names.contains(&name.as_str());
        let is_first = !object[..index].iter().any(|(other, _)| other == name);
        if !is_known || !is_first {
            return Err(name.clone());
        }
    }
    Ok(())
}

fn check_version(value: Option<&RawValue>, known: u32) -> Result<(), String> {
    match value {
        Some(value) if number_of(value) == Some(f64::from(known)) => Ok(()),
        Some(value) => Err(shortened(value.get())),
        None => Err(String::new()),
    }
}

fn unreadable(path: &str, value: &RawValue) -> EntryError {
    EntryError::Unreadable {
        path: path.to_owned(),
        found: shortened(value.get()),
    }
}

fn shortened(text: &str) -> String {
    text.chars().take(SHOWN_CHARACTERS).collect()
}
