//! The scenario as the shortest text, for sharing: `2` and base64url of the differences from the defaults.
//!
//! A link has to fit a text message and a code that a phone reads off a screen. So fields go by how far their numbers lie apart,
//! switches by being named, choices by their place in the order of their options, decimals as a whole number and an exponent of
//! ten, texts letter by letter, all of it through one adaptive arithmetic [`coder`]. What is read is what was written, to the bit.
//! The letters begin with a sum over the rest, by which a link that was cut or mistyped is told.
//!
//! A form once in the world never changes: neither the models nor [`model`]'s first text, nor the defaults, nor the order of a
//! choice's options. Another form takes another first mark.

mod coder;
mod model;
mod wrapping;

use super::document::ScenarioDocument;
use super::example::example;
use super::field::{Field, Kind, NumberField, SwitchField};
use super::fields::fields;
use super::link::{LONGEST_LINK_BYTES, LinkError, from_link};
use crate::quantity::sort_few;
use crate::solar::Date;
use coder::{Chance, Coder};
use model::{NumberModel, TextModel, WholeModel};

/// Most characters of a link to anything that can be entered on the page: what a text message in parts, and a code on a screen,
/// carry with ease.
pub const LONGEST_SHARED_LINK: usize = 1_200;

/// First mark of this form, the second in the world.
const MARK: char = '2';
/// Bytes of the sum before the rest.
const SUM_BYTES: usize = 2;

/// Everything learnt while a link is passed.
struct Models {
    gaps: WholeModel,
    choices: WholeModel,
    days: WholeModel,
    numbers: NumberModel,
    texts: TextModel,
}

impl Models {
    /// The first answer is whether letters are learnt: a text of rare ones is shorter without.
    fn begun(coder: &mut Coder, letters_learnt: bool) -> Self {
        let letters_learnt = coder.pass(&mut Chance::even(), letters_learnt);
        Self {
            gaps: WholeModel::new(),
            choices: WholeModel::new(),
            days: WholeModel::new(),
            numbers: NumberModel::new(),
            texts: TextModel::new(letters_learnt),
        }
    }
}

/// Writes a document as the shortest text of URL-safe ASCII, for the fragment of an address. Any document that was entered on the
/// page takes at most [`LONGEST_SHARED_LINK`] characters; numbers of full precision and longer texts take more.
#[must_use]
pub fn to_share_link(document: &ScenarioDocument) -> String {
    let mut bytes = packed(document);
    let mut text = wrapped(&bytes);
    // Messengers take a dash or a low line at the end for punctuation and leave it out of the link.
    if text.ends_with(['-', '_']) {
        bytes.push(0);
        text = wrapped(&bytes);
    }
    text
}

/// Reads a document back from a text of [`to_share_link`]. It is not validated.
///
/// # Errors
/// [`LinkError`]: too long, another form, damaged, or what it holds that these fields do not.
pub fn from_packed(text: &str) -> Result<ScenarioDocument, LinkError> {
    if text.len() > LONGEST_LINK_BYTES {
        return Err(LinkError::TooLong { bytes: text.len() });
    }
    let letters = text.strip_prefix(MARK).ok_or(LinkError::NoVersion)?;
    let bytes = wrapping::bytes_of_letters(letters).ok_or(LinkError::Damaged)?;
    let (sum, rest) = bytes
        .split_at_checked(SUM_BYTES)
        .ok_or(LinkError::Damaged)?;
    if sum != wrapping::sum_of(rest).to_be_bytes() {
        return Err(LinkError::Damaged);
    }
    unpacked(rest)
}

/// Reads a link of any version: the text of `to_link`, or that of [`to_share_link`]. The document is not validated.
///
/// # Errors
/// [`LinkError`]: what cannot be read, and where.
pub fn from_any_link(text: &str) -> Result<ScenarioDocument, LinkError> {
    match text.chars().next() {
        Some(MARK) => from_packed(text),
        Some(mark) if mark.is_ascii_digit() => Err(LinkError::UnknownVersion {
            version: mark.to_string(),
        }),
        _ => from_link(text),
    }
}

fn wrapped(bytes: &[u8]) -> String {
    let sum = wrapping::sum_of(bytes).to_be_bytes();
    let letters = wrapping::letters_of_bytes(&[&sum, bytes].concat());
    format!("{MARK}{letters}")
}

fn by_number() -> Vec<&'static Field> {
    let mut sorted: Vec<&Field> = fields().collect();
    sort_few(&mut sorted, |one, other| one.id > other.id);
    sorted
}

fn packed(document: &ScenarioDocument) -> Vec<u8> {
    let (learnt, plain) = (packed_by(document, true), packed_by(document, false));
    if plain.len() < learnt.len() {
        return plain;
    }
    learnt
}

fn packed_by(document: &ScenarioDocument, letters_learnt: bool) -> Vec<u8> {
    let (mut coder, mut defaults) = (Coder::writer(), example());
    let mut models = Models::begun(&mut coder, letters_learnt);
    let mut last = 0;
    for field in by_number() {
        if !field.same_in(document, &defaults) {
            let gap = u64::from(field.id - last);
            models.gaps.pass(&mut coder, gap);
            // A text too long for any link is all that is not passed, and its length says so to the reader.
            let _ = pass_value(&mut coder, &mut models, field, (document, &mut defaults));
            last = field.id;
        }
    }
    models.gaps.pass(&mut coder, 0);
    coder.finish()
}

fn unpacked(bytes: &[u8]) -> Result<ScenarioDocument, LinkError> {
    let (mut coder, mut document) = (Coder::reader(bytes), example());
    let mut models = Models::begun(&mut coder, true);
    let (known, said) = (by_number(), example());
    let mut last = 0_u64;
    loop {
        let gap = models.gaps.pass(&mut coder, 0);
        if gap == 0 {
            return Ok(document);
        }
        last = last.saturating_add(gap);
        let field = known
            .iter()
            .find(|field| u64::from(field.id) == last)
            .ok_or_else(|| LinkError::UnknownField {
                id: last.to_string(),
            })?;
        let read = pass_value(&mut coder, &mut models, field, (&said, &mut document));
        if let Err(value) = read {
            return Err(LinkError::Unreadable {
                key: field.key,
                value,
            });
        }
    }
}

/// Passes a field's value of one document into another that holds its default.
fn pass_value(
    coder: &mut Coder,
    models: &mut Models,
    field: &Field,
    (from, to): (&ScenarioDocument, &mut ScenarioDocument),
) -> Result<(), String> {
    match &field.kind {
        Kind::Number(number) => pass_number(coder, models, number, (from, to)),
        Kind::Switch(switch) => flip(switch, to),
        Kind::Choice(choice) => {
            let index = (choice.read)(from) as u64;
            let index = models.choices.pass(coder, index);
            let known = usize::try_from(index).ok();
            let known = known.filter(|index| *index < choice.options.len());
            (choice.write)(to, known.ok_or_else(|| index.to_string())?);
        }
        Kind::Text(text) => {
            let passed = models.texts.pass(coder, (text.read)(from));
            (text.write)(to, passed.ok_or_else(String::new)?);
        }
        Kind::Date(date) => {
            let usual = (date.read)(to);
            let days = days_between(usual, (date.read)(from));
            let days = models.days.pass_signed(coder, days);
            let day = later(usual, days).ok_or_else(|| days.to_string())?;
            (date.write)(to, day);
        }
    }
    Ok(())
}

fn pass_number(
    coder: &mut Coder,
    models: &mut Models,
    number: &NumberField,
    (from, to): (&ScenarioDocument, &mut ScenarioDocument),
) {
    let usual = (number.dimension.grain_power(), (number.read)(to));
    let value = models.numbers.pass(coder, (number.read)(from), usual);
    (number.write)(to, value);
}

/// A switch that is named at all stands otherwise than by default.
fn flip(switch: &SwitchField, document: &mut ScenarioDocument) {
    let usual = (switch.read)(document);
    (switch.write)(document, !usual);
}

fn days_between(one: Date, other: Date) -> i64 {
    (other.julian_date_at_midnight() - one.julian_date_at_midnight()) as i64
}

fn later(date: Date, days: i64) -> Option<Date> {
    /// More than the calendar's 150 years.
    const MOST_DAYS: i64 = 60_000;
    if days.abs() > MOST_DAYS {
        return None;
    }
    let day = date.plus_days(days as i32);
    Date::new(day.year(), day.month(), day.day()).ok()
}

#[cfg(test)]
mod tests;
