//! The clock of this device: only the browser knows its zone.

use noonday_engine::solar::Date;

/// Minutes in an hour.
const MINUTES: f64 = 60.0;

/// Standard time less universal time, h, and whether the clock shows summer time on a day.
pub fn own_clock(date: Date) -> (f64, bool) {
    let ahead_h = |month: i32, day: i32| {
        let year = date.year().unsigned_abs();
        let noon = js_sys::Date::new_with_year_month_day_hr(year, month - 1, day, 12);
        -noon.get_timezone_offset() / MINUTES
    };
    // Summer time is ahead of standard time, whichever half of the year it falls in.
    let standard_h = ahead_h(1, 1).min(ahead_h(7, 1));
    let now_h = ahead_h(i32::from(date.month()), i32::from(date.day()));
    (standard_h, now_h > standard_h)
}
