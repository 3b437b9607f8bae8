//! The instant that is read on every band at once.

use super::easel::Easel;
use crate::live::{derived, words};
use crate::state::AppState;
use leptos::prelude::*;
use noonday_engine::advice::Advice;
use noonday_engine::simulation::Series;

/// Index of the sample that is read: where somebody put the cursor, or else the instant that decides the answer.
pub fn reading_index(state: AppState) -> Memo<usize> {
    derived(move || {
        let advice = state.advice.get();
        let last = advice.with_cooler.series.time_h.len().saturating_sub(1);
        match state.cursor.get() {
            Some(index) => index.min(last),
            None => reading_at_rest(&advice),
        }
    })
}

/// Index of the sample that decides the answer, read until somebody moves the cursor.
pub fn reading_at_rest(advice: &Advice) -> usize {
    index_at(&advice.with_cooler.series, deciding_instant(advice))
}

/// The hour of a sample.
pub fn hour_read(state: AppState, index: usize) -> String {
    let advice = state.advice.get();
    let time_h = advice.with_cooler.series.time_h.get(index).copied();
    time_h.map_or_else(String::new, |time_h| state.voice.get().instant(time_h))
}

/// Share of the width at which an instant lies.
pub fn share_of(series: &Series, time_h: f64) -> f64 {
    match (series.time_h.first(), series.time_h.last()) {
        (Some(from), Some(until)) if until > from => (time_h - from) / (until - from),
        _ => 0.0,
    }
}

/// The line over a chart at the instant that is read.
#[component]
pub fn CursorLine() -> impl IntoView {
    let state = expect_context::<AppState>();
    let index = reading_index(state);
    let share = move || {
        let advice = state.advice.get();
        let series = &advice.with_cooler.series;
        let time_h = series.time_h.get(index.get()).copied().unwrap_or_default();
        share_of(series, time_h)
    };
    view! { <div class="cursor" style=words(move || format!("--share:{:.5}", share()))></div> }
}

/// Puts the cursor where a pointer is over a chart; a mouse needs no button for it.
pub fn follow(state: AppState, easel: Easel, event: &leptos::ev::PointerEvent) {
    use wasm_bindgen::JsCast;
    let element = event
        .current_target()
        .and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    let share = element.and_then(|element| easel.share_at(&element, f64::from(event.client_x())));
    if let Some(share) = share {
        let samples = state
            .advice
            .with_untracked(|advice| advice.with_cooler.series.time_h.len());
        let last = samples.saturating_sub(1);
        state
            .cursor
            .set(Some((share * last as f64).round() as usize));
    }
}

/// When the cabin is worst in the window first missed, or in the tightest one; else when it is warmest outdoors.
fn deciding_instant(advice: &Advice) -> f64 {
    let verdict = &advice.verdict;
    let missed = verdict
        .first_missed
        .and_then(|index| verdict.windows.get(index));
    let tightest = || {
        verdict.windows.iter().max_by(|one, other| {
            let over = |window: &noonday_engine::advice::WindowVerdict| {
                window.worst_felt_c - window.highest_felt_c
            };
            over(one).total_cmp(&over(other))
        })
    };
    match missed.or_else(tightest) {
        Some(window) => window.worst_at_h,
        None => warmest_outdoors(&advice.with_cooler.series),
    }
}

fn warmest_outdoors(series: &Series) -> f64 {
    series
        .time_h
        .iter()
        .zip(&series.outdoor_c)
        .max_by(|one, other| one.1.total_cmp(other.1))
        .map_or(0.0, |(time_h, _)| *time_h)
}

/// Index of the sample at a time, if the run covers it.
pub fn sample_at(series: &Series, time_h: f64) -> Option<usize> {
    let (from, until) = (series.time_h.first()?, series.time_h.last()?);
    (*from..=*until)
        .contains(&time_h)
        .then(|| index_at(series, time_h))
}

fn index_at(series: &Series, time_h: f64) -> usize {
    let after = series
        .time_h
        .partition_point(|sample| *sample < time_h - 1e-9);
    after.min(series.time_h.len().saturating_sub(1))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn series() -> Series {
        Series {
            time_h: vec![6.0, 12.0, 18.0, 24.0, 30.0],
            outdoor_c: vec![20.0, 30.0, 33.0, 25.0, 21.0],
            ..Series::default()
        }
    }

    #[test]
    fn instants_find_their_sample() {
        assert_eq!(index_at(&series(), 6.0), 0);
        assert_eq!(index_at(&series(), 12.0), 1);
        assert_eq!(index_at(&series(), 99.0), 4);
        assert_eq!(index_at(&Series::default(), 12.0), 0);
        assert_eq!(sample_at(&series(), 12.0), Some(1));
        assert_eq!(sample_at(&series(), 31.0), None);
    }

    #[test]
    fn without_a_need_the_hottest_hour_is_read() {
        assert_eq!(warmest_outdoors(&series()), 18.0);
        assert_eq!(share_of(&series(), 18.0), 0.5);
    }
}
