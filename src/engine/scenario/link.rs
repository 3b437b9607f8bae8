//! The scenario as a short text for links and storage: `v=1&17=0.05&52=grass`.
//!
//! It holds the version and, for each field that differs from that version's frozen defaults, the field's number in the
//! fields table and its value. Numbers are written in the shortest form that reads back to the same bits, so that a link
//! gives exactly the same scenario. A later change of the example must not change the defaults of version 1.

use super::document::{DOCUMENT_VERSION, ScenarioDocument};
use super::example::example;
use super::field::{Field, Kind};
use super::fields::fields;
use crate::quantity::parse_decimal;
use crate::solar::Date;
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_decode_str, utf8_percent_encode};

/// Longest text that is read, in bytes: several times what any document writes.
pub const LONGEST_LINK_BYTES: usize = 16_384;

/// What text values escape: everything but letters, digits and four marks that URLs leave alone.
const ESCAPED: &AsciiSet = &NON_ALPHANUMERIC
    .remove(b'-')
    .remove(b'.')
    .remove(b'_')
    .remove(b'~');

/// Why a link or stored text cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkError {
    /// Longer than any document.
    TooLong {
        /// Its length in bytes.
        bytes: usize,
    },
    /// A link for sharing that was cut or mistyped.
    Damaged,
    /// No version at its beginning.
    NoVersion,
    /// A version that this page does not know.
    UnknownVersion {
        /// The version as written.
        version: String,
    },
    /// A part that is not `number=value`.
    NotAPair {
        /// The part.
        part: String,
    },
    /// A field number that this version does not have.
    UnknownField {
        /// The number as written.
        id: String,
    },
    /// The same field twice.
    Twice {
        /// Key of the field.
        key: &'static str,
    },
    /// A value that the field cannot hold.
    Unreadable {
        /// Key of the field.
        key: &'static str,
        /// The value as written.
        value: String,
    },
}

/// Writes a document as a short text of URL-safe ASCII: the version, and `number=value` for each field that differs from that
/// version's defaults.
#[must_use]
pub fn to_link(document: &ScenarioDocument) -> String {
    let defaults = example();
    let mut text = format!("v={DOCUMENT_VERSION}");
    for field in fields().filter(|field| !field.same_in(document, &defaults)) {
        text.push_str(&format!("&{}={}", field.id, written(field, document)));
    }
    text
}

/// Reads a document back from a short text of at most [`LONGEST_LINK_BYTES`]; fields that it does not name have the defaults of its
/// version. The document is not validated.
///
/// # Errors
/// [`LinkError`]: what cannot be read, and where.
pub fn from_link(text: &str) -> Result<ScenarioDocument, LinkError> {
    if text.len() > LONGEST_LINK_BYTES {
        return Err(LinkError::TooLong { bytes: text.len() });
    }
    let mut parts = text.split('&');
    check_version(parts.next().unwrap_or_default())?;
    let mut document = example();
    let mut seen: Vec<u16> = Vec::new();
    for part in parts {
        let (id, value) = part.split_once('=').ok_or_else(|| LinkError::NotAPair {
            part: part.to_owned(),
        })?;
        let field =
            field_numbered(id).ok_or_else(|| LinkError::UnknownField { id: id.to_owned() })?;
        if seen.contains(&field.id) {
            return Err(LinkError::Twice { key: field.key });
        }
        seen.push(field.id);
        set(field, value, &mut document).ok_or_else(|| LinkError::Unreadable {
            key: field.key,
            value: value.to_owned(),
        })?;
    }
    Ok(document)
}

fn check_version(part: &str) -> Result<(), LinkError> {
    let version = part.strip_prefix("v=").ok_or(LinkError::NoVersion)?;
    if version == DOCUMENT_VERSION.to_string() {
        return Ok(());
    }
    Err(LinkError::UnknownVersion {
        version: version.to_owned(),
    })
}

fn field_numbered(id: &str) -> Option<&'static Field> {
    let id: u16 = id.parse().ok()?;
    fields().find(|field| field.id == id)
}

fn written(field: &Field, document: &ScenarioDocument) -> String {
    match &field.kind {
        Kind::Number(number) => (number.read)(document).to_string(),
        Kind::Choice(choice) => choice
            .options
            .get((choice.read)(document))
            .copied()
            .unwrap_or_default()
            .to_owned(),
        Kind::Switch(switch) => if (switch.read)(document) { "1" } else { "0" }.to_owned(),
        Kind::Text(text) => utf8_percent_encode((text.read)(document), ESCAPED).to_string(),
        Kind::Date(date) => {
            let date = (date.read)(document);
            format!("{:04}-{:02}-{:02}", date.year(), date.month(), date.day())
        }
    }
}

pub(super) fn set(field: &Field, value: &str, document: &mut ScenarioDocument) -> Option<()> {
    match &field.kind {
        Kind::Number(number) => (number.write)(document, parse_decimal(value)?),
        Kind::Choice(choice) => {
            let index = choice.options.iter().position(|option| *option == value)?;
            (choice.write)(document, index);
        }
        Kind::Switch(switch) => (switch.write)(document, read_switch(value)?),
        Kind::Text(text) => {
            let decoded = percent_decode_str(value).decode_utf8().ok()?;
            (text.write)(document, decoded.into_owned());
        }
        Kind::Date(date) => (date.write)(document, read_date(value)?),
    }
    Some(())
}

fn read_switch(value: &str) -> Option<bool> {
    match value {
        "1" => Some(true),
        "0" => Some(false),
        _ => None,
    }
}

fn read_date(value: &str) -> Option<Date> {
    let mut parts = value.splitn(3, '-');
    Date::new(
        parts.next()?.parse().ok()?,
        parts.next()?.parse().ok()?,
        parts.next()?.parse().ok()?,
    )
    .ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_example_is_only_its_version() {
        assert_eq!(to_link(&example()), "v=1");
        assert_eq!(from_link("v=1"), Ok(example()));
    }

    #[test]
    fn every_field_survives_the_round_trip_to_the_bit() {
        let mut document = example();
        document.name = "Zoë & Søn #1 = 100 %".to_owned();
        document.day.date = Date::new(2027, 2, 9).unwrap();
        for field in fields() {
            match &field.kind {
                Kind::Number(number) => {
                    let value = number.minimum + (number.maximum - number.minimum) / 3.0;
                    (number.write)(&mut document, value);
                }
                Kind::Choice(choice) => (choice.write)(&mut document, choice.options.len() - 1),
                Kind::Switch(switch) => {
                    let value = !(switch.read)(&document);
                    (switch.write)(&mut document, value);
                }
                Kind::Text(_) | Kind::Date(_) => {}
            }
        }
        let text = to_link(&document);
        assert_eq!(from_link(&text), Ok(document));
        assert!(
            text.bytes()
                .all(|byte| byte.is_ascii_alphanumeric() || b"-._~%=&".contains(&byte))
        );
    }

    #[test]
    fn damage_is_named() {
        assert_eq!(from_link(""), Err(LinkError::NoVersion));
        assert!(matches!(
            from_link("v=99"),
            Err(LinkError::UnknownVersion { .. })
        ));
        assert!(matches!(
            from_link("v=1&zz"),
            Err(LinkError::NotAPair { .. })
        ));
        assert!(matches!(
            from_link("v=1&9999=1"),
            Err(LinkError::UnknownField { .. })
        ));
        assert!(matches!(
            from_link("v=1&3=abc"),
            Err(LinkError::Unreadable {
                key: "vehicle.length_m",
                ..
            })
        ));
        assert!(matches!(
            from_link("v=1&3=4&3=5"),
            Err(LinkError::Twice { .. })
        ));
        let long = "v".repeat(LONGEST_LINK_BYTES + 1);
        assert!(matches!(from_link(&long), Err(LinkError::TooLong { .. })));
    }

    #[test]
    fn field_numbers_and_keys_are_unique() {
        let mut ids: Vec<u16> = fields().map(|field| field.id).collect();
        let mut keys: Vec<&str> = fields().map(|field| field.key).collect();
        let count = ids.len();
        ids.sort_unstable();
        ids.dedup();
        keys.sort_unstable();
        keys.dedup();
        assert_eq!((ids.len(), keys.len()), (count, count));
    }
}
