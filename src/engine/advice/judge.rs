//! Judges a run against the need.

use super::cause::cause;
use super::heat::{heat_index_at_c, worst_heat};
use super::verdict::{BankVerdict, Headline, Verdict, WindowVerdict};
use crate::quantity::{Bounded, sort_few};
use crate::scenario::{HEAT_INDEX_ASKS_NOTHING_C, NeedWindow, NeededFor, ScenarioDocument};
use crate::simulation::{Results, Series};

/// Days looked ahead for the end of the bank.
pub(super) const DAYS_LOOKED: u32 = 14;

/// Excess below which a limit still counts as kept, K: a twentieth of a kelvin, the accuracy of the step.
pub(super) const TOLERANCE_K: f64 = 0.05;

pub(super) const HOURS_PER_DAY: f64 = 24.0;

/// Charge above the lowest allowed at which a bank counts as empty, share.
const CHARGE_ROUNDING: f64 = 1e-3;

/// Judges a run, beside the same without a cooler.
///
/// A window is missed where the felt temperature or, where that is asked, the heat index lies more than 0.05 K above its limit,
/// or the relative humidity above its own; a sample stands for the time until the next. Windows repeat every day and are cut to the run.
///
/// * `document` — of the validated scenario that was run
/// * `with`, `without` — its runs with and without cooler; the same one twice where there is none
#[must_use]
pub fn judge(document: &ScenarioDocument, with: &Results, without: &Results) -> Verdict {
    let mut windows: Vec<WindowVerdict> = document
        .need
        .windows
        .iter()
        .enumerate()
        .filter(|(_, window)| window.needed_for != NeededFor::Nobody)
        .flat_map(|(slot, window)| occurrences(document, slot, window, with, without))
        .collect();
    sort_few(&mut windows, |one, other| one.from_h > other.from_h);
    let first_missed = first_missed(&windows);
    let bank = bank(document, with);
    Verdict {
        headline: headline(&windows, &bank),
        windows,
        first_missed,
        bank,
    }
}

fn headline(windows: &[WindowVerdict], bank: &BankVerdict) -> Headline {
    if windows.is_empty() {
        return Headline::NothingAsked;
    }
    if windows.iter().any(|window| !window.met) {
        return Headline::Missed;
    }
    if windows
        .iter()
        .all(|window| window.missed_without_cooler_h == 0.0)
    {
        return Headline::MetWithoutCooler;
    }
    if bank.below_reserve_at_h.is_some() {
        return Headline::MetBelowReserve;
    }
    Headline::Met
}

fn first_missed(windows: &[WindowVerdict]) -> Option<usize> {
    windows
        .iter()
        .enumerate()
        .filter_map(|(index, window)| window.first_missed_at_h.map(|at_h| (index, at_h)))
        .min_by(|one, other| one.1.total_cmp(&other.1))
        .map(|(index, _)| index)
}

/// Every day's occurrence of a window that lies in the run, cut to the run.
fn occurrences<'a>(
    document: &'a ScenarioDocument,
    slot: usize,
    window: &'a NeedWindow,
    with: &'a Results,
    without: &'a Results,
) -> impl Iterator<Item = WindowVerdict> + 'a {
    let length_h = length_h(window);
    let start_h = document.day.start_hour;
    let end_h = start_h + HOURS_PER_DAY * document.day.days;
    (-1..=document.day.days as i32).filter_map(move |day| {
        let from_h = f64::from(day) * HOURS_PER_DAY + window.from_hour;
        let span = (from_h.at_least(start_h), (from_h + length_h).at_most(end_h));
        (span.1 > span.0).then(|| judge_window(document, slot, window, span, with, without))
    })
}

pub(super) fn length_h(window: &NeedWindow) -> f64 {
    let length_h = (window.until_hour - window.from_hour).rem_euclid(HOURS_PER_DAY);
    if length_h == 0.0 {
        HOURS_PER_DAY
    } else {
        length_h
    }
}

/// Excess of a series above a window's limit.
#[derive(Default)]
pub(super) struct Excess {
    pub(super) missed_h: f64,
    degree_hours_k_h: f64,
    pub(super) worst_c: f64,
    worst_at_h: f64,
    /// First sample that misses the limit.
    first: Option<usize>,
    /// Last sample that keeps it.
    last_met: Option<usize>,
}

pub(super) fn excess(series: &Series, window: &NeedWindow, span: (f64, f64)) -> Excess {
    let mut excess = Excess {
        worst_c: f64::NEG_INFINITY,
        ..Excess::default()
    };
    for index in 0..series.time_h.len() {
        let Some((from_h, until_h)) = stands(series, index, span) else {
            continue;
        };
        let felt_c = series.felt_c[index];
        if felt_c > excess.worst_c {
            excess.worst_c = felt_c;
            excess.worst_at_h = from_h;
        }
        let over_k = over_k(window, series, index);
        let humid = is_too_humid(window, series.relative_humidity[index]);
        if over_k <= TOLERANCE_K && !humid {
            excess.last_met = Some(index);
            continue;
        }
        excess.first = excess.first.or(Some(index));
        excess.missed_h += until_h - from_h;
        excess.degree_hours_k_h += over_k.at_least(0.0) * (until_h - from_h);
    }
    excess
}

/// How far a sample lies above the limits of felt temperature and heat index, whichever is passed by more, K; negative below both.
pub(super) fn over_k(window: &NeedWindow, series: &Series, index: usize) -> f64 {
    let over_felt_k = series.felt_c[index] - window.highest_felt_c;
    match heat_index_limit_c(window) {
        Some(limit_c) => over_felt_k.at_least(heat_index_at_c(series, index) - limit_c),
        None => over_felt_k,
    }
}

/// The limit of the heat index, °C, where one is asked.
fn heat_index_limit_c(window: &NeedWindow) -> Option<f64> {
    Some(window.highest_heat_index_c).filter(|limit_c| *limit_c < HEAT_INDEX_ASKS_NOTHING_C)
}

/// A limit of 1 asks nothing, though the model's air, which forms no fog, may for a while hold more than saturation.
fn is_too_humid(window: &NeedWindow, relative_humidity: f64) -> bool {
    window.highest_relative_humidity < 1.0 && relative_humidity > window.highest_relative_humidity
}

/// Part of a window for which a sample stands, h: from its time until the next one's. The sample at the very end of the window
/// counts too, for no time, and so does the one before a window that begins between two.
pub(super) fn stands(series: &Series, index: usize, span: (f64, f64)) -> Option<(f64, f64)> {
    let at_h = series.time_h[index];
    let next_h = series.time_h.get(index + 1).copied().unwrap_or(at_h);
    let (from_h, until_h) = (at_h.at_least(span.0), next_h.at_most(span.1));
    let inside = until_h > from_h || (span.0..=span.1).contains(&at_h);
    inside.then_some((from_h, until_h.at_least(from_h)))
}

fn judge_window(
    document: &ScenarioDocument,
    slot: usize,
    window: &NeedWindow,
    span: (f64, f64),
    with: &Results,
    without: &Results,
) -> WindowVerdict {
    let found = excess(&with.series, window, span);
    let bare = excess(&without.series, window, span);
    let cause = found
        .first
        .filter(|_| found.missed_h > 0.0)
        .map(|index| cause(document, window, &with.series, index, found.last_met));
    WindowVerdict {
        slot,
        needed_for: window.needed_for,
        from_h: span.0,
        until_h: span.1,
        highest_felt_c: window.highest_felt_c,
        highest_heat_index_c: heat_index_limit_c(window),
        met: found.missed_h == 0.0,
        missed_h: found.missed_h,
        degree_hours_k_h: found.degree_hours_k_h,
        worst_felt_c: found.worst_c,
        worst_at_h: found.worst_at_h,
        first_missed_at_h: cause
            .and(found.first)
            .map(|index| with.series.time_h[index].at_least(span.0)),
        cause,
        worst_felt_without_cooler_c: bare.worst_c,
        missed_without_cooler_h: bare.missed_h,
        worst_heat: worst_heat(&with.series, span),
        worst_heat_without_cooler: worst_heat(&without.series, span),
    }
}

fn bank(document: &ScenarioDocument, with: &Results) -> BankVerdict {
    let series = &with.series;
    let (lowest_at, lowest) = series
        .state_of_charge
        .iter()
        .copied()
        .enumerate()
        .min_by(|one, other| one.1.total_cmp(&other.1))
        .unwrap_or((0, 0.0));
    let running_a = running_current_a(document, with);
    BankVerdict {
        lowest_state_of_charge: lowest,
        lowest_at_h: series.time_h.get(lowest_at).copied().unwrap_or_default(),
        end_state_of_charge: series.state_of_charge.last().copied().unwrap_or_default(),
        below_reserve_at_h: with.below_reserve_at_h,
        lasts_h: lasts_h(document, with),
        days_looked: DAYS_LOOKED,
        plain_division_h: (running_a > 0.0).then(|| usable_ah(document) / running_a),
        cooler_running_a: running_a,
    }
}

/// Charge between the start and the lowest allowed, Ah.
fn usable_ah(document: &ScenarioDocument) -> f64 {
    let battery = &document.battery;
    let share = (battery.start_state_of_charge - battery.least_state_of_charge).at_least(0.0);
    share * battery.health_share * battery.capacity_ah
}

fn running_current_a(document: &ScenarioDocument, with: &Results) -> f64 {
    if with.totals.compressor_h <= 0.0 {
        return 0.0;
    }
    with.totals.cooler_wh / with.totals.compressor_h / document.battery.system_voltage.nominal_v()
}

/// Hours until the bank is at its lowest charge: within the run if it gets there, else by letting the charge of the last day
/// repeat, each day lower by what that day lost.
fn lasts_h(document: &ScenarioDocument, with: &Results) -> Option<f64> {
    let series = &with.series;
    let start_h = series.time_h.first().copied()?;
    if let Some(emptied_at_h) = with.emptied_at_h {
        return Some(emptied_at_h - start_h);
    }
    let end_h = series.time_h.last().copied()?;
    let last_day_h = end_h - HOURS_PER_DAY;
    let begin = series
        .time_h
        .iter()
        .position(|time_h| *time_h >= last_day_h)?;
    let lost = series.state_of_charge[begin] - series.state_of_charge.last().copied()?;
    if lost <= 0.0 {
        return None;
    }
    let floor = document.battery.least_state_of_charge + CHARGE_ROUNDING;
    (1..=DAYS_LOOKED).find_map(|day| {
        let days = f64::from(day);
        let index = (begin..series.time_h.len())
            .find(|index| series.state_of_charge[*index] - lost * days <= floor)?;
        Some(series.time_h[index] - start_h + HOURS_PER_DAY * days)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    /// Two samples, five minutes apart, at 30 and at 20 °C.
    fn falling() -> Results {
        let mut results = Results::default();
        let series = &mut results.series;
        for (time_h, felt_c) in [(12.0, 30.0), (12.0 + 1.0 / 12.0, 20.0)] {
            series.time_h.push(time_h);
            series.felt_c.push(felt_c);
            series.cabin_c.push(felt_c);
            series.relative_humidity.push(0.5);
            series.state_of_charge.push(0.9);
            series.cooler_share.push(0.0);
            series.stopped.push(None);
        }
        results
    }

    #[test]
    fn a_window_shorter_than_a_sample_is_judged_by_the_sample_before_it() {
        let document = example();
        let window = &document.need.windows[0];
        let run = falling();
        let span = (12.02, 12.04);
        let verdict = judge_window(&document, 0, window, span, &run, &run);
        assert!(!verdict.met);
        assert_eq!(verdict.worst_felt_c, 30.0);
        assert_eq!(verdict.first_missed_at_h, Some(12.02));
        assert!((verdict.missed_h - 0.02).abs() < 1e-12);
        // By hand: (30 − 28) K · 0.02 h.
        assert!((verdict.degree_hours_k_h - 0.04).abs() < 1e-12);
    }

    #[test]
    fn a_sample_counts_from_its_time_to_the_next() {
        let document = example();
        let window = &document.need.windows[0];
        let run = falling();
        let verdict = judge_window(&document, 0, window, (12.05, 13.0), &run, &run);
        assert!((verdict.missed_h - (1.0 / 12.0 - 0.05)).abs() < 1e-12);
    }

    #[test]
    fn a_bank_that_was_empty_between_two_samples_lasted_until_then() {
        let document = example();
        let mut run = falling();
        run.emptied_at_h = Some(12.03);
        let hours = lasts_h(&document, &run).unwrap();
        assert!((hours - 0.03).abs() < 1e-12);
    }

    #[test]
    fn a_limit_of_the_heat_index_counts_where_it_is_asked() {
        let document = example();
        let mut window = document.need.windows[0].clone();
        window.highest_felt_c = 35.0;
        let mut run = falling();
        let series = &mut run.series;
        (series.cabin_c[0], series.relative_humidity[0]) = (32.222_2, 0.7);
        let span = (12.0, 13.0);
        let judged = |window: &NeedWindow| judge_window(&document, 0, window, span, &run, &run);
        assert!(judged(&window).met);
        window.highest_heat_index_c = 40.0;
        let verdict = judged(&window);
        assert!(!verdict.met);
        // National Weather Service: 90 °F and 70 % are 106 °F, 41.07 °C; above 40 °C for five minutes.
        assert!((verdict.degree_hours_k_h - 1.07 / 12.0).abs() < 0.002);
        assert!((verdict.margin_k() + 1.07).abs() < 0.02);
        assert_ne!(verdict.cause, Some(super::super::verdict::Cause::Humidity));
        window.highest_heat_index_c = 42.0;
        assert!(judged(&window).met);
    }

    #[test]
    fn fog_does_not_miss_a_window_that_asks_nothing_of_humidity() {
        let mut window = example().need.windows[0].clone();
        window.highest_relative_humidity = 1.0;
        assert!(!is_too_humid(&window, 1.05));
        window.highest_relative_humidity = 0.6;
        assert!(is_too_humid(&window, 0.61));
    }
}
