//! Daily windows of hours: when a load runs, a charger is plugged in, a limit must be held.
//!
//! A window repeats every day and may wrap past midnight. Besides the plain question whether an
//! instant lies inside, it answers what share of a time step does, exactly, so that halving the
//! step leaves the energy of a scheduled load unchanged.
//!
//! Times are seconds since midnight of the first day in the clock of the run; the window is
//! half-open: its first instant belongs to it, its last does not.

use crate::quantity::{Bounded, SECONDS_PER_DAY, SECONDS_PER_HOUR};

/// Hours in a day.
const HOURS_PER_DAY: f64 = 24.0;

/// Why a window cannot be built.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ScheduleError {
    /// The hour is not within 0…24.
    HourOutOfRange {
        /// The hour given.
        hour: f64,
        /// The greatest hour accepted.
        limit: f64,
    },
}

/// A window of hours that repeats every day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HourWindow {
    from_s: f64,
    until_s: f64,
}

impl HourWindow {
    /// The whole day.
    pub const WHOLE_DAY: Self = Self {
        from_s: 0.0,
        until_s: SECONDS_PER_DAY,
    };

    /// Builds a window from its first to its last hour of the day.
    ///
    /// A window whose last hour comes before its first wraps past midnight; equal hours mean the
    /// whole day, and 0 and 24 are equal.
    ///
    /// * `from_hour`, `until_hour` — hours since midnight, 0…24
    ///
    /// # Errors
    /// [`ScheduleError::HourOutOfRange`] if an hour is not within 0…24.
    pub fn new(from_hour: f64, until_hour: f64) -> Result<Self, ScheduleError> {
        for hour in [from_hour, until_hour] {
            if !(0.0..=HOURS_PER_DAY).contains(&hour) {
                return Err(ScheduleError::HourOutOfRange {
                    hour,
                    limit: HOURS_PER_DAY,
                });
            }
        }
        let (from_hour, until_hour) = (from_hour % HOURS_PER_DAY, until_hour % HOURS_PER_DAY);
        if from_hour == until_hour {
            return Ok(Self::WHOLE_DAY);
        }
        let from_s = from_hour * SECONDS_PER_HOUR;
        let until_s = until_hour * SECONDS_PER_HOUR;
        let wrap_s = if until_s < from_s {
            SECONDS_PER_DAY
        } else {
            0.0
        };
        Ok(Self {
            from_s,
            until_s: until_s + wrap_s,
        })
    }

    /// The length of the window, s (0…86 400).
    #[must_use]
    pub fn length_s(&self) -> f64 {
        self.until_s - self.from_s
    }

    /// Whether an instant lies inside the window.
    ///
    /// * `time_s` — seconds since midnight of any day; the day is taken off
    #[must_use]
    pub fn contains(&self, time_s: f64) -> bool {
        let second_of_day = time_s - SECONDS_PER_DAY * (time_s / SECONDS_PER_DAY).floor();
        let inside = |second: f64| second >= self.from_s && second < self.until_s;
        inside(second_of_day) || inside(second_of_day + SECONDS_PER_DAY)
    }

    /// The share of the step `[time_s, time_s + step_s)` that lies inside the window, 0…1.
    ///
    /// Share = (F(t + Δt) − F(t)) / Δt, with F(t) the seconds inside the window up to t.
    ///
    /// * `time_s` — start of the step, seconds since midnight of the first day
    /// * `step_s` — length of the step, s, above 0; it may span days
    #[must_use]
    pub fn overlap_fraction(&self, time_s: f64, step_s: f64) -> f64 {
        if self.length_s() >= SECONDS_PER_DAY {
            return 1.0;
        }
        let inside_s = self.seconds_until(time_s + step_s) - self.seconds_until(time_s);
        // The true share lies in 0…1; the bounds only take off the rounding of the difference.
        (inside_s / step_s).clamp(0.0, 1.0)
    }

    /// Seconds inside the window from midnight of the first day until an instant.
    fn seconds_until(&self, time_s: f64) -> f64 {
        let days = (time_s / SECONDS_PER_DAY).floor();
        let second_of_day = time_s - SECONDS_PER_DAY * days;
        let today = (second_of_day.at_most(self.until_s) - self.from_s).at_least(0.0);
        // The part of a wrapping window that reaches past midnight was begun the day before.
        let past_midnight = second_of_day
            .at_most(self.until_s - SECONDS_PER_DAY)
            .at_least(0.0);
        days * self.length_s() + today + past_midnight
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn window(from_hour: f64, until_hour: f64) -> HourWindow {
        HourWindow::new(from_hour, until_hour).unwrap()
    }

    #[test]
    fn contains_is_half_open_and_wraps() {
        let day = window(8.0, 18.0);
        assert!(day.contains(8.0 * 3600.0));
        assert!(!day.contains(18.0 * 3600.0));
        let night = window(22.0, 7.0);
        assert!(night.contains(23.0 * 3600.0));
        assert!(night.contains(6.99 * 3600.0));
        assert!(!night.contains(7.0 * 3600.0));
        assert!(night.contains(86_400.0 * 3.0 + 3600.0));
        assert!(window(5.0, 5.0).contains(4.0 * 3600.0));
    }

    #[test]
    fn overlap_is_exact_at_the_edges() {
        let night = window(22.0, 7.0);
        let half_step = night.overlap_fraction(22.0 * 3600.0 - 5.0, 10.0);
        assert!((half_step - 0.5).abs() < 1e-12);
        let end = night.overlap_fraction(86_400.0 + 7.0 * 3600.0 - 2.0, 8.0);
        assert!((end - 0.25).abs() < 1e-12);
        assert_eq!(night.overlap_fraction(12.0 * 3600.0, 60.0), 0.0);
        // Nine hours of every day, whatever day the step starts on.
        let week = night.overlap_fraction(0.0, 7.0 * 86_400.0);
        assert!((week - 9.0 / 24.0).abs() < 1e-12);
    }

    #[test]
    fn overlap_of_halves_is_the_overlap_of_the_whole() {
        for (from_hour, until_hour) in [(8.0, 18.5), (22.3, 7.1), (0.0, 0.0), (0.0, 24.0)] {
            let window = window(from_hour, until_hour);
            for index in 0..400 {
                let time_s = f64::from(index) * 311.7;
                let whole = window.overlap_fraction(time_s, 600.0);
                let first = window.overlap_fraction(time_s, 300.0);
                let second = window.overlap_fraction(time_s + 300.0, 300.0);
                assert!((whole - f64::midpoint(first, second)).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn midnight_is_both_0_and_24() {
        for (from_hour, until_hour) in [(0.0, 24.0), (24.0, 0.0), (24.0, 24.0)] {
            assert_eq!(window(from_hour, until_hour), HourWindow::WHOLE_DAY);
        }
        assert_eq!(window(24.0, 3.0), window(0.0, 3.0));
        assert_eq!(window(15.0, 24.0), window(15.0, 0.0));
    }

    #[test]
    fn rejects_hours_outside_the_day() {
        assert!(HourWindow::new(-1.0, 5.0).is_err());
        assert!(HourWindow::new(1.0, 24.5).is_err());
        assert!(HourWindow::new(f64::NAN, 5.0).is_err());
    }
}
