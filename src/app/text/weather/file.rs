//! A day out of a weather file.

use super::place::position;
use crate::format::{UnitSystem, date};
use crate::text::{Voice, listed};
use noonday_engine::scenario::{Dimension, Place, TakenDay};
use noonday_engine::weather::{EpwError, FileDay, FileWeather, WeatherError};

pub const ABOUT: &str = "A weather file holds every hour of a year at one place, measured or put together from typical months. Public meteorological services and research institutes give them away; what is read here is the open hourly format whose files end in .epw. Choose one, drop it anywhere on this page, or try the invented one.";
pub const CHOOSE: &str = "Weather file";
pub const INVENTED: &str = "Try an invented summer";
pub const INVENTED_NAME: &str = "An invented place";
pub const INVENTED_NOTE: &str = "This summer is invented, made by a formula, for trying things out. Nothing in it was measured.";
pub const PUT_AWAY: &str = "Put the file away";
pub const ORDER: &str = "Days in the order of";
pub const BY_HEAT: &str = "their heat, hottest first";
pub const BY_DATE: &str = "their dates";
pub const DAY: &str = "Day of the file";
pub const TYPICAL: &str = "A few to start from:";
pub const USE: &str = "Put the scenario on this day";
pub const NEEDS_FILE: &str =
    "This needs a weather file: choose one above under “A day out of a weather file”, or";
pub const TAKEN: &str = "The scenario is on this day now.";

pub const NO_SUN: &str = "The sun's path cannot be calculated at the place of this file.";

/// Ranks that are offered by name, by how hot the day is.
pub const RANKS: [(usize, &str); 4] = [
    (0, "The hottest"),
    (4, "5th hottest"),
    (9, "10th hottest"),
    (29, "30th hottest"),
];

/// What the file is.
pub fn facts(name: &str, weather: &FileWeather, units: UnitSystem) -> String {
    let site = weather.place();
    let place = Place {
        latitude_deg: site.latitude_deg,
        longitude_deg: site.longitude_deg,
        ..noonday_engine::scenario::example().place
    };
    let first = weather.first_day();
    let last = first.plus_days(weather.days() as i32 - 1);
    let filled: Vec<String> = weather
        .filled()
        .iter()
        .map(|filled| format!("{} in {} hours", filled.quantity, filled.records))
        .collect();
    let gaps = if filled.is_empty() {
        String::new()
    } else {
        format!(
            " Filled in, because the file does not say: {}.",
            listed(&filled)
        )
    };
    format!(
        "{}: {}, {} up, {} days from {} to {}.{gaps}",
        if name.is_empty() { INVENTED_NAME } else { name },
        position(&place, units),
        units.quantity(Dimension::Altitude, site.altitude_m),
        weather.days(),
        day_month(first),
        day_month(last),
    )
}

/// A day without its year, which means nothing in a file of typical months.
pub fn day_month(day: noonday_engine::solar::Date) -> String {
    crate::format::day_and_month(day).unwrap_or_else(|| date(day))
}

/// A day in a list.
pub fn day_line(rank: usize, day: &FileDay, units: UnitSystem) -> String {
    format!(
        "{}: {} to {}, sun {} (no. {} by heat)",
        day_month(day.date),
        units.temperature(day.low_c, 0),
        units.temperature(day.high_c, 0),
        units.day_sun(day.sun_wh_m2),
        rank + 1
    )
}

/// What picking a day sets.
pub fn would_set(taken: &TakenDay, voice: &Voice) -> String {
    let (day, place) = (&taken.document.day, &taken.document.place);
    let units = voice.units;
    format!(
        "Sets the place ({}, {} up, clock UTC{}{}), the date, a high of {}, a low of {}, a dew point of {}, {} cloud and wind of {}. Summer time, ground, shade and haze stay as they are.",
        position(place, units),
        units.quantity(Dimension::Altitude, place.altitude_m),
        if place.utc_offset_h < 0.0 { "" } else { "+" },
        units.number(place.utc_offset_h, 2),
        units.temperature(day.high_c, 1),
        units.temperature(day.low_c, 1),
        units.temperature(day.dew_point_c, 1),
        units.percent(day.cloud_fraction),
        units.quantity(Dimension::WindSpeed, day.wind_speed_m_s),
    )
}

/// What a day loses by being told as a forecast, in numbers.
pub fn loses(taken: &TakenDay, voice: &Voice) -> String {
    let (reduced, units) = (&taken.reduced, voice.units);
    let off = |k: f64| units.quantity(Dimension::TemperatureDifference, k);
    format!(
        "A scenario holds a forecast and not the hours of a file, so that it fits into a link. That loses the day's own course: cloud and wind that come and go, humidity that changes, an odd hour of the high, the days before. Of this day the air is off by {} (root mean square; {} too {} at worst), the sun of the day is {} where the file has {}. “A whole summer” runs the hours themselves.",
        off(reduced.rms_k),
        off(reduced.worst_k.abs()),
        if reduced.worst_k < 0.0 {
            "cool"
        } else {
            "warm"
        },
        units.day_sun(reduced.sun_forecast_wh_m2),
        units.day_sun(reduced.sun_file_wh_m2),
    )
}

/// Why a day cannot be told as a forecast.
pub fn weather_error(error: &WeatherError) -> &'static str {
    match error {
        WeatherError::LowAboveHigh { .. }
        | WeatherError::Hours(_)
        | WeatherError::OutOfRange(_) => {
            "This day lies outside what a forecast of a hot day can say."
        }
        WeatherError::Sun(_) => NO_SUN,
    }
}

/// Why a file that begins like none that is known was not taken.
pub fn unknown(name: &str) -> String {
    format!("“{name}” begins neither like a weather file nor like anything else that is read here.")
}

/// A size in the unit in which systems show it.
fn megabytes(bytes: f64) -> String {
    UnitSystem::Metric.number(bytes / 1e6, 1)
}

/// Why a file is too large.
pub fn too_large(bytes: f64, most: f64) -> String {
    format!(
        "This file has {} MB; a year of hours takes less than 2, and at most {} are read.",
        megabytes(bytes),
        megabytes(most)
    )
}

/// Why a file cannot be read.
pub fn file_error(error: &EpwError) -> String {
    match error {
        EpwError::TooLong { bytes } => format!(
            "It has {} MB, which is more than a year of weather.",
            megabytes(*bytes as f64)
        ),
        EpwError::HeaderMissing { line, expected } => format!(
            "Line {line} does not begin with “{expected}”, as it does in a weather file of the format that is read here."
        ),
        EpwError::FieldMissing { line, field } => {
            format!("Line {line} ends before its {field}. Was the file cut off?")
        }
        EpwError::NotANumber { line, field } => {
            format!("Line {line}: the {field} cannot be read.")
        }
        EpwError::OutOfRange {
            line,
            field,
            value,
            least,
            greatest,
        } => format!(
            "Line {line}: the {field} is {value}, which is not between {least} and {greatest}."
        ),
        EpwError::OutOfSequence { line, field } => format!(
            "Line {line} is not the hour that should follow: its {field} is another. Every hour has to be there, once and in order."
        ),
        EpwError::EndsEarly { records } => format!(
            "The file ends after {records} hours, before the day that its heading names as the last. Was it cut off?"
        ),
        EpwError::NothingKnown { field } => {
            format!(
                "The file does not say the {field} in any hour, and nothing can stand in for that."
            )
        }
        EpwError::NoSuchDay { .. } => "The file does not hold that day.".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::{example, take_file_day};
    use noonday_engine::weather::invented_summer;

    #[test]
    fn what_a_day_sets_and_loses_is_told_in_numbers() {
        let weather = invented_summer().unwrap();
        let voice = Voice::new(&example(), UnitSystem::Metric);
        assert!(
            facts("", &weather, UnitSystem::Metric).starts_with("An invented place: 38° north")
        );
        let taken = take_file_day(&example(), &weather.starting_on(7, 10).unwrap()).unwrap();
        let (sets, loses) = (would_set(&taken, &voice), loses(&taken, &voice));
        assert!(
            sets.contains("a high of 36\u{a0}°C") && sets.contains("UTC−6"),
            "{sets}"
        );
        assert!(
            loses.contains("root mean square") && loses.contains("kWh/m²"),
            "{loses}"
        );
    }

    #[test]
    fn a_broken_file_is_told_by_line_and_field() {
        let error = FileWeather::from_epw_text("LOCATION,a\n").unwrap_err();
        assert!(file_error(&error).starts_with("Line 2 does not begin with “DESIGN"));
        let told = file_error(&EpwError::OutOfRange {
            line: 12,
            field: "dry bulb temperature",
            value: 88.0,
            least: -70.0,
            greatest: 70.0,
        });
        assert_eq!(
            told,
            "Line 12: the dry bulb temperature is 88, which is not between -70 and 70."
        );
    }
}
