//! The time of a line.

use crate::quantity::parse_decimal;
use crate::solar::Date;

/// A time as it stands in a log.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Stamp {
    /// With its date.
    Dated {
        /// The date, where the calendar of the sun reaches to it.
        date: Option<Date>,
        /// Days since an epoch.
        days: f64,
        /// Seconds of the day.
        second: f64,
        /// How far the clock is ahead of UTC, h, if it says so.
        ahead_of_utc_h: Option<f64>,
    },
    /// The clock alone.
    Clock {
        /// Seconds of the day.
        second: f64,
    },
    /// A number since the start.
    Number {
        /// In whatever unit.
        value: f64,
    },
}

/// Reads a time: `2026-07-21T14:05:30+02:00`, `2026-07-21 14:05`, `21.07.2026 14:05`, `14:05:30`, `2:05 pm`, `12.5`, `12,5`.
pub(super) fn read_stamp(cell: &str) -> Option<Stamp> {
    let text = cell.trim().to_ascii_lowercase();
    if let Some(value) = parse_decimal(&text.replace(',', ".")).filter(|value| value.is_finite()) {
        return Some(Stamp::Number { value });
    }
    let Some((day, clock)) = text
        .split_once(['t', ' '])
        .filter(|(day, _)| !day.contains(':'))
    else {
        return clock_s(&text).map(|second| Stamp::Clock { second });
    };
    let (year, month, date) = calendar(day)?;
    let (clock, ahead_of_utc_h) = zone(clock.trim())?;
    Some(Stamp::Dated {
        date: Date::new(
            i32::from(year),
            u8::try_from(month).ok()?,
            u8::try_from(date).ok()?,
        )
        .ok(),
        days: days_of(i64::from(year), i64::from(month), i64::from(date)),
        second: clock_s(clock)?,
        ahead_of_utc_h,
    })
}

/// Year, month and day of `2026-07-21`, `2026/07/21` or `21.07.2026`. The order of other numbers with slashes cannot be told.
fn calendar(text: &str) -> Option<(u16, u16, u16)> {
    let parts: Vec<u16> = text
        .split(['-', '/', '.'])
        .map(|part| part.parse().ok())
        .collect::<Option<_>>()?;
    let [first, middle, last] = *parts.as_slice() else {
        return None;
    };
    let (year, day) = match (first > 31, text.contains('.')) {
        (true, _) => (first, last),
        (false, true) => (last, first),
        (false, false) => return None,
    };
    let fits =
        (1_950..=2_100).contains(&year) && (1..=12).contains(&middle) && (1..=31).contains(&day);
    fits.then_some((year, middle, day))
}

/// A clock without its zone, and the zone in hours.
fn zone(clock: &str) -> Option<(&str, Option<f64>)> {
    if let Some(clock) = clock.strip_suffix('z') {
        return Some((clock, Some(0.0)));
    }
    let Some(place) = clock.rfind(['+', '-']) else {
        return Some((clock, None));
    };
    let (clock, offset) = clock.split_at(place);
    let digits: String = offset.chars().filter(char::is_ascii_digit).collect();
    let (hours, minutes) = digits.split_at_checked(2)?;
    let hours: f64 = parse_decimal(hours)?;
    let minutes = if minutes.is_empty() {
        0.0
    } else {
        parse_decimal(minutes)?
    };
    let sign = if offset.starts_with('-') { -1.0 } else { 1.0 };
    Some((clock, Some(sign * (hours + minutes / 60.0))))
}

/// Seconds of the day of `14:05`, `14:05:30.5` or `2:05 pm`.
fn clock_s(text: &str) -> Option<f64> {
    let text = text.trim();
    let (digits, half) = match (text.strip_suffix("am"), text.strip_suffix("pm")) {
        (Some(digits), _) => (digits.trim(), Some(0.0)),
        (_, Some(digits)) => (digits.trim(), Some(12.0)),
        _ => (text, None),
    };
    let mut parts = digits.split(':');
    let hour: u32 = parts.next()?.parse().ok()?;
    let minute: u32 = parts.next()?.parse().ok()?;
    let second = match parts.next() {
        Some(second) => parse_decimal(second)?,
        None => 0.0,
    };
    let hour = match half {
        Some(half) if (1..=12).contains(&hour) => f64::from(hour % 12) + half,
        Some(_) => return None,
        None => f64::from(hour),
    };
    let fits =
        parts.next().is_none() && hour <= 24.0 && minute < 60 && (0.0..60.0).contains(&second);
    fits.then_some(hour * 3_600.0 + f64::from(minute) * 60.0 + second)
}

/// Days since 0000-03-01 of the Gregorian calendar (Hinnant's days_from_civil, without its shift to 1970).
fn days_of(year: i64, month: i64, day: i64) -> f64 {
    let year = if month <= 2 { year - 1 } else { year };
    let day_of_year = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;
    (365 * year + year / 4 - year / 100 + year / 400 + day_of_year) as f64
}
