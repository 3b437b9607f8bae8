//! Decimal numbers as text, both ways.

use super::UnitSystem;

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

/// A number for a text box: an ASCII minus, a point, no groups, no needless zeros.
pub fn entry_text(value: f64, decimals: usize) -> String {
    let text = trimmed(format!("{value:.decimals$}"));
    if text == "-0" { "0".to_owned() } else { text }
}

/// A number for prose: grouped thousands, a true minus sign, no needless zeros.
pub fn prose(value: f64, decimals: usize, group_mark: char) -> String {
    let text = entry_text(value, decimals);
    let (sign, digits) = match text.strip_prefix('-') {
        Some(digits) => ("\u{2212}", digits),
        None => ("", text.as_str()),
    };
    let (whole, fraction) = match digits.split_once('.') {
        Some((whole, fraction)) => (whole, format!(".{fraction}")),
        None => (digits, String::new()),
    };
    format!("{sign}{}{fraction}", grouped(whole, group_mark))
}

/// Reads a typed number: point or comma, thousands in groups, a true or an ASCII minus, and the unit behind it if it is
/// the one shown.
///
/// A comma before exactly three digits groups thousands in US units; elsewhere a comma is the decimal mark.
pub fn parse_number(typed: &str, unit_symbol: &str, system: UnitSystem) -> Typed {
    let text = typed.trim().replace('\u{2212}', "-");
    let text = without_unit(&text, unit_symbol);
    let mut text: String = text.chars().filter(|mark| !mark.is_whitespace()).collect();
    if system == UnitSystem::Us && has_grouping_commas(&text) {
        text.retain(|mark| mark != ',');
    }
    let text = text.replace(',', ".");
    if matches!(text.as_str(), "" | "-" | "+" | "." | "-.") {
        return Typed::Unfinished;
    }
    let plain = text
        .chars()
        .all(|mark| mark.is_ascii_digit() || matches!(mark, '.' | '-' | '+'));
    match text.parse::<f64>() {
        Ok(value) if plain && value.is_finite() => Typed::Value(value),
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

fn has_grouping_commas(text: &str) -> bool {
    let whole = text.split('.').next().unwrap_or_default();
    let mut groups = whole.trim_start_matches('-').split(',');
    let first_fits = groups
        .next()
        .is_some_and(|group| (1..=3).contains(&group.len()) && group != "0");
    let rest: Vec<&str> = groups.collect();
    first_fits && !rest.is_empty() && rest.iter().all(|group| group.len() == 3)
}

fn trimmed(text: String) -> String {
    if !text.contains('.') {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn grouped(whole: &str, mark: char) -> String {
    let mut text = String::new();
    for (index, digit) in whole.chars().enumerate() {
        if index > 0 && (whole.len() - index).is_multiple_of(3) {
            text.push(mark);
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn metric(typed: &str) -> Typed {
        parse_number(typed, "mm", UnitSystem::Metric)
    }

    #[test]
    fn numbers_are_read_as_people_type_them() {
        assert_eq!(metric("40"), Typed::Value(40.0));
        assert_eq!(metric(" 40,5 mm"), Typed::Value(40.5));
        assert_eq!(metric("\u{2212}3.5"), Typed::Value(-3.5));
        assert_eq!(metric("1 600"), Typed::Value(1_600.0));
        assert_eq!(
            parse_number("1,600", "USD", UnitSystem::Us),
            Typed::Value(1_600.0)
        );
        assert_eq!(
            parse_number("12,345,678.5", "", UnitSystem::Us),
            Typed::Value(12_345_678.5)
        );
        assert_eq!(parse_number("0,5", "", UnitSystem::Us), Typed::Value(0.5));
        assert_eq!(
            parse_number("13 R", "R (h·ft²·°F/BTU)", UnitSystem::Us),
            Typed::Value(13.0)
        );
    }

    #[test]
    fn half_finished_typing_is_not_an_error() {
        for typed in ["", "-", ".", " ", ","] {
            assert_eq!(metric(typed), Typed::Unfinished, "{typed:?}");
        }
        assert_eq!(metric("4."), Typed::Value(4.0));
    }

    #[test]
    fn nonsense_is_refused() {
        for typed in ["abc", "4x", "1e5", "inf", "NaN", "4..2", "--4", "4-2"] {
            assert_eq!(metric(typed), Typed::NotANumber, "{typed:?}");
        }
    }

    #[test]
    fn numbers_are_written_without_needless_marks() {
        assert_eq!(entry_text(40.0, 1), "40");
        assert_eq!(entry_text(0.25, 2), "0.25");
        assert_eq!(entry_text(-0.001, 1), "0");
        assert_eq!(prose(-1_234.5, 1, ','), "\u{2212}1,234.5");
        assert_eq!(prose(12_345.0, 0, '\u{202f}'), "12\u{202f}345");
        assert_eq!(prose(999.0, 0, ','), "999");
    }
}
