//! A whole summer.

use super::file::day_month;
use crate::format::csv_text;
use crate::text::Voice;
use noonday_engine::advice::summer::{AskedWindow, Held, Means, Summer, SummerDay};
use noonday_engine::scenario::{NeededFor, ScenarioDocument};

pub const NOTE: &str = "Every night and every afternoon in which it must be cool, by the file's own hours. Cabin and bank go on from day to day. Three ways are held against the need: the fan alone, the cooler on the bank with its panels and driving but never plugged in, and the cooler on the mains.";
pub const NOTHING_ASKED: &str =
    "Nothing is asked for: enter under “When it must be cool” for whom and in which hours.";
pub const FROM: &str = "From";
pub const DAYS: &str = "Days";
pub const RUN: &str = "Run these days";
pub const STOP: &str = "Stop";
pub const RUNNING: &str = "Running.";
pub const STOPPED: &str = "Stopped. What was reached is shown.";
pub const REFUSED: &str = "These days cannot be run.";
pub const FAILED: &str = "The calculation ended by itself; days that are shown may not be all. Run these days again: it gets a fresh start.";
pub const NO_WORKER: &str = "This browser does not let the page calculate beside itself, or ended it twice, and a whole summer needs that. Everything else works without it; loading the page again may help.";
pub const PROGRESS: &str = "Days that are done";
pub const OUTDATED: &str = "The scenario has changed since. These are the days of the one before.";
pub const NO_SUCH_DAY: &str = "The file does not hold that day.";
pub const SAVE: &str = "Save the days (CSV)";
pub const CSV_FILE: &str = "noonday-summer.csv";
pub const OPEN: &str = "Put the scenario on this day";
pub const CHOOSE: &str = "Choose a day of the calendar to see its numbers. Arrow keys move from day to day. A night belongs to the day on which it begins.";
pub const CAUTION: &str = "A file is one past summer or a typical one; hotter days come. That every day is met here is no promise: never leave children or animals in a parked vehicle relying on it.";
pub const ACCURACY: &str = "Worked out in steps of a minute: the highest temperature of a window is then within 0.5 °C (0.9 °F) of that in steps of ten seconds, mostly within a tenth. Numbers of a day are by the file's hours, those of the scenario on that day by a forecast; they differ.";
pub const NO_COOLER: &str =
    "There is no cooler in this scenario, so that all three ways are the fan's.";

/// How a window of a day went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Went {
    /// Met by the fan alone.
    Fan,
    /// Met by the cooler on the bank.
    Bank,
    /// Met only on the mains.
    Mains,
    /// Not even there.
    Missed,
}

impl Went {
    /// All of them, mildest first.
    pub const ALL: [Self; 4] = [Self::Fan, Self::Bank, Self::Mains, Self::Missed];

    /// The least that meets a window.
    pub fn of(held: &[Held; 3]) -> Self {
        let [fan, mains, bank] = held;
        match (fan.met, bank.met, mains.met) {
            (true, _, _) => Self::Fan,
            (_, true, _) => Self::Bank,
            (_, _, true) => Self::Mains,
            _ => Self::Missed,
        }
    }

    /// In a key.
    pub fn name(self) -> &'static str {
        match self {
            Self::Fan => "the fan alone does it",
            Self::Bank => "the cooler on the bank does it",
            Self::Mains => "only the cooler on the mains does it",
            Self::Missed => "not met by any of them",
        }
    }
}

/// What a window is called: night or day, and its hours.
pub fn window_name(window: &AskedWindow, voice: &Voice) -> String {
    let part = part_name(window);
    let hours = voice.span(window.from_hour, window.until_hour);
    format!("{part}, {hours}")
}

fn part_name(window: &AskedWindow) -> &'static str {
    match window {
        window if window.is_night() => "night",
        window if window.from_hour >= 17.0 => "evening",
        window if window.from_hour >= 11.0 => "afternoon",
        _ => "day",
    }
}

/// On how many days each way meets the need: a sentence for each window.
pub fn counts(summer: &Summer, voice: &Voice) -> Vec<String> {
    let all = summer.days.len();
    let windows = summer.windows.iter().enumerate();
    windows
        .map(|(index, window)| {
            let plural = if all == 1 { "" } else { "s" };
            let whom = match window.needed_for {
                NeededFor::Animals => "animals",
                _ => "people",
            };
            let limit = voice.units.temperature(window.highest_felt_c, 0);
            let asked = format!(
                "Of {all} {}{plural} ({}, at most {limit} for {whom})",
                part_name(window),
                voice.span(window.from_hour, window.until_hour),
            );
            let [fan, mains, bank] = Means::ALL.map(|means| summer.met(index, means));
            if summer.has_cooler {
                format!("{asked} the need is met on {fan} by the fan alone, on {bank} by the cooler on the bank, and on {mains} by the cooler on the mains.")
            } else {
                format!("{asked} the fan alone meets the need on {fan}.")
            }
        })
        .collect()
}

/// The lowest charge of the bank.
pub fn lowest(summer: &Summer, document: &ScenarioDocument, voice: &Voice) -> Option<String> {
    let (charge, day) = summer.lowest_charge().filter(|_| summer.has_cooler)?;
    let reserve = document.need.reserve_state_of_charge;
    let below = summer
        .days
        .iter()
        .filter(|day| day.lowest_charge < reserve)
        .count();
    Some(format!(
        "On the bank alone its charge is lowest on {}, with {}; it falls below the reserve of {} on {below} days.",
        day_month(day),
        voice.units.percent(charge),
        voice.units.percent(reserve),
    ))
}

/// A day in the calendar for those who do not see it.
pub fn day_label(summer: &Summer, day: &SummerDay) -> String {
    let parts: Vec<String> = summer
        .windows
        .iter()
        .zip(&day.held)
        .map(|(window, held)| format!("{}: {}", part_name(window), Went::of(held).name()))
        .collect();
    format!("{}. {}", day_month(day.facts.date), parts.join("; "))
}

/// A day's heading and weather.
pub fn day_facts(day: &SummerDay, voice: &Voice) -> String {
    let units = voice.units;
    format!(
        "{}: outdoors {} to {}, dew point {}, sun {}.",
        day_month(day.facts.date),
        units.temperature(day.facts.low_c, 0),
        units.temperature(day.facts.high_c, 0),
        units.temperature(day.facts.dew_point_c, 0),
        units.day_sun(day.facts.sun_wh_m2),
    )
}

/// What the cooler took and what was left in the bank.
pub fn day_power(day: &SummerDay, voice: &Voice) -> String {
    format!(
        "The cooler takes {} from the bank, or {} on the mains; the bank falls to {}.",
        voice.units.energy(day.cooler_wh[1]),
        voice.units.energy(day.cooler_wh[0]),
        voice.units.percent(day.lowest_charge)
    )
}

pub const DAY_HEADS: [&str; 4] = [
    "Highest felt temperature",
    "Fan alone",
    "On the bank",
    "On the mains",
];

/// The cells of a window's row: fan, bank, mains.
pub fn held_cells(held: &[Held; 3], window: &AskedWindow, voice: &Voice) -> Vec<String> {
    let [fan, mains, bank] = held;
    [fan, bank, mains]
        .map(|held| {
            let (felt, _) = voice
                .units
                .temperature_against(held.worst_felt_c, window.highest_felt_c);
            if held.met {
                format!("{felt}, met")
            } else {
                format!(
                    "{felt}, missed for {}",
                    crate::format::duration(held.missed_h)
                )
            }
        })
        .to_vec()
}

/// The days as comma-separated values: temperatures and electricity in SI, as the heads say.
pub fn csv(summer: &Summer) -> String {
    let mut heads: Vec<String> = [
        "date",
        "high_c",
        "low_c",
        "dew_point_c",
        "sun_wh_m2",
        "lowest_charge_share",
        "cooler_mains_wh",
        "cooler_bank_wh",
    ]
    .map(str::to_owned)
    .to_vec();
    for window in &summer.windows {
        for way in ["fan", "mains", "bank"] {
            for what in ["met", "missed_h", "highest_felt_c"] {
                heads.push(format!("window_{}_{way}_{what}", window.slot + 1));
            }
        }
    }
    let row = |day: &SummerDay| {
        let facts = &day.facts;
        let number = |value: f64, decimals: usize| format!("{value:.decimals$}");
        let mut row = vec![
            format!(
                "{:04}-{:02}-{:02}",
                facts.date.year(),
                facts.date.month(),
                facts.date.day()
            ),
            number(facts.high_c, 1),
            number(facts.low_c, 1),
            number(facts.dew_point_c, 1),
            number(facts.sun_wh_m2, 0),
            number(day.lowest_charge, 3),
            number(day.cooler_wh[0], 0),
            number(day.cooler_wh[1], 0),
        ];
        for held in day.held.iter().flatten() {
            row.push(if held.met { "yes" } else { "no" }.to_owned());
            row.push(number(held.missed_h, 2));
            row.push(number(held.worst_felt_c, 2));
        }
        row
    };
    let rows: Vec<Vec<String>> = std::iter::once(heads)
        .chain(summer.days.iter().map(row))
        .collect();
    csv_text(&rows)
}
