//! The day as a strip of sky: its colour follows the sun, and a small sun on it reads any hour.

use super::cursor::{reading_index, share_of};
use super::frame::{hour_ticks, midnights};
use crate::live::{derived, flag, part, with_value, words};
use crate::state::AppState;
use crate::text::Voice;
use crate::text::charts::reading_spoken;
use crate::text::page;
use leptos::prelude::*;
use noonday_engine::simulation::Series;

/// Stops of the sky's colour along the day.
const STOPS: usize = 48;
/// Sun on a horizontal square metre, W/m², and the colour of the sky under it.
const SKY: [(f64, [f64; 3]); 6] = [
    (0.0, [22.0, 33.0, 62.0]),
    (15.0, [92.0, 74.0, 102.0]),
    (90.0, [226.0, 150.0, 96.0]),
    (260.0, [250.0, 214.0, 150.0]),
    (600.0, [255.0, 236.0, 180.0]),
    (1_000.0, [255.0, 248.0, 222.0]),
];
/// Sun below which it is night for the small sun on the strip, W/m².
const NIGHT_W_M2: f64 = 5.0;
/// Widths of the plot for which hours are labelled, CSS pixels: on a phone, and where there is more room.
const NARROW: f64 = 200.0;
const WIDE: f64 = 560.0;

/// A labelled hour.
#[derive(Clone, Debug, PartialEq)]
struct HourMark {
    /// Share of the width at which it stands.
    share: f64,
    label: String,
    is_midnight: bool,
    /// Whether there is room for it on a phone.
    always: bool,
}

/// The strip with its hours and the slider on it.
#[component]
pub fn Strip() -> impl IntoView {
    let state = expect_context::<AppState>();
    let index = reading_index(state);
    let last = words(move || {
        let advice = state.advice.get();
        let samples = advice.with_cooler.series.time_h.len();
        samples.saturating_sub(1).to_string()
    });
    let sky = words(move || format!("background:{}", sky(&state.advice.get().with_cooler.series)));
    let night = flag(move || {
        let advice = state.advice.get();
        let sun = advice.with_cooler.series.sun_w_m2.get(index.get()).copied();
        sun.unwrap_or_default() < NIGHT_W_M2
    });
    let moved = with_value(move |index| state.cursor.set(index.parse().ok()));
    view! {
        <div class="strip">
            <div class="sky" style=sky></div>
            <input
                type="range"
                class="hour-slider"
                class:night=night
                min="0"
                max=last
                step="1"
                prop:value=words(move || index.get().to_string())
                aria-label=page::HOUR
                aria-valuetext=words(move || {
                    reading_spoken(&state.advice.get(), index.get(), &state.voice.get())
                })
                title=page::HOUR_HINT
                on:input=moved
            />
            {hours(state)}
        </div>
    }
}

/// The hours, written anew only when they change.
fn hours(state: AppState) -> AnyView {
    let marks = derived(move || {
        let advice = state.advice.get();
        let voice = state.voice.get();
        marks(&advice.with_cooler.series, &voice)
    });
    view! {
        <div class="hours" aria-hidden="true">
            {part(move || {
                let labels = marks
                    .get()
                    .into_iter()
                    .map(|mark| {
                        view! {
                            <span
                                class:midnight=mark.is_midnight
                                class:roomy=!mark.always
                                style=format!("--share:{:.4}", mark.share)
                            >
                                {mark.label}
                            </span>
                        }
                    })
                    .collect_view();
                Some(labels.into_any())
            })}
        </div>
    }
    .into_any()
}

fn marks(series: &Series, voice: &Voice) -> Vec<HourMark> {
    let (Some(from), Some(until)) = (series.time_h.first(), series.time_h.last()) else {
        return Vec::new();
    };
    let nights = midnights(*from, *until);
    let always = hour_ticks(*from, *until, NARROW);
    hour_ticks(*from, *until, WIDE)
        .into_iter()
        .map(|hour| {
            let is_midnight = nights.contains(&hour);
            HourMark {
                share: share_of(series, hour),
                label: if is_midnight {
                    short_day(voice.day_name(hour))
                } else {
                    voice.units.axis_hour(hour)
                },
                is_midnight,
                always: always.contains(&hour),
            }
        })
        .collect()
}

/// Hours that have room on a plot so many pixels wide, with their place and label.
pub fn hours_on(series: &Series, voice: &Voice, width: f64) -> Vec<(f64, String)> {
    marks(series, voice)
        .into_iter()
        .filter(|mark| mark.always || width >= WIDE)
        .map(|mark| (mark.share, mark.label))
        .collect()
}

fn short_day(name: &str) -> String {
    name.chars().take(3).collect()
}

/// The colours of the sky along the day, as the style sheet takes them.
pub fn sky(series: &Series) -> String {
    let last = series.sun_w_m2.len().saturating_sub(1);
    let stops: Vec<String> = (0..=STOPS)
        .filter_map(|stop| {
            let sun = series.sun_w_m2.get(stop * last / STOPS)?;
            let [red, green, blue] = colour(*sun);
            let place = 100.0 * stop as f64 / STOPS as f64;
            Some(format!("rgb({red:.0},{green:.0},{blue:.0}) {place:.1}%"))
        })
        .collect();
    if stops.is_empty() {
        return "none".to_owned();
    }
    format!("linear-gradient(to right,{})", stops.join(","))
}

fn colour(sun_w_m2: f64) -> [f64; 3] {
    for pair in SKY.windows(2) {
        if let [(low, under), (high, over)] = pair
            && sun_w_m2 <= *high
        {
            let share = ((sun_w_m2 - low) / (high - low)).clamp(0.0, 1.0);
            let mixed = |index: usize| {
                let at = |colour: &[f64; 3]| colour.get(index).copied().unwrap_or_default();
                at(under) + share * (at(over) - at(under))
            };
            return [mixed(0), mixed(1), mixed(2)];
        }
    }
    SKY.last().map(|(_, colour)| *colour).unwrap_or_default()
}

/// The hours as the opening shows them: class, place, label.
#[cfg(test)]
pub fn hours_shown(series: &Series, voice: &Voice) -> Vec<(&'static str, f64, String)> {
    marks(series, voice)
        .into_iter()
        .map(|mark| {
            let class = match (mark.is_midnight, mark.always) {
                (true, true) => "midnight",
                (true, false) => "midnight roomy",
                (false, true) => "",
                (false, false) => "roomy",
            };
            (class, mark.share, mark.label)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sky_is_dark_by_night_and_bright_at_noon() {
        assert_eq!(colour(0.0), [22.0, 33.0, 62.0]);
        assert_eq!(colour(1_400.0), [255.0, 248.0, 222.0]);
        assert_eq!(colour(175.0), [238.0, 182.0, 123.0]);
    }

    #[test]
    fn hours_for_a_phone_are_some_of_the_hours_for_a_desktop() {
        let series = Series {
            time_h: (0..=24).map(|hour| 6.0 + f64::from(hour)).collect(),
            ..Series::default()
        };
        let document = noonday_engine::scenario::example();
        let voice = Voice::new(&document, crate::format::UnitSystem::Metric);
        let marks = marks(&series, &voice);
        let labels = |always: bool| -> Vec<&str> {
            let kept = marks.iter().filter(|mark| mark.always || !always);
            kept.map(|mark| mark.label.as_str()).collect()
        };
        assert_eq!(labels(true), ["6", "12", "18", "Wed", "6"]);
        assert_eq!(
            labels(false),
            [
                "6", "8", "10", "12", "14", "16", "18", "20", "22", "Wed", "2", "4", "6"
            ]
        );
    }

    #[test]
    fn the_strip_has_a_stop_for_each_half_hour() {
        let series = Series {
            sun_w_m2: (0..=288).map(f64::from).collect(),
            ..Series::default()
        };
        assert_eq!(sky(&series).matches("rgb").count(), STOPS + 1);
        assert_eq!(sky(&Series::default()), "none");
    }
}
