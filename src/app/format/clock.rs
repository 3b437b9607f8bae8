//! Hours of the clock and spans of time as text, and typed hours read back.

use super::{Typed, UnitSystem};
use noonday_engine::quantity::parse_decimal;
use noonday_engine::solar::Date;

const MINUTES_PER_HOUR: i64 = 60;
const MINUTES_PER_DAY: i64 = 1_440;

/// An hour on the clock. Exactly 24 is the end of a day and is shown as such; other hours beyond 24 wrap.
pub fn clock(hour: f64, system: UnitSystem) -> String {
    let minutes = whole_minutes(hour);
    if minutes == MINUTES_PER_DAY && system == UnitSystem::Metric {
        return "24:00".to_owned();
    }
    let (h, m) = hour_and_minute(minutes);
    match system {
        UnitSystem::Metric => format!("{h:02}:{m:02}"),
        UnitSystem::Us if m == 0 => format!("{}\u{a0}{}", twelve(h), half(h)),
        UnitSystem::Us => format!("{}:{m:02}\u{a0}{}", twelve(h), half(h)),
    }
}

/// An hour on the clock for an axis: only the hour, `noon` and `midnight` where the clock has twelve hours.
pub fn axis_hour(hour: f64, system: UnitSystem) -> String {
    let (h, _) = hour_and_minute(whole_minutes(hour));
    match (system, h) {
        (UnitSystem::Metric, _) => format!("{h}"),
        (UnitSystem::Us, 0) => "12\u{a0}am".to_owned(),
        (UnitSystem::Us, 12) => "noon".to_owned(),
        (UnitSystem::Us, _) => format!("{}\u{a0}{}", twelve(h), half(h)),
    }
}

/// A typed hour of the day: `22:30`, `10:30 pm`, `10pm`, `22`, `7.5`, `noon`, `midnight`.
pub fn parse_clock(typed: &str) -> Typed {
    let text = typed
        .trim()
        .to_ascii_lowercase()
        .replace(['\u{a0}', ' '], "");
    match text.as_str() {
        "" => return Typed::Unfinished,
        "noon" => return Typed::Value(12.0),
        "midnight" => return Typed::Value(0.0),
        _ => {}
    }
    let text = text.replace("a.m.", "am").replace("p.m.", "pm");
    let (digits, half) = match (text.strip_suffix("am"), text.strip_suffix("pm")) {
        (Some(digits), _) => (digits, Some(0.0)),
        (_, Some(digits)) => (digits, Some(12.0)),
        _ => (text.as_str(), None),
    };
    let Some(hour) = parse_hour(digits) else {
        return Typed::NotANumber;
    };
    match half {
        None => Typed::Value(hour),
        Some(_) if !(1.0..13.0).contains(&hour) => Typed::NotANumber,
        Some(half) => Typed::Value(hour.rem_euclid(12.0) + half),
    }
}

/// A day as date boxes write it: `2026-07-21`; nothing unless the calendar has it between 1950 and 2100.
pub fn parse_date(text: &str) -> Option<Date> {
    let mut parts = text.splitn(3, '-');
    Date::new(
        parts.next()?.parse().ok()?,
        parts.next()?.parse().ok()?,
        parts.next()?.parse().ok()?,
    )
    .ok()
}

/// A span of time as people say it: `50 min`, `1 h 50 min`, `2 days 4 h`.
pub fn duration(hours: f64) -> String {
    let minutes = whole_minutes(hours);
    let (h, m) = (minutes / MINUTES_PER_HOUR, minutes % MINUTES_PER_HOUR);
    match (h, m) {
        (0, m) => format!("{m}\u{a0}min"),
        (h, 0) if h < 48 => format!("{h}\u{a0}h"),
        (h, m) if h < 24 => format!("{h}\u{a0}h {m}\u{a0}min"),
        (h, _) if h < 48 => format!("{h}\u{a0}h"),
        (h, _) => days_and_hours(h),
    }
}

/// Name of the day of the week so many days after a date (Gregorian; Sakamoto's congruence).
pub fn weekday(date: Date, days_later: i64) -> &'static str {
    const NAMES: [&str; 7] = [
        "Sunday",
        "Monday",
        "Tuesday",
        "Wednesday",
        "Thursday",
        "Friday",
        "Saturday",
    ];
    NAMES
        .get(days_after_sunday(date, days_later))
        .copied()
        .unwrap_or_default()
}

/// Day of the week, Monday being 0.
pub fn weekday_index(date: Date) -> usize {
    (days_after_sunday(date, 0) + 6) % 7
}

fn days_after_sunday(date: Date, days_later: i64) -> usize {
    const SHIFT: [i64; 12] = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4];
    let month = usize::from(date.month());
    let year = i64::from(date.year()) - i64::from(month < 3);
    let shift = SHIFT.get(month - 1).copied().unwrap_or_default();
    let sum = year + year.div_euclid(4) - year.div_euclid(100)
        + year.div_euclid(400)
        + shift
        + i64::from(date.day())
        + days_later;
    usize::try_from(sum.rem_euclid(7)).unwrap_or_default()
}

fn days_and_hours(h: i64) -> String {
    match h % 24 {
        0 => format!("{}\u{a0}days", h / 24),
        rest => format!("{}\u{a0}days {rest}\u{a0}h", h / 24),
    }
}

fn parse_hour(text: &str) -> Option<f64> {
    let number = |part: &str| -> Option<f64> {
        let plain = !part.is_empty() && part.chars().all(|mark| mark.is_ascii_digit());
        plain.then(|| parse_decimal(part)).flatten()
    };
    if let Some((hours, minutes)) = text.split_once([':', 'h']) {
        let minutes = if minutes.is_empty() {
            0.0
        } else {
            number(minutes)?
        };
        return (minutes < 60.0)
            .then(|| number(hours))
            .flatten()
            .map(|hours| hours + minutes / 60.0);
    }
    if let Some((hours, _)) = text.split_once(['.', ',']) {
        number(hours)?;
        return parse_decimal(&text.replace(',', "."));
    }
    number(text)
}

fn whole_minutes(hour: f64) -> i64 {
    (hour * 60.0).round() as i64
}

fn hour_and_minute(minutes: i64) -> (i64, i64) {
    let minutes = minutes.rem_euclid(MINUTES_PER_DAY);
    (minutes / MINUTES_PER_HOUR, minutes % MINUTES_PER_HOUR)
}

fn twelve(hour: i64) -> i64 {
    match hour % 12 {
        0 => 12,
        hour => hour,
    }
}

fn half(hour: i64) -> &'static str {
    if hour < 12 { "am" } else { "pm" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hours_are_shown_by_the_clock_of_the_system() {
        assert_eq!(clock(22.5, UnitSystem::Metric), "22:30");
        assert_eq!(clock(30.0, UnitSystem::Metric), "06:00");
        assert_eq!(clock(24.0, UnitSystem::Metric), "24:00");
        assert_eq!(clock(22.5, UnitSystem::Us), "10:30\u{a0}pm");
        assert_eq!(clock(0.0, UnitSystem::Us), "12\u{a0}am");
        assert_eq!(clock(12.0, UnitSystem::Us), "12\u{a0}pm");
        assert_eq!(axis_hour(36.0, UnitSystem::Us), "noon");
    }

    #[test]
    fn typed_hours_are_read_in_both_clocks() {
        for (typed, hour) in [
            ("22:30", 22.5),
            ("10:30 pm", 22.5),
            ("10:30pm", 22.5),
            ("10 p.m.", 22.0),
            ("12 am", 0.0),
            ("12:15 PM", 12.25),
            ("7", 7.0),
            ("7.5", 7.5),
            ("22h30", 22.5),
            ("noon", 12.0),
            ("midnight", 0.0),
            ("24:00", 24.0),
        ] {
            assert_eq!(parse_clock(typed), Typed::Value(hour), "{typed}");
        }
        for typed in ["25 pm", "abc", "12:75", "0 am", ":30", "1:2:3", "-3"] {
            assert_eq!(parse_clock(typed), Typed::NotANumber, "{typed}");
        }
        assert_eq!(parse_clock(" "), Typed::Unfinished);
    }

    #[test]
    fn days_are_read_as_browsers_write_them() {
        assert_eq!(parse_date("2026-07-21"), Date::new(2026, 7, 21).ok());
        for text in ["", "2026-07", "2026-02-30", "1200-01-01"] {
            assert_eq!(parse_date(text), None, "{text}");
        }
    }

    #[test]
    fn spans_are_said_in_the_units_that_fit() {
        assert_eq!(duration(0.75), "45\u{a0}min");
        assert_eq!(duration(1.5), "1\u{a0}h 30\u{a0}min");
        assert_eq!(duration(40.5), "40\u{a0}h");
        assert_eq!(duration(52.0), "2\u{a0}days 4\u{a0}h");
        assert_eq!(duration(72.0), "3\u{a0}days");
    }

    /// 1 January 2000 was a Saturday and 21 July 2026 is a Tuesday (ISO 8601 calendar).
    #[test]
    fn days_of_the_week_are_right() {
        let day = |year, month, day| Date::new(year, month, day).unwrap();
        assert_eq!(weekday(day(2000, 1, 1), 0), "Saturday");
        assert_eq!(weekday(day(2026, 7, 21), 0), "Tuesday");
        assert_eq!(weekday(day(2026, 7, 21), 6), "Monday");
        assert_eq!(weekday(day(2024, 2, 29), 1), "Friday");
    }
}
