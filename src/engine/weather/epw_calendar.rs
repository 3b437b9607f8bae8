//! The hours that the records of an EPW text must have.

use super::epw::{EpwError, Line, field};
use crate::solar::{Date, YEAR_GREATEST, YEAR_LEAST};

/// Days of the longest data period.
const DAYS_GREATEST: usize = 366;

/// Years back in which a year with the same February is sure to be found.
const YEARS_BACK: i32 = 8;

/// A month and a day of it.
type MonthDay = (u8, u8);

/// The data period as the header states it.
pub(super) struct Period {
    pub records_per_hour: usize,
    start: MonthDay,
    end: MonthDay,
}

impl Period {
    pub fn read(line: Line<'_>) -> Result<Self, EpwError> {
        line.number_in(&field(1, "number of data periods", f64::INFINITY, 1.0, 1.0))?;
        let name = "records per hour";
        let per_hour = line.number_in(&field(2, name, f64::INFINITY, 1.0, 60.0))?;
        if 60.0 % per_hour != 0.0 {
            return Err(EpwError::NotANumber {
                line: line.number,
                field: name,
            });
        }
        Ok(Self {
            records_per_hour: per_hour as usize,
            start: read_month_day(line, 5, "start of the data period")?,
            end: read_month_day(line, 6, "end of the data period")?,
        })
    }
}

/// A date like `7/6` or `1/ 1/2004`.
fn read_month_day(
    line: Line<'_>,
    column: usize,
    field: &'static str,
) -> Result<MonthDay, EpwError> {
    let mut parts = line
        .text(column, field)?
        .split('/')
        .map(|part| part.trim().parse().ok());
    match (parts.next(), parts.next()) {
        // A leap year holds every day that any year has.
        (Some(Some(month)), Some(Some(day))) if Date::new(2000, month, day).is_ok() => {
            Ok((month, day))
        }
        _ => Err(EpwError::NotANumber {
            line: line.number,
            field,
        }),
    }
}

/// Walks through the hours that the records must have.
pub(super) struct Calendar {
    records_per_day: usize,
    records_per_hour: usize,
    start: MonthDay,
    today: MonthDay,
    records: usize,
    first_year: i32,
}

impl Calendar {
    pub fn new(period: &Period) -> Self {
        Self {
            records_per_day: 24 * period.records_per_hour,
            records_per_hour: period.records_per_hour,
            start: period.start,
            today: period.start,
            records: 0,
            first_year: YEAR_GREATEST,
        }
    }

    /// Checks that a record is the next one.
    pub fn check(&mut self, line: Line<'_>) -> Result<(), EpwError> {
        let date = (
            line.integer(1, "month")?,
            line.integer(2, "day of the month")?,
        );
        let hour: usize = line.integer(3, "hour")?;
        let fault = |field| EpwError::OutOfSequence {
            line: line.number,
            field,
        };
        if self.records == 0 {
            self.first_year = line.integer(0, "year")?;
        }
        let new_day = self.records > 0 && self.records.is_multiple_of(self.records_per_day);
        let follows = if new_day {
            follows(self.today, date) && self.records < DAYS_GREATEST * self.records_per_day
        } else {
            date == self.today
        };
        if !follows {
            return Err(fault("date"));
        }
        let expected = self.records % self.records_per_day / self.records_per_hour + 1;
        if hour != expected {
            return Err(fault("hour"));
        }
        self.today = date;
        self.records += 1;
        Ok(())
    }

    /// Checks that the period is complete and gives its first day.
    pub fn close(&self, period: &Period) -> Result<Date, EpwError> {
        let early = EpwError::EndsEarly {
            records: self.records,
        };
        let whole_days = self.records > 0 && self.records.is_multiple_of(self.records_per_day);
        if !whole_days || self.today != period.end {
            return Err(early);
        }
        let days_after_first = (self.records / self.records_per_day) as i32 - 1;
        let stated = self
            .first_year
            .clamp(YEAR_LEAST + YEARS_BACK, YEAR_GREATEST);
        (0..=YEARS_BACK)
            .filter_map(|back| Date::new(stated - back, self.start.0, self.start.1).ok())
            .find(|first| {
                let last = first.plus_days(days_after_first);
                (last.month(), last.day()) == self.today
            })
            .ok_or(early)
    }
}

/// Whether one day follows another in a common or in a leap year.
fn follows(today: MonthDay, next: MonthDay) -> bool {
    [2000, 2001].iter().any(|&year| {
        Date::new(year, today.0, today.1).is_ok_and(|date| {
            let date = date.plus_days(1);
            (date.month(), date.day()) == next
        })
    })
}
