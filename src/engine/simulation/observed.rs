//! What was seen of a real day, to be put in the place of what a run would make up.

use crate::weather::HotDay;

/// A quantity over time: straight lines between points, held before the first and after the last.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Course {
    points: Vec<(f64, f64)>,
}

impl Course {
    /// A course through points of rising time (s of the clock since midnight of the run's first day) and finite value; points
    /// that do not rise are left out.
    #[must_use]
    pub fn new(points: impl IntoIterator<Item = (f64, f64)>) -> Self {
        let mut kept: Vec<(f64, f64)> = Vec::new();
        for point in points {
            if kept.last().is_none_or(|(before_s, _)| *before_s < point.0) {
                kept.push(point);
            }
        }
        Self { points: kept }
    }

    /// The value at a time, s; none of a course without points.
    #[must_use]
    pub fn at(&self, time_s: f64) -> Option<f64> {
        let next = self.points.partition_point(|(at_s, _)| *at_s < time_s);
        let Some((until_s, until)) = self.points.get(next) else {
            return self.points.last().map(|(_, value)| *value);
        };
        let Some((from_s, from)) = next.checked_sub(1).and_then(|index| self.points.get(index))
        else {
            return Some(*until);
        };
        Some(from + (until - from) * (time_s - from_s) / (until_s - from_s))
    }

    /// First and last time, s.
    #[must_use]
    pub fn span_s(&self) -> Option<(f64, f64)> {
        Some((self.points.first()?.0, self.points.last()?.0))
    }
}

/// A real day: what is given goes in the place of what the scenario says.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Observed {
    /// Outdoor air, °C; before and after it the hot day, moved so that it meets the ends.
    pub outdoor_c: Option<Course>,
    /// Electric power of the cooler at its terminals, W: it runs by this and not by its thermostat.
    pub cooler_w: Option<Course>,
    /// How much warmer than the day before has left it the whole cabin begins, K.
    pub starts_warmer_k: f64,
}

impl Observed {
    /// The air outdoors, °C; before and after what was seen, the hot day moved to meet its ends. `standard_s` is standard time, which
    /// the clock is ahead of by `summer_s`.
    pub(super) fn dry_bulb_c(
        &self,
        weather: &HotDay,
        standard_s: f64,
        summer_s: f64,
    ) -> Option<f64> {
        let course = self.outdoor_c.as_ref()?;
        let (from_s, until_s) = course.span_s()?;
        let clock_s = standard_s + summer_s;
        let seen_s = clock_s.clamp(from_s, until_s);
        let seen_c = course.at(seen_s)?;
        if seen_s == clock_s {
            return Some(seen_c);
        }
        Some(seen_c + weather.dry_bulb_c(standard_s) - weather.dry_bulb_c(seen_s - summer_s))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_course_is_straight_between_points_and_held_beyond() {
        let course = Course::new([(0.0, 10.0), (10.0, 20.0), (10.0, 99.0), (20.0, 0.0)]);
        let at = |time_s| course.at(time_s).unwrap();
        assert_eq!(
            [at(-5.0), at(0.0), at(5.0), at(10.0), at(15.0), at(30.0)],
            [10.0, 10.0, 15.0, 20.0, 10.0, 0.0]
        );
        assert_eq!(course.span_s(), Some((0.0, 20.0)));
        assert_eq!(Course::default().at(3.0), None);
    }
}
