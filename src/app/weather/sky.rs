//! The sun over the vehicle: its path, where it stands at the instant that is read on the charts, and which side gets it.

use super::dome::{Sky, dome};
use crate::charts::{hour_read, reading_index};
use crate::live::{derived, with_value, words};
use crate::state::AppState;
use crate::text::weather::sky as text;
use leptos::prelude::*;
use noonday_engine::quantity::parse_decimal;
use noonday_engine::scenario::{ScenarioDocument, field};
use noonday_engine::simulation::{SunOnFaces, SunPlace, sun_on_faces, sun_over_day};

/// What is known of the sky at the instant that is read.
#[derive(Clone, PartialEq)]
struct Known {
    document: ScenarioDocument,
    path: Vec<SunPlace>,
    now: SunPlace,
    faces: SunOnFaces,
}

fn known(document: ScenarioDocument, clock_h: f64) -> Option<Known> {
    let (now, faces) = sun_on_faces(&document, clock_h).ok()?;
    Some(Known {
        path: sun_over_day(&document).ok()?,
        document,
        now,
        faces,
    })
}

/// Index of the sample that is shown: where somebody put the cursor, or else the highest sun of the run.
fn shown_index(state: AppState) -> Memo<usize> {
    let read = reading_index(state);
    derived(move || {
        if state.cursor.get().is_some() {
            return read.get();
        }
        let advice = state.advice.get();
        let directions = advice.with_cooler.series.sun_direction.iter().enumerate();
        let highest = directions.max_by(|one, other| one.1[2].total_cmp(&other.1[2]));
        highest.map_or(0, |(index, _)| index)
    })
}

/// The part.
pub(super) fn view(state: AppState) -> AnyView {
    let index = shown_index(state);
    let known = derived(move || {
        let document = state
            .checked
            .with(|checked| checked.scenario.document().clone());
        let series_h = state
            .advice
            .with(|advice| advice.with_cooler.series.time_h.get(index.get()).copied());
        known(document, series_h.unwrap_or_default())
    });
    let spoken = move |speak: fn(&Known, &crate::text::Voice) -> String| {
        words(move || {
            let voice = state.voice.get();
            known.with(|known| {
                known
                    .as_ref()
                    .map_or_else(|| text::REFUSED.to_owned(), |known| speak(known, &voice))
            })
        })
    };
    let picture = words(move || {
        let voice = state.voice.get();
        known.with(|known| {
            known.as_ref().map_or_else(String::new, |known| {
                let sky = Sky {
                    vehicle: &known.document.vehicle,
                    path: &known.path,
                    now: known.now,
                };
                dome(&sky, &voice)
            })
        })
    });
    let described = spoken(|known, voice| {
        text::described(&known.path, known.document.vehicle.heading_deg, voice)
    });
    view! {
        <div class="group-body sun-body">
            <div class="sun-dome" role="img" aria-label=described inner_html=picture></div>
            <div class="sun-words">
                <p class="said" data-weather="sky">
                    <b>{words(move || hour_read(state, index.get()))}</b>
                    " · "
                    {spoken(|known, voice| text::now(&known.now, &known.faces, voice))}
                </p>
                {heading(state)}
                {hour(state, index)}
                <p class="note">{text::NOTE}</p>
            </div>
        </div>
    }
    .into_any()
}

/// A slider that turns the vehicle.
fn heading(state: AppState) -> AnyView {
    let value = move || state.document.with(|document| document.vehicle.heading_deg);
    let told = move || text::heading(value(), &state.voice.get());
    let turned = with_value(move |typed| {
        if let (Some(degrees), Some(field)) = (parse_decimal(&typed), field("vehicle.heading_deg"))
        {
            state.slide_number(field, degrees);
        }
    });
    view! {
        <div class="field wide">
            <label for="sky-heading">{text::HEADING} " " <b>{words(told)}</b></label>
            <input
                type="range"
                id="sky-heading"
                min="0"
                max="360"
                step="5"
                prop:value=words(move || value().to_string())
                aria-valuetext=words(told)
                on:input=turned
            />
        </div>
    }
    .into_any()
}

/// A slider that moves the instant which all charts read.
fn hour(state: AppState, index: Memo<usize>) -> AnyView {
    let told = move || hour_read(state, index.get());
    let most = move || {
        let samples = state
            .advice
            .with(|advice| advice.with_cooler.series.time_h.len());
        samples.saturating_sub(1).to_string()
    };
    let moved = with_value(move |typed| {
        if let Ok(sample) = typed.parse() {
            state.cursor.set(Some(sample));
        }
    });
    view! {
        <div class="field wide">
            <label for="sky-hour">{text::HOUR} " " <b>{words(told)}</b></label>
            <input
                type="range"
                id="sky-hour"
                min="0"
                max=words(most)
                step="3"
                prop:value=words(move || index.get().to_string())
                aria-valuetext=words(told)
                on:input=moved
            />
        </div>
    }
    .into_any()
}
