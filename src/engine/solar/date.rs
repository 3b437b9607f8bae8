//! A calendar date in the proleptic Gregorian calendar, as much of one as the sun needs.
//!
//! Source: the day counts follow Fliegel & Van Flandern 1968 (Communications of the ACM 11:657).

use serde::{Deserialize, Serialize};

use super::SolarError;

/// First year accepted: from here on the difference of dynamical and universal time is well known.
pub const YEAR_LEAST: i32 = 1950;

/// Last year accepted: until here the difference of dynamical and universal time can be foretold to
/// better than the 0.001° that matters.
pub const YEAR_GREATEST: i32 = 2100;

/// Julian day number of 1 January 2000, noon (Meeus, Astronomical Algorithms, ch. 7).
const JULIAN_DAY_2000: i64 = 2_451_545;

/// Days before each month of a common year.
const DAYS_BEFORE_MONTH: [u16; 12] = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];

/// A day of the calendar; it always exists.
#[derive(Clone, Copy, Debug, Deserialize, Eq, Hash, Ord, PartialEq, PartialOrd, Serialize)]
#[serde(try_from = "DateFields")]
pub struct Date {
    year: i32,
    month: u8,
    day: u8,
}

/// A date as written in a document, not yet checked.
#[derive(Deserialize)]
struct DateFields {
    year: i32,
    month: u8,
    day: u8,
}

impl TryFrom<DateFields> for Date {
    type Error = String;

    fn try_from(fields: DateFields) -> Result<Self, Self::Error> {
        Self::new(fields.year, fields.month, fields.day).map_err(|error| format!("{error:?}"))
    }
}

impl Date {
    /// The longest day of the northern summer in the year of this model: a day to start from.
    pub const MIDSUMMER: Self = Self {
        year: 2026,
        month: 6,
        day: 21,
    };

    /// Makes a date from `year` (1950…2100), `month` (1…12) and `day` of the month.
    ///
    /// # Errors
    /// [`SolarError::NoSuchDate`] if the calendar has no such day or the year is out of range.
    pub fn new(year: i32, month: u8, day: u8) -> Result<Self, SolarError> {
        let exists = (YEAR_LEAST..=YEAR_GREATEST).contains(&year)
            && (1..=12).contains(&month)
            && (1..=days_in_month(year, month)).contains(&day);
        if exists {
            Ok(Self { year, month, day })
        } else {
            Err(SolarError::NoSuchDate { year, month, day })
        }
    }

    /// The year.
    #[must_use]
    pub fn year(self) -> i32 {
        self.year
    }

    /// The month, 1…12.
    #[must_use]
    pub fn month(self) -> u8 {
        self.month
    }

    /// The day of the month, 1…31.
    #[must_use]
    pub fn day(self) -> u8 {
        self.day
    }

    /// The day of the year: 1 January is 1.
    #[must_use]
    pub fn day_of_year(self) -> u16 {
        let leap_day = u16::from(self.month > 2 && is_leap_year(self.year));
        DAYS_BEFORE_MONTH[usize::from(self.month) - 1] + leap_day + u16::from(self.day)
    }

    /// The date a number of days later (or earlier, if negative).
    ///
    /// It may pass the range of years that [`Date::new`] accepts: a run over the last days of that
    /// range still has its dates.
    #[must_use]
    pub fn plus_days(self, days: i32) -> Self {
        let mut year = self.year;
        let mut day_of_year = i64::from(self.day_of_year()) + i64::from(days);
        while day_of_year < 1 {
            year -= 1;
            day_of_year += days_in_year(year);
        }
        while day_of_year > days_in_year(year) {
            day_of_year -= days_in_year(year);
            year += 1;
        }
        let mut month = 1;
        while day_of_year > i64::from(days_in_month(year, month)) {
            day_of_year -= i64::from(days_in_month(year, month));
            month += 1;
        }
        // After the loops the rest is a day of a month, 1…31.
        let day = day_of_year as u8;
        Self { year, month, day }
    }

    /// The Julian date at 0 h of this date.
    #[must_use]
    pub fn julian_date_at_midnight(self) -> f64 {
        let years = i64::from(self.year) - 2000;
        // Leap days from 2000 up to, and not including, this year; floors hold before 2000 too.
        let last = years - 1;
        let leap_days = last.div_euclid(4) - last.div_euclid(100) + last.div_euclid(400) + 1;
        let days = years * 365 + leap_days + i64::from(self.day_of_year()) - 1;
        (JULIAN_DAY_2000 + days) as f64 - 0.5
    }

    /// The year with the day as its fraction, as the time-scale formulas take it.
    #[must_use]
    pub fn decimal_year(self) -> f64 {
        f64::from(self.year) + f64::from(self.day_of_year() - 1) / days_in_year(self.year) as f64
    }
}

/// Whether a year has a 29 February.
fn is_leap_year(year: i32) -> bool {
    year % 4 == 0 && (year % 100 != 0 || year % 400 == 0)
}

/// Days of a year.
fn days_in_year(year: i32) -> i64 {
    if is_leap_year(year) { 366 } else { 365 }
}

/// Days of a month, 1…12.
fn days_in_month(year: i32, month: u8) -> u8 {
    match month {
        2 if is_leap_year(year) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Meeus, Astronomical Algorithms, ch. 7, table of examples (from memory): 1987-01-27 and
    /// 1987-06-19.5, 1988-01-27, 1999-01-01 and 2000-01-01.5.
    #[test]
    fn julian_dates_of_the_textbook() {
        for (year, month, day, julian) in [
            (2000, 1, 1, 2_451_544.5),
            (1999, 1, 1, 2_451_179.5),
            (1987, 1, 27, 2_446_822.5),
            (1987, 6, 19, 2_446_965.5),
            (1988, 1, 27, 2_447_187.5),
        ] {
            let date = Date::new(year, month, day).unwrap();
            assert_eq!(date.julian_date_at_midnight(), julian, "{date:?}");
        }
    }

    #[test]
    fn counts_days_through_every_month_and_leap_year() {
        let first = Date::new(1999, 12, 31).unwrap();
        let mut date = first;
        for days in 1..3000 {
            let next = date.plus_days(1);
            assert_eq!(
                next.julian_date_at_midnight(),
                date.julian_date_at_midnight() + 1.0
            );
            assert_eq!(first.plus_days(days), next);
            assert_eq!(next.plus_days(-days), first);
            assert_eq!(Date::new(next.year, next.month, next.day), Ok(next));
            date = next;
        }
        assert_eq!(Date::new(2024, 12, 31).unwrap().day_of_year(), 366);
        assert_eq!(Date::new(2023, 3, 1).unwrap().day_of_year(), 60);
    }

    #[test]
    fn refuses_days_that_do_not_exist() {
        for (year, month, day) in [
            (2023, 2, 29),
            (2100, 2, 29),
            (2024, 0, 1),
            (2024, 13, 1),
            (2024, 4, 31),
            (2024, 5, 0),
            (1949, 1, 1),
            (2101, 1, 1),
        ] {
            assert_eq!(
                Date::new(year, month, day),
                Err(SolarError::NoSuchDate { year, month, day })
            );
        }
        let read = |text: &str| serde_json::from_str::<Date>(text);
        assert!(read(r#"{"year":2024,"month":2,"day":29}"#).is_ok());
        assert!(read(r#"{"year":2023,"month":2,"day":29}"#).is_err());
    }
}
