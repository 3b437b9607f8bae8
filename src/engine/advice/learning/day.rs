//! The logged day as a run takes it.

use super::fit::Assumed;
use super::log::Log;
use crate::quantity::{SECONDS_PER_DAY, SECONDS_PER_HOUR};
use crate::scenario::ScenarioDocument;
use crate::simulation::{Course, Observed, Results};

/// Time over which points of a log are averaged, s: the spacing of a run's samples.
const BIN_S: f64 = 300.0;

/// Times of a log on the scenario's clock, s since midnight of the day on which it begins.
pub(super) fn clock_times(document: &ScenarioDocument, log: &Log) -> Vec<f64> {
    let place = &document.place;
    let ahead_h = place.utc_offset_h + f64::from(u8::from(place.summer_time));
    let shift_s = log.ahead_of_utc_h.map_or(0.0, |log_ahead_h| {
        (ahead_h - log_ahead_h) * SECONDS_PER_HOUR
    });
    let first_s = log.points.first().map_or(0.0, |point| point.clock_s) + shift_s;
    let midnight_s = (first_s / SECONDS_PER_DAY).floor() * SECONDS_PER_DAY;
    let points = log.points.iter();
    points
        .map(|point| point.clock_s + shift_s - midnight_s)
        .collect()
}

/// Means over the spacing of a run's samples: hours and temperatures.
pub(super) fn binned(log: &Log, clock_s: &[f64]) -> (Vec<f64>, Vec<f64>) {
    let (mut time_h, mut cabin_c) = (Vec::new(), Vec::new());
    let first_s = clock_s.first().copied().unwrap_or_default();
    let (mut bin, mut count) = (f64::NEG_INFINITY, 0.0);
    for (point, clock_s) in log.points.iter().zip(clock_s) {
        let own = ((clock_s - first_s) / BIN_S).round();
        if own > bin {
            (bin, count) = (own, 0.0);
            time_h.push(0.0);
            cabin_c.push(0.0);
        }
        count += 1.0;
        if let (Some(time_h), Some(mean_c)) = (time_h.last_mut(), cabin_c.last_mut()) {
            *time_h += (clock_s / SECONDS_PER_HOUR - *time_h) / count;
            *mean_c += (point.cabin_c - *mean_c) / count;
        }
    }
    (time_h, cabin_c)
}

/// The scenario on the day of a log: parked, and empty unless it is said to have been lived in.
pub(super) fn logged_day(
    entered: &ScenarioDocument,
    log: &Log,
    assumed: &Assumed,
    (begins_h, hours): (f64, f64),
) -> ScenarioDocument {
    let mut day = entered.clone();
    day.day.date = log.date.unwrap_or(day.day.date);
    day.day.start_hour = begins_h;
    day.day.days = (hours / 24.0).ceil().clamp(1.0, 7.0);
    day.charging.drives = false;
    day.cooler.installed &= log.has_current || assumed.cooled;
    if !assumed.occupied {
        day.occupants.people = 0.0;
        day.occupants.dogs = 0.0;
        day.occupants.cooking_heat_w = 0.0;
        day.occupants.cooking_moisture_kg_s = 0.0;
    }
    day
}

pub(super) fn observed(day: &ScenarioDocument, log: &Log, clock_s: &[f64]) -> Observed {
    let voltage_v = day.battery.system_voltage.nominal_v();
    let points = || log.points.iter().zip(clock_s);
    let outdoor = points().filter_map(|(point, clock_s)| Some((*clock_s, point.outdoor_c?)));
    let power =
        points().filter_map(|(point, clock_s)| Some((*clock_s, point.current_a? * voltage_v)));
    Observed {
        outdoor_c: log.has_outdoor.then(|| Course::new(outdoor)),
        cooler_w: log.has_current.then(|| Course::new(power)),
        starts_warmer_k: 0.0,
    }
}

pub(super) fn cabin_c_at(run: &Results, time_h: f64) -> f64 {
    let series = &run.series;
    let next = series.time_h.partition_point(|at_h| *at_h < time_h);
    let last = series.time_h.len().saturating_sub(1);
    let (until, from) = (next.min(last), next.saturating_sub(1).min(last));
    let at = |index: usize| (series.time_h[index], series.cabin_c[index]);
    let ((from_h, from_c), (until_h, until_c)) = (at(from), at(until));
    if until_h <= from_h {
        return from_c;
    }
    from_c + (until_c - from_c) * (time_h - from_h) / (until_h - from_h)
}

pub(super) fn rms(one: &[f64], other: &[f64]) -> f64 {
    let squares = one
        .iter()
        .zip(other)
        .map(|(one, other)| (one - other) * (one - other));
    (squares.sum::<f64>() / one.len().max(1) as f64).sqrt()
}
