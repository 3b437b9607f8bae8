//! From scenarios to the text of a file.

use super::{FILE_FORMAT, FILE_VERSION, Filed};
use crate::scenario::document::{DOCUMENT_VERSION, ScenarioDocument};
use crate::scenario::field::{Field, Kind};
use crate::scenario::fields::fields;

/// A value and what is left of its path.
type Leaf = (&'static str, String);

/// Writes scenarios as a file that [`from_file`](super::from_file) reads back to the same bits: every value, each on a line of its
/// own, nested by the keys of the fields.
#[must_use]
pub fn to_file(scenarios: &[Filed]) -> String {
    let entries: Vec<String> = scenarios.iter().map(entry).collect();
    format!(
        "{{\n  \"format\": {},\n  \"version\": {FILE_VERSION},\n  \"scenarios\": [\n{}\n  ]\n}}\n",
        quoted(FILE_FORMAT),
        entries.join(",\n")
    )
}

fn entry(filed: &Filed) -> String {
    let saved = filed.saved.as_deref().map_or_else(String::new, |saved| {
        format!("      \"saved\": {},\n", quoted(saved))
    });
    let mut text = format!("    {{\n{saved}      \"document\": ");
    let document = filed.scenario.document();
    let mut leaves: Vec<Leaf> = vec![("version", DOCUMENT_VERSION.to_string())];
    leaves.extend(fields().map(|field| (field.key, value(field, document))));
    push_nested(&leaves, 6, &mut text);
    text.push_str("\n    }");
    text
}

/// Writes what begins alike together: an object, or an array where the names are numbers.
fn push_nested(leaves: &[Leaf], indent: usize, text: &mut String) {
    let mut names: Vec<&str> = Vec::new();
    for (path, _) in leaves {
        let name = path.split('.').next().unwrap_or_default();
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let is_array = names.first() == Some(&"0");
    text.push(if is_array { '[' } else { '{' });
    for (index, name) in names.iter().enumerate() {
        text.push_str(if index == 0 { "\n" } else { ",\n" });
        push_spaces(indent + 2, text);
        if !is_array {
            text.push_str(&format!("\"{name}\": "));
        }
        push_member(leaves, name, indent + 2, text);
    }
    text.push('\n');
    push_spaces(indent, text);
    text.push(if is_array { ']' } else { '}' });
}

fn push_member(leaves: &[Leaf], name: &str, indent: usize, text: &mut String) {
    if let Some((_, value)) = leaves.iter().find(|(path, _)| *path == name) {
        return text.push_str(value);
    }
    let inner: Vec<Leaf> = leaves
        .iter()
        .filter_map(|(path, value)| {
            let rest = path.strip_prefix(name)?.strip_prefix('.')?;
            Some((rest, value.clone()))
        })
        .collect();
    push_nested(&inner, indent, text);
}

fn push_spaces(count: usize, text: &mut String) {
    text.extend(std::iter::repeat_n(' ', count));
}

fn value(field: &Field, document: &ScenarioDocument) -> String {
    match &field.kind {
        Kind::Number(number) => (number.read)(document).to_string(),
        Kind::Choice(choice) => quoted(
            choice
                .options
                .get((choice.read)(document))
                .copied()
                .unwrap_or_default(),
        ),
        Kind::Switch(switch) => (switch.read)(document).to_string(),
        Kind::Text(text) => quoted((text.read)(document)),
        Kind::Date(date) => {
            let date = (date.read)(document);
            let (year, month, day) = (date.year(), date.month(), date.day());
            format!("{{ \"year\": {year}, \"month\": {month}, \"day\": {day} }}")
        }
    }
}

/// A string of JSON (RFC 8259, section 7): only quotation mark, reverse solidus and control characters have to be escaped.
fn quoted(text: &str) -> String {
    let mut quoted = String::from("\"");
    for mark in text.chars() {
        match mark {
            '"' | '\\' => quoted.extend(['\\', mark]),
            mark if mark < ' ' => quoted.push_str(&format!("\\u{:04x}", u32::from(mark))),
            mark => quoted.push(mark),
        }
    }
    quoted.push('"');
    quoted
}
