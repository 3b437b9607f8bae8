//! How the browser's language writes numbers and dates.
//!
//! It is asked once, when the page begins. Before that, and in tests, numbers are written as in English and dates as in
//! ISO 8601.

use js_sys::{Object, Reflect};
use noonday_engine::solar::Date;
use std::sync::{Mutex, OnceLock};
use wasm_bindgen::{JsCast, JsValue};

static LANGUAGE: OnceLock<Language> = OnceLock::new();

/// The day written last: to write one takes the browser longer than a chart, and it seldom changes.
static WRITTEN: Mutex<Option<(Date, String)>> = Mutex::new(None);

/// What is written before and behind an amount of a currency.
type AroundAmount = (String, String);

/// The currency written last, and what is written around its amounts.
static CURRENCY: Mutex<Option<(String, AroundAmount)>> = Mutex::new(None);

/// Language of the page's own words; a date within a sentence keeps to it.
const OF_THE_WORDS: &str = "en";
/// The form of English in which dates are written where the browser speaks another language.
const ENGLISH_ELSEWHERE: &str = "en-GB";

/// Languages whose marks are those of English (Unicode CLDR): the browser takes longer to answer than the engine to run a day.
const WRITTEN_AS_IN_ENGLISH: [&str; 6] = ["en", "en-US", "en-GB", "en-CA", "en-AU", "en-NZ"];

/// The marks of a written number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Marks {
    /// Before the decimals.
    pub decimal: char,
    /// Between groups of three digits.
    pub group: Option<char>,
}

impl Marks {
    /// As in English.
    pub const ENGLISH: Self = Self {
        decimal: '.',
        group: Some(','),
    };

    /// Reads them off the number 1234567.5 as a language writes it.
    fn of_sample(written: &str) -> Option<Self> {
        let (_, fraction) = written.split_once('7')?;
        let decimal = fraction
            .chars()
            .next()
            .filter(|mark| !mark.is_ascii_digit())?;
        let (millions, _) = written.split_once('2')?;
        let group = millions.chars().next_back().filter(|mark| *mark != '1');
        Some(Self { decimal, group })
    }
}

struct Language {
    tag: String,
    marks: Marks,
}

/// Whether the browser knows a tag as one of a language. Some name their language by none, such as `C`, and then throw at every
/// number and date.
fn is_tag(tag: &str) -> bool {
    let read = |object: &JsValue, name: &str| Reflect::get(object, &JsValue::from_str(name)).ok();
    let canonical = read(&js_sys::global(), "Intl")
        .and_then(|intl| read(&intl, "getCanonicalLocales"))
        .and_then(|function| function.dyn_into::<js_sys::Function>().ok());
    canonical.is_some_and(|function| {
        let tag = JsValue::from_str(tag);
        function.call1(&JsValue::UNDEFINED, &tag).is_ok()
    })
}

/// Takes the browser's language, once; English where it is none.
pub fn speak(tag: &str) {
    let tag = if WRITTEN_AS_IN_ENGLISH.contains(&tag) || is_tag(tag) {
        tag
    } else {
        OF_THE_WORDS
    };
    let marks = if WRITTEN_AS_IN_ENGLISH.contains(&tag) {
        Marks::ENGLISH
    } else {
        let written = js_sys::Number::from(1_234_567.5).to_locale_string(tag);
        Marks::of_sample(&String::from(written)).unwrap_or(Marks::ENGLISH)
    };
    // A second call would find the language set, which is what is wanted.
    let _ = LANGUAGE.set(Language {
        tag: tag.to_owned(),
        marks,
    });
}

/// The marks in use.
pub fn marks() -> Marks {
    LANGUAGE
        .get()
        .map_or(Marks::ENGLISH, |language| language.marks)
}

/// What the browser's language writes around an amount of a currency: `$` before it, or a space and `€` behind it; before it knows
/// the language, and where the code is none of ISO 4217's form, the code before it.
///
/// * `code` — of ISO 4217
pub fn around_amount(code: &str) -> AroundAmount {
    remembered(&CURRENCY, code.to_owned(), |code| around_amount_of(code))
}

/// What was made of a key last, or else made of it now.
fn remembered<K: PartialEq, V: Clone>(
    last: &Mutex<Option<(K, V)>>,
    key: K,
    make: impl FnOnce(&K) -> V,
) -> V {
    let Ok(mut last) = last.lock() else {
        return make(&key);
    };
    match &*last {
        Some((known, made)) if *known == key => made.clone(),
        _ => {
            let made = make(&key);
            *last = Some((key, made.clone()));
            made
        }
    }
}

/// Options as the browser's own writers take them.
fn options(all: &[(&str, JsValue)]) -> Object {
    let options = Object::new();
    for (name, value) in all {
        // Setting a property of a new object cannot fail.
        let _ = Reflect::set(&options, &(*name).into(), value);
    }
    options
}

fn around_amount_of(code: &str) -> AroundAmount {
    let written = LANGUAGE
        .get()
        .filter(|_| code.len() == 3 && code.bytes().all(|byte| byte.is_ascii_alphabetic()))
        .and_then(|language| one_unit(&language.tag, code));
    written
        .as_deref()
        .and_then(|written| written.split_once('1'))
        .map_or_else(
            || (format!("{code}\u{a0}"), String::new()),
            |(before, behind)| (before.to_owned(), behind.to_owned()),
        )
}

/// One unit of a currency as a language writes it, in the digits of the page.
fn one_unit(tag: &str, code: &str) -> Option<String> {
    let options = options(&[
        ("style", "currency".into()),
        ("currency", code.into()),
        ("numberingSystem", "latn".into()),
        ("maximumFractionDigits", 0.into()),
        ("minimumFractionDigits", 0.into()),
    ]);
    let languages = js_sys::Array::of1(&tag.into());
    let format = js_sys::Intl::NumberFormat::new(&languages, &options).format();
    let written = format.call1(&JsValue::UNDEFINED, &1.into());
    written.ok()?.as_string()
}

/// A day in words: `July 21, 2026`, `21 July 2026`.
pub fn date(date: Date) -> String {
    remembered(&WRITTEN, date, |date| written(*date))
}

fn written(date: Date) -> String {
    let (year, month, day) = (date.year(), date.month(), date.day());
    let Some(language) = LANGUAGE.get() else {
        return format!("{year:04}-{month:02}-{day:02}");
    };
    let tag = if language.tag.starts_with(OF_THE_WORDS) {
        &language.tag
    } else {
        ENGLISH_ELSEWHERE
    };
    let options = options(&[("dateStyle", "long".into())]);
    noon_of(date).to_locale_date_string(tag, &options).into()
}

/// A day without its year: `21 July`; nothing before the language is known.
pub fn day_and_month(date: Date) -> Option<String> {
    let language = LANGUAGE.get()?;
    let tag = if language.tag.starts_with(OF_THE_WORDS) {
        &language.tag
    } else {
        ENGLISH_ELSEWHERE
    };
    let options = options(&[("day", "numeric".into()), ("month", "long".into())]);
    Some(noon_of(date).to_locale_date_string(tag, &options).into())
}

fn noon_of(date: Date) -> js_sys::Date {
    js_sys::Date::new_with_year_month_day_hr(
        date.year().unsigned_abs(),
        i32::from(date.month()) - 1,
        i32::from(date.day()),
        12,
    )
}

/// Names of a calendar in the browser's own language.
#[derive(Clone, Debug, PartialEq)]
pub struct CalendarNames {
    /// Tag of the language.
    pub tag: String,
    /// January to December.
    pub months: Vec<String>,
    /// Monday to Sunday, short.
    pub weekdays: Vec<String>,
    /// The day with which a week begins, Monday being 0.
    pub first: usize,
}

/// Names of a calendar in the browser's own language; English before it is known.
pub fn calendar_names() -> CalendarNames {
    let tag = LANGUAGE.get().map_or("en", |language| &language.tag);
    let written = |month: i32, day: i32, option: &str, form: &str| -> String {
        let noon = js_sys::Date::new_with_year_month_day_hr(2024, month, day, 12);
        noon.to_locale_date_string(tag, &options(&[(option, form.into())]))
            .into()
    };
    CalendarNames {
        tag: tag.to_owned(),
        months: (0..12)
            .map(|month| written(month, 1, "month", "long"))
            .collect(),
        // 1 January 2024 is a Monday.
        weekdays: (1..=7)
            .map(|day| written(0, day, "weekday", "short"))
            .collect(),
        first: first_weekday(tag).unwrap_or(0),
    }
}

/// The first day of the week where a language is at home, Monday being 0, as far as the browser knows.
fn first_weekday(tag: &str) -> Option<usize> {
    let intl = Reflect::get(&js_sys::global(), &"Intl".into()).ok()?;
    let locale: js_sys::Function = Reflect::get(&intl, &"Locale".into())
        .ok()?
        .dyn_into()
        .ok()?;
    let locale = Reflect::construct(&locale, &js_sys::Array::of1(&tag.into())).ok()?;
    let ask: Result<js_sys::Function, _> = Reflect::get(&locale, &"getWeekInfo".into())
        .ok()?
        .dyn_into();
    let info = match ask {
        Ok(ask) => ask.call0(&locale).ok()?,
        Err(_) => Reflect::get(&locale, &"weekInfo".into()).ok()?,
    };
    let first = Reflect::get(&info, &"firstDay".into()).ok()?.as_f64()?;
    // ISO 8601 counts from Monday, 1, to Sunday, 7.
    Some((first as usize + 6) % 7)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_marks_of_a_language_are_read_off_a_number() {
        let marks = |written| Marks::of_sample(written).map(|marks| (marks.group, marks.decimal));
        assert_eq!(marks("1,234,567.5"), Some((Some(','), '.')));
        assert_eq!(marks("1.234.567,5"), Some((Some('.'), ',')));
        assert_eq!(
            marks("1\u{202f}234\u{202f}567,5"),
            Some((Some('\u{202f}'), ','))
        );
        assert_eq!(marks("12,34,567.5"), Some((None, '.')));
        assert_eq!(marks("1234567,5"), Some((None, ',')));
        assert_eq!(marks("\u{661}\u{662}"), None);
    }

    #[test]
    fn without_a_browser_dates_are_plain() {
        let date_of = |text: &str| crate::format::parse_date(text).map(date);
        assert_eq!(date_of("2026-07-21").as_deref(), Some("2026-07-21"));
    }
}
