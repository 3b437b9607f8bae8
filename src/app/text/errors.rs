//! What is said when an entry cannot be run or a link cannot be read.

use super::fields::{bounds, full_label};
use crate::format::{UnitSystem, unit};
use noonday_engine::scenario::{
    Dimension, Field, FieldError, Kind, LONGEST_LINK_BYTES, LinkError, NumberField, Problem,
    example, field,
};

/// Said of a state that the engine refuses though its entries are in order.
pub const REFUSED: &str = "This combination of values cannot be calculated.";

/// Said of a typed text that is no number.
pub fn not_a_number(field: &Field, units: UnitSystem, currency: &str) -> String {
    match &field.kind {
        Kind::Number(number) if number.dimension == Dimension::HourOfDay => {
            "This is not an hour of the day. Write 22:30 or 10:30 pm.".to_owned()
        }
        Kind::Number(number) => {
            let range = range(number, units, currency);
            format!("This is not a number. Write one from {range}.")
        }
        _ => "There is no such day between the years 1950 and 2100.".to_owned(),
    }
}

/// The allowed range of a number in the shown unit, rounded inwards so that its ends are allowed.
pub fn range(number: &NumberField, units: UnitSystem, currency: &str) -> String {
    let (least, most) = range_shown(number, units);
    if number.dimension == Dimension::HourOfDay {
        return format!("{} to {}", units.clock(least), units.clock(most));
    }
    let unit = unit(number.dimension, units);
    format!(
        "{} to {}\u{a0}{}",
        units.number(least, unit.decimals),
        units.number(most, unit.decimals),
        unit.label(currency)
    )
    .trim_end()
    .to_owned()
}

/// The ends of the allowed range in the shown unit, rounded inwards to the decimals shown.
pub fn range_shown(number: &NumberField, units: UnitSystem) -> (f64, f64) {
    let unit = unit(number.dimension, units);
    let scale = ten_to(unit.decimals);
    // A hair of slack keeps 150.00000000000003 from being rounded down to 149.9.
    let slack = 1e-9;
    (
        (unit.shown(number.minimum) * scale - slack).ceil() / scale,
        (unit.shown(number.maximum) * scale + slack).floor() / scale,
    )
}

/// Said beside the field that an error names.
pub fn field_error(error: &FieldError, units: UnitSystem, currency: &str) -> String {
    let Some(found) = field(error.key) else {
        return "This scenario was made by a version that this page does not know.".to_owned();
    };
    match &error.problem {
        Problem::NotFinite => not_a_number(found, units, currency),
        Problem::OutOfRange { .. } => out_of_range(found, units, currency),
        Problem::NotWhole { .. } => "Only whole numbers make sense here.".to_owned(),
        Problem::TooLong {
            characters,
            longest,
        } => format!("This has {characters} characters; at most {longest} fit."),
        Problem::NotBelow {
            other_key, other, ..
        } => not_below(found, other_key, *other, units),
        Problem::GlassLargerThanFace {
            largest_area_m2, ..
        } => format!(
            "This is more than the side it sits in can hold: at most {} with these measures, nine tenths of it.",
            units.quantity(Dimension::Area, *largest_area_m2)
        ),
        Problem::SharesAboveOne { sum } => format!(
            "With the share on the floor this makes {}; together they cannot be more than {}.",
            units.percent(*sum),
            units.percent(1.0)
        ),
        Problem::ImpossibleSensibleShare {
            greatest: Some(greatest),
            ..
        } => format!(
            "With so little air through it no coil does more than {} of its work on temperature.",
            units.percent((greatest * 100.0).floor() / 100.0)
        ),
        Problem::ImpossibleSensibleShare { greatest: None, .. } => {
            "No coil splits its work so with this air flow: its surface would have to freeze."
                .to_owned()
        }
        Problem::UnknownVersion { version } => {
            format!("This scenario has version {version}, which this page does not know.")
        }
    }
}

/// The same with the name of the input, for a place away from it.
pub fn field_error_named(error: &FieldError, units: UnitSystem, currency: &str) -> String {
    let text = field_error(error, units, currency);
    match field(error.key) {
        Some(found) => format!("{}: {text}", full_label(found)),
        None => text,
    }
}

/// What is said of a form with something that older versions of the page did not have.
const MADE_BY_NEWER: &str = "; it was made by a newer version of Noonday, so load this page again, and use the new version when it is offered";

/// What is wrong with a link or a stored text.
pub fn link_error(error: &LinkError) -> String {
    match error {
        LinkError::TooLong { bytes } => format!(
            "it is {bytes} characters long, and no scenario needs more than {LONGEST_LINK_BYTES}"
        ),
        LinkError::Damaged => {
            "a part of it is missing or mistyped, so it has to be copied or sent once more"
                .to_owned()
        }
        LinkError::NoVersion => "it does not begin with a version, as in “v=1”".to_owned(),
        LinkError::UnknownVersion { version } => {
            let newer = version
                .parse()
                .is_ok_and(|number: u32| number > example().version);
            format!(
                "it has version “{}”, which this page does not know{}",
                short(version),
                if newer { MADE_BY_NEWER } else { "" }
            )
        }
        LinkError::NotAPair { part } => {
            format!("its part “{}” is not a number and a value", short(part))
        }
        LinkError::UnknownField { id } => {
            format!(
                "it names an input number “{}” that does not exist here{MADE_BY_NEWER}",
                short(id)
            )
        }
        LinkError::Twice { key } => format!("it gives “{}” twice", label_of(key)),
        LinkError::Unreadable { key, value } => {
            format!("“{}” cannot be read as “{}”", short(value), label_of(key))
        }
    }
}

fn out_of_range(found: &Field, units: UnitSystem, currency: &str) -> String {
    match found.number() {
        Some(number) => format!(
            "Allowed is {}: {}.",
            range(number, units, currency),
            bounds(found)
        ),
        None => "This is outside what is allowed.".to_owned(),
    }
}

fn not_below(found: &Field, other_key: &str, other: f64, units: UnitSystem) -> String {
    let limit = match found.number() {
        Some(number) => units.quantity(number.dimension, other),
        None => units.number(other, 2),
    };
    format!(
        "With “{}” as it is, this can be at most {limit}.",
        label_of(other_key)
    )
}

/// What an input is called away from its part; the key itself where there is no such input.
pub fn label_of(key: &str) -> String {
    field(key).map_or_else(|| key.to_owned(), full_label)
}

fn short(text: &str) -> String {
    const MOST: usize = 40;
    if text.chars().count() <= MOST {
        return text.to_owned();
    }
    let start: String = text.chars().take(MOST).collect();
    format!("{start}…")
}

fn ten_to(decimals: usize) -> f64 {
    (0..decimals).fold(1.0, |product, _| product * 10.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::{Scenario, example, fields, from_any_link, from_link};

    fn errors_of(link: &str) -> Vec<String> {
        let document = from_link(link).unwrap();
        let errors = Scenario::new(document).unwrap_err();
        errors
            .iter()
            .map(|error| field_error_named(error, UnitSystem::Metric, "USD"))
            .collect()
    }

    #[test]
    fn a_value_out_of_range_is_told_the_range_in_the_shown_unit_and_why() {
        let told = errors_of("v=1&18=9");
        assert_eq!(
            told,
            [
                "Insulation of the walls: Allowed is 0 to 150\u{a0}mm: more than 150 mm leaves no room inside."
            ]
        );
    }

    #[test]
    fn values_at_odds_name_each_other() {
        let told = errors_of("v=1&82=40");
        assert!(told[0].contains("Highest temperature"), "{}", told[0]);
        assert!(told[0].contains("35.5\u{a0}°C"), "{}", told[0]);
    }

    #[test]
    fn the_ends_of_a_range_as_shown_are_allowed() {
        for system in [UnitSystem::Us, UnitSystem::Metric] {
            for field in fields() {
                let Some(number) = field.number() else {
                    continue;
                };
                let (least, most) = range_shown(number, system);
                assert!(least < most, "{}", field.key);
                for shown in [least, most] {
                    let value = unit(number.dimension, system).si(shown);
                    let slack = 1e-12 * value.abs().max(1e-3);
                    assert!(
                        value >= number.minimum - slack && value <= number.maximum + slack,
                        "{} {system:?}: {value}",
                        field.key
                    );
                }
            }
        }
    }

    #[test]
    fn every_damage_of_a_link_is_named() {
        for (link, word) in [
            ("", "version"),
            ("v=9", "“9”"),
            ("9abc", "“9”"),
            ("2abc", "missing or mistyped"),
            ("v=1&zz", "“zz”"),
            ("v=1&999=1", "“999”"),
            ("v=1&18=abc", "Insulation of the walls"),
            ("v=1&18=0.1&18=0.1", "twice"),
        ] {
            let error = from_any_link(link).unwrap_err();
            assert!(link_error(&error).contains(word), "{link}");
        }
        assert!(Scenario::new(example()).is_ok());
    }
}
