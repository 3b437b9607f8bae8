//! All wording of the page: labels, sentences, messages. The engine returns enums and numbers; here they become words.

pub mod answer;
pub mod basis;
pub mod building;
pub mod charts;
pub mod compare;
pub mod comparing;
pub mod decide;
pub mod drawing;
pub mod errors;
pub mod fields;
pub mod files;
pub mod groups;
pub mod heat;
pub mod ledger;
pub mod options;
pub mod page;
pub mod proving;
pub mod report;
pub mod roof;
pub mod sending;
pub mod starting;
pub mod storage;
pub mod summary;
pub mod weather;
pub mod working;

use crate::format::{Amount, UnitSystem, weekday};
use noonday_engine::scenario::ScenarioDocument;

/// How a scenario speaks: its units, its currency and its calendar.
#[derive(Clone, Debug, PartialEq)]
pub struct Voice {
    /// Units shown.
    pub units: UnitSystem,
    /// ISO 4217 code of the currency.
    pub currency: String,
    date: noonday_engine::solar::Date,
    days: f64,
}

impl Voice {
    /// The voice of a scenario.
    pub fn new(document: &ScenarioDocument, units: UnitSystem) -> Self {
        Self {
            units,
            currency: document.prices.currency.clone(),
            date: document.day.date,
            days: document.day.days,
        }
    }

    /// An instant of the run: the hour, and the day where that is not plain.
    pub fn instant(&self, time_h: f64) -> String {
        let clock = self.units.clock(time_h.rem_euclid(24.0));
        let day = (time_h / 24.0).floor() as i64;
        match (self.days > 1.0, day) {
            (false, 0) => clock,
            (false, _) => format!("{clock} the next day"),
            (true, day) => format!("{clock} on {}", weekday(self.date, day)),
        }
    }

    /// An amount as text.
    pub fn amount(&self, amount: Amount) -> String {
        self.units.amount(amount, &self.currency)
    }

    /// How far an amount is above or below another; nothing where no difference would show.
    pub fn difference(&self, now: Amount, before: Amount) -> Option<String> {
        self.units.difference(now, before, &self.currency)
    }

    /// A span of hours of the run.
    pub fn span(&self, from_h: f64, until_h: f64) -> String {
        format!(
            "{} to {}",
            self.units.clock(from_h.rem_euclid(24.0)),
            self.units.clock(until_h.rem_euclid(24.0))
        )
    }

    /// Name of the day on which an instant falls.
    pub fn day_name(&self, time_h: f64) -> &'static str {
        weekday(self.date, (time_h / 24.0).floor() as i64)
    }
}

/// Joins phrases as prose does: `a`, `a and b`, `a, b and c`.
pub fn listed(phrases: &[String]) -> String {
    match phrases {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// Nearest of the eight points of the compass.
pub fn compass(azimuth_deg: f64) -> &'static str {
    const POINTS: [&str; 8] = [
        "north",
        "north-east",
        "east",
        "south-east",
        "south",
        "south-west",
        "west",
        "north-west",
    ];
    let eighth = (azimuth_deg / 45.0).round().rem_euclid(8.0) as usize;
    POINTS.get(eighth).copied().unwrap_or("north")
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::example;

    #[test]
    fn instants_name_the_day_only_where_it_is_not_plain() {
        let mut document = example();
        let voice = Voice::new(&document, UnitSystem::Metric);
        assert_eq!(voice.instant(14.5), "14:30");
        assert_eq!(voice.instant(29.5), "05:30 the next day");
        document.day.days = 3.0;
        let voice = Voice::new(&document, UnitSystem::Metric);
        assert_eq!(voice.instant(29.5), "05:30 on Wednesday");
    }

    #[test]
    fn phrases_are_joined_as_in_prose() {
        let words = ["a".to_owned(), "b".to_owned(), "c".to_owned()];
        assert_eq!(listed(&words), "a, b and c");
        assert_eq!(listed(&words[..2]), "a and b");
        assert_eq!(listed(&words[..1]), "a");
    }
}
