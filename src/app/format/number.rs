//! Decimal numbers as text, both ways.

use super::language::{Marks, marks};
use noonday_engine::quantity::parse_decimal;

/// What a typed number turned out to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Typed {
    /// Nothing yet, or only a sign or a point: typing has just begun.
    Unfinished,
    /// Not a number at all.
    NotANumber,
    /// A number in the shown unit.
    Value(f64),
}

/// A number for a text box: an ASCII minus, the decimal mark of the browser's language, no groups, no needless zeros.
pub fn entry_text(value: f64, decimals: usize) -> String {
    plain(value, decimals).replace('.', &marks().decimal.to_string())
}

/// A number for prose: grouped thousands, a true minus sign, no needless zeros.
pub fn prose(value: f64, decimals: usize, marks: Marks) -> String {
    let text = plain(value, decimals);
    let (sign, digits) = match text.strip_prefix('-') {
        Some(digits) => ("\u{2212}", digits),
        None => ("", text.as_str()),
    };
    let (whole, fraction) = match digits.split_once('.') {
        Some((whole, fraction)) => (whole, format!("{}{fraction}", marks.decimal)),
        None => (digits, String::new()),
    };
    format!("{sign}{}{fraction}", grouped(whole, marks.group))
}

/// Reads a typed number: point or comma, thousands in groups, a true or an ASCII minus, and the unit behind it if it is
/// the one shown.
pub fn parse_number(typed: &str, unit_symbol: &str) -> Typed {
    read(typed, unit_symbol, marks())
}

/// The group mark of the browser's language before exactly three digits groups thousands; any other point or comma is the
/// decimal mark.
fn read(typed: &str, unit_symbol: &str, marks: Marks) -> Typed {
    let text = typed.trim().replace('\u{2212}', "-");
    let text = without_unit(&text, unit_symbol);
    let mut text: String = text.chars().filter(|mark| !mark.is_whitespace()).collect();
    if let Some(group) = marks.group
        && has_groups(&text, group, marks.decimal)
    {
        text.retain(|mark| mark != group);
    }
    let text = text.replace(',', ".");
    if matches!(text.as_str(), "" | "-" | "+" | "." | "-.") {
        return Typed::Unfinished;
    }
    let plain = text
        .chars()
        .all(|mark| mark.is_ascii_digit() || matches!(mark, '.' | '-' | '+'));
    match parse_decimal(&text) {
        Some(value) if plain && value.is_finite() => Typed::Value(value),
        _ => Typed::NotANumber,
    }
}

fn without_unit<'a>(text: &'a str, unit_symbol: &str) -> &'a str {
    let first = unit_symbol.split(' ').next().unwrap_or_default();
    if first.is_empty() {
        return text;
    }
    text.strip_suffix(first).map_or(text, str::trim_end)
}

fn has_groups(text: &str, group: char, decimal: char) -> bool {
    let whole = text.split(decimal).next().unwrap_or_default();
    let mut groups = whole.trim_start_matches('-').split(group);
    let first_fits = groups
        .next()
        .is_some_and(|group| (1..=3).contains(&group.len()) && group != "0");
    let rest: Vec<&str> = groups.collect();
    first_fits && !rest.is_empty() && rest.iter().all(|group| group.len() == 3)
}

fn plain(value: f64, decimals: usize) -> String {
    let text = trimmed(format!("{value:.decimals$}"));
    if text == "-0" { "0".to_owned() } else { text }
}

fn trimmed(text: String) -> String {
    if !text.contains('.') {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn grouped(whole: &str, mark: Option<char>) -> String {
    let mut text = String::new();
    for (index, digit) in whole.chars().enumerate() {
        if index > 0 && (whole.len() - index).is_multiple_of(3) {
            text.extend(mark);
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    const GERMAN: Marks = Marks {
        decimal: ',',
        group: Some('.'),
    };

    fn english(typed: &str) -> Typed {
        read(typed, "mm", Marks::ENGLISH)
    }

    #[test]
    fn numbers_are_read_as_people_type_them() {
        assert_eq!(english("40"), Typed::Value(40.0));
        assert_eq!(english(" 40,5 mm"), Typed::Value(40.5));
        assert_eq!(english("\u{2212}3.5"), Typed::Value(-3.5));
        assert_eq!(english("1 600"), Typed::Value(1_600.0));
        assert_eq!(english("1,600"), Typed::Value(1_600.0));
        assert_eq!(english("12,345,678.5"), Typed::Value(12_345_678.5));
        assert_eq!(english("0,5"), Typed::Value(0.5));
        assert_eq!(
            read("13 R", "R (h·ft²·°F/BTU)", Marks::ENGLISH),
            Typed::Value(13.0)
        );
    }

    #[test]
    fn the_group_mark_is_that_of_the_language() {
        let german = |typed| read(typed, "mm", GERMAN);
        assert_eq!(german("1.600"), Typed::Value(1_600.0));
        assert_eq!(german("1.600,5"), Typed::Value(1_600.5));
        assert_eq!(german("40,5"), Typed::Value(40.5));
        assert_eq!(german("40.5"), Typed::Value(40.5));
        assert_eq!(german("0.125"), Typed::Value(0.125));
        assert_eq!(prose(12_345.6, 1, GERMAN), "12.345,6");
    }

    #[test]
    fn half_finished_typing_is_not_an_error() {
        for typed in ["", "-", ".", " ", ","] {
            assert_eq!(english(typed), Typed::Unfinished, "{typed:?}");
        }
        assert_eq!(english("4."), Typed::Value(4.0));
    }

    #[test]
    fn nonsense_is_refused() {
        for typed in ["abc", "4x", "1e5", "inf", "NaN", "4..2", "--4", "4-2"] {
            assert_eq!(english(typed), Typed::NotANumber, "{typed:?}");
        }
    }

    #[test]
    fn numbers_are_written_without_needless_marks() {
        assert_eq!(entry_text(40.0, 1), "40");
        assert_eq!(entry_text(0.25, 2), "0.25");
        assert_eq!(entry_text(-0.001, 1), "0");
        assert_eq!(prose(-1_234.5, 1, Marks::ENGLISH), "\u{2212}1,234.5");
        let ungrouped = Marks {
            decimal: ',',
            group: None,
        };
        assert_eq!(prose(12_345.0, 0, ungrouped), "12345");
        assert_eq!(prose(999.0, 0, Marks::ENGLISH), "999");
    }
}
